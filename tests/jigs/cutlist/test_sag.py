"""Shelves that sag: beam theory against published examples and against an integration of ours."""

from itertools import accumulate, pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from jigs.cutlist.totals import (
    LEAST_STRAIGHT,
    MODULI,
    SHELF_LOAD,
    beam_deflection,
    least_thickness,
    longest_straight,
    sag,
)

SPANS = st.floats(min_value=100.0, max_value=3000.0)
BOARDS = st.floats(min_value=6.0, max_value=40.0)
STIFF = st.sampled_from(sorted(MODULI.values()))


def test_a_steel_beam() -> None:
    """1800 lb/ft over 14 ft, I = 285 in4, E = 30e6 psi: 0.182 in.

    Derived: 5 w L4 / (384 E I) = 5 x 150 x 168^4 / (384 x 30e6 x 285).
    """
    down = beam_deflection(load=1800 / 12, span=14 * 12, modulus=30e6, inertia=285)
    assert down == pytest.approx(0.182, abs=0.0005)


def test_a_beam_of_unit_sizes() -> None:
    """With everything 1 the formula leaves 5/384 (any table of beams: simple, uniform load)."""
    assert beam_deflection(load=1, span=1, modulus=1, inertia=1) == pytest.approx(5 / 384)


def test_the_shelf_load() -> None:
    """15 lb/ft2 is 0.718 kPa: 1 psf is 47.88 Pa (published: NIST SP 811, appendix B)."""
    pascals = SHELF_LOAD * 1e6
    assert pascals == pytest.approx(15 * 47.88026, rel=1e-6)


@given(span=SPANS, thickness=BOARDS, modulus=STIFF)
@settings(max_examples=25)
def test_the_formula_is_the_integral_of_the_bending_line(
    span: float, thickness: float, modulus: float
) -> None:
    """Integrating the curvature M / EI twice, from the middle outwards, gives the same sag."""
    steps = 800
    dx = span / 2 / steps
    stiffness = modulus * thickness**3 / 12
    middles = [(i + 0.5) * dx for i in range(steps)]
    moments = [SHELF_LOAD * ((span / 2) ** 2 - x**2) / 2 for x in middles]
    slopes = [0.0, *accumulate(moment / stiffness * dx for moment in moments)]
    rise = sum((one + other) / 2 * dx for one, other in pairwise(slopes))
    assert sag(span=span, thickness=thickness, modulus=modulus) == pytest.approx(rise, rel=1e-4)


@given(span=SPANS, thickness=BOARDS, modulus=STIFF)
def test_limits_are_where_the_sag_is_its_limit(
    span: float, thickness: float, modulus: float
) -> None:
    """The longest shelf of a board, and the thinnest board of a shelf, sag 1 in 300."""
    longest = longest_straight(thickness=thickness, modulus=modulus)
    assert sag(span=longest, thickness=thickness, modulus=modulus) == pytest.approx(
        longest / LEAST_STRAIGHT
    )
    thinnest = least_thickness(span=span, modulus=modulus)
    assert sag(span=span, thickness=thinnest, modulus=modulus) == pytest.approx(
        span / LEAST_STRAIGHT
    )


def test_twice_as_long_sags_sixteen_times() -> None:
    """The sag grows with the fourth power of the length, and falls with the third of thickness."""
    short = sag(span=500.0, thickness=18.0, modulus=3590.0)
    assert sag(span=1000.0, thickness=18.0, modulus=3590.0) == pytest.approx(16 * short)
    assert sag(span=500.0, thickness=36.0, modulus=3590.0) == pytest.approx(short / 8)
