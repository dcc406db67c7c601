"""Words laid out: pieces of one width that flow down one column or several, never split."""

from collections.abc import Callable, Iterable, Sequence

from msgspec.structs import replace

from templates.page.marks import Area, Circle, Line, Mark, Outline, Qr, Text
from templates.page.typeface import CutText, cut_text, text_width

GAP = 0.3
"""Between two pieces, mm."""
LINE = 1.6
"""Line pitch, in capital heights."""


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


def paragraph(
    text: str, width: float, *, size: float = 2.5, bold: bool = False, hang: str = ""
) -> MarkBlock:
    """Set a text in lines; `hang` stands before it (a step's number)."""
    indent = text_width("00 ", size, bold) if hang else 0.0
    pitch = size * LINE
    cut = cut_text(text, size, bold)

    def draw() -> tuple[Mark, ...]:
        first = [Text(x=0.0, y=-size * 1.12, text=hang, size=size, bold=True)] if hang else []
        return (
            *first,
            *(
                Text(x=indent, y=-size * 1.12 - row * pitch, text=line, size=size, bold=bold)
                for row, line in enumerate(cut.lines(width - indent))
            ),
        )

    return MarkBlock(height=paragraph_height(cut, width - indent), marks=draw)


def paragraph_height(text: CutText, width: float) -> float:
    """Give how high a text is that is set in lines, mm."""
    return text.count(width) * (text.size * LINE) + 0.3


def stacked(pieces: Sequence[MarkBlock]) -> MarkBlock:
    """Make one piece of several, one below the other."""

    def draw() -> tuple[Mark, ...]:
        marks: list[Mark] = []
        down = 0.0
        for piece in pieces:
            marks += moved(piece.marks, 0.0, -down)
            down += piece.height + GAP
        return tuple(marks)

    return MarkBlock(height=stacked_height([piece.height for piece in pieces]), marks=draw)


def stacked_height(heights: Iterable[float]) -> float:
    """Give how high pieces are one below the other, mm."""
    used = 0.0
    for height in heights:
        used += height + GAP
    return max(used - GAP, 0.0)


def flow(pieces: Sequence[float], columns: int, height: float) -> list[tuple[int, float]] | None:
    """Give each piece of some height its column and its upper edge below the top, mm; None if they
    overflow."""
    places: list[tuple[int, float]] = []
    column, used = 0, 0.0
    for piece in pieces:
        if used + piece > height + 1e-9:
            column, used = column + 1, 0.0
            if column >= columns or piece > height:
                return None
        places.append((column, used))
        used += piece + GAP
    return places


def least_height(pieces: Sequence[float], columns: int, most: float) -> float | None:
    """Give the least height, to 1 mm, at which pieces of some heights flow into some columns; None
    over `most`."""
    low = max(max(pieces), sum([piece + GAP for piece in pieces]) / columns - GAP)
    height = float(int(low) + 1)
    while height <= most:
        if flow(pieces, columns, height) is not None:
            return height
        height += 1.0
    return None
