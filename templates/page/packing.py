"""Rectangles laid side by side on a page: whether they all find room, and where.

A room is a rectangle with a flat floor; from its ceiling hang blocks, which the words take.
Rectangles are never turned: what is written on a card is read upright.

They are laid one after the other, each as low and then as far left as it goes, upon and against
what lies already; in the order given, and where that fails the highest, the widest and the
largest first.

>>> room = CardRoom(width=100.0, height=50.0)
>>> pack(((60.0, 20.0), (60.0, 20.0), (38.0, 50.0)), room, 2.0)
((0.0, 0.0), (0.0, 22.0), (62.0, 0.0))
>>> pack(((60.0, 20.0), (60.0, 20.0), (39.0, 50.0)), room, 2.0) is None
True
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from templates.page.space import Box

Size = tuple[float, float]
"""Width and height, mm."""
Hanging = tuple[float, float, float]
"""What hangs from a ceiling: from x, to x, how far down; mm."""

SLIP = 1e-6
"""Lengths that differ by less are the same, mm."""


@dataclass(frozen=True, slots=True)
class CardRoom:
    """A place for cards, its origin at the lower left corner; mm. `blocks` go from left to
    right."""

    width: float
    height: float
    blocks: tuple[Hanging, ...] = ()

    area: float = field(init=False, compare=False)
    """What the blocks leave, mm2."""

    def __post_init__(self) -> None:
        words = sum((x1 - x0) * depth for x0, x1, depth in self.blocks)
        object.__setattr__(self, "area", self.width * self.height - words)

    def grown(self, gap: float) -> "CardRoom":
        """This room for rectangles that bring a gap along at their right and above them."""
        blocks = tuple((x0, x1 + gap, depth + gap) for x0, x1, depth in self.blocks)
        return CardRoom(self.width + gap, self.height + gap, blocks)

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


def pack(sizes: Sequence[Size], room: CardRoom, gap: float) -> tuple[Size, ...] | None:
    """Lay rectangles in a room, `gap` mm between them and from the blocks; give the lower left
    corner of each, or None where no order of a few finds room for all."""
    # With the gap at its right and above, each rectangle may touch the next.
    return lay([(width + gap, height + gap) for width, height in sizes], room.grown(gap))


def lay(sizes: Sequence[Size], room: CardRoom) -> tuple[Size, ...] | None:
    """Lay rectangles in a room, where they may touch each other and the blocks; give the lower
    left corner of each."""
    for order in _orders(sizes):
        places: dict[int, Size] = {}
        laid: list[Box] = []
        for row in order:
            place = _lowest(sizes[row], room, laid)
            if place is None:
                break
            x, y = places[row] = place
            laid.append((x, y, x + sizes[row][0], y + sizes[row][1]))
        else:
            return tuple(places[row] for row in range(len(sizes)))
    return None


def _orders(sizes: Sequence[Size]) -> Iterator[tuple[int, ...]]:
    """The orders in which rectangles are laid, each once."""
    rows = range(len(sizes))
    seen: set[tuple[int, ...]] = set()
    for order in (
        tuple(rows),
        tuple(sorted(rows, key=lambda row: -sizes[row][1])),
        tuple(sorted(rows, key=lambda row: -sizes[row][0])),
        tuple(sorted(rows, key=lambda row: -sizes[row][0] * sizes[row][1])),
    ):
        if order not in seen:
            seen.add(order)
            yield order


def _lowest(size: Size, room: CardRoom, laid: Sequence[Box]) -> Size | None:
    """The lowest place for a rectangle upon and against what lies already, and of those the one
    furthest left."""
    width, height = size
    right, upper = room.width - width + SLIP, room.height - height + SLIP
    xs = sorted({0.0, *(box[2] for box in laid), *(end for _, end, _ in room.blocks)})
    for y in sorted({0.0, *(box[3] for box in laid)}):
        if y > upper:
            return None
        for x in xs:
            if x > right:
                break
            end, top = x + width - SLIP, y + height - SLIP
            for start, stop, depth in room.blocks:
                if start < end and x < stop - SLIP and y > upper - depth:
                    break
            else:
                for x0, y0, x1, y1 in laid:
                    if x0 < end and x < x1 - SLIP and y0 < top and y < y1 - SLIP:
                        break
                else:
                    return x, y
    return None
