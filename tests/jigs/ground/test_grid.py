"""The 32 mm system."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jigs.ground.geometry import Hole
from jigs.ground.grid import (
    balanced_start,
    hinge_place,
    hole_at_or_above,
    holes_agree,
    nearest_place,
)


def hole(x: float, y: float, diameter: float = 5.0) -> Hole:
    """Give a hole in a box side."""
    return Hole(purpose="plate", face="inside", x=x, y=y, diameter=diameter, depth=12.0)


@pytest.mark.parametrize(
    ("height", "start"),
    [  # recomputed: (S - 32 k) / 2
        (762.0, (762.0 - 32 * 22) / 2),
        (774.7, (774.7 - 32 * 23) / 2),
        (876.3, (876.3 - 32 * 26) / 2),
        (914.4, (914.4 - 32 * 27) / 2),
        (1066.8, (1066.8 - 32 * 32) / 2),
        (2133.6, (2133.6 - 32 * 65) / 2),
        (2286.0, (2286.0 - 32 * 70) / 2),
        (605.0, 46.5 - 16),
        (768.0, 16.0),
    ],
)
def test_start_is_balanced(height: float, start: float) -> None:
    """The grid starts equally far from both ends, as near to 16 as the pitch lets it."""
    assert balanced_start(height) == pytest.approx(start, abs=1e-9)


@pytest.mark.parametrize(
    ("height", "printed"),
    [(762, 29.0), (774.7, 19.35), (876.3, 22.15), (914.4, 25.2), (1066.8, 21.4), (2133.6, 26.8),
     (2286, 23.0)],
)  # fmt: skip
def test_start_of_usual_heights(height: float, printed: float) -> None:
    """The starts of the usual heights, derived: (height - 32 k) / 2, the least from 16 up."""
    assert balanced_start(height) == pytest.approx(printed, abs=1e-9)


@pytest.mark.parametrize("pitches", [16, 17, 18])
def test_balanced_sides_for_a_first_hole_of_46_5(pitches: int) -> None:
    """Sides of 605, 637 and 669 carry a first hole of 46.5 at both ends."""
    height = 2 * 46.5 + 32 * pitches
    assert height in (605, 637, 669)
    assert (balanced_start(height) - 46.5) % 16 == pytest.approx(0)


@given(st.floats(64, 3000))
def test_start_is_at_least_half_a_pitch_and_less_than_a_whole_one(height: float) -> None:
    """Whatever the side, the start lies from 16 to 32 and the rest is whole pitches."""
    start = balanced_start(height)
    assert 16 - 1e-4 <= start < 32 + 1e-4
    pitches = (height - 2 * start) / 32
    assert pitches == pytest.approx(round(pitches), abs=1e-6)


def test_places_straddle_two_holes() -> None:
    """Golden: holes at 83.35 and 115.35 carry a hinge at 99.35."""
    place = hinge_place(19.35, nearest_place(19.35, 101.6))
    assert place == pytest.approx((83.35 + 115.35) / 2)


def test_a_tie_goes_up() -> None:
    """Half way between two places the upper one is taken, rounding noise included."""
    assert nearest_place(19.35, 19.35 + 16 + 16) == 1
    assert nearest_place(19.35, 19.35 + 16 + 16 - 1e-5) == 1
    assert nearest_place(19.35, 19.35 + 16 + 16 - 1e-3) == 0


def test_hole_at_or_above() -> None:
    """A height on the grid stays; one just above goes up a pitch."""
    assert hole_at_or_above(19.35, 51.35) == pytest.approx(51.35)
    assert hole_at_or_above(19.35, 51.4) == pytest.approx(83.35)


@pytest.mark.parametrize(
    ("distance", "diameter", "agree"),
    [  # common practice, no source
        (0.0, 5.0, True), (0.2, 5.0, True), (0.21, 5.0, False), (12.49, 5.0, False),
        (12.5, 5.0, True), (2 + (5 + 2.5) / 2, 2.5, True), (1.9 + (5 + 2.5) / 2, 2.5, False),
        (0.0, 2.5, False),
    ],
)  # fmt: skip
def test_holes_coincide_or_keep_apart(distance: float, diameter: float, agree: bool) -> None:
    """System holes coincide within 0.2 or keep 12.5; others keep 2 of wood."""
    assert holes_agree(hole(37, 100), hole(37, 100 + distance, diameter)) is agree
