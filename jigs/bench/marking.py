"""Marking through: the front is marked through the clearance holes of its drawer box.

The box is bored first and clamped on the front, or pressed on it in its opening; its own bit,
turned by hand in its holes, marks the front. The two patterns then meet by construction.
"""

from jigs.box.drawerbox import DrawerBox
from jigs.box.parts import Front
from jigs.ground.geometry import SLACK, Hole

MARKED_WITHIN = 0.05
"""A hole in the front is marked through one in its box that lies this near; mm."""


def marked_holes(front: Front) -> tuple[Hole, ...]:
    """Give the holes of a front that are marked through the clearance holes of its drawer box: all
    its fixing holes that have one behind them, where the box stands on the front."""
    box = front.drawer
    if box is None or not _stands_on(front, box):
        return ()
    behind = [(box.x + hole.x, box.y + hole.y) for hole in box.holes]
    return tuple(
        hole
        for hole in front.holes
        if hole.purpose == "front-fixing"
        and any(
            abs(hole.x - x) <= MARKED_WITHIN and abs(hole.y - y) <= MARKED_WITHIN for x, y in behind
        )
    )


def is_marked_through(front: Front) -> bool:
    """Tell whether the place of a drawer box is what its front gets: holes are marked through it,
    those of this job or its maker's own."""
    box = front.drawer
    if box is None or front.withheld:
        return False
    return bool(marked_holes(front)) or (box.maker_bored and _stands_on(front, box))


def _stands_on(front: Front, box: DrawerBox) -> bool:
    """Tell whether the lower corners of a drawer box lie on its front, so that paper can place
    it there."""
    right = front.width - box.x - box.width
    return min(box.x, right, box.y) >= -SLACK
