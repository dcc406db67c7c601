"""Will the door hang? Its skin and reveal, the heights of its hinges; and does the hinge bring it
over its side: its kind, the overlay it reaches, its constant.
"""

from collections.abc import Iterator

from jigs.box.carcass import Carcass
from jigs.box.facework import DoorPlan
from jigs.box.fronts import PlacedFront
from jigs.checks.frontholes import check_stile
from jigs.fittings.hinge import (
    BELIEVABLE_CONSTANTS,
    OVERLAY_LIMIT,
    USUAL_CONSTANTS,
    HingeChoice,
    cup_from_edge,
    least_skin,
    overlay_got,
    skin_under_cup,
)
from jigs.fittings.placing import (
    BETWEEN,
    BY_HEIGHT,
    BY_MASS,
    FROM_END,
    FROM_PANEL,
    SHORT_SPREAD,
    beyond_tables,
)
from jigs.given.confirming import how_confirmed
from jigs.given.hardware import HingeRecord
from jigs.ground.geometry import SLACK
from jigs.ground.problems import Problem, error, maybe_open, warning


def check_overlay(
    front: PlacedFront, record: HingeRecord, choice: HingeChoice
) -> Iterator[Problem]:
    """Find a hinge of the wrong kind, or an overlay that no tab and plate reach."""
    reached = abs(choice.error) <= OVERLAY_LIMIT + SLACK
    # A plate that somebody has may bring a full hinge to half an overlay; one not listed does not.
    brought = reached and choice.plate_stated and "inset" not in (record.kind, front.hung)
    if record.kind != front.hung and not brought:
        yield error(
            "hinge-kind",
            front.id,
            case=front.hung,
            hinge=record.name,
            kind=record.kind,
            hung=front.hung,
        )
        return
    if reached:
        return
    inset = front.hung == "inset"
    yield error(
        "overlay",
        front.id,
        inset=inset,
        needed=abs(front.lap),
        tab=choice.tab,
        plate=choice.plate,
        off=abs(choice.error),
        more=(choice.error > 0) is not inset,
    )


def check_tab(front: PlacedFront, record: HingeRecord, choice: HingeChoice) -> Iterator[Problem]:
    """Say where the search for the overlay moved the cups, and why: a wrong constant does so."""
    if choice.instead is None:
        return
    usual, miss = choice.instead
    further = choice.next_best if choice.next_best and choice.next_best[0] != usual else None
    needed = overlay_got(record, choice.tab, choice.plate) - choice.error
    plate = overlay_got(record, usual, 0.0) - needed
    yield warning(
        "tab-moved",
        front.id,
        cups=cup_from_edge(record, choice.tab),
        tab=choice.tab,
        usual=usual,
        miss=abs(miss),
        plates=record.plates,
        reached=abs(choice.error),
        next=further is not None,
        next_tab=further and further[0],
        next_miss=further and abs(further[1]),
        hinge=record.name,
        kind=record.kind,
        constant=USUAL_CONSTANTS[record.kind],
        has_plate=plate > 0.0,
        plate=plate,
    )


def check_constant(
    front: PlacedFront, record: HingeRecord, choice: HingeChoice
) -> Iterator[Problem]:
    """Ask about a constant that hinges of its kind do not have, and one that wants a plate lower
    than none."""
    believable = BELIEVABLE_CONSTANTS[record.kind]
    usual = USUAL_CONSTANTS[record.kind]
    if not believable[0] - SLACK <= record.constant <= believable[1] + SLACK:
        yield warning(
            "unlikely-number",
            front.id,
            case="constant",
            hinge=record.name,
            constant=record.constant,
            kind=record.kind,
            believable=believable,
            usual=usual,
        )
    elif record.kind == front.hung and not choice.plate_stated and choice.plate < -SLACK:
        yield warning(
            "unlikely-number",
            front.id,
            case="plate",
            hinge=record.name,
            constant=record.constant,
            plate=choice.plate,
            usual=usual,
        )


