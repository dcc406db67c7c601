"""An elevation's frame and title block: what is shown, at which scale, and how it is read.

The fields are those of ISO 7200 that a kitchen wants; the bar beside the scale tells whether a
print came out at that scale.
"""

import itertools

from msgspec import Struct

from jigs.ground.geometry import rectangle
from jigs.ground.lengths import Unit
from templates.page.dimensions import frame
from templates.page.marks import MEDIUM, WIDE, Area, Line, Mark, Outline, Text
from templates.page.typeface import shorten, text_box, text_width

TITLE_HIGH = 17.0
"""Height of the title block, mm."""
FRAME = 1.0
"""From the page's edge to the frame, mm."""

_PAD = 2.0
_NAME_UP = 8.0
"""Base line of the wall's name above the frame, mm."""
_LEGEND, _SCALE = 62.0, 66.0
"""Widths of the right-hand fields, mm."""

_BARS: dict[Unit, dict[int, tuple[float, str]]] = {
    "mm": {
        10: (500.0, "500 mm"), 20: (1000.0, "1 m"), 50: (2000.0, "2 m"),
        100: (5000.0, "5 m"), 200: (10000.0, "10 m"),
    },
    "in": {
        10: (304.8, "1 ft"), 20: (914.4, "3 ft"), 50: (1828.8, "6 ft"),
        100: (3657.6, "12 ft"), 200: (9144.0, "30 ft"),
    },
}  # fmt: skip
"""A length that makes a handy bar at each reduction, mm, and its name."""


class TitleBlock(Struct, frozen=True, kw_only=True):
    """What a title block says; `number` of `count` sheets of one wall."""

    wall: str
    job: str
    unit: Unit
    number: int = 1
    count: int = 1
    reduction: int = 20


def draw_title(sheet: TitleBlock, width: float, height: float) -> list[Mark]:
    """Draw frame and title block of a page, mm."""
    low, high = FRAME, FRAME + TITLE_HIGH
    scale_x = width - FRAME - _SCALE
    legend_x = scale_x - _LEGEND
    job_x = FRAME + (legend_x - FRAME) * 0.55
    marks: list[Mark] = [
        frame(FRAME, FRAME, width - FRAME, height - FRAME, WIDE),
        Line(x1=FRAME, y1=high, x2=width - FRAME, y2=high, width=WIDE),
    ]
    marks += [Line(x1=x, y1=low, x2=x, y2=high) for x in (job_x, legend_x, scale_x)]
    marks += _wall(sheet, FRAME + _PAD, job_x - FRAME - 2 * _PAD)
    marks += _job(sheet, job_x + _PAD, legend_x - job_x - 2 * _PAD)
    marks += _legend(sheet.unit, legend_x + _PAD)
    marks += _scale(sheet, scale_x + _PAD)
    return marks


def _wall(sheet: TitleBlock, x: float, room: float) -> list[Mark]:
    for size in (7.0, 5.0, 3.5):
        mark = Text(x=x, y=_NAME_UP, text=sheet.wall, size=size, bold=True)
        # What stands over a capital keeps clear of the block's line.
        if text_width(sheet.wall, size, True) <= room and text_box(mark)[3] <= TITLE_HIGH - 0.2:
            break
    name = shorten(sheet.wall, size, True, room)
    return [
        Text(x=x, y=FRAME + _NAME_UP, text=name, size=size, bold=True),
        Text(x=x, y=FRAME + 2.4, text=shorten("Elevation, seen from the room", 2.5, False, room)),
    ]


def _job(sheet: TitleBlock, x: float, room: float) -> list[Mark]:
    return [
        Text(x=x, y=FRAME + 8.0, text=shorten(sheet.job, 3.5, False, room), size=3.5),
        Text(x=x, y=FRAME + 2.4, text=f"sheet {sheet.number} of {sheet.count}"),
    ]


def _legend(unit: Unit, x: float) -> list[Mark]:
    """Show a door hinged at its left, and say which figure is which."""
    y, wide, high = FRAME + 3.0, 8.0, 11.0
    figures = "Inches first, then mm." if unit == "in" else "mm first, then inches."
    dashes = [(x + wide, y + high), (x, y + high / 2), (x + wide, y)]
    return [
        Outline(points=rectangle(x, y, x + wide, y + high), width=MEDIUM),
        *(
            Line(x1=a[0], y1=a[1], x2=b[0], y2=b[1], dash="dashed")
            for a, b in itertools.pairwise(dashes)
        ),
        Text(x=x + wide + _PAD, y=FRAME + 11.6, text="Dashed lines meet at the hinges."),
        Text(x=x + wide + _PAD, y=FRAME + 7.2, text=figures),
        Text(x=x + wide + _PAD, y=FRAME + 2.8, text="NOT FOR DRILLING", bold=True),
    ]


def _scale(sheet: TitleBlock, x: float) -> list[Mark]:
    """Write the scale, and draw a bar of a known length at it."""
    length, name = _BARS[sheet.unit][sheet.reduction]
    bar = length / sheet.reduction
    y = FRAME + 3.0
    quarter = bar / 4
    marks: list[Mark] = [
        Text(x=x, y=FRAME + 9.2, text=f"SCALE 1:{sheet.reduction}", size=5.0, bold=True),
        Outline(points=rectangle(x, y, x + bar, y + 1.5)),
        Text(x=x + bar + 1.5, y=y - 0.4, text=name),
    ]
    marks += [
        Area(points=rectangle(x + at * quarter, y, x + (at + 1) * quarter, y + 1.5))
        for at in (0, 2)
    ]
    return marks
