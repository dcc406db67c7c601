"""The table of a station: a row for each part, in the order of the bench.

Each row has the part's ID and code, its size with blanks for what is measured, the height of every
line with boxes to tick, and sums that close on the part. Rows are blocks that flow down the page.
"""

from collections.abc import Container, Sequence
from collections.abc import Set as AbstractSet
from dataclasses import dataclass, field, replace

from jigs.bench.benchpart import BenchPart
from jigs.bench.station import Row, Setting, Start, Station
from jigs.given.confirming import OpenNumber
from jigs.ground.lengths import format_inches, format_mm
from templates.cards.ticks import BOX, tick_box
from templates.page.marks import THIN, Line, Mark, Text
from templates.page.pieces import MarkBlock, moved, paragraph
from templates.page.typeface import PITCH, text_width, wrap
from templates.stations.rowfacts import said_above, said_in_row
from templates.stations.stationview import Shop
from templates.words.markingwords import marks_words
from templates.words.rowwords import (
    NEXT,
    kind_and_place,
    open_names,
    setting_name,
    sum_words,
)
from templates.words.saying import facts_of
from templates.words.stationwords import FROM_WORDS, names_kind, setting_figure

MIDDLES: frozenset[Start] = frozenset({"middle-x", "middle-y"})
"""They have no figure that would stand in a row."""
CHIP = 5.6
"""Pitch of rows with large figures and tick boxes, mm."""
BLANK = 13.0
"""A line to write a measured length on, mm."""
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
    """A block of a table; `head` goes before it where it is the first one on its page."""

    block: MarkBlock
    head: MarkBlock
    begins: tuple[str, int] | None = None
    """The box and the column whose table begins with it."""


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
    usual = _usual_starts(station)
    head = _captions(station, usual, width)
    taken = NextCard()
    kind_told = names_kind(station, shop.views_of(station))
    above = said_above(shop, station)
    told = {text for texts in above.values() for text in texts}
    if told:  # on each page that the table goes on to
        words = " ".join(who + " ".join(texts) for who, texts in above.items())
        head = joined(paragraph(words, width, bold=True), head)
    return [
        TableBlock(
            block=_row_block(
                shop, row, all_open, usual, taken, width, kind_told=kind_told, told=told
            ),
            head=head,
        )
        for row in station.rows
    ]


def joined(first: MarkBlock, second: MarkBlock) -> MarkBlock:
    """Set one block right below another, never parted."""
    return MarkBlock(
        height=first.height + second.height,
        marks=(*first.marks, *moved(second.marks, 0.0, -first.height)),
    )


@dataclass(slots=True)
class NextCard:
    """Which copies of the cards were taken up, in the order of a table."""

    _taken: dict[str, int] = field(default_factory=dict)

    def is_next(self, setting: Setting) -> bool:
        """Tell whether a fresh copy is to be taken for a setting."""
        before = self._taken.get(setting.card, 1)
        self._taken[setting.card] = max(before, setting.copy)
        return setting.copy > before


def _usual_starts(station: Station) -> frozenset[Start]:
    """Give whence all lines of a station are struck, where none can be taken for another: up from
    the bottom, on the middle. It is said in the captions and in no row; else each says its own."""
    settings = [setting for row in station.rows for setting in row.settings]
    places = [[each.x for each in settings], [each.y for each in settings]]
    starts = [{place.start if place else None for place in along} for along in places]
    middles = {start for along in starts if len(along) == 1 for start in along if start in MIDDLES}
    figures = {start for along in starts for start in along if start} - MIDDLES
    return frozenset(middles | figures if figures <= {"bottom"} else middles)


def _captions(station: Station, usual: frozenset[Start], width: float) -> MarkBlock:
    """Say once a page what the rows of a table have."""
    y = -3.2
    pieces = caption_stretches(station, ", ".join(FROM_WORDS[start] for start in sorted(usual)))
    size = "size, yours"
    marks = set_stretches(pieces, 0.0, y)
    if stretches_width(pieces) + text_width(size, 2.5) + 3.0 < width:
        marks.append(Text(x=width, y=y, text=size, anchor="end"))
    return MarkBlock(height=-y + 1.2, marks=tuple(marks))


def caption_stretches(station: Station, figures: str) -> list[Stretch]:
    """Say what is ticked in each row, and what its figures are."""
    if station.marked:
        return [Stretch("cards:"), Stretch("set", tick=True)]
    settings = [setting for row in station.rows for setting in row.settings]
    pieces = [Stretch(f"CARD, line {figures}:" if figures else "CARD:")]
    if any(setting.x is not None or setting.y is not None for setting in settings):
        pieces.append(Stretch("struck, checked", tick=True))
    pieces.append(Stretch("bored", tick=True))
    if station.work == "cups":
        pieces.append(Stretch("| sum: punch to punch as on the side"))
    return pieces


