"""Where the boxes of a wall stand: x along the wall, from the left, seen from the room.

A box without an x of its own follows the one before it. Wall boxes hang in a row of their own
above the others.

>>> from jigs.job import BoxSpec
>>> boxes = [BoxSpec(id=name, kind="base", width=600, height=720, depth=560, above_floor=100)
...          for name in ("B1", "B2")]
>>> place_boxes(boxes)
{'B1': 0.0, 'B2': 600.0}
"""

from collections.abc import Iterable, Sequence
from itertools import pairwise

from jigs.job import BoxSpec

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

    Boxes inferred from a bare list stand nowhere, and have no neighbours.
    """
    places = place_boxes(boxes)
    rows: dict[tuple[str, bool], list[BoxSpec]] = {}
    for box in boxes:
        if not box.inferred:
            rows.setdefault(row_of(box), []).append(box)
    pairs = []
    for row in rows.values():
        for left, right in pairwise(sorted(row, key=lambda box: places[box.id])):
            if abs(places[left.id] + left.width - places[right.id]) <= TOUCHING:
                pairs.append((left, right))
    return tuple(pairs)
