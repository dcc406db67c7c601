"""Long pages read back: whole faces and cards off a roll, on sheets of one's own."""

import json
from collections.abc import Callable
from functools import lru_cache
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from cli.jobs import read_in_hand
from jigs.box.parts import Layout
from jigs.given.job import Job
from jigs.layout.layout import lay_out
from templates.binding.jobsheets import Sheets, make_sheets
from templates.binding.sheetdata import sheets_json
from templates.page.border import BOTTOM_STRIP
from templates.page.ownpaper import named_paper
from templates.strips.wholecard import NAME
from templates.writers.pdf import write_pdf
from tests.carddata import faults_in_data
from tests.cardreading import face_of, faces_on, faults_on_paper, wanted_faces
from tests.clashes import clashes_of_print
from tests.jobs import jobs
from tests.readback import PrintedCard, PrintedPage, read_pages
from tests.templates.drawnonce import DrawnOnce, draw_once
from tests.templates.worked import worked_layout

DEMO = Path(__file__).parents[3] / "templates" / "demo" / "job.toml"
Kitchen = Callable[[], Layout]
LARGE = ("roll-610", "roll-914", "roll-210", "610x1500mm", "914x2500mm")


@lru_cache
def _demo() -> Layout:
    return lay_out(read_in_hand(DEMO))


@lru_cache
def _some() -> Layout:
    """Give a few boxes of the demo: one with a rounded front and one with a bare door."""
    layout = _demo()
    rounded = next(front.box for front in layout.fronts if front.make.edge_radius)
    boxes = {"B1", "W1", rounded}
    return replace(
        layout,
        boxes=tuple(box for box in layout.boxes if box.id in boxes),
        fronts=tuple(front for front in layout.fronts if front.box in boxes),
        sides=tuple(side for side in layout.sides if side.box in boxes),
        rollouts=(),
    )


@lru_cache
def _sheets(name: str, kitchen: Kitchen) -> DrawnOnce:
    return draw_once(make_sheets(kitchen(), named_paper(name)))


@lru_cache
def _printed(name: str, kitchen: Kitchen = _demo) -> tuple[PrintedPage, ...]:
    return read_pages(write_pdf(_sheets(name, kitchen).pages))


KITCHENS = pytest.mark.parametrize(
    "kitchen", [_some, pytest.param(_demo, marks=pytest.mark.slow)], ids=["some", "demo"]
)
"""A few boxes, and at length the whole demo."""


def _whole(pages: tuple[PrintedPage, ...]) -> list[tuple[PrintedPage, PrintedCard]]:
    return [(page, card) for page in pages for card in page.cards if NAME in card.text]


def _check(sheets: Sheets, pages: tuple[PrintedPage, ...]) -> None:
    layout, data = sheets.layout, json.loads(sheets_json(sheets))
    assert faults_on_paper(pages, layout) == []
    assert faults_in_data(pages, data, layout) == []
    assert [clash for page in pages for clash in clashes_of_print(page)] == []


@KITCHENS
def test_each_hole_and_corner_stands_once_in_its_place(kitchen: Kitchen) -> None:
    """Within 0.01 mm of the edges, on paper and in the data; no text touches anything."""
    paper = named_paper("roll-610")
    _check(_sheets("roll-610", kitchen), _printed("roll-610", kitchen))
    for page in _printed("roll-610", kitchen):
        assert page.width == pytest.approx(paper.width, abs=0.01)


@KITCHENS
def test_off_a_roll_a_face_is_one_page(kitchen: Kitchen) -> None:
    """However many cards it has, and no longer than they and the words need. A part all of whose
    cards stand on another's page is named on them, and has no page."""
    wanted = wanted_faces(kitchen())
    pages = [page for page in _printed("roll-610", kitchen) if "DRILL THIS FACE" in page.text]
    faces = [face_of(field, wanted) for page in pages for field in page.fields]
    found = [(face.part, face.words) for face in faces if face is not None]
    assert len(pages) == len(faces) == len(found) == len(set(found))
    named = {
        (each.part, each.words)
        for page in pages
        for own in (face_of(page, wanted),)
        for card in page.cards
        if own is not None
        for each in faces_on(card, own, wanted)
    }
    assert {*found, *named} == set(wanted)
    assert (len(found) < len(wanted)) is (kitchen is _demo)
    for page in pages:
        if not page.cards:
            assert "ALSO card" in page.text
            continue
        lowest = min(card.box[1] for card in page.cards)
        highest = max(*(card.box[3] for card in page.cards), *(run.box[3] for run in page.runs))
        assert lowest == pytest.approx(BOTTOM_STRIP, abs=3.0) or page.height < 300
        assert page.height - highest < 6.0


