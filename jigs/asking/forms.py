"""The forms that an answer may have: each reads a text, or says what is wrong and what is allowed.

Ranges, words and units are those of the job file's own keys (`jigs.ground.keys`).

>>> from jigs.ground.believable import BOARD
>>> LengthForm(BOARD, "in").read("18.3 mm")
TypedLength(text='18.3 mm', mm=18.3)
>>> CountForm(20).read("-1")
Traceback (most recent call last):
jigs.ground.errors.JigsheetError: not a count ('-1' given); allowed: a whole number from 0 to 20
"""

from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise
from typing import NamedTuple, Protocol, TypeVar

from msgspec import Struct

from jigs.ground.believable import Range, measure, word_unit
from jigs.ground.errors import JigsheetError, LengthError
from jigs.ground.geometry import SLACK
from jigs.ground.lengths import MM_PER_INCH, Unit, format_length, show_value
from jigs.ground.nearest import suggest, suggest_near

AnswerT_co = TypeVar("AnswerT_co", covariant=True)
PARTED = ";"
"""What parts several answers in one line: a comma may be a decimal one."""


class Form(Protocol[AnswerT_co]):
    """How an answer is read."""

    def read(self, text: str) -> AnswerT_co:
        """Give what a text means. Raises JigsheetError, which says what is allowed."""
        ...

    @property
    def allowed(self) -> str:
        """What may be answered."""
        ...


class TypedLength(NamedTuple):
    """A length as it was given, and in mm."""

    text: str
    mm: float


def write_length(mm: float, unit: Unit) -> str:
    """Write a length (mm) as a job file of this unit has it, so that it reads back as it was.

    >>> write_length(774.7, "in"), write_length(18, "in"), write_length(454.8, "mm")
    ('30 1/2', '18 mm', '454.8 mm')
    """
    return (_write_inches(mm) if unit == "in" else "") or f"{_write_mm(mm)} mm"


def _write_mm(mm: float) -> str:
    return f"{mm:.4f}".rstrip("0").rstrip(".")


def _write_inches(mm: float) -> str:
    """Write a length (mm) in inches where a tape shows it; "" where none does."""
    parts = mm / MM_PER_INCH * 64
    if abs(parts - round(parts)) > 1e-6 or not round(parts):
        return ""
    whole, rest = divmod(Fraction(round(parts), 64), 1)
    return f"{whole} {rest}" if whole and rest else str(rest or whole)


def given(mm: float, unit: Unit) -> TypedLength:
    """Give a length (mm) as if it had been written."""
    return TypedLength(write_length(mm, unit), mm)


def as_read(length: TypedLength, unit: Unit, within: Range) -> str:
    """Write a length so that a job file of this unit reads it without a doubt: a bare number that
    would be taken for another unit's is written in mm.

    >>> gap = Range(0.5, 19)
    >>> as_read(TypedLength("1", 25.4), "in", gap), as_read(TypedLength("1/2", 12.7), "in", gap)
    ('25.4 mm', '1/2')
    """
    return f"{_write_mm(length.mm)} mm" if measure(length.text, unit, within).meant else length.text


class LengthForm(Struct, frozen=True):
    """A length; a bare number is in `unit`. `below`: it is less than that, mm."""

    within: Range
    unit: Unit
    below: float | None = None

    def read(self, text: str) -> TypedLength:
        """Give the length. Raises LengthError."""
        read = measure(text, self.unit, self.within)
        if read.meant:
            raise LengthError(word_unit(text, self.unit, self.within, read.meant))
        if self.below is not None and read.mm >= self.below - SLACK:
            raise LengthError(
                f"not less than {figure(self.below, self.unit)} ({show_value(text)} given)"
            )
        return TypedLength(text.strip(), read.mm)

    @property
    def allowed(self) -> str:
        """What may be answered."""
        none = "0, or " if self.within.zero else ""
        usual = f"{none}{self.within}"
        return f"a length, read in {self.unit} where it has no unit; {usual} is usual"


class LengthsForm(Struct, frozen=True):
    """Several lengths, parted by semicolons. `up_to`: they rise, and none lies beyond that, mm;
    `most`: how many there may be, 0 for any number."""

    within: Range
    unit: Unit
    up_to: float | None = None
    most: int = 0

    def read(self, text: str) -> tuple[TypedLength, ...]:
        """Give the lengths in their order. Raises LengthError."""
        one = LengthForm(self.within, self.unit)
        lengths = tuple(one.read(part.strip()) for part in text.split(PARTED))
        if self.most and len(lengths) > self.most:
            raise LengthError(f"more than {self.most} lengths ({show_value(text)} given)")
        if self.up_to is not None:
            if any(later.mm <= former.mm for former, later in pairwise(lengths)):
                raise LengthError(f"they do not rise from front to back ({show_value(text)} given)")
            if lengths[-1].mm > self.up_to + SLACK:
                raise LengthError(
                    f"beyond the slide, which is {figure(self.up_to, self.unit)} long "
                    f"({show_value(text)} given)"
                )
        return lengths

    @property
    def allowed(self) -> str:
        """What may be answered."""
        return f"lengths parted by {PARTED} (0 mm; 3 mm), {self.within} is usual"


