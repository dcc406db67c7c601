"""Joints: the boards that a piece ends at, and where pocket screws stand along them.

The first 50 from the edge, then steps of 150 to 200, two at least to a joint; a screw keeps 25
from every 5 mm hole of the boards it is in (common practice, no source). On a joint too narrow
for that they stand at its quarters. A screw that would come too near to a hole moves along the
joint until it is clear.

>>> [round(place, 1) for place in place_pockets(559.2)]
[50.0, 203.1, 356.1, 509.2]
>>> place_pockets(100.0)
(25.0, 75.0)
>>> place_pockets(559.2, [(37.0, 0.0)])[0]
62.0

A board keeps the places of its drilled holes, on both faces, and of the screws that came before:
two shelves at one height on both sides of a partition would meet in it screw to screw.
"""

import math
from collections.abc import Sequence

from msgspec import Struct, field

from jigs.box.parts import Side
from jigs.cutlist.piece import Block
from jigs.ground.geometry import SLACK
from jigs.ground.lengths import format_mm

FROM_EDGE = 50.0
STEP = 200.0
FROM_HOLE = 25.0
NARROW = 150.0
"""A joint narrower than this has its screws at its quarters; mm (common practice, no source)."""
NUDGE = 4.0
"""A screw moves by this much at a time to come clear of a hole; mm."""
POCKET = 40.0
"""A pocket reaches this far from the end of its board; mm (common practice, no source)."""

Holes = Sequence[tuple[float, float]]
"""Holes near a joint: their place along it, and their distance from the line of its screws; mm."""


def place_pockets(
    width: float, holes: Holes = (), start: float = 0.0, apart: float = FROM_HOLE
) -> tuple[float, ...]:
    """Place the screws of a joint `width` long that begins at `start`; mm.

    Each keeps `apart` from every hole. One that finds no clear place within half a step is left
    where it would be without the holes: `find_unclear` tells.
    """
    if width < NARROW:
        places = [width / 4, 3 * width / 4]
    else:
        steps = max(1, math.ceil((width - 2 * FROM_EDGE) / STEP - SLACK))
        pitch = (width - 2 * FROM_EDGE) / steps
        places = [FROM_EDGE + number * pitch for number in range(steps + 1)]
    least = min(FROM_EDGE, width / 4) / 2
    low, high = start + least, start + width - least
    own = _between(width, apart)
    placed: list[float] = []

    def fits(place: float) -> bool:
        return (
            low - SLACK <= place <= high + SLACK
            and is_clear(place, holes, apart)
            and all(abs(place - other) >= own - SLACK for other in placed)
        )

    for place in places:
        usual = start + place
        if not fits(usual):
            others = [*_beside(holes, apart), *(other + own for other in placed), low, high]
            usual = next((moved for moved in _moves(usual, others) if fits(moved)), usual)
        placed.append(usual)
    return tuple(placed)


def is_clear(place: float, holes: Holes, apart: float = FROM_HOLE) -> bool:
    """Tell whether a screw keeps its distance from all holes."""
    return all(math.hypot(place - along, off) >= apart - SLACK for along, off in holes)


def find_unclear(
    places: Sequence[float], width: float, holes: Holes, apart: float = FROM_HOLE
) -> tuple[float, ...]:
    """Give the screws of a joint that come too near to a hole, or to the screw before them."""
    own = _between(width, apart)
    return tuple(
        place
        for number, place in enumerate(places)
        if not is_clear(place, holes, apart)
        or any(abs(place - other) < own - SLACK for other in places[:number])
    )


def _between(width: float, apart: float) -> float:
    """Give the least distance between two screws of a joint; mm."""
    return min(apart, width / 4)


def _beside(holes: Holes, apart: float) -> list[float]:
    """Give the places that are just clear of one hole."""
    return [
        along + sign * math.sqrt(apart**2 - off**2)
        for along, off in holes
        if abs(off) < apart
        for sign in (1, -1)
    ]


def _moves(place: float, others: Sequence[float]) -> list[float]:
    """Give the places to try, nearest first: the given ones, and small steps."""
    steps = range(1, 1 + math.ceil(STEP / 2 / NUDGE))
    stepped = [place + sign * number * NUDGE for number in steps for sign in (1, -1)]
    near = [moved for moved in (*others, *stepped) if abs(moved - place) <= STEP / 2 + SLACK]
    return sorted(near, key=lambda moved: (round(abs(moved - place), 6), -moved))


class Upright(Struct, kw_only=True):
    """A side or a partition: its ID, its left and right face in the box, and what is in it, as
    places from the front edge and from the box's bottom end; mm."""

    id: str
    left: float
    right: float
    holes: list[tuple[float, float]] = field(default_factory=list)
    screws: list[tuple[float, float]] = field(default_factory=list)


class Unclear(Struct, frozen=True, kw_only=True):
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


class Joints(Struct, kw_only=True):
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
