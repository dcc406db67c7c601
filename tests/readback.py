"""Printed sheets read back by a library that had no part in writing them; everything in mm."""

import io
import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Any

import pdfplumber

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
    def cards(self) -> tuple[PrintedCard, ...]:
        """The cards: solid frames in the thinnest line, and what lies within each."""
        return tuple(
            PrintedCard(
                box=box,
                bands=tuple(black for black in self.blacks if _is_band(black) and _in(black, box)),
                middles=tuple(middle for middle in self.middles if _in(middle, box)),
                rings=tuple(r for r in self.rings if _in((r.x, r.y, r.x, r.y), box)),
                runs=tuple(run for run in self.runs if _in(run.box, box)),
                strokes=tuple(s for s in self.strokes if _in(_ends(s), box)),
            )
            for box, line, dashed in self.frames
            if abs(line - 0.18) < 0.01 and not dashed and min(*extent(box)) > 40.0
        )


def read_pages(pdf: bytes) -> tuple[PrintedPage, ...]:
    """Read all pages of a PDF."""
    with pdfplumber.open(io.BytesIO(pdf)) as document:
        return tuple(
            _in_unit(_read_page(page), float(page.page_obj.attrs.get("UserUnit", 1)))
            for page in document.pages
        )


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


def _read_page(page: Any) -> PrintedPage:
    rings, middles, blacks, frames = [], [], [], []
    for curve in page.curves:
        box = _box(curve)
        if any(step[0] == "c" for step in curve["path"]):
            width, height = extent(box)
            rings.append(
                Ring(
                    x=(box[0] + box[2]) / 2,
                    y=(box[1] + box[3]) / 2,
                    diameter=width,
                    height=height,
                    line=curve["linewidth"] * POINTS_TO_MM,
                )
            )
        elif curve["fill"]:
            blacks.append(box)
        else:
            middles.append(box)
    for rect in page.rects:
        if rect["fill"]:
            blacks.append(_box(rect))
        else:
            frames.append((_box(rect), rect["linewidth"] * POINTS_TO_MM, _dashed(rect)))
    return PrintedPage(
        number=page.page_number,
        width=float(page.width) * POINTS_TO_MM,
        height=float(page.height) * POINTS_TO_MM,
        rings=tuple(rings),
        runs=tuple(_runs(page.chars)),
        strokes=tuple(_stroke(line) for line in page.lines),
        frames=tuple(frames),
        blacks=tuple(blacks),
        middles=tuple(middles),
    )


def _box(item: Any) -> Box:
    return (
        item["x0"] * POINTS_TO_MM,
        item["y0"] * POINTS_TO_MM,
        item["x1"] * POINTS_TO_MM,
        item["y1"] * POINTS_TO_MM,
    )


def _stroke(line: Any) -> Stroke:
    (x1, top1), (x2, top2) = line["pts"]
    low = line["y0"] * POINTS_TO_MM
    bottom = max(top1, top2)
    return Stroke(
        x1=x1 * POINTS_TO_MM,
        y1=low + (bottom - top1) * POINTS_TO_MM,
        x2=x2 * POINTS_TO_MM,
        y2=low + (bottom - top2) * POINTS_TO_MM,
        line=line["linewidth"] * POINTS_TO_MM,
        dashed=_dashed(line),
    )


def _dashed(item: Any) -> bool:
    return bool(item["dash"] and item["dash"][0])


def _runs(chars: list[Any]) -> Iterator[Run]:
    """Join letters that follow each other on one base line in one size."""
    held: list[Any] = []
    for char in chars:
        if held and not _follows(held[-1], char):
            yield _run(held)
            held = []
        held.append(char)
    if held:
        yield _run(held)


def _follows(before: Any, char: Any) -> bool:
    a, b, c, d, x, y = before["matrix"]
    if char["matrix"][:4] != (a, b, c, d) or abs(_em(before) - _em(char)) > 0.01:
        return False
    if before["fontname"].split("-")[-1] != char["fontname"].split("-")[-1]:
        return False
    advance = before["adv"]
    gap = (char["matrix"][4] - x - a * advance, char["matrix"][5] - y - b * advance)
    return bool(max(abs(gap[0]), abs(gap[1])) < 0.02)


def _em(char: Any) -> float:
    """A letter's em in points: the height of its box, which of a turned letter lies across."""
    return float(char["height"] if char["upright"] else char["x1"] - char["x0"])


_TAILS = re.compile(r"[gjpqyQ,;()\[\]{}|@/]|[^\x00-\xff]")


def _run(chars: list[Any]) -> Run:
    text = "".join(char["text"] for char in chars)
    first, last = chars[0], chars[-1]
    turned = not first["upright"]
    em = _em(first) * POINTS_TO_MM
    x, y = first["matrix"][4] * POINTS_TO_MM, first["matrix"][5] * POINTS_TO_MM
    tail = 0.2 * em if _TAILS.search(text) else 0.0
    capital = EM_TO_CAPITAL * em
    if turned:
        box = (x - capital, y, x + tail, last["y1"] * POINTS_TO_MM)
    else:
        box = (x, y - tail, last["x1"] * POINTS_TO_MM, y + capital)
    return Run(
        text=text,
        box=box,
        size=capital,
        bold="SemiBold" in first["fontname"],
        turned=turned,
    )


def extent(box: Box) -> tuple[float, float]:
    """Give a box's width and height, mm."""
    return box[2] - box[0], box[3] - box[1]


def _ends(stroke: Stroke) -> Box:
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
