"""Words laid out: pieces of one width that flow down one column or several, never split."""

from collections.abc import Callable, Sequence
from functools import lru_cache

from msgspec.structs import replace

from templates.page.marks import Area, Circle, Line, Mark, Outline, Qr, Text
from templates.page.typeface import text_width, wrap

GAP = 0.3
"""Between two pieces, mm."""


class MarkBlock:
    """Marks drawn from an upper left corner at (0, 0) downwards, and how far down they reach, mm;
    `marks` may be what draws them: words are measured for many widths and drawn for one."""

    __slots__ = ("_marks", "height")

    def __init__(
        self, *, height: float, marks: tuple[Mark, ...] | Callable[[], tuple[Mark, ...]]
    ) -> None:
        self.height = height
        self._marks = marks

    @property
    def marks(self) -> tuple[Mark, ...]:
        """The marks; drawn anew each time where they are not drawn yet."""
        return self._marks() if callable(self._marks) else self._marks


def moved(marks: tuple[Mark, ...], dx: float, dy: float) -> list[Mark]:
    """Move marks by (dx, dy) mm."""
    result: list[Mark] = []
    for mark in marks:
        match mark:
            case Line():
                x1, y1, x2, y2 = mark.x1 + dx, mark.y1 + dy, mark.x2 + dx, mark.y2 + dy
                result.append(replace(mark, x1=x1, y1=y1, x2=x2, y2=y2))
            case Outline() | Area():
                points = tuple([(x + dx, y + dy) for x, y in mark.points])
                result.append(replace(mark, points=points))
            case Text() | Circle() | Qr():
                result.append(replace(mark, x=mark.x + dx, y=mark.y + dy))
    return result


@lru_cache(maxsize=4096)
def paragraph(
    text: str, width: float, *, size: float = 2.5, bold: bool = False, hang: str = ""
) -> MarkBlock:
    """Set a text in lines; `hang` stands before it (a step's number).

    Kept, since the same steps stand on many sheets and are measured for many widths."""
    indent = text_width("00 ", size, bold) if hang else 0.0
    pitch = size * 1.6
    lines = wrap(text, size, bold, width - indent)

    def draw() -> tuple[Mark, ...]:
        first = [Text(x=0.0, y=-size * 1.12, text=hang, size=size, bold=True)] if hang else []
        return (
            *first,
            *(
                Text(x=indent, y=-size * 1.12 - row * pitch, text=line, size=size, bold=bold)
                for row, line in enumerate(lines)
            ),
        )

    return MarkBlock(height=len(lines) * pitch + 0.3, marks=draw)


def stacked(pieces: Sequence[MarkBlock]) -> MarkBlock:
    """Make one piece of several, one below the other."""
    used = 0.0
    for piece in pieces:
        used += piece.height + GAP

    def draw() -> tuple[Mark, ...]:
        marks: list[Mark] = []
        down = 0.0
        for piece in pieces:
            marks += moved(piece.marks, 0.0, -down)
            down += piece.height + GAP
        return tuple(marks)

    return MarkBlock(height=max(used - GAP, 0.0), marks=draw)


def flow(pieces: list[MarkBlock], columns: int, height: float) -> list[tuple[int, float]] | None:
    """Give each piece its column and its upper edge below the top, mm; None if they overflow."""
    places: list[tuple[int, float]] = []
    column, used = 0, 0.0
    for piece in pieces:
        if used + piece.height > height + 1e-9:
            column, used = column + 1, 0.0
            if column >= columns or piece.height > height:
                return None
        places.append((column, used))
        used += piece.height + GAP
    return places


def least_height(pieces: list[MarkBlock], columns: int, most: float) -> float | None:
    """Give the least height, to 1 mm, at which pieces flow into some columns; None over `most`."""
    low = max(
        max(piece.height for piece in pieces),
        sum(piece.height + GAP for piece in pieces) / columns - GAP,
    )
    height = float(int(low) + 1)
    while height <= most:
        if flow(pieces, columns, height) is not None:
            return height
        height += 1.0
    return None
