"""The printed sheets read back: by a library that parses the PDF, and from its dots."""

import io
import json
import re
from collections.abc import Callable
from functools import cache
from typing import Any, get_args

import pdfplumber
import pytest
from hypothesis import given, settings
from msgspec.structs import replace

from jigs.box.parts import Layout
from jigs.given.job import Job
from jigs.layout.layout import lay_out
from templates.binding.jobsheets import make_sheets
from templates.binding.sheetdata import sheets_json
from templates.page.marks import Area, Circle, Line, Mark, Outline, Page, Qr, Text
from templates.page.paper import PAPERS, Paper
from templates.writers.pdf import write_pdf
from tests.carddata import faults_in_data
from tests.cardreading import (
    Wanted,
    face_of,
    faults_on_paper,
    ruler_across,
    ruler_up,
    wanted_faces,
)
from tests.cardwords import faults_in_words
from tests.clashes import clashes_of_print
from tests.jobs import jobs, papers
from tests.raster import qr_texts, render
from tests.readback import Box, PrintedPage, ends_of, read_pages
from tests.templates.drawnonce import DrawnOnce, draw_once
from tests.templates.worked import Example, worked_layout, worked_pages, worked_pdf, worked_sheets

EXAMPLES: tuple[Example, ...] = get_args(Example)


# --- every hole in its place ------------------------------------------------------------------


@pytest.mark.parametrize("example", EXAMPLES)
def test_every_hole_stands_once_in_its_true_place(example: Example) -> None:
    """Within 0.01 mm of where the layout has it, read from where white meets black, from the
    cut edge or from the diamonds; mirrored where the driller sees it mirrored; and no circle
    is anything but a hole."""
    assert faults_on_paper(worked_pages(example), worked_layout(example)) == []


def test_circles_are_wide_lines_and_true_circles() -> None:
    """0.35 mm, as nothing else that is round."""
    rings = [ring for page in worked_pages("in") for ring in page.rings]
    assert rings
    for ring in rings:
        assert ring.line == pytest.approx(0.35, abs=0.001)
        assert ring.height == pytest.approx(ring.diameter, abs=0.001)


@pytest.mark.parametrize("example", EXAMPLES)
def test_the_data_agree_with_the_paper(example: Example) -> None:
    """The cards as data: border, black edges, index lines, ladders and holes, page by page."""
    data = json.loads(sheets_json(worked_sheets(example)))
    assert faults_in_data(worked_pages(example), data, worked_layout(example)) == []


def test_the_dots_agree_with_the_curves() -> None:
    """At 300 dpi every hole lies within 0.1 mm of its distance from the black's edge, or from
    the page's where the card is cut, at its true diameter within 0.1."""
    numbers = [
        page.number
        for page in worked_pages("in")
        if page.text.count("B3-") and ("BACK OF" in page.text or "INSIDE" in page.text)
    ]
    for number, raster in zip(numbers, render(worked_pdf("in"), *numbers), strict=True):
        page = worked_pages("in")[number - 1]
        assert page.cards
        for card in page.cards:
            for ring in card.rings:
                found = raster.ring(ring.x, ring.y, ring.diameter)
                assert found is not None
                assert found == pytest.approx((ring.x, ring.y, ring.diameter), abs=0.1)
            for x0, y0, x1, y1 in card.bands:
                upright = x1 - x0 < 3.5
                # Off the middle of the band, where an axis or a dimension may run into it.
                x, y = x0 + 0.37 * (x1 - x0), y0 + 0.37 * (y1 - y0)
                assert raster.is_black(x, y)
                far = ruler_across(card).from_far if upright else ruler_up(card).from_far
                edge = (x0 if far else x1, y) if upright else (x, y0 if far else y1)
                into = (1 if far else -1, 0) if upright else (0, 1 if far else -1)
                assert raster.rise(*edge, *into) == pytest.approx(0.0, abs=0.1)


