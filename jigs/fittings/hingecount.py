"""How many hinges a door needs: by its height, its weight and its width.

The limits are common practice of the trade and vary by maker; published ones of 1000 mm for two
hinges and of 6.8, 13.6, 20.4 and 27.2 kg are met too. Both tables are data, so that another pair
can be given.

>>> count_hinges(width=454.0, height=771.5, mass=4.5)
2
"""

from dataclasses import dataclass

from jigs.given.job import FrontMaterial
from jigs.ground.geometry import SLACK

CountTable = tuple[tuple[float, int], ...]
"""Rows of an upper limit and the number of hinges up to it."""

BY_HEIGHT: CountTable = ((900.0, 2), (1500.0, 3), (2000.0, 4), (2400.0, 5))
"""Door height up to, mm, and hinges (common practice, no source)."""
BY_MASS: CountTable = ((6.0, 2), (12.0, 3), (17.0, 4), (22.0, 5))
"""Door mass up to, kg, and hinges (common practice, no source)."""
MOST = 6
"""Hinges of a door beyond both tables; it comes with a warning (common practice)."""
WIDE = 600.0
"""A door wider than this, mm, gets one hinge more (common practice) ..."""
WIDE_FROM_HEIGHT = 400.0
"""... if it is at least this high, mm."""
DENSITIES: dict[FrontMaterial, float] = {
    "mdf": 750.0, "hardwood": 720.0, "softwood": 500.0, "plywood": 650.0,
}  # fmt: skip
"""Densities in kg/m3, used where the job states none (MDF: common practice; the others: from
memory, on the heavy side of the kinds sold for fronts)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class HingeTables:
    """The two tables that decide how many hinges a door gets."""

    by_height: CountTable = BY_HEIGHT
    by_mass: CountTable = BY_MASS


COMMON_TABLES = HingeTables()


def compute_mass(width: float, height: float, thickness: float, density: float) -> float:
    """Give the mass of a slab front in kg; lengths in mm, density in kg/m3."""
    return width * height * thickness * 1e-9 * density


def look_up(table: CountTable, value: float) -> int | None:
    """Give the number of the first row that reaches `value`; None beyond the table."""
    return next((count for limit, count in table if value <= limit + SLACK), None)


def beyond_tables(height: float, mass: float, tables: HingeTables = COMMON_TABLES) -> bool:
    """Tell whether a door is higher or heavier than the tables reach."""
    return look_up(tables.by_height, height) is None or look_up(tables.by_mass, mass) is None


def count_hinges(
    *, width: float, height: float, mass: float, tables: HingeTables = COMMON_TABLES
) -> int:
    """Give the number of hinges: the larger of the two tables, one more for a wide door.

    mm and kg. Beyond either table it is 6, and the door deserves a warning.
    """
    by_height = look_up(tables.by_height, height)
    by_mass = look_up(tables.by_mass, mass)
    if by_height is None or by_mass is None:
        return MOST
    wide = width > WIDE + SLACK and height >= WIDE_FROM_HEIGHT - SLACK
    return max(by_height, by_mass) + (1 if wide else 0)
