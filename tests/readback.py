"""Printed sheets read back by a library that had no part in writing them; everything in mm."""

import io
import re
from collections.abc import Iterator
from ctypes import byref, c_float, c_int
from dataclasses import dataclass, replace
from math import hypot
from typing import Any

import pdfplumber
import pypdfium2
from pypdfium2 import raw

from tests.readletters import Point, Shown, Words, matrix_of, objects_of

POINTS_TO_MM = 25.4 / 72
EM_TO_CAPITAL = 0.688
"""Capital height of the printed face in ems (its OS/2 table)."""

Box = tuple[float, float, float, float]
"""x0, y0, x1, y1 in mm from the page's lower left corner."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Ring:
    """A circle on paper, by the box round its curve; mm."""

    x: float
    y: float
    diameter: float
    height: float
    line: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Run:
    """One line of text on paper: its box from the base line (less any tails) to the capitals."""

    text: str
    box: Box
    size: float
    bold: bool
    turned: bool
    flipped: bool = False
    """Whether it is read with the page upside down."""

    @property
    def base(self) -> float:
        """The coordinate of the base line: y, or x where the text is turned."""
        return self.box[2] if self.turned else self.box[1]


@dataclass(frozen=True, slots=True, kw_only=True)
class Stroke:
    """A straight line on paper."""

    x1: float
    y1: float
    x2: float
    y2: float
    line: float
    dashed: bool

    @property
    def length(self) -> float:
        """Length, mm."""
        return float(((self.x2 - self.x1) ** 2 + (self.y2 - self.y1) ** 2) ** 0.5)


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedCard:
    """One card on paper: its border and what lies in it; `bands` are the black edges."""

    box: Box
    bands: tuple[Box, ...]
    middles: tuple[Box, ...]
    rings: tuple[Ring, ...]
    runs: tuple[Run, ...]
    strokes: tuple[Stroke, ...]

    @property
    def text(self) -> str:
        """All words on the card."""
        return " ".join(run.text for run in self.runs)


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedPage:
    """One page of a PDF."""

    number: int
    width: float
    height: float
    rings: tuple[Ring, ...]
    runs: tuple[Run, ...]
    strokes: tuple[Stroke, ...]
    frames: tuple[tuple[Box, float, bool], ...]
    blacks: tuple[Box, ...]
    middles: tuple[Box, ...]

    @property
    def text(self) -> str:
        """All words on the page, in the order in which they were written."""
        return " ".join(run.text for run in self.runs)

    @property
    def fields(self) -> tuple["PrintedPage", ...]:
        """What stands within each wide frame, or all of a page that has none."""
        frames = [box for box, line, _ in self.frames if abs(line - 0.5) < 0.01]
        return tuple(self._within(box) for box in frames) or (self,)

    def _within(self, box: Box) -> "PrintedPage":
        return replace(
            self,
            rings=tuple(r for r in self.rings if _in((r.x, r.y, r.x, r.y), box)),
            runs=tuple(run for run in self.runs if _in(run.box, box)),
            strokes=tuple(s for s in self.strokes if _in(ends_of(s), box)),
            frames=tuple(f for f in self.frames if _in(f[0], box) and f[0] != box),
            blacks=tuple(black for black in self.blacks if _in(black, box)),
            middles=tuple(middle for middle in self.middles if _in(middle, box)),
        )

    @property
    def cards(self) -> tuple[PrintedCard, ...]:
        """The cards: solid frames in the thinnest line, and what lies within each."""
        return tuple(
            PrintedCard(
                box=box,
                bands=tuple(black for black in self.blacks if _is_band(black) and _in(black, box)),
                middles=tuple(middle for middle in self.middles if _in(middle, box)),
                rings=tuple(r for r in self.rings if _in((r.x, r.y, r.x, r.y), box)),
                runs=tuple(run for run in self.runs if _in(run.box, box)),
                strokes=tuple(s for s in self.strokes if _in(ends_of(s), box)),
            )
            for box, line, dashed in self.frames
            if abs(line - 0.18) < 0.01 and not dashed and min(*extent(box)) > 40.0
        )


def read_pages(pdf: bytes) -> tuple[PrintedPage, ...]:
    """Read all pages of a PDF."""
    document = pypdfium2.PdfDocument(pdf)
    try:
        units = _units(pdf, len(document))
        return tuple(
            _in_unit(_read_page(page, number), unit)
            for number, (page, unit) in enumerate(zip(document, units, strict=True), start=1)
        )
    finally:
        document.close()


def _units(pdf: bytes, pages: int) -> list[float]:
    """Each page's unit in points: the quick library does not tell, so a second one is asked."""
    if b"/UserUnit" not in pdf:
        return [1.0] * pages
    with pdfplumber.open(io.BytesIO(pdf)) as document:
        return [float(page.page_obj.attrs.get("UserUnit", 1)) for page in document.pages]


