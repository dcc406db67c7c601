"""How far a shelf sags: a board on two supports under an even load.

The middle of a beam that rests freely on both ends goes down by 5 w L^4 / (384 E I) (a standard
formula of beam theory); a shelf's I is width x thickness^3 / 12, and its width cancels against
the load it carries. A shelf screwed at its ends sags less: the sum is on the safe side. It leaves
out the shelf's own weight, and what a lasting load adds in time, which can be as much again (Wood
Handbook, on creep; from memory).

>>> round(sag(span=1000.0, thickness=18.0, modulus=MODULI["particleboard"]), 1)
7.0
"""

from collections.abc import Mapping
from math import cbrt

from jigs.given.job import SideMaterial

SHELF_LOAD = 15 * 4.4482216152605 / 304.8**2
"""What a shelf is to bear: 15 lb/ft2, in N/mm2 (KCMA A161.1, second hand; pound-force and foot
exact by definition)."""
LEAST_STRAIGHT = 300.0
"""A shelf that sags by one part of its length in so many looks straight (common practice: 1 mm
in 300)."""
MODULI: Mapping[SideMaterial, float] = {
    "plywood": 6960.0,
    "mdf": 3590.0,
    "particleboard": 2760.0,
    "solid": 8500.0,
}
"""Modulus of elasticity in bending, N/mm2: the lower end of each range of Wood Handbook
FPL-GTR-190, table 12-1 (plywood, MDF, particleboard) and, for solid wood, the softest of the usual
ones of its table 5-3, eastern white pine. Published, but put down here from memory."""


def beam_deflection(*, load: float, span: float, modulus: float, inertia: float) -> float:
    """Give how far the middle of a beam on two supports goes down under an even load.

    `load` along the beam, N/mm; `inertia` mm4; any other units that agree do as well.
    """
    squared = span * span
    return 5 * load * squared * squared / (384 * modulus * inertia)


def sag(*, span: float, thickness: float, modulus: float, load: float = SHELF_LOAD) -> float:
    """Give how far a shelf sags in its middle; mm, N/mm2."""
    return beam_deflection(load=load, span=span, modulus=modulus, inertia=thickness**3 / 12)


def longest_straight(*, thickness: float, modulus: float, load: float = SHELF_LOAD) -> float:
    """Give the longest shelf of a board that still looks straight; mm (derived)."""
    return thickness * cbrt(32 * modulus / (5 * load * LEAST_STRAIGHT))


def least_thickness(*, span: float, modulus: float, load: float = SHELF_LOAD) -> float:
    """Give the thinnest board of which a shelf so long still looks straight; mm (derived)."""
    return span / longest_straight(thickness=1.0, modulus=modulus, load=load)
