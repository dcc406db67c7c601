"""Pocket screws: where they stand along a joint.

The first 50 from the edge, then steps of 150 to 200, two at least to a joint; a screw keeps 25
from every 5 mm hole of the boards it is in (common practice, no source). On a joint too narrow
for that they stand at its quarters. A screw that would come too near to a hole moves along the
joint until it is clear.

>>> [round(place, 1) for place in place_pockets(559.2)]
[50.0, 203.1, 356.1, 509.2]
>>> place_pockets(100.0)
(25.0, 75.0)
>>> place_pockets(559.2, [(37.0, 0.0)])[0]
62.0
"""

import math
from collections.abc import Sequence

from jigs.ground.geometry import SLACK

FROM_EDGE = 50.0
STEP = 200.0
FROM_HOLE = 25.0
NARROW = 150.0
"""A joint narrower than this has its screws at its quarters; mm (common practice, no source)."""
NUDGE = 4.0
"""A screw moves by this much at a time to come clear of a hole; mm."""
POCKET = 40.0
"""A pocket reaches this far from the end of its board; mm (common practice, no source)."""

Holes = Sequence[tuple[float, float]]
"""Holes near a joint: their place along it, and their distance from the line of its screws; mm."""


def place_pockets(
    width: float, holes: Holes = (), start: float = 0.0, apart: float = FROM_HOLE
) -> tuple[float, ...]:
    """Place the screws of a joint `width` long that begins at `start`; mm.

    Each keeps `apart` from every hole. One that finds no clear place within half a step is left
    where it would be without the holes: `find_unclear` tells.
    """
    if width < NARROW:
        places = [width / 4, 3 * width / 4]
    else:
        steps = max(1, math.ceil((width - 2 * FROM_EDGE) / STEP - SLACK))
        pitch = (width - 2 * FROM_EDGE) / steps
        places = [FROM_EDGE + number * pitch for number in range(steps + 1)]
    least = min(FROM_EDGE, width / 4) / 2
    low, high = start + least, start + width - least
    own = _between(width, apart)
    placed: list[float] = []

    def fits(place: float) -> bool:
        return (
            low - SLACK <= place <= high + SLACK
            and is_clear(place, holes, apart)
            and all(abs(place - other) >= own - SLACK for other in placed)
        )

    for place in places:
        usual = start + place
        if not fits(usual):
            others = [*_beside(holes, apart), *(other + own for other in placed), low, high]
            usual = next((moved for moved in _moves(usual, others) if fits(moved)), usual)
        placed.append(usual)
    return tuple(placed)


def is_clear(place: float, holes: Holes, apart: float = FROM_HOLE) -> bool:
    """Tell whether a screw keeps its distance from all holes."""
    return all(math.hypot(place - along, off) >= apart - SLACK for along, off in holes)


def find_unclear(
    places: Sequence[float], width: float, holes: Holes, apart: float = FROM_HOLE
) -> tuple[float, ...]:
    """Give the screws of a joint that come too near to a hole, or to the screw before them."""
    own = _between(width, apart)
    return tuple(
        place
        for number, place in enumerate(places)
        if not is_clear(place, holes, apart)
        or any(abs(place - other) < own - SLACK for other in places[:number])
    )


def _between(width: float, apart: float) -> float:
    """Give the least distance between two screws of a joint; mm."""
    return min(apart, width / 4)


def _beside(holes: Holes, apart: float) -> list[float]:
    """Give the places that are just clear of one hole."""
    return [
        along + sign * math.sqrt(apart**2 - off**2)
        for along, off in holes
        if abs(off) < apart
        for sign in (1, -1)
    ]


def _moves(place: float, others: Sequence[float]) -> list[float]:
    """Give the places to try, nearest first: the given ones, and small steps."""
    steps = range(1, 1 + math.ceil(STEP / 2 / NUDGE))
    stepped = [place + sign * number * NUDGE for number in steps for sign in (1, -1)]
    near = [moved for moved in (*others, *stepped) if abs(moved - place) <= STEP / 2 + SLACK]
    return sorted(near, key=lambda moved: (round(abs(moved - place), 6), -moved))
