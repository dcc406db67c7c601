"""An interview makes a job file that reads back to what was answered."""

from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from jigs.asking.answering import answer_all
from jigs.asking.draft import Draft
from jigs.asking.forms import TypedLength
from jigs.asking.interview import EDGE, GAP, GivenList, interview, reveals
from jigs.asking.question import OPEN, Question
from jigs.given.catalogue import solve_constant
from jigs.given.hardware import HingeRecord, PullRecord, SlideRecord
from jigs.given.job import COUNTER_BOXES, Job, Material
from jigs.ground.keys import keys_of
from jigs.ground.lengths import MM_PER_INCH
from jigs.reading.frontlist import read_front_list
from jigs.reading.jobfile import read_job_text
from templates.words.jobtext import job_text
from tests.jigs.asking.talks import answer, hold

LIST = """\
box;kind;width (mm);height (mm);count;hinged;pull
K1;drawer;596,8;140;1;;Bügel 12 "B"
K1;door;596,8;573,6;1;left;
K2;drawer;396,8;237,2;3;;none
W1;door;596,8;716,8;1;right;bügel 12 "B"
W2;pair;298,4;716,8;1;;
"""
"""An invented list, in millimetres."""


def listed(folder: Path) -> GivenList:
    path = folder / "Fronten Ö.csv"
    path.write_text(LIST, encoding="utf-8")
    return GivenList(name=path.name, front_list=read_front_list(path), table=lambda unit, _: "")


def read_back(draft: Draft, folder: Path) -> Job:
    return read_job_text(job_text(draft), folder / "job.toml")


Meant = dict[str, Any]


def talk(data: st.DataObject, folder: Path, *, from_list: bool) -> tuple[Draft, Meant]:
    """Hold a made-up interview; give what each answer meant, None for one that stays open."""
    meant: Meant = {}

    def answered(question: Question[Any]) -> str:
        text = question.settle(answer(data.draw, question))
        meant[question.key] = question.read(text)
        return text

    start = interview("Küche", listed(folder) if from_list else None)
    return hold(start, answered), meant


@pytest.mark.parametrize("from_list", [False, True])
@settings(max_examples=12)
@given(data=st.data())
def test_any_answers_read_back(
    data: st.DataObject, from_list: bool, tmp_path_factory: pytest.TempPathFactory
) -> None:
    """Each answer stands in the job as it was meant; what stayed open is assumed or open there."""
    check_talk(data, tmp_path_factory.getbasetemp(), from_list=from_list)


@pytest.mark.slow
@pytest.mark.parametrize("from_list", [False, True])
@settings(max_examples=100)
@given(data=st.data())
def test_many_answers_read_back(
    data: st.DataObject, from_list: bool, tmp_path_factory: pytest.TempPathFactory
) -> None:
    """The same, at length."""
    check_talk(data, tmp_path_factory.getbasetemp(), from_list=from_list)


@settings(max_examples=8)
@given(data=st.data())
def test_nobody_need_sit_there(data: st.DataObject) -> None:
    """Answers that are there already make the same draft; only the first box and the wall round a
    corner have no usual answer."""
    said: dict[str, str] = {}
    wanting: set[str] = set()

    def answered(question: Question[Any]) -> str:
        if not question.unsaid:
            wanting.add(question.key)
        said[question.key] = question.settle(answer(data.draw, question))
        return said[question.key]

    draft = hold(interview("Küche"), answered)
    assert answer_all(interview("Küche"), said).draft == draft
    assert all(key == "box.1" or key.endswith("_meets") for key in wanting)


def check_talk(data: st.DataObject, folder: Path, *, from_list: bool) -> None:
    draft, meant = talk(data, folder, from_list=from_list)
    job = read_back(draft, folder)
    assert (job.name, job.units) == ("Küche", meant["units"])
    check_reveal(job, meant)
    check_material(job, meant)
    check_hardware(job, meant)
    check_boxes(job, meant, from_list=from_list)
    check_walls(job, meant)


def near(length: TypedLength | None) -> Any:
    assert length is not None
    return pytest.approx(length.mm, abs=1e-6)