def _in_unit(page: PrintedPage, unit: float) -> PrintedPage:
    """Give a page that counts in a unit of so many points (its UserUnit) in mm."""
    if unit == 1:
        return page

    def box(place: Box) -> Box:
        x0, y0, x1, y1 = place
        return x0 * unit, y0 * unit, x1 * unit, y1 * unit

    return replace(
        page,
        width=page.width * unit,
        height=page.height * unit,
        rings=tuple(
            Ring(
                x=ring.x * unit,
                y=ring.y * unit,
                diameter=ring.diameter * unit,
                height=ring.height * unit,
                line=ring.line * unit,
            )
            for ring in page.rings
        ),
        runs=tuple(replace(run, box=box(run.box), size=run.size * unit) for run in page.runs),
        strokes=tuple(
            replace(
                stroke,
                x1=stroke.x1 * unit,
                y1=stroke.y1 * unit,
                x2=stroke.x2 * unit,
                y2=stroke.y2 * unit,
                line=stroke.line * unit,
            )
            for stroke in page.strokes
        ),
        frames=tuple((box(place), line * unit, dash) for place, line, dash in page.frames),
        blacks=tuple(box(place) for place in page.blacks),
        middles=tuple(box(place) for place in page.middles),
    )


def _read_page(page: Any, number: int) -> PrintedPage:
    rings: list[Ring] = []
    runs: list[Shown] = []
    strokes: list[Stroke] = []
    frames: list[tuple[Box, float, bool]] = []
    blacks: list[Box] = []
    middles: list[Box] = []
    words = Words(page)
    for item, forms in objects_of(page):
        if raw.FPDFPageObj_GetType(item) == raw.FPDF_PAGEOBJ_TEXT:
            shown = words.shown(item, forms)
            if runs and runs[-1].goes_on_in(shown):
                before = runs.pop()
                shown = replace(before, text=before.text + shown.text, end=shown.end)
            runs.append(shown)
            continue
        assert raw.FPDFPageObj_GetType(item) == raw.FPDF_PAGEOBJ_PATH
        fill, width = c_int(), c_float()
        assert raw.FPDFPath_GetDrawMode(item, byref(fill), byref(c_int()))
        assert raw.FPDFPageObj_GetStrokeWidth(item, byref(width))
        matrix = matrix_of(item, forms)
        line = width.value * hypot(matrix.a, matrix.b) * POINTS_TO_MM
        dashed = raw.FPDFPageObj_GetDashCount(item) > 0
        for points, curved, closed in _paths(item, matrix, filled=bool(fill.value)):
            if curved:
                box = _box(points)
                wide, high = extent(box)
                x, y = (box[0] + box[2]) / 2, (box[1] + box[3]) / 2
                rings.append(Ring(x=x, y=y, diameter=wide, height=high, line=line))
            elif len(points) == 2:
                (x1, y1), (x2, y2) = ((x * POINTS_TO_MM, y * POINTS_TO_MM) for x, y in points)
                strokes.append(Stroke(x1=x1, y1=y1, x2=x2, y2=y2, line=line, dashed=dashed))
            elif fill.value:
                blacks.append(_box(points))
            elif closed and _is_upright(points):
                frames.append((_box(points), line, dashed))
            else:
                middles.append(_box(points))
    words.close()
    return PrintedPage(
        number=number,
        width=raw.FPDF_GetPageWidthF(page.raw) * POINTS_TO_MM,
        height=raw.FPDF_GetPageHeightF(page.raw) * POINTS_TO_MM,
        rings=tuple(rings),
        runs=tuple(_run(shown) for shown in runs),
        strokes=tuple(strokes),
        frames=tuple(frames),
        blacks=tuple(blacks),
        middles=tuple(middles),
    )


