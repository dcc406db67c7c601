"""The printed sheets read back: by a library that parses the PDF, and from its dots."""

import json
import re
from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings

from jigs.job import Job, Unit
from jigs.layout import lay_out
from jigs.parts import Layout
from templates.marks import Area, Circle, Line, Mark, Outline, Page, Qr, Text
from templates.paper import PAPERS, Paper
from templates.pdf import write_pdf
from templates.sheetdata import sheets_json
from templates.sheets import Sheets, make_sheets
from tests.clashes import clashes_of_print
from tests.jobs import jobs, papers
from tests.raster import qr_texts, render
from tests.readback import (
    PrintedCard,
    PrintedPage,
    face_of,
    faults_on_paper,
    read_pages,
    ruler_across,
    ruler_up,
    wanted_faces,
)
from tests.templates.worked import worked_layout, worked_pages, worked_pdf, worked_sheets

UNITS: tuple[Unit, ...] = ("in", "mm")


# --- every hole in its place ------------------------------------------------------------------


@pytest.mark.parametrize("unit", UNITS)
def test_every_hole_stands_once_in_its_true_place(unit: Unit) -> None:
    """Within 0.01 mm of where the layout has it, read from where white meets black, from the
    cut edge or from the diamonds; mirrored where the driller sees it mirrored; and no circle
    is anything but a hole."""
    assert faults_on_paper(worked_pages(unit), worked_layout(unit)) == []


def test_circles_are_wide_lines_and_true_circles() -> None:
    """0.35 mm, as nothing else that is round."""
    rings = [ring for page in worked_pages("in") for ring in page.rings]
    assert rings
    for ring in rings:
        assert ring.line == pytest.approx(0.35, abs=0.001)
        assert ring.height == pytest.approx(ring.diameter, abs=0.001)


@pytest.mark.parametrize("unit", UNITS)
def test_the_data_agree_with_the_paper(unit: Unit) -> None:
    """The cards as data: border, black edges, index lines, ladders and holes, page by page."""
    data = json.loads(sheets_json(worked_sheets(unit)))
    assert faults_in_data(worked_pages(unit), data, worked_layout(unit)) == []


def faults_in_data(
    pages: tuple[PrintedPage, ...], data: dict[str, Any], layout: Layout
) -> list[str]:
    """Compare the cards as data with the cards on paper, within 0.001 mm."""
    wanted = wanted_faces(layout)
    printed = {
        (page.number, round(card.box[0], 2), round(card.box[1], 2)): (page, card)
        for page in pages
        for card in page.cards
    }
    faults: list[str] = []
    for entry in data["cards"]:
        key = (entry["page"], round(entry["x_mm"], 2), round(entry["y_mm"], 2))
        near = [
            spot
            for spot in printed
            if all(abs(a - b) < 0.02 for a, b in zip(spot, key, strict=True))
        ]
        where = f"page {key[0]}: the card at {key[1]}, {key[2]}"
        if not near:
            faults.append(f"{where} is not on paper")
            continue
        page, card = printed.pop(near[0])
        face = face_of(page, wanted)
        if face is None or (face.part, face.face) != (entry["part"], entry["face"]):
            faults.append(f"{where} is for another part or face")
            continue
        if not _same_numbers(_as_data(card, entry), entry):
            faults.append(f"{where} differs from its data")
        origin_x = ruler_across(card).place(0.0, face.width)
        origin_y = ruler_up(card).place(0.0, face.height)
        if max(abs(origin_x + entry["origin_mm"][0]), abs(origin_y + entry["origin_mm"][1])) > 0.01:
            faults.append(f"{where} has another origin")
    return faults + [f"page {spot[0]}: a card without data" for spot in printed]


def _as_data(card: PrintedCard, entry: dict[str, Any]) -> dict[str, Any]:
    """Say what is on paper in the words of the data; purposes and names are the data's own."""
    edges: list[dict[str, Any]] = []
    index: list[dict[str, Any]] = []
    for axis, ruler in (("x", ruler_across(card)), ("y", ruler_up(card))):
        near, far = ("left", "right") if axis == "x" else ("bottom", "top")
        edge = far if ruler.from_far else near
        if ruler.kind == "edge":
            edges.append({"edge": edge, "at_mm": ruler.at})
        elif ruler.kind == "middle":
            index.append({"from": f"middle-{axis}", "value_mm": None, "at_mm": ruler.at})
        else:
            index.append({"from": edge, "value_mm": ruler.value, "at_mm": ruler.at})
    found: dict[str, Any] = {
        **entry,
        "x_mm": card.box[0],
        "y_mm": card.box[1],
        "width_mm": card.box[2] - card.box[0],
        "height_mm": card.box[3] - card.box[1],
        "edges": edges,
        "index": index,
    }
    true_top = [s.y1 for s in card.strokes if s.y1 == s.y2 and abs(s.line - 0.35) < 0.001]
    found.pop("ladder", None)
    if true_top:
        found["ladder"] = {"edge": "top", "at_mm": true_top[0]}
    rings = sorted((r.x, r.y, r.diameter) for r in card.rings)
    holes = sorted(
        entry["holes"], key=lambda hole: (round(hole["x_mm"], 2), round(hole["y_mm"], 2))
    )
    rings.sort(key=lambda ring: (round(ring[0], 2), round(ring[1], 2)))
    found["holes"] = [
        {**hole, "x_mm": x, "y_mm": y, "diameter_mm": diameter}
        for hole, (x, y, diameter) in zip(holes, rings, strict=True)
    ]
    entry["holes"] = holes
    return found


