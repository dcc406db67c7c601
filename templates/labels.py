"""Labels: one for every front, drawer box and box side, on sheets of a stock.

On a label, from the left: an arrow, the words, the QR symbol with the code below it and, where
the label is 30 mm high, the key plan. The label of a box side carries a black stripe along the
end that goes to the front. Nothing is clipped: what does not fit is worded shorter, then left
out by its worth, and cut short with an ellipsis only at last. The ID is never cut.
"""

from collections.abc import Collection, Iterator
from dataclasses import dataclass

from jigs.cutlist.piece import Piece
from jigs.geometry import rectangle
from jigs.parts import Layout
from templates.boxparts import parts_of_box
from templates.keyplan import KeyPlan
from templates.labelwords import (
    LabelWords,
    Wording,
    words_of_drawer_box_label,
    words_of_front_label,
    words_of_rollout_label,
    words_of_side_label,
)
from templates.marks import Area, Mark, Page, Qr, Text
from templates.piecewords import piece_words
from templates.qr import QUIET, qr_side
from templates.stocks import Stock
from templates.typeface import EM_PER_CAP, shorten, text_width

MODULE = 0.5
"""Side of a QR module, mm: read by telephones from any office printer (measured)."""

PLAN_FROM = 30.0
"""Label height from which there is a key plan, mm."""

_MARGIN = 1.0
_GAP = 1.0
_SMALL = 2.5
_BASE_LINE = 0.385
"""Base line of a line of lettering above the foot of its em, in capital heights."""

_STRIPE = 2.5
_SIZES = (12.0, 11.0, 10.0, 9.0, 8.0, 7.0, 6.0, 5.5, 5.0, 4.5, 4.0, 3.5, 3.0, 2.5)


@dataclass(slots=True, kw_only=True)
class _Row:
    """A row of lettering while a label is set."""

    text: str
    size: float
    bold: bool
    worth: int


def label_pages(
    layout: Layout,
    stock: Stock,
    *,
    start: int = 1,
    only: Collection[str] | None = None,
    pieces: tuple[Piece, ...] = (),
    order: str = "box",
) -> tuple[Page, ...]:
    """Give the sheets of labels of a job: box by box its fronts, drawer boxes and sides.

    `start` is the first free place of the first sheet; ValueError where it has no such place.
    `only` names parts, boxes or walls. `pieces`: those that have labels too, after the
    others, in the order `box` or `cut`.
    """
    plan = KeyPlan(layout)
    words = [words for words, names in _words(layout) if _wanted(names, only)]
    words += [
        entry
        for entry, piece in piece_words(pieces, order)
        if _wanted((piece.id, piece.box or "", piece.wall, piece.front or ""), only)
    ]
    pages: list[Page] = []
    place = start
    marks: list[Mark] = []
    first = ""
    for entry in words:
        first = first or entry.part
        marks += _label(entry, plan, stock, *stock.corner(place))
        place += 1
        if place > stock.places or entry is words[-1]:
            sheet = stock.sheet
            name = first if first == entry.part else f"{first} to {entry.part}"
            pages.append(
                Page(width=sheet.width, height=sheet.height, marks=tuple(marks), entry=name)
            )
            place, marks, first = 1, [], ""
    return tuple(pages)


def _words(layout: Layout) -> Iterator[tuple[LabelWords, tuple[str, ...]]]:
    """Give each label's words with the names by which it may be chosen."""
    for box in layout.boxes:
        parts = parts_of_box(layout, box.id)
        for front in parts.fronts:
            yield words_of_front_label(layout, front), (front.id, box.id, box.wall)
        for front in parts.fronts:
            if front.drawer is not None:
                yield (
                    words_of_drawer_box_label(layout, front.drawer, front),
                    (front.drawer.id, front.id, box.id, box.wall),
                )
        for rollout in layout.rollouts:
            if rollout.box == box.id:
                yield words_of_rollout_label(layout, rollout), (rollout.id, box.id, box.wall)
        # A partition has two drilled faces, but one label.
        for side in (s for s in parts.sides if not (s.partition and s.side == "left")):
            yield words_of_side_label(layout, side), (side.board, box.id, box.wall)


