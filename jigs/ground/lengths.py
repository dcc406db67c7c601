"""Lengths as people write them, as they are shown, and when one is beyond its limit.

A length is a number with or without a unit: `12`, `12.5`, `12,5`, `3/4`, `15 3/4`, `15-3/4`,
`5' 6 1/2"`, with Unicode fractions and prime signs. The text is matched whole against a grammar
of our own and nothing is evaluated. A bare number takes the job's unit. Inside the tool a length is
a float in mm. Limits of what was measured are judged as they are printed, in tenths of a mm.

>>> parse_length("17 7/8", "in")
454.025
>>> format_length(454.025, "in")
'17 7/8 in (454.0 mm)'
>>> is_beyond(1.64, 1.6), is_beyond(-1.66, 1.6)
(False, True)
"""

import math
import re
import unicodedata
from collections.abc import Iterable
from decimal import Decimal
from fractions import Fraction
from functools import lru_cache
from itertools import pairwise, zip_longest
from typing import Literal

from jigs.ground.errors import LengthError

Unit = Literal["mm", "in"]
"""How a job reads bare numbers, and how lengths are shown."""

BareUnit = Literal["mm", "cm", "in"]
"""What bare numbers may be in: a list's column may be in cm, a job never is."""

MM_PER_INCH = 25.4
"""Exactly: NIST SP 811, Appendix B."""

SQUARE_FEET = 1e6 / (12 * MM_PER_INCH) ** 2
"""Square feet in a square metre."""

LONGEST = 10_000.0
"""Nothing in a kitchen is longer: 10 m, in mm."""

MOST_CHARACTERS = 64

ALLOWED = (
    "allowed: a number such as 12, 12.5, 3/4 or 15 3/4, with or without mm, cm, m, in or ft, "
    "or 5' 6 1/2\""
)

# What the unit is called by the person -> its name in the table below.
_UNITS = {
    "mm": "mm", "cm": "cm", "m": "m",
    "in": "in", '"': "in", "inch": "in", "inches": "in",
    "ft": "ft", "'": "ft", "foot": "ft", "feet": "ft",
}  # fmt: skip

# In mm, exactly; 25.4: NIST SP 811, Appendix B; 12 inches to the foot: the same.
_MM_PER = {
    "mm": Fraction(1), "cm": Fraction(10), "m": Fraction(1000),
    "in": Fraction(str(MM_PER_INCH)), "ft": 12 * Fraction(str(MM_PER_INCH)),
}  # fmt: skip

# Signs that keyboards and word processors put in place of the plain ones.
_PLAIN = str.maketrans(
    {
        "′": "'", "’": "'", "″": '"', "”": '"',
        "−": "-", "‐": "-", "‑": "-", "–": "-",
        "⁄": "/", "\u00a0": " ", "\u2009": " ", "\u202f": " ", "\t": " ",
    }
)  # fmt: skip

_FRACTION = r"[0-9]+ ?/ ?[0-9]+"
_NUMBER = rf"(?:[0-9]+(?:-| +){_FRACTION}|{_FRACTION}|[0-9]+[.,][0-9]+|\.[0-9]+|[0-9]+)"
_UNIT = "|".join(sorted(_UNITS, key=len, reverse=True))
_SINGLE = re.compile(rf"(?P<number>{_NUMBER}) *(?P<unit>{_UNIT})?")
_FEET_INCHES = re.compile(
    rf"(?P<feet>[0-9]+) *(?:'|ft|foot|feet)(?: *-? *)(?P<inches>{_NUMBER}) *(?:\"|in|inch|inches)"
)
_TAPE = (2, 4, 8, 16, 32, 64)
"""The fractions of an inch that a tape or a rule shows."""

_THOUSANDS = re.compile(r"[0-9],[0-9]{3}(?![0-9])")
_BARE_UNIT = re.compile(_UNIT)


