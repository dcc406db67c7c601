"""A page of a sheet: bars along two borders, the words in columns, the cards where they fit.

The paper stands or lies, and the words take the top or a column, whichever lets the face do
with the fewest pages.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from templates.cards.card import Card, make_cards
from templates.page.border import BOTTOM_STRIP, EDGE, LEFT_STRIP, border_marks
from templates.page.marks import Mark, Page
from templates.page.packing import CardRoom, Size
from templates.page.paper import Paper
from templates.page.pieces import flow, moved
from templates.sheets.panel import head_across, head_down
from templates.sheets.pattern import COLUMN_GAP, GUTTER, Pattern, SheetWords, Ways
from templates.sheets.sharing import NoRoomError, Shared, one_page, share_cards

NO_LIMIT = ((math.inf, math.inf),)
"""Room for cards as large as they would be."""
MOST_TRIES = 4
"""How often cards are made anew for the room that the words leave them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Placed:
    """A card on a page; (dx, dy) moves the face's coordinates to the page's, mm."""

    card: Card
    dx: float
    dy: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """One sheet, ready to print: its page, and the cards on it as data. `part` is what it is
    for; None for the pack's first page."""

    page: Page
    cards: tuple[Placed, ...]
    part: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """A planned page: the words and cards of one face, how the page is divided."""

    words: SheetWords
    first: bool
    pattern: Pattern
    cards: tuple[Placed, ...]


def plan_face(words: SheetWords, paper: Paper) -> list[Plan]:
    """Share the cards of one face among as few pages as a few orders and all patterns give."""
    cards = make_cards(words.view, NO_LIMIT)
    for _ in range(MOST_TRIES):
        # Cards made anew may be set on other lines, which the words name.
        words = words.for_cards(cards)
        ways = Ways(words, paper)
        even = ways.even(True)
        # Most faces do with one page, and the plainest ways to divide it show that at once.
        alone = one_page(_sizes(cards), _rooms(even), GUTTER)
        if alone is not None:
            return [_plan(words, even[alone.room], alone, cards)]
        first, further = ways.every(True), ways.every(False)
        made, cards = cards, _made_to_fit(cards, words, (*first, *further))
        if cards is made:
            break
    try:
        pages = share_cards(_sizes(cards), _rooms(first), _rooms(further), GUTTER)
    except NoRoomError as fault:
        card = cards[fault.card]
        raise ValueError(
            f"{words.view.part}: card {card.number} ({card.width:.0f} x {card.height:.0f} mm) "
            f"finds no room on {paper.name}"
        ) from fault
    return [
        _plan(words, (first if page.first else further)[page.room], page, cards) for page in pages
    ]


def _made_to_fit(
    cards: tuple[Card, ...], words: SheetWords, ways: Sequence[Pattern]
) -> tuple[Card, ...]:
    """Give the cards if some page holds each of them, clear of its words; else cards made for
    what pages hold."""
    rooms = [way.room.grown(GUTTER) for way in ways]
    if all(any(r.holds((c.width + GUTTER, c.height + GUTTER)) for r in rooms) for c in cards):
        return cards
    limits = {(w - GUTTER, h - GUTTER) for room in rooms for w, h in room.rectangles()}
    return make_cards(words.view, tuple(limits))


def _sizes(cards: tuple[Card, ...]) -> tuple[Size, ...]:
    return tuple((card.width, card.height) for card in cards)


def _rooms(ways: list[Pattern]) -> tuple[CardRoom, ...]:
    return tuple(way.room for way in ways)


def _plan(words: SheetWords, pattern: Pattern, page: Shared, cards: tuple[Card, ...]) -> Plan:
    placed = []
    for row, (x, y) in _lifted(page, pattern, cards):
        card = cards[row]
        placed.append(
            Placed(
                card=card,
                dx=LEFT_STRIP + x - card.box[0],
                dy=BOTTOM_STRIP + y - card.box[1],
            )
        )
    placed.sort(key=lambda spot: spot.card.number)
    return Plan(words=words, first=page.first, pattern=pattern, cards=tuple(placed))


def _lifted(page: Shared, pattern: Pattern, cards: tuple[Card, ...]) -> Iterator[tuple[int, Size]]:
    """Push the cards of a page up to the words they belong to, the upper ones first."""
    lifted: list[tuple[float, float, float, float]] = []
    for row, (x, y) in sorted(page.cards, key=lambda spot: -spot[1][1] - cards[spot[0]].height):
        width, height = cards[row].width, cards[row].height
        depth = pattern.room.depth(x - GUTTER, x + width + GUTTER)
        top = pattern.room.height - (depth + GUTTER if depth else 0.0)
        for x0, y0, x1, y1 in lifted:
            if x0 < x + width + GUTTER - 1e-6 and x < x1 + GUTTER - 1e-6 and y1 > y:
                top = min(top, y0 - GUTTER)
        y = max(y, top - height)
        lifted.append((x, y, x + width, y + height))
        yield row, (x, y)


def draw_plan(plan: Plan, paper: Paper, number: int, sheet: str) -> Sheet:
    """Draw one page; `sheet` says which of its part's it is."""
    pattern, view, part = plan.pattern, plan.words.view, plan.words.of_page(plan.first)
    cards = tuple(placed.card for placed in plan.cards)
    across = pattern.width - LEFT_STRIP - EDGE
    top = pattern.height - EDGE
    marks: list[Mark] = border_marks(pattern.width, pattern.height, paper, number, holes=True)
    pieces = plan.words.for_cards(cards).body(pattern.column_width, plan.first)
    if pattern.head is None:
        pieces = [*head_down(view, part, cards, sheet, pattern.column_width), *pieces]
    else:
        head = head_across(view, part, cards, sheet, across)
        marks += moved(head.marks, LEFT_STRIP, top)
        top -= head.height
    start = 0
    for columns in pattern.columns:
        places = flow(pieces[: columns.pieces], columns.count, columns.height + 1e-6)
        assert places is not None, "the words were measured with the same pieces"
        for piece, (column, down) in zip(pieces, places, strict=False):
            x = LEFT_STRIP + (start + column) * (pattern.column_width + COLUMN_GAP)
            marks += moved(piece.marks, x, top - down)
        pieces, start = pieces[columns.pieces :], start + columns.count
    for placed in plan.cards:
        marks += moved(placed.card.marks, placed.dx, placed.dy)
    return Sheet(
        page=Page(width=pattern.width, height=pattern.height, marks=tuple(marks), entry=part.entry),
        cards=plan.cards,
        part=part.part,
    )
