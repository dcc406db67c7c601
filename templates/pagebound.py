"""How many pages some cards need at the least, told without laying them.

Each card gets a weight, such that no page can hold cards of more than 1 in all: then the sum of
the weights is a lower bound. The part of a page that a card covers is such a weight, and so is
every product of two dual feasible functions, of its width and of its height as parts of the
page's (S. P. Fekete, J. Schepers: New classes of fast lower bounds for bin packing problems,
2001; from memory). What the words take is counted as a card that is there already.
"""

import math
from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass

from templates.packing import SLIP, Rooms, Size

STEPS = (0, 1, 2, 3, 4)
"""The functions tried for widths and for heights: the part itself, then in so many steps."""


@dataclass(frozen=True, slots=True)
class Weights:
    """Several weights of each card, and what a first page holds of each kind of weight."""

    cards: tuple[tuple[float, ...], ...]
    first: tuple[float, ...]

    def least(self, cards: Collection[int], first: bool) -> int:
        """Pages that some cards need at the least, one of them a first one or not."""
        most = 0
        for weights, room in zip(self.cards, self.first, strict=True):
            total = sum(weights[card] for card in cards)
            pages = 1 + math.ceil(total - room - SLIP) if first else math.ceil(total - SLIP)
            most = max(most, pages)
        return most

    def need(
        self, cards: Collection[int], first: bool, pages: int
    ) -> tuple[float, tuple[float, ...]]:
        """Say how much the next of so many pages must take off some cards, with the weights by
        which that asks most of it."""
        best = -math.inf, self.cards[0], 1.0
        for weights, room in zip(self.cards, self.first, strict=True):
            need = sum(weights[card] for card in cards) - (pages - 1)
            hold = room if first else 1.0
            if hold - need < best[2] - best[0]:
                best = need, weights, hold
        return best[0], best[1]


def stepped(part: float, steps: int) -> float:
    """Round a part of a whole up or down, so that parts of one whole never come to more than it.

    >>> stepped(0.45, 0), stepped(0.45, 2), stepped(0.3, 2), stepped(0.6, 1)
    (0.45, 0.5, 0.0, 1.0)
    """
    whole = (steps + 1) * part
    if steps == 0 or abs(whole - round(whole)) < 1e-5:
        return part
    return math.floor(whole) / steps


def page_weights(
    shapes: Sequence[Sequence[Size]], first: Iterable[Rooms], further: Collection[Rooms]
) -> Weights:
    """Weigh cards, each given by the sizes it may be laid in, for the rooms of first and of
    further pages."""
    kinds = sorted({(room.width, room.height) for room in further})
    begin = list(first)
    cards: list[tuple[float, ...]] = []
    starts: list[float] = []
    for across in STEPS:
        for up in STEPS:
            weights = [math.inf] * len(shapes)
            start = 0.0
            for shape in kinds:
                left = max(_left(room, across, up) for room in further if _is(room, shape))
                if left < 1e-9:
                    continue
                for card, sizes in enumerate(shapes):
                    least = min(_weight(size, shape, across, up) for size in sizes)
                    weights[card] = min(weights[card], least / left)
                here = [_left(room, across, up) / left for room in begin if _is(room, shape)]
                start = max(start, *here, 0.0)
            if math.inf not in weights:
                cards.append(tuple(weights))
                starts.append(start)
    return Weights(tuple(cards), tuple(starts))


def _is(room: Rooms, shape: Size) -> bool:
    return (room.width, room.height) == shape


def _weight(size: Size, shape: Size, across: int, up: int) -> float:
    return stepped(size[0] / shape[0], across) * stepped(size[1] / shape[1], up)


def _left(rooms: Rooms, across: int, up: int) -> float:
    """What the words leave of a page at the most, in the same measure as cards."""
    shape = rooms.width, rooms.height
    taken = (
        sum(
            _weight((end - start, depth), shape, across, up)
            for (start, end), depth in zip(rooms.spans, depths, strict=True)
        )
        for depths in rooms.depths
    )
    return 1.0 - min(taken)