def _paths(item: Any, matrix: Any, *, filled: bool) -> Iterator[tuple[list[Point], bool, bool]]:
    """Give each piece of a path: its corners or the ends of its curves, whether it is curved,
    whether it is closed, as whatever is filled is."""
    # A page has thousands of pieces, most of them a symbol's dots: nothing is asked twice.
    segment, kind_of = raw.FPDFPath_GetPathSegment, raw.FPDFPathSegment_GetType
    point, ends = raw.FPDFPathSegment_GetPoint, raw.FPDFPathSegment_GetClose
    move, curve = raw.FPDF_SEGMENT_MOVETO, raw.FPDF_SEGMENT_BEZIERTO
    a, b, c, d, e, f = matrix.a, matrix.b, matrix.c, matrix.d, matrix.e, matrix.f
    x, y = c_float(), c_float()
    at_x, at_y = byref(x), byref(y)
    points: list[Point] = []
    curved, closed = False, filled
    between = 0
    for row in range(raw.FPDFPath_CountSegments(item)):
        step = segment(item, row)
        kind = kind_of(step)
        if kind == move:
            if points:
                yield points, curved, closed
            points, curved, closed = [], False, filled
        elif kind == curve:
            curved, between = True, (between + 1) % 3
            if between:
                continue
        point(step, at_x, at_y)
        across, up = x.value, y.value
        points.append((a * across + c * up + e, b * across + d * up + f))
        closed = closed or (kind != move and bool(ends(step)))
    yield points, curved, closed


def _box(points: list[Point]) -> Box:
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return (
        min(xs) * POINTS_TO_MM,
        min(ys) * POINTS_TO_MM,
        max(xs) * POINTS_TO_MM,
        max(ys) * POINTS_TO_MM,
    )


def _is_upright(points: list[Point]) -> bool:
    """Whether corners are an upright rectangle's, back to the first."""
    if len(points) != 5 or points[4] != points[0]:
        return False
    (x0, y0), (x1, y1), (x2, y2), (x3, y3), _ = points
    return (x0 == x1 and y1 == y2 and x2 == x3 and y3 == y0) or (
        y0 == y1 and x1 == x2 and y2 == y3 and x3 == x0
    )


_TAILS = re.compile(r"[gjpqyQ,;()\[\]{}|@/]|[^\x00-\xff]")


def _run(shown: Shown) -> Run:
    em = shown.em * POINTS_TO_MM
    x, y = (place * POINTS_TO_MM for place in shown.start)
    right, top = (place * POINTS_TO_MM for place in shown.end)
    tail = 0.2 * em if _TAILS.search(shown.text) else 0.0
    capital = EM_TO_CAPITAL * em
    lying, upright = (x, y - tail, right, y + capital), (x - capital, y, x + tail, top)
    if right < x:  # turned half round
        lying = (right, y - capital, x, y + tail)
    return Run(
        text=shown.text,
        box=upright if shown.turned else lying,
        size=capital,
        bold="SemiBold" in shown.face,
        turned=shown.turned,
        flipped=right < x and not shown.turned,
    )


def extent(box: Box) -> tuple[float, float]:
    """Give a box's width and height, mm."""
    return box[2] - box[0], box[3] - box[1]


def ends_of(stroke: Stroke) -> Box:
    """Give the box round a stroke."""
    xs, ys = sorted((stroke.x1, stroke.x2)), sorted((stroke.y1, stroke.y2))
    return xs[0], ys[0], xs[1], ys[1]


def _in(inner: Box, outer: Box) -> bool:
    return (
        inner[0] > outer[0] - 0.01
        and inner[1] > outer[1] - 0.01
        and inner[2] < outer[2] + 0.01
        and inner[3] < outer[3] + 0.01
    )


def _is_band(black: Box) -> bool:
    low, high = sorted(extent(black))
    return abs(low - 3.0) < 0.01 and high > 20.0
