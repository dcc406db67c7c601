"""What boxes do to their neighbours: sight lines beside and below, doors hinged back to back, and
what stands at the ends of a wall."""

from collections.abc import Sequence

from jigs.box.parts import Front
from jigs.checks.corners import check_corners
from jigs.checks.deeper import check_deeper
from jigs.checks.hardware import by_memory
from jigs.checks.room import check_room
from jigs.checks.sameplace import check_same_place
from jigs.checks.sightlines import check_pull_lines, check_sight_line
from jigs.checks.wallends import check_wall_ends
from jigs.given.job import BoxSpec, Job
from jigs.given.walls import neighbours, place_job
from jigs.ground.finding import warning
from jigs.ground.geometry import SLACK
from jigs.ground.lengths import Unit, format_length, telling_unit
from jigs.ground.problems import Problem
from jigs.room.gapsmade import at_end

PARTED = 20.0
"""Two fronts this near to each other over a partition are neighbours, also as measured; mm
(common practice, no source)."""


def check_neighbours(job: Job, fronts: Sequence[Front]) -> tuple[Problem, ...]:
    """List what the fronts of a job do to those beside and below them, and at the walls' ends."""
    boxes, unit = job.boxes, job.shown
    by_box: dict[str, list[Front]] = {box.id: [] for box in boxes}
    for front in fronts:
        by_box[front.box].append(front)
    problems: list[Problem] = []
    places = place_job(job)
    for left, right in neighbours(boxes, places):
        for one in at_end(by_box[left.id], "right"):
            for other in at_end(by_box[right.id], "left"):
                problems.extend(check_sight_line(left, one, right, other, unit))
                gap = one.gaps.right + other.gaps.left
                problems.extend(_check_hinges(left, one, right, other, gap, unit))
    for box in boxes:
        for one, other in _across_partitions(by_box[box.id]) if box.columns else ():
            problems.extend(check_sight_line(box, one, box, other, unit))
            gap = other.place.x - one.place.x - one.width
            problems.extend(_check_hinges(box, one, box, other, gap, unit))
    problems.extend(check_pull_lines(boxes, by_box, places, unit))
    problems.extend(check_wall_ends(job, boxes, by_box))
    problems.extend(check_corners(job, boxes, by_box))
    problems.extend(check_deeper(job, boxes, by_box))
    problems.extend(check_same_place(job))
    problems.extend(check_room(job, by_box))
    return tuple(problems)


def _across_partitions(fronts: Sequence[Front]) -> list[tuple[Front, Front]]:
    """Give the fronts of a box that meet over a partition, the left one first."""
    return [
        (one, other)
        for one in fronts
        for other in fronts
        if one.place.column + one.place.span == other.place.column
        and 0.0 <= other.place.x - one.place.x - one.width < PARTED
    ]


def _check_hinges(
    left: BoxSpec, one: Front, right: BoxSpec, other: Front, gap: float, unit: Unit
) -> tuple[Problem, ...]:
    if (
        one.hinged != "right"
        or other.hinged != "left"
        or "inset" in (one.place.overlay, other.place.overlay)
    ):
        return ()
    if one.least_reveal is None or other.least_reveal is None:
        return ()
    bottom, top = left.above_floor + one.place.y, left.above_floor + one.place.y + one.height
    low, high = right.above_floor + other.place.y, right.above_floor + other.place.y + other.height
    needed = one.least_reveal.width + other.least_reveal.width
    if min(top, high) <= max(bottom, low) or gap >= needed - SLACK:
        return ()
    unit = telling_unit(unit, gap, needed)
    unsure = one.least_reveal.open or other.least_reveal.open
    return (
        warning(
            "hinge-to-hinge",
            other.id,
            f"it and {one.id} are hinged back to back with a gap of {format_length(gap, unit)}; "
            f"both need {by_memory(format_length(needed, unit), open=unsure)} to open",
            "enlarge the reveals between them, or change one hand",
            (one.id,),
        ),
    )
