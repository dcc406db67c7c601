"""The table of a station: a row for each part, in the order of the bench.

Each row has the part's ID and code, its size with blanks for what is measured, the height of every
line with boxes to tick, and sums that close on the part. Rows are blocks that flow down the page.
"""

from collections.abc import Sequence
from collections.abc import Set as AbstractSet
from dataclasses import dataclass

from jigs.bench.station import Row, Setting, Station
from jigs.given.confirming import OpenNumber
from jigs.ground.lengths import format_inches, format_mm
from templates.cards.ticks import BOX
from templates.page.marks import MEDIUM, THIN, Line, Mark, Outline, Text
from templates.page.pieces import MarkBlock
from templates.page.typeface import PITCH, text_width, wrap
from templates.stations.stationview import Shop
from templates.words.openwords import open_line
from templates.words.rowwords import (
    YOURS,
    kind_and_place,
    marks_words,
    setting_name,
    sum_words,
    warning_words,
)
from templates.words.stationwords import setting_figure

CHIP = 5.6
"""Pitch of rows with large figures and tick boxes, mm."""
APART = 7.0
"""Between two settings in a row, mm."""


@dataclass(frozen=True, slots=True)
class Stretch:
    """A stretch of a line: a text, or a box to tick with what it is for."""

    text: str
    size: float = 2.5
    bold: bool = False
    tick: bool = False

    @property
    def width(self) -> float:
        """Width over all, mm."""
        return text_width(self.text, self.size, self.bold) + (BOX + 1.2 if self.tick else 0.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class TableBlock:
    """A block of a table; `again` goes before it where it begins a page."""

    block: MarkBlock
    again: MarkBlock | None = None


def tick_box(x: float, y: float) -> Outline:
    """Draw a box to tick with its lower left corner at (x, y)."""
    corners = ((x, y), (x + BOX, y), (x + BOX, y + BOX), (x, y + BOX))
    return Outline(points=corners, width=MEDIUM)


def set_stretches(pieces: Sequence[Stretch], x: float, y: float, gap: float = 1.4) -> list[Mark]:
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


def stretches_width(pieces: Sequence[Stretch], gap: float = 1.4) -> float:
    """Give the width of pieces set in a line, mm."""
    return sum(piece.width + gap for piece in pieces) - gap


def rows_of(shop: Shop, station: Station, width: float) -> list[TableBlock]:
    """Give the rows of a station's table as blocks."""
    all_open = set(open_at(station))
    return [TableBlock(block=row_block(shop, row, all_open, width)) for row in station.rows]


def open_at(station: Station) -> tuple[OpenNumber, ...]:
    """Give the open numbers of all rows of a station: its title names them."""
    return tuple(dict.fromkeys(number for row in station.rows for number in row.open))


def row_block(shop: Shop, row: Row, all_open: AbstractSet[OpenNumber], width: float) -> MarkBlock:
    """Lay out one row; it names its open numbers where they are not all that its station has."""
    part = row.part
    marks: list[Mark] = [Line(x1=0.0, y1=0.0, x2=width, y2=0.0, width=THIN)]
    y = -4.9
    marks.append(Text(x=0.0, y=y, text=part.id, size=3.5, bold=True))
    size = f"{format_mm(part.width)} x {format_mm(part.height)}{YOURS}"
    marks.append(Text(x=width, y=y, text=size, anchor="end"))
    start = text_width(part.id, 3.5, True) + 2.0
    room = width - start - text_width(size, 2.5) - 2.0
    words = wrap(kind_and_place(shop.layout, part, row.serves), 2.5, False, room)
    for line, text in enumerate(words):
        marks.append(Text(x=start, y=y - line * PITCH, text=text))
    y -= (len(words) - 1) * PITCH
    if row.held:
        why = " ".join(problem.text for problem in row.held)
        return _with_lines(marks, y, [(f"HOLD: {why}", True)], width)
    chips = [
        setting_stretches(setting, done="box set" if row.marks else "bored")
        for setting in row.settings
    ]
    if row.marks is not None:
        chips.append([Stretch("marked", tick=True), Stretch("bored", tick=True)])
    x = 0.0
    y -= CHIP
    for chip in chips:
        wide = stretches_width(chip)
        if x > 0.0 and x + wide > width:
            x, y = 0.0, y - CHIP
        marks += set_stretches(chip, x, y)
        x += wide + APART
    words = [] if row.marks else [f"{sum_words(closing)}." for closing in row.closing]
    words += marks_words(row.marks) if row.marks else ()
    words += [f"{open_line(row.open)}."] if row.open and set(row.open) != all_open else []
    words += warning_words(row.warnings)
    return _with_lines(marks, y, [(" ".join(words), False)] if words else [], width)


def _with_lines(
    marks: list[Mark], y: float, lines: Sequence[tuple[str, bool]], width: float
) -> MarkBlock:
    """Add lines of words below a base line, and close the block."""
    for text, bold in lines:
        for line in wrap(text, 2.5, bold, width - 2.0):
            y -= PITCH
            marks.append(Text(x=2.0, y=y - 0.4, text=line, bold=bold))
    return MarkBlock(height=-y + 2.2, marks=tuple(marks))


def setting_stretches(setting: Setting, *, done: str) -> list[Stretch]:
    """Say one setting: card, where its lines are struck, and what is ticked when it is done."""
    pieces = [Stretch(f"CARD {setting_name(setting)}", bold=True)]
    for place in (setting.y, setting.x):
        if place is None:
            continue
        mm, inches, start = setting_figure(place)
        pieces.append(Stretch(mm, 3.5, True))
        pieces += [Stretch(" ".join(filter(None, (inches, start))))] if inches or start else []
    if setting.x is not None or setting.y is not None:
        pieces.append(Stretch("line", tick=True))
    pieces.append(Stretch(done, tick=True))
    return pieces


def figure_stretches(value: float) -> list[Stretch]:
    """Give a height, mm large and inches small."""
    return [Stretch(format_mm(value), 3.5, True), Stretch(f'{format_inches(value)}"')]