def check_reveal(job: Job, meant: Meant) -> None:
    if meant["reveal"] is None:
        assert {"reveal.side", "reveal.bottom", "reveal.between"} <= job.assumed
        return
    amount = meant["reveal"].mm
    side, between = (amount, 2 * amount) if meant["reveal_is"] == EDGE else (amount / 2, amount)
    assert job.reveal.side == job.reveal.bottom == pytest.approx(side, abs=1e-4)
    assert job.reveal.between == pytest.approx(between, abs=1e-4)
    assert not {"reveal.side", "reveal.bottom", "reveal.between"} & job.assumed
    assert ("reveal.top" in job.assumed) <= (meant["reveal_top"] is None)
    assert ("reveal.under_counter" in job.assumed) <= (meant["reveal_top"] is None)
    if meant["reveal_top"]:
        assert job.reveal.top_of("base") == near(meant["reveal_top"][0])
        assert job.reveal.top_of("wall") == near(meant["reveal_top"][-1])


def check_material(job: Job, meant: Meant) -> None:
    for name in keys_of(Material):
        said = meant.get(f"material.{name}")
        if isinstance(said, TypedLength):
            assert getattr(job.material, name) == near(said)
        elif said:
            assert getattr(job.material, name) == said
        assert (said is not None) <= (f"material.{name}" not in job.assumed)


def check_hardware(job: Job, meant: Meant) -> None:
    for kind, values, records in (
        ("hinge", HingeRecord, job.hinges),
        ("slide", SlideRecord, job.slides),
    ):
        for name in keys_of(values):
            if (said := meant.get(f"{kind}.{name}")) is None or name == "mount":
                continue
            record: Any = records["mine"]
            if name == "constant" and not isinstance(said, TypedLength):
                tab, plate, overlay = (each.mm for each in said)
                said = TypedLength("", solve_constant(tab=tab, plate=plate, overlay=overlay))
            wanted = [each.mm for each in said] if type(said) is tuple else said.mm
            got = getattr(record, name)
            got = list(got) if isinstance(got, tuple) else got
            assert got == pytest.approx(wanted, abs=1e-6)
            assert record.confirmed[name] == meant[f"{kind}.confirmed"]
    if (mount := meant.get("slide.mount")) and job.use.slide:
        assert job.slides[job.use.slide].mount == mount
    for group in ("drawer", "door"):
        if f"{group}_pull" not in meant:
            continue
        said, name = meant[f"{group}_pull"], getattr(job.use, f"{group}_pull")
        assert (said == "none") == (name == "none")
        if name == "none":
            continue
        pull: PullRecord = job.pulls[name]
        if said == "knob":
            assert pull.centers is None
        elif said is None:
            assert pull.centers == 160
            assert "centers" not in pull.confirmed
        else:
            assert pull.centers == near(said)
            assert pull.confirmed.get("centers") == meant["pull.confirmed"]
        keys = ("drawer",) if group == "drawer" else ("door_inset", "door_corner", "tall_height")
        for key in keys:
            if where := meant.get(f"pull.{key}"):
                wanted = where if isinstance(where, str) else near(where)
                assert getattr(pull, key) == wanted


def check_named_pull(job: Job, meant: Meant) -> None:
    """A pull that the list names is a record of the job."""
    said = meant['pull.Bügel 12 "B".centers']
    assert job.pulls['Bügel 12 "B"'].centers == (
        None if said == "knob" else near(said) if said else 160
    )
    [own] = [front for box in job.boxes for front in box.fronts if front.id == "W1-1"]
    assert own.opened_by.pull == 'Bügel 12 "B"'


