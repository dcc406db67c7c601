"""One label set in its field: the arrow, the words, the QR symbol, the key plan.

Nothing is clipped: what does not fit is worded shorter, then left out by its worth, and cut
short with an ellipsis only at last. ID, code and symbol always stay: of a small label the symbol
itself says less.
"""

from dataclasses import dataclass

from templates.keyplan import KeyPlan
from templates.labelmarks import (
    BASE_LINE,
    CLEAR,
    SMALL,
    STRIPE,
    STRIPE_HIGH,
    draw_arrow,
    end_stripe,
    stripe_width,
    top_stripe,
)
from templates.labelplacing import Field
from templates.labelwords import LabelWords, Wording
from templates.marks import Mark, Qr, Text
from templates.payload import fit_payload
from templates.pieces import moved
from templates.qr import QUIET, qr_side
from templates.raster import Raster
from templates.typeface import EM_PER_CAP, shorten, text_width

PLAN_FROM = 30.0
"""Label height from which there is a key plan, mm."""
PLAN_LEAST = 10.0
"""Height below which a key plan is not readable, mm."""
WORDS = 18.0
"""Width that the words are to have before the symbol says all that it might, mm."""

NARROW = 50.0
"""Label width under which the arrow is slimmer and the lines may be 1.8 mm high (ISO 3098)."""
LETTERS = 8
"""Letters that must remain of a text that is cut short."""

SAYS = (90, 61, 38)
"""Characters of a symbol of version 4, 3 and 2, level M (ISO/IEC 18004:2015, table 7)."""

_GAP = 1.0
_LEAST = 1.8
_CODE_UP = SMALL * (EM_PER_CAP - BASE_LINE)
"""What the code takes under the symbol, from its base line up; mm."""

_SIZES = (12.0, 11.0, 10.0, 9.0, 8.0, 7.0, 6.0, 5.5, 5.0, 4.5, 4.0, 3.5, 3.0, 2.5)


@dataclass(slots=True, kw_only=True)
class _Row:
    """A row of lettering while a label is set."""

    text: str
    size: float
    bold: bool
    worth: int


@dataclass(frozen=True, slots=True, kw_only=True)
class _Symbol:
    """A label's symbol: what it says, and its size with quiet zone and all, mm."""

    text: str
    wide: float
    high: float


def label_marks(words: LabelWords, plan: KeyPlan, field: Field, raster: Raster) -> list[Mark]:
    """Set one label in its field."""
    marks: list[Mark] = []
    x0, x1, top = field.left + field.margin, field.right, field.top - field.margin
    stripe = words.stripe
    along_top = stripe is not None and stripe.end == "top"
    lowered = STRIPE_HIGH if along_top else 0.0
    head = 7.0 if field.height >= PLAN_FROM and field.width >= NARROW else 5.0
    bottom = field.bottom + field.margin
    arrow, arrow_wide = draw_arrow(words.arrow, words.toward, bottom, top - lowered, head)
    symbol, lettered = _choose(words, field, raster, arrow_wide + _GAP + field.margin)
    if stripe is not None and not along_top:
        drawn, wide = end_stripe(stripe, field, lettered)
        marks += drawn
        if stripe.end == "left":
            x0 = field.left + wide
        else:
            x1 -= wide
    left = x0
    marks += moved(tuple(arrow), x0, 0.0)
    x0 += arrow_wide + _GAP
    named = True
    if x1 - symbol.wide - x0 < WORDS:
        name = _over(words.part, x0, x1 - field.margin, top - lowered, field, symbol)
        named = not name
        marks += name
        top -= sum(text.size * EM_PER_CAP for text in name)
    # A symbol's own quiet zone is white enough at the label's edge.
    ceiling = field.top if named else top - lowered
    under, wide = _column(marks, words, symbol, plan, field, raster, x1, ceiling)
    if stripe is not None and along_top:
        # Over the ID, where that stands across the label, else beside the symbol.
        high = field.top - field.margin
        right = x1 - wide - CLEAR if named else field.right - field.margin
        marks += top_stripe(stripe, left, high, right - left)
    more = [] if under or not words.code else [Wording(ways=(f"code {words.code}",), worth=98)]
    if stripe is not None and not lettered:
        more += [Wording(ways=(text,), worth=8, bold=True) for text in stripe.lines]
    least = _LEAST if field.width < NARROW else SMALL
    marks += _rows(words, more, x0, x1 - wide - x0, bottom, top - lowered, named, least)
    return marks


def _over(name: str, x0: float, x1: float, top: float, field: Field, symbol: _Symbol) -> list[Text]:
    """Set the ID across a narrow label, over words and symbol, if the symbol leaves it room."""
    room = top - field.bottom - field.margin - _CODE_UP - symbol.high
    size = min(7.0, room / EM_PER_CAP, (x1 - x0) / text_width(name, 1.0, True))
    if size < _LEAST:
        return []
    base = top - size * (EM_PER_CAP - BASE_LINE)
    return [Text(x=x0, y=base, text=name, size=size, bold=True)]