def test_a_second_library_reads_the_same() -> None:
    """Letters, lines, circles, frames, black and middles of a door's first page, within 0.001 mm;
    the end of a string within 0.25: the quick library counts in thousandths of the em, and an f
    hangs over its own width."""
    number = next(p.number for p in worked_pages("in") if "BACK OF DOOR" in p.text)
    page = worked_pages("in")[number - 1]
    with pdfplumber.open(io.BytesIO(worked_pdf("in"))) as document:
        other = document.pages[number - 1]
        mm = 25.4 / 72

        def boxes(items: list[dict[str, Any]], filled: bool | None = None) -> list[list[float]]:
            return [
                [item[side] * mm for side in ("x0", "y0", "x1", "y1")]
                for item in items
                if filled is None or item["fill"] == filled
            ]

        round_ = [c for c in other.curves if any(step[0] == "c" for step in c["path"])]
        flat = [c for c in other.curves if c not in round_]
        found: list[tuple[list[list[float]], list[Box]]] = [
            (boxes(other.lines), [ends_of(stroke) for stroke in page.strokes]),
            (boxes(other.rects, filled=False), [box for box, _, _ in page.frames]),
            (boxes([*other.rects, *flat], filled=True), list(page.blacks)),
            (boxes(flat, filled=False), list(page.middles)),
            (
                boxes(round_),
                [
                    (
                        r.x - r.diameter / 2,
                        r.y - r.height / 2,
                        r.x + r.diameter / 2,
                        r.y + r.height / 2,
                    )
                    for r in page.rings
                ],
            ),
        ]
        for theirs, ours in found:
            left = list(ours)
            for box in theirs:
                left.remove(
                    next(own for own in left if own == pytest.approx(tuple(box), abs=0.001))
                )
            assert left == []
        chars = iter(other.chars)
        for run in page.runs:
            letters = [next(chars) for _ in run.text]
            assert "".join(letter["text"] for letter in letters) == run.text
            first, last = letters[0], letters[-1]
            assert ("SemiBold" in first["fontname"], not first["upright"]) == (run.bold, run.turned)
            x, y = first["matrix"][4] * mm, first["matrix"][5] * mm
            start, end = (run.box[1], run.box[3]) if run.turned else (run.box[0], run.box[2])
            assert start == pytest.approx(y if run.turned else x, abs=0.001)
            assert end == pytest.approx((last["y1"] if run.turned else last["x1"]) * mm, abs=0.25)
        assert next(chars, None) is None


# --- the comparison can fail ------------------------------------------------------------------


def _placed(mark: Mark, place: Callable[[float, float], tuple[float, float]]) -> Mark:
    """Put a mark's points elsewhere; texts stay upright."""
    match mark:
        case Text() | Circle():
            x, y = place(mark.x, mark.y)
            return replace(mark, x=x, y=y)
        case Line():
            (x1, y1), (x2, y2) = place(mark.x1, mark.y1), place(mark.x2, mark.y2)
            return replace(mark, x1=x1, y1=y1, x2=x2, y2=y2)
        case Area() | Outline():
            return replace(mark, points=tuple(place(x, y) for x, y in mark.points))
        case Qr():
            return mark


def _tampered(page: Page, place: Callable[[float, float], tuple[float, float]]) -> Page:
    return replace(page, marks=tuple(_placed(mark, place) for mark in page.marks))


@cache
def alone(example: Example, part: str) -> tuple[Layout, DrawnOnce]:
    """Draw the sheets of one part, on which nothing is wrong."""
    layout = worked_layout(example)
    only = replace(
        layout,
        fronts=tuple(replace(f, drawer=None) for f in layout.fronts if f.id == part),
        sides=tuple(side for side in layout.sides if side.board == part),
    )
    made = draw_once(make_sheets(only, PAPERS["common"]))
    pages = [sheet.page for sheet in made if sheet.parts]
    assert faults_on_paper(read_pages(write_pdf(pages)), only) == []
    return only, made


@pytest.mark.parametrize(
    ("example", "part"),
    [("in", "B3-2"), ("in", "B3-SIDE-R"), ("uneven", "B1-3"), ("uneven", "B1-PARTITION-1")],
)
@pytest.mark.parametrize("wrong", ["mirrored", "upside down", "holes shifted", "card shifted"])
def test_the_comparison_can_fail(example: Example, part: str, wrong: str) -> None:
    """A mirrored sheet, an upside-down sheet and a shifted card are each caught."""
    only, made = alone(example, part)
    pages = [sheet.page for sheet in made if sheet.parts]
    first = pages[0]
    w, h = first.width, first.height
    match wrong:
        case "mirrored":
            pages[0] = _tampered(first, lambda x, y: (w - x, y))
        case "upside down":
            pages[0] = _tampered(first, lambda x, y: (w - x, h - y))
        case "holes shifted":
            marks = [
                replace(mark, x=mark.x + 0.02) if isinstance(mark, Circle) else mark
                for mark in first.marks
            ]
            pages[0] = replace(first, marks=tuple(marks))
        case "card shifted":
            pages[0] = _tampered(first, lambda x, y: (x, y + 0.5 if y > 14.0 else y))
    read = read_pages(write_pdf(pages))
    if wrong == "card shifted":
        cards = [
            {**entry, "page": entry["page"] - len(made.before)}
            for entry in json.loads(sheets_json(made))["cards"]
        ]
        assert faults_in_data(read, {"cards": cards}, only)
    else:
        assert faults_on_paper(read, only)


