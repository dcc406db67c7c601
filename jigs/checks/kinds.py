"""Is a front of this kind stated well enough, and may it be there? Its hand, its hardware, the
board that is to hold it, its appliance's leaflet.

A blind panel stands in the front of a corner box, where the run round the corner covers it. It has
an edge for a front to lap, but behind it is no side: neither a hinge's plate nor a slide holds
there. An appliance's leaflet always wins.
"""

from collections.abc import Iterator, Sequence

from jigs.box.fittings import holds_kit
from jigs.box.fronts import PlacedFront
from jigs.given.job import BoxSpec
from jigs.given.stated import NOTED
from jigs.ground.geometry import HANDS, SLACK, Hand, other_hand
from jigs.ground.problems import Problem, error, warning


def check_stacked(front: PlacedFront) -> Iterator[Problem]:
    """Ask about doors of one count: they stand one above the other, and two may be a pair."""
    spec = front.spec
    if spec.kind != "door" or spec.row.alike < 2:
        return
    yield warning("doors-stacked", front.id, alike=spec.row.alike, two=spec.row.alike == 2)


def check_kind(front: PlacedFront, *, has_hinge: bool, has_slide: bool) -> Iterator[Problem]:
    """List what a front of its kind lacks; the flags say whether its hardware is known."""
    held_by_hand = front.spec.by_kit or front.kind == "lift"
    if held_by_hand and not holds_kit(front.spec.holes):
        yield error("kit-holes-missing", front.id, lift=front.kind == "lift")
        return
    match front.kind:
        case "door" | "drawer" | "pullout" if front.spec.by_kit:
            return
        case "door" if front.hinged is None:
            yield error("hand-not-stated", front.id)
        case "door" if not has_hinge:
            yield error("hinge-not-stated", front.id)
        case "drawer" if not has_slide:
            yield error("slide-not-stated", front.id, case="drawer")
        case "pullout" if not has_slide and not front.spec.holes:
            yield error("slide-not-stated", front.id, case="pullout")
        case "panel" if not front.spec.leaflet:
            yield error("leaflet-not-noted", front.id)
        case _:
            return


def check_served(box: str, unknown: Sequence[str]) -> tuple[Problem, ...]:
    """Find holes by hand in a box's boards that name a front which the box does not have."""
    return tuple(error("hole-serves-nobody", box, name=name) for name in unknown)


def check_push_latch(front: PlacedFront) -> Iterator[Problem]:
    """Tell what a push latch asks behind its front: room to be pushed in.

    2.5 to 3 mm, where bumpers leave 1.5 to 2 (common practice, no source).
    """
    if not front.spec.opened_by.push_latch:
        return
    yield warning("push-latch", front.id)


def blind_hand(box: BoxSpec) -> Hand | None:
    """Give the end at which a box has a blind panel; None where it has none."""
    return None if box.blind is None else box.blind.hand


def check_blind(box: BoxSpec, front: PlacedFront, *, on_slides: bool) -> Iterator[Problem]:
    """Find doors hung, and drawers run, at the blind panel of their box."""
    if box.blind is None:
        return
    hand = box.blind.hand
    other = other_hand(hand)
    if front.hinged == hand:
        yield error(
            "hinge-at-blind",
            front.id,
            hand=hand,
            other=other,
            box=box.id,
            leaf=front.kind == "door" and front.spec.kind == "pair",
        )
        return
    if on_slides:
        yield error(
            "slide-at-blind", front.id, case="front", box=box.id, covered=box.blind.reach, hand=hand
        )
        return


def check_leaflet(front: PlacedFront, *, mass: float, pulled: bool) -> Iterator[Problem]:
    """Hold a panel against the stated numbers of its leaflet.

    `mass` in kg, without its pull; `pulled`: whether holes of a pull stand in its face.
    """
    leaflet = front.spec.leaflet
    if front.kind != "panel" or leaflet is None or leaflet == NOTED:
        return
    wide, high = (leaflet.width_min, leaflet.width_max), (leaflet.height_min, leaflet.height_max)
    if _is_off(front.width, *wide):
        yield error("leaflet-not-met", front.id, case="wide", size=front.width, allowed=wide)
    if _is_off(front.height, *high):
        yield error("leaflet-not-met", front.id, case="high", size=front.height, allowed=high)
    for side, gap, least in (
        ("left", front.gaps.left, leaflet.gap_left),
        ("right", front.gaps.right, leaflet.gap_right),
        ("above", front.gaps.top, leaflet.gap_top),
        ("below", front.gaps.bottom, leaflet.gap_bottom),
    ):
        if least is not None and gap < least - SLACK:
            on_its = side in HANDS
            yield error(
                "leaflet-not-met",
                front.id,
                case="gap",
                on_its=on_its,
                side=side,
                gap=gap,
                least=least,
            )
    if leaflet.weight_max is not None and mass > leaflet.weight_max + SLACK:
        yield error("leaflet-not-met", front.id, case="weight", mass=mass, most=leaflet.weight_max)
    if leaflet.pull == "none" and pulled:
        yield error("leaflet-not-met", front.id, case="pull")
    if leaflet.unstated:
        yield warning("leaflet-in-part", front.id, unstated=leaflet.unstated)


def _is_off(size: float, low: float | None, high: float | None) -> bool:
    return (low is not None and size < low - SLACK) or (high is not None and size > high + SLACK)