def _choose(words: LabelWords, field: Field, raster: Raster, beside: float) -> tuple[_Symbol, bool]:
    """Choose the fullest symbol that leaves the words their room, and whether the stripe has
    words too; `beside` is what arrow and margin take."""
    across, up = raster.module
    at_end = words.stripe if words.stripe and words.stripe.end != "top" else None
    stripe = stripe_width(at_end, field) if at_end else 0.0
    ways = [(longest, lettered) for lettered in (True, False) for longest in SAYS]
    for longest, lettered in ways:
        text = fit_payload(words.payload, longest)
        symbol = _Symbol(
            text=text,
            wide=qr_side(text, across) + raster.slack,
            high=qr_side(text, up) + raster.slack,
        )
        taken = stripe if lettered else STRIPE if at_end else 0.0
        if symbol.high <= field.height and field.width - symbol.wide - beside - taken >= WORDS:
            break
    return symbol, lettered


def _column(
    marks: list[Mark],
    words: LabelWords,
    symbol: _Symbol,
    plan: KeyPlan,
    field: Field,
    raster: Raster,
    right: float,
    top: float,
) -> tuple[bool, float]:
    """Add the QR symbol with the code and the key plan below; tell whether the code found room
    there, and give the column's width."""
    code = f"code {words.code}" if words.code else ""
    high = top - field.bottom
    under = field.margin + _CODE_UP + symbol.high <= high
    room = high - symbol.high - SMALL * EM_PER_CAP - 2 * field.margin - 0.3
    planned = field.height >= PLAN_FROM and room >= PLAN_LEAST
    beside = field.margin if right == field.right else CLEAR
    letters = text_width(code, SMALL) + beside + 0.3 if under else 0.0
    wide = max(symbol.wide, letters, field.width / 3 if planned else 0.0)
    square = top - symbol.high
    if not planned:  # symbol and code together stand in the middle
        square -= (high - symbol.high - (field.margin + _CODE_UP if under else 0.0)) / 2
    across, up = raster.module
    x, y = raster.to_dot(right - symbol.wide + QUIET * across, square + QUIET * up)
    rise = None if up == across else up
    marks.append(Qr(x=x, y=y, text=symbol.text, module=across, rise=rise))
    if under and code:
        middle = min(right - symbol.wide / 2, right - letters / 2 - beside / 2)
        marks.append(Text(x=middle, y=square - _CODE_UP, text=code, size=SMALL, anchor="middle"))
    if planned:
        marks += plan.marks(
            words.black,
            right - wide + _GAP,
            field.bottom + field.margin + 0.3,
            wide - _GAP - field.margin,
            room,
        )
    return under, wide


def _rows(
    words: LabelWords,
    more: list[Wording],
    x: float,
    width: float,
    bottom: float,
    top: float,
    named: bool,
    least: float,
) -> list[Mark]:
    """Set the ID, if it is `named` here, the lines under it, then `more`, as large as the room
    takes, and at least `least` mm high."""
    height = top - bottom
    names = _break_name(words.part, width) if named else []
    rows = [_Row(text=name, size=SMALL, bold=True, worth=100) for name in names]
    if words.hold:
        size = min(5.0, width / text_width("HOLD", 1.0, True))
        rows.append(_Row(text="HOLD", size=size, bold=True, worth=99))
    growing: list[tuple[_Row, Wording]] = []
    for line in (*words.lines, *more):
        text = _fit(line, least, width)
        if not text:
            continue
        row = _Row(text=text, size=least, bold=line.bold, worth=line.worth)
        rows.append(row)
        growing.append((row, line))
    # The ID wants 5 mm at least, or 3.5 on two lines, if it is not too long for that; what is
    # worth least makes room.
    name_rows = rows[: len(names)]
    for row in name_rows:
        row.size = min(5.0 if len(names) == 1 else 3.5, _widest(names, width))
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
            Text(x=x, y=at + row.size * BASE_LINE, text=row.text, size=row.size, bold=row.bold)
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
        if not before or size <= before[0]:
            return
        for row in row_or_rows:
            row.size = size
        wide = max(text_width(row.text, row.size, row.bold) for row in row_or_rows)
        if wide > width or _height(rows) > height:
            for row, old in zip(row_or_rows, before, strict=True):
                row.size = old

    def most() -> float:
        """No word is larger than the ID."""
        return names[0].size if names else SMALL

    holds = [row for row in rows if row.worth == 99]
    kept = [(row, line) for row, line in growing if any(row is other for other in rows)]
    for row, _ in kept:
        enlarge([row], SMALL)
    for size in (4.0, 4.5, 5.0, 5.5, 6.0, 7.0):
        enlarge(names, size)
    for hold in holds:
        enlarge([hold], 7.0)
    for row, line in kept[:1]:
        enlarge([row], min(3.5, line.most, most()))
    for size in (8.0, 9.0):
        enlarge(names, size)
    for row, line in kept:
        enlarge([row], min(3.5, line.most, most()))
    for hold in holds:
        enlarge([hold], 10.0)
    for row, line in kept:
        enlarge([row], min(line.most, most()))
    for size in (10.0, 11.0, 12.0):
        enlarge(names, size)


def _height(rows: list[_Row]) -> float:
    return sum(row.size for row in rows) * EM_PER_CAP


def _fit(line: Wording, size: float, width: float) -> str:
    """Give the fullest wording that fits, else the shortest cut short, if so much of it remains
    that it can be read; a figure never is cut."""
    for way in line.ways:
        if text_width(way, size, line.bold) <= width:
            return way
    cut = shorten(line.ways[-1], size, line.bold, width)
    return "" if line.figure or len(cut) <= LETTERS else cut


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
