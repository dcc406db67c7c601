"""Labels on sheets or rolls of a stock, one for every part; `labellist.py` says which, in which
order.

On a label, from the left: an arrow, the words, the QR symbol with the code below it and, where
the label is 30 mm high, the key plan, there or beside the ID. A black stripe along an end, or along
the top, shows which edge goes to the front. Nothing is clipped: what does not fit is worded
shorter, then left out by its worth, and cut short with an ellipsis only at last. ID, code and
symbol always stay: of a small label the symbol itself says less.
"""

from collections.abc import Iterator, Sequence
from functools import partial

from msgspec.structs import replace

from jigs.box.parts import Layout
from jigs.given.labelstock import Stock
from jigs.ground.geometry import SLACK
from templates.labels.keyplan import KeyPlan
from templates.labels.labelmarks import (
    BASE_LINE,
    CLEAR,
    SMALL,
    STRIPE_HIGH,
    Toward,
    arrow_width,
    draw_arrow,
    end_stripe,
    top_stripe,
)
from templates.labels.labelplacing import LabelEntry, LabelField, field_of, place_labels
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
    choose_symbol,
    largest,
    module_left,
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
"""Width of the head of an arrow to a stripe, mm, ..."""
SAYS_HIGH = SAYS_HEAD + LEAST_LETTERING * EM_PER_CAP + 0.6
"""... and what it takes with its word under it."""

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


def module_on(words: LabelWords, stock: Stock, raster: Raster) -> float | None:
    """Give the module that is wanted of a label's symbol, mm; None where the stock has no room
    for its link."""
    field = field_of(stock, 1, raster)
    return module_left(words, field, raster, arrow_width(*_pointing(words, field)) + _GAP)


def _draw(field: LabelField, *, words: LabelWords, plan: KeyPlan, raster: Raster) -> list[Mark]:
    """Set one label in its field; a stamp that finds no room of its own stands by the code."""
    setting = _Setting(words, plan, field, raster)
    if missing := setting.set():
        code = " ".join([words.code, *(stamp.ways[-1] for stamp in missing)])
        lines = tuple(line for line in words.lines if line not in missing)
        setting = _Setting(replace(words, code=code, lines=lines), plan, field, raster)
        setting.set()
    return setting.marks