@lru_cache(maxsize=8192)  # every second length of a job is written as one before it
def parse_length(text: str, unit: BareUnit, *, signed: bool = False, zero: bool = False) -> float:
    """Give the length written in `text` in mm; a bare number is in `unit`.

    A size is over 0; `zero` allows 0 too, `signed` anything. Raises LengthError for what does
    not follow the grammar or is over 10 m.
    """
    if len(text) > MOST_CHARACTERS:
        raise LengthError(
            f"not a length ({show_value(text)} given): more than {MOST_CHARACTERS} characters; "
            f"{ALLOWED}"
        )
    given = show_value(text)
    plain = _plain(text, given)
    negative = plain.startswith("-")
    body = plain[1:].lstrip() if plain[:1] in ("-", "+") else plain
    value = _match(body, unit, given)
    return _within_limits(-value if negative else value, given, signed=signed, zero=zero)


def parse_value(
    value: object, unit: BareUnit, *, signed: bool = False, zero: bool = False
) -> float:
    """Give a length in mm from a text, or from a number that was read as one.

    Numbers are in `unit`. Raises LengthError, also for what is neither (true, a list).
    """
    if isinstance(value, str):
        return parse_length(value, unit, signed=signed, zero=zero)
    given = show_value(value)
    if isinstance(value, bool) or not isinstance(value, int | float | Decimal):
        raise LengthError(f"not a length ({given} given); {ALLOWED}")
    number = Decimal(repr(value)) if isinstance(value, float) else Decimal(value)
    if not number.is_finite():
        raise LengthError(f"not a length ({given} given): not a finite number; {ALLOWED}")
    # Decimal("1e999999999") is short as it stands and endless as a Fraction; comparing is safe.
    if not -LONGEST <= number <= LONGEST:
        raise LengthError(_too_long(given))
    exact = Fraction(0) if -1e-9 < number < 1e-9 else Fraction(number)
    return _within_limits(exact * _MM_PER[unit], given, signed=signed, zero=zero)


def format_mm(mm: float) -> str:
    """Write a length in mm to 0.1, without the unit, halves up: `454.0`, 75.25 as `75.3`."""
    return f"{count_tenths(mm) / 10:.1f}"


def count_tenths(mm: float) -> int:
    """Give a length in whole tenths of a mm, halves up: the one rounding of all printed figures.

    A sum of such figures closes only if all are rounded alike.
    """
    return math.floor(mm * 10 + 0.5 + 1e-6)


@lru_cache(maxsize=8192)  # a job has few lengths, each written many times
def format_inches(mm: float) -> str:
    """Write a length (mm) in inches to the nearest 1/32, reduced, without the unit: `17 7/8`.

    A trailing + or - says that the true value is more or less by over 0.1 mm.
    """
    thirty_seconds = math.floor(mm / MM_PER_INCH * 32 + 0.5)
    rest = mm - thirty_seconds * MM_PER_INCH / 32
    trail = "+" if rest > 0.1 + 1e-6 else "-" if rest < -0.1 - 1e-6 else ""
    whole, part = divmod(abs(thirty_seconds), 32)
    sign = "-" if thirty_seconds < 0 else ""
    if not part:
        return f"{sign}{whole}{trail}"
    fraction = Fraction(part, 32)
    return f"{sign}{f'{whole} ' if whole else ''}{fraction}{trail}"


def format_length(mm: float, unit: Unit) -> str:
    """Write a length (mm) for the terminal, the job's unit first: `17 7/8 in (454.0 mm)`."""
    return in_both(f"{format_mm(mm)} mm", f"{format_inches(mm)} in", unit)


def format_sizes(sizes: Iterable[float], unit: Unit) -> str:
    """Write sizes (mm) in both units, each named once: `16 1/8 x 3 1/2 in (409.6 x 88.9 mm)`."""
    sizes = tuple(sizes)
    return in_both(
        f"{' x '.join(map(format_mm, sizes))} mm",
        f"{' x '.join(map(format_inches, sizes))} in",
        unit,
    )


