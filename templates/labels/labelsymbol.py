"""Which symbol a label takes: how large its modules are, how much it says, and what that leaves to
the words and to the key plan.

A symbol outranks nothing that is read by eye: it leaves the words their room and the ID its size,
and only then has modules that are read off a hard print (`dotpitch.py`). On a label that is narrow
the arrow makes way for it to the foot of the words.
"""

from typing import Literal

from msgspec import Struct

from jigs.ground.dotpitch import MODULES, READ
from templates.labels.labelmarks import (
    BASE_LINE,
    SMALL,
    STRIPE,
    STRIPE_HIGH,
    stripe_width,
)
from templates.labels.labelplacing import LabelField
from templates.labels.labelrows import LEAST_LETTERING, break_name
from templates.labels.labelwords import LabelWords
from templates.page.raster import Raster
from templates.page.typeface import EM_PER_CAP, text_width
from templates.words.payload import LENGTHS
from templates.writers.qr import qr_side

PLAN_FROM = 30.0
"""Label height from which there is a key plan, mm."""
PLAN_LEAST = 10.0
"""Height below which a key plan is not readable, mm."""
PLAN_HIGH = 36.0
"""Label height from which the code makes way for it, or the words do, mm."""
WORDS_LEAST = {False: 12.5, True: 15.0}
"""Width under which not even a cut size finds room, or HOLD in large letters, mm."""
WORDS = 18.0
"""Width that the words are to have for the ID to stand among them, mm."""
BAND_WORDS = 36.0
"""Width from which ID and key plan stand side by side over the words, mm."""
TALL = 38.0
"""Label height from which a symbol has the largest modules, mm."""
NARROW = 51.0
"""Label width under which the arrow may stand at the foot of the words, mm."""
FOOT, FOOT_HEAD = 7.0, 3.6
"""Height of such an arrow with its word, and width of its head; mm."""
NAME_PLAIN = 3.0
"""Letters of an ID for which a symbol makes way, mm."""
WIDE = 60.0
"""Label width over which it always does, mm."""

CODE_UP = SMALL * (EM_PER_CAP - BASE_LINE)
"""What the code takes under the symbol, from its base line up; mm."""

PlanStands = Literal["under", "instead", "beside", "below"]
"""Where a key plan stands: under symbol and code, under the symbol in place of the code, which is
then a row of the words, beside the ID, or below arrow and words."""


class LabelSymbol(Struct, frozen=True, kw_only=True):
    """A label's symbol, and how the label is set round it; mm."""

    text: str
    """What it says."""
    module: float
    """The module that is wanted."""
    wide: float
    """Its width, quiet zone and all."""
    high: float
    """Its height, quiet zone and all."""
    words: float
    """The width that it leaves to the words."""
    plan: PlanStands | None
    """Where the key plan stands with it."""
    lettered: bool
    """Whether the label's stripe has its words."""
    footed: bool
    """Whether arrow and code stand at the foot of the words."""


def choose_symbol(
    words: LabelWords, field: LabelField, raster: Raster, arrow: float
) -> LabelSymbol:
    """Choose the symbol that is worth most: which leaves the words their room and the ID its
    least size, says all that no label leaves out, has modules that are read off a hard print,
    leaves the ID its size, has large modules, leaves room for a key plan and for the words of the
    stripe, and says much; `arrow` is what the arrow takes at the side of the words, mm."""
    core = 0 if words.link else len(words.payload.core)
    most = LENGTHS[0 if field.height >= TALL else 1 if field.height >= PLAN_FROM else 2]

    def worth(symbol: LabelSymbol) -> tuple[bool, bool, bool, bool, float, float, bool, bool, int]:
        said, size = len(symbol.text), _name_size(symbol, words, field, arrow)
        return (
            _legible(symbol, words, field, size), said >= core, symbol.module >= READ,
            not symbol.footed, size, symbol.module, symbol.plan is not None, symbol.lettered,
            said if said <= most else -said,
        )  # fmt: skip

    return max(_symbols(words, field, raster, arrow), key=worth)


