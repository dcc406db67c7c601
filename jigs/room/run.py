"""What takes room along a wall: boxes with their end panels, appliances, and the fillers at both
ends; each with its place along the wall and its height above the floor.

A run reaches from the filler at its left to the filler at its right. Boxes, panels, appliances
and gaps between them add up to it; so a wall is too short, or a gap is left, by the difference
between its length and its run.

>>> Taken(id="B1", wall="north", left=41, right=641, bottom=100, top=820).overlaps(
...     Taken(id="B2", wall="north", left=641, right=1241, bottom=100, top=820))
False
"""

from collections.abc import Sequence
from dataclasses import dataclass

from jigs.given.job import BoxSpec, Job
from jigs.given.walls import lines_of, place_job
from jigs.given.wallspec import WallSpec
from jigs.ground.geometry import SLACK, Hand

SAME = 0.5
"""Less than this is no overlap, and no gap to fill; mm (common practice, no source)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Taken:
    """The room that a box with its panels, or an appliance, takes on a wall; mm.

    `line_left`, `line_right`: how far beyond the wall's ends the line is from which it counts: of
    a wall box at an inside corner.
    """

    id: str
    wall: str
    left: float
    right: float
    bottom: float
    top: float
    appliance: bool = False
    line_left: float = 0.0
    line_right: float = 0.0

    @property
    def begins(self) -> float:
        """Its left end from its own line at the left; mm."""
        return self.left + self.line_left

    @property
    def ends(self) -> float:
        """Its right end, as its own line at the right leaves it room; mm."""
        return self.right - self.line_right

    def overlaps(self, other: "Taken") -> bool:
        """Tell whether two stand in the same place, by more than a trifle."""
        return (
            self.wall == other.wall
            and min(self.right, other.right) - max(self.left, other.left) > SAME + SLACK
            and min(self.top, other.top) - max(self.bottom, other.bottom) > SAME + SLACK
        )


def taken_by(job: Job) -> tuple[Taken, ...]:
    """Give the room that each box and each appliance of a job takes, in the job's order."""
    places, panel, lines = place_job(job), job.material.front, lines_of(job)

    def line(box: BoxSpec, hand: Hand) -> float:
        return lines.get((box.wall, hand), 0.0) if box.kind == "wall" else 0.0

    boxes = [
        Taken(
            id=box.id, wall=box.wall,
            left=places[box.id] - (panel if box.panels.left else 0.0),
            right=places[box.id] + box.width + (panel if box.panels.right else 0.0),
            bottom=box.above_floor, top=box.above_floor + box.height,
            line_left=line(box, "left"), line_right=line(box, "right"),
        )
        for box in job.boxes
        if not box.inferred
    ]  # fmt: skip
    appliances = [
        Taken(
            id=appliance.id, wall=wall.name, left=places[appliance.id],
            right=places[appliance.id] + appliance.width, bottom=appliance.above_floor,
            top=appliance.above_floor + appliance.height, appliance=True,
        )
        for wall in job.walls
        for appliance in wall.appliances
        if appliance.id in places
    ]  # fmt: skip
    return (*boxes, *appliances)


def run_of(wall: WallSpec, taken: Sequence[Taken]) -> float:
    """Give how much of a wall its boxes, panels, appliances, fillers and the gaps between them
    take, from end to end; 0 where nothing stands; mm."""
    own = [each for each in taken if each.wall == wall.name]
    if not own:
        return 0.0
    wide = max(each.ends for each in own) - min(each.begins for each in own)
    return wall.left.filler + wide + wall.right.filler
