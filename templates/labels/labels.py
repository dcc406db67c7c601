"""Labels on sheets or rolls of a stock, one for every part; `labellist.py` says which, in which
order.

On a label, from the left: an arrow, the words, the QR symbol with the code below it and, where
the label is 30 mm high, the key plan, there or beside the ID. A black stripe along an end, or along
the top, shows which edge goes to the front. Nothing is clipped: what does not fit is worded
shorter, then left out by its worth, and cut short with an ellipsis only at last. ID, code and
symbol always stay: of a small label the symbol itself says less.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import partial
from typing import Literal

from jigs.box.parts import Layout
from jigs.given.labelstock import Stock
from jigs.ground.dotpitch import MODULES
from jigs.ground.geometry import SLACK
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
from templates.labels.labelwords import LabelWords
from templates.page.marks import Mark, Page, Text
from templates.page.pieces import moved
from templates.page.raster import Raster
from templates.page.typeface import EM_PER_CAP, text_width
from templates.words.labellines import Wording
from templates.words.payload import LENGTHS
from templates.writers.qr import QUIET, qr_side

PLAN_FROM = 30.0
"""Label height from which there is a key plan, mm."""
PLAN_LEAST = 10.0
"""Height below which a key plan is not readable, mm."""
PLAN_HIGH = 36.0
"""Label height from which the code makes way for it, mm."""
PLAN_BAND = 12.0
"""Height of a key plan that stands beside the ID, mm."""
WORDS_LEAST = {False: 12.5, True: 15.9}
"""Width under which not even a cut size finds room, or HOLD in large letters, mm."""
WORDS = 18.0
"""Width that the words are to have before the symbol says all that it might, mm."""
BAND_WORDS = 36.0
"""Width from which ID and key plan stand side by side over the words, mm."""
TALL = 38.0
"""Label height from which a symbol has the largest modules, mm."""

NARROW = 51.0
"""Label width under which the arrow is slimmer and the lines may be 1.8 mm high (ISO 3098)."""
NAME_PLAIN = 3.0
"""Letters of an ID for which a symbol makes way, mm."""
WIDE = 60.0
"""Label width over which it always does, mm."""
NARROW_WORDS = 38.0
"""Width of the words under which their lines may be so on a low label, mm."""

_GAP = 1.0
_CODE_UP = SMALL * (EM_PER_CAP - BASE_LINE)
"""What the code takes under the symbol, from its base line up; mm."""

_Plan = Literal["under", "instead", "beside"]
"""Where a key plan stands: under symbol and code, under the symbol in place of the code, which is
then a row of the words, or beside the ID."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Symbol:
    """A label's symbol: what it says, the module that is wanted, its size with quiet zone and all,
    the width that it leaves to the words, where the key plan stands with it, and whether the
    label's stripe has its words; mm."""

    text: str
    module: float
    wide: float
    high: float
    words: float
    plan: _Plan | None
    lettered: bool


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
    narrow = field.width < NARROW and text_width(words.arrow, SMALL, True) > head
    arrow, arrow_wide = draw_arrow(
        words.arrow, words.toward, bottom, top - lowered, head, LEAST_LETTERING if narrow else SMALL
    )
    symbol = _choose(words, field, raster, arrow_wide + _GAP + field.margin)
    if stripe is not None and not along_top:
        drawn, wide = end_stripe(stripe, field, symbol.lettered)
        marks += drawn
        if stripe.end == "left":
            x0 = field.left + wide
        else:
            x1 -= wide
    left = x0
    marks += moved(tuple(arrow), x0, 0.0)
    x0 += arrow_wide + _GAP
    named = None
    across = x1 - symbol.wide - x0 < WORDS
    if across:
        named = _largest(words.part, x1 - field.margin - x0, _over(words, field, symbol))
        if named < _beside(words.part, x1 - field.margin - x0 - symbol.wide):
            named = None
        else:
            name = _name(words.part, x0, top - lowered, named, x1 - field.margin - x0)
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
    room = x1 - wide - x0
    if symbol.plan == "beside":
        half = min(max(0.45 * room, room - 1.6 * PLAN_BAND), room - PLAN_BAND)
        named = _largest(words.part, half, PLAN_BAND)
        marks += _name(words.part, x0, top - lowered, named, half)
        marks += plan.marks(
            words.black, x0 + half + 2 * _GAP, top - lowered - PLAN_BAND, room - half - 3 * _GAP,
            PLAN_BAND,
        )  # fmt: skip
        top -= PLAN_BAND + _GAP / 2
    code = "" if under or not words.code else f"code {words.code}"
    more: list[Wording] = []
    if stripe is not None and not symbol.lettered:
        more += [Wording(ways=(text,), worth=8, bold=True) for text in stripe.lines]
    scarce = field.width < NARROW or (field.height < PLAN_FROM and room < NARROW_WORDS)
    least = LEAST_LETTERING if scarce else SMALL
    rows, missing = set_rows(words, more, code, x0, room, bottom, top - lowered, least, named)
    return [*marks, *rows], missing


def _over(words: LabelWords, field: LabelField, symbol: _Symbol) -> float:
    """Give the height that a symbol with its code leaves to an ID across the label; mm."""
    stripe = STRIPE_HIGH if words.stripe and words.stripe.end == "top" else 0.0
    return field.height - 2 * field.margin - _CODE_UP - symbol.high - stripe


