"""The order of work on a screen and on paper: the same words, every station with its pages once,
what is open or held where it stops the work."""

import json
import re
from functools import cache

import pytest
from msgspec.structs import replace

from jigs.bench.kept import Kept
from jigs.bench.stations import plan_stations
from jigs.checks.cutting import with_cutting
from jigs.cutlist.cutlist import cut_job
from jigs.given.build import Paint
from jigs.given.job import BoxKind, FrontSpec, Job
from jigs.layout.layout import as_printed, lay_out
from templates.binding.jobstations import StationFile, bind_stations
from templates.lists.listpages import list_pages
from templates.lists.listtext import listing_text
from templates.lists.workdata import plan_json
from templates.lists.worklist import plan_listing
from templates.lists.workview import Paged, WorkView, view_work
from templates.page.marks import Outline, Page, Text
from templates.page.paper import PAPERS
from templates.words.firstwords import BEFORE_SECOND
from templates.words.packwords import FILES, files_in_order
from templates.words.planwords import STOP, caution_words
from templates.words.stationwords import station_title
from templates.words.textlines import WIDTH
from templates.writers.pdf import write_pdf
from tests.clashes import clashes_of_marks
from tests.jigs.sample import HINGE, box, job
from tests.readback import read_pages

COMMON = PAPERS["common"]
DRAWER = FrontSpec(id="B1-1", kind="drawer", height=152.4)
DOOR = FrontSpec(id="B1-2", kind="door", hinged="left")
JOB = replace(job(box(DRAWER, DOOR)), name="Küche Łódź, κουζίνα")
OPEN = replace(JOB, hinges={"mine": replace(HINGE, confirmed={})})
HELD = replace(JOB, boxes=(box(DRAWER, replace(DOOR, hinged=None)),))


def made(job: Job, kept: dict[str, Kept] | None = None) -> tuple[WorkView, StationFile]:
    return made_usual() if job == JOB and kept is None else made_anew(job, kept)


@cache
def made_usual() -> tuple[WorkView, StationFile]:
    """Bind the stations of the usual job once for all tests that look at them."""
    return made_anew(JOB)


def made_anew(job: Job, kept: dict[str, Kept] | None = None) -> tuple[WorkView, StationFile]:
    layout = as_printed(with_cutting(lay_out(job))[0])
    stations = plan_stations(layout)
    file = bind_stations(layout, stations, COMMON)
    return view_work(layout, cut_job(layout), stations, file.paged, kept), file


def text_of(job: Job, kept: dict[str, Kept] | None = None) -> str:
    view, _ = made(job, kept)
    return listing_text(plan_listing(view))


def flat(text: str) -> str:
    return " ".join(text.split())


@cache
def pages_of(job_name: str) -> list[Page]:
    view, _ = made({"sound": JOB, "open": OPEN, "held": HELD}[job_name])
    files = replace(view.paged, files=tuple(FILES), costs={"stations.pdf": "9 pages"})
    return list_pages(plan_listing(replace(view, paged=files)), COMMON)


@pytest.mark.parametrize(
    ("kind", "stage", "care"),
    [
        ("base", "cut", "Guard on, push stick; eye, ear, dust protection."),
        ("base", "bored", "Eyes, ears, lungs. NO GLOVES."),
        ("base", "set", "Probe a wall before you drill it."),
        ("base", "set", "fix tall units to the structure before you load them"),
        ("base", "back", "nothing near that can ignite it"),
        ("base", "front", "nothing near that can ignite it"),
        ("wall", "assembled", "Lift tall and wall boxes with two people."),
        ("tall", "assembled", "Lift tall and wall boxes with two people."),
    ],
)
def test_each_stage_has_the_cautions_of_its_work(kind: BoxKind, stage: str, care: str) -> None:
    """At the saw, the drill, the wall and the spray gun, and where a box is too heavy for one."""
    view, _ = made(replace(JOB, boxes=(replace(box(DRAWER, DOOR), kind=kind),)))
    first = next(s for day in view.plan.days for s in day.stages if s.kind == stage)
    assert care in " ".join(caution_words(view.plan, first))
    assert care in flat(listing_text(plan_listing(view)))


def test_every_page_of_the_stations_stands_in_the_plan_once() -> None:
    """Those before the first station to be read, then each station's own."""
    view, file = made(JOB)
    plan, text = view.plan, flat(listing_text(plan_listing(view)))
    named: list[int] = []
    for low, high in re.findall(r"stations\.pdf, pages? (\d+)(?: to (\d+))?", text):
        named += range(int(low), int(high or low) + 1)
    assert sorted(named) == list(range(1, file.cost.pages + 1))
    for station in plan.stations:
        assert text.count(f"{station_title(station)}: stations.pdf") + text.count(
            f"{station_title(station)}, hinge edge on your RIGHT: stations.pdf"
        ) == 1  # fmt: skip


