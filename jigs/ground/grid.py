"""The 32 mm system: rows of 5 mm holes at a pitch of 32 in the inside of a box side.

Every height is counted from the bottom end of the side. The pitch, the 5 mm hole and the front
line 37 back from the finished front edge are common practice of the trade, no source.

>>> round(balanced_start(774.7), 4)
19.35
>>> round(hinge_place(19.35, 2), 4)
99.35
"""

import math
from collections.abc import Iterable, Sequence

from jigs.ground.geometry import SLACK, Hole

PITCH = 32.0
"""From hole to hole; mm (common practice, no source)."""
FRONT_LINE = 37.0
"""Front row, back from the finished front edge, overlay fronts; mm (common practice)."""
SYSTEM_HOLE = 5.0
"""Diameter of a system hole; mm (common practice)."""
LEAST_START = 16.0
"""A balanced start lies at least this far above the end, half a pitch; mm (common practice)."""
COINCIDE = 0.2
"""Two system holes this close together are one hole; mm (common practice)."""
APART = 12.5
"""Otherwise two system holes keep this between their centres; mm (common practice)."""
WOOD_BETWEEN = 2.0
"""Any other two holes keep this much wood between their edges; mm (common practice)."""


def balanced_start(height: float) -> float:
    """Give the first hole above the bottom end, mm, so that the top end is left alike.

    It is (S - 32 k) / 2 for the largest whole k that leaves 16 or more at each end. It never
    moves out of a panel's way: a hole that falls in a panel is simply not drilled.
    """
    pitches = math.floor((height - 2 * LEAST_START) / PITCH + SLACK)
    return (height - PITCH * pitches) / 2


def hinge_place(start: float, number: int) -> float:
    """Give the height, mm, of the grid place `number`: a plate straddles two holes."""
    return start + PITCH / 2 + PITCH * number


def nearest_place(start: float, height: float) -> int:
    """Give the number of the grid place nearest to `height`; a tie goes up."""
    return math.floor((height - start - PITCH / 2) / PITCH + 0.5 + SLACK)


def hole_at_or_above(start: float, height: float) -> float:
    """Give the lowest grid hole, mm, that is not below `height`."""
    return start + PITCH * math.ceil((height - start) / PITCH - SLACK)


def centres_agree(distance: float) -> bool:
    """Tell whether two system holes whose centres lie `distance` mm apart suit each other."""
    return distance <= COINCIDE + SLACK or distance >= APART - SLACK


def holes_agree(one: Hole, other: Hole) -> bool:
    """Tell whether two holes of one face coincide or keep apart as they must.

    Two system holes coincide within 0.2 or keep 12.5 between centres; all others keep 2 of wood
    between their edges. Within one fitting nothing is asked.
    """
    distance = math.hypot(one.x - other.x, one.y - other.y)
    if one.diameter == other.diameter == SYSTEM_HOLE:
        return centres_agree(distance)
    return distance - (one.diameter + other.diameter) / 2 >= WOOD_BETWEEN - SLACK


def first_clash(holes: Sequence[Hole], others: Iterable[Hole]) -> tuple[Hole, Hole] | None:
    """Give the first hole and its neighbour that do not agree, or None."""
    for other in others:
        for hole in holes:
            if not holes_agree(hole, other):
                return hole, other
    return None