class _Setting:
    """One label while it is set: what is drawn on it, and the room that is left within `left`,
    `right`, `bottom` and `top`; mm."""

    def __init__(self, words: LabelWords, plan: KeyPlan, field: LabelField, raster: Raster) -> None:
        self.marks: list[Mark] = []
        self._words, self._plan, self._field, self._raster = words, plan, field, raster
        self._left, self._right = field.left + field.margin, field.right
        self._bottom, self._top = field.bottom + field.margin, field.top - field.margin
        self._along_top = words.stripe if words.stripe and words.stripe.end == "top" else None
        self._at_end = None if self._along_top else words.stripe
        self._pointing = _pointing(words, field)
        self._symbol = choose_symbol(words, field, raster, arrow_width(*self._pointing) + _GAP)
        self._over = room_over(words, field, self._symbol)
        self._named: float | None = None
        """The letters of an ID that does not stand among the words."""
        self._more: list[Wording] = []
        """What the words say of a stripe."""

    def set(self) -> tuple[Wording, ...]:
        """Set the label, and give the stamps that found no room on it."""
        symbol, field = self._symbol, self._field
        self._set_end_stripe()
        start = self._left
        if symbol.plan == "below":
            room = self._right - symbol.wide - start - _GAP
            self._draw_plan(start, self._bottom + 0.3, room, PLAN_LEAST)
            self._bottom += PLAN_LEAST + _GAP
        self._set_arrow()
        upper = self._top
        self._top -= STRIPE_HIGH if self._along_top else 0.0
        if self._right - symbol.wide - self._left < WORDS:
            self._set_name_across()
        # A symbol's own quiet zone is white enough at the label's edge.
        across = self._named is not None or (symbol.footed and self._over >= 0)
        under, wide = self._set_symbol(self._top if across else field.top)
        if self._along_top:
            # Over ID or symbol, where that stands across the label, else beside the symbol.
            end = field.right - field.margin if across else self._right - wide - CLEAR
            self.marks += top_stripe(self._along_top, start, upper, end - start)
        self._right -= wide
        if symbol.plan == "beside":
            self._set_name_and_plan()
        return self._set_words(code=not (under or symbol.footed))

    def _set_end_stripe(self) -> None:
        if self._at_end is None:
            return
        drawn, wide = end_stripe(self._at_end, self._field, self._symbol.lettered)
        self.marks += drawn
        if self._at_end.end == "left":
            self._left = self._field.left + wide
        else:
            self._right -= wide
        if not self._symbol.lettered:
            lines = self._at_end.lines
            self._more = [Wording(ways=(text,), worth=8, bold=True) for text in lines]

    def _set_arrow(self) -> None:
        """Set the arrow beside the words, or at their foot with the code at its side."""
        if not self._symbol.footed:
            top = self._top - (STRIPE_HIGH if self._along_top else 0.0)
            arrow = draw_arrow(*self._pointing, self._bottom, top)
            self.marks += moved(arrow, self._left, 0.0)
            self._left += arrow_width(*self._pointing) + _GAP
            return
        small = self._words.arrow, self._words.toward, FOOT_HEAD, LEAST_LETTERING
        arrow = draw_arrow(*small, self._bottom, self._bottom + FOOT)
        self.marks += moved(arrow, self._left, 0.0)
        at = self._left + arrow_width(*small) + CLEAR
        width = self._right - self._symbol.wide - at
        self.marks += _foot_code(self._words.code, at, self._bottom, width)
        self._bottom += FOOT

    def _set_name_across(self) -> None:
        """Set the ID over words and symbol, unless it is larger beside the symbol; with an arrow
        at the foot, what a stripe at an end says has room beside it alone."""
        part, margin = self._words.part, self._field.margin
        start, end, said = self._left, self._right - margin, self._more[-1:]
        roomy = self._symbol.footed and self._over >= SAYS_HIGH
        if said and roomy and self._at_end and self._at_end.end != "top":
            says = said[0].ways[0], self._at_end.end, SAYS_HEAD, LEAST_LETTERING
            wide = arrow_width(*says)
            if self._at_end.end == "left":
                at, start = start, start + wide + _GAP
            else:
                at = self._right - CLEAR - wide
                end = at - _GAP
        else:
            said = []
        size = largest(part, end - start, self._over)
        if size < _beside(part, self._right - self._symbol.wide - margin - self._left):
            return
        self._named = size
        name = _name(part, start, self._top, size, end - start)
        self.marks += name
        if said:
            arrow = draw_arrow(*says, self._top - self._over, self._top)
            self.marks += moved(arrow, at, 0.0)
            self._more = []
        self._top -= self._over if said else sum(text.size * EM_PER_CAP for text in name)

    def _set_symbol(self, top: float) -> tuple[bool, float]:
        """Set the symbol under a height, with the code and the key plan below it; tell whether
        the code found room there, and give the column's width."""
        symbol, field, right = self._symbol, self._field, self._right
        code = f"code {self._words.code}" if self._words.code else ""
        high = top - field.bottom
        foot = max(field.margin, SMALL * BASE_LINE)
        fits = foot + CODE_UP + symbol.high <= high
        under = fits and not symbol.footed and symbol.plan != "instead"
        room = room_under(high, symbol.high, field, code=under)
        planned = symbol.plan in ("under", "instead") and room >= PLAN_LEAST
        beside = field.margin if right == field.right else CLEAR
        size = SMALL
        if code:
            size = min(SMALL, max(LEAST_LETTERING, symbol.wide / text_width(code, 1.0)))
        letters = text_width(code, size) + beside + 0.3 if under else 0.0
        wide = max(symbol.wide, letters, field.width / 3 if symbol.plan == "under" else 0.0)
        square = top - symbol.high
        if not planned:  # symbol and code together stand in the middle
            square -= (high - symbol.high - (foot + CODE_UP if under else 0.0)) / 2
        across, up = self._raster.module(symbol.module)
        corner = right - symbol.wide + QUIET * across, square + QUIET * up
        self.marks.append(self._raster.symbol(*corner, symbol.text, symbol.module))
        if under and code:
            middle = min(right - symbol.wide / 2, right - letters / 2 - beside / 2)
            self.marks.append(
                Text(x=middle, y=square - CODE_UP, text=code, size=size, anchor="middle")
            )
        if planned:
            low = field.bottom + field.margin + 0.3
            self._draw_plan(right - wide + _GAP, low, wide - _GAP - field.margin, room)
        return under, wide

    def _set_name_and_plan(self) -> None:
        """Set the ID over the words, and the key plan beside it."""
        left, room = self._left, self._right - self._left
        half = min(max(0.45 * room, room - 1.6 * PLAN_BAND), room - PLAN_BAND)
        self._named = largest(self._words.part, half, PLAN_BAND)
        self.marks += _name(self._words.part, left, self._top, self._named, half)
        low = self._top - PLAN_BAND
        self._draw_plan(left + half + 2 * _GAP, low, room - half - 3 * _GAP, PLAN_BAND)
        self._top = low - _GAP / 2

    def _draw_plan(self, x: float, y: float, width: float, height: float) -> None:
        self.marks += self._plan.marks(self._words.black, x, y, width, height)

    def _set_words(self, *, code: bool) -> tuple[Wording, ...]:
        """Set the words into the room that is left, with the `code` where it stands nowhere else;
        give the stamps that found none."""
        field, room = self._field, self._right - self._left
        scarce = room < (SCARCE if field.height >= PLAN_FROM else NARROW_WORDS)
        rows, missing = set_rows(
            self._words,
            self._more,
            f"code {self._words.code}" if code and self._words.code else "",
            self._left, room, self._bottom, self._top,
            LEAST_LETTERING if scarce else SMALL,
            NAME_SCARCE if room < SCARCE and field.width <= WIDE else NAME_LEAST,
            self._named,
        )  # fmt: skip
        self.marks += rows
        return missing


def _pointing(words: LabelWords, field: LabelField) -> tuple[str, Toward, float, float]:
    """Give an arrow's word, where it points, the width of its head and its letters."""
    slim = field.width < SLIM
    head = 5.0 if slim or field.height < PLAN_FROM else 7.0
    return words.arrow, words.toward, head, LEAST_LETTERING if slim else SMALL


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