def check_door(
    front: PlacedFront, carcass: Carcass, plan: DoorPlan, *, thickness: float
) -> Iterator[Problem]:
    """List what keeps a door from hanging as it was planned."""
    record, choice, bored = plan.record, plan.choice, front.spec.boring.bored
    if bored:
        yield from check_bored_tab(front, plan)
    else:
        yield from check_skin(front, record, thickness)
        yield from check_stile(front, record, choice.tab)
    yield from check_constant(front, record, choice)
    # What the search did to reach an overlay that no tab reaches says nothing more.
    overlay = tuple(check_overlay(front, record, choice))
    yield from overlay or check_tab(front, record, choice)
    yield from check_hinge_reveal(front, plan, thickness)
    yield from check_given_heights(front, carcass, plan)
    yield from check_placing(front, carcass, plan)
    yield from check_spread(front, plan)


def check_bored_tab(front: PlacedFront, plan: DoorPlan) -> Iterator[Problem]:
    """Find cups bored by the supplier, nobody said how far from the edge."""
    spec = front.spec
    if (spec.boring.bored_tab, spec.boring.tab, plan.record.tab) != (None, None, None):
        return
    yield warning("bored-tab-missing", front.id, tab=plan.choice.tab)


def check_skin(front: PlacedFront, record: HingeRecord, thickness: float) -> Iterator[Problem]:
    """Find a cup that leaves too little wood under it."""
    skin = skin_under_cup(record, thickness)
    least = least_skin(record)
    if skin >= least - SLACK:
        return
    yield error(
        "skin-under-cup", front.id, deep=record.cup_depth, skin=skin, thick=thickness, least=least
    )


def check_hinge_reveal(front: PlacedFront, plan: DoorPlan, thickness: float) -> Iterator[Problem]:
    """Find a hinge edge that would rub, or whose least reveal only the leaflet knows."""
    least = plan.least_reveal
    if least is None:
        yield warning("least-reveal-unknown", front.id, thick=thickness)
        return
    if front.hinge_gap >= least - SLACK:
        return
    yield warning(
        "hinge-edge-reveal",
        front.id,
        gap=front.hinge_gap,
        thick=thickness,
        least=maybe_open(least, open=how_confirmed(plan.record, "least_reveal") is None),
    )


def check_placing(front: PlacedFront, carcass: Carcass, plan: DoorPlan) -> Iterator[Problem]:
    """Word what placing the hinges by the rule came up against."""
    placing = plan.placing
    if placing is None:
        return
    if placing.no_room:
        yield error(
            "hinge-no-room",
            front.id,
            panel=FROM_PANEL,
            end=FROM_END,
            between=BETWEEN,
            rollouts=plan.beside_slides,
            rows=front.place.rows > 1,
            heights=tuple(f'"{height - front.place.y:g} mm"' for height in placing.proposed),
        )
        return
    if not placing.off_grid:
        return
    yield warning(
        "hinge-off-grid",
        front.id,
        heights=placing.off_grid,
        also=(carcass.board(front.hinged or "left"),),
    )


def check_spread(front: PlacedFront, plan: DoorPlan) -> Iterator[Problem]:
    """Find hinges too near to each other, too few, or a door beyond the tables."""
    heights, mass, needed = plan.plates, plan.mass, plan.needed
    if not heights:
        return
    if len(heights) > 1:
        spread = heights[-1] - heights[0]
        if spread < SHORT_SPREAD - SLACK:
            yield warning("hinges-close", front.id, spread=spread, least=SHORT_SPREAD)
        elif spread < front.width / 2 - SLACK:
            yield warning("hinges-close", front.id, case="narrow", spread=spread, width=front.width)
    if beyond_tables(front.height, mass):
        yield warning(
            "door-beyond-tables", front.id, height=front.height, mass=mass,
            highest=BY_HEIGHT[-1][0], heaviest=BY_MASS[-1][0],
        )  # fmt: skip
    if len(heights) < needed:
        yield warning(
            "hinges-few",
            front.id,
            given=len(heights),
            height=front.height,
            mass=mass,
            needed=needed,
        )


def check_given_heights(front: PlacedFront, carcass: Carcass, plan: DoorPlan) -> Iterator[Problem]:
    """Find heights given by hand that break the rule for places, and those of bored cups that
    are not given."""
    if front.spec.boring.bored and not front.spec.hung.hinges_at:
        yield error("bored-heights-missing", front.id)
        return
    yield from (
        error(
            "hinge-against",
            front.id,
            case=against.obstacle,
            height=against.height - front.place.y,
            panel=FROM_PANEL,
            between=BETWEEN,
            rollouts=plan.beside_slides,
            also=(carcass.board("left" if front.hinged == "left" else "right"),),
        )
        for against in plan.against
    )
