"""Lengths: the grammar, what is refused and why, and how lengths are shown."""

from decimal import Decimal
from fractions import Fraction

import pint
import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from jigs.ground.errors import LengthError
from jigs.ground.lengths import (
    _MM_PER,
    Unit,
    format_inches,
    format_length,
    format_mm,
    parse_length,
    parse_value,
)
from tests.anytext import ANY

INCH = 25.4  # NIST SP 811, Appendix B: exactly


@pytest.mark.parametrize(
    ("text", "unit", "wanted"),
    [
        ("12", "mm", 12.0),
        ("12.5", "mm", 12.5),
        ("12,5", "mm", 12.5),
        ("12,3456", "mm", 12.3456),
        (".5", "in", 0.5 * INCH),
        ("12", "in", 12 * INCH),
        ("3/4", "in", 0.75 * INCH),
        ("15 3/4", "in", 15.75 * INCH),
        ("15-3/4", "in", 15.75 * INCH),
        ("15 3/4 in", "mm", 15.75 * INCH),
        ('15-3/4"', "mm", 15.75 * INCH),
        ('15 3/4 "', "mm", 15.75 * INCH),
        ("15.75 inches", "mm", 15.75 * INCH),
        ("1 inch", "mm", INCH),
        ("18 MM", "in", 18.0),
        ("45.4cm", "in", 454.0),
        ("2 m", "in", 2000.0),
        ("3 ft", "mm", 36 * INCH),
        ("3'", "mm", 36 * INCH),
        ("1 foot", "mm", 12 * INCH),
        ("2 feet", "mm", 24 * INCH),
        ("5' 6 1/2\"", "mm", 66.5 * INCH),
        ("5'6\"", "mm", 66 * INCH),
        ("5'-6 1/2\"", "mm", 66.5 * INCH),
        ("5 ft 6 1/2 in", "mm", 66.5 * INCH),
        ("15¾", "in", 15.75 * INCH),
        ("15 ¾″", "mm", 15.75 * INCH),
        ("⅞”", "mm", 0.875 * INCH),
        ("5′ 6½″", "mm", 66.5 * INCH),
        ("5’ 6½”", "mm", 66.5 * INCH),
        ("3⁄4", "in", 0.75 * INCH),
        ("⅟16", "in", INCH / 16),
        ("15 8/16", "in", 15.5 * INCH),
        ("63/64", "in", 63 * INCH / 64),
        (" 396,9\u00a0mm ", "in", 396.9),
        ("10 m", "mm", 10_000.0),
    ],
)
def test_a_length_is_read(text: str, unit: Unit, wanted: float) -> None:
    """Each form of the grammar gives its millimetres."""
    assert parse_length(text, unit) == pytest.approx(wanted, abs=1e-9)


