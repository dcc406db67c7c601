"""Marks turned half round, for a card that lies right when the paper is turned."""

from collections.abc import Iterable

from msgspec.structs import replace

from templates.page.marks import Area, Circle, Line, Mark, Outline, Qr, Text


def half_round(marks: Iterable[Mark], x: float, y: float) -> tuple[Mark, ...]:
    """Turn marks half round about (x, y), mm: their words are read with the page upside down."""
    return tuple(_turned(mark, 2 * x, 2 * y) for mark in marks)


def _turned(mark: Mark, x: float, y: float) -> Mark:
    match mark:
        case Text():
            assert mark.angle != 90, "no text is read from the left"
            return replace(mark, x=x - mark.x, y=y - mark.y, angle=0 if mark.angle else 180)
        case Line():
            return replace(mark, x1=x - mark.x1, y1=y - mark.y1, x2=x - mark.x2, y2=y - mark.y2)
        case Area() | Outline():
            return replace(mark, points=tuple((x - px, y - py) for px, py in mark.points))
        case Circle():
            return replace(mark, x=x - mark.x, y=y - mark.y)
        case Qr():
            raise TypeError("a QR symbol is read as it lies")