def _wanted(names: tuple[str, ...], only: Collection[str] | None) -> bool:
    if only is None:
        return True
    wishes = {wish.upper() for wish in only}
    return any(name.upper() in wishes for name in names if name)


def _label(
    words: LabelWords, plan: KeyPlan, stock: Stock, left: float, bottom: float
) -> list[Mark]:
    """Set one label whose lower left corner is (left, bottom)."""
    marks: list[Mark] = []
    x0, x1 = left + _MARGIN, left + stock.width
    top = bottom + stock.height - _MARGIN
    if words.stripe is not None:
        stripe, wide = _stripe(words.stripe, left, bottom, stock)
        marks += stripe
        if words.stripe == "left":
            x0 = left + wide
        else:
            x1 -= wide
    arrow, wide = _arrow(words.arrow, x0, bottom + _MARGIN, top, stock.height)
    marks += arrow
    x0 += wide + _GAP
    x1 -= _qr(marks, words, plan, stock, x1, bottom)
    marks += _rows(words, x0, x1 - x0, bottom + _MARGIN, top)
    return marks


def _stripe(end: str, left: float, bottom: float, stock: Stock) -> tuple[list[Mark], float]:
    """Draw the black stripe along one end of a label, and its words beside it; give the width
    of both."""
    text = "THIS END TO THE FRONT"
    size = min(3.5, (stock.height - 2 * _MARGIN) / text_width(text, 1.0, True))
    wide = _STRIPE + size * EM_PER_CAP + 0.4
    # Read from the right, the feet of the letters are on the right.
    if end == "left":
        edge, base = left, left + wide - size * _BASE_LINE
    else:
        edge = left + stock.width - _STRIPE
        base = edge - 0.4 - size * _BASE_LINE
    return [
        Area(points=rectangle(edge, bottom, edge + _STRIPE, bottom + stock.height)),
        Text(x=base, y=bottom + stock.height / 2, text=text, size=size, bold=True, anchor="middle",
             angle=90),
    ], wide  # fmt: skip


def _arrow(
    word: str, x: float, bottom: float, top: float, height: float
) -> tuple[list[Mark], float]:
    """Draw the arrow, up to 20 mm tall, its word below; give its width too."""
    head = 7.0 if height >= PLAN_FROM else 5.0
    wide = max(head, text_width(word, _SMALL, True))
    foot = max(bottom + _SMALL * EM_PER_CAP + 0.5, top - 20.0)
    middle = x + wide / 2
    neck, shaft = top - head * 0.9, head * 0.18
    points = (
        (middle - shaft, foot), (middle + shaft, foot), (middle + shaft, neck),
        (middle + head / 2, neck), (middle, top), (middle - head / 2, neck), (middle - shaft, neck),
    )  # fmt: skip
    under = Text(
        x=middle,
        y=foot - 0.5 - _SMALL * (EM_PER_CAP - _BASE_LINE),
        text=word,
        size=_SMALL,
        bold=True,
        anchor="middle",
    )
    return [Area(points=points), under], wide


def _qr(
    marks: list[Mark], words: LabelWords, plan: KeyPlan, stock: Stock, right: float, bottom: float
) -> float:
    """Add the QR symbol with the code and the key plan below; give the column's width."""
    side = qr_side(words.payload, MODULE)
    wide = max(side, stock.width / 3) if stock.height >= PLAN_FROM else side
    top = bottom + stock.height
    code = f"code {words.code}" if words.code else ""
    foot = top - side - _SMALL * EM_PER_CAP
    if stock.height < PLAN_FROM:  # symbol and code together stand in the middle
        foot = bottom + (stock.height - side - _SMALL * EM_PER_CAP) / 2
    square = foot + _SMALL * EM_PER_CAP
    at = right - side
    quiet = QUIET * MODULE
    marks.append(Qr(x=at + quiet, y=square + quiet, text=words.payload, module=MODULE))
    marks.append(
        Text(x=at + side / 2, y=foot + _SMALL * _BASE_LINE, text=code, size=_SMALL, anchor="middle")
    )
    if stock.height >= PLAN_FROM:
        marks += plan.marks(
            words.black,
            right - wide + _GAP,
            bottom + _MARGIN + 0.3,
            wide - _GAP - _MARGIN,
            foot - bottom - 2 * _MARGIN - 0.3,
        )
    return wide


