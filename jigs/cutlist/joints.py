"""Joints: the boards that a piece ends at, and what is in them where its screws would go.

A board keeps the places of its drilled holes, on both faces, and of the screws that came before:
two shelves at one height on both sides of a partition would meet in it screw to screw.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field

from jigs.box.parts import Side
from jigs.cutlist.piece import Block
from jigs.cutlist.pockets import FROM_HOLE, find_unclear, is_clear, place_pockets
from jigs.ground.geometry import SLACK
from jigs.ground.lengths import format_mm


@dataclass(slots=True, kw_only=True)
class Upright:
    """A side or a partition: its ID, its left and right face in the box, and what is in it, as
    places from the front edge and from the box's bottom end; mm."""

    id: str
    left: float
    right: float
    holes: list[tuple[float, float]] = field(default_factory=list)
    screws: list[tuple[float, float]] = field(default_factory=list)


@dataclass(frozen=True, slots=True, kw_only=True)
class Unclear:
    """A screw without a clear place: its piece, its place, and the boards it comes too near in."""

    piece: str
    place: float
    boards: tuple[str, ...]

    @property
    def words(self) -> str:
        """Its place in words, mm."""
        return f"{self.piece} at {format_mm(self.place)}"


def stand_uprights(
    blocks: Sequence[tuple[str, Block]], sides: Sequence[Side]
) -> tuple[Upright, ...]:
    """Give the upright boards of a box with the holes of all their drilled faces."""
    uprights = []
    for name, block in blocks:
        holes = [
            (hole.x, hole.y + side.ends.base)
            for side in sides
            if side.board == name
            for hole in side.holes
        ]
        uprights.append(Upright(id=name, left=block.x, right=block.x + block.dx, holes=holes))
    return tuple(uprights)


@dataclass(slots=True, kw_only=True)
class Joints:
    """The joints of a box, as they are made one after the other."""

    uprights: tuple[Upright, ...]
    unclear: list[Unclear] = field(default_factory=list)

    def screw(self, piece: str, block: Block, *, on_edge: bool) -> tuple[float, ...]:
        """Place the screws at both ends of a piece that fills a block: from the front edge, or
        from its lower edge where it stands on edge; mm."""
        ends = [
            upright
            for upright in self.uprights
            if abs(upright.right - block.x) < SLACK
            or abs(upright.left - block.x - block.dx) < SLACK
        ]
        line = block.z + block.dz / 2 if on_edge else block.y + block.dy / 2
        start = block.y if on_edge else block.z

        def near(upright: Upright) -> list[tuple[float, float]]:
            found = [*upright.holes, *upright.screws]
            turned = [(y, z - line) if on_edge else (z, y - line) for z, y in found]
            return [(along, off) for along, off in turned if abs(off) < FROM_HOLE]

        holes = [hole for upright in ends for hole in near(upright)]
        width = block.dy if on_edge else block.dz
        places = place_pockets(width, holes, start)
        shift = block.y if on_edge else 0.0
        self.unclear += [
            Unclear(
                piece=piece,
                place=place - shift,
                boards=tuple(u.id for u in ends if not is_clear(place, near(u))),
            )
            for place in find_unclear(places, width, holes)
        ]
        for upright in ends:
            upright.screws += [(line, place) if on_edge else (place, line) for place in places]
        return tuple(place - shift for place in places)
