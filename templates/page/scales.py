"""Ruled scales and verniers: what paper is read by, and what shows that a join has slipped.

A scale is a row of ticks along a line, longer at the fives and the tens, or by sixteenths of an
inch. A vernier is a pair of little scales that meet at a join: the marks of one stand 2.0 apart,
those of the other 1.7. Where all is right the two long middle marks make one line; a slip of
0.3 mm brings the next pair in line, 0.6 the one after.

>>> round(COARSE - FINE, 3)
0.3
"""

from collections.abc import Callable, Iterator
from typing import Literal

from jigs.ground.lengths import MM_PER_INCH, Unit
from templates.page.marks import THIN, Line, Text

BarRuns = Literal["up", "down", "right"]

SLIP = 0.3
"""What a join may add, with care: the least that its vernier shows; mm (common practice, no
source)."""
COARSE = 2.0
FINE = COARSE - SLIP
"""The steps of a vernier's two halves, mm."""
MARKS = (-2, -1, 0, 1, 2)
OVERLAP = 13.0
"""How far the tab below a join reaches beyond the join line, mm."""
VERNIER_AT = OVERLAP / 2
"""Where on the tab the middle marks stand, beyond the join line; mm."""

_TICKS: dict[Unit, tuple[tuple[int, float], ...]] = {
    "mm": ((10, 5.0), (5, 3.5), (1, 2.0)),
    "in": ((16, 5.0), (8, 4.0), (4, 3.2), (2, 2.4), (1, 1.6)),
}
"""How many steps of the scale a tick stands for, and its length; mm."""
_STEP: dict[Unit, float] = {"mm": 1.0, "in": MM_PER_INCH / 16}


def ticks(
    x: float,
    y: float,
    low: float,
    high: float,
    *,
    along: BarRuns,
    side: Literal[1, -1],
    unit: Unit = "mm",
    width: float = THIN,
    skip: Callable[[float], bool] | None = None,
) -> list[Line]:
    """Draw the ticks of a scale that reads `low` at (x, y) and `high` where it ends, mm.

    `side`: whether they point to where coordinates grow. `skip` says where none is drawn.
    """
    marks: list[Line] = []
    for count, value in _steps(low, high, unit):
        if skip is not None and skip(value):
            continue
        length = side * next(size for part, size in _TICKS[unit] if count % part == 0)
        at_x, at_y = _place(x, y, value - low, along)
        end = (at_x, at_y + length) if along == "right" else (at_x + length, at_y)
        marks.append(Line(x1=at_x, y1=at_y, x2=end[0], y2=end[1], width=width))
    return marks


def numbers(
    x: float,
    y: float,
    low: float,
    high: float,
    *,
    along: BarRuns,
    anchor: Literal["start", "middle", "end"],
    unit: Unit = "mm",
    every: int = 10,
) -> Iterator[tuple[float, Text]]:
    """Give the figures of a scale, each with the length it stands for: every so many mm, or
    every inch. They stand on (x, y) as the ticks do, upright figures beside their ticks."""
    whole = 16 if unit == "in" else every
    for count, value in _steps(low, high, unit):
        if count % whole == 0:
            at_x, at_y = _place(x, y, value - low, along)
            if along != "right":
                at_y -= 1.25
            figure = str(count // 16 if unit == "in" else count)
            yield value, Text(x=at_x, y=at_y, text=figure, anchor=anchor)


def vernier(
    x: float, y: float, reach: float, step: float, *, along: Literal["up", "right"] = "up"
) -> list[Line]:
    """Draw one half of a vernier: five marks that begin on a line and reach out from it, the
    middle one, at (x, y), the furthest. `along`: the line they stand on."""
    marks: list[Line] = []
    for place in MARKS:
        out = reach if place == 0 else reach * 0.6
        if along == "up":
            at = y + place * step
            marks.append(Line(x1=x, y1=at, x2=x + out, y2=at))
        else:
            at = x + place * step
            marks.append(Line(x1=at, y1=y, x2=at, y2=y + out))
    return marks


def _steps(low: float, high: float, unit: Unit) -> Iterator[tuple[int, float]]:
    """Give the steps of a scale between two readings: their number, and their length in mm."""
    step = _STEP[unit]
    for count in range(int(-(-(low - 1e-9) // step)), int((high + 1e-9) // step) + 1):
        yield count, count * step


def _place(x: float, y: float, distance: float, along: BarRuns) -> tuple[float, float]:
    match along:
        case "up":
            return x, y + distance
        case "down":
            return x, y - distance
        case "right":
            return x + distance, y
