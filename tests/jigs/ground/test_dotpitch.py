"""Modules of whole printer dots."""

import pytest

from jigs.ground.dotpitch import dots_of_module


@pytest.mark.parametrize(
    ("dots", "scale", "module", "count"),
    [
        (203, 1.0, 0.7, 6),  # 0.7 / 0.1251 = 5.6
        (203, 1.1, 0.7, 6),  # 0.77 / 0.1251 = 6.2
        (203, 1.2, 0.7, 7),  # 0.84 / 0.1251 = 6.7
        (203, 0.9, 0.7, 5),  # 0.63 / 0.1251 = 5.0
        (203, 1.0, 0.3, 4),  # no fewer than make 0.5: 4 dots are 0.5005
        (300, 1.0, 0.5, 6),  # 5.9; 6 dots are 0.508
        (300, 1.2, 0.5, 8),  # 7.09, of which 0.09 is more than may lack
    ],
)
def test_a_module_is_the_whole_number_of_dots_nearest(
    dots: int, scale: float, module: float, count: int
) -> None:
    """Derived: module times scale over 25.4 / dots, never fewer than make 0.5 mm."""
    assert dots_of_module(dots, scale, module=module) == count
