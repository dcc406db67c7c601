"""Is a front of this kind stated well enough? Its hand, its hardware, its appliance's leaflet."""

from collections.abc import Sequence

from jigs.box.byhand import holds_kit
from jigs.box.fronts import PlacedFront
from jigs.ground.finding import error, warning
from jigs.ground.problems import Problem


def check_stacked(front: PlacedFront) -> tuple[Problem, ...]:
    """Ask about doors of one count: they stand one above the other, and two may be a pair."""
    spec = front.spec
    if spec.kind != "door" or spec.alike < 2:
        return ()
    number = "two" if spec.alike == 2 else str(spec.alike)
    return (
        warning(
            "doors-stacked",
            front.id,
            f"{number} doors of one count stand one above the other",
            "for two side by side say kind = pair, without count; else leave it so",
        ),
    )


def check_kind(front: PlacedFront, *, has_hinge: bool, has_slide: bool) -> tuple[Problem, ...]:
    """List what a front of its kind lacks; the flags say whether its hardware is known."""
    held_by_hand = front.spec.by_kit or front.kind == "lift"
    if held_by_hand and not holds_kit(front.spec.holes):
        return (
            error(
                "kit-holes-missing",
                front.id,
                f"{'a lift-up front' if front.kind == 'lift' else 'it stands on a kit'}, and no "
                "hole in its back is given for the fitting",
                "give the hole group of the fitting's leaflet: [[box.front.hole]]",
            ),
        )
    match front.kind:
        case "door" | "drawer" | "pullout" if front.spec.by_kit:
            return ()
        case "door" if front.hinged is None:
            return (
                error(
                    "hand-not-stated",
                    front.id,
                    "a single door, and nobody said on which side it hangs",
                    "say hinged = left or right, as seen from the room",
                ),
            )
        case "door" if not has_hinge:
            return (
                error(
                    "hinge-not-stated",
                    front.id,
                    "no hinge is named for this door",
                    "name one in [use] or at the front",
                ),
            )
        case "drawer" if not has_slide:
            return (
                error(
                    "slide-not-stated",
                    front.id,
                    "no slide is named for this drawer",
                    "name one in [use] or at the front",
                ),
            )
        case "pullout" if not has_slide and not front.spec.holes:
            return (
                error(
                    "slide-not-stated",
                    front.id,
                    "neither a slide is named for this pullout nor are its kit's holes given",
                    "name a slide, or give the hole group of the kit's leaflet",
                ),
            )
        case "panel" if not front.spec.leaflet:
            return (
                error(
                    "leaflet-not-noted",
                    front.id,
                    "an appliance's panel: sizes, gaps and holes come from the appliance's own "
                    "sheet, and none is noted",
                    'read the sheet, give its sizes and holes, and say leaflet = "noted"',
                ),
            )
        case _:
            return ()


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


def check_push_latch(front: PlacedFront) -> tuple[Problem, ...]:
    """Tell what a push latch asks behind its front: room to be pushed in.

    2.5 to 3 mm, where bumpers leave 1.5 to 2 (common practice, no source).
    """
    if not front.spec.opened_by.push_latch:
        return ()
    return (
        warning(
            "push-latch",
            front.id,
            "a push latch wants 2.5 to 3 mm behind the front, where bumpers leave 1.5 to 2",
            "set it out with that gap; an end panel flush with the faces is as deep as box, gap "
            "and front",
        ),
    )
