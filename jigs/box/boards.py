"""The boards that carry holes: both sides of a box and its partitions, each drilled face apart.

A partition is drilled from both faces. Its left face is the right side of the column before it,
its right face the left side of the next. Places on it are counted from its own bottom end, which
stands on the bottom panel.

Two holes that start from both faces at the same place must not meet: 2 x depth + 1 <= thickness,
or they are bored right through once, or they keep apart (common practice).
"""

import math
from collections.abc import Mapping, Sequence

from msgspec import Struct
from msgspec.structs import replace

from jigs.box.carcass import name_partition
from jigs.box.columns import Columns
from jigs.ground.geometry import HANDS, SLACK, Fitting, Hand, Hole, Purpose, moved
from jigs.ground.grid import COINCIDE, WOOD_BETWEEN

BETWEEN_FACES = 1.0
"""Wood left between two holes bored towards each other; mm (common practice)."""

FaceKey = tuple[int, Hand]
"""A drilled face: the column it belongs to, and on which side of that column it stands."""


class BoardFace(Struct, frozen=True, kw_only=True):
    """One drilled face of a board. `x`: its left side in the box; `base`: its bottom end above the
    box's; `partition` its number from the left, 0 for a side of the box; mm."""

    column: int
    hand: Hand
    board: str
    height: float
    depth: float
    thickness: float
    x: float = 0.0
    base: float = 0.0
    partition: int = 0

    @property
    def key(self) -> FaceKey:
        """Its column and side."""
        return self.column, self.hand

    def lowered(self, fittings: Sequence[Fitting]) -> tuple[Fitting, ...]:
        """Give fittings counted from the box's bottom end as counted from the board's own."""
        return tuple(moved(fitting, up=-self.base) for fitting in fittings)


def find_faces(columns: Columns) -> tuple[BoardFace, ...]:
    """Give all drilled faces of a box, column by column, left before right."""
    faces: list[BoardFace] = []
    last = len(columns.carcasses)
    for number, carcass in enumerate(columns.carcasses, start=1):
        for hand in HANDS:
            partition = number - 1 if hand == "left" else number % last
            if not partition:
                faces.append(
                    BoardFace(
                        column=number, hand=hand, board=carcass.board(hand),
                        height=carcass.box.height, depth=carcass.box.depth, thickness=carcass.side,
                        x=0.0 if hand == "left" else carcass.box.width - carcass.side,
                    )
                )  # fmt: skip
                continue
            low, high = columns.partitions[partition - 1]
            if high > low:
                faces.append(
                    BoardFace(
                        column=number, hand=hand, partition=partition,
                        board=name_partition(carcass.box.id, partition), base=low,
                        height=high - low, depth=carcass.inside_depth,
                        thickness=carcass.partition,
                        x=carcass.inner(hand) - (carcass.partition if hand == "left" else 0.0),
                    )
                )  # fmt: skip
    return tuple(faces)


def across(key: FaceKey) -> FaceKey:
    """Give the other face of the same partition."""
    column, hand = key
    return (column + 1, "left") if hand == "right" else (column - 1, "right")


def reach_each_other(one: Hole, other: Hole, thickness: float) -> bool:
    """Tell whether holes from both faces of a board are too deep to end before each other."""
    if one.depth is None or other.depth is None:
        return True
    return one.depth + other.depth + BETWEEN_FACES > thickness + SLACK


def coincide(one: Hole, other: Hole) -> bool:
    """Tell whether two holes of one diameter stand at one place, to be bored through once."""
    same = math.hypot(one.x - other.x, one.y - other.y) <= COINCIDE + SLACK
    return same and abs(one.diameter - other.diameter) <= SLACK


def meeting(
    fittings: Sequence[Fitting], others: Sequence[Fitting], thickness: float
) -> tuple[Hole, Hole] | None:
    """Give two holes from both faces that meet without being one hole, or None."""
    for hole in (hole for fitting in fittings for hole in fitting.holes):
        for other in (hole for fitting in others for hole in fitting.holes):
            if not reach_each_other(hole, other, thickness) or coincide(hole, other):
                continue
            apart = math.hypot(hole.x - other.x, hole.y - other.y)
            if apart - (hole.diameter + other.diameter) / 2 < WOOD_BETWEEN - SLACK:
                return hole, other
    return None


def bore_through(
    face: BoardFace, on_faces: Mapping[FaceKey, Sequence[Fitting]]
) -> tuple[tuple[Fitting, ...], tuple[Purpose, ...]]:
    """Give the fittings of a face with the holes that both faces share bored through, and what
    each of these is for: `shelf` only if it takes a pin in either face."""
    mine = on_faces[face.key]
    if not face.partition:
        return tuple(mine), ()
    behind = [hole for fitting in on_faces.get(across(face.key), ()) for hole in fitting.holes]
    shared: list[Purpose] = []
    made = []
    for fitting in mine:
        holes = []
        for hole in fitting.holes:
            met = [
                other.purpose
                for other in behind
                if coincide(hole, other) and reach_each_other(hole, other, face.thickness)
            ]
            if met:
                shared.append(hole.purpose if hole.purpose != "shelf" else met[0])
                hole = replace(hole, depth=None)
            holes.append(hole)
        made.append(replace(fitting, holes=tuple(holes)))
    return tuple(made), tuple(shared)
