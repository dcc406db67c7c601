"""The ways to divide a page between its words and its cards.

The paper stands or lies. The head lies across and the words follow in columns, of which the
first may reach further down than the others or the others further than the first; or head and
words stand in one column at the left. The cards have what is left.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import islice
from typing import Self

from templates.cards.card import Card
from templates.faces.faceview import FaceView
from templates.faces.reference import Reference
from templates.page.border import BOTTOM_STRIP, EDGE, LEFT_STRIP
from templates.page.packing import CardRoom, Hanging
from templates.page.paper import Paper
from templates.page.pieces import GAP, MarkBlock
from templates.sheets.panel import PartWords, body, head_across, head_down
from templates.words.fittingwords import Work
from templates.words.guidewords import guide_line
from templates.words.ownwords import own_words

GUTTER = 2.0
"""Between cards, and between cards and words, mm."""
COLUMN_GAP = 4.0
TOP_COLUMNS = (2, 3, 4, 5)
NARROWEST, WIDEST = 58.0, 110.0
"""How wide a column below a head may be, mm."""
SIDE_COLUMNS = (62.0, 65.0, 68.0, 72.0, 76.0, 81.0, 86.0)
"""How wide the one column at the left may be, mm."""
LEAST_ROOM = 40.0
"""Words leave at least this height to cards somewhere, mm: no card is lower."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetWords:
    """What is said on the sheets of one face; `guides`: the page of each kind of work's steps;
    `set_on`: what its cards are set on; `own`: what is to be done besides with long paper."""

    view: FaceView
    part: PartWords
    guides: Mapping[Work, int]
    set_on: tuple[Reference, ...] = ()
    own: tuple[str, ...] = ()

    def of_page(self, first: bool) -> PartWords:
        """Give the part's words: on a further page of several parts their boxes stand close."""
        return self.part if first or not self.part.members else replace(self.part, brief=True)

    def for_cards(self, cards: Iterable[Card]) -> Self:
        """Give the words with the lines that some cards are set on: those of a whole face while
        its pages are measured, then those of a page, which are no more."""
        return replace(self, set_on=tuple(line for card in cards for line in card.index))

    def body(self, width: float, first: bool) -> list[MarkBlock]:
        """Give what is said below the head, as pieces `width` mm wide."""
        line = guide_line(self.view, self.guides)
        own = (*([line] if line else []), *self.own, *own_words(self.view, self.set_on))
        return body(self.view, self.part, own, width, first=first)


@dataclass(frozen=True, slots=True)
class TextColumns:
    """Neighbouring columns of one height: how many, how many pieces flow down them, how high."""

    count: int
    pieces: int
    height: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Pattern:
    """A way to divide a page: its size, how the words flow, and the room left for cards.

    The head lies across if `head` is its height, else it heads the one column. The room's
    corner is where the two borders end; mm.
    """

    width: float
    height: float
    head: float | None
    column_width: float
    columns: tuple[TextColumns, ...]
    room: CardRoom