def open_at(station: Station) -> tuple[OpenNumber, ...]:
    """Give the open numbers of all rows of a station: its title names them."""
    return tuple(dict.fromkeys(number for row in station.rows for number in row.open))


@dataclass(frozen=True, slots=True, kw_only=True)
class SizeAndBlanks:
    """A part's size, and lines to write what is measured on; `width` over all, mm."""

    width: float
    marks: tuple[Mark, ...]


def size_and_blanks(part: BenchPart, y: float) -> SizeAndBlanks:
    """Draw a part's size with its blanks from (0, y) on."""
    text = f"{format_mm(part.width)} x {format_mm(part.height)}"
    x = text_width(text, 2.5) + 2.0
    blanks = [
        Line(x1=at, y1=y - 0.6, x2=at + BLANK, y2=y - 0.6, width=THIN)
        for at in (x, x + BLANK + 3.0)
    ]
    return SizeAndBlanks(width=x + 2 * BLANK + 3.0, marks=(Text(x=0.0, y=y, text=text), *blanks))


def _row_block(
    shop: Shop,
    row: Row,
    all_open: AbstractSet[OpenNumber],
    usual: frozenset[Start],
    taken: NextCard,
    width: float,
    *,
    kind_told: bool,
    told: Container[str],
) -> MarkBlock:
    """Lay out one row; it names its open numbers where they are not all that its station has.
    `kind_told`: the title says what kind of part it is; `told`: what is said above of all."""
    part = row.part
    marks: list[Mark] = [Line(x1=0.0, y1=0.0, x2=width, y2=0.0, width=THIN)]
    y = -4.9
    marks.append(Text(x=0.0, y=y, text=part.id, size=3.5, bold=True))
    size = size_and_blanks(part, y)
    left = width - size.width
    marks += moved(size.marks, left, 0.0)
    start = text_width(part.id, 3.5, True) + 2.0
    room = left - start - 2.0
    named = kind_and_place(shop.layout, part, row.serves, kind_told=kind_told)
    if row.open and set(row.open) != all_open:
        named = f"{named}. {open_names(row.open)}"
    words = wrap(named, 2.5, False, room)
    for line, text in enumerate(words):
        marks.append(Text(x=start, y=y - line * PITCH, text=text))
    y -= (len(words) - 1) * PITCH
    if row.held:
        why = facts_of(row.held, shop.layout.job.shown)
        return _with_lines(marks, y, [(f"HOLD: {why}", True)], width)
    chips = [setting_stretches(setting, usual, taken) for setting in row.settings]
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
    sums = [marks_words(row.marks)] if row.marks else []
    sums = sums or [f"{'; '.join(dict.fromkeys(map(sum_words, row.closing)))}."]
    words = [text for text in said_in_row(shop, row) if text not in told]
    closed = " ".join(sums)
    if x + text_width(closed, 2.5) <= width:
        marks.append(Text(x=width, y=y, text=closed, anchor="end"))
    else:
        words = [closed, *words]
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


def setting_stretches(setting: Setting, usual: frozenset[Start], taken: NextCard) -> list[Stretch]:
    """Say one setting: card, where its lines are struck, and what is ticked when it is done;
    whence the lines are struck only where that is not `usual`."""
    pieces = [Stretch(NEXT, bold=True)] if taken.is_next(setting) else []
    pieces.append(Stretch(setting_name(setting), bold=True))
    told_above = usual & MIDDLES
    places = [each for each in (setting.y, setting.x) if each and each.start not in told_above]
    for number, place in enumerate(places):
        if number:
            pieces[-1] = replace(pieces[-1], text=f"{pieces[-1].text},")
        if place.start in MIDDLES:
            pieces.append(Stretch("MIDDLE", 3.5, True))
            continue
        mm, inches = setting_figure(place)
        pieces += [Stretch(mm, 3.5, True), Stretch(inches)]
        if place.start not in usual:
            pieces.append(Stretch(FROM_WORDS[place.start].upper(), bold=True))
    if setting.x is not None or setting.y is not None:
        pieces.append(Stretch("", tick=True))
    pieces.append(Stretch("", tick=True))
    return pieces


def figure_stretches(value: float) -> list[Stretch]:
    """Give a height, mm large and inches small."""
    return [Stretch(format_mm(value), 3.5, True), Stretch(f'{format_inches(value)}"')]
