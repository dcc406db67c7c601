"""What boxes do to their neighbours: sight lines beside and below, doors hinged back to back, and
what stands at the ends of a wall.

Pulls that an eye takes for one line may miss it by a little. Beside each other pulls stand equally
high, above each other at the same place along the wall. A difference of 0.3 to 6 mm looks like a
mistake (common practice, no source).
"""

from collections.abc import Iterator, Mapping, Sequence

from jigs.box.frontgaps import at_end
from jigs.box.parts import Front
from jigs.checks.corners import check_corners
from jigs.checks.room import check_room, check_same_place
from jigs.checks.wallends import check_deeper, check_wall_ends
from jigs.given.job import BoxSpec, Job
from jigs.given.walls import neighbours, place_job
from jigs.ground.geometry import SLACK
from jigs.ground.problems import Problem, maybe_open, warning
from jigs.room.edgelines import is_nearly


def check_sight_line(left: BoxSpec, one: Front, right: BoxSpec, other: Front) -> Iterator[Problem]:
    """Find pulls of two fronts side by side that differ a little in height."""
    here, there = _pull_height(left, one), _pull_height(right, other)
    if _looks_like(one) != _looks_like(other) or here is None or there is None:
        return
    if not is_nearly(difference := abs(here - there)):
        return
    yield warning(
        "sight-line",
        other.id,
        case="beside",
        one=other.id,
        other=one.id,
        differ=difference,
        also=(one.id,),
    )


def check_pull_lines(
    boxes: Sequence[BoxSpec],
    by_box: Mapping[str, Sequence[Front]],
    places: Mapping[str, float],
) -> Iterator[Problem]:
    """Find pulls of hanging fronts that nearly stand above those of the fronts below them.

    Below each is the highest front with a pull, and the highest of its own kind.
    """
    for box in boxes:
        if box.kind != "wall" or box.inferred:
            continue
        below = [
            (other, front)
            for other in boxes
            if other.wall == box.wall and not other.inferred
            and other.above_floor + other.height <= box.above_floor + SLACK
            for front in by_box[other.id]
        ]  # fmt: skip
        for front in by_box[box.id]:
            left, right = _span(places[box.id], front)
            under = [
                (other, lower)
                for other, lower in below
                if min(right, _span(places[other.id], lower)[1])
                - max(left, _span(places[other.id], lower)[0])
                > SLACK
            ]
            for other, lower in _highest(front, under):
                yield from _check_pair(
                    front, _pull_lines(places[box.id], front),
                    lower, _pull_lines(places[other.id], lower),
                )  # fmt: skip


def _highest(front: Front, under: Sequence[tuple[BoxSpec, Front]]) -> list[tuple[BoxSpec, Front]]:
    """Give, of each box below, the highest front with a pull and the highest of a front's kind."""
    chosen: dict[str, tuple[BoxSpec, Front]] = {}
    for other, lower in under:
        if not _pull_lines(0.0, lower):
            continue
        rivals = [
            (b, f) for b, f in under
            if b is other and f.place.column == lower.place.column
            and f.place.y > lower.place.y and _pull_lines(0.0, f)
        ]  # fmt: skip
        alike = [f for _, f in rivals if _looks_like(f) == _looks_like(lower)]
        if not rivals or (not alike and _looks_like(lower) == _looks_like(front)):
            chosen[lower.id] = (other, lower)
    return list(chosen.values())


def _check_pair(
    front: Front, lines: Sequence[float], lower: Front, others: Sequence[float]
) -> Iterator[Problem]:
    near = [abs(x - other) for x in lines for other in others if is_nearly(abs(x - other))]
    if not near:
        return
    yield warning(
        "sight-line",
        front.id,
        case="below",
        one=front.id,
        other=lower.id,
        differ=min(near),
        also=(lower.id,),
    )


def _looks_like(front: Front) -> str:
    """A false front is pulled like a drawer, and an eye takes it for one."""
    return "drawer" if front.kind == "false-front" else front.kind


def _pull_height(box: BoxSpec, front: Front) -> float | None:
    """Give the middle of a front's pull above the floor, mm."""
    ys = [hole.y for hole in front.holes if hole.purpose == "pull"]
    return box.above_floor + front.place.y + (min(ys) + max(ys)) / 2 if ys else None


def _pull_lines(start: float, front: Front) -> list[float]:
    """Give the middles of a front's pulls along the wall, its box beginning at `start`; mm."""
    found = []
    for pull in front.fittings:
        if pull.kind == "pull":
            xs = [hole.x for hole in pull.holes]
            found.append(start + front.place.x + (min(xs) + max(xs)) / 2)
    return found


def _span(start: float, front: Front) -> tuple[float, float]:
    """Give both edges of a front along the wall, mm."""
    return start + front.place.x, start + front.place.x + front.width


PARTED = 20.0
"""Two fronts this near to each other over a partition are neighbours, also as measured; mm
(common practice, no source)."""


def check_neighbours(job: Job, fronts: Sequence[Front]) -> Iterator[Problem]:
    """List what the fronts of a job do to those beside and below them, and at the walls' ends."""
    boxes = job.boxes
    by_box: dict[str, list[Front]] = {box.id: [] for box in boxes}
    for front in fronts:
        by_box[front.box].append(front)
    places = place_job(job)
    for left, right in neighbours(boxes, places):
        for one in at_end(by_box[left.id], "right"):
            for other in at_end(by_box[right.id], "left"):
                yield from check_sight_line(left, one, right, other)
                gap = one.gaps.right + other.gaps.left
                yield from _check_hinges(left, one, right, other, gap)
    for box in boxes:
        for one, other in _across_partitions(by_box[box.id]) if box.columns else ():
            yield from check_sight_line(box, one, box, other)
            gap = other.place.x - one.place.x - one.width
            yield from _check_hinges(box, one, box, other, gap)
    yield from check_pull_lines(boxes, by_box, places)
    yield from check_wall_ends(job, boxes, by_box)
    yield from check_corners(job, boxes, by_box)
    yield from check_deeper(job, boxes, by_box)
    yield from check_same_place(job)
    yield from check_room(job, by_box)


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
    left: BoxSpec, one: Front, right: BoxSpec, other: Front, gap: float
) -> Iterator[Problem]:
    if (
        one.hinged != "right"
        or other.hinged != "left"
        or "inset" in (one.place.overlay, other.place.overlay)
    ):
        return
    if one.least_reveal is None or other.least_reveal is None:
        return
    bottom, top = left.above_floor + one.place.y, left.above_floor + one.place.y + one.height
    low, high = right.above_floor + other.place.y, right.above_floor + other.place.y + other.height
    needed = one.least_reveal.width + other.least_reveal.width
    if min(top, high) <= max(bottom, low) or gap >= needed - SLACK:
        return
    yield warning(
        "hinge-to-hinge",
        other.id,
        one=other.id,
        other=one.id,
        gap=gap,
        needed=maybe_open(needed, open=one.least_reveal.open or other.least_reveal.open),
        also=(one.id,),
    )