@pytest.mark.parametrize(
    ("inches", "mm"),
    [
        # Derived: n x 25.4 / 32, exact.
        ("1/32", 0.79375),
        ("1/16", 1.5875),
        ("3/32", 2.38125),
        ("1/8", 3.175),
        ("5/32", 3.96875),
        ("3/16", 4.7625),
        ("1/4", 6.35),
        ("3/8", 9.525),
        ("1/2", 12.7),
        ("5/8", 15.875),
        ("3/4", 19.05),
        ("7/8", 22.225),
        # NIST SP 811, Appendix B (from memory): 1 in is 25.4 mm, 1 ft is 304.8 mm, exactly.
        ("1", 25.4),
        ("12", 304.8),
    ],
)
def test_fractions_of_an_inch_are_exact(inches: str, mm: float) -> None:
    """Every digit comes out, and back again."""
    assert parse_length(inches, "in") == mm
    assert format_inches(mm) == inches


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("", "empty"),
        ("   ", "empty"),
        ("mm", "a unit without a number"),
        ('"', "a unit without a number"),
        ("inch", "a unit without a number"),
        ("nan", "not a finite number"),
        ("inf", "not a finite number"),
        ("-inf mm", "not a finite number"),
        ("1/0", "the denominator is 0"),
        ("15 3/0 in", "the denominator is 0"),
        # The space left out: 15 1/4 was read, and drawn.
        ("61/4", r"a fraction of 1 or more; 6 1/4 or 15 1/4\?"),
        ("153/4 in", r"; 15 3/4 or 38 1/4\?"),
        ("1511/16", r"; 15 11/16 or 151 1/16 or 94 7/16\?"),
        ("15 13/8", r"a fraction of 1 or more; 16 5/8\?"),
        ("4/4", r"a fraction of 1 or more; 1\?"),
        ("1/3", r"no tape shows 3 parts of an inch, .*; 1/32\?"),
        ("3/6", r"; 3/16 or 3/64\?"),
        ("15 5/10", "no tape shows 10 parts"),
        ("⅓", "no tape shows 3 parts"),
        ("15½8", "a digit right behind the sign ½"),
        ("¾4 in", "a digit right behind the sign ¾"),
        ("5' 12\"", r"12 or more inches behind feet; 6' 0\"\?"),
        ("5' 14 1/2\"", r"; 6' 2 1/2\"\?"),
        ("-3", "cannot be negative"),
        ("−3", "cannot be negative"),
        ("0", "must be over 0"),
        ("0/4", "must be over 0"),
        ("10001", "longer than 10 m"),
        ("10.1 m", "longer than 10 m"),
        ("394 in", "longer than 10 m"),
        ("1,234", "a comma before three digits"),
        ("0,125", "a comma before three digits"),
        ("1,234.5 mm", "a comma before three digits"),
        ("1,234,567", "a comma before three digits"),
        ("9" * 65, "more than 64 characters"),
        ("15 3/4 / 2", "not a length"),
        ("15.5 3/4", "not a length"),
        ("15 - 3/4", "not a length"),
        ("15--3/4", "not a length"),
        ("1e3", "not a length"),
        ("1_000", "not a length"),
        ("0x10", "not a length"),
        ("1 000 mm", "not a length"),
        ("9**9**9 mm", "not a length"),
        ("5' 6", "not a length"),
        ("5.5' 6\"", "not a length"),
        ("15''", "not a length"),
        ("3 km", "not a length"),
        ("3 mm in", "not a length"),
        ("½½", "not a length"),
        ("1½/4", "not a length"),
        ("٣", "not a length"),
        ("３", "not a length"),
        ("5.", "not a length"),
        ("12\n13", "not a length"),
        ("door", "not a length"),
    ],
)
def test_anything_else_is_refused_with_the_reason(text: str, reason: str) -> None:
    """A refusal says what is wrong and shows the value."""
    with pytest.raises(LengthError, match=reason) as caught:
        parse_length(text, "mm")
    assert "given" in str(caught.value)
    assert "\n" not in str(caught.value)
    assert len(str(caught.value)) < 300


def test_negative_and_zero_where_they_make_sense() -> None:
    """A bottom reveal may be negative, a band may be 0; a size may be neither."""
    assert parse_length("-1/2", "in", signed=True) == -12.7
    assert parse_length("-15 3/4", "in", signed=True) == pytest.approx(-15.75 * INCH)
    assert parse_length("+3", "mm", signed=True) == 3.0
    assert parse_length("0", "mm", signed=True) == 0.0
    assert parse_length("0", "mm", zero=True) == 0.0
    with pytest.raises(LengthError, match="negative"):
        parse_length("-3", "mm", zero=True)
    with pytest.raises(LengthError, match="10 m"):
        parse_length("-10001", "mm", signed=True)


@pytest.mark.parametrize(
    ("value", "unit", "wanted"),
    [
        (18, "mm", 18.0),
        (18, "in", 18 * INCH),
        (Decimal("396.9"), "mm", 396.9),
        (Decimal("30.5"), "in", 30.5 * INCH),
        (18.3, "mm", 18.3),
        ("30 1/2", "in", 30.5 * INCH),
    ],
)
def test_numbers_take_the_unit_of_the_job(value: object, unit: Unit, wanted: float) -> None:
    """A number that was read as one is in the job's unit."""
    assert parse_value(value, unit) == pytest.approx(wanted, abs=1e-9)


@pytest.mark.parametrize(
    "value",
    [
        True, False, None, [16**5000], {"a": 1}, 0, -3, 10_001, 16**5000, Decimal("NaN"),
        Decimal("sNaN"), Decimal("Infinity"), Decimal("1e999999999"), Decimal("1e-999999999"),
        float("nan"), float("-inf"), 1e300, b"12",
    ],
    ids=lambda value: type(value).__name__,
)  # fmt: skip
def test_what_is_no_length_is_refused(value: object) -> None:
    """Truth values, lists, endless and absurd numbers are refused at once."""
    with pytest.raises(LengthError, match="given"):
        parse_value(value, "mm")


