"""What two boxes side by side do to each other: sight lines, and doors hinged back to back."""

from collections.abc import Sequence

from jigs.checks.finding import warning
from jigs.geometry import SLACK
from jigs.job import BoxSpec, Unit
from jigs.lengths import format_length
from jigs.parts import Front
from jigs.problems import Problem
from jigs.walls import neighbours

NEARLY = (0.3, 6.0)
"""Pulls of neighbours that differ in height by this much look like a mistake; mm (common
practice, no source)."""


def check_neighbours(
    boxes: Sequence[BoxSpec], fronts: Sequence[Front], unit: Unit
) -> tuple[Problem, ...]:
    """List what the fronts of boxes side by side do to each other."""
    by_box: dict[str, list[Front]] = {box.id: [] for box in boxes}
    for front in fronts:
        by_box[front.box].append(front)
    problems: list[Problem] = []
    for left, right in neighbours(boxes):
        for one in _at_right_end(by_box[left.id]):
            for other in _at_left_end(by_box[right.id]):
                problems.extend(_check_sight_line(left, one, right, other, unit))
                gap = one.gap_right + other.gap_left
                problems.extend(_check_hinges(left, one, right, other, gap, unit))
    for box in boxes:
        for one, other in _across_partitions(by_box[box.id]) if box.columns else ():
            problems.extend(_check_sight_line(box, one, box, other, unit))
            problems.extend(_check_hinges(box, one, box, other, one.gap_right, unit))
    return tuple(problems)


def _at_right_end(fronts: Sequence[Front]) -> list[Front]:
    return [f for f in fronts if not any(_beside(f, other) and other.x > f.x for other in fronts)]


def _at_left_end(fronts: Sequence[Front]) -> list[Front]:
    return [f for f in fronts if not any(_beside(f, other) and other.x < f.x for other in fronts)]


def _across_partitions(fronts: Sequence[Front]) -> list[tuple[Front, Front]]:
    """Give the fronts of a box that meet over a partition, the left one first."""
    return [
        (one, other)
        for one in fronts
        for other in fronts
        if one.column + one.span == other.column
        and abs(one.x + one.width + one.gap_right - other.x) <= SLACK
    ]


def _beside(one: Front, other: Front) -> bool:
    """Whether two fronts of a box stand side by side."""
    return one is not other and max(one.y, other.y) < min(
        one.y + one.height, other.y + other.height
    )


def _looks_like(front: Front) -> str:
    """A false front is pulled like a drawer, and an eye takes it for one."""
    return "drawer" if front.kind == "false-front" else front.kind


def _pull_height(box: BoxSpec, front: Front) -> float | None:
    """Give the middle of a front's pull above the floor, mm."""
    ys = [hole.y for hole in front.holes if hole.purpose == "pull"]
    return box.above_floor + front.y + (min(ys) + max(ys)) / 2 if ys else None


def _check_sight_line(
    left: BoxSpec, one: Front, right: BoxSpec, other: Front, unit: Unit
) -> tuple[Problem, ...]:
    here, there = _pull_height(left, one), _pull_height(right, other)
    if _looks_like(one) != _looks_like(other) or here is None or there is None:
        return ()
    difference = abs(here - there)
    if not NEARLY[0] - SLACK <= difference <= NEARLY[1] + SLACK:
        return ()
    return (
        warning(
            "sight-line",
            other.id,
            f"its pull and that of {one.id} beside it differ by "
            f"{format_length(difference, unit)} in height: nearly aligned",
            "fix it, or make the difference deliberate",
            (one.id,),
        ),
    )


def _check_hinges(
    left: BoxSpec, one: Front, right: BoxSpec, other: Front, gap: float, unit: Unit
) -> tuple[Problem, ...]:
    if one.hinged != "right" or other.hinged != "left" or "inset" in (one.overlay, other.overlay):
        return ()
    if one.least_reveal is None or other.least_reveal is None:
        return ()
    bottom, top = left.above_floor + one.y, left.above_floor + one.y + one.height
    low, high = right.above_floor + other.y, right.above_floor + other.y + other.height
    needed = one.least_reveal + other.least_reveal
    if min(top, high) <= max(bottom, low) or gap >= needed - SLACK:
        return ()
    return (
        warning(
            "hinge-to-hinge",
            other.id,
            f"it and {one.id} are hinged back to back with a gap of {format_length(gap, unit)}; "
            f"both need {format_length(needed, unit)} to open",
            "enlarge the reveals between them, or change one hand",
            (one.id,),
        ),
    )
