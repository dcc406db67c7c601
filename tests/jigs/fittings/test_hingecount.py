"""How many hinges a door needs."""

import pytest

from jigs.fittings.placing import HingeTables, beyond_tables, compute_mass, count_hinges


@pytest.mark.parametrize(
    ("width", "height", "mass", "count"),
    [  # both tables: common practice, no source
        (450, 900, 6, 2), (450, 900.1, 6, 3), (450, 900, 6.1, 3), (450, 1500, 12, 3),
        (450, 2000, 17, 4), (450, 2400, 22, 5), (450, 300, 17.1, 5),
        (600, 900, 6, 2), (600.1, 900, 6, 3), (601, 399, 6, 2), (601, 400, 6, 3),
        (450, 2401, 6, 6), (450, 800, 22.1, 6), (700, 2300, 21, 6), (700, 2500, 21, 6),
    ],
)  # fmt: skip
def test_count(width: float, height: float, mass: float, count: int) -> None:
    """The larger of height and weight, one more when wide, six beyond the tables."""
    assert count_hinges(width=width, height=height, mass=mass) == count


def test_golden_tall_door() -> None:
    """0.60 x 2.10 x 0.01905 x 750 = 18.0 kg: five by weight, five by height."""
    mass = compute_mass(600, 2100, 19.05, 750)
    assert mass == pytest.approx(0.60 * 2.10 * 0.01905 * 750)
    assert round(mass, 1) == 18.0
    assert count_hinges(width=600, height=2100, mass=mass) == 5
    assert not beyond_tables(2100, mass)
    assert beyond_tables(2100, 22.1)


def test_other_limits_are_data() -> None:
    """Doors of 1000 on two hinges are met too (common practice, no source): a job may say so."""
    tables = HingeTables(by_height=((1000, 2), (1600, 3)), by_mass=((6.8, 2), (13.6, 3)))
    assert count_hinges(width=450, height=1000, mass=6.8, tables=tables) == 2
