"""How a plate's holes guide: a punch through 2 mm, or the bit itself.

>>> from jigs.ground.geometry import Hole
>>> guide_diameter(Hole(purpose="cup", face="back", x=22.5, y=100, diameter=35, depth=13))
2.0
>>> guide_diameter(Hole(purpose="shelf", face="inside", x=37, y=100, diameter=5.0, depth=12))
5.0
"""

from jigs.ground.geometry import SLACK, Hole, Purpose

PUNCHED = 2.0
"""A hole that an awl or a transfer punch of this size goes through; mm (our choice)."""
BIT_GUIDED: frozenset[Purpose] = frozenset({"shelf", "clearance"})
"""Rows of many holes, and holes with play: there the plate guides the bit. All else must be true
to 0.5 or less, and a bit soon widens its hole in hardboard (common practice, no source)."""


def is_guided(hole: Hole) -> bool:
    """Tell whether the bit goes through the plate's own hole."""
    return hole.purpose in BIT_GUIDED or hole.diameter <= PUNCHED + SLACK


def guide_diameter(hole: Hole) -> float:
    """Give the diameter of a plate's hole for a hole in the part, mm."""
    return hole.diameter if is_guided(hole) else PUNCHED
