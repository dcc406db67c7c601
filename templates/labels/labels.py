"""Labels on sheets or rolls of a stock, one for every part; `labellist.py` says which, in which
order.

On a label, from the left: an arrow, the words, the QR symbol with the code below it and, where
the label is 30 mm high, the key plan. A black stripe along an end, or along the top, shows which
edge goes to the front. Nothing is clipped: what does not fit is worded shorter, then left out by
its worth, and cut short with an ellipsis only at last. ID, code and symbol always stay: of a small
label the symbol itself says less.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import partial

from jigs.box.parts import Layout
from jigs.given.labelstock import Stock
from templates.labels.keyplan import KeyPlan
from templates.labels.labelmarks import (
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
from templates.labels.labelplacing import LabelEntry, LabelField, place_labels
from templates.labels.labelrows import LEAST_LETTERING, break_name, set_rows
from templates.labels.labelwords import LabelWords, Wording
from templates.page.marks import Mark, Page, Text
from templates.page.pieces import moved
from templates.page.raster import Raster
from templates.page.typeface import EM_PER_CAP, text_width
from templates.writers.qr import QUIET, qr_side

PLAN_FROM = 30.0
"""Label height from which there is a key plan, mm."""
PLAN_LEAST = 10.0
"""Height below which a key plan is not readable, mm."""
WORDS = 18.0
"""Width that the words are to have before the symbol says all that it might, mm."""

NARROW = 51.0
"""Label width under which the arrow is slimmer and the lines may be 1.8 mm high (ISO 3098)."""
SAYS = (90, 61, 38)
"""Characters of a symbol of version 4, 3 and 2, level M (ISO/IEC 18004:2015, table 7, from
memory)."""

_GAP = 1.0
_CODE_UP = SMALL * (EM_PER_CAP - BASE_LINE)
"""What the code takes under the symbol, from its base line up; mm."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Symbol:
    """A label's symbol: what it says, and its size with quiet zone and all, mm."""

    text: str
    wide: float
    high: float


def each_label_page(
    layout: Layout,
    labels: Sequence[LabelWords],
    stock: Stock,
    *,
    start: int = 1,
    copies: int = 1,
    raster: Raster | None = None,
) -> Iterator[Page]:
    """Give the sheets of labels of a job one by one, one label after the other.

    `start` is the first free place of the first sheet; ValueError where it has no such place.
    Each label is printed `copies` times. `raster`: what the printer asks for; without it, the
    stock's own dots.
    """
    plan = KeyPlan(layout)
    raster = raster or Raster(dots=stock.dots)
    entries = [
        LabelEntry(words.part, partial(_draw, words=words, plan=plan, raster=raster))
        for words in labels
    ]
    return place_labels(entries, stock, raster, start=start, copies=copies)


def _draw(field: LabelField, *, words: LabelWords, plan: KeyPlan, raster: Raster) -> list[Mark]:
    """Set one label in its field; a stamp that finds no room of its own stands by the code."""
    marks, missing = _label(words, plan, field, raster)
    if missing:
        code = " ".join([words.code, *(stamp.ways[-1] for stamp in missing)])
        lines = tuple(line for line in words.lines if line not in missing)
        marks, _ = _label(replace(words, code=code, lines=lines), plan, field, raster)
    return marks


def _label(
    words: LabelWords, plan: KeyPlan, field: LabelField, raster: Raster
) -> tuple[list[Mark], tuple[Wording, ...]]:
    """Set one label, and give the stamps that found no room on it."""
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
    named = None
    if x1 - symbol.wide - x0 < WORDS:
        name = _over(words.part, x0, x1 - field.margin, top - lowered, field, symbol)
        named = name[0].size if name else None
        marks += name
        top -= sum(text.size * EM_PER_CAP for text in name)
    # A symbol's own quiet zone is white enough at the label's edge.
    ceiling = top - lowered if named else field.top
    under, wide = _column(marks, words, symbol, plan, field, raster, x1, ceiling)
    if stripe is not None and along_top:
        # Over the ID, where that stands across the label, else beside the symbol.
        high = field.top - field.margin
        right = field.right - field.margin if named else x1 - wide - CLEAR
        marks += top_stripe(stripe, left, high, right - left)
    code = "" if under or not words.code else f"code {words.code}"
    more: list[Wording] = []
    if stripe is not None and not lettered:
        more += [Wording(ways=(text,), worth=8, bold=True) for text in stripe.lines]
    least = LEAST_LETTERING if field.width < NARROW else SMALL
    rows, missing = set_rows(
        words, more, code, x0, x1 - wide - x0, bottom, top - lowered, least, named
    )
    return [*marks, *rows], missing


