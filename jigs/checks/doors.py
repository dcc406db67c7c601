"""Will the door hang? Skin, overlay, reveal, and the heights of its hinges."""

from collections.abc import Sequence

from jigs.carcass import Carcass
from jigs.checks.closing import hinge_gap
from jigs.checks.finding import error, warning
from jigs.fronts import PlacedFront
from jigs.geometry import SLACK
from jigs.hardware import HingeRecord
from jigs.hinge import (
    OVERLAY_LIMIT,
    least_reveal,
    least_skin,
    overlay_needed,
    skin_under_cup,
)
from jigs.hingecount import beyond_tables
from jigs.job import Unit
from jigs.lengths import format_length
from jigs.parts import HingeChoice
from jigs.placing import BETWEEN, FROM_END, FROM_PANEL, SHORT_SPREAD, Door, Placing, is_free
from jigs.problems import Problem


def check_skin(
    front: PlacedFront, record: HingeRecord, thickness: float, unit: Unit
) -> tuple[Problem, ...]:
    """Find a cup that leaves too little wood under it."""
    skin = skin_under_cup(record, thickness)
    least = least_skin(record)
    if skin >= least - SLACK:
        return ()
    return (
        error(
            "skin-under-cup",
            front.id,
            f"a cup {format_length(record.cup_depth, unit)} deep leaves "
            f"{format_length(skin, unit)} of a front {format_length(thickness, unit)} thick; "
            f"at least {format_length(least, unit)} must stay under it",
            "take a shallower cup, a bit with a shorter point, or a thicker front",
        ),
    )


def check_overlay(
    front: PlacedFront, carcass: Carcass, choice: HingeChoice, unit: Unit
) -> tuple[Problem, ...]:
    """Find an overlay that no tab and plate reach."""
    if abs(choice.error) <= OVERLAY_LIMIT + SLACK:
        return ()
    needed = overlay_needed(carcass.side, hinge_gap(front))
    return (
        error(
            "overlay",
            front.id,
            f"an overlay of {format_length(needed, unit)} is needed; the nearest, tab "
            f"{choice.tab:g} mm with plate {choice.plate:g} mm, is "
            f"{format_length(abs(choice.error), unit)} {'more' if choice.error > 0 else 'less'}",
            "list the plates that can be had, or take a hinge with another constant",
        ),
    )


def check_hinge_reveal(
    front: PlacedFront, record: HingeRecord, thickness: float, unit: Unit
) -> tuple[Problem, ...]:
    """Find a hinge edge that would rub, or whose least reveal only the leaflet knows."""
    least = least_reveal(record, thickness)
    if least is None:
        return (
            warning(
                "least-reveal-unknown",
                front.id,
                f"the least reveal at the hinge edge of a front {format_length(thickness, unit)} "
                "thick is not known",
                "take it from the hinge's leaflet",
            ),
        )
    if hinge_gap(front) >= least - SLACK:
        return ()
    return (
        warning(
            "hinge-edge-reveal",
            front.id,
            f"the reveal at the hinge edge is {format_length(hinge_gap(front), unit)}; a front "
            f"{format_length(thickness, unit)} thick needs {format_length(least, unit)} to open",
            "enlarge the side reveal, or hang a scrap door first",
        ),
    )


def check_placing(
    front: PlacedFront, placing: Placing, boards: tuple[str, ...], unit: Unit
) -> tuple[Problem, ...]:
    """Word what placing the hinges by the rule came up against."""
    if placing.no_room:
        return (
            error(
                "hinge-no-room",
                front.id,
                f"no free place for its hinges: each keeps {format_length(FROM_PANEL, unit)} from "
                f"panels and rails, {format_length(FROM_END, unit)} from the door's ends, "
                f"{format_length(BETWEEN, unit)} from the next hinge, and clear of other holes",
                "give hinges_at, or move the drawer or the rail",
            ),
        )
    if not placing.off_grid:
        return ()
    heights = ", ".join(format_length(height, unit) for height in placing.off_grid)
    return (
        warning(
            "hinge-off-grid",
            front.id,
            f"no free grid place for the hinge at {heights} above the side's bottom end",
            "drill its plate by its own distances, not in the row of 32 mm holes",
            boards,
        ),
    )


def check_spread(
    front: PlacedFront, heights: Sequence[float], mass: float, needed: int, unit: Unit
) -> tuple[Problem, ...]:
    """Find hinges too near to each other, too few, or a door beyond the tables."""
    problems: list[Problem] = []
    if len(heights) > 1:
        spread = heights[-1] - heights[0]
        if spread < SHORT_SPREAD - SLACK:
            problems.append(
                warning(
                    "hinges-close",
                    front.id,
                    f"its outer hinges are {format_length(spread, unit)} apart, less than "
                    f"{format_length(SHORT_SPREAD, unit)}",
                    "expect to adjust it often; a lift-up or a fixed front hangs better",
                )
            )
        elif spread < front.width / 2 - SLACK:
            problems.append(
                warning(
                    "hinges-close",
                    front.id,
                    f"its outer hinges are {format_length(spread, unit)} apart, less than half "
                    f"its width of {format_length(front.width, unit)}",
                    "expect it to sag; a narrower door hangs better",
                )
            )
    if beyond_tables(front.height, mass):
        problems.append(
            warning(
                "door-beyond-tables",
                front.id,
                f"{format_length(front.height, unit)} high, {mass:.1f} kg: beyond 2400 mm or "
                "22 kg no table counts the hinges",
                "ask the hinge's leaflet how many it takes",
            )
        )
    if len(heights) < needed:
        problems.append(
            warning(
                "hinges-few",
                front.id,
                f"{len(heights)} given; {format_length(front.height, unit)} high and "
                f"{mass:.1f} kg ask for {needed}",
                "add a hinge, or accept that the door may sag",
            )
        )
    return tuple(problems)


def check_given_heights(
    front: PlacedFront,
    carcass: Carcass,
    record: HingeRecord,
    heights: Sequence[float],
    holes: Sequence[tuple[float, float]],
    unit: Unit,
) -> tuple[Problem, ...]:
    """Find heights given by hand that break the rule for places; heights on the side, mm."""
    door = Door(
        bottom=front.y,
        height=front.height,
        count=len(heights),
        plate_line=record.plate_line,
        plate_spacing=record.plate_spacing,
    )
    problems = []
    for index, height in enumerate(heights):
        others = [other for place, other in enumerate(heights) if place != index]
        against = None
        if not is_free(height, door, panels=carcass.panels, holes=(), placed=()):
            against = (
                f"a panel, a rail or the door's end, from which it keeps "
                f"{format_length(FROM_PANEL, unit)}"
            )
        elif not is_free(height, door, panels=(), holes=(), placed=others):
            against = f"another hinge, from which it keeps {format_length(BETWEEN, unit)}"
        elif not is_free(height, door, panels=(), holes=holes, placed=()):
            against = "a hole of a slide or of another plate, from which its holes keep 12.5 mm"
        if against:
            problems.append(
                error(
                    "hinge-against",
                    front.id,
                    f"the hinge given at {format_length(height - front.y, unit)} above the "
                    f"door's bottom edge stands against {against}",
                    "give another height in hinges_at, or move what is in the way",
                    (carcass.board("left" if front.hinged == "left" else "right"),),
                )
            )
    return tuple(problems)
