"""What is held back of a box, and what is drilled meanwhile."""

from msgspec.structs import replace

from jigs.box.plan import BoxPlan, plan_box
from jigs.given.job import BoxSpec, FrontSpec, Job
from jigs.given.stated import DrawerSize
from jigs.layout.checking import check_box
from jigs.layout.finished import Held, hold
from tests.jigs.sample import box, job


def held(spec: BoxSpec, **given: object) -> tuple[BoxPlan, Held]:
    """Plan a box, check it, and hold back what is wrong."""
    whole: Job = replace(job(spec), **given)
    plan = plan_box(whole, spec)
    return plan, hold(plan, check_box(whole, plan))


def test_nothing_is_held_of_a_sound_box() -> None:
    """All that is planned is drilled."""
    plan, kept = held(box(FrontSpec(id="B1-1", kind="door", hinged="left")))
    assert kept.errors == {}
    assert kept.work == plan.work
    assert kept.missing == {(1, "left"): (), (1, "right"): ()}


def test_a_door_without_a_hand_may_come_on_either_side() -> None:
    """Its errors withhold it, and both sides wait for its plates."""
    _, kept = held(box(FrontSpec(id="B1-1", kind="door")))
    assert [problem.code for problem in kept.errors_of("B1-1")] == ["hand-not-stated"]
    assert kept.missing == {(1, "left"): ("B1-1",), (1, "right"): ("B1-1",)}


def test_what_serves_a_part_held_back_is_not_drilled() -> None:
    """The upper drawer, its box 20 high, is held: its slides' holes stay out of both sides, those
    of the lower one are drilled."""
    low = FrontSpec(
        id="B1-1", kind="drawer", height=200.0, drawer_box=DrawerSize(drawer_height=20.0)
    )
    plan, kept = held(box(low, FrontSpec(id="B1-2", kind="drawer")))
    assert set(kept.errors) == {"B1-1"}
    for key in ((1, "left"), (1, "right")):
        assert {fitting.part for fitting in plan.work[key]} == {"B1-1", "B1-2"}
        assert {fitting.part for fitting in kept.work[key]} == {"B1-2"}
        assert kept.missing[key] == ("B1-1",)
