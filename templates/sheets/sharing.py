"""Which cards share a page.

The first page of a face has rooms of its own, since its words are longer. Page after page takes
the cards in order, as many as find room on it. Where the paper's area leaves hope for fewer
pages, a few other orders are tried: the largest first, the smallest first, the second or the
third to begin with.

>>> page = CardRoom(100.0, 100.0)
>>> cards = ((60.0, 60.0), (40.0, 60.0), (100.0, 38.0), (98.0, 100.0))
>>> [[card for card, _ in shared.cards] for shared in share_cards(cards, (page,), (page,), 0.0)]
[[0, 1, 2], [3]]
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from templates.page.packing import SLIP, CardRoom, Size, lay

Shapes = tuple[Size, ...]
"""The sizes in which a card may be laid, one of them."""


@dataclass(frozen=True, slots=True)
class Shared:
    """A page: whether it is one for first pages, which of those rooms it is, and where each of
    its cards has its lower left corner in it; `shapes` says in which of its sizes each is laid,
    where it has several."""

    first: bool
    room: int
    cards: tuple[tuple[int, Size], ...]
    shapes: tuple[int, ...] = ()


class NoRoomError(ValueError):
    """A card finds no room on any page; `card` says which."""

    def __init__(self, card: int) -> None:
        super().__init__(f"card {card} finds no room on any page")
        self.card = card


@lru_cache(maxsize=4096)
def one_page(sizes: tuple[Size, ...], rooms: tuple[CardRoom, ...], gap: float) -> Shared | None:
    """Lay all cards on one page, in the first of its rooms that holds them; None: in no one."""
    grown = [(width + gap, height + gap) for width, height in sizes]
    for number, room in enumerate(rooms):
        places = lay(grown, room.grown(gap))
        if places is not None:
            return Shared(True, number, tuple(enumerate(places)))
    return None


def share_cards(
    sizes: tuple[Size, ...], first: tuple[CardRoom, ...], further: tuple[CardRoom, ...], gap: float
) -> tuple[Shared, ...]:
    """Share cards among pages, in order as far as that costs no page.

    The first page is one of `first`, unless they hold no card at all; all others are of
    `further`. Raises NoRoomError for a card that no page holds.
    """
    return share_shapes(tuple((size,) for size in sizes), first, further, gap)


@lru_cache(maxsize=2048)
def share_shapes(
    shapes: tuple[Shapes, ...],
    first: tuple[CardRoom, ...],
    further: tuple[CardRoom, ...],
    gap: float,
) -> tuple[Shared, ...]:
    """Share cards that may each be laid in several sizes among pages.

    Kept, since a kitchen has many parts alike.
    """
    grown = [tuple((w + gap, h + gap) for w, h in several) for several in shapes]
    begin = tuple(room.grown(gap) for room in first)
    follow = tuple(room.grown(gap) for room in further)
    cards = range(len(shapes))
    areas = [min(width * height for width, height in several) for several in grown]
    orders = (
        sorted(cards, key=lambda card: -areas[card]),
        sorted(cards, key=lambda card: areas[card]),
        *((*cards[start:], *cards[:start]) for start in cards[1:3]),
    )
    pages = _fill(cards, grown, begin, follow, math.inf)
    assert pages is not None, "there is no limit"
    for order in orders:
        if len(pages) <= _least(sum(areas), begin, follow):
            break
        pages = _fill(order, grown, begin, follow, len(pages) - 1) or pages
    return pages


def _least(area: float, first: Sequence[CardRoom], further: Sequence[CardRoom]) -> int:
    """The pages that cards need for their area alone."""
    most = max((room.area for room in further), default=math.inf)
    begin = max((room.area for room in first), default=most)
    return 1 + math.ceil((area - begin) / most - SLIP)


def _fill(
    order: Sequence[int],
    shapes: Sequence[Shapes],
    first: Sequence[CardRoom],
    further: Sequence[CardRoom],
    most: float,
) -> tuple[Shared, ...] | None:
    """Fill page after page, each with the cards in order as far as they find room; None where
    they need more than `most`."""
    pages: list[Shared] = []
    rest = list(order)
    begins = bool(first)
    while rest:
        if len(pages) >= most:
            return None
        page = _fill_one(rest, shapes, begins, first if begins else further)
        if page is not None:
            pages.append(page)
            rest = [card for card in rest if card not in dict(page.cards)]
        elif not begins:
            raise NoRoomError(rest[0])
        begins = False
    return tuple(pages)


def _fill_one(
    cards: Sequence[int], shapes: Sequence[Shapes], first: bool, rooms: Sequence[CardRoom]
) -> Shared | None:
    """Fill one page; a room that held fewer cards no more holds more of them."""
    start, page = 0, None
    chosen: list[tuple[int, int]] = []
    vain: set[Shapes] = set()
    for card in cards:
        if shapes[card] in vain:
            continue
        found = _add(chosen, card, shapes, rooms[start:])
        if found is None:
            vain.add(shapes[card])
            continue
        row, shape, places = found
        start += row
        chosen.append((card, shape))
        page = Shared(
            first,
            start,
            tuple(zip((card for card, _ in chosen), places, strict=True)),
            tuple(shape for _, shape in chosen),
        )
    return page


def _add(
    chosen: Sequence[tuple[int, int]],
    card: int,
    shapes: Sequence[Shapes],
    rooms: Sequence[CardRoom],
) -> tuple[int, int, tuple[Size, ...]] | None:
    """Lay a card beside others, in the first room and size that holds them all."""
    sizes = [shapes[other][shape] for other, shape in chosen]
    area = sum(width * height for width, height in sizes)
    for row, room in enumerate(rooms):
        for shape, size in enumerate(shapes[card]):
            if area + size[0] * size[1] <= room.area + SLIP:
                places = lay([*sizes, size], room)
                if places is not None:
                    return row, shape, places
    return None