def _same_numbers(a: Any, b: Any) -> bool:
    if isinstance(a, dict):
        return a.keys() == b.keys() and all(_same_numbers(a[key], b[key]) for key in a)
    if isinstance(a, list):
        return len(a) == len(b) and all(map(_same_numbers, a, b))
    if isinstance(a, float | int) and isinstance(b, float | int):
        return abs(a - b) < 0.001
    return bool(a == b)


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


@pytest.mark.parametrize("part", ["B3-2", "B3-SIDE-R"])
@pytest.mark.parametrize("wrong", ["mirrored", "upside down", "holes shifted", "card shifted"])
def test_the_comparison_can_fail(part: str, wrong: str) -> None:
    """A mirrored sheet, an upside-down sheet and a shifted card are each caught."""
    sheets = [sheet for sheet in worked_sheets("in") if sheet.part == part]
    layout = worked_layout("in")
    only = replace(
        layout,
        fronts=tuple(replace(f, drawer=None) for f in layout.fronts if f.id == part),
        sides=tuple(side for side in layout.sides if side.board == part),
    )
    pages = [sheet.page for sheet in sheets]
    assert faults_on_paper(read_pages(write_pdf(pages)), only) == []
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
            {**entry, "page": entry["page"] - 1}
            for entry in json.loads(sheets_json(make_sheets(only, PAPERS["common"])))["cards"]
        ]
        assert faults_in_data(read, {"cards": cards}, only)
    else:
        assert faults_on_paper(read, only)


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
        assert "100 %, actual size" in page.text
        assert "SCALE 1:1" in page.text
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


def test_every_symbol_is_read_and_begins_with_its_part() -> None:
    """By an independent reader, from each page at 300 dpi."""
    wanted = wanted_faces(worked_layout("in"))
    for page, raster in zip(worked_pages("in"), render(worked_pdf("in")), strict=True):
        face = face_of(page, wanted)
        texts = qr_texts(raster)
        if face is None:
            assert page.number == 1
            continue
        assert len(texts) == 1
        assert texts[0].split(" ")[0] == face.part


def _codes(layout: Layout) -> dict[str, str]:
    drawers = [front.drawer for front in layout.fronts if front.drawer]
    return {
        **{front.id: front.code for front in layout.fronts},
        **{drawer.id: drawer.code for drawer in drawers},
        **{side.board: side.code for side in layout.sides},
    }


SUM = re.compile(r"((?:-?\d+\.\d \+ )+\d+\.\d) = (\d+\.\d)")


def faults_in_words(pages: tuple[PrintedPage, ...], layout: Layout) -> list[str]:
    """Look on every page for the words it must carry; in words, nothing where all are there."""
    wanted, codes = wanted_faces(layout), _codes(layout)
    doors = {f.id: f for f in layout.fronts if f.kind == "door" and f.hinged and not f.bored}
    faults: list[str] = []
    for page in pages[1:]:
        face = face_of(page, wanted)
        if face is None:
            faults.append(f"page {page.number}: no part or face named")
            continue
        size = (
            f"This box {face.width:.1f} wide"
            if face.face == "box-front"
            else f"This part {face.height:.1f} x {face.width:.1f}"
            if face.face == "inside"
            else f"This part {face.width:.1f} x {face.height:.1f}"
        )
        for words in (
            f"code {codes[face.part]}",
            "Yours ____",
            size,
            "SCALE 1:1",
            "UP",
            "Print again at 100 %, actual size",
        ):
            if words not in page.text:
                faults.append(f"page {page.number}: {words!r} is missing")
        if "STEPS" not in page.text and "1 Measure both bars" not in page.text:
            faults.append(f"page {page.number}: no steps")
        found = SUM.findall(page.text)
        if not found:
            faults.append(f"page {page.number}: no sum")
        for terms, total in found:
            tenths = [round(float(term) * 10) for term in terms.split(" + ")]
            if sum(tenths) != round(float(total) * 10):
                faults.append(f"page {page.number}: {terms} is not {total}")
        door = doors.get(face.part)
        fixed = door is not None and face.face == "back" and not door.reversible
        if ("NOT REVERSIBLE" in page.text) is not fixed:
            faults.append(
                f"page {page.number}: NOT REVERSIBLE is {'missing' if fixed else 'wrong'}"
            )
        for card in page.cards:
            faults += [
                f"page {page.number}: a card without {words!r}"
                for words in (face.part, f"code {codes[face.part]}", face.words, "UP", "50.0")
                if words not in card.text
            ]
            missing = _figures_missing(card, face.width, face.height)
            faults += [f"page {page.number}: {fault}" for fault in missing]
    return faults


