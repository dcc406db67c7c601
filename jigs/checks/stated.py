"""Is what is stated enough, and is it what was meant? A front's hand, its hardware, the board that
is to hold it, its appliance's leaflet; hardware whose numbers nobody has looked up; and questions
that are asked before anything is cut.

A blind panel stands in the front of a corner box, where the run round the corner covers it. It has
an edge for a front to lap, but behind it is no side: neither a hinge's plate nor a slide holds
there. An appliance's leaflet always wins. A box of kind `open` as wide as an appliance with nothing
in it, an opening in a box that takes an appliance, a cupboard with doors and nothing behind them:
there it is asked.
"""

from collections.abc import Iterator, Sequence

from jigs.box.fittings import holds_kit
from jigs.box.fronts import PlacedFront
from jigs.given.confirming import (
    Record,
    RecordKind,
    heading_of,
    number_words,
    open_numbers,
    record_kind,
)
from jigs.given.hangsat import notes_say
from jigs.given.job import BoxSpec, Job
from jigs.given.stated import NOTED
from jigs.ground.geometry import HANDS, SLACK, Hand, other_hand
from jigs.ground.keys import Rests
from jigs.ground.problems import Problem, error, warning


def check_stacked(front: PlacedFront) -> Iterator[Problem]:
    """Ask about doors of one count: they stand one above the other, and two may be a pair."""
    spec = front.spec
    if spec.kind != "door" or spec.row.alike < 2:
        return
    yield warning("doors-stacked", front.id, alike=spec.row.alike, two=spec.row.alike == 2)


def check_order(fronts: Sequence[PlacedFront]) -> Iterator[Problem]:
    """Find notes that say the other way round how the fronts of a column hang, which stand here
    from the top: `unten` is noted of the upper one."""
    places = [front.spec.words.hangs for front in fronts]
    beside = [place if place in ("above", "below") else None for place in places]
    if notes_say(beside)[0] != "from-bottom":
        return
    at = next(at for at, place in enumerate(beside) if place)
    front, note = fronts[at], fronts[at].spec.words.note
    other = fronts[at + 1 if at == 0 else 0].id
    yield warning("order-against-note", front.id, note=note, above=at == 0, other=other)


def check_kind(front: PlacedFront, *, has_hinge: bool, has_slide: bool) -> Iterator[Problem]:
    """List what a front of its kind lacks; the flags say whether its hardware is known."""
    held_by_hand = front.spec.by_kit or front.kind == "lift"
    if held_by_hand and not holds_kit(front.spec.holes):
        listed = front.spec.row.listed
        yield error("kit-holes-missing", front.id, lift=front.kind == "lift", listed=listed)
        return
    match front.kind:
        case "door" | "drawer" | "pullout" if front.spec.by_kit:
            return
        case "door" if front.hinged is None:
            yield error("hand-not-stated", front.id, listed=front.spec.row.listed)
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


PLACE = (400.0, 650.0)
"""Widths between which an empty open box may be the place of an appliance; mm (common practice, no
source)."""
NICHE = 300.0
"""An opening as high as this takes an appliance; mm (common practice, no source)."""
NEEDS_SHELF = 500.0
"""A cupboard as high as this has a shelf; mm (common practice, no source)."""


def check_asked(job: Job) -> tuple[Problem, ...]:
    """Ask about the boxes of a job."""
    return tuple(
        problem
        for box in job.boxes
        if not box.inferred
        for problem in (*_ask_place(box), *_ask_openings(box), *_ask_shelf(box))
    )


def _ask_place(box: BoxSpec) -> Iterator[Problem]:
    """Ask whether an empty open box is built, or is an appliance's place, and what is in it."""
    empty = not (box.shelves or box.no_shelf or box.rollouts or box.columns)
    if box.kind != "open" or not empty or len(box.fronts) > 1:
        return
    place = PLACE[0] - SLACK <= box.width <= PLACE[1] + SLACK
    if all(front.kind == "opening" and not front.leaflet for front in box.fronts):
        yield warning("appliance-place", box.id, case="box" if place else "empty")
    elif place and box.fronts[0].kind in ("false-front", "door"):
        yield warning("appliance-place", box.fronts[0].id, case="front")


def _ask_openings(box: BoxSpec) -> Iterator[Problem]:
    """Ask for the sheet of what is built into an opening."""
    if box.kind == "open" or box.width < PLACE[0] - SLACK:
        return
    for front in box.fronts:
        high = front.height is None or front.height >= NICHE - SLACK
        if front.kind == "opening" and high and not front.leaflet:
            yield warning("opening-not-noted", front.id)


def _ask_shelf(box: BoxSpec) -> Iterator[Problem]:
    """Ask for the shelves of a cupboard: their pins are bored before the box is together."""
    hung = any(front.kind in ("door", "pair") and not front.by_kit for front in box.fronts)
    shut = hung and box.kind in ("wall", "tall") and box.height >= NEEDS_SHELF - SLACK
    if shut and not (box.shelves or box.no_shelf or box.rollouts):
        yield warning("no-shelf", box.id)


BORED: tuple[Rests, ...] = ("inside", "order")
"""What still rests on the hinge of a door whose cups are bored already."""
OPEN_CODE: dict[RecordKind, str] = {
    "hinge": "unconfirmed-hinge",
    "slide": "unconfirmed-slide",
    "pull": "unconfirmed-pull",
}


def check_confirmed(
    front: str, record: Record, also: Sequence[str] = (), *, bored: bool = False
) -> tuple[Problem, ...]:
    """Find a front that depends on hardware with open numbers; `also`: the boards and the drawer
    box that are concerned too."""
    numbers = open_numbers(record, *(BORED if bored else ()))
    if not numbers:
        return ()
    kind = record_kind(record)
    keys = tuple(number.key for number in numbers)
    found = warning(
        OPEN_CODE[kind],
        front,
        also=tuple(also),
        kind=kind,
        record=record.name,
        numbers=number_words(numbers),
        several=len(keys) > 1,
        keys=keys[:-1],
        last=keys[-1],
        own=heading_of(kind, record.name),
        generic=record.like is None,
    )
    return (found,)
