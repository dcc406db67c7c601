"""The course of a part: which steps it has, in which order, and what they wait for.

The order of the work, and what is done with each kind of part: common practice, no source.
"""

from collections.abc import Mapping
from graphlib import TopologicalSorter
from pathlib import Path

import pytest
from hypothesis import given, settings
from msgspec.structs import replace

from jigs.bench.course import Course, plan_courses
from jigs.bench.kept import NOTHING_KEPT, Kept, stand
from jigs.bench.stations import plan_stations
from jigs.bench.tracked import track
from jigs.cutlist.cutlist import cut_list
from jigs.given.build import Build, Paint
from jigs.given.job import FrontSpec, Job, ShelfSpec
from jigs.given.measured import Arrival, DeliveredPiece, Delivery
from jigs.given.stated import Boring, EndPanels, Hung, OpenedBy
from jigs.given.wallspec import WallSpec
from jigs.layout.layout import lay_out
from tests.jigs.sample import PULL, box, job
from tests.jobs import jobs

DRAWER = FrontSpec(id="B1-1", kind="drawer", height=152.4)
DOOR = FrontSpec(id="B1-2", kind="door", hinged="left")
BOX = replace(box(DRAWER, DOOR), shelves=(ShelfSpec(low=200.0, high=400.0),))
PAINT = ["back-1", "back-2", "front-1", "front-2"]


def courses(made: Job) -> Mapping[str, Course]:
    layout = lay_out(made)
    return plan_courses(layout, track(layout, cut_list(layout)), plan_stations(layout))


def steps(made: Job, part: str) -> list[str]:
    return [step.key for step in courses(made)[part].steps]


def waits(course: Course, step: str) -> list[tuple[str, str]]:
    said = course.waits.get(step, ())
    return [(wait.part, wait.step.key if wait.step else "HOLD") for wait in said]


def test_a_door_is_bored_before_it_is_painted_and_painted_before_it_is_hung() -> None:
    """Arrived, cups, pull, coat by coat on the back and then on the face, hung, adjusted."""
    assert steps(job(BOX), "B1-2") == [
        "arrived", "bored-cups", "bored-pulls", *PAINT, "hung", "adjusted",
    ]  # fmt: skip


def test_a_drawers_front_is_marked_through_its_box() -> None:
    """The place of its drawer box is a step, which waits until the box is bored."""
    made = courses(job(BOX))
    assert [step.key for step in made["B1-1"].steps] == [
        "arrived", "bored-pulls", "bored-fronts-on-boxes", *PAINT, "hung", "adjusted",
    ]  # fmt: skip
    assert waits(made["B1-1"], "bored-fronts-on-boxes") == [("B1-1-BOX", "bored-drawer-boxes")]
    assert waits(made["B1-1"], "hung") == [("B1-1-BOX", "fitted")]


def test_a_pull_through_the_drawer_box_comes_after_the_front_is_on() -> None:
    """Its holes go through front and box together."""
    pull = replace(PULL, screws="through")
    assert steps(job(BOX, pull=pull), "B1-1") == [
        "arrived", "bored-fronts-on-boxes", *PAINT, "hung", "bored-pulls-through", "adjusted",
    ]  # fmt: skip


def test_a_door_waits_for_the_plates_of_its_own_side() -> None:
    """It hangs on the left: the right side may be without slides still."""
    made = courses(job(BOX))
    assert waits(made["B1-2"], "hung") == [("B1-SIDE-L", "mounted")]
    assert waits(made["B1-1-BOX"], "fitted") == [("B1-SIDE-L", "mounted"), ("B1-SIDE-R", "mounted")]