def in_both(metric: str, inches: str, unit: Unit) -> str:
    """Give a figure in both units, the job's first, the other one in brackets."""
    return f"{inches} ({metric})" if unit == "in" else f"{metric} ({inches})"


def telling_unit(unit: Unit, *lengths: float) -> Unit:
    """Give the unit that tells lengths (mm) apart: millimetres where two of them differ, but by
    less than 1/32 in, which inches would round to one figure.

    >>> telling_unit("in", 3.0, 3.175), telling_unit("in", 1.6, 3.175), telling_unit("in", 3.0, 3.0)
    ('mm', 'in', 'in')
    """
    steps = [high - low for low, high in pairwise(sorted(lengths))]
    return "mm" if any(0.05 <= step < MM_PER_INCH / 32 - 1e-6 for step in steps) else unit


def show_value(value: object) -> str:
    """Write a value given by the user for a message: on one line, and never long."""
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, int) and value.bit_length() > 200:
        return "a number of over 60 digits"
    if isinstance(value, dict):
        return "a table"
    if isinstance(value, list):
        if not value or any(isinstance(each, list | dict) for each in value):
            return "a list" if value else "an empty list"
        shown = f"[{', '.join(map(show_value, value[:12]))}]"
    else:
        shown = repr(value[:60]) if isinstance(value, str) else str(value)
    return shown if len(shown) <= 48 else shown[:45] + "..."


def is_bare(value: object) -> bool:
    """Tell whether a length that was read is a number without a unit.

    >>> is_bare("15 3/4"), is_bare("15¾"), is_bare("15 mm"), is_bare('15"')
    (True, True, False, False)
    """
    return not isinstance(value, str) or value.strip()[-1:].isnumeric()


def ends_with_unit(text: str) -> str:
    """Give the unit that a length ends with, as it stands, "" where it has none.

    >>> ends_with_unit("597 mm"), ends_with_unit('17-7/8"'), ends_with_unit("597")
    ('mm', '"', '')
    """
    found = re.search(rf"[0-9¼-¾⅐-⅞]\s*({_UNIT}|[′’″”])$", text.strip(), re.IGNORECASE)
    return found[1] if found else ""


def is_fraction(text: str) -> bool:
    """Tell whether a length is written with a fraction.

    >>> is_fraction("15 3/4"), is_fraction("¾ in"), is_fraction("0.75")
    (True, True, False)
    """
    return any(letter in "/⁄" or unicodedata.numeric(letter, 0) % 1 for letter in text)


def _plain(text: str, given: str) -> str:
    """Give the text trimmed, in small letters, with its fancy signs replaced by the plain ones."""
    letters = []
    for letter, following in zip_longest(text, text[1:], fillvalue=" "):
        kind, _, digits = unicodedata.decomposition(letter).partition(" ")
        if kind != "<fraction>":
            letters.append(letter)
            continue
        fraction = "".join(chr(int(code, 16)) for code in digits.split())
        # The sign ⅟ is a numerator alone: its denominator follows.
        if following.isdigit() and fraction[-1].isdigit():
            raise LengthError(
                f"not a length ({given} given): a digit right behind the sign {letter}; write the "
                "fraction with a stroke, 15 3/8"
            )
        letters.append(f" {fraction}")
    return "".join(letters).translate(_PLAIN).strip(" \r\n").lower()