WRONG_WORDS = [
    ("B1-1", "Its box: 13.1", "Its box: 17.8"),
    ("B1-1", "17.8", "13.1"),
    ("B1-1", "RIGHT;", "LEFT;"),
    ("B1-1", "30.7", "12.4"),
    ("B1-SIDE-L", "33.0 over panel", "51.3 over panel"),
    ("B1-SIDE-L", "602.9 over panel", "584.6 over panel"),
    ("B1-PARTITION-1", "33.0", "51.3"),
]
"""True words of the uneven box, and what a mirrored front or a wrong end of a side would say."""


@pytest.mark.parametrize(("part", "true", "false"), WRONG_WORDS)
def test_wrong_words_are_found(part: str, true: str, false: str) -> None:
    """The ends of a drawer front exchanged, a height over the panel with the panel's thickness
    not taken off or taken off twice, a partition's height taken for a side's."""
    layout = worked_layout("uneven")
    sheets = worked_sheets("uneven")
    before = [sheet.page for sheet in sheets if not sheet.parts]
    page = next(
        sheet.page
        for sheet in sheets
        if part in sheet.parts and any(true in text for text in _texts(sheet.page))
    )
    for words, found in ((true, False), (false, True)):
        pdf = write_pdf([*before, _reworded(page, true, words)])
        assert bool(faults_in_words(read_pages(pdf), layout)) is found


def test_one_figure_for_both_ends_is_found() -> None:
    """As if the drawer box stood in the middle of its front: 15.4 from each end, and not 17.8
    and 13.05."""
    layout = worked_layout("uneven")
    (front,) = (front for front in layout.fronts if front.id == "B1-1")
    assert front.drawer is not None
    middle = replace(front.drawer, x=(front.width - front.drawer.width) / 2)
    said = replace(layout, fronts=(replace(front, drawer=middle),), sides=())
    pages = read_pages(write_pdf(make_sheets(said, PAPERS["common"], only={"B1-1"}).pages))
    assert any("15.4 mm from each end" in page.text for page in pages)
    assert faults_in_words(pages, layout)


def _texts(page: Page) -> list[str]:
    return [mark.text for mark in page.marks if isinstance(mark, Text)]


def _reworded(page: Page, true: str, false: str) -> Page:
    marks = (
        replace(mark, text=mark.text.replace(true, false)) if isinstance(mark, Text) else mark
        for mark in page.marks
    )
    return replace(page, marks=tuple(marks))


# --- what every page carries ------------------------------------------------------------------


def test_the_bars_are_true() -> None:
    """150 across and 100 down on each page, 50 on each card, and nothing else said to be."""
    for page in worked_pages("in"):
        bars = [stroke for stroke in page.strokes if abs(stroke.line - 0.25) < 0.001]
        across = [s for s in bars if s.y1 == s.y2 and s.length == pytest.approx(150.0, abs=0.001)]
        down = [s for s in bars if s.x1 == s.x2 and s.length == pytest.approx(100.0, abs=0.001)]
        assert (len(across), len(down)) == (1, 1)
        assert "150.0 ±0.3" in page.text
        assert "100.0 ±0.2" in page.text
        assert "100 %" in page.text
        for card in page.cards:
            fifty = [
                stroke
                for stroke in card.strokes
                if abs(stroke.line - 0.25) < 0.001
                and stroke.y1 == stroke.y2
                and not stroke.dashed
                and stroke.length == pytest.approx(50.0, abs=0.001)
            ]
            assert len(fifty) == 1
            assert "50.0" in [run.text for run in card.runs]


