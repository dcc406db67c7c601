"""Will the door hang? Skin, reveal, and the heights of its hinges."""

from collections.abc import Iterator, Sequence

from jigs.box.carcass import Carcass
from jigs.box.facework import DoorPlan
from jigs.box.fronts import PlacedFront
from jigs.checks.fivepiece import check_stile
from jigs.checks.hardware import by_memory
from jigs.checks.overlay import check_constant, check_overlay, check_tab
from jigs.fittings.hinge import (
    least_skin,
    skin_under_cup,
)
from jigs.fittings.placing import (
    BETWEEN,
    FROM_END,
    FROM_PANEL,
    SHORT_SPREAD,
    Obstacle,
    beyond_tables,
)
from jigs.given.confirming import how_confirmed
from jigs.given.hardware import HingeRecord
from jigs.ground.geometry import SLACK
from jigs.ground.lengths import Unit, format_length, telling_unit
from jigs.ground.problems import Problem, error, warning


def check_door(
    front: PlacedFront, carcass: Carcass, plan: DoorPlan, *, thickness: float, unit: Unit
) -> Iterator[Problem]:
    """List what keeps a door from hanging as it was planned."""
    record, choice, bored = plan.record, plan.choice, front.spec.boring.bored
    if bored:
        yield from check_bored_tab(front, plan)
    else:
        yield from check_skin(front, record, thickness, unit)
        yield from check_stile(front, record, choice.tab, unit)
    yield from check_constant(front, record, choice)
    # What the search did to reach an overlay that no tab reaches says nothing more.
    overlay = tuple(check_overlay(front, record, choice, unit))
    yield from overlay or check_tab(front, record, choice)
    yield from check_hinge_reveal(front, plan, thickness, unit)
    yield from check_given_heights(front, carcass, plan, unit)
    yield from check_placing(front, carcass, plan, unit)
    yield from check_spread(front, plan, unit)


def check_bored_tab(front: PlacedFront, plan: DoorPlan) -> Iterator[Problem]:
    """Find cups bored by the supplier, nobody said how far from the edge."""
    spec = front.spec
    if (spec.boring.bored_tab, spec.boring.tab, plan.record.tab) != (None, None, None):
        return
    yield warning(
        "bored-tab-missing",
        front.id,
        "its cups are bored by the supplier, but not stated how far from the edge: a tab "
        f"of {plan.choice.tab:g} mm is taken",
        "measure from the hinge edge to the rim of a cup, give it as bored_tab",
    )


def check_skin(
    front: PlacedFront, record: HingeRecord, thickness: float, unit: Unit
) -> Iterator[Problem]:
    """Find a cup that leaves too little wood under it."""
    skin = skin_under_cup(record, thickness)
    least = least_skin(record)
    if skin >= least - SLACK:
        return
    yield error(
        "skin-under-cup",
        front.id,
        f"a cup {format_length(record.cup_depth, unit)} deep leaves "
        f"{format_length(skin, unit)} of a front {format_length(thickness, unit)} thick; "
        f"at least {format_length(least, unit)} must stay under it",
        "take a shallower cup, a bit with a shorter point, or a thicker front",
    )


def check_hinge_reveal(
    front: PlacedFront, plan: DoorPlan, thickness: float, unit: Unit
) -> Iterator[Problem]:
    """Find a hinge edge that would rub, or whose least reveal only the leaflet knows."""
    least = plan.least_reveal
    if least is None:
        yield warning(
            "least-reveal-unknown",
            front.id,
            f"the least reveal at the hinge edge of a front {format_length(thickness, unit)} "
            "thick is not known",
            "take it from the hinge's leaflet",
        )
        return
    if front.hinge_gap >= least - SLACK:
        return
    unit = telling_unit(unit, front.hinge_gap, least)
    sure = how_confirmed(plan.record, "least_reveal")
    yield warning(
        "hinge-edge-reveal",
        front.id,
        f"the reveal at the hinge edge is {format_length(front.hinge_gap, unit)}; a front "
        f"{format_length(thickness, unit)} thick needs "
        f"{by_memory(format_length(least, unit), open=sure is None)} to open",
        "enlarge the side reveal, or hang a scrap door first",
    )


