"""The pack's first page."""

from functools import cache, partial

import pytest
from msgspec.structs import replace

from jigs.bench.stations import plan_stations
from jigs.box.parts import Layout
from jigs.given.confirming import OpenNumber
from jigs.given.hardware import HingeRecord, PullRecord
from jigs.given.job import FrontSpec, Job
from jigs.given.stated import OpenedBy
from jigs.ground.problems import error, warning
from templates.binding.contents import station_contents
from templates.binding.cover import CARD, begin_cover
from templates.page.border import EDGE
from templates.page.marks import Outline, Page, Text
from templates.page.paper import PAPERS
from templates.page.typeface import text_box
from templates.stations.stationset import StationSet, make_stations
from templates.words.assumedwords import assumed_lines
from templates.words.cautions import NO_CODE
from templates.words.coverwords import SHEETS, STATIONS
from tests.clashes import clashes_of_marks
from tests.templates.worked import worked_layout


def words(page: Page) -> str:
    return " ".join(mark.text for mark in page.marks if isinstance(mark, Text))


def troubled(count: int) -> Layout:
    layout = worked_layout("in")
    held = tuple(
        replace(
            layout.fronts[0],
            id=f"B9-{row}",
            held=(error("hole-serves-nobody", None, name=f"X{row}"),),
        )
        for row in range(count)
    )
    problems = tuple(
        warning(
            "unconfirmed-hinge",
            "B3-2",
            kind="hinge",
            record=f"packet {row}",
            several=False,
            numbers="constant 15 mm",
            keys=(),
            last="constant",
            own="[hinge.x]",
            generic=False,
        )
        for row in range(count)
    )
    job = replace(layout.job, assumed=frozenset({"material.side", "reveal.top"}))
    return replace(layout, job=job, fronts=(*layout.fronts, *held), problems=problems)


def test_a_bank_card_is_drawn_at_full_size() -> None:
    """85.60 x 53.98 mm: ISO/IEC 7810, ID-1 (from memory)."""
    page = begin_cover(worked_layout("in"), PAPERS["common"], SHEETS).pages()[0]
    sizes = [
        (max(xs) - min(xs), max(ys) - min(ys))
        for xs, ys in (
            tuple(zip(*mark.points, strict=True))
            for mark in page.marks
            if isinstance(mark, Outline)
        )
    ]
    assert CARD == (85.60, 53.98)
    assert any(size == pytest.approx((85.60, 53.98)) for size in sizes)
    assert page.entry == "First page"


def test_accents_of_the_name_stay_on_the_page() -> None:
    """The ring of Å rises over a capital; the name stands lower by that, any other as before."""
    layout = worked_layout("in")

    def title(name: str) -> Text:
        named = replace(layout, job=replace(layout.job, name=name))
        page = begin_cover(named, PAPERS["common"], SHEETS).pages()[0]
        return next(mark for mark in page.marks if isinstance(mark, Text) and mark.text == name)

    highest = PAPERS["common"].height - EDGE
    assert text_box(title("Åse"))[3] == pytest.approx(highest)
    assert title("Ase").y == pytest.approx(highest - 5.6)


def test_it_says_what_is_ready_and_the_two_meanings_of_the_reveal() -> None:
    """The job, its reveals to the box's edge and between fronts, the cautions in full."""
    found = words(begin_cover(worked_layout("in"), PAPERS["common"], SHEETS).pages()[0])
    assert "Test galley" in found
    assert "3 fronts have sheets. No number is open." in found
    assert "1.6 to the box's own edge" in found
    assert "3.2 between fronts of one box" in found
    assert NO_CODE in found
    assert "HOLD" not in found
    assert "OPEN NUMBERS" not in found


def test_what_is_held_for_one_reason_stands_together() -> None:
    """Once, with all its parts."""
    layout = worked_layout("in")
    why = (error("hand-not-stated", None, listed=False),)
    held = tuple(replace(layout.fronts[0], id=name, held=why) for name in ("B8-1", "B9-1"))
    layout = replace(layout, fronts=(*layout.fronts, *held))
    found = words(begin_cover(layout, PAPERS["common"], STATIONS).pages()[0])
    assert "B8-1, B9-1: hand not stated: a single door, and nobody said" in found


