"""Rectangles laid side by side on a page: whether they all find room, and where.

A room is a rectangle with a flat floor; from its ceiling hang blocks, which the words take.
Rectangles are never turned: what is written on a card is read upright.

The search is exact. In any arrangement every rectangle can be pushed down and left until it
rests on the floor or another one, and leans on the left wall, a block or another one. Of
rectangles at rest there is always one with nothing above it and nothing to its right; take it
away, and the same holds for the others: so each can be laid in its final place, one after the
other, upon and against what lies there already. The search tries every such order.

>>> room = Room(width=100.0, height=50.0)
>>> pack(((60.0, 20.0), (60.0, 20.0), (38.0, 50.0)), room, 2.0)
((0.0, 0.0), (0.0, 22.0), (62.0, 0.0))
>>> pack(((60.0, 20.0), (60.0, 20.0), (39.0, 50.0)), room, 2.0) is None
True
"""

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import chain, pairwise

Size = tuple[float, float]
"""Width and height, mm."""
Block = tuple[float, float, float]
"""What hangs from a ceiling: from x, to x, how far down; mm."""

Box = tuple[float, float, float, float]
"""Left, lower, right and upper side, mm."""

SLIP = 1e-6
"""Lengths that differ by less are the same, mm."""
NARROW = 10.0
"""No card finds room between two blocks that are no further apart, mm."""


@dataclass(frozen=True, slots=True)
class Room:
    """A place for cards, its origin at the lower left corner; mm. `blocks` go from left to
    right."""

    width: float
    height: float
    blocks: tuple[Block, ...] = ()

    @property
    def area(self) -> float:
        """What the blocks leave, mm2."""
        return self.width * self.height - sum((x1 - x0) * depth for x0, x1, depth in self.blocks)

    def grown(self, gap: float) -> "Room":
        """This room for rectangles that bring a gap along at their right and above them."""
        blocks = tuple((x0, x1 + gap, depth + gap) for x0, x1, depth in self.blocks)
        return Room(self.width + gap, self.height + gap, blocks)

    def depth(self, x0: float, x1: float) -> float:
        """How far down the blocks between two places reach, mm."""
        return max(
            (depth for start, end, depth in self.blocks if start < x1 - SLIP and x0 < end - SLIP),
            default=0.0,
        )

    def holds(self, size: Size) -> bool:
        """Whether a single card finds room."""
        return any(
            size[0] <= width + SLIP and size[1] <= height + SLIP
            for width, height in self.rectangles()
        )

    def rectangles(self) -> tuple[Size, ...]:
        """The largest single cards that it can hold: for each depth, between deeper blocks."""
        found: list[Size] = []
        for depth in {0.0, *(depth for _, _, depth in self.blocks)}:
            deeper = [block for block in self.blocks if block[2] > depth + SLIP]
            starts = [0.0, *(end for _, end, _ in deeper)]
            ends = [*(start for start, _, _ in deeper), self.width]
            widest = max(end - start for start, end in zip(starts, ends, strict=True))
            if widest > SLIP:
                found.append((widest, self.height - depth))
        return tuple(found)


@dataclass(frozen=True, slots=True)
class Rooms:
    """Rooms of one size whose blocks hang at the same places and differ in how far down they
    reach: they are searched together. `rows` are their numbers among all rooms."""

    width: float
    height: float
    spans: tuple[tuple[float, float], ...]
    depths: tuple[tuple[float, ...], ...]
    rows: tuple[int, ...]
    area: float
    clear: float


def gather(rooms: Iterable[Room]) -> tuple[Rooms, ...]:
    """Put rooms together that can be searched together; of those that are nowhere roomier than
    an earlier one only the earlier one is kept."""
    alike: dict[tuple[float, float, tuple[tuple[float, float], ...]], list[tuple[int, Room]]] = {}
    for row, room in enumerate(rooms):
        spans = tuple((x0, x1) for x0, x1, _ in room.blocks)
        alike.setdefault((room.width, room.height, spans), []).append((row, room))
    found: list[Rooms] = []
    for (width, height, spans), members in alike.items():
        kept: dict[int, tuple[float, ...]] = {}
        for row, room in members:
            depths = tuple(depth for _, _, depth in room.blocks)
            if not any(_none_over(other, depths) for other in kept.values()):
                kept = {old: other for old, other in kept.items() if not _none_over(depths, other)}
                kept[row] = depths
        open_ = max([b - a for a, b in pairwise([0.0, *chain.from_iterable(spans), width])][::2])
        found.append(
            Rooms(
                width=width,
                height=height,
                spans=spans,
                depths=tuple(kept.values()),
                rows=tuple(kept),
                area=max(room.area for row, room in members if row in kept),
                clear=height
                if open_ > NARROW or not spans
                else height - min(min(depths) for depths in kept.values()),
            )
        )
    return tuple(found)


def _none_over(depths: tuple[float, ...], others: tuple[float, ...]) -> bool:
    return all(a <= b + SLIP for a, b in zip(depths, others, strict=True))