def _figures_missing(card: PrintedCard, width: float, height: float) -> list[str]:
    """Each hole's distances from both references, large in mm; from an index line's edge."""
    large = [run.text for run in card.runs if run.size > 3.0 and _FIGURE.fullmatch(run.text)]
    faults: list[str] = []
    for ring in card.rings:
        for ruler, coordinate, length in (
            (ruler_across(card), ring.x, width),
            (ruler_up(card), ring.y, height),
        ):
            place = ruler.place(coordinate, length)
            distance = length - place if ruler.from_far else place
            if ruler.kind == "middle":
                distance = abs(coordinate - ruler.at)
                if not _near(place, _SMALL.findall(card.text)):
                    faults.append(f"{place:.2f} from the left is not written on a card")
            if not _near(distance, large):
                faults.append(f"{distance:.2f} is not written on a card")
            if ruler.kind == "index":
                inner = abs(coordinate - ruler.at)
                if not _near(inner, _FROM_LINE.findall(card.text)):
                    faults.append(f"{inner:.2f} from its line is not written on a card")
    return faults


_FIGURE = re.compile(r"\d+\.\d")
_SMALL = re.compile(r"(\d+\.\d) from ")
_FROM_LINE = re.compile(r"(\d+\.\d) from this line")


def _near(value: float, figures: list[str]) -> bool:
    """Say whether one of some printed figures is a length, to the tenth they are written to."""
    return any(abs(float(figure) - value) < 0.0502 for figure in figures)


@pytest.mark.parametrize("unit", UNITS)
def test_every_page_and_card_says_what_it_must(unit: Unit) -> None:
    """Part, code, face, UP, size, blanks, a sum that closes, steps; on each card both distances
    of every hole. NOT REVERSIBLE exactly where a door is not."""
    assert faults_in_words(worked_pages(unit), worked_layout(unit)) == []


@pytest.mark.parametrize("unit", UNITS)
def test_nothing_printed_runs_into_anything(unit: Unit) -> None:
    """No letter on a letter, a line, a hole or black; nothing outside the page."""
    for page in worked_pages(unit):
        assert clashes_of_print(page) == [], page.number


def test_pages_have_the_size_of_the_paper() -> None:
    """198 x 267, upright or lying."""
    for page in worked_pages("in"):
        assert sorted((page.width, page.height)) == pytest.approx([198.0, 267.0], abs=0.001)


def test_the_same_layout_gives_the_same_bytes() -> None:
    """Nothing of the day or the machine stands on paper."""
    again = write_pdf(worked_sheets("in").pages, title="Worked example")
    assert again == worked_pdf("in")


# --- whatever a kitchen has -------------------------------------------------------------------


def _check(job: Job, paper: Paper) -> None:
    layout = lay_out(job)
    sheets = make_sheets(layout, paper)
    pages = read_pages(write_pdf(sheets.pages, title=job.name))
    assert faults_on_paper(pages, layout) == []
    assert faults_in_data(pages, json.loads(sheets_json(sheets)), layout) == []
    assert faults_in_words(pages, layout) == []
    assert [clash for page in pages for clash in clashes_of_print(page)] == []


@given(jobs(most_boxes=1), papers)
@settings(
    max_examples=6, deadline=None, derandomize=True, suppress_health_check=[HealthCheck.too_slow]
)
def test_any_job_can_be_read_back(job: Job, paper: Paper) -> None:
    """Holes, data, words and clear print, on every paper."""
    _check(job, paper)


@pytest.mark.slow
@given(jobs(), papers)
@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_any_of_many_jobs_can_be_read_back(job: Job, paper: Paper) -> None:
    """The same, at length."""
    _check(job, paper)


@pytest.mark.slow
@given(jobs(most_boxes=2))
@settings(max_examples=20, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_any_symbol_of_many_jobs_is_read(job: Job) -> None:
    """From the dots of every page."""
    layout = lay_out(job)
    sheets: Sheets = make_sheets(layout, PAPERS["common"])
    pdf = write_pdf(sheets.pages)
    for sheet, raster in zip(sheets, render(pdf), strict=True):
        texts = qr_texts(raster)
        assert [text.split(" ")[0] for text in texts] == ([sheet.part] if sheet.part else [])
