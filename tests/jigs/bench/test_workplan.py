"""The order of the work of a whole job: each step of each part once, each station once, and never
against what the parts' own courses enforce.

Where the courses leave it free, the order is common practice, no source.
"""

from collections import Counter
from collections.abc import Mapping

import pytest
from hypothesis import given, settings
from msgspec.structs import replace

from jigs.bench.jobplan import MOST_A_DAY, JobPlan, plan_job
from jigs.bench.kept import NOTHING_KEPT, Kept, stand
from jigs.bench.stations import plan_stations
from jigs.bench.workplan import Stage
from jigs.cutlist.cutlist import cut_job
from jigs.given.build import Build, Paint
from jigs.given.job import FrontSpec, Job, ShelfSpec
from jigs.given.stated import EndPanels, RolloutSpec
from jigs.layout.layout import lay_out
from jigs.room.hanging import plan_hanging
from tests.jigs.sample import box, job
from tests.jobs import jobs

DRAWER = FrontSpec(id="B1-1", kind="drawer", height=152.4)
DOOR = FrontSpec(id="B1-2", kind="door", hinged="left")
BOX = replace(box(DRAWER, DOOR), shelves=(ShelfSpec(low=200.0, high=400.0),))
ROLLING = replace(box(DOOR), rollouts=(RolloutSpec(at=200.0, height=120.0, spacer_left=20.0),))


def planned(made: Job, most: int = MOST_A_DAY, kept: Mapping[str, Kept] | None = None) -> JobPlan:
    layout = lay_out(made)
    walls = {
        wall.elevation.wall: [each.seen.box.id for each in wall.order]
        for wall in plan_hanging(layout)
    }
    return plan_job(
        layout,
        cut_job(layout),
        plan_stations(layout),
        kept,
        setting=walls,
        ordering=True,
        most=most,
    )


def stages(plan: JobPlan) -> list[Stage]:
    return [stage for day in plan.days for stage in day.stages]


def names(plan: JobPlan) -> list[str]:
    """Name the stages: a station by itself, what drawer boxes have as theirs."""
    return [
        stage.station.name if stage.station else
        f"{'drawers-' if stage.of_drawers else ''}{stage.step.key if stage.step else stage.kind}"
        for stage in stages(plan)
    ]  # fmt: skip


def hold_together(plan: JobPlan) -> None:
    """Hold a plan against the courses: the same steps, each once, and each in its turn."""
    every = [(task.part, task.step.key, stage.station and stage.station.name)
             for stage in stages(plan) for task in stage.tasks if task.step]  # fmt: skip
    assert len(every) == len(set(every))
    wanted = {(part, step.key) for part, course in plan.courses.items() for step in course.steps}
    assert {(part, key) for part, key, _ in every} == wanted
    unbored = Counter((part, key) for part, key, station in every if station is None)
    assert set(unbored.values()) <= {1}
    assert not any(key.startswith("bored") for _, key in unbored)

    # Who does what stands in the plan is always told to do just that, and never to wait.
    left = Counter((part, key) for part, key, _ in every)
    tracked = tuple(plan.parts.values())
    kept: dict[str, Kept] = {}
    for stage in stages(plan):
        standings = stand(tracked, plan.courses, kept)
        for task in stage.tasks:
            if task.step is None:
                continue
            standing = standings[task.part]
            following = [step for step in standing.steps if step.key not in standing.done]
            assert following[0] == task.step, (stage.kind, task)
            assert not [wait for wait in standing.waits if wait.step], (stage.kind, task)
            assert {wait.part for wait in standing.waits} <= {*task.held}
            left[task.part, task.step.key] -= 1
            if not left[task.part, task.step.key]:
                marks = {**kept.get(task.part, NOTHING_KEPT).marks, task.step.key: ""}
                kept[task.part] = Kept(marks=marks)


def each_station_once(plan: JobPlan) -> None:
    """Hold a plan against the stations: each is one stage, with every part that is bored there."""
    own = [stage for stage in stages(plan) if stage.station is not None]
    assert sorted(stage.station.name for stage in own if stage.station) == sorted(
        station.name for station in plan.stations
    )
    for stage in own:
        assert stage.station is not None
        rows = [row for row in stage.station.rows if not row.withheld and not row.bored]
        assert {*stage.parts} == {row.part.id for row in rows}
        assert len(stage.parts) == len({*stage.parts})
        assert stage.amount == sum(len(row.settings) for row in rows)


def check_plan(made: Job) -> None:
    plan = planned(made, most=40)
    hold_together(plan)
    each_station_once(plan)


@settings(max_examples=5)
@given(jobs())
def test_whatever_the_job_its_plan_goes_as_the_courses_do(made: Job) -> None:
    """Held parts too: they have their place, and say whose release they wait for."""
    check_plan(made)


@pytest.mark.slow
@settings(max_examples=30)
@given(jobs())
def test_the_plans_of_many_jobs_go_as_the_courses_do(made: Job) -> None:
    """The same, at length."""
    check_plan(made)


