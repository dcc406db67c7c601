"""Pocket screws: where they stand along a joint.

The first 50 from the edge, then steps of 150 to 200, two at least to a joint; a screw keeps 25
from every 5 mm hole of the board it enters (common practice, no source). On a piece too narrow
for that they stand at its quarters.

>>> [round(place, 1) for place in place_pockets(559.2)]
[50.0, 203.1, 356.1, 509.2]
>>> place_pockets(100.0)
(25.0, 75.0)
"""

import math
from collections.abc import Sequence

from jigs.geometry import SLACK

FROM_EDGE = 50.0
STEP = 200.0
FROM_HOLE = 25.0
NARROW = 150.0
NUDGE = 4.0
"""A screw moves by this much at a time to come clear of a hole; mm."""


def place_pockets(
    width: float, holes: Sequence[tuple[float, float]] = (), start: float = 0.0
) -> tuple[float, ...]:
    """Place the screws of a joint `width` long that begins `start` behind the front edge; mm.

    `holes`: the system holes near it, as their place along the joint (from the front edge) and
    their distance from the line of the screws. A screw that finds no clear place within half a
    step is left where it is: the check of the parts tells.
    """
    if width < NARROW:
        places = [width / 4, 3 * width / 4]
    else:
        steps = max(1, math.ceil((width - 2 * FROM_EDGE) / STEP - SLACK))
        pitch = (width - 2 * FROM_EDGE) / steps
        places = [FROM_EDGE + number * pitch for number in range(steps + 1)]
    return tuple(_clear(start + place, holes, start, start + width) for place in places)


def is_clear(place: float, holes: Sequence[tuple[float, float]]) -> bool:
    """Tell whether a screw keeps its distance from all holes."""
    return all(math.hypot(place - along, off) >= FROM_HOLE - SLACK for along, off in holes)


def _clear(place: float, holes: Sequence[tuple[float, float]], low: float, high: float) -> float:
    least = min(FROM_EDGE, (high - low) / 4) / 2
    for number in range(1 + math.ceil(STEP / 2 / NUDGE)):
        for moved in (place + number * NUDGE, place - number * NUDGE):
            if low + least - SLACK <= moved <= high - least + SLACK and is_clear(moved, holes):
                return moved
    return place