def _lines(name: str, width: float, height: float) -> list[str]:
    """Give an ID on one line or on two, as it is larger."""
    return max([name], break_name(name, 0.0), key=lambda lines: _size(lines, width, height))


def _size(lines: list[str], width: float, height: float) -> float:
    return min(12.0, height / len(lines) / EM_PER_CAP, *(
        width / text_width(line, 1.0, True) for line in lines
    ))  # fmt: skip


def _largest(name: str, width: float, height: float) -> float:
    """Give the largest letters in which an ID fits a room; mm."""
    return _size(_lines(name, width, height), width, height)


def _beside(name: str, width: float) -> float:
    """Give the least letters for which an ID goes across the label: beside the symbol, even
    broken, it might be larger; mm."""
    wide = max(text_width(line, 1.0, True) for line in break_name(name, 0.0))
    return min(LEAST_LETTERING, width / wide)


def _name(name: str, x: float, top: float, size: float, width: float) -> list[Text]:
    """Set an ID in letters that fit, on one line or two."""
    lines = [name] if text_width(name, size, True) <= width + SLACK else break_name(name, 0.0)
    return [
        Text(x=x, y=top - size * (row * EM_PER_CAP - BASE_LINE), text=line, size=size, bold=True)
        for row, line in enumerate(lines, start=1)
    ]


def _choose(words: LabelWords, field: LabelField, raster: Raster, taken: float) -> _Symbol:
    """Choose the symbol that is worth most: which says all that no label leaves out, leaves the
    words their room and the ID its size, has large modules, leaves room for a key plan and for
    the words of the stripe, and says much; `taken` is what arrow and margin take."""
    at_end = words.stripe if words.stripe and words.stripe.end != "top" else None
    core = len(words.payload.core)
    name, broken = words.part, break_name(words.part, 0.0)
    least = NAME_PLAIN if field.width > WIDE else LEAST_LETTERING
    most = LENGTHS[0 if field.height >= TALL else 1 if field.height >= PLAN_FROM else 2]

    def worth(symbol: _Symbol) -> tuple[bool, bool, float, float, bool, bool, int]:
        if symbol.words >= WORDS:
            room = max(_size([name], symbol.words, field.height), _size(broken, symbol.words, TALL))
        else:  # the ID stands across the label
            over = _over(words, field, symbol)
            room = _largest(name, field.width - taken - field.margin, over)
        size = min(NAME_PLAIN, room)
        legible = size >= least and symbol.words >= WORDS_LEAST[words.hold]
        said = len(symbol.text)
        return (
            legible, said >= core, size, symbol.module, symbol.plan is not None,
            symbol.lettered, said if said <= most else -said,
        )  # fmt: skip

    texts = dict.fromkeys(words.payload.fits(LENGTHS))
    symbols = []
    for module in MODULES if field.height >= TALL else MODULES[1:]:
        for text in texts:
            across, up = raster.module(module)
            wide, high = (qr_side(text, side) + raster.slack for side in (across, up))
            for lettered in (True, False):
                stripe = (stripe_width(at_end, field) if lettered else STRIPE) if at_end else 0.0
                room = field.width - wide - taken - stripe
                symbols.append(
                    _Symbol(text=text, module=module, wide=wide, high=high, words=room,
                            plan=_plan(high, room, field), lettered=lettered)
                )  # fmt: skip
    return max((symbol for symbol in symbols if symbol.high <= field.height), key=worth)


def _plan(high: float, words: float, field: LabelField) -> _Plan | None:
    """Say where a label has room for a key plan with a symbol so high at its top."""
    if field.height < PLAN_FROM:
        return None
    if _room(field.height, high, field, code=True) >= PLAN_LEAST:
        return "under"
    if words >= BAND_WORDS:
        return "beside"
    if field.height >= PLAN_HIGH and _room(field.height, high, field, code=False) >= PLAN_LEAST:
        return "instead"
    return None


def _room(height: float, symbol: float, field: LabelField, *, code: bool) -> float:
    """Give what symbol and code leave below them of a height; mm."""
    below = SMALL * EM_PER_CAP + field.margin if code else 0.0
    return height - symbol - below - field.margin - 0.3


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
    under = symbol.plan != "instead" and foot + _CODE_UP + symbol.high <= high
    room = _room(high, symbol.high, field, code=under)
    planned = symbol.plan in ("under", "instead") and room >= PLAN_LEAST
    beside = field.margin if right == field.right else CLEAR
    size = min(SMALL, max(LEAST_LETTERING, symbol.wide / text_width(code, 1.0))) if code else SMALL
    letters = text_width(code, size) + beside + 0.3 if under else 0.0
    wide = max(symbol.wide, letters, field.width / 3 if symbol.plan == "under" else 0.0)
    square = top - symbol.high
    if not planned:  # symbol and code together stand in the middle
        square -= (high - symbol.high - (foot + _CODE_UP if under else 0.0)) / 2
    across, up = raster.module(symbol.module)
    corner = right - symbol.wide + QUIET * across, square + QUIET * up
    marks.append(raster.symbol(*corner, symbol.text, symbol.module))
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