@given(st.text(ANY, max_size=80), st.sampled_from(["mm", "in"]), st.booleans(), st.booleans())
@example("¾" * 60, "mm", True, True)
@example("-", "mm", True, True)
@example("\x00", "mm", True, True)
@example("\ud800", "mm", True, True)
def test_no_text_raises_anything_else(text: str, unit: Unit, signed: bool, zero: bool) -> None:
    """Any text is a length within 10 m or a LengthError."""
    try:
        mm = parse_length(text, unit, signed=signed, zero=zero)
    except LengthError:
        return
    assert -10_000 <= mm <= 10_000


@given(st.text(alphabet="0123456789 /-.,'\"½¾ mcinft", max_size=20))
def test_no_text_of_likely_signs_raises_anything_else(text: str) -> None:
    """The same, among texts that look like lengths."""
    try:
        mm = parse_length(text, "mm")
    except LengthError:
        return
    assert 0 < mm <= 10_000


@given(st.integers(1, 12_598))
def test_thirty_seconds_survive_writing_and_reading(n: int) -> None:
    """A multiple of 1/32 in comes back as it was."""
    mm = parse_length(f"{n // 32} {n % 32}/32" if n % 32 else f"{n // 32}", "in")
    assert parse_length(format_inches(mm), "in") == mm
    assert parse_length(format_inches(mm) + " in", "mm") == mm


@pytest.mark.parametrize("tape", [2, 4, 8, 16, 32, 64])
def test_a_space_left_out_is_never_read_as_a_larger_fraction(tape: int) -> None:
    """`15 3/4` without its space is refused, and what was meant is offered; where the figures
    that run together are less than 1 (`1 1/16`: `11/16`) nothing can tell."""
    for whole in (*range(1, 40), 84, 96, 123):
        for part in range(1, tape):
            run = f"{whole}{part}/{tape}"
            if int(f"{whole}{part}") < tape:
                assert tape > 11
                continue
            with pytest.raises(LengthError, match="a fraction of 1 or more") as caught:
                parse_length(run, "in")
            assert f"{whole} {part}/{tape}" in str(caught.value)


@given(st.integers(1, 100_000))
def test_tenths_of_a_millimetre_survive_writing_and_reading(n: int) -> None:
    """A multiple of 0.1 mm comes back as it was."""
    assert parse_length(format_mm(n / 10), "mm") == n / 10


@given(st.floats(-10_000, 10_000))
def test_inches_are_marked_when_they_are_not_true(mm: float) -> None:
    """What is shown lies within 1/64 in, and within 0.1 mm where no sign says otherwise."""
    text = format_inches(mm)
    shown = parse_length(text.rstrip("+").removesuffix("-"), "in", signed=True)
    assert abs(mm - shown) <= INCH / 64 + 1e-6
    if text.endswith("+"):
        assert mm - shown > 0.1
    elif text.endswith("-"):
        assert shown - mm > 0.1
    else:
        assert abs(mm - shown) <= 0.1 + 1e-5


@pytest.mark.parametrize(
    ("mm", "wanted"),
    [
        (454.0, "17 7/8"),  # 17 7/8 is 454.025
        (613.0, "24 1/8+"),  # 24 1/8 is 612.775
        (612.6, "24 1/8-"),
        (457.2, "18"),
        (19.05, "3/4"),
        (0.0, "0"),
        (0.3, "0+"),
        (-12.7, "-1/2"),
        (-457.2, "-18"),
    ],
)
def test_inches_as_shown(mm: float, wanted: str) -> None:
    """Inches are the nearest 1/32, reduced, with a sign where over 0.1 mm is left."""
    assert format_inches(mm) == wanted


def test_millimetres_as_shown() -> None:
    """Millimetres are to 0.1, and nothing is minus zero."""
    assert format_mm(454.025) == "454.0"
    assert format_mm(16) == "16.0"
    assert format_mm(-0.04) == "0.0"


def test_the_unit_of_the_job_stands_first() -> None:
    """On the terminal both units stand, the job's first."""
    assert format_length(454.0, "in") == "17 7/8 in (454.0 mm)"
    assert format_length(454.0, "mm") == "454.0 mm (17 7/8 in)"


def test_each_unit_is_worth_what_the_units_library_says() -> None:
    """Exactly."""
    registry: pint.UnitRegistry[Fraction] = pint.UnitRegistry(non_int_type=Fraction)
    for unit, mm in _MM_PER.items():
        assert registry.Quantity(Fraction(1), unit).to("mm").magnitude == mm