def check_boxes(job: Job, meant: Meant, *, from_list: bool) -> None:
    for box in job.boxes:
        row = "wall_" if box.kind == "wall" else ""
        if above := meant[f"{row}above_floor"]:
            assert box.above_floor == near(above)
        assert (above is None) == (f"box.{box.id}.above_floor" in job.assumed)
        count = meant.get(f"shelves.{box.kind}")
        doors = any(front.kind in ("door", "pair", "lift") for front in box.fronts)
        if count is not None and doors:
            assert [shelf.count for shelf in box.shelves] == [count] * (count > 0)
            assert box.no_shelf == (count == 0)
    if from_list:
        check_listed(job, meant)
        check_named_pull(job, meant)
        return
    told = [said for key, said in meant.items() if key.startswith("box.") and said]
    assert sorted(box.id for box in job.boxes) == sorted(box.id for box in told)
    for said in told:
        [box] = [box for box in job.boxes if box.id == said.id]
        row = "wall_" if said.kind == "wall" else ""
        assert (box.kind, box.width, box.height) == (said.kind, said.width.mm, said.height.mm)
        if depth := said.depth or meant[f"{row}depth"]:
            assert box.depth == near(depth)
        fronts = [each for front in said.fronts for each in [front] * front.count]
        assert [(f.kind, f.hinged, f.height) for f in box.fronts] == [
            (f.kind, f.hinged, f.height.mm if f.height else None) for f in fronts
        ]


def check_listed(job: Job, meant: Meant) -> None:
    """The boxes are those of the list, with what was said otherwise."""
    kinds = {fix.id: fix.kind for fix in meant["boxes.1"] or ()}
    usual = {"K1": "base", "K2": "drawer", "W1": "wall", "W2": "wall"}
    stack = {"K1": 140 + 573.6, "K2": 3 * 237.2, "W1": 716.8, "W2": 716.8}
    gaps = {"K1": 1, "K2": 2, "W1": 0, "W2": 0}
    assert {box.id: box.kind for box in job.boxes} == {**usual, **kinds}
    for box in job.boxes:
        reveal, under = job.reveal, box.kind in COUNTER_BOXES
        top = reveal.top_of(box.kind)
        if meant["reveal_top"] is None:
            inch = meant["units"] == "in"
            top = (
                (MM_PER_INCH / 8 if inch else 3.0) if under else (MM_PER_INCH / 16 if inch else 1.6)
            )
        inside = stack[box.id] + gaps[box.id] * reveal.between
        assert box.height == pytest.approx(inside + top + reveal.bottom, abs=1e-3)
        if depth := meant["wall_depth" if box.kind == "wall" else "depth"]:
            assert box.depth == near(depth)
        assert len(box.fronts) == {"K1": 2, "K2": 3, "W1": 1, "W2": 1}[box.id]
        assert not box.inferred


def check_walls(job: Job, meant: Meant) -> None:
    said = meant["walls"] or ()
    assert [wall.name for wall in job.walls] == [wall.name for wall in said]
    for wall in job.walls:
        [told] = [each for each in said if each.name == wall.name]
        assert [box.id for box in job.boxes if box.wall == wall.name] == list(told.boxes)
        assert [thing.id for thing in wall.appliances] == [
            thing.id for thing in told.things if not isinstance(thing, str)
        ]
        for key in ("ceiling", "counter", "counter_thickness"):
            height = meant.get(key)
            assert getattr(wall, key) == (near(height) if height else None)
        for hand in ("left", "right"):
            key = f"wall.{wall.name}.{hand}"
            end = wall.left if hand == "left" else wall.right
            if key in meant:
                assert end.stands == meant[key]
            if filler := meant.get(f"{key}_filler"):
                assert end.filler == near(filler)
            if end.meets:
                [other] = [other for other in job.walls if other.name == end.meets]
                back = other.right if hand == "left" else other.left
                assert (back.stands, back.meets) in (("corner", wall.name), (None, None))


@pytest.mark.parametrize(
    ("meaning", "side", "between"), [(EDGE, 1.5875, 3.175), (GAP, 0.79375, 1.5875)]
)
def test_the_two_meanings_of_a_reveal(meaning: str, side: float, between: float) -> None:
    """1/16 in from a front's edge to its box's edge makes gaps of 1/8; as a gap it is halved."""
    assert reveals(MM_PER_INCH / 16, meaning) == pytest.approx((side, between))


