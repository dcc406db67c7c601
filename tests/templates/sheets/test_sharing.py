"""Cards and fields laid on pages: none touches another, none is lost."""

from collections.abc import Sequence
from functools import cache
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import templates.demo
from cli.jobs import read_in_hand
from jigs.box.parts import Layout
from jigs.given.job import Job
from jigs.layout.layout import lay_out
from templates.binding.jobsheets import make_sheets
from templates.page.border import BOTTOM_STRIP, EDGE, LEFT_STRIP
from templates.page.packing import Size, place_sizes
from templates.page.paper import PAPERS, Paper
from templates.sheets.field import GUTTER
from templates.sheets.sharing import AHEAD, share_pages
from templates.sheets.sheet import BETWEEN
from tests.jobs import jobs, papers

Rectangle = tuple[float, float, float, float]


def faults_of(boxes: list[Rectangle], room: Rectangle, gap: float) -> list[str]:
    """What is wrong with an arrangement, told from its places alone."""
    faults: list[str] = []
    for row, (x0, y0, x1, y1) in enumerate(boxes):
        if min(x0 - room[0], y0 - room[1]) < -1e-6 or max(x1 - room[2], y1 - room[3]) > 1e-6:
            faults.append(f"{row} outside")
        for other, (a0, b0, a1, b1) in enumerate(boxes[:row]):
            if (x0 < a1 + gap - 1e-6 and a0 < x1 + gap - 1e-6) and (
                y0 < b1 + gap - 1e-6 and b0 < y1 + gap - 1e-6
            ):
                faults.append(f"{row} on {other}")
    return faults


# --- rectangles alone -------------------------------------------------------------------------

sizes = st.lists(st.tuples(st.integers(57, 130), st.integers(57, 180)), min_size=1, max_size=5)


@given(sizes)
@settings(max_examples=60)
def test_what_is_laid_lies_clear(cards: list[Size]) -> None:
    """Clear of each other; a single card lies wherever there is room for it."""
    places = place_sizes(cards, (190.0, 250.0), 2.0)
    if places is not None:
        boxes = [(x, y, x + w, y + h) for (w, h), (x, y) in zip(cards, places, strict=True)]
        assert faults_of(boxes, (0.0, 0.0, 190.0, 250.0), 2.0) == []
    assert place_sizes(cards[:1], (190.0, 250.0), 2.0) == ((0.0, 0.0),)
    assert place_sizes(cards[:1], (56.0, 250.0), 2.0) is None


@pytest.mark.parametrize("order", [(0, 1, 2), (2, 1, 0), (1, 2, 0)])
def test_whatever_the_order_a_page_without_a_gap_left_is_filled(order: tuple[int, ...]) -> None:
    """Two at the left, one above the other, and one at the right: 60 + 40 and 50 + 50 are 100."""
    cards = ((60.0, 50.0), (60.0, 50.0), (40.0, 100.0))
    laid = tuple(cards[row] for row in order)
    assert place_sizes(laid, (100.0, 100.0), 0.0) is not None
    assert place_sizes(laid, (100.0, 99.9), 0.0) is None


# --- pages ------------------------------------------------------------------------------------


def fields_on(fields: Sequence[tuple[Size, ...]], *rooms: Size) -> list[list[int]]:
    return [[field for field, _, _ in page.fields] for page in share_pages(fields, rooms, 2.0)]


def test_a_field_that_takes_all_of_a_page_has_one() -> None:
    """As large as the room to the last bit but one of a sum: it is laid, and nothing runs on."""
    high = 342.0 - 12.3
    room = (194.7, high - 6e-14)
    assert room[1] < high
    for fields in ([((194.7, high),)], [((90.0, 60.0),), ((194.7, high),)]):
        pages = share_pages(fields, (room,), 3.0)
        assert sum(len(page.fields) for page in pages) == len(fields)


def test_fields_follow_in_order_but_for_a_few_that_still_find_room() -> None:
    """The third is too high beside the first two, the fourth is not; one far behind is not
    asked."""
    low, high = ((100.0, 30.0),), ((100.0, 80.0),)
    assert fields_on([low, low, high, low], (100.0, 100.0)) == [[0, 1, 3], [2]]
    far = [low, low, *[high] * AHEAD, low]
    assert fields_on(far, (100.0, 100.0))[0] == [0, 1]