def module_left(words: LabelWords, field: LabelField, raster: Raster, arrow: float) -> float | None:
    """Give the module that is wanted of the symbol chosen, mm; None where any leaves the words no
    room, as a long link does, and a text never."""
    symbols = _symbols(words, field, raster, arrow)
    if not any(
        _legible(symbol, words, field, _name_size(symbol, words, field, arrow))
        for symbol in symbols
    ):
        return None
    return choose_symbol(words, field, raster, arrow).module


def _legible(symbol: LabelSymbol, words: LabelWords, field: LabelField, name: float) -> bool:
    """Tell whether a symbol leaves the words their room and the ID its least size."""
    least = NAME_PLAIN if field.width > WIDE else LEAST_LETTERING
    return symbol.words >= WORDS_LEAST[words.hold] and name >= least


def _name_size(symbol: LabelSymbol, words: LabelWords, field: LabelField, arrow: float) -> float:
    """Give the letters that a symbol leaves to the ID, as far as they count; mm."""
    room = size_of(break_name(words.part), symbol.words, TALL)
    if symbol.words >= WORDS:
        room = max(size_of([words.part], symbol.words, field.height), room)
    else:  # the ID may stand across the label
        wide = field.width - (0.0 if symbol.footed else arrow) - 2 * field.margin
        room = max(largest(words.part, wide, room_over(words, field, symbol)), room)
    return min(NAME_PLAIN, room)


def _symbols(
    words: LabelWords, field: LabelField, raster: Raster, arrow: float
) -> list[LabelSymbol]:
    """Give all symbols that a label's height takes."""
    at_end = words.stripe if words.stripe and words.stripe.end != "top" else None
    texts = [words.link] if words.link else dict.fromkeys(words.payload.fits(LENGTHS))
    symbols = []
    for module in MODULES if field.height >= TALL else MODULES[1:]:
        for text in texts:
            across, up = raster.module(module)
            wide, high = (qr_side(text, side) + raster.slack for side in (across, up))
            if high > field.height:
                continue
            for lettered in (True, False) if at_end else (True,):
                stripe = (stripe_width(at_end, field) if lettered else STRIPE) if at_end else 0.0
                for footed in (False, True) if field.width < NARROW else (False,):
                    beside = stripe + (0.0 if footed else arrow) + field.margin
                    room = field.width - wide - beside
                    plan = None if footed else _plan(high, room, field)
                    symbols.append(
                        LabelSymbol(text=text, module=module, wide=wide, high=high, words=room,
                                    plan=plan, lettered=lettered, footed=footed)
                    )  # fmt: skip
    return symbols


def room_over(words: LabelWords, field: LabelField, symbol: LabelSymbol) -> float:
    """Give the height that a symbol, with its code under it, leaves to an ID across the label;
    mm."""
    stripe = STRIPE_HIGH if words.stripe and words.stripe.end == "top" else 0.0
    code = 0.0 if symbol.footed else field.margin + CODE_UP
    return field.height - field.margin - code - symbol.high - stripe


def largest(name: str, width: float, height: float) -> float:
    """Give the largest letters in which an ID fits a room, on one line or two; mm."""
    return max(size_of(lines, width, height) for lines in ([name], break_name(name)))


def size_of(lines: list[str], width: float, height: float) -> float:
    """Give the largest letters in which lines fit a room; mm."""
    return min(12.0, height / len(lines) / EM_PER_CAP, *(
        width / text_width(line, 1.0, True) for line in lines
    ))  # fmt: skip


def _plan(high: float, words: float, field: LabelField) -> PlanStands | None:
    """Say where a label has room for a key plan with a symbol so high at its top."""
    if field.height < PLAN_FROM:
        return None
    if room_under(field.height, high, field, code=True) >= PLAN_LEAST:
        return "under"
    if words >= BAND_WORDS:
        return "beside"
    if field.height < PLAN_HIGH:
        return None
    if room_under(field.height, high, field, code=False) >= PLAN_LEAST:
        return "instead"
    return "below"


def room_under(height: float, symbol: float, field: LabelField, *, code: bool) -> float:
    """Give what symbol and code leave below them of a height; mm."""
    below = SMALL * EM_PER_CAP + field.margin if code else 0.0
    return height - symbol - below - field.margin - 0.3