@pytest.mark.parametrize("name", ["sound", "open", "held"])
def test_on_paper_it_says_the_same_and_nothing_overlaps(name: str) -> None:
    """Lettering of 2.5 mm and more, all on the page; boxes to tick."""
    pages = pages_of(name)
    for page in pages:
        assert clashes_of_marks(page) == []
        assert min(mark.size for mark in page.marks if isinstance(mark, Text)) >= 2.5
        for mark in page.marks:
            if isinstance(mark, Text):
                assert 0 <= mark.x <= page.width
                assert 0 <= mark.y <= page.height
    assert any(isinstance(mark, Outline) for mark in pages[0].marks)
    said = flat(" ".join(page.text for page in read_pages(write_pdf(iter(pages), title="x"))))
    assert STOP in said


def test_a_pack_says_of_each_file_what_it_is_for_and_when_it_is_printed() -> None:
    """In the order in which they are wanted, this one first."""
    view, _ = made(JOB)
    plan = view.plan
    names = ("sheets.pdf", "plan.pdf", "contents.json", "stations.pdf")
    assert files_in_order(names) == ["plan.pdf", "stations.pdf", "sheets.pdf", "contents.json"]
    paged = replace(view.paged, files=names, costs={"sheets.pdf": "7 pages, 9 cards to cut"})
    text = listing_text(plan_listing(replace(view, paged=paged)))
    first = text.partition("What stops the work")[0]
    assert re.findall(r"^  (\S+\.pdf)  ", first, re.MULTILINE) == files_in_order(names)[:3]
    assert "Not printed: contents.json (" in first
    assert first.count("THIS ONE OR THE OTHER") == 2
    assert "7 pages, 9 cards to cut." in first
    [day] = [d.number for d in plan.days if any(s.kind == "bored" for s in d.stages)][:1]
    assert f"stations.pdf  day {day}, THIS ONE" in first
    with pytest.raises(ValueError, match="unknown"):
        files_in_order(["unknown.pdf"])


def test_an_open_number_is_said_where_it_stops_the_work() -> None:
    """First of all with the day before which it is settled, that of the trial on scrap where it is
    used first, then there and at its stations."""
    assert "OPEN" not in text_of(JOB)
    plan = made(OPEN)[0].plan
    text = flat(text_of(OPEN))
    [day] = [d.number for d in plan.days if any(s.kind == "try" for s in d.stages)]
    numbers = "constant, plates, fixing_spacing, fixing_inboard, cup_depth"
    resting = "On it rest 2 parts: Try on scrap, SIDES, CUPS RIGHT."
    assert f"OPEN hinge 'mine' ({numbers}): settle it before day {day}. {resting}" in text
    assert text.count("OPEN: hinge mine, 2 numbers.") == 1
    assert text.count("OPEN: hinge mine, 5 numbers.") == 2


def test_a_held_part_is_said_with_all_that_waits_for_it() -> None:
    """A door without a hand: its name, why, and the sides that are not drilled before."""
    text = flat(text_of(HELD))
    assert "HOLD B1-2: hand not stated" in text
    assert "Waiting for it: B1-SIDE-L, B1-SIDE-R" in text
    rows = "bore their other rows; the rest when B1-2 is released."
    drilled = text.index(f"NOT FINISHED B1-SIDE-L, B1-SIDE-R: {rows}")
    assert drilled < text.index("HOLD B1-SIDE-L, B1-SIDE-R: until B1-2 is released.")
    assert "HOLD" not in text_of(JOB)


def test_each_station_says_when_to_stop_and_which_part_is_first() -> None:
    """The limits are those of the first of a station, in its own words."""
    view, _ = made(JOB)
    plan, text = view.plan, flat(listing_text(plan_listing(view)))
    for station in plan.stations:
        assert flat(BEFORE_SECOND[station.work]) in text
    assert f"{STOP} this is true of the first, B1-2: The hinge lies flat" in text


