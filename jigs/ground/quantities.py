"""Weights, loads, densities and temperatures with a unit of their own: `"100 lb"`, `"70 F"`.

A number without a unit is in the unit of its key: kg, kg/m3, degrees Celsius. Lengths have a
grammar of their own (`jigs.ground.lengths`).

>>> parse_quantity("50 F", "C")
10.0
>>> parse_quantity("100 lb", "kg"), parse_quantity("12.5 kg", "kg"), parse_quantity("3 ft", "kg")
(45.359237, 12.5, None)
"""

import re
from collections.abc import Mapping
from fractions import Fraction
from functools import cache
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import pint

UNITS: Mapping[str, Mapping[str, str]] = {
    "kg": {"kg": "kg", "g": "g", "lb": "lb", "oz": "oz"},
    "kg/m3": {"kg/m3": "kg/m**3", "g/cm3": "g/cm**3", "lb/ft3": "lb/ft**3"},
    "C": {"C": "degC", "F": "degF"},
}
"""By the unit of a key, those that may be written there, and what the units library calls them."""

_WRITTEN = r"([0-9]+(?:[.,][0-9]+)?) *([a-zA-Z]+(?:/[a-z]+3)?)"


def parse_quantity(text: str, unit: str) -> float | None:
    """Read a number with its unit, in `unit`; None where that is no such quantity."""
    found = re.fullmatch(_WRITTEN, text.strip())
    known = UNITS.get(unit, {})
    if not found or found[2] not in known:
        return None
    number = Fraction(found[1].replace(",", "."))
    if found[2] == unit:
        return float(number)
    return float(_registry().Quantity(number, known[found[2]]).to(known[unit]).magnitude)


@cache
def _registry() -> "pint.UnitRegistry[Fraction]":
    """Give the units library's definitions, read once for all quantities of a job."""
    # Imported here: the library costs more than the rest of a short command.
    import pint

    return pint.UnitRegistry(non_int_type=Fraction)
