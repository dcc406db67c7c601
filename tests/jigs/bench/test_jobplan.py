"""The work divided into days: shares of what is taken in hand, never a time."""

from collections.abc import Mapping, Sequence
from pathlib import Path

import pytest
from msgspec.structs import replace

from jigs.bench.jobplan import Day, JobPlan, divide, find_done, find_today
from jigs.bench.kept import Kept
from jigs.bench.standing import Step
from jigs.bench.workplan import Stage, Task
from jigs.given.build import Paint
from jigs.given.job import FrontSpec, Job
from jigs.given.measured import Arrival, DeliveredPiece, Delivery
from tests.jigs.bench.test_workplan import BOX, planned, stages
from tests.jigs.sample import box, job

CUT, BORED = Step(kind="cut"), Step(kind="bored", work="cups")


def cut(*amounts: tuple[str, int]) -> Stage:
    tasks = tuple(
        Task(part=f"{box}-{number}", boxes=(box,), step=CUT, amount=amount)
        for number, (box, amount) in enumerate(amounts)
    )
    return Stage(kind="cut", step=CUT, tasks=tasks)


def shares(days: tuple[Day, ...]) -> list[list[int]]:
    return [[stage.amount for stage in day.stages] for day in days]


def many(count: int) -> Job:
    boxes = [
        replace(box(FrontSpec(id=f"B{n}-1", kind="door", hinged="left")), id=f"B{n}")
        for n in range(1, count + 1)
    ]
    return job(*boxes)


def test_a_stage_is_divided_box_by_box_into_like_shares() -> None:
    """24 in days of 10 at most are three of 8; two boxes of 6 do not go into one day."""
    eights = cut(*[(f"B{n}", 4) for n in range(6)])
    assert shares(divide([eights], 10)) == [[8], [8], [8]]
    sixes = cut(("B1", 3), ("B1", 3), ("B2", 3), ("B2", 3))
    assert shares(divide([sixes], 10)) == [[6], [6]]


def test_a_box_that_takes_more_than_a_day_is_divided_itself() -> None:
    """Piece by piece; a single piece never."""
    assert shares(divide([cut(("B1", 4), ("B1", 4), ("B1", 4))], 5)) == [[4], [4], [4]]
    assert shares(divide([cut(("B1", 9))], 5)) == [[9]]


def test_small_stages_share_a_day_until_it_is_full() -> None:
    """Two of 3 go into a day of 6, the third does not."""
    banded = replace(cut(("B1", 3)), kind="banded")
    assert shares(divide([cut(("B1", 3)), banded, banded], 6)) == [[3, 3], [3]]


def test_no_station_is_parted() -> None:
    """Its bit and stop are set once, however small a day is."""
    plan = planned(many(3), most=1)
    at = [stage.station.name for stage in stages(plan) if stage.station]
    assert len(at) == len({*at})
    assert any(stage.amount > 1 for stage in stages(plan) if stage.station)


def test_glue_paint_and_a_delivery_end_a_day() -> None:
    """However much a day holds: nothing stands behind glue but glue, each coat is by itself."""
    days = planned(replace(job(BOX), paint=Paint(coats=2)), most=10_000).days
    coats = [day for day in days if any(stage.kind in ("back", "front") for stage in day.stages)]
    assert [len(day.stages) for day in coats] == [1] * 4
    [ordered] = [day for day in days if any(stage.kind == "order" for stage in day.stages)]
    assert ordered.stages[-1].kind == "order"
    for day in days:
        kinds = [stage.kind for stage in day.stages]
        if "assembled" in kinds:
            assert {*kinds[kinds.index("assembled") :]} == {"assembled"}


@pytest.mark.parametrize("most", [1, 7, 60, 1000])
def test_however_long_a_day_is_the_work_is_the_same(most: int) -> None:
    """The same tasks in the same order, and no day over its measure but for a station, or for one
    piece alone."""
    plan = planned(many(4), most=most)
    every = [(task.part, task.step) for day in plan.days for task in day.tasks]
    assert every == [(task.part, task.step) for day in planned(many(4)).days for task in day.tasks]
    assert [day.number for day in plan.days] == [*range(1, len(plan.days) + 1)]
    for day in plan.days:
        over = sum(task.amount for task in day.tasks) > most
        assert not over or len(day.stages) == 1
        assert not over or day.stages[0].station or len(day.tasks) == 1


def today(marks: Mapping[str, Sequence[str]]) -> int:
    """Give today's number, of the golden box with these steps marked."""
    kept = {part: Kept(marks=dict.fromkeys(keys, "")) for part, keys in marks.items()}
    return planned(job(BOX), kept=kept).today


def marks_before(plan: JobPlan, number: int) -> dict[str, list[str]]:
    """Mark all that stands on days before this one."""
    marks: dict[str, list[str]] = {}
    for day in plan.days[: number - 1]:
        for task in day.tasks:
            if task.step is not None:
                marks.setdefault(task.part, []).append(task.step.key)
    return marks


def test_today_is_the_first_day_with_anything_left() -> None:
    """Of a job that nobody began the first; then that of the first step that is not marked."""
    plan = planned(job(BOX))
    assert plan.days[1].stages[0].kind == "cut"
    assert today({}) == 1
    assert today({"B1-BOTTOM": ("cut",)}) == 2
    assert today(marks_before(plan, len(plan.days))) == len(plan.days)
    assert today(marks_before(plan, len(plan.days) + 1)) == len(plan.days) + 1


def test_what_nobody_can_mark_is_behind_who_has_marked_anything_later() -> None:
    """All boards are together: the boxes are to be measured. One front has arrived: they are set,
    too."""
    plan = planned(job(BOX))
    [ordering] = [d.number for d in plan.days if any(s.kind == "order" for s in d.stages)]
    marks = marks_before(plan, ordering)
    assert today(marks) == ordering
    [setting] = [d.number for d in plan.days if any(s.kind == "set" for s in d.stages)]
    assert ordering < setting
    assert today({**marks, "B1-2": ["arrived"]}) > setting


def test_a_box_is_known_to_be_set_when_something_hangs_in_it() -> None:
    """Nobody marks a box: a front that hangs says it."""
    hung = planned(job(BOX), kept={"B1-2": Kept(marks={"hung": ""})})
    [setting] = [stage for stage in stages(hung) if stage.kind == "set"]
    assert all(map(hung.done.is_done, setting.tasks))
    bored = planned(job(BOX), kept={"B1-2": Kept(marks={"bored-cups": ""})})
    assert not any(map(bored.done.is_done, setting.tasks))


def test_nothing_is_done_by_marks_of_parts_that_are_gone() -> None:
    """They name no task."""
    plan = planned(job(BOX))
    gone = {"B9-1": Kept(marks={"hung": ""})}
    done = find_done(plan.parts.values(), plan.courses, gone)
    assert find_today(plan.days, done) == 1
    assert not any(done.is_done(task) for day in plan.days for task in day.tasks)


def test_fronts_in_hand_have_begun_nothing() -> None:
    """A delivered list says that they came: they are done, and the work begins on the first day
    all the same."""
    piece = DeliveredPiece(where="list.csv: row 2", row="row 2", id="B1-2")
    came = Delivery(
        file=Path("list.csv"), ordered=2, arrivals={"B1-2": Arrival(piece=piece, thickness=19.05)}
    )
    plan = planned(replace(job(BOX), delivery=came))
    assert plan.today == 1
    done = {
        (task.part, task.step.key)
        for day in plan.days
        for task in day.tasks
        if task.step is not None and plan.done.is_done(task)
    }
    assert done == {("B1-2", "arrived")}