def _rows(words: LabelWords, x: float, width: float, bottom: float, top: float) -> list[Mark]:
    """Set the ID and the lines under it, as large as the room takes."""
    height = top - bottom
    names = _break_name(words.part, width)
    rows = [_Row(text=name, size=_SMALL, bold=True, worth=100) for name in names]
    if words.hold:
        rows.append(_Row(text="HOLD", size=5.0, bold=True, worth=99))
    growing: list[tuple[_Row, Wording]] = []
    for line in words.lines:
        text = _fit(line, _SMALL, width)
        if not text:
            continue
        row = _Row(text=text, size=_SMALL, bold=line.bold, worth=line.worth)
        rows.append(row)
        growing.append((row, line))
    # The ID wants 5 mm at least, if it is not too long for that; what is worth least makes room.
    name_rows = rows[: len(names)]
    wish = min(5.0, _widest(names, width))
    for row in name_rows:
        row.size = wish
    while _height(rows) > height and len(rows) > len(names) + 2:
        rows.remove(min(rows, key=lambda row: row.worth))
    over = max(0.0, _height(rows) - height) / EM_PER_CAP
    for row in name_rows:
        row.size -= over / len(names)
    _grow(rows, name_rows, growing, width, height)
    marks: list[Mark] = []
    at = top - max(0.0, (height - _height(rows)) / 2)
    for row in rows:
        at -= row.size * EM_PER_CAP
        marks.append(
            Text(x=x, y=at + row.size * _BASE_LINE, text=row.text, size=row.size, bold=row.bold)
        )
    return marks


def _grow(
    rows: list[_Row],
    names: list[_Row],
    growing: list[tuple[_Row, Wording]],
    width: float,
    height: float,
) -> None:
    """Enlarge row after row in order of need, as long as height and width take it."""

    def enlarge(row_or_rows: list[_Row], size: float) -> None:
        before = [row.size for row in row_or_rows]
        if size <= before[0]:
            return
        for row in row_or_rows:
            row.size = size
        wide = max(text_width(row.text, row.size, row.bold) for row in row_or_rows)
        if wide > width or _height(rows) > height:
            for row, old in zip(row_or_rows, before, strict=True):
                row.size = old

    holds = [row for row in rows if row.worth == 99]
    kept = [(row, line) for row, line in growing if any(row is other for other in rows)]
    for size in (5.5, 6.0, 7.0):
        enlarge(names, size)
    for hold in holds:
        enlarge([hold], 7.0)
    for row, line in kept[:1]:
        enlarge([row], min(3.5, line.most))
    for size in (8.0, 9.0):
        enlarge(names, size)
    for row, line in kept:
        enlarge([row], min(3.5, line.most))
    for hold in holds:
        enlarge([hold], 10.0)
    for row, line in kept:
        enlarge([row], line.most)
    for size in (10.0, 11.0, 12.0):
        enlarge(names, size)


def _height(rows: list[_Row]) -> float:
    return sum(row.size for row in rows) * EM_PER_CAP


def _fit(line: Wording, size: float, width: float) -> str:
    """Give the fullest wording that fits, else the shortest cut short; a figure never is."""
    for way in line.ways:
        if text_width(way, size, line.bold) <= width:
            return way
    if line.figure:
        return ""
    return shorten(line.ways[-1], size, line.bold, width)


def _widest(names: list[str], width: float) -> float:
    """Give the largest lettering in which the lines of an ID fit a width."""
    unit = max(text_width(name, 1.0, True) for name in names)
    return next((size for size in _SIZES if unit * size <= width), width / unit)


def _break_name(part: str, width: float) -> list[str]:
    """Give the ID on one line, or on two, broken after a hyphen, where one were too small."""
    if text_width(part, 3.5, True) <= width or len(part) < 2:
        return [part]
    breaks = [at + 1 for at, letter in enumerate(part[:-1]) if letter == "-"] or [len(part) // 2]
    at = min(breaks, key=lambda at: abs(at - len(part) / 2))
    return [part[:at], part[at:]]