@pytest.mark.parametrize(
    "made",
    [
        job(BOX),
        job(box(DOOR)),
        job(box(DRAWER)),
        job(replace(BOX, band="later"), replace(box(replace(DOOR, id="B2-1")), id="B2")),
        job(replace(BOX, assembled=True)),
        job(replace(BOX, panels=EndPanels(left="flush"))),
        job(ROLLING),
        replace(job(BOX), paint=Paint(fronts_come="painted")),
        replace(job(BOX), build=Build(drawer_boxes="ordered", drawer_bored=True)),
        job(box(DRAWER, replace(DOOR, hinged=None))),
    ],
    ids=[
        "both",
        "doors",
        "drawers",
        "late band",
        "stands",
        "panel",
        "rollout",
        "painted",
        "ordered",
        "held",
    ],
)
def test_each_kind_of_job_is_worked_through(made: Job) -> None:
    """Every part stands in the plan with all its steps, and with no other."""
    plan = planned(made)
    hold_together(plan)
    each_station_once(plan)


def test_a_plan_against_the_courses_is_caught() -> None:
    """What holds a plan against them can fail: days exchanged, a stage left out."""
    plan = planned(job(BOX))
    hold_together(plan)
    with pytest.raises(AssertionError):
        hold_together(replace(plan, days=plan.days[::-1]))
    with pytest.raises(AssertionError):
        hold_together(replace(plan, days=plan.days[:-1]))


def test_the_work_of_the_golden_box_in_order() -> None:
    """Boards, boxes, then drawer boxes and fronts from boxes that stand; paint after the drill."""
    assert names(planned(replace(job(BOX), paint=Paint(coats=1)))) == [
        "before", "cut", "banded", "try", "sides", "mounted", "assembled", "order", "set",
        "drawers-cut", "arrived", "drawers-assembled", "drawer-boxes", "cups-right", "pulls-a",
        "pulls-b", "fronts-on-boxes", "back-1", "front-1", "drawers-fitted", "hung", "fitted",
        "adjusted",
    ]  # fmt: skip


def test_a_rollouts_spacer_is_cut_before_its_side_is_bored_with_it() -> None:
    """With the boards, not with the drawer boxes; it is mounted with its slide."""
    made = planned(job(ROLLING))
    of_spacer = [
        (name, "B1-ROLLOUT-1-SPACER-L" in stage.parts)
        for name, stage in zip(names(made), stages(made), strict=True)
    ]
    where = [name for name, there in of_spacer if there]
    assert where == ["cut", "mounted"]
    assert names(made).index("cut") < names(made).index("sides") < names(made).index("mounted")
    [wait] = made.courses["B1-SIDE-L"].waits["bored-sides"]
    assert (wait.part, wait.step and wait.step.key) == ("B1-ROLLOUT-1-SPACER-L", "cut")
    assert "bored-sides" not in made.courses["B1-SIDE-R"].waits


def test_a_kitchen_without_drawers_or_without_doors_has_no_stage_for_them() -> None:
    """Nothing is said of what is not there."""
    assert not [name for name in names(planned(job(box(DOOR)))) if name.startswith("drawer")]
    assert not [name for name in names(planned(job(box(DRAWER)))) if name.startswith("cups")]


def test_fronts_that_come_painted_are_not_painted_an_end_panel_is() -> None:
    """Paint has no stage but for the pieces that are cut here and seen."""
    painted = replace(job(BOX), paint=Paint(fronts_come="painted"))
    assert not [name for name in names(planned(painted)) if name.startswith(("back", "front-"))]
    panel = replace(painted, boxes=(replace(BOX, panels=EndPanels(left="flush")),))
    coats = [stage for stage in stages(planned(panel)) if stage.kind in ("back", "front")]
    assert [stage.parts for stage in coats] == [("B1-PANEL-L",)] * 4
    said = names(planned(panel))
    assert said.index("set") < said.index("scribed") < said.index("back-1")


def test_what_waits_for_a_held_part_says_so_at_every_step() -> None:
    """A door without a hand stops its sides at the drill, and so the drawer that runs in them."""
    plan = planned(job(box(DRAWER, replace(DOOR, hinged=None))))
    held = {
        (task.part, task.step.key): task.held
        for stage in stages(plan) for task in stage.tasks if task.step
    }  # fmt: skip
    assert held["B1-SIDE-L", "cut"] == ()
    assert held["B1-SIDE-L", "bored-sides"] == ("B1-2",)
    assert held["B1-SIDE-L", "assembled"] == ("B1-2",)
    assert held["B1-1-BOX", "fitted"] == ("B1-2",)
    assert held["B1-1", "hung"] == ("B1-2",)
    assert held["B1-BOTTOM", "assembled"] == ()
    assert held["B1-1", "bored-pulls"] == ()
    assert {"B1-SIDE-L", "B1-1-BOX", "B1-1"} <= {*plan.stopped_by("B1-2")}


def test_boxes_are_set_in_the_order_that_hanging_says() -> None:
    """From the left where no wall is described, whichever is named first."""
    right = replace(box(replace(DOOR, id="B2-1"), name="B2"), x=457.2)
    left = replace(box(DOOR), x=0.0)
    [stage] = [each for each in stages(planned(job(right, left))) if each.kind == "set"]
    assert stage.parts == ("B1", "B2")
