"""The pieces of which the tables of stations are made: texts and boxes to tick set in a line, a
part's size with its blanks, blocks that flow down the pages."""

from collections.abc import Sequence

from msgspec import Struct

from jigs.bench.benchpart import BenchPart
from jigs.ground.lengths import format_inches, format_mm
from templates.page.marks import THIN, Line, Mark, Text
from templates.page.pieces import MarkBlock, moved
from templates.page.tickbox import BOX, tick_box
from templates.page.typeface import text_width

BLANK = 13.0
"""A line to write a measured length on, mm."""


class Span(Struct, frozen=True):
    """A span of a line: a text, or a box to tick with what it is for."""

    text: str
    size: float = 2.5
    bold: bool = False
    tick: bool = False
    loose: bool = False
    """Whether it says when and not what: a fresh copy is taken here."""

    @property
    def width(self) -> float:
        """Width over all, mm."""
        return text_width(self.text, self.size, self.bold) + (BOX + 1.2 if self.tick else 0.0)


class TableBlock(Struct, frozen=True, kw_only=True):
    """A block of a table; `head` goes before it where it is the first one on its page."""

    block: MarkBlock
    head: MarkBlock
    first: MarkBlock | None = None
    """What stands in its place where it is the first one on its page: what the row above says for
    it too."""
    begins: tuple[str, int] | None = None
    """The box and the column whose table begins with it."""


def set_spans(pieces: Sequence[Span], x: float, y: float, gap: float = 1.4) -> list[Mark]:
    """Set pieces in a line from (x, y) on, y being its base line."""
    marks: list[Mark] = []
    for piece in pieces:
        if piece.tick:
            marks.append(tick_box(x, y - 0.3))
            x += BOX + 1.2
        if piece.text:
            marks.append(Text(x=x, y=y, text=piece.text, size=piece.size, bold=piece.bold))
        x += text_width(piece.text, piece.size, piece.bold) + gap
    return marks


def spans_width(pieces: Sequence[Span], gap: float = 1.4) -> float:
    """Give the width of pieces set in a line, mm."""
    return sum(piece.width + gap for piece in pieces) - gap


def joined(first: MarkBlock, second: MarkBlock) -> MarkBlock:
    """Set one block right below another, never parted."""
    return MarkBlock(
        height=first.height + second.height,
        marks=(*first.marks, *moved(second.marks, 0.0, -first.height)),
    )


class SizeAndBlanks(Struct, frozen=True, kw_only=True):
    """A part's size, and lines to write what is measured on; `width` over all, mm."""

    width: float
    marks: tuple[Mark, ...]


def size_and_blanks(part: BenchPart, y: float, *, told: bool = False) -> SizeAndBlanks:
    """Draw a part's size with its blanks from (0, y) on; blanks alone where the size is `told`, or
    where there is none: a drawer box that is held because it finds no height."""
    text = f"{format_mm(part.width)} x {format_mm(part.height)}"
    told = told or min(part.width, part.height) <= 0
    x = text_width(text, 2.5) + 2.0
    blanks = [
        Line(x1=at, y1=y - 0.6, x2=at + BLANK, y2=y - 0.6, width=THIN)
        for at in (x, x + BLANK + 3.0)
    ]
    size = () if told else (Text(x=0.0, y=y, text=text),)
    return SizeAndBlanks(width=x + 2 * BLANK + 3.0, marks=(*size, *blanks))


def figure_spans(value: float, way: str = "") -> list[Span]:
    """Give a height, mm large and inches small; `way`: what stands before it."""
    return [Span(f"{way}{format_mm(value)}", 3.5, True), Span(f'{format_inches(value)}"')]
