"""The fewest pages: which cards share a page, so that no fewer pages would do.

The first page of a face has rooms of its own, since its words are longer. Cards are first laid
in order, page after page as full as they get. Where a lower bound leaves hope for fewer pages,
all ways to share them out are searched, so that the answer is the least there is.

>>> page = Room(100.0, 100.0)
>>> cards = ((60.0, 60.0), (40.0, 60.0), (100.0, 38.0), (98.0, 100.0))
>>> sharing = fewest_pages(cards, (page,), (page,), 0.0)
>>> [[card for card, _ in shared.cards] for shared in sharing.pages], sharing.least
([[0, 1, 2], [3]], 2)
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import product

from templates.packing import SLIP, Patience, Room, Size, TooLongError, gather, lay
from templates.pagebound import Weights, page_weights

SOON = 500
MOST_TRIED = 60_000
"""Steps of laying cards before what is found for a face is taken as it is: a few seconds."""


Shapes = tuple[Size, ...]
"""The sizes in which a card may be laid, one of them."""
Found = tuple[int, tuple[Size, ...], tuple[int, ...]]
"""A room's number; of each card in it the lower left corner, and the shape it is laid in."""


@dataclass(frozen=True, slots=True)
class Shared:
    """A page: whether it is one for first pages, which of those rooms it is, and where each of
    its cards has its lower left corner in it; `shapes` says in which of its sizes each is laid,
    where it has several."""

    first: bool
    room: int
    cards: tuple[tuple[int, Size], ...]
    shapes: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class Sharing:
    """Cards shared among pages, and how many pages are needed in any case. Where the search was
    ended before it had tried everything, `least` is less than the number of pages."""

    pages: tuple[Shared, ...]
    least: int


class NoRoomError(ValueError):
    """A card finds no room on any page; `card` says which."""

    def __init__(self, card: int) -> None:
        super().__init__(f"card {card} finds no room on any page")
        self.card = card


@lru_cache(maxsize=4096)
def one_page(sizes: tuple[Size, ...], rooms: tuple[Room, ...], gap: float) -> Shared | None:
    """Lay all cards on one page, in the first of its rooms that holds them; None: in no one."""
    grown = [(width + gap, height + gap) for width, height in sizes]
    for alike in gather(room.grown(gap) for room in rooms):
        found = lay(grown, alike, Patience(math.inf))
        if found is not None:
            return Shared(True, found[0], tuple(enumerate(found[1])))
    return None


def fewest_pages(
    sizes: tuple[Size, ...], first: tuple[Room, ...], further: tuple[Room, ...], gap: float
) -> Sharing:
    """Share cards among the fewest pages, in order as far as that costs no page.

    The first page is one of `first`, unless they hold no card at all; all others are of
    `further`. Raises NoRoomError for a card that no page holds.
    """
    return fewest_pages_in_shapes(tuple((size,) for size in sizes), first, further, gap)


@lru_cache(maxsize=2048)
def fewest_pages_in_shapes(
    shapes: tuple[Shapes, ...], first: tuple[Room, ...], further: tuple[Room, ...], gap: float
) -> Sharing:
    """Share cards that may each be laid in several sizes among the fewest pages.

    Kept, since a kitchen has many parts alike.
    """
    search = _Search(shapes, first, further, gap)
    pages = search.in_order()
    least = search.apart()
    if len(pages) > least:
        everything = range(len(shapes))
        least = max(least, search.weights.least(everything, search.begins))
    search.patience = Patience(MOST_TRIED)
    while len(pages) > least:
        try:
            fewer = search.share(search.all, len(pages) - 1, search.begins)
        except TooLongError:
            break
        if fewer is None:
            least = len(pages)
        else:
            pages = sorted(fewer, key=lambda page: (not page[0], page[1] & -page[1]))
    return Sharing(tuple(search.shared(*page) for page in pages), least)


