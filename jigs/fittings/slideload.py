"""The load that a drawer is reckoned to carry: its area at 15 lb/ft2, without the box itself.

The worked example, 30 x 21 in: 4.375 square feet, 66 lb.

>>> load = expected_load(30 * 25.4, 21 * 25.4)
>>> round(load, 1), round(load / KG_PER_POUND)
(29.8, 66)
"""

KG_PER_POUND = 0.45359237
"""Exact by definition."""

DRAWER_LOAD = 15 * KG_PER_POUND / 304.8**2
"""What a drawer is to bear on its area; kg/mm2 (KCMA A161.1, second hand: 15 lb/ft2)."""


def expected_load(width: float, length: float) -> float:
    """Give what a drawer box of this outside width and length (mm) is reckoned to carry; kg."""
    return width * length * DRAWER_LOAD
