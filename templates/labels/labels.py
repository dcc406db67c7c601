"""Labels on sheets or rolls of a stock, one for every part; `labellist.py` says which, in which
order.

On a label, from the left: an arrow, the words, the QR symbol with the code below it and, where
the label is 30 mm high, the key plan, there or beside the ID. A black stripe along an end, or along
the top, shows which edge goes to the front. Nothing is clipped: what does not fit is worded
shorter, then left out by its worth, and cut short with an ellipsis only at last. ID, code and
symbol always stay: of a small label the symbol itself says less.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import partial

from jigs.box.parts import Layout
from jigs.given.labelstock import Stock
from jigs.ground.geometry import SLACK
from templates.labels.keyplan import KeyPlan
from templates.labels.labelmarks import (
    BASE_LINE,
    CLEAR,
    SMALL,
    STRIPE_HIGH,
    arrow_width,
    draw_arrow,
    end_stripe,
    top_stripe,
)
from templates.labels.labelplacing import LabelEntry, LabelField, place_labels
from templates.labels.labelrows import (
    LEAST_LETTERING,
    NAME_LEAST,
    NAME_SCARCE,
    break_name,
    set_rows,
)
from templates.labels.labelsymbol import (
    CODE_UP,
    FOOT,
    FOOT_HEAD,
    PLAN_FROM,
    PLAN_LEAST,
    WIDE,
    WORDS,
    LabelSymbol,
    choose_symbol,
    largest,
    room_over,
    room_under,
)
from templates.labels.labelwords import LabelWords
from templates.page.marks import Mark, Page, Text
from templates.page.pieces import moved
from templates.page.raster import Raster
from templates.page.typeface import EM_PER_CAP, text_width
from templates.words.labellines import Wording
from templates.writers.qr import QUIET

PLAN_BAND = 12.0
"""Height of a key plan that stands beside the ID, mm."""
SLIM = 70.0
"""Label width under which the arrow is slimmer, and its word 1.8 mm high (ISO 3098)."""
NARROW_WORDS = 38.0
"""Width of the words under which their lines may be so on a low label, mm ..."""
SCARCE = 26.0
"""... and on any other."""

SAYS_HEAD = 1.8
"""Width of the head of an arrow to a stripe, mm."""

_GAP = 1.0


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
    x0, x1, bottom = field.left + field.margin, field.right, field.bottom + field.margin
    top = field.top - field.margin
    stripe = words.stripe
    along_top = stripe is not None and stripe.end == "top"
    lowered = STRIPE_HIGH if along_top else 0.0
    slim = field.width < SLIM
    head = 5.0 if slim or field.height < PLAN_FROM else 7.0
    pointing = words.arrow, words.toward, head, LEAST_LETTERING if slim else SMALL
    arrow_wide = arrow_width(*pointing)
    symbol = choose_symbol(words, field, raster, arrow_wide + _GAP)
    if stripe is not None and not along_top:
        drawn, wide = end_stripe(stripe, field, symbol.lettered)
        marks += drawn
        if stripe.end == "left":
            x0 = field.left + wide
        else:
            x1 -= wide
    left = x0
    if symbol.plan == "below":
        room = x1 - symbol.wide - x0 - _GAP
        marks += plan.marks(words.black, x0, bottom + 0.3, room, PLAN_LEAST)
        bottom += PLAN_LEAST + _GAP
    if symbol.footed:
        pointing = words.arrow, words.toward, FOOT_HEAD, LEAST_LETTERING
        marks += moved(draw_arrow(*pointing, bottom, bottom + FOOT), x0, 0.0)
        at = x0 + arrow_width(*pointing) + CLEAR
        marks += _foot_code(words.code, at, bottom, x1 - symbol.wide - at)
        bottom += FOOT
    else:
        marks += moved(draw_arrow(*pointing, bottom, top - lowered), x0, 0.0)
        x0 += arrow_wide + _GAP
    named, start, end = None, x0, x1 - field.margin
    more: list[Wording] = []
    said: list[Mark] = []
    if stripe is not None and stripe.end != "top" and not symbol.lettered:
        more = [Wording(ways=(text,), worth=8, bold=True) for text in stripe.lines]
        if symbol.footed:  # what the stripe says has room beside the ID alone
            says = stripe.lines[-1], stripe.end, SAYS_HEAD, LEAST_LETTERING
            wide = arrow_width(*says)
            at = x0 if stripe.end == "left" else x1 - CLEAR - wide
            said = moved(draw_arrow(*says, top - room_over(words, field, symbol), top), at, 0.0)
            start, end = (at + wide + _GAP, end) if stripe.end == "left" else (start, at - _GAP)
    if x1 - symbol.wide - x0 < WORDS:
        named = largest(words.part, end - start, room_over(words, field, symbol))
        if named < _beside(words.part, x1 - field.margin - x0 - symbol.wide):
            named = None
        else:
            name = _name(words.part, start, top - lowered, named, end - start)
            marks += [*name, *said]
            high = sum(text.size * EM_PER_CAP for text in name)
            top -= room_over(words, field, symbol) if said else high
            more = [] if said else more
    # A symbol's own quiet zone is white enough at the label's edge.
    across = named is not None or (symbol.footed and room_over(words, field, symbol) >= 0)
    ceiling = top - lowered if across else field.top
    under, wide = _column(marks, words, symbol, plan, field, raster, x1, ceiling)
    if stripe is not None and along_top:
        # Over ID or symbol, where that stands across the label, else beside the symbol.
        high = field.top - field.margin
        right = field.right - field.margin if across else x1 - wide - CLEAR
        marks += top_stripe(stripe, left, high, right - left)
    room = x1 - wide - x0
    if symbol.plan == "beside":
        half = min(max(0.45 * room, room - 1.6 * PLAN_BAND), room - PLAN_BAND)
        named = largest(words.part, half, PLAN_BAND)
        marks += _name(words.part, x0, top - lowered, named, half)
        marks += plan.marks(
            words.black, x0 + half + 2 * _GAP, top - lowered - PLAN_BAND, room - half - 3 * _GAP,
            PLAN_BAND,
        )  # fmt: skip
        top -= PLAN_BAND + _GAP / 2
    code = f"code {words.code}" if words.code and not (under or symbol.footed) else ""
    scarce = room < (SCARCE if field.height >= PLAN_FROM else NARROW_WORDS)
    rows, missing = set_rows(
        words, more, code, x0, room, bottom, top - lowered,
        LEAST_LETTERING if scarce else SMALL,
        NAME_SCARCE if room < SCARCE and field.width <= WIDE else NAME_LEAST,
        named,
    )  # fmt: skip
    return [*marks, *rows], missing


def _foot_code(code: str, x: float, bottom: float, width: float) -> list[Text]:
    """Set the code beside an arrow at the foot, word under word."""
    lines = f"code {code}".split() if code else []
    size = min([SMALL, *(width / text_width(line, 1.0) for line in lines),
                *(FOOT / len(lines) / EM_PER_CAP for _ in lines[:1])])  # fmt: skip
    return [
        Text(x=x, y=bottom + size * (row * EM_PER_CAP + BASE_LINE), text=line, size=size)
        for row, line in enumerate(reversed(lines))
    ]


def _beside(name: str, width: float) -> float:
    """Give the least letters for which an ID goes across the label: beside the symbol, even
    broken, it might be larger; mm."""
    wide = max(text_width(line, 1.0, True) for line in break_name(name))
    return min(LEAST_LETTERING, width / wide)


def _name(name: str, x: float, top: float, size: float, width: float) -> list[Text]:
    """Set an ID in letters that fit, on one line or two."""
    lines = [name] if text_width(name, size, True) <= width + SLACK else break_name(name)
    return [
        Text(x=x, y=top - size * (row * EM_PER_CAP - BASE_LINE), text=line, size=size, bold=True)
        for row, line in enumerate(lines, start=1)
    ]


def _column(
    marks: list[Mark],
    words: LabelWords,
    symbol: LabelSymbol,
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
    fits = foot + CODE_UP + symbol.high <= high
    under = fits and not symbol.footed and symbol.plan != "instead"
    room = room_under(high, symbol.high, field, code=under)
    planned = symbol.plan in ("under", "instead") and room >= PLAN_LEAST
    beside = field.margin if right == field.right else CLEAR
    size = min(SMALL, max(LEAST_LETTERING, symbol.wide / text_width(code, 1.0))) if code else SMALL
    letters = text_width(code, size) + beside + 0.3 if under else 0.0
    wide = max(symbol.wide, letters, field.width / 3 if symbol.plan == "under" else 0.0)
    square = top - symbol.high
    if not planned:  # symbol and code together stand in the middle
        square -= (high - symbol.high - (foot + CODE_UP if under else 0.0)) / 2
    across, up = raster.module(symbol.module)
    corner = right - symbol.wide + QUIET * across, square + QUIET * up
    marks.append(raster.symbol(*corner, symbol.text, symbol.module))
    if under and code:
        middle = min(right - symbol.wide / 2, right - letters / 2 - beside / 2)
        marks.append(Text(x=middle, y=square - CODE_UP, text=code, size=size, anchor="middle"))
    if planned:
        marks += plan.marks(
            words.black,
            right - wide + _GAP,
            field.bottom + field.margin + 0.3,
            wide - _GAP - field.margin,
            room,
        )
    return under, wide