def test_what_has_nothing_to_drill_is_not_drilled() -> None:
    """A door that came bored has no cups to bore; without a pull it has no holes at all."""
    spec = replace(
        DOOR, boring=Boring(bored=True), hung=Hung(hinges_at=(100.0, 500.0)),
        opened_by=OpenedBy(pull="none"),
    )  # fmt: skip
    assert steps(job(box(spec)), "B1-2") == ["arrived", *PAINT, "hung", "adjusted"]
    plain = replace(FrontSpec(id="B1-1", kind="false-front"), opened_by=OpenedBy(pull="none"))
    assert steps(job(box(plain)), "B1-SIDE-L") == ["cut", "banded", "assembled"]


def test_a_false_front_is_fitted_and_nothing_adjusts_it() -> None:
    """It neither swings nor runs."""
    assert steps(job(box(FrontSpec(id="B1-1", kind="false-front"))), "B1-1") == [
        "arrived", "bored-false-fronts", *PAINT, "fitted",
    ]  # fmt: skip


def test_coats_are_as_many_as_the_job_says() -> None:
    """One coat: one on each face."""
    one = replace(job(BOX), paint=Paint(coats=1))
    assert [name for name in steps(one, "B1-2") if name.startswith(("back-", "front-"))] == [
        "back-1", "front-1",
    ]  # fmt: skip


def test_a_side_is_drilled_before_its_box_is_together() -> None:
    """Cut, banded, drilled, its plates and slides on, then assembled; band that comes later comes
    after the drill; in a box that stands already the side is only drilled."""
    assert steps(job(BOX), "B1-SIDE-L") == [
        "cut", "banded", "bored-sides", "mounted", "assembled",
    ]  # fmt: skip
    assert steps(job(replace(BOX, band="later")), "B1-SIDE-L") == [
        "cut", "bored-sides", "mounted", "banded", "assembled",
    ]  # fmt: skip
    stands = replace(BOX, assembled=True)
    assert steps(job(stands), "B1-SIDE-L") == ["bored-sides", "mounted"]
    assert steps(job(stands), "B1-BOTTOM") == []
    built = job(replace(stands, built=True))
    assert steps(built, "B1-SIDE-L") == ["bored-sides", "mounted"]
    assert "B1-BOTTOM" not in courses(built)


def test_pieces_are_cut_banded_and_put_together() -> None:
    """A back has no band; a shelf is set on pins whose holes are bored."""
    made = courses(job(BOX))
    assert [step.key for step in made["B1-BACK"].steps] == ["cut", "assembled"]
    assert [step.key for step in made["B1-SHELF-1"].steps] == ["cut", "banded", "fitted"]
    assert waits(made["B1-SHELF-1"], "fitted") == [
        ("B1-SIDE-L", "bored-sides"), ("B1-SIDE-R", "bored-sides"),
    ]  # fmt: skip


def test_what_meets_a_wall_is_scribed_before_it_is_painted() -> None:
    """A panel at the wall is; at an island, where its back closes it, it is not, but where the
    floor rises there too."""
    panel = replace(BOX, panels=EndPanels(left="flush"))
    assert steps(job(panel), "B1-PANEL-L") == ["cut", "scribed", *PAINT, "fitted"]
    island = replace(BOX, panels=EndPanels(left="flush", back=True))
    assert steps(job(island), "B1-PANEL-L") == ["cut", *PAINT, "fitted"]
    rising = replace(job(island), walls=(WallSpec(name=BOX.wall, floor_high=6.0),))
    assert steps(job(island), "NORTH-BACK-1") == ["cut", *PAINT, "fitted"]
    for part in ("B1-PANEL-L", "NORTH-BACK-1"):
        assert steps(rising, part) == ["cut", "scribed", *PAINT, "fitted"]