class _Search:
    """Sets of cards are bits: card n is in a set if its bit n is 1. A gap stands at the right of
    each card and above it, so that cards may touch."""

    def __init__(
        self,
        shapes: tuple[Shapes, ...],
        first: tuple[Room, ...],
        further: tuple[Room, ...],
        gap: float,
    ) -> None:
        self.shapes = [[(w + gap, h + gap) for w, h in several] for several in shapes]
        self.all = (1 << len(shapes)) - 1
        self._rooms = {
            True: gather(room.grown(gap) for room in first),
            False: gather(room.grown(gap) for room in further),
        }
        self._known: dict[tuple[bool, tuple[int, ...]], Found | None] = {}
        self._found: dict[tuple[bool, int], Found | None] = {}
        self.patience = Patience(math.inf)
        self._hopeless: set[tuple[tuple[int, ...], int]] = set()
        # Cards of one size stand for each other: their kind is the first of them.
        self.kind = [shapes.index(several) for several in shapes]
        self._weights: Weights | None = None
        alone = [self.fits(True, 1 << card) for card in range(len(shapes))]
        self.begins = any(alone)
        for card, fits in enumerate(alone):
            if not fits and not self.fits(False, 1 << card):
                raise NoRoomError(card)

    @property
    def weights(self) -> Weights:
        """The cards' weights, reckoned when they are first asked for."""
        if self._weights is None:
            begin = self._rooms[True] if self.begins else ()
            self._weights = page_weights(self.shapes, begin, self._rooms[False])
        return self._weights

    def fits(self, first: bool, cards: int) -> bool:
        """Say whether a set of cards finds room on one page."""
        return self._find(first, cards) is not None

    def shared(self, first: bool, cards: int) -> Shared:
        """Give a page with a set of cards that is known to fit."""
        found = self._find(first, cards)
        assert found is not None, "only sets that fit are shared out"
        room, places, shapes = found
        return Shared(first, room, tuple(zip(self._members(cards), places, strict=True)), shapes)

    def _find(self, first: bool, cards: int) -> Found | None:
        """The room that holds a set of cards, and their places in the order of kinds."""
        if (first, cards) not in self._found:
            members = self._members(cards)
            key = first, tuple(self.kind[card] for card in members)
            if key not in self._known:
                self._known[key] = self._seek(first, cards, members)
            self._found[first, cards] = self._known[key]
        return self._found[first, cards]

    def _seek(self, first: bool, cards: int, members: list[int]) -> Found | None:
        if len(members) > 2 and not all(self.fits(first, cards & ~(1 << card)) for card in members):
            return None
        if self._weights and self._weights.least(members, first) > 1:
            return None
        several = [range(len(self.shapes[card])) for card in members]
        for rooms in self._rooms[first]:
            for chosen in product(*several):
                sizes = [self.shapes[card][n] for card, n in zip(members, chosen, strict=True)]
                found = lay(sizes, rooms, self.patience)
                if found is not None:
                    return *found, chosen
        return None

    def _members(self, cards: int) -> list[int]:
        """The cards of a set by kind, so that places found for one set serve its equals."""
        members = [card for card in range(len(self.shapes)) if cards >> card & 1]
        return sorted(members, key=lambda card: (self.kind[card], card))

    def in_order(self) -> list[tuple[bool, int]]:
        """Fill page after page, each with the cards in order as far as they find room."""
        pages: list[tuple[bool, int]] = []
        rest = self.all
        while rest:
            first = self.begins and not pages
            page = 0
            for card in range(len(self.shapes)):
                if rest >> card & 1 and self._fits_soon(first, page | 1 << card):
                    page |= 1 << card
            if not page:
                raise NoRoomError((rest & -rest).bit_length() - 1)
            pages.append((first, page))
            rest &= ~page
        return pages

    def _fits_soon(self, first: bool, cards: int) -> bool:
        """Whether a set of cards is soon seen to find room on one page."""
        kept, self.patience = self.patience, Patience(SOON)
        try:
            return self.fits(first, cards)
        except TooLongError:
            return False
        finally:
            self.patience = kept

    def apart(self) -> int:
        """Count cards of which no two find room on one page: so many pages are needed."""
        apart: list[int] = []
        for card in range(len(self.shapes)):
            pairs = [1 << card | 1 << other for other in apart]
            if not any(self.fits(kind, pair) for kind in (True, False) for pair in pairs):
                apart.append(card)
        return len(apart)

    def share(self, cards: int, pages: int, first: bool) -> list[tuple[bool, int]] | None:
        """Share a set of cards among so many pages, the next of them a first one or not."""
        if not cards:
            return []
        members = self._members(cards)
        if self.weights.least(members, first) > pages:
            return None
        state = tuple(self.kind[card] for card in members), pages
        if not first and state in self._hopeless:
            return None
        if pages == 1:
            return [(first, cards)] if self.fits(first, cards) else None
        need, scale = self.weights.need(members, first, pages)
        for page in self._fillings(first, members, need, scale):
            others = self.share(cards & ~page, pages - 1, False)
            if others is not None:
                return [(first, page), *others]
        if not first:
            self._hopeless.add(state)
        return None

    def _fillings(
        self, first: bool, members: list[int], need: float, weights: Sequence[float]
    ) -> Iterator[int]:
        """All sets out of some cards that fill a page, so that none of the others fits too, and
        that weigh as much as this page must take off the others.

        Further pages are alike, so that the next one takes the largest card that is left.
        """
        order = sorted(members, key=lambda card: -min(w * h for w, h in self.shapes[card]))

        def grow(row: int, page: int, out: int, spare: float) -> Iterator[int]:
            if spare < -SLIP:
                return
            if row == len(order):
                if page and not any(
                    self.fits(first, page | 1 << card) for card in order if out >> card & 1
                ):
                    yield page
                return
            card = order[row]
            # Of cards alike a later one goes only where the earlier ones went.
            barred = any(
                out >> other & 1 and self.kind[other] == self.kind[card] for other in order[:row]
            )
            if not barred and self.fits(first, page | 1 << card):
                yield from grow(row + 1, page | 1 << card, out, spare)
            if first or row > 0:
                yield from grow(row + 1, page, out | 1 << card, spare - weights[card])

        return grow(0, 0, 0, sum(weights[card] for card in members) - need)
