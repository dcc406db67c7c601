"""The plate that brings a door over: OV = C0 + K - Hp (common practice, TRADE of the project)."""

import pytest
from msgspec.structs import replace

from jigs.box.parts import Front
from jigs.given.job import Job
from jigs.layout.layout import lay_out
from jigs.room.otherplate import other_plate
from tests.jigs.room.test_reckoning import two_doors


@pytest.fixture(scope="module")
def hung() -> tuple[Job, Front]:
    layout = lay_out(two_doors("left", "right"))
    door = next(front for front in layout.fronts if front.swings and front.hinge)
    return layout.job, door


@pytest.mark.parametrize("hand", ["left", "right"])
@pytest.mark.parametrize("away", [1.2, -1.2])
def test_less_overlay_wants_a_higher_plate(hung: tuple[Job, Front], hand: str, away: float) -> None:
    """A door that goes from its hinge edge by 1.2 laps 1.2 less: the plate is 1.2 higher."""
    its_job, front = hung
    assert front.hinge is not None
    door = replace(front, hinged=hand, hinge=replace(front.hinge, plate=3.0))
    found = other_plate(door, its_job, away if hand == "left" else -away)
    assert found is not None
    assert found.wanted == pytest.approx(3.0 + away)


def test_the_nearest_at_hand_is_named_where_it_helps(hung: tuple[Job, Front]) -> None:
    """Of 0, 3 and 5 mm, 4.4 is nearest to 5: the screws take 0.6 back; 3.4 is nearest to 3, on
    which it hangs. Below 0 there is none."""
    its_job, front = hung
    assert front.hinge is not None
    record = replace(its_job.hinges[front.hinge.record], plates=(0.0, 3.0, 5.0))
    its_job = replace(its_job, hinges={**its_job.hinges, record.name: record})
    door = replace(front, hinged="left", hinge=replace(front.hinge, plate=3.0))
    better = other_plate(door, its_job, 1.4)
    assert better is not None
    assert better.at_hand == 5.0
    assert better.left == pytest.approx(0.6)
    same = other_plate(door, its_job, 0.4)
    assert same is not None
    assert same.at_hand is None
    assert other_plate(door, its_job, -3.5) is None
    # 7.5 is wanted: on 5 the screws would have to do 2.5, and reach 2.
    far = other_plate(door, its_job, 4.5)
    assert far is not None
    assert far.wanted == pytest.approx(7.5)
    assert far.at_hand is None