def test_a_drawer_box_is_made_of_its_pieces_or_arrives() -> None:
    """Ordered ones have no pieces and are not put together."""
    made = courses(job(BOX))
    assert [step.key for step in made["B1-1-BOX"].steps] == [
        "assembled", "bored-drawer-boxes", "fitted",
    ]  # fmt: skip
    assert ("B1-1-BOX-SIDE", "cut") in waits(made["B1-1-BOX"], "assembled")
    ordered = replace(job(BOX), build=Build(drawer_boxes="ordered"))
    assert steps(ordered, "B1-1-BOX")[0] == "arrived"
    bored = replace(job(BOX), build=Build(drawer_boxes="ordered", drawer_bored=True))
    assert steps(bored, "B1-1-BOX") == ["arrived", "fitted"]
    assert waits(courses(bored)["B1-1"], "bored-fronts-on-boxes") == [("B1-1-BOX", "arrived")]


def test_what_is_held_back_may_arrive_and_no_more() -> None:
    """A door without a hand: its sides wait for it where its plates are to come."""
    made = courses(job(box(DRAWER, replace(DOOR, hinged=None))))
    door = made["B1-2"]
    assert waits(door, "arrived") == []
    assert all(waits(door, step.key)[0] == ("B1-2", "HOLD") for step in door.steps[1:])
    assert not [step for step in door.steps if step.kind == "bored"]
    side = made["B1-SIDE-L"]
    assert waits(side, "cut") == []
    assert waits(side, "bored-sides") == [("B1-2", "HOLD")]


def test_what_the_delivered_list_names_has_arrived() -> None:
    """The job says so itself: nobody need mark it."""
    piece = DeliveredPiece(where="list.csv: row 2", row="row 2", id="B1-2")
    came = Delivery(
        file=Path("list.csv"), ordered=2, arrivals={"B1-2": Arrival(piece=piece, thickness=19.05)}
    )
    made = courses(replace(job(BOX), delivery=came))
    assert made["B1-2"].given == {"arrived"}
    assert made["B1-1"].given == frozenset()


def check_turns(made: Job) -> None:
    planned = courses(made)
    before: dict[tuple[str, str], list[tuple[str, str]]] = {}
    for part, course in planned.items():
        keys = [step.key for step in course.steps]
        assert len(set(keys)) == len(keys)
        assert course.waits.keys() | course.given <= set(keys)
        for earlier, key in zip((None, *keys), keys, strict=False):
            before[part, key] = [] if earlier is None else [(part, earlier)]
            for wait in course.waits.get(key, ()):
                if wait.step is not None:
                    assert wait.step in planned[wait.part].steps
                    before[part, key].append((wait.part, wait.step.key))
    assert len([*TopologicalSorter(before).static_order()]) == len(before)


def do_what_is_ready(made: Job) -> None:
    layout = lay_out(made)
    parts = track(layout, cut_list(layout))
    planned = plan_courses(layout, parts, plan_stations(layout))
    kept: dict[str, Kept] = {}
    while ready := [
        standing
        for standing in stand(parts, planned, kept).values()
        if standing.next is not None and not standing.waits
    ]:
        for standing in ready:
            assert standing.next is not None
            marks = {**kept.get(standing.part, NOTHING_KEPT).marks, standing.next.key: ""}
            kept[standing.part] = Kept(marks=marks)
    left = [each for each in stand(parts, planned, kept).values() if each.next is not None]
    if not layout.has_held:
        assert left == []
    assert all(each.waits for each in left)


@settings(max_examples=5)
@given(jobs())
def test_no_part_waits_for_itself_in_a_circle(made: Job) -> None:
    """Of whatever kitchen: each step has a key of its own, waits for what is there, and comes to
    its turn, whatever of the job is not held back."""
    check_turns(made)


@settings(max_examples=5)
@given(jobs())
def test_what_is_not_held_back_is_done_step_by_step(made: Job) -> None:
    """Who always does what is ready comes to the end of all that nothing holds back."""
    do_what_is_ready(made)


@pytest.mark.slow
@settings(max_examples=30)
@given(jobs())
def test_the_courses_of_many_jobs_come_to_their_end(made: Job) -> None:
    """Both, at length."""
    check_turns(made)
    do_what_is_ready(made)
