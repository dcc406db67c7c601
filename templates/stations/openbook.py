"""A small picture of two box sides that lie like an open book, so that no board is turned end for
end: what stands left in the kitchen lies right on the bench."""

from templates.page.bars import up_arrow
from templates.page.dimensions import frame
from templates.page.marks import MEDIUM, Area, Line, Mark, Text
from templates.page.pieces import MarkBlock

BOARD = (30.0, 26.0)
"""A board as it is drawn, mm."""
STOP = 1.6
"""Height of the drawn stop, mm."""


def open_book() -> MarkBlock:
    """Draw the pair: RIGHT side on the left, LEFT side on the right, front edges touching."""
    wide, high = BOARD
    top, foot = -5.0, -5.0 - high
    marks: list[Mark] = [
        Text(x=wide, y=-3.0, text="FRONT EDGES TOUCH HERE", anchor="middle"),
        Line(x1=wide, y1=-4.2, x2=wide, y2=top, width=MEDIUM),
        frame(0.0, foot, wide, top),
        frame(wide, foot, 2 * wide, top),
        Area(points=((0.0, foot - STOP), (2 * wide, foot - STOP),
                     (2 * wide, foot), (0.0, foot))),
        *up_arrow(2 * wide + 9.0, foot, 22.0),
    ]  # fmt: skip
    for x, name in ((wide / 2, "RIGHT SIDE"), (1.5 * wide, "LEFT SIDE")):
        marks.append(Text(x=x, y=foot + 16.0, text=name, bold=True, anchor="middle"))
    return MarkBlock(height=-foot + STOP + 2.0, marks=tuple(marks))