class Ways:
    """The ways to divide a paper for the words of one face; head and body are measured once for
    each width."""

    def __init__(self, words: SheetWords, paper: Paper) -> None:
        self.words = words
        self.sizes = ((paper.width, paper.height), (paper.height, paper.width))
        self._even: dict[bool, list[Pattern]] = {}
        self._heads: dict[tuple[float, bool], list[float]] = {}
        self._bodies: dict[tuple[float, bool], tuple[float, ...]] = {}

    def even(self, first: bool) -> list[Pattern]:
        """Give the ways with even columns, and the narrowest column at the left."""
        if first not in self._even:
            self._even[first] = self._seek_even(first)
        return self._even[first]

    def _seek_even(self, first: bool) -> list[Pattern]:
        return [
            pattern
            for size in self.sizes
            for pattern in (
                *self._below(size, first, False),
                *islice(self._beside(size, first), 1),
            )
        ]

    def every(self, first: bool) -> list[Pattern]:
        """Give all ways, those with even columns first."""
        ways = list(self.even(first))
        for size in self.sizes:
            ways += self._below(size, first, True)
            ways += islice(self._beside(size, first), 1, None)
        return ways

    def _below(self, size: tuple[float, float], first: bool, uneven: bool) -> list[Pattern]:
        """Lay the head across, and columns below it: one way for each number of them, or all
        ways of two heights."""
        across, down = size[0] - LEFT_STRIP - EDGE, size[1] - BOTTOM_STRIP - EDGE
        head = self._head(across, first)
        found: list[Pattern] = []
        for count in TOP_COLUMNS:
            column = (across - (count - 1) * COLUMN_GAP) / count
            if not NARROWEST <= column <= WIDEST:
                continue
            heights = self._body(column, first)
            ways = _uneven if uneven else _even
            for columns in ways(heights, count, down - head):
                blocks = _blocks(columns, column, across, head)
                found.append(
                    Pattern(
                        width=size[0],
                        height=size[1],
                        head=head,
                        column_width=column,
                        columns=columns,
                        room=CardRoom(across, down, blocks),
                    )
                )
        return found

    def _body(self, column: float, first: bool) -> tuple[float, ...]:
        """How high each piece of the steps and notes is, set `column` mm wide."""
        key = (column, first)
        if key not in self._bodies:
            pieces = self.words.body(column, first)
            self._bodies[key] = tuple(piece.height for piece in pieces)
        return self._bodies[key]

    def _head(self, across: float, first: bool) -> float:
        part, key = self._part(across, first)
        if key not in self._heads:
            head = head_across(self.words.view, part, None, "sheet 1 of 1", across)
            self._heads[key] = [head.height]
        return self._heads[key][0]

    def _part(self, width: float, first: bool) -> tuple[PartWords, tuple[float, bool]]:
        """Give the words of a page's head, and the key by which its measures are kept."""
        alike = not self.words.part.members
        return self.words.of_page(first), (width, first or alike)

    def _beside(self, size: tuple[float, float], first: bool) -> Iterator[Pattern]:
        """Lay head and words in one column at the left, of each width that holds them."""
        across, down = size[0] - LEFT_STRIP - EDGE, size[1] - BOTTOM_STRIP - EDGE
        for column in SIDE_COLUMNS:
            heights = [*self._head_beside(column, first), *self._body(column, first)]
            used = _stacked(heights)
            if used <= down:
                yield Pattern(
                    width=size[0],
                    height=size[1],
                    head=None,
                    column_width=column,
                    columns=(TextColumns(1, len(heights), used),),
                    room=CardRoom(across, down, ((0.0, column, used),)),
                )

    def _head_beside(self, column: float, first: bool) -> list[float]:
        part, key = self._part(column, first)
        if key not in self._heads:
            pieces = head_down(self.words.view, part, None, "sheet 1 of 1", column)
            self._heads[key] = [piece.height for piece in pieces]
        return self._heads[key]


def _blocks(
    columns: tuple[TextColumns, ...], width: float, across: float, head: float
) -> tuple[Hanging, ...]:
    """Say what columns take of a page below a head, mm."""
    if len(columns) == 1:
        return ((0.0, across, head + columns[0].height),)
    left, right = columns
    place = left.count * (width + COLUMN_GAP)
    return (
        (0.0, place - COLUMN_GAP, head + left.height),
        (place, across, head + right.height),
    )


def _stacked(heights: Sequence[float]) -> float:
    return sum(heights) + GAP * max(0, len(heights) - 1)


def _even(heights: tuple[float, ...], count: int, most: float) -> list[tuple[TextColumns, ...]]:
    """The one way in which pieces flow down even columns at most `most` mm high, if there is."""
    height = _least(heights, count)
    return [(TextColumns(count, len(heights), height),)] if height <= most - LEAST_ROOM else []


@lru_cache(maxsize=1024)
def _uneven(heights: tuple[float, ...], count: int, most: float) -> list[tuple[TextColumns, ...]]:
    """All ways in which pieces flow down columns of two heights, but for those of which another
    is lower in both."""
    ways: list[tuple[TextColumns, ...]] = []
    for left in range(1, count):
        pairs: list[tuple[TextColumns, TextColumns]] = []
        for pieces in range(len(heights), 0, -1):
            # From the most pieces at the left to the fewest: its height falls, the other grows.
            a = TextColumns(left, pieces, _least(heights[:pieces], left))
            b = TextColumns(
                count - left, len(heights) - pieces, _least(heights[pieces:], count - left)
            )
            if max(a.height, b.height) > most or min(a.height, b.height) > most - LEAST_ROOM:
                continue
            if pairs and a.height >= pairs[-1][0].height - 1e-9:
                continue
            if pairs and b.height <= pairs[-1][1].height + 1e-9:
                pairs.pop()
            pairs.append((a, b))
        ways += pairs
    return ways


@lru_cache(maxsize=8192)
def _least(heights: tuple[float, ...], count: int) -> float:
    """The least height at which pieces, in order, flow down so many columns, mm."""
    if count == 1 or len(heights) <= 1:
        return _stacked(heights)
    return min(
        max(_stacked(heights[:pieces]), _least(heights[pieces:], count - 1))
        for pieces in range(1, len(heights) + 1)
    )
