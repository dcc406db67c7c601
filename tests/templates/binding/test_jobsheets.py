"""The drilling sheets of a job."""

from functools import cache

import pytest
from hypothesis import given, settings
from msgspec.structs import replace

from jigs.given.job import Job
from jigs.ground.problems import error
from jigs.layout.layout import lay_out
from templates.binding.drilled import drilled_parts
from templates.binding.jobsheets import make_sheets
from templates.page.marks import Area, Circle, Line, Outline, Page, Qr, Text
from templates.page.paper import PAPERS, Paper
from templates.page.typeface import text_box
from tests.clashes import clashes_of_marks
from tests.jobs import jobs, papers
from tests.jobtexts import box_text
from tests.templates.printed import laid_out
from tests.templates.worked import worked_layout, worked_sheets

COMMON = PAPERS["common"]


@cache
def parts(*only: str) -> list[str]:
    names = [part.words.part for part in drilled_parts(worked_layout("in"), only or None)]
    sheets = make_sheets(worked_layout("in"), COMMON, only=only or None)
    assert {part for sheet in sheets for part in sheet.parts} == set(names)
    return names


def test_fronts_drawer_boxes_and_sides_follow_in_the_order_of_the_job() -> None:
    """Box by box: each front with its drawer box, then the sides."""
    assert parts()[-5:] == ["B3-1-BOX", "B3-1", "B3-2", "B3-SIDE-L", "B3-SIDE-R"]
    first = next(iter(worked_sheets("in")))
    assert (first.parts, first.cards) == ((), ())


@pytest.mark.parametrize(
    ("only", "wanted"),
    [
        (("B3-2",), ["B3-2"]),
        (("b3-2",), ["B3-2"]),
        (("B3-1",), ["B3-1-BOX", "B3-1"]),
        (("B3-1-BOX",), ["B3-1-BOX"]),
        (("B1-SIDE-L", "B3-2"), ["B1-SIDE-L", "B3-2"]),
        (("B3",), ["B3-1-BOX", "B3-1", "B3-2", "B3-SIDE-L", "B3-SIDE-R"]),
        (("east",), []),
    ],
)
def test_some_parts_alone(only: tuple[str, ...], wanted: list[str]) -> None:
    """By part, box or wall, in capitals or not."""
    assert parts(*only) == wanted
    assert parts("north") == parts()


def test_a_part_that_is_held_back_has_no_sheet() -> None:
    """Nor has its drawer box."""
    layout = worked_layout("in")
    why = (error("hand-not-stated", "B3-1", listed=False),)
    held = replace(
        layout,
        fronts=tuple(
            replace(front, held=why) if front.id == "B3-1" else front for front in layout.fronts
        ),
    )
    found = {part for sheet in make_sheets(held, COMMON) for part in sheet.parts}
    assert "B3-1" not in found
    assert "B3-1-BOX" not in found
    assert "B3-2" in found


def test_the_same_layout_gives_the_same_pages_twice() -> None:
    """Each iteration draws anew, and alike."""
    sheets = make_sheets(worked_layout("in"), COMMON)
    drawn = list(sheets)
    assert [each.page for each in drawn] == [each.page for each in worked_sheets("in")]
    assert list(sheets.pages) == [sheet.page for sheet in drawn]


def test_the_search_for_clashes_can_fail() -> None:
    """It finds a text on a text, on a line, on a hole, on black, at the symbol and off the page."""
    text = Text(x=50.0, y=50.0, text="97.8")
    x0, y0, x1, y1 = text_box(text)
    clean = Page(width=100.0, height=100.0, marks=(text,))
    assert clashes_of_marks(clean) == []
    for mark in (
        Text(x=52.0, y=51.0, text="22.5"),
        Line(x1=x0 - 3.0, y1=y0 - 3.0, x2=x1 + 3.0, y2=y1 + 3.0),
        Outline(points=((x0 - 9.0, 51.0), (x1 + 9.0, 51.0), (x1, 80.0))),
        Circle(x=x0, y=y0 - 2.0, diameter=5.0),
        Area(points=((x0, y0), (x1, y0), (x1, y1))),
        Qr(x=x1 + 1.0, y=40.0, text="B3-2 DOOR"),
        Circle(x=1.0, y=20.0, diameter=5.0),
        Line(x1=90.0, y1=10.0, x2=100.5, y2=10.0),
    ):
        assert len(clashes_of_marks(replace(clean, marks=(text, mark)))) == 1
    around = Circle(x=(x0 + x1) / 2, y=(y0 + y1) / 2, diameter=35.0)
    assert clashes_of_marks(replace(clean, marks=(text, around))) == []


def check_marks(job: Job, paper: Paper) -> None:
    for number, sheet in enumerate(make_sheets(lay_out(job), paper), start=1):
        assert clashes_of_marks(sheet.page) == [], f"page {number}, {sheet.parts}"


@given(jobs(), papers)
@settings(max_examples=5)
def test_no_text_touches_anything(job: Job, paper: Paper) -> None:
    """No text on a text, a line, a hole or black, nothing outside the page: all kinds of fronts
    and boxes, all papers, both units, long names and three alphabets."""
    check_marks(job, paper)


@pytest.mark.slow
@given(jobs(), papers)
@settings(max_examples=8)
def test_no_text_touches_anything_in_many_jobs(job: Job, paper: Paper) -> None:
    """The same, at length."""
    check_marks(job, paper)


def test_cards_find_room_beside_the_words_that_name_their_lines() -> None:
    """Two pulls on a drawer front of 806, each card from its end and on a line below the top: the
    words grow by that line, and the cards are made for what is left."""
    rows = (
        'kind = "drawer"\nheight = 187\ncolumn = 2',
        *('kind = "drawer"\npull = "wide"\ncolumn = 2',) * 2,
        'kind = "door"\nhinged = "left"\ncolumn = 1',
    )
    more = "assembled = true\ncolumns = [{width = 400}, {share = 1}]"
    layout = laid_out(
        box_text("B4", "base", *rows, more=more).replace("width = 457.2", "width = 1213", 1)
        + '[pull.wide]\ncenters = 192\ndrawer = "upper-third"\nconfirmed = "measured"\n'
    )
    only = ["B4-2", "B4-3"]
    cards = [placed.card for _, placed in make_sheets(layout, PAPERS["common"], only=only).cards]
    assert {card.view.face for card in cards} >= {"front", "back"}