def test_a_field_takes_the_size_that_lets_another_in() -> None:
    """Two narrow ones side by side, and two flat ones one above the other."""
    either = ((50.0, 100.0), (110.0, 49.0))
    assert fields_on([either, either], (110.0, 100.0)) == [[0, 1]]
    assert fields_on([((50.0, 100.0),), either], (102.0, 100.0)) == [[0, 1]]


def test_the_paper_is_turned_where_that_saves_a_page() -> None:
    """Two of 120 side by side want it lying."""
    field = ((120.0, 150.0),)
    assert fields_on([field, field], (180.0, 250.0)) == [[0], [1]]
    assert fields_on([field, field], (180.0, 250.0), (250.0, 180.0)) == [[0, 1]]


# --- the sheets -------------------------------------------------------------------------------


def check_pages(layout: Layout, paper: Paper) -> None:
    """Fields lie clear of each other and of the borders, cards within their fields, clear of each
    other; each card stands once."""
    sheets = make_sheets(layout, paper)
    numbers = [placed.card.number for _, placed in sheets.cards]
    assert sorted(numbers) == list(range(1, len(numbers) + 1))
    for plan in sheets.plans:
        page = (LEFT_STRIP, BOTTOM_STRIP, plan.width - EDGE, plan.height - EDGE)
        fields = [(s.x, s.y, s.x + s.shape.width, s.top) for s in plan.spots]
        assert faults_of(fields, page, BETWEEN) == []
        for spot, field in zip(plan.spots, fields, strict=True):
            words = spot.shape.setting
            boxes = [(spot.x, spot.top - words.height, spot.x + words.width, spot.top)]
            for placed in spot.cards:
                x0, y0, x1, y1 = placed.card.box
                boxes.append((x0 + placed.dx, y0 + placed.dy, x1 + placed.dx, y1 + placed.dy))
            assert faults_of(boxes, field, GUTTER) == []


@cache
def demo_layout() -> Layout:
    return lay_out(read_in_hand(Path(templates.demo.__file__).parent / "job.toml"))


@pytest.mark.parametrize("paper", ["common", "a3"])
def test_every_card_of_the_demo_lies_well(paper: str) -> None:
    """On every page, on paper with room for one card and for several."""
    check_pages(demo_layout(), PAPERS[paper])


@pytest.mark.slow
@given(jobs(), papers)
@settings(max_examples=20)
def test_every_card_of_generated_jobs_lies_well(job: Job, paper: Paper) -> None:
    """All kinds of fronts and boxes, all papers."""
    check_pages(lay_out(job), paper)


NARROW = """
schema = 1
name = "Galley"
units = "in"
[material]
front = "19 mm"
front_kind = "mdf"
back = "6 mm"
band = "0 mm"
drawer_side = "15.9 mm"
[reveal]
top = "1.6 mm"
bottom = "1.6 mm"
between = "3.2 mm"
inset = "2 mm"
[use]
slide = "undermount-450"
drawer_pull = "bar-160"
door_pull = "bar-160"
[[box]]
id = "B1"
wall = "north"
kind = "base"
width = "222.5 mm"
height = "280 mm"
depth = "584.2 mm"
overlay = "inset"
  [[box.front]]
  id = "B1-1-1"
  kind = "drawer"
  height = "80 mm"
  [[box.front]]
  id = "B1-1-2"
  kind = "drawer"
"""


def test_a_card_that_would_touch_the_words_is_made_smaller(tmp_path: Path) -> None:
    """A page holds a card only with the gutter that parts it from the words."""
    job = tmp_path / "narrow.toml"
    job.write_text(NARROW, encoding="utf-8")
    sheets = make_sheets(lay_out(read_in_hand(job)), PAPERS["common"])
    assert any("B1-1-2" in sheet.parts for sheet in sheets)


def test_a_field_as_large_as_the_room_finds_room() -> None:
    """A sum of its pieces is off by what a float is: 0.1 + 0.2 is more than 0.3."""
    (page,) = share_pages((((188.8, 0.1 + 0.2),),), ((188.8, 0.3),), 3.0)
    assert [field for field, _, _ in page.fields] == [0]
