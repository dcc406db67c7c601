"""Which box of its wall a box is, counted from the left as seen from the room.

What hangs is counted by itself, above what stands on the floor.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from jigs.given.job import BoxSpec, Job
from jigs.given.walls import place_job, row_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Along:
    """A box's place along its wall."""

    box: BoxSpec
    number: int
    """From the left, from 1, among those that hang or those that stand."""
    hangs: bool
    height: float | None
    """Of its underside above the floor, where it hangs and the job says so; mm."""


_last: list[tuple[Job, Mapping[str, Along]]] = []
"""The job last asked about: it is too large to be hashed for every part, so it is recognised by
identity."""


def along_wall(job: Job, box: str | None) -> Along | None:
    """Give the place of a box by its ID; None where it belongs to no wall, or stands nowhere."""
    if not _last or _last[0][0] is not job:
        _last[:] = [(job, _count(job))]
    return None if box is None else _last[0][1].get(box)


def _count(job: Job) -> dict[str, Along]:
    left = place_job(job)
    placed = [box for box in job.boxes if box.wall and not box.inferred]
    placed.sort(key=lambda box: (left[box.id], box.above_floor))
    found: dict[str, Along] = {}
    counted: dict[tuple[str, bool], int] = {}
    for box in placed:
        row = row_of(box)
        counted[row] = counted.get(row, 0) + 1
        said = row[1] and f"box.{box.id}.above_floor" not in job.assumed
        found[box.id] = Along(
            box=box, number=counted[row], hangs=row[1], height=box.above_floor if said else None
        )
    return found
