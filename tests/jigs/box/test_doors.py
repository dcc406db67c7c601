"""A door planned: mass, grid, and the slides it steps aside for."""

import pytest

from jigs.box.carcass import Carcass
from jigs.box.facework import DoorPlan, door_mass, plan_door
from jigs.box.fronts import PlacedFront
from jigs.checks.doors import check_door
from jigs.given.job import BoxKind, FrontSpec
from jigs.ground.problems import Problem
from tests.jigs.sample import HINGE, MATERIAL, box, one_column


def door(kind: BoxKind = "base") -> tuple[PlacedFront, Carcass]:
    """Give the golden door in its box."""
    spec = box(FrontSpec(id="B1-1", kind="door", hinged="left"), kind=kind)
    front = one_column(spec).fronts[0]
    return front, Carcass(box=spec, side=18.3, back=6.0)


def plan(holes: tuple[tuple[float, float], ...] = (), grid: float | None = 19.35) -> DoorPlan:
    """Plan the golden door among these holes of its side."""
    front, carcass = door()
    return plan_door(
        front, carcass, HINGE, material=MATERIAL, thickness=19.05, grid=grid, holes=holes
    )


def told(planned: DoorPlan) -> list[Problem]:
    """Give what is said of a plan of the golden door."""
    front, carcass = door()
    return [*check_door(front, carcass, planned, thickness=19.05)]


def test_cups_answer_plates() -> None:
    """Plates at 99.35 and 675.35, cups 1.6 less: the reveal below the door."""
    planned = plan()
    assert planned.plates == pytest.approx((99.35, 675.35))
    assert planned.cups == pytest.approx((99.35 - 1.6, 675.35 - 1.6))
    assert (planned.needed, planned.against) == (2, ())
    assert told(planned) == []


def test_a_door_steps_aside_for_slides() -> None:
    """Slide holes beside every grid place near the target move the hinge off the grid."""
    holes = tuple((37.0, 83.35 + 8 + 32 * step) for step in (-2, 0, 2))
    planned = plan(holes)
    assert planned.placing is not None
    assert planned.placing.off_grid == planned.plates[:1]
    (finding,) = told(planned)
    assert (finding.code, finding.also) == ("hinge-off-grid", ("B1-SIDE-L",))
    assert told(plan(holes, grid=None)) == []


def test_mass_of_the_golden_door() -> None:
    """454 x 771.5 x 19.05 of MDF at 750 kg/m3."""
    front, _ = door()
    assert door_mass(front, MATERIAL, 19.05) == pytest.approx(0.454 * 0.7715 * 0.01905 * 750)


def test_under_a_sinks_rail_a_full_door_finds_no_room() -> None:
    """A rail on edge 100 high leaves nothing within 30 of the upper target of a full door."""
    front, carcass = door("sink")
    planned = plan_door(
        front, carcass, HINGE, material=MATERIAL, thickness=19.05, grid=19.35, holes=()
    )
    assert 774.7 - 100 - 35 < 774.7 - 1.6 - 100 - 30
    assert planned.placing is not None
    assert planned.placing.no_room
    assert [problem.code for problem in told(planned)] == ["hinge-no-room"]
