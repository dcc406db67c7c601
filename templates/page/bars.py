"""Check bars that a rule is laid on, and the arrow that shows which way is up."""

from templates.page.marks import Area, Line, Mark, Text
from templates.page.space import Box

TICK = 1.2
"""How far the tick across a bar's end stands out on either side, mm."""


def bar(x: float, y: float, length: float, down: bool = False) -> list[Mark]:
    """Draw a check bar: a line exactly `length` mm long, a tick across each end."""
    if down:
        return [
            Line(x1=x, y1=y, x2=x, y2=y - length, width=0.25),
            Line(x1=x - TICK, y1=y, x2=x + TICK, y2=y),
            Line(x1=x - TICK, y1=y - length, x2=x + TICK, y2=y - length),
        ]
    return [
        Line(x1=x, y1=y, x2=x + length, y2=y, width=0.25),
        Line(x1=x, y1=y - TICK, x2=x, y2=y + TICK),
        Line(x1=x + length, y1=y - TICK, x2=x + length, y2=y + TICK),
    ]


def box_of_50(x: float, y: float) -> Box:
    """Give what a card's own bar takes without its length, which is a text; mm."""
    return x, y - TICK, x + 50.0, y + TICK


def bar_of_50(x: float, y: float) -> list[Mark]:
    """Draw a card's own bar, its length beside it."""
    return [*bar(x, y, 50.0), Text(x=x + 52.0, y=y - 1.25, text="50.0")]


def up_arrow(x: float, y: float, height: float) -> list[Mark]:
    """Draw an arrow pointing up, centred on x, from y up, `UP` written below its shaft."""
    head = min(height * 0.4, 10.0)
    half = head * 0.6
    shaft = half * 0.45
    letters = 2.5 if height < 20.0 else 3.5
    foot = y + letters + 1.4
    points = (
        (x - shaft, foot),
        (x + shaft, foot),
        (x + shaft, y + height - head),
        (x + half, y + height - head),
        (x, y + height),
        (x - half, y + height - head),
        (x - shaft, y + height - head),
    )
    return [
        Area(points=points),
        Text(x=x, y=y, text="UP", size=letters, bold=True, anchor="middle"),
    ]
