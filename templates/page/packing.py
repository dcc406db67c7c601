"""Rectangles laid side by side in a room: whether they all find room, and where.

Rectangles are never turned: what is written on a card is read upright. They are laid one after the
other, each as low and then as far left as it goes, upon and against what lies already; in the
order given, and where that fails the highest, the widest and the largest first.

>>> place_sizes(((60.0, 20.0), (60.0, 20.0), (38.0, 50.0)), (100.0, 50.0), 2.0)
((0.0, 0.0), (0.0, 22.0), (62.0, 0.0))
>>> place_sizes(((60.0, 20.0), (60.0, 20.0), (39.0, 50.0)), (100.0, 50.0), 2.0) is None
True
"""

from bisect import insort
from collections.abc import Iterator, Sequence

from templates.page.space import Box

Size = tuple[float, float]
"""Width and height, mm."""
PackOrder = tuple[int, ...]
"""Which rectangle is laid first, which next."""

SLIP = 1e-6
"""Lengths that differ by less are the same, mm."""


def place_sizes(sizes: Sequence[Size], room: Size, gap: float) -> tuple[Size, ...] | None:
    """Lay rectangles in a room, `gap` mm between them; give the lower left corner of each, or None
    where no order of a few finds room for all."""
    # With the gap at its right and above, each rectangle may touch the next.
    grown = [(width + gap, height + gap) for width, height in sizes]
    for order in orders(sizes):
        places = lay([grown[row] for row in order], (room[0] + gap, room[1] + gap))
        if places is not None:
            found = dict(zip(order, places, strict=True))
            return tuple(found[row] for row in range(len(sizes)))
    return None


def lay(sizes: Sequence[Size], room: Size) -> tuple[Size, ...] | None:
    """Lay rectangles one after the other, where they may touch; give the lower left corner of
    each, or None where one finds no room."""
    laid: list[Box] = []
    xs, ys = [0.0], [0.0]
    for size in sizes:
        place = _lowest(size, room, laid, xs, ys)
        if place is None:
            return None
        x, y = place
        laid.append((x, y, x + size[0], y + size[1]))
        insort(xs, x + size[0])
        insort(ys, y + size[1])
    return tuple((x, y) for x, y, _, _ in laid)


def orders(sizes: Sequence[Size]) -> Iterator[PackOrder]:
    """The orders in which rectangles are laid, each once."""
    rows = range(len(sizes))
    seen: set[PackOrder] = set()
    for order in (
        tuple(rows),
        tuple(sorted(rows, key=lambda row: -sizes[row][1])),
        tuple(sorted(rows, key=lambda row: -sizes[row][0])),
        tuple(sorted(rows, key=lambda row: -sizes[row][0] * sizes[row][1])),
    ):
        if order not in seen:
            seen.add(order)
            yield order


def _lowest(
    size: Size, room: Size, laid: Sequence[Box], xs: Sequence[float], ys: Sequence[float]
) -> Size | None:
    """The lowest place for a rectangle upon and against what lies already, whose ends are `xs` and
    `ys` in order, and of those the one furthest left."""
    width, height = size
    right, upper = room[0] - width + SLIP, room[1] - height + SLIP
    for y in ys:
        if y > upper:
            return None
        for x in xs:
            if x > right:
                break
            end, top = x + width - SLIP, y + height - SLIP
            for x0, y0, x1, y1 in laid:
                if x0 < end and x < x1 - SLIP and y0 < top and y < y1 - SLIP:
                    break
            else:
                return x, y
    return None