def _match(body: str, unit: BareUnit, given: str) -> Fraction:
    """Match the whole body and give its value in mm."""
    if _THOUSANDS.search(body):
        raise LengthError(
            f"not a length ({given} given): a comma before three digits may mean a decimal or "
            "thousands; write a point for a decimal, and nothing between thousands"
        )
    if found := _SINGLE.fullmatch(body):
        number = _number(found["number"], given)
        return number * _MM_PER[_UNITS[found["unit"]] if found["unit"] else unit]
    if found := _FEET_INCHES.fullmatch(body):
        feet, inches = int(found["feet"]), _number(found["inches"], given)
        if inches >= 12:
            more, rest = divmod(inches, 12)
            raise LengthError(
                f"not a length ({given} given): 12 or more inches behind feet; "
                f"{feet + more}' {_written(rest)}\"?"
            )
        return feet * _MM_PER["ft"] + inches * _MM_PER["in"]
    raise LengthError(f"not a length ({given} given){_reason(body)}; {ALLOWED}")


def _reason(body: str) -> str:
    """Say what is peculiar about a text that did not match."""
    if not body:
        return ": empty"
    if _BARE_UNIT.fullmatch(body):
        return ": a unit without a number"
    if body.startswith(("nan", "inf")) and not body.startswith("inch"):
        return ": not a finite number"
    return ""


def _number(text: str, given: str) -> Fraction:
    """Give the value of a matched number; raises LengthError for a fraction that no tape shows."""
    if "/" not in text:
        return Fraction(text.replace(",", "."))
    whole, fraction = re.fullmatch(rf"(?:([0-9]+)[- ]+)?({_FRACTION})", text).groups()  # type: ignore[union-attr]
    above, below = (int(part) for part in fraction.split("/"))
    if below == 0:
        raise LengthError(f"not a length ({given} given): the denominator is 0")
    if below not in _TAPE:
        near = [f"{above}/{tape}" for tape in _TAPE if str(below) in str(tape) and above < tape]
        meant = f"; {_either(near)}?" if near else ""
        raise LengthError(
            f"not a length ({given} given): no tape shows {below} parts of an inch, but 2, 4, 8, "
            f"16, 32 and 64{meant}; any other is written as a decimal"
        )
    if above >= below:
        meant = f"; {_either(_apart(whole, str(above), below))}?"
        raise LengthError(f"not a length ({given} given): a fraction of 1 or more{meant}")
    return Fraction(int(whole or 0)) + Fraction(above, below)


def _apart(whole: str | None, above: str, below: int) -> list[str]:
    """Write what a fraction of 1 or more may have been: run together with its whole, or just so.

    >>> _apart(None, "61", 4), _apart("15", "13", 8)
    (['6 1/4', '15 1/4'], ['16 5/8'])
    """
    cuts = range(1, len(above)) if whole is None else ()
    halves = [(above[:cut], above[cut:]) for cut in cuts]
    meant = [
        f"{first} {second}/{below}"
        for first, second in halves
        if not second.startswith("0") and int(second) < below
    ]
    return [*meant, _written(int(whole or 0) + Fraction(int(above), below))]


def _written(number: Fraction) -> str:
    """Write a number as a tape shows it: `16 5/8`."""
    whole, rest = divmod(number, 1)
    return f"{whole} {rest}" if whole and rest else str(rest or whole)


def _either(words: list[str]) -> str:
    return " or ".join(words)


def _within_limits(value: Fraction, given: str, *, signed: bool, zero: bool) -> float:
    """Give an exact length as float mm, once it is known to be a size that is meant."""
    if abs(value) > LONGEST:
        raise LengthError(_too_long(given))
    if value < 0 and not signed:
        raise LengthError(f"a size cannot be negative ({given} given)")
    if value == 0 and not (zero or signed):
        raise LengthError(f"a size must be over 0 ({given} given)")
    return float(value)


def _too_long(given: str) -> str:
    return f"longer than 10 m ({given} given); is the unit right?"


CAREFUL = 0.5
"""How well careful work keeps a box's sizes; mm (common practice, no source)."""

TENTH = 0.1
"""The last figure of a printed length; mm."""


def is_beyond(off: float, limit: float) -> bool:
    """Tell whether a size is off by more than the limit, either way; mm."""
    return count_tenths(abs(off)) > count_tenths(limit)
