"""What a drawer is reckoned to carry."""

import pytest

from jigs.fittings.slide import KG_PER_POUND, expected_load


def test_worked_example() -> None:
    """Derived: 30 x 21 in is 4.375 ft2; at 15 lb/ft2 (KCMA A161.1, second hand) 66 lb, 29.8
    kg."""
    area = 30 * 21 / 144
    assert area == 4.375
    load = expected_load(30 * 25.4, 21 * 25.4)
    assert load == pytest.approx(area * 15 * KG_PER_POUND)
    assert (round(load, 1), round(load / KG_PER_POUND)) == (29.8, 66)


def test_a_square_foot() -> None:
    """15 lb (KCMA A161.1, second hand); the foot is 304.8 mm, the pound 0.45359237 kg, both
    by definition."""
    assert expected_load(304.8, 304.8) == pytest.approx(15 * 0.45359237)
