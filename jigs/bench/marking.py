"""Marking through: the front is marked through the clearance holes of its drawer box.

The box is bored first and clamped on the front, or pressed on it in its opening; its own bit,
turned by hand in its holes, marks the front. The two patterns then meet by construction.
"""

from dataclasses import dataclass

from jigs.box.drawerbox import DrawerBox
from jigs.box.parts import Front
from jigs.fittings.fixing import CLEAR_OF_PULL
from jigs.ground.geometry import SLACK, Hole, mirror_x

MARKED_WITHIN = 0.05
"""A hole in the front is marked through one in its box that lies this near; mm."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Marks:
    """Where a drawer box stands on the back of its front, as seen from the back, mm: in from the
    left end, in from the right end, up from the bottom edge. Through its holes the front is
    marked: x = `in_left` + `width` - the hole's x in the box, y = `up` + its y there."""

    box: str
    in_left: float
    in_right: float
    up: float
    width: float
    """The drawer box's outside width."""
    clear_of_pull: float | None = None
    """What its holes keep from the pull's screws, where its maker bored them: to be measured."""
    maker_bored: bool = False
    """Whether its maker bored it: where its holes stand is not known."""

    @property
    def corners(self) -> tuple[tuple[float, float], tuple[float, float]]:
        """Its left and its right lower corner, as seen from the back; mm."""
        return (self.in_left, self.up), (self.in_left + self.width, self.up)


def marks_of(front: Front, *, pilots: bool = False) -> Marks | None:
    """Say where a drawer box stands on its front; None where nothing is marked through it, neither
    through the holes of this job nor through its maker's own. With `pilots` the former stand on
    the front themselves."""
    box = front.drawer
    if box is None or front.withheld or not _stands_on(front, box):
        return None
    if not box.maker_bored and (pilots or not marked_holes(front)):
        return None
    pulled = any(hole.purpose == "pull" for hole in front.holes)
    return Marks(
        box=box.id,
        in_left=mirror_x(box.x + box.width, front.width),
        in_right=box.x,
        up=box.y,
        width=box.width,
        clear_of_pull=CLEAR_OF_PULL if box.maker_bored and pulled else None,
        maker_bored=box.maker_bored,
    )


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


def _stands_on(front: Front, box: DrawerBox) -> bool:
    """Tell whether the lower corners of a drawer box lie on its front, so that paper can place
    it there."""
    right = front.width - box.x - box.width
    return min(box.x, right, box.y) >= -SLACK