def check_placing(
    front: PlacedFront, carcass: Carcass, plan: DoorPlan, unit: Unit
) -> Iterator[Problem]:
    """Word what placing the hinges by the rule came up against."""
    placing = plan.placing
    if placing is None:
        return
    if placing.no_room:
        yield error(
            "hinge-no-room",
            front.id,
            f"no free place for its hinges: each keeps {format_length(FROM_PANEL, unit)} from "
            f"panels and rails, {format_length(FROM_END, unit)} from the door's ends, "
            f"{format_length(BETWEEN, unit)} from the next hinge, and clear of other holes"
            f"{_beside_rollouts(plan)}",
            _other_heights(front, placing.proposed),
        )
        return
    if not placing.off_grid:
        return
    heights = ", ".join(format_length(height, unit) for height in placing.off_grid)
    yield warning(
        "hinge-off-grid",
        front.id,
        f"no free grid place for the hinge at {heights} above the side's bottom end",
        "drill its plate by its own distances, not in the row of 32 mm holes",
        (carcass.board(front.hinged or "left"),),
    )


def _other_heights(front: PlacedFront, proposed: Sequence[float]) -> str:
    """Propose heights, above the door's bottom edge, as the job file takes them."""
    if not proposed:
        return "give hinges_at, or move the drawer or the rail"
    given = ", ".join(f'"{height - front.place.y:g} mm"' for height in proposed)
    return f"say hinges_at = [{given}], clear of the rail or shelf; or move what is in the way"


def check_spread(front: PlacedFront, plan: DoorPlan, unit: Unit) -> Iterator[Problem]:
    """Find hinges too near to each other, too few, or a door beyond the tables."""
    heights, mass, needed = plan.plates, plan.mass, plan.needed
    if not heights:
        return
    if len(heights) > 1:
        spread = heights[-1] - heights[0]
        if spread < SHORT_SPREAD - SLACK:
            yield warning(
                "hinges-close",
                front.id,
                f"its outer hinges are {format_length(spread, unit)} apart, less than "
                f"{format_length(SHORT_SPREAD, unit)}",
                "expect to adjust it often; a lift-up or a fixed front hangs better",
            )
        elif spread < front.width / 2 - SLACK:
            yield warning(
                "hinges-close",
                front.id,
                f"its outer hinges are {format_length(spread, unit)} apart, less than half "
                f"its width of {format_length(front.width, unit)}",
                "expect it to sag; a narrower door hangs better",
            )
    if beyond_tables(front.height, mass):
        yield warning(
            "door-beyond-tables",
            front.id,
            f"{format_length(front.height, unit)} high, {mass:.1f} kg: beyond 2400 mm or "
            "22 kg no table counts the hinges",
            "ask the hinge's leaflet how many it takes",
        )
    if len(heights) < needed:
        yield warning(
            "hinges-few",
            front.id,
            f"{len(heights)} given; {format_length(front.height, unit)} high and "
            f"{mass:.1f} kg ask for {needed}",
            "add a hinge, or accept that the door may sag",
        )


def check_given_heights(
    front: PlacedFront, carcass: Carcass, plan: DoorPlan, unit: Unit
) -> Iterator[Problem]:
    """Find heights given by hand that break the rule for places, and those of bored cups that
    are not given."""
    if front.spec.boring.bored and not front.spec.hung.hinges_at:
        yield error(
            "bored-heights-missing",
            front.id,
            "its cups are bored by the supplier, but their heights are not stated",
            "measure the cups' centres from the door's bottom edge, give them as hinges_at",
        )
        return
    obstacles: dict[Obstacle, str] = {
        "panel": "a panel, a rail or the door's end, from which it keeps "
        f"{format_length(FROM_PANEL, unit)}",
        "hinge": f"another hinge, from which it keeps {format_length(BETWEEN, unit)}",
        "hole": "a hole of a slide or of another plate, from which its holes keep 12.5 mm",
    }
    yield from (
        error(
            "hinge-against",
            front.id,
            f"the hinge given at {format_length(against.height - front.place.y, unit)} above the "
            f"door's bottom edge stands against {obstacles[against.obstacle]}"
            f"{_beside_rollouts(plan)}",
            "give another height in hinges_at, or move what is in the way",
            (carcass.board("left" if front.hinged == "left" else "right"),),
        )
        for against in plan.against
    )


def _beside_rollouts(plan: DoorPlan) -> str:
    """Say of a hinge that finds no place what else lies on its side."""
    return "; the slides of rollouts lie on this side too" if plan.beside_slides else ""