@pytest.mark.parametrize(
    ("paint", "said", "unsaid"),
    [
        (Paint(), "WHY AFTER THE DRILL", "The fronts come painted"),
        (Paint(sizes="before"), "its film narrows every gap", "Nobody said whether"),
        (Paint(sizes="after"), "sizes are those after paint", "Nobody said whether"),
        (Paint(), "Nobody said whether", "its film narrows"),
        (Paint(fronts_come="raw"), "A raw bore in mdf drinks", "The job does not say"),
        (Paint(fronts_come="painted"), "The fronts come painted", "Paint the"),
    ],
)
def test_why_paint_comes_when_it_does(paint: Paint, said: str, unsaid: str) -> None:
    """By what the job says of paint, sizes and board."""
    text = flat(text_of(replace(JOB, paint=paint)))
    assert said in text
    assert unsaid not in text


def test_what_speaks_for_paint_after_the_drill_hangs_on_the_board() -> None:
    """Splinters of plywood are no matter of mdf."""
    wood = replace(JOB, material=replace(JOB.material, front_kind="plywood"))
    assert "splinters" in text_of(wood)
    assert "splinters" not in text_of(JOB)


def test_days_that_are_done_take_one_line_and_today_is_named() -> None:
    """The rest stands as before, with what of it is done."""
    plan = made(JOB)[0].plan
    cut = {task.part for day in plan.days for stage in day.stages if stage.kind == "cut"
           for task in stage.tasks if not stage.of_drawers}  # fmt: skip
    text = text_of(JOB, {part: Kept(marks={"cut": ""}) for part in cut})
    assert "\nDone already\nDay 1: Settle, buy, print.\n" in text
    assert "\nTODAY: Day 2: Cut; " in text
    every = sum(task.step is not None for day in plan.days for task in day.tasks)
    assert f"{len(cut)} of {every} ticks are done; today is day 2." in flat(text)
    assert "TODAY" not in text_of(JOB)


def test_as_data_it_has_what_is_marked_waited_for_and_open() -> None:
    """Unrounded, with the bits of each station."""
    view, _ = made(OPEN)
    plan, data = view.plan, json.loads(plan_json(view))
    assert [day["day"] for day in data["days"]] == [day.number for day in plan.days]
    by_station = {
        stage["station"]: stage for day in data["days"] for stage in day["stages"]
        if "station" in stage
    }  # fmt: skip
    cups = by_station["cups-right"]
    assert cups["bits"][0] == {"diameter_mm": 35.0, "depth_mm": 13.0}
    assert [part["part"] for part in cups["parts"]] == ["B1-2"]
    assert {number["key"] for number in cups["open"]} >= {"constant", "cup_depth"}
    [hung] = [s for day in data["days"] for s in day["stages"] if s["stage"] == "hung"]
    waits = {part["part"]: part["waits_for"] for part in hung["parts"]}
    assert waits == {"B1-1": ["B1-1-BOX:fitted"], "B1-2": ["B1-SIDE-L:mounted"]}


def test_a_job_without_a_hole_has_a_plan_too() -> None:
    """An open box: cut, put together, set."""
    plan = made(JOB)[0].plan
    layout = lay_out(job(box(kind="open")))
    bare = view_work(layout, cut_job(layout), (), Paged())
    text = listing_text(plan_listing(bare))
    assert "stations.pdf" not in text
    assert "Set the boxes" in text
    assert len(bare.plan.days) < len(plan.days)


def test_what_nobody_gave_is_said_where_it_is_held_against_a_board() -> None:
    """A thickness, a reveal: ASSUMED beside the figure."""
    guessed = replace(JOB, assumed=frozenset({"material.side", "reveal.between"}))
    text = flat(text_of(guessed))
    assert "sides 18.3 (ASSUMED), backs 6." in text
    assert "of two boxes. ASSUMED in part." in text
    assert "ASSUMED" not in text_of(JOB)


def test_no_line_of_it_is_wider_than_a_terminal() -> None:
    """The head of a day of many stages neither, whose parts are many."""
    boxes = (box(DRAWER, DOOR, name=f"B{number}") for number in range(1, 4))
    many = replace(JOB, boxes=tuple(boxes))
    view, _ = made(many)
    assert any(len(day.stages) > 3 for day in view.plan.days)
    assert max(map(len, listing_text(plan_listing(view)).splitlines())) <= WIDTH


def test_the_stop_at_the_saw_asks_for_no_front() -> None:
    """Fronts are ordered from boxes that stand: their caliper is read when they arrive."""
    told = flat(text_of(JOB)).split("DO NOT GO ON until ")[1:]
    sawn = [line for line in told if line.startswith("the first piece of each size")]
    assert sawn
    assert not any("fronts" in line.split("print anew")[0] for line in sawn)
    (came,) = (line for line in told if line.startswith("every front is measured"))
    assert f"the caliper says they are {JOB.material.front:g} mm thick" in came
