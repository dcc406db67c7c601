"""The rows of a station's table as blocks: a part by itself, or several that are alike in all but
their names, each with its own boxes to tick and blanks below what is said once of all."""

from collections.abc import Iterable, Iterator, Sequence

from msgspec import Struct

from jigs.bench.benchpart import BenchPart
from jigs.ground.lengths import format_mm
from templates.page.marks import THIN, Line, Mark, Text
from templates.page.pieces import MarkBlock, moved
from templates.page.typeface import PITCH, text_width, wrap
from templates.stations.tablepieces import (
    Span,
    set_spans,
    size_and_blanks,
    spans_width,
)
from templates.words.sentence import bare

CHIP = 5.6
"""Pitch of rows with large figures and tick boxes, mm."""
APART = 7.0
"""Between two settings in a row, mm."""
NARROW = (3.5, 2.5)
"""The same where several parts share them, mm: the less where they find no room else."""
Chip = tuple[Span, ...]
"""A setting, or another thing that is ticked when it is done."""


class RowWords(Struct, frozen=True, kw_only=True):
    """What stands in a row."""

    part: BenchPart
    named: str
    """Its code, and whatever of kind and place the row above does not say."""
    in_full: str
    """The same with kind and place."""
    chips: tuple[Chip, ...] = ()
    copies: tuple[int, ...] = ()
    """Of each setting, which copy of its card is taken."""
    closed: tuple[str, ...] = ()
    """The sums that close on it."""
    more: tuple[str, ...] = ()
    """What else is to be known of it."""
    open: str = ""
    """What of its hardware is open, where that is not said of all."""
    hold: str = ""
    """Why nothing is drilled."""

    @property
    def settings(self) -> object:
        """What is done to it: what is set and ticked, and what is to be known besides sums."""
        chips = [[each for each in chip if not each.loose] for chip in self.chips]
        return (chips, self.copies, self.more, self.open)


def alike(rows: Sequence[RowWords]) -> bool:
    """Tell whether parts may share a block: they have the same settings, and a sum in common."""
    common = set.intersection(*({*row.closed} for row in rows))
    same = all(row.settings == rows[0].settings for row in rows)
    return same and bool(common) and not any(row.hold for row in rows)


def row_block(row: RowWords, width: float, *, first: bool) -> MarkBlock:
    """Lay out one row; `first`: on its page, with kind and place in full."""
    part = row.part
    marks: list[Mark] = [Line(x1=0.0, y1=0.0, x2=width, y2=0.0, width=THIN)]
    y = -4.9
    marks.append(Text(x=0.0, y=y, text=part.id, size=3.5, bold=True))
    size = size_and_blanks(part, y)
    left = width - size.width
    marks += moved(size.marks, left, 0.0)
    start = text_width(part.id, 3.5, True) + 2.0
    words = wrap(_with_open(row, first=first), 2.5, False, left - start - 2.0)
    for line, text in enumerate(words):
        marks.append(Text(x=start, y=y - line * PITCH, text=text))
    y -= (len(words) - 1) * PITCH
    if row.hold:
        return _with_lines(marks, y, [(f"HOLD: {row.hold}", True)], width)
    x = 0.0
    y -= CHIP
    for chip in row.chips:
        wide = spans_width(chip)
        if x > 0.0 and x + wide > width:
            x, y = 0.0, y - CHIP
        marks += set_spans(chip, x, y)
        x += wide + APART
    more, closed = list(row.more), _sums(row.closed)
    if x + text_width(closed, 2.5) <= width:
        marks.append(Text(x=width, y=y, text=closed, anchor="end"))
    else:
        more.insert(0, closed)
    return _with_lines(marks, y, [(" ".join(more), False)] if more else [], width)


def rows_block(rows: Sequence[RowWords], width: float, *, first: bool) -> MarkBlock | None:
    """Lay out rows that are alike: what is set once above, below it each part with the boxes to
    tick under what they are for, then the sum; None where that finds no room."""
    gaps = (_rows_block(rows, width, gap, first=first) for gap in NARROW)
    return next(filter(None, gaps), None)


def _rows_block(
    rows: Sequence[RowWords], width: float, gap: float, *, first: bool
) -> MarkBlock | None:
    """Lay them out with so much between two settings, mm."""
    names = [row.in_full if first and not number else row.named for number, row in enumerate(rows)]
    starts = [text_width(row.part.id, 3.5, True) + 2.0 for row in rows]
    indent = gap + max(
        start + text_width(name, 2.5) for start, name in zip(starts, names, strict=True)
    )
    said = [tuple(each for each in chip if not each.tick or each.text) for chip in rows[0].chips]
    said = [tuple(Span(each.text, each.size, each.bold) for each in chip) for chip in said]
    boxes = [[Span("", tick=True) for each in chip if each.tick] for chip in rows[0].chips]
    columns = [
        max(spans_width(above), spans_width(below))
        for above, below in zip(said, boxes, strict=True)
    ]
    at = [indent + sum(columns[:place]) + gap * place for place in range(len(columns))]
    sizes = [size_and_blanks(row.part, 0.0) for row in rows]
    left = width - max(size.width for size in sizes)
    ticked = at[-1] + spans_width(boxes[-1]) if at else indent
    if (at and at[-1] + columns[-1] > width) or ticked > left - 2.0:
        return None
    marks: list[Mark] = [Line(x1=0.0, y1=0.0, x2=width, y2=0.0, width=THIN)]
    y = -4.9
    for x, above in zip(at, said, strict=True):
        marks += set_spans(above, x, y)
    one_size = len({(format_mm(row.part.width), format_mm(row.part.height)) for row in rows}) == 1
    for number, (row, name, start) in enumerate(zip(rows, names, starts, strict=True)):
        y -= CHIP
        marks.append(Text(x=0.0, y=y, text=row.part.id, size=3.5, bold=True))
        marks.append(Text(x=start, y=y, text=name))
        for x, below in zip(at, boxes, strict=True):
            marks += set_spans(below, x, y)
        size = size_and_blanks(row.part, y, told=one_size and number > 0)
        marks += moved(size.marks, width - size.width, 0.0)
    more = filter(None, (*_sums_of(rows), rows[0].open, *rows[0].more))
    return _with_lines(marks, y, [(" ".join(more), False)], width)


def _sums(closed: Iterable[str]) -> str:
    return f"{bare('; '.join(closed))}."


def _sums_of(rows: Sequence[RowWords]) -> Iterator[str]:
    """Give the sums of rows that share a block: what all have, then each one's own."""
    common = [each for each in rows[0].closed if all(each in row.closed for row in rows)]
    own: dict[str, list[str]] = {}
    for row in rows:
        if rest := [each for each in row.closed if each not in common]:
            own.setdefault("; ".join(rest), []).append(row.part.id)
    yield _sums([f"{'All: ' if own else ''}{common[0]}", *common[1:]])
    if own:
        yield _sums(f"{', '.join(parts)}: {closed}" for closed, parts in own.items())


def _with_open(row: RowWords, *, first: bool) -> str:
    named = row.in_full if first else row.named
    return f"{named}, {row.open}" if row.open else named


def _with_lines(
    marks: list[Mark], y: float, lines: Sequence[tuple[str, bool]], width: float
) -> MarkBlock:
    """Add lines of words below a base line, and close the block."""
    for text, bold in lines:
        for line in wrap(text, 2.5, bold, width - 2.0):
            y -= PITCH
            marks.append(Text(x=2.0, y=y - 0.4, text=line, bold=bold))
    return MarkBlock(height=-y + 2.2, marks=tuple(marks))
