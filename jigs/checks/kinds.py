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
from jigs.given.stated import NOTED, Leaflet
from jigs.ground.geometry import SLACK, Hand, other_hand
from jigs.ground.lengths import Unit, format_length, telling_unit
from jigs.ground.problems import Problem, error, warning


def check_stacked(front: PlacedFront) -> Iterator[Problem]:
    """Ask about doors of one count: they stand one above the other, and two may be a pair."""
    spec = front.spec
    if spec.kind != "door" or spec.row.alike < 2:
        return
    number = "two" if spec.row.alike == 2 else str(spec.row.alike)
    yield warning(
        "doors-stacked",
        front.id,
        f"{number} doors of one count stand one above the other",
        "for two side by side say kind = pair, without count; else leave it so",
    )


def check_kind(front: PlacedFront, *, has_hinge: bool, has_slide: bool) -> Iterator[Problem]:
    """List what a front of its kind lacks; the flags say whether its hardware is known."""
    held_by_hand = front.spec.by_kit or front.kind == "lift"
    if held_by_hand and not holds_kit(front.spec.holes):
        yield error(
            "kit-holes-missing",
            front.id,
            f"{'a lift-up front' if front.kind == 'lift' else 'it stands on a kit'}, and no "
            "hole in its back is given for the fitting",
            "give the hole group of the fitting's leaflet: [[box.front.hole]]",
        )
        return
    match front.kind:
        case "door" | "drawer" | "pullout" if front.spec.by_kit:
            return
        case "door" if front.hinged is None:
            yield error(
                "hand-not-stated",
                front.id,
                "a single door, and nobody said on which side it hangs",
                "say hinged = left or right, as seen from the room",
            )
        case "door" if not has_hinge:
            yield error(
                "hinge-not-stated",
                front.id,
                "no hinge is named for this door",
                "name one in [use] or at the front",
            )
        case "drawer" if not has_slide:
            yield error(
                "slide-not-stated",
                front.id,
                "no slide is named for this drawer",
                "name one in [use] or at the front",
            )
        case "pullout" if not has_slide and not front.spec.holes:
            yield error(
                "slide-not-stated",
                front.id,
                "neither a slide is named for this pullout nor are its kit's holes given",
                "name a slide, or give the hole group of the kit's leaflet",
            )
        case "panel" if not front.spec.leaflet:
            yield error(
                "leaflet-not-noted",
                front.id,
                "an appliance's panel: sizes, gaps and holes come from the appliance's own "
                "sheet, and none is noted",
                'read the sheet, give its sizes and holes, and say leaflet = "noted"',
            )
        case _:
            return


def check_served(box: str, unknown: Sequence[str]) -> tuple[Problem, ...]:
    """Find holes by hand in a box's boards that name a front which the box does not have."""
    return tuple(
        error(
            "hole-serves-nobody",
            box,
            f"holes by hand in its sides serve '{name}', and it has no such front",
            "give the ID of one of its fronts as front",
        )
        for name in unknown
    )


def check_push_latch(front: PlacedFront) -> Iterator[Problem]:
    """Tell what a push latch asks behind its front: room to be pushed in.

    2.5 to 3 mm, where bumpers leave 1.5 to 2 (common practice, no source).
    """
    if not front.spec.opened_by.push_latch:
        return
    yield warning(
        "push-latch",
        front.id,
        "a push latch wants 2.5 to 3 mm behind the front, where bumpers leave 1.5 to 2",
        "set it out with that gap; an end panel flush with the faces is as deep as box, gap "
        "and front",
    )


def blind_hand(box: BoxSpec) -> Hand | None:
    """Give the end at which a box has a blind panel; None where it has none."""
    return None if box.blind is None else box.blind.hand


def check_blind(
    box: BoxSpec, front: PlacedFront, *, on_slides: bool, unit: Unit
) -> Iterator[Problem]:
    """Find doors hung, and drawers run, at the blind panel of their box."""
    if box.blind is None:
        return
    hand = box.blind.hand
    other = other_hand(hand)
    if front.hinged == hand:
        remedy = f"hang it on the {other}"
        if front.kind == "door" and front.spec.kind == "pair":
            remedy = f'make it one door, hinged = "{other}", or part the box with columns'
        yield error(
            "hinge-at-blind",
            front.id,
            f"hinged {hand}, where box {box.id} has its blind panel and no side for the plates",
            remedy,
        )
        return
    if on_slides:
        covered = format_length(box.blind.reach, unit)
        yield error(
            "slide-at-blind",
            front.id,
            f"it runs on slides, and at the blind panel of box {box.id}, {covered} wide, is no "
            "side to hold one",
            f"part the box: columns in place of blind_{hand}, one of them the covered width, "
            "and this front before the other",
        )
        return


def check_leaflet(
    front: PlacedFront, *, mass: float, pulled: bool, unit: Unit
) -> Iterator[Problem]:
    """Hold a panel against the stated numbers of its leaflet.

    `mass` in kg, without its pull; `pulled`: whether holes of a pull stand in its face.
    """
    leaflet = front.spec.leaflet
    if front.kind != "panel" or leaflet is None or leaflet == NOTED:
        return
    faults: list[str] = []
    for size, value, low, high in (
        ("wide", front.width, leaflet.width_min, leaflet.width_max),
        ("high", front.height, leaflet.height_min, leaflet.height_max),
    ):
        if (low is not None and value < low - SLACK) or (high is not None and value > high + SLACK):
            unit = telling_unit(unit, value, *(end for end in (low, high) if end is not None))
            allowed = range_words(low, high, unit)
            faults.append(f"it is {format_length(value, unit)} {size}; {allowed}")
    for place, gap, least in _gaps(front, leaflet):
        if least is not None and gap < least - SLACK:
            unit = telling_unit(unit, gap, least)
            faults.append(
                f"the gap {place} is {format_length(gap, unit)}; at least "
                f"{format_length(least, unit)}"
            )
    if leaflet.weight_max is not None and mass > leaflet.weight_max + SLACK:
        faults.append(f"it weighs {mass:.1f} kg; at most {leaflet.weight_max:g} kg")
    for fault in faults:
        yield error(
            "leaflet-not-met",
            front.id,
            f"{fault} by the appliance's leaflet",
            "order another panel, or change the opening: the leaflet wins",
        )
    if leaflet.pull == "none" and pulled:
        yield error(
            "leaflet-not-met",
            front.id,
            "it has holes for a pull, and the appliance's leaflet allows none",
            "leave the pull out, and holes by hand in its face",
        )
    if leaflet.unstated:
        names = ", ".join(leaflet.unstated)
        yield warning(
            "leaflet-in-part",
            front.id,
            f"of the appliance's leaflet these are not stated: {names}",
            "compare them with that sheet before drilling, and state them",
        )


def _gaps(front: PlacedFront, leaflet: Leaflet) -> tuple[tuple[str, float, float | None], ...]:
    return (
        ("on its left", front.gaps.left, leaflet.gap_left),
        ("on its right", front.gaps.right, leaflet.gap_right),
        ("above it", front.gaps.top, leaflet.gap_top),
        ("below it", front.gaps.bottom, leaflet.gap_bottom),
    )


def range_words(low: float | None, high: float | None, unit: Unit) -> str:
    """Say what a leaflet allows a size to be."""
    if low is None and high is None:
        return "any"
    if low is None or high is None:
        return (
            f"at least {format_length(low, unit)}"
            if low is not None
            else f"at most {format_length(high or 0.0, unit)}"
        )
    if high - low <= SLACK:
        return f"exactly {format_length(low, unit)}"
    return f"{format_length(low, unit)} to {format_length(high, unit)}"
