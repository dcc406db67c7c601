"""Where the boxes of a wall stand: x along the wall, from the left, seen from the room.

A box without an x of its own follows the one before it. Wall boxes hang in a row of their own
above the others.

>>> from jigs.job import BoxSpec
>>> boxes = [BoxSpec(id=name, kind="base", width=600, height=720, depth=560, above_floor=100)
...          for name in ("B1", "B2")]
>>> place_boxes(boxes)
{'B1': 0.0, 'B2': 600.0}
"""

from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Sequence

from jigs.geometry import SLACK
from jigs.job import BoxSpec, Hand

TOUCHING = 1.0
"""Boxes this near to each other along a wall stand side by side; mm."""


def row_of(box: BoxSpec) -> tuple[str, bool]:
    """Give the row a box belongs to: its wall, and whether it hangs."""
    return box.wall, box.kind == "wall"


def place_boxes(boxes: Iterable[BoxSpec]) -> dict[str, float]:
    """Give the left end of each box along its wall, mm, by the box's ID."""
    ends: dict[tuple[str, bool], float] = {}
    places: dict[str, float] = {}
    for box in boxes:
        x = ends.get(row_of(box), 0.0) if box.x is None else box.x
        places[box.id] = x
        ends[row_of(box)] = x + box.width
    return places


def neighbours(boxes: Sequence[BoxSpec]) -> tuple[tuple[BoxSpec, BoxSpec], ...]:
    """Give the pairs of boxes that stand side by side, the left one first.

    Their ends touch and their heights overlap, whatever row each was placed in: a tall box has
    base boxes and wall boxes beside it. Boxes inferred from a bare list stand nowhere, and have
    no neighbours.
    """
    places = place_boxes(boxes)
    walls: dict[str, list[BoxSpec]] = {}
    for box in boxes:
        if not box.inferred:
            walls.setdefault(box.wall, []).append(box)
    pairs = []
    for wall in walls.values():
        row = sorted(wall, key=lambda box: places[box.id])
        starts = [places[box.id] for box in row]
        for left in row:
            end = places[left.id] + left.width
            first, last = bisect_left(starts, end - TOUCHING), bisect_right(starts, end + TOUCHING)
            pairs += [(left, right) for right in row[first:last] if _overlap(left, right)]
    return tuple(pairs)


def _overlap(one: BoxSpec, other: BoxSpec) -> bool:
    """Tell whether two boxes stand at the same height, be it in part."""
    low = max(one.above_floor, other.above_floor)
    high = min(one.above_floor + one.height, other.above_floor + other.height)
    return one is not other and high - low > SLACK


def end_boxes(boxes: Sequence[BoxSpec], wall: str, hand: Hand) -> tuple[tuple[BoxSpec, float], ...]:
    """Give the boxes that nothing parts from one end of their wall, each with its distance, mm.

    The distance counts from where the outermost box of the wall ends: a wall box may keep further
    off than the base boxes below it.
    """
    places = place_boxes(boxes)
    standing = [box for box in boxes if box.wall == wall and not box.inferred]
    # Along the wall from the end that is meant, so that both ends are the same sum.
    near = {
        box.id: places[box.id] if hand == "left" else -places[box.id] - box.width
        for box in standing
    }
    return tuple(
        (box, near[box.id] - min(near.values()))
        for box in standing
        if not any(
            near[other.id] < near[box.id] - SLACK and _overlap(box, other) for other in standing
        )
    )
