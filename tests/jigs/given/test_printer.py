"""A printer's measured bars: what they correct, and which measurements cannot be right."""

import pytest

from jigs.given.printer import BARS, Printer, find_faults, skew_of


def test_factors_are_nominal_over_measured() -> None:
    """A 200 mm bar that measures 199.4 asks for 200 / 199.4 = 1.0030 (derived)."""
    printer = Printer(name="garage", across=180.0, along=199.4)
    assert printer.scale_across == 1.0
    assert printer.scale_along == pytest.approx(200 / 199.4)
    assert round(printer.scale_along, 4) == 1.0030


def test_inch_bars_have_nominal_lengths_of_their_own() -> None:
    """7 and 8 in are 177.8 and 203.2 mm (1 in = 25.4 mm, NIST SP 811)."""
    assert BARS["in"] == (7 * 25.4, 8 * 25.4)
    printer = Printer(name="garage", across=7 * 25.4, along=8 * 25.4, bars="in")
    assert (printer.scale_across, printer.scale_along) == (1.0, 1.0)


@pytest.mark.parametrize(
    ("across", "along", "bars", "words"),
    [
        (199.6, 180.2, "mm", "exchanged"),
        (203.0, 177.9, "in", "exchanged"),
        (7.09, 7.87, "mm", "inches typed for millimetres"),
        (180 * 25.4 / 1.01, 200 * 25.4, "in", "millimetres typed for inches"),
        (18.0, 20.0, "mm", "centimetres"),
        (180 * 0.97, 200 * 0.9, "mm", "8 % is the most"),
        (180 * 1.09, 200, "mm", "8 % is the most"),
        (177.8, 203.2, "mm", "the other two bars"),
    ],
)
def test_what_cannot_be_right_is_told(across: float, along: float, bars: str, words: str) -> None:
    """Exchanged axes, other units, other bars and too much error are each named."""
    printer = Printer(name="x", across=across, along=along, bars="in" if bars == "in" else "mm")
    assert words in " ".join(find_faults(printer))


@pytest.mark.parametrize("error", [-0.079, -0.03, 0.0, 0.003, 0.079])
def test_errors_up_to_8_percent_are_corrected(error: float) -> None:
    """What is drawn at the factor comes out at its nominal length."""
    across, along = 180 / (1 + error), 200 / (1 + error)
    printer = Printer(name="x", across=across, along=along)
    assert find_faults(printer) == ()
    assert across * printer.scale_across == pytest.approx(180)
    assert along * printer.scale_along == pytest.approx(200)


def test_skew_is_told_from_half_a_millimetre() -> None:
    """The diagonals of the frame are alike; 0.5 is what measuring leaves."""
    assert skew_of((200.0, 200.5)) == 0.0
    assert skew_of((199.0, 200.0)) == pytest.approx(1.0)
