"""Moisture and movement of wood, against the Wood Handbook (FPL-GTR-190, 2010)."""

import tomllib
from importlib.resources import files
from typing import get_args

import pytest

from jigs.given.build import Species
from jigs.room.wood import change_of, coefficient, is_valid, moisture_in

HUMIDITY = (20, 30, 40, 50, 60, 70, 80)
TABLE_4_2 = {
    50: (4.6, 6.3, 7.9, 9.5, 11.2, 13.4, 16.4),
    70: (4.5, 6.2, 7.7, 9.2, 11.0, 13.1, 16.0),
    90: (4.3, 5.9, 7.4, 8.9, 10.5, 12.6, 15.4),
}
"""Wood Handbook, Table 4-2: moisture in % by temperature in degrees Fahrenheit and humidity."""
TABLE_13_5: dict[Species, tuple[float, float]] = {
    "sugar maple": (0.00165, 0.00353),
    "red oak": (0.00158, 0.00369),
    "white oak": (0.00180, 0.00365),
    "black cherry": (0.00126, 0.00248),
    "yellow birch": (0.00256, 0.00338),
    "yellow-poplar": (0.00158, 0.00289),
    "eastern white pine": (0.00071, 0.00212),
    "ponderosa pine": (0.00133, 0.00216),
}
"""Wood Handbook, Table 13-5, radial and tangential; the last three from memory."""
SHRINKAGE: dict[Species, tuple[float, float]] = {
    "sugar maple": (4.8, 9.9),
    "black cherry": (3.7, 7.1),
    "yellow birch": (7.3, 9.5),
    "yellow-poplar": (4.6, 8.2),
    "eastern white pine": (2.1, 6.1),
    "ponderosa pine": (3.9, 6.2),
    "white fir": (3.3, 7.0),
}
"""Wood Handbook, Table 4-3: shrinkage from green to ovendry, radial and tangential, % (from
memory)."""


@pytest.mark.parametrize("fahrenheit", TABLE_4_2)
def test_moisture_is_that_of_the_handbook(fahrenheit: int) -> None:
    """Equation 4-5 agrees with every cell of Table 4-2 that we have, to 0.1."""
    celsius = (fahrenheit - 32) / 1.8
    for humidity, moisture in zip(HUMIDITY, TABLE_4_2[fahrenheit], strict=True):
        found = moisture_in(humidity=humidity, temperature=celsius)
        assert found == pytest.approx(moisture, abs=0.1)


@pytest.mark.parametrize("species", TABLE_13_5)
def test_coefficients_are_those_of_the_handbook(species: Species) -> None:
    """Quartersawn boards move by the radial, flatsawn ones by the tangential coefficient."""
    radial, tangential = TABLE_13_5[species]
    assert coefficient(species, "quarter") == radial
    assert coefficient(species, "flat") == tangential


@pytest.mark.parametrize("species", SHRINKAGE)
def test_coefficients_follow_from_the_shrinkage(species: Species) -> None:
    """Equation 13-3 of the handbook at 10 % of moisture, the middle of the range, gives them:
    1 / (30 * 100 / S - 30 + 10)."""
    for sawn, shrinkage in zip(("quarter", "flat"), SHRINKAGE[species], strict=True):
        expected = 1 / (30 * 100 / shrinkage - 30 + 10)
        assert coefficient(species, sawn) == pytest.approx(expected, abs=0.000006)  # type: ignore[arg-type]


def test_the_worked_example_of_the_handbook() -> None:
    """A flatsawn white fir board of 232 mm grows by 1.7 mm from 8 to 11 % (chapter 13; its start
    and coefficient from memory)."""
    grown = change_of(232.0, coefficient("white fir", "flat"), 11.0 - 8.0)
    assert grown == pytest.approx(1.7, abs=0.05)
    assert 232.0 + grown == pytest.approx(233.7, abs=0.05)


def test_two_stiles_and_a_slab_move_as_the_trade_has_it() -> None:
    """Two stiles of 57 of sugar maple grow by 1.61 in 4 %; a slab of 450 by 6.4."""
    maple = coefficient("sugar maple", "flat")
    assert change_of(2 * 57.0, maple, 4.0) == pytest.approx(114 * 0.00353 * 4)
    assert change_of(450.0, maple, 4.0) == pytest.approx(6.4, abs=0.05)


def test_it_holds_from_6_to_14_percent() -> None:
    """Table 13-5 says within which moisture it holds."""
    assert [is_valid(moisture) for moisture in (5.9, 6.0, 10.0, 14.0, 14.1)] == [
        False, True, True, True, False,
    ]  # fmt: skip


def test_every_wood_that_a_job_may_name_is_in_the_table() -> None:
    """The words of the job file and the table are the same."""
    text = files("jigs.room").joinpath("species.toml").read_text(encoding="utf-8")
    assert tuple(tomllib.loads(text)) == get_args(Species)
