"""Dimensions as drafting has them: extension lines, a line with two arrows, the value above it.

After ISO 129-1: the value stands above its line and parallel to it, arrows are closed and
filled. Where the room between the extension lines is too small, the arrows point inwards from
outside and the value stands beside them. Millimetres on the page.
"""

import math
from typing import Literal

from jigs.ground.geometry import rectangle
from templates.page.marks import MEDIUM, Area, Line, Mark, Outline, Text
from templates.page.typeface import text_width

SIZE = 2.5
"""Lettering, mm (ISO 3098)."""
ARROW, HALF = 2.5, 0.45
"""An arrow's length and half its width, mm."""
BEYOND, FREE = 1.5, 0.8
"""How far an extension line runs on behind the dimension line, and stays off the part; mm."""
LIFT = 1.3
"""A value's base line above its dimension line, clear of arrows and of a stroke's foot; mm."""
TAIL = 5.0
"""A dimension line's length outside the extension lines, mm."""

SCALES = (1, 2, 5, 10)
"""Reductions (ISO 5455)."""


def sized(letter: str, value: float) -> str:
    """Give a dimension's letter and its value: `a 45`."""
    return f"{letter} {value:.1f}".removesuffix(".0")


def frame(x0: float, y0: float, x1: float, y1: float, width: float = MEDIUM) -> Outline:
    """Draw a rectangle between two corners."""
    return Outline(points=rectangle(x0, y0, x1, y1), width=width)


def across(
    x1: float,
    x2: float,
    y: float,
    text: str,
    *,
    from1: float,
    from2: float,
    beside: Literal["left", "right"] = "right",
    outside: bool = False,
) -> list[Mark]:
    """Dimension from x1 to x2 (x1 < x2) on a line at y; the extension lines begin at `from1` and
    `from2`, and the value goes `beside` where there is no room above the line, or `outside`."""
    marks: list[Mark] = [
        Line(x1=x, y1=start + math.copysign(FREE, y - start), x2=x,
             y2=y + math.copysign(BEYOND, y - start))
        for x, start in ((x1, from1), (x2, from2))
    ]  # fmt: skip
    wide = text_width(text, SIZE)
    if not outside and x2 - x1 >= wide + 2.0 and x2 - x1 >= 2.5 * ARROW:
        marks.append(Line(x1=x1, y1=y, x2=x2, y2=y))
        marks += [_arrow(x1, y, 1, 0), _arrow(x2, y, -1, 0)]
        marks.append(Text(x=(x1 + x2) / 2, y=y + LIFT, text=text, anchor="middle"))
        return marks
    left = x1 - TAIL - (wide + 1.0 if beside == "left" else 0.0)
    right = x2 + TAIL + (wide + 1.0 if beside == "right" else 0.0)
    marks.append(Line(x1=left, y1=y, x2=right, y2=y))
    marks += [_arrow(x1, y, -1, 0), _arrow(x2, y, 1, 0)]
    start = left + 0.5 if beside == "left" else x2 + TAIL
    marks.append(Text(x=start, y=y + LIFT, text=text))
    return marks


def upward(
    y1: float,
    y2: float,
    x: float,
    text: str,
    *,
    from1: float,
    from2: float,
    beside: Literal["above", "below"] = "above",
) -> list[Mark]:
    """Dimension from y1 up to y2 on a line at x, its value read from the right."""
    marks: list[Mark] = [
        Line(x1=start + math.copysign(FREE, x - start), y1=y,
             x2=x + math.copysign(BEYOND, x - start), y2=y)
        for y, start in ((y1, from1), (y2, from2))
    ]  # fmt: skip
    wide = text_width(text, SIZE)
    if y2 - y1 >= wide + 2.0 and y2 - y1 >= 2.5 * ARROW:
        marks.append(Line(x1=x, y1=y1, x2=x, y2=y2))
        marks += [_arrow(x, y1, 0, 1), _arrow(x, y2, 0, -1)]
        marks.append(Text(x=x - LIFT, y=(y1 + y2) / 2, text=text, anchor="middle", angle=90))
        return marks
    low = y1 - TAIL - (wide + 1.0 if beside == "below" else 0.0)
    high = y2 + TAIL + (wide + 1.0 if beside == "above" else 0.0)
    marks.append(Line(x1=x, y1=low, x2=x, y2=high))
    marks += [_arrow(x, y1, 0, -1), _arrow(x, y2, 0, 1)]
    start = low + 0.5 if beside == "below" else y2 + TAIL
    marks.append(Text(x=x - LIFT, y=start, text=text, angle=90))
    return marks


def hatching(x0: float, y0: float, x1: float, y1: float, pitch: float = 3.0) -> list[Line]:
    """Hatch a cut board at 45 degrees (ISO 128); boards side by side are hatched on."""
    marks: list[Line] = []
    step = math.ceil((y0 - x1) / pitch)
    while step * pitch < y1 - x0:
        shift = step * pitch
        left, right = max(x0, y0 - shift), min(x1, y1 - shift)
        if right - left > 0.1:
            marks.append(Line(x1=left, y1=left + shift, x2=right, y2=right + shift))
        step += 1
    return marks


def _arrow(x: float, y: float, dx: int, dy: int) -> Area:
    """An arrow with its point at (x, y), its shaft towards (dx, dy)."""
    back_x, back_y = x + dx * ARROW, y + dy * ARROW
    return Area(
        points=(
            (x, y),
            (back_x + dy * HALF, back_y + dx * HALF),
            (back_x - dy * HALF, back_y - dx * HALF),
        )
    )