def _over(
    name: str, x0: float, x1: float, top: float, field: LabelField, symbol: _Symbol
) -> list[Text]:
    """Set the ID across a narrow label, over words and symbol, if the symbol leaves it room."""
    room = top - field.bottom - field.margin - _CODE_UP - symbol.high
    width = x1 - x0

    def largest(lines: list[str]) -> float:
        return min(7.0, room / len(lines) / EM_PER_CAP, *(
            width / text_width(line, 1.0, True) for line in lines
        ))  # fmt: skip

    lines = max(([name], break_name(name, 0.0)), key=largest)
    size = largest(lines)
    # Beside the symbol, even broken, it might be larger.
    beside = (width - symbol.wide) / max(
        text_width(line, 1.0, True) for line in break_name(name, 0.0)
    )
    if size < min(LEAST_LETTERING, beside):
        return []
    return [
        Text(
            x=x0, y=top - size * (row * EM_PER_CAP - BASE_LINE), text=line, size=size, bold=True
        )
        for row, line in enumerate(lines, start=1)
    ]  # fmt: skip


def _choose(
    words: LabelWords, field: LabelField, raster: Raster, beside: float
) -> tuple[_Symbol, bool]:
    """Choose the fullest symbol that leaves the words their room, and whether the stripe has
    words too; `beside` is what arrow and margin take."""
    at_end = words.stripe if words.stripe and words.stripe.end != "top" else None
    stripe = stripe_width(at_end, field) if at_end else 0.0
    symbols = [_symbol(words.payload.fit(longest), raster) for longest in SAYS]
    if not _planned(symbols[0], field) and _planned(symbols[1], field):
        del symbols[0]  # the plan is worth more than its last words
    ways = [(symbol, lettered) for lettered in (True, False) for symbol in symbols]
    for symbol, lettered in ways:
        taken = stripe if lettered else STRIPE if at_end else 0.0
        if symbol.high <= field.height and field.width - symbol.wide - beside - taken >= WORDS:
            break
    return symbol, lettered


def _symbol(text: str, raster: Raster) -> _Symbol:
    across, up = raster.module
    return _Symbol(
        text=text, wide=qr_side(text, across) + raster.slack, high=qr_side(text, up) + raster.slack
    )


def _planned(symbol: _Symbol, field: LabelField) -> bool:
    """Tell whether a label has room for a key plan below a symbol that stands at its top."""
    return field.height >= PLAN_FROM and _room(field.height, symbol, field) >= PLAN_LEAST


def _room(high: float, symbol: _Symbol, field: LabelField) -> float:
    """Give what symbol and code leave below them of a height; mm."""
    return high - symbol.high - SMALL * EM_PER_CAP - 2 * field.margin - 0.3


def _column(
    marks: list[Mark],
    words: LabelWords,
    symbol: _Symbol,
    plan: KeyPlan,
    field: LabelField,
    raster: Raster,
    right: float,
    top: float,
) -> tuple[bool, float]:
    """Add the QR symbol with the code and the key plan below; tell whether the code found room
    there, and give the column's width."""
    code = f"code {words.code}" if words.code else ""
    high = top - field.bottom
    foot = max(field.margin, SMALL * BASE_LINE)
    under = foot + _CODE_UP + symbol.high <= high
    room = _room(high, symbol, field)
    planned = field.height >= PLAN_FROM and room >= PLAN_LEAST
    beside = field.margin if right == field.right else CLEAR
    size = min(SMALL, max(LEAST_LETTERING, symbol.wide / text_width(code, 1.0))) if code else SMALL
    letters = text_width(code, size) + beside + 0.3 if under else 0.0
    wide = max(symbol.wide, letters, field.width / 3 if planned else 0.0)
    square = top - symbol.high
    if not planned:  # symbol and code together stand in the middle
        square -= (high - symbol.high - (foot + _CODE_UP if under else 0.0)) / 2
    across, up = raster.module
    marks.append(
        raster.symbol(right - symbol.wide + QUIET * across, square + QUIET * up, symbol.text)
    )
    if under and code:
        middle = min(right - symbol.wide / 2, right - letters / 2 - beside / 2)
        marks.append(Text(x=middle, y=square - _CODE_UP, text=code, size=size, anchor="middle"))
    if planned:
        marks += plan.marks(
            words.black,
            right - wide + _GAP,
            field.bottom + field.margin + 0.3,
            wide - _GAP - field.margin,
            room,
        )
    return under, wide