def test_a_wall_box_behind_a_tall_one_begins_where_that_ends(tmp_path: Path) -> None:
    """Nothing hangs before a tall box; a box that says where it hangs hangs there."""
    answers = {
        "box.1": "T1 tall 600 x 2100: pair", "box.2": "B1 base 600 x 720: door left",
        "box.3": "W1 wall 400 x 720: door left", "box.4": "W2 wall 400 x 720: door left",
        "box.5": OPEN, "walls": "north: T1 B1 W1 W2@1200", "wall.north.left": "wall",
        "wall.north.left_filler": "50",
    }  # fmt: skip
    answered = answer_all(interview("x"), answers)
    assert answered.faults == ()
    assert answered.draft is not None
    job = read_back(answered.draft, tmp_path)
    assert [box.x for box in job.boxes] == [None, None, 50 + 600, 1200]


def test_a_range_at_the_very_left_moves_the_box_behind_it(tmp_path: Path) -> None:
    """It stands at the filler's end, and the first box where it ends."""
    answers = {
        "box.1": "B1 base 600 x 720: door left", "box.2": OPEN,
        "walls": "north: range=700x900 B1", "wall.north.left": "wall",
        "wall.north.left_filler": "50",
    }  # fmt: skip
    draft = answer_all(interview("x"), answers).draft
    assert draft is not None
    job = read_back(draft, tmp_path)
    assert [(thing.id, thing.x) for thing in job.walls[0].appliances] == [("RANGE", 50)]
    assert job.boxes[0].x == 50 + 700


def test_a_figure_that_is_worked_out_is_never_taken_for_another_unit(tmp_path: Path) -> None:
    """A gap of 1 in is written so that it does not read as 1 cm; nor a box of 50 in as one of
    50 cm."""
    answers = {
        "units": "in", "reveal": "1/2", "box.1": "B1 tall 18 x 50: door left", "box.2": OPEN,
    }  # fmt: skip
    draft = answer_all(interview("x"), answers).draft
    assert draft is not None
    assert read_back(draft, tmp_path).reveal.between == pytest.approx(25.4)
    path = tmp_path / "high.csv"
    path.write_text("box,kind,width (in),height (in),hinged\nB1,door,18,50,left\n", "utf-8")
    high = GivenList(name=path.name, front_list=read_front_list(path), table=lambda unit, _: "")
    draft = answer_all(interview("x", high), {"units": "in", "reveal": "0"}).draft
    assert draft is not None
    [box] = read_back(draft, tmp_path).boxes
    assert box.kind == "base"
    assert box.height == pytest.approx(50 * 25.4 + 25.4 / 8)


@pytest.mark.parametrize(
    ("boxes", "back", "like"),
    [
        # Inside depth that is needed: the slide's length and 16; 19 behind the back is set in.
        (["560"], "6 mm", "undermount-500"),
        (["541"], "6 mm", "undermount-500"),
        (["541"], "12 mm", "undermount-450"),
        (["560", "560", "400"], "6 mm", "undermount-500"),
        (["400", "560"], "6 mm", "undermount-500"),
        (["560", "400"], "6 mm", "undermount-500"),
    ],
)
def test_the_slide_is_the_longest_that_most_boxes_take(
    boxes: list[str], back: str, like: str
) -> None:
    """Behind the back that was measured; of as many deep ones as shallow ones the deep."""
    answers = {f"box.{n}": f"D{n} drawer 600 x 720 x {d}: 3 drawer" for n, d in enumerate(boxes, 1)}
    answers |= {f"box.{len(boxes) + 1}": OPEN, "material.back": back}
    draft = answer_all(interview("x"), answers).draft
    assert draft is not None
    [slide] = [section for section in draft.sections if section.name == "slide"]
    assert slide.lines[0].value == like


def test_what_cannot_be_read_is_told_all_at_once() -> None:
    """Each by the key of its question; a question without a usual answer ends the interview."""
    answered = answer_all(
        interview("x"), {"units": "ell", "reveal": "1/3", "box.1": "B1 bass 1 x 2 x 3: door"}
    )
    assert answered.draft is None
    assert [fault.where for fault in answered.faults] == ["units", "reveal", "box.1"]
    assert "in" in answered.faults[0].what
