"""The lines that a pin card is set on, in the words of a board: each with a box to tick, its height
and the crosses that are bored there.
"""

from collections.abc import Iterable, Sequence

from msgspec import Struct

from jigs.ground.lengths import format_inches, format_mm
from templates.cards.lettering import Label
from templates.faces.faceview import FaceView
from templates.page.marks import Text
from templates.page.pieces import MarkBlock, paragraph, stacked
from templates.page.tickbox import INDENT, tick_box
from templates.page.typeface import PITCH, wrap
from templates.words.pinwords import pin_card_line, pins_line, sum_line

ROW = 5.2
"""Pitch of the lines, mm."""
_APART = 2.4


class PinLine(Struct, frozen=True):
    """A line across a board: how high it is struck, mm, and what is bored of the card there."""

    height: float
    crosses: str


class PinRows(Struct, frozen=True, kw_only=True):
    """Lines on which one card, with a code of its own, is set at the same edges (`where`), and the
    page of that card: as wide as any, until it is known."""

    card: int
    code: str
    where: str
    lines: tuple[PinLine, ...]
    page: int = 888


class PinTable(Struct, frozen=True):
    """The lines of a board as a piece of what is said of it."""

    view: FaceView
    rows: Sequence[PinRows]

    def heights(self, width: float) -> list[float]:
        """Give how high its blocks are so wide; mm."""
        return [block.height for block in self.set_in(width)]

    def set_in(self, width: float) -> list[MarkBlock]:
        """Set it so wide; mm."""
        return pin_pieces(self.view, self.rows, width)


def pin_pieces(view: FaceView, rows: Sequence[PinRows], width: float) -> list[MarkBlock]:
    """Set the lines of a board in pieces `width` mm wide; a card's name is not parted from its
    first line."""
    pieces = [paragraph(pins_line(view), width)]
    for each in rows:
        head = paragraph(
            pin_card_line(each.card, each.code, each.page, each.where), width, bold=True
        )
        first, *others = _lines(each.lines, width)
        pieces += [stacked([head, first]), *others]
    heights = {line.height for each in rows for line in each.lines}
    return [*pieces, paragraph(sum_line(view, sorted(heights)), width)] if rows else []


def _lines(lines: Iterable[PinLine], width: float) -> list[MarkBlock]:
    labels = [
        (Label(mm=format_mm(line.height), inches=f'{format_inches(line.height)}"'), line.crosses)
        for line in lines
    ]
    after = INDENT + max(label.width for label, _ in labels) + _APART
    blocks: list[MarkBlock] = []
    for label, crosses in labels:
        marks = [tick_box(0.0, -4.1), *label.marks(INDENT, 0.0)]
        named = wrap(crosses, 2.5, False, width - after)
        marks += [Text(x=after, y=-3.85 - row * PITCH, text=text)
                  for row, text in enumerate(named)]  # fmt: skip
        blocks.append(MarkBlock(height=ROW + (len(named) - 1) * PITCH, marks=tuple(marks)))
    return blocks
