"""Will the door hang? Its skin and reveal, the heights of its hinges; and does the hinge bring it
over its side: its kind, the overlay it reaches, its constant.
"""

from collections.abc import Iterator, Sequence

from jigs.box.carcass import Carcass
from jigs.box.facework import DoorPlan
from jigs.box.fronts import PlacedFront
from jigs.checks.fivepiece import check_stile
from jigs.checks.hardware import by_memory
from jigs.fittings.hinge import (
    BELIEVABLE_CONSTANTS,
    OVERLAY_LIMIT,
    USUAL_CONSTANTS,
    HingeChoice,
    cup_from_edge,
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
from jigs.given.job import Overlay
from jigs.ground.geometry import SLACK
from jigs.ground.lengths import Unit, format_length, format_mm, telling_unit
from jigs.ground.problems import Problem, error, warning

HUNG_WORDS: dict[Overlay, str] = {
    "full": "it lies over the whole side",
    "half": "it shares the board it hangs on with a neighbour",
    "inset": "it stands inside its box",
}
"""How a door hangs, in words."""


def check_overlay(
    front: PlacedFront, record: HingeRecord, choice: HingeChoice, unit: Unit
) -> Iterator[Problem]:
    """Find a hinge of the wrong kind, or an overlay that no tab and plate reach."""
    reached = abs(choice.error) <= OVERLAY_LIMIT + SLACK
    # A plate that somebody has may bring a full hinge to half an overlay; one not listed does not.
    brought = reached and choice.plate_stated and "inset" not in (record.kind, front.hung)
    if record.kind != front.hung and not brought:
        yield error(
            "hinge-kind",
            front.id,
            f"{HUNG_WORDS[front.hung]}, but hinge '{record.name}' is of the kind {record.kind}",
            f"name a hinge of the kind {front.hung} beside it: "
            f'hinge = ["{record.name}", "cup35-{front.hung}"], or one of your own with '
            f'like = "cup35-{front.hung}"',
        )
        return
    if reached:
        return
    inset = front.hung == "inset"
    needed = format_length(abs(front.lap), unit)
    more = "more" if (choice.error > 0) is not inset else "less"
    yield error(
        "overlay",
        front.id,
        f"{'a gap' if inset else 'an overlay'} of {needed} is needed; the nearest, tab "
        f"{choice.tab:g} mm with plate {choice.plate:g} mm, is "
        f"{format_length(abs(choice.error), unit)} {more}",
        "list the plates that can be had, or take a hinge with another constant",
    )


def check_tab(front: PlacedFront, record: HingeRecord, choice: HingeChoice) -> Iterator[Problem]:
    """Say where the search for the overlay moved the cups, and why: a wrong constant does so."""
    if choice.instead is None:
        return
    usual, miss = choice.instead
    cups = format_mm(cup_from_edge(record, choice.tab))
    reached = f", with {format_mm(choice.tab)} by {format_mm(abs(choice.error))}"
    if choice.next_best is not None and choice.next_best[0] != usual:
        tab, error_of_it = choice.next_best
        reached += f", with {format_mm(tab)}, the next best, by {format_mm(abs(error_of_it))}"
    yield warning(
        "tab-moved",
        front.id,
        f"cups at {cups} mm from the hinge edge, tab {format_mm(choice.tab)}: with "
        f"{format_mm(usual)} the overlay misses by {format_mm(abs(miss))} (plates "
        f"{_heights(record.plates)}){reached}",
        f"is the constant of hinge '{record.name}' right? {record.kind} overlay is usually "
        f'{_usual_constant(record)}; a tab that you state stands: tab = "{usual:g} mm"',
    )


def check_constant(
    front: PlacedFront, record: HingeRecord, choice: HingeChoice
) -> Iterator[Problem]:
    """Ask about a constant that hinges of its kind do not have, and one that wants a plate lower
    than none."""
    low, high = BELIEVABLE_CONSTANTS[record.kind]
    if not low - SLACK <= record.constant <= high + SLACK:
        text = (
            f"the constant of hinge '{record.name}' is {record.constant:g} mm; a hinge of the kind "
            f"{record.kind} has {low:g} to {high:g}"
        )
    elif record.kind == front.hung and not choice.plate_stated and choice.plate < -SLACK:
        text = (
            f"a constant of {record.constant:g} mm wants a plate of {format_mm(choice.plate)} mm "
            f"for hinge '{record.name}': none is lower than 0"
        )
    else:
        return
    yield warning(
        "unlikely-number",
        front.id,
        text,
        f"read it again in its leaflet: usually it is {_usual_constant(record)}; or measure "
        "the overlay on a scrap door and write overlay_measured",
    )


def _usual_constant(record: HingeRecord) -> str:
    """Say what a constant of a hinge's kind usually is; mm."""
    low, high = USUAL_CONSTANTS[record.kind]
    return f"about {low:g}" if low == high else f"{low:g} to {high:g}"


def _heights(plates: Sequence[float]) -> str:
    return ", ".join(f"{plate:g}" for plate in plates)


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