@pytest.mark.slow
def test_the_black_stands_on_all_edges_of_a_whole_face() -> None:
    """From band to band it is as wide and as high as the face; a door ends at its ladder."""
    wanted = wanted_faces(_demo())
    found = _whole(_printed("roll-914"))
    assert len(found) > 0.9 * len(wanted)
    for page, card in found:
        face = face_of(page, wanted)
        assert face is not None
        upright = sorted(band for band in card.bands if band[2] - band[0] < 3.5)
        lying = sorted(
            (band for band in card.bands if band[3] - band[1] < 3.5), key=lambda band: band[1]
        )
        assert len(upright) == 2
        assert upright[1][0] - upright[0][2] == pytest.approx(
            face.width - abs(face.shift[0]), abs=0.02
        )
        true_top = [s.y1 for s in card.strokes if s.y1 == s.y2 and abs(s.line - 0.35) < 0.001]
        top = true_top[0] if true_top else lying[1][1]
        assert top - lying[0][3] == pytest.approx(face.height, abs=0.02)


@KITCHENS
def test_edges_that_set_nothing_are_a_check(kitchen: Kitchen) -> None:
    """Those that figures are counted from say FOLD; the others are a second check."""
    pages = _printed("roll-914", kitchen)
    doors = [(page, card) for page, card in _whole(pages) if "BACK OF DOOR" in page.text]
    assert doors
    for page, card in doors:
        rounded = "NO FOLD" in card.text
        act = "BUTT TO A BLOCK ON THE" if rounded else "FOLD DOWN:"
        assert f"{act} HINGE EDGE" in card.text
        assert f"{act} BOTTOM EDGE" in card.text
        assert "FREE EDGE COMES HERE, a second check" in card.text
        assert "EDGE LADDER: CUT AT YOUR HEIGHT" in card.text
        assert "measure the long bar too" in page.text


@KITCHENS
def test_long_pages_have_a_long_bar(kitchen: Kitchen) -> None:
    """A whole number of hundreds, as long as there is room for, its length beside it; a page of
    steps, to which no part is held, has the bar of 100 alone."""
    pages = _printed("roll-914", kitchen)[1:]
    assert sum("DRILL THIS FACE" in page.text for page in pages) == len(wanted_faces(kitchen()))
    for page in pages:
        bars = [
            stroke.length
            for stroke in page.strokes
            if stroke.x1 == stroke.x2 and abs(stroke.x1 - 2.4) < 0.01 and stroke.length > 50
        ]
        room = page.height - 112.0 - BOTTOM_STRIP - 4.0
        long = room >= 200 and "DRILL THIS FACE" in page.text
        wanted = [100.0] + ([room // 100 * 100] if long else [])
        assert sorted(bars) == pytest.approx(wanted, abs=0.01)
        assert f"{max(wanted):.1f} ±" in page.text


@pytest.mark.slow
def test_a_page_over_200_inches_is_read_back_in_its_own_unit() -> None:
    """The same holes in the same places, though the page counts in units of 2 points."""
    layout, paper = worked_layout("in"), named_paper("914x6000mm")
    sheets = draw_once(make_sheets(layout, paper))
    data = write_pdf(sheets.pages)
    assert b"/UserUnit 2" in data
    pages = read_pages(data)
    assert {(round(p.width), round(p.height)) for p in pages} <= {(902, 5988), (5988, 902)}
    _check(sheets, pages)


def _check_job(job: Job, name: str) -> None:
    sheets = draw_once(make_sheets(lay_out(job), named_paper(name)))
    _check(sheets, read_pages(write_pdf(sheets.pages)))


@given(jobs(most_boxes=1), st.sampled_from(LARGE))
@settings(max_examples=2)
def test_any_job_can_be_read_back_from_large_paper(job: Job, name: str) -> None:
    """Every hole exactly once, in its place; data alike; nothing clashes."""
    _check_job(job, name)


@pytest.mark.slow
@given(jobs(), st.sampled_from(LARGE))
@settings(max_examples=4)
def test_any_of_many_jobs_can_be_read_back_from_large_paper(job: Job, name: str) -> None:
    """The same, at length."""
    _check_job(job, name)