def test_it_lists_what_is_held_unconfirmed_and_assumed() -> None:
    """Each with its reason."""
    found = words(begin_cover(troubled(1), PAPERS["common"], SHEETS).pages()[0])
    assert "B9-0: hole serves nobody: holes by hand in its sides serve 'X0'" in found
    assert "3 fronts have sheets" in found
    assert "top reveal 1.6 mm" in found


@pytest.mark.parametrize("paper", list(PAPERS))
@pytest.mark.parametrize("count", [0, 1, 5, 60])
def test_nothing_runs_over_however_much_there_is_to_say(paper: str, count: int) -> None:
    """What finds no room is left to the check, and the page says so."""
    page = begin_cover(troubled(count), PAPERS[paper], SHEETS).pages()[0]
    assert clashes_of_marks(page) == []
    if count == 60:
        assert "More: see the check" in words(page)


def assuming(job: Job, count: int) -> Job:
    """The job with so many pulls more, of which nobody said how far they stand in on a door."""
    names = [f"packet {row}" for row in range(count)]
    fronts = (
        FrontSpec(id=f"P{row}", kind="door", opened_by=OpenedBy(pull=name))
        for row, name in enumerate(names)
    )
    first, *others = job.boxes
    return replace(
        job,
        boxes=(replace(first, fronts=(*first.fronts, *fronts)), *others),
        pulls={**job.pulls, **{name: PullRecord(name=name) for name in names}},
        assumed=frozenset(f"pull.{name}.door_inset" for name in names),
    )


@pytest.mark.parametrize("paper", list(PAPERS))
def test_what_is_assumed_fills_the_room_that_is_left(paper: str) -> None:
    """Of more assumptions than the page holds the first stand there, and that there are more."""
    layout = worked_layout("in")
    job = assuming(layout.job, 250)
    many = assumed_lines(job)
    assert len(many) == 250
    page = begin_cover(replace(layout, job=job), PAPERS[paper], SHEETS).pages()[0]
    found = words(page)
    assert clashes_of_marks(page) == []
    assert f"ASSUMED {many[0]}" in found
    assert "More: see the check" in found
    assert many[-1] not in found
    few = begin_cover(replace(layout, job=assuming(layout.job, 2)), PAPERS[paper], SHEETS).pages()[
        0
    ]
    assert many[1] in words(few)
    assert "More:" not in words(few)


@pytest.mark.parametrize(
    ("paper", "step"),
    [("common", 3), ("letter", 5), pytest.param("common", 1, marks=pytest.mark.slow)],
)
def test_open_numbers_leave_room_to_say_that_there_is_more(paper: str, step: int) -> None:
    """However many there are: those that fill the page to its foot go on to the next."""
    layout = worked_layout("in")
    job = assuming(layout.job, 400)
    further = []
    for count in range(1, 60, step):
        numbers = tuple(
            OpenNumber(kind="hinge", record=f"packet {row}", key="constant", value=15.0)
            for row in range(count)
        )
        hinges = {number.record: HingeRecord(name=number.record) for number in numbers}
        fronts = (replace(layout.fronts[0], open=numbers), *layout.fronts[1:])
        given = replace(layout, job=replace(job, hinges=hinges), fronts=fronts)
        pages = begin_cover(given, PAPERS[paper], SHEETS).pages()
        further.append(len(pages) - 1)
        assert [clashes_of_marks(page) for page in pages] == [[]] * len(pages), count
        assert "More: see the check" in words(pages[0])
    assert further[0] == 0
    assert further[-1] > 0


@cache
def made() -> StationSet:
    layout = worked_layout("in")
    return make_stations(layout, plan_stations(layout), PAPERS["common"], before=1)


@pytest.mark.parametrize("paper", ["common", "tabloid"])
@pytest.mark.parametrize("count", [5, 60])
def test_that_of_the_stations_lists_them_where_there_is_room(paper: str, count: int) -> None:
    """In the order of the work, with its page; what is held goes before it."""
    listing = partial(station_contents, made(), guide=2)
    page = begin_cover(troubled(count), PAPERS[paper], STATIONS).pages(listing)[0]
    found = words(page)
    assert clashes_of_marks(page) == []
    assert "sheets.pdf suits single parts" in found
    assert ("ORDER OF WORK" in found) == (count < 60)
    if count < 60:
        titles = [each.name.replace("-", " ").upper() for each in made().stations]
        order = [found.rindex(f" {title} ") for title in titles]
        assert len(order) > 2
        assert order == sorted(order)
        assert found.index("2 HOW A CARD IS USED") < order[0]