class ChoiceForm(Struct, frozen=True):
    """One of some words; their first letters will do."""

    words: tuple[str, ...]

    def read(self, text: str) -> str:
        """Give the word. Raises JigsheetError."""
        said = text.strip().lower()
        begun = [word for word in self.words if said and word.startswith(said)]
        if said in self.words or len(begun) == 1:
            return said if said in self.words else begun[0]
        near = suggest_near(said, self.words)
        raise JigsheetError(
            f"not one of the words ('{text[:40]}' given); {f'{near} ' if near else ''}"
            f"allowed: {self.allowed}"
        )

    @property
    def allowed(self) -> str:
        """What may be answered."""
        return ", ".join(self.words)


class NameForm(Struct, frozen=True):
    """One of some names, as they are written."""

    names: tuple[str, ...]

    def read(self, text: str) -> str:
        """Give the name. Raises JigsheetError."""
        if text in self.names:
            return text
        raise JigsheetError(f"no such name ('{text[:40]}' given); {suggest(text, self.names)}")

    @property
    def allowed(self) -> str:
        """What may be answered."""
        return ", ".join(self.names)


class WordOrLength(Struct, frozen=True):
    """A length, or one of some words in its place."""

    words: tuple[str, ...]
    length: LengthForm

    def read(self, text: str) -> str | TypedLength:
        """Give the word or the length. Raises JigsheetError."""
        said = text.strip().lower()
        if said in self.words:
            return said
        try:
            return self.length.read(text)
        except LengthError as error:
            raise JigsheetError(f"{error}; or one of: {', '.join(self.words)}") from error

    @property
    def allowed(self) -> str:
        """What may be answered."""
        return f"{', '.join(self.words)}, or {self.length.allowed}"


class CountForm(Struct, frozen=True):
    """A whole number, 0 up to `most`."""

    most: int

    def read(self, text: str) -> int:
        """Give the number. Raises JigsheetError."""
        said = text.strip()
        if said.isascii() and said.isdigit() and len(said) < 6 and int(said) <= self.most:
            return int(said)
        raise JigsheetError(f"not a count ('{text[:40]}' given); allowed: {self.allowed}")

    @property
    def allowed(self) -> str:
        """What may be answered."""
        return f"a whole number from 0 to {self.most}"


class CellForm(Struct, frozen=True):
    """A hinge's constant, or the cell of a leaflet's table that says it: tab; plate; overlay."""

    constant: LengthForm
    tab: LengthForm
    plate: LengthForm
    overlay: LengthForm

    def read(self, text: str) -> TypedLength | tuple[TypedLength, TypedLength, TypedLength]:
        """Give the constant, or tab, plate and overlay. Raises JigsheetError."""
        parts = [part.strip() for part in text.split(PARTED)]
        if len(parts) == 1:
            return self.constant.read(text)
        if len(parts) == 3:
            forms = (self.tab, self.plate, self.overlay)
            tab, plate, overlay = (form.read(part) for form, part in zip(forms, parts, strict=True))
            return tab, plate, overlay
        raise JigsheetError(
            f"neither one length nor three ('{text[:40]}' given); allowed: {self.allowed}"
        )

    @property
    def allowed(self) -> str:
        """What may be answered."""
        return f"the constant, or tab{PARTED} plate{PARTED} overlay of one cell of the leaflet"


def size_words(sizes: Sequence[float], unit: Unit) -> str:
    """Write sizes (mm) for a question; a unit behind them all, or each with its own.

    >>> size_words([457.2, 774.7], "in"), size_words([457.2, 774.7], "mm")
    ('18 x 30 1/2 in', '457.2 x 774.7 mm')
    >>> size_words([457.2, 560], "in")
    '18 in x 560 mm'
    """
    inches = [_write_inches(size) for size in sizes]
    if unit == "in" and all(inches):
        return f"{' x '.join(inches)} in"
    if unit == "in":
        texts = zip(inches, sizes, strict=True)
        return " x ".join(f"{text} in" if text else f"{_write_mm(size)} mm" for text, size in texts)
    return f"{' x '.join(map(_write_mm, sizes))} mm"


def figure(mm: float, unit: Unit) -> str:
    """Write one length (mm) for a question."""
    return format_length(mm, unit)