def test_the_first_page_has_a_bank_card_to_lay_on() -> None:
    """85.60 x 53.98 mm (ISO/IEC 7810, ID-1; from memory)."""
    frames = worked_pages("in")[0].frames
    sizes = [(box[2] - box[0], box[3] - box[1]) for box, _, dashed in frames if not dashed]
    assert any(size == pytest.approx((85.60, 53.98), abs=0.001) for size in sizes)


def _named(page: PrintedPage, wanted: dict[tuple[str, str], Wanted]) -> tuple[list[str], set[str]]:
    """Give the parts that head a page's fields, and those that have a row there with their code,
    which is on the part's own label: a row has no symbol."""
    faces = [face_of(field, wanted) for field in page.fields]
    rows = re.findall(r"ALSO (\S+ ?\S*?)(?:, sheet \d+/\d+)?, code [0-9A-Z]{4}\b", page.text)
    return [face.part for face in faces if face is not None], {row.replace(" ", "") for row in rows}


@pytest.mark.slow
def test_every_symbol_is_read_and_begins_with_its_part() -> None:
    """By an independent reader, from each page at 300 dpi."""
    wanted = wanted_faces(worked_layout("in"))
    for page, raster in zip(worked_pages("in"), render(worked_pdf("in")), strict=True):
        parts, _ = _named(page, wanted)
        drilled = "DRILL THIS FACE" in page.text
        assert len(parts) == (len(page.fields) if drilled else 0)
        assert sorted(text.split(" ")[0] for text in qr_texts(raster)) == sorted(parts)


@pytest.mark.parametrize("example", EXAMPLES)
def test_every_page_and_card_says_what_it_must(example: Example) -> None:
    """Part, code, face, UP, size, blanks, a sum that closes, steps; on each card both distances
    of every hole. NOT REVERSIBLE exactly where a door is not."""
    assert faults_in_words(worked_pages(example), worked_layout(example)) == []


@pytest.mark.parametrize("example", EXAMPLES)
def test_nothing_printed_runs_into_anything(example: Example) -> None:
    """No letter on a letter, a line, a hole or black; nothing outside the page."""
    for page in worked_pages(example):
        assert clashes_of_print(page) == [], page.number


def test_pages_have_the_size_of_the_paper() -> None:
    """198 x 267, upright or lying."""
    for page in worked_pages("in"):
        assert sorted((page.width, page.height)) == pytest.approx([198.0, 267.0], abs=0.001)


def test_the_same_layout_gives_the_same_bytes() -> None:
    """Nothing of the day or the machine stands on paper."""
    drawn_anew = make_sheets(worked_layout("in"), PAPERS["common"])
    again = write_pdf(drawn_anew.pages, title="Worked example")
    assert again == worked_pdf("in")


# --- whatever a kitchen has -------------------------------------------------------------------


def _check(job: Job, paper: Paper) -> None:
    layout = lay_out(job)
    sheets = draw_once(make_sheets(layout, paper))
    pages = read_pages(write_pdf(sheets.pages, title=job.name))
    assert faults_on_paper(pages, layout) == []
    assert faults_in_data(pages, json.loads(sheets_json(sheets)), layout) == []
    assert faults_in_words(pages, layout) == []
    assert [clash for page in pages for clash in clashes_of_print(page)] == []


@given(jobs(most_boxes=1), papers)
@settings(max_examples=2)
def test_any_job_can_be_read_back(job: Job, paper: Paper) -> None:
    """Holes, data, words and clear print, on every paper."""
    _check(job, paper)


@pytest.mark.slow
@given(jobs(), papers)
@settings(max_examples=12)
def test_any_of_many_jobs_can_be_read_back(job: Job, paper: Paper) -> None:
    """The same, at length."""
    _check(job, paper)


@pytest.mark.slow
@given(jobs(most_boxes=2))
@settings(max_examples=4)
def test_any_symbol_of_many_jobs_is_read(job: Job) -> None:
    """From the dots of every page: one for each part that heads a field, and every other part of
    the page has a row with its code."""
    layout = lay_out(job)
    wanted = wanted_faces(layout)
    sheets = draw_once(make_sheets(layout, PAPERS["common"]))
    pdf = write_pdf(sheets.pages)
    for sheet, page, raster in zip(sheets, read_pages(pdf), render(pdf), strict=True):
        parts, rows = _named(page, wanted)
        assert sorted(text.split(" ")[0] for text in qr_texts(raster)) == sorted(parts)
        assert {*parts, *rows} == set(sheet.parts)
