"""The least gap that a front needs beside it to open.

A hinge edge moves into its gap by the hinge's own least reveal; a free edge swings out by delta, a
drawer passes; a door or a drawer passes under a counter. What never moves needs nothing of its own.

>>> round(swing_of_edge(454.0, tab=5.0, thickness=19.05), 3)
0.404
"""

from math import hypot

from jigs.box.parts import Front
from jigs.fittings.hinge import USUAL_TAB, cup_from_edge
from jigs.given.hardware import HingeRecord
from jigs.given.job import COUNTER_BOXES, BoxSpec, Job
from jigs.ground.geometry import SLACK

LEAST_EDGE = 0.5
"""Left between a door's free edge, as it swings, and what stands there; mm (common practice, no
source)."""
LEAST_DRAWER = 1.0
"""Left between a drawer and what stands beside it; mm (common practice, no source)."""
UNDER_COUNTER = 3.0
"""Least reveal above a front that closes under a counter; mm (common practice, no source)."""
HIGHEST_COUNTER = 1050.0
"""An appliance's place higher than this has no counter over it; mm (common practice, no source)."""


def swing_of_edge(width: float, *, tab: float, thickness: float) -> float:
    """Give how far a door's free edge swings out beyond its place, mm (derived).

    Conservative: about a fixed pivot at the rim of the cup.
    """
    radius = width - tab
    return hypot(radius, thickness) - radius


def least_at_free_edge(front: Front) -> float:
    """Give the least gap at a door's free edge; mm."""
    swing = swing_of_edge(front.width, tab=_tab(front), thickness=front.make.thickness)
    return LEAST_EDGE + swing


def held_from_edge(front: Front, job: Job) -> float:
    """Give how far from its hinge edge a door is held, at the middle of its cups; mm."""
    record = job.hinges.get(front.hinge.record) if front.hinge else None
    return cup_from_edge(record or HingeRecord(name=""), _tab(front))


def _tab(front: Front) -> float:
    return front.hinge.tab if front.hinge else USUAL_TAB


def stands_under_counter(box: BoxSpec) -> bool:
    """Tell whether a counter lies on a box, or over the appliance whose place it is."""
    low = box.above_floor + box.height <= HIGHEST_COUNTER + SLACK
    return box.kind in COUNTER_BOXES or (
        box.kind == "open" and low and any(front.kind == "panel" for front in box.fronts)
    )