def pack(sizes: Sequence[Size], room: Room, gap: float) -> tuple[Size, ...] | None:
    """Lay rectangles in a room, `gap` mm between them and from the blocks; give the lower left
    corner of each, or None where they do not all find room."""
    # With the gap at its right and above, each rectangle may touch the next.
    (rooms,) = gather([room.grown(gap)])
    grown = [(width + gap, height + gap) for width, height in sizes]
    found = lay(grown, rooms, Patience(math.inf))
    return None if found is None else found[1]


class TooLongError(Exception):
    """More arrangements were tried than a person would wait for."""


class Patience:
    """How many arrangements may still be tried."""

    def __init__(self, left: float) -> None:
        self.left = left

    def spend(self) -> None:
        """Count one; raises TooLongError when none is left."""
        self.left -= 1
        if self.left < 0:
            raise TooLongError


def lay(
    sizes: Sequence[Size], rooms: Rooms, patience: Patience
) -> tuple[int, tuple[Size, ...]] | None:
    """Lay rectangles in one of some rooms, where they may touch each other and the blocks; give
    the room's number and the lower left corner of each. Raises TooLongError."""
    if sum(width * height for width, height in sizes) > rooms.area + SLIP:
        return None
    # Two such neither lie beside each other nor one above the other.
    tall = sum(width for width, height in sizes if height > rooms.clear / 2 + SLIP)
    wide = sum(height for width, height in sizes if width > rooms.width / 2 + SLIP)
    if tall > rooms.width + SLIP or wide > rooms.clear + SLIP:
        return None
    return _Search(sizes, rooms, patience).run()


class _Search:
    """The search for places, one rectangle after the other upon those that lie already."""

    def __init__(self, sizes: Sequence[Size], rooms: Rooms, patience: Patience) -> None:
        self.sizes, self.rooms, self.patience = sizes, rooms, patience
        self.laid: list[Box] = []
        self.places: list[Size | None] = [None] * len(sizes)
        self.seen: set[frozenset[tuple[int, int, int, int]]] = set()

    def run(self) -> tuple[int, tuple[Size, ...]] | None:
        """Give the first arrangement found."""
        number = self._lay_next(tuple(0.0 for _ in self.rooms.spans))
        if number is None:
            return None
        return number, tuple(place for place in self.places if place is not None)

    def _lay_next(self, tops: tuple[float, ...]) -> int | None:
        """Lay the rectangles that are left; `tops` says how high they stand below each block."""
        if None not in self.places:
            return self._holder(tops)
        state = frozenset(
            (round(a * 1e4), round(b * 1e4), round(c * 1e4), round(d * 1e4))
            for a, b, c, d in self.laid
        )
        if state in self.seen:
            return None
        self.seen.add(state)
        self.patience.spend()
        tried: set[Size] = set()
        for row, size in enumerate(self.sizes):
            if self.places[row] is not None or size in tried:
                continue
            tried.add(size)
            for box in self._places(size):
                higher = tuple(
                    max(top, box[3]) if start < box[2] - SLIP and box[0] < end - SLIP else top
                    for top, (start, end) in zip(tops, self.rooms.spans, strict=True)
                )
                if self._holder(higher) is None:
                    continue
                self.places[row] = box[0], box[1]
                self.laid.append(box)
                number = self._lay_next(higher)
                if number is not None:
                    return number
                self.laid.pop()
                self.places[row] = None
        return None

    def _holder(self, tops: tuple[float, ...]) -> int | None:
        """The number of the first room whose blocks end above all that lies below them."""
        height = self.rooms.height + SLIP
        for number, depths in zip(self.rooms.rows, self.rooms.depths, strict=True):
            for top, depth in zip(tops, depths, strict=True):
                if top > height - depth and top > 0.0:
                    break
            else:
                return number
        return None

    def _places(self, size: Size) -> Iterator[Box]:
        """The places where a rectangle rests on something and leans on something."""
        width, height = size
        laid, spans = self.laid, self.rooms.spans
        right, upper = self.rooms.width - width + SLIP, self.rooms.height - height + SLIP
        xs = sorted({x for x in (0.0, *(b[2] for b in laid), *(e for _, e in spans)) if x <= right})
        ys = sorted({y for y in (0.0, *(b[3] for b in laid)) if y <= upper})
        for y in ys:
            top = y + height
            for x in xs:
                end = x + width
                rests, leans = y < SLIP, x < SLIP
                for x0, y0, x1, y1 in laid:
                    if x0 < end - SLIP and x < x1 - SLIP:
                        if y0 < top - SLIP and y < y1 - SLIP:
                            break
                        rests = rests or -SLIP < y1 - y < SLIP
                    elif -SLIP < x1 - x < SLIP and y0 < top - SLIP and y < y1 - SLIP:
                        leans = True
                else:
                    if rests and (leans or any(-SLIP < edge - x < SLIP for _, edge in spans)):
                        yield x, y, end, top
