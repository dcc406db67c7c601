"""Pages whose words and drawing stand apart from the rows of cards: long ones, off a roll.

The words take the top in columns, or one column at the left; the drawing has the rest, from the
foot of the page up.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from jigs.ground.geometry import SLACK
from templates.cards.card import Card, make_cards
from templates.page.bars import bar
from templates.page.border import BOTTOM_STRIP, EDGE, LEFT_STRIP, border_marks
from templates.page.marks import Mark, Page, Text
from templates.page.paper import Paper
from templates.page.pieces import GAP, flow, least_height, moved
from templates.sheets.panel import head_across, head_down
from templates.sheets.pattern import COLUMN_GAP, GUTTER, SheetWords
from templates.sheets.sheet import Placed, Sheet
from templates.strips.wholecard import whole_card, whole_size

COLUMN = 84.0
"""About how wide a column of words is that lies across a wide page, mm."""
SHORTEST_PAGE = 130.0
"""The shortest page, mm: the bar of 100 stands along it."""
SIDE_COLUMNS = (62.0, 68.0, 76.0, 86.0, 100.0)
"""Widths of the one column at the left, mm."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Division:
    """A way to divide a page. `head`: its height where it lies across, None where it heads the
    one column. `wide`, `high`: the room left for the drawing, its corner at (`x`, `y`); mm."""

    width: float
    height: float
    head: float | None
    columns: int
    column_width: float
    words_height: float
    x: float
    y: float
    wide: float
    high: float


@dataclass(frozen=True, slots=True, kw_only=True)
class LongPlan:
    """A planned page with its cards in their places."""

    words: SheetWords
    first: bool
    page: Division
    cards: tuple[Placed, ...]


def divide(words: SheetWords, width: float, height: float, first: bool) -> Iterator[Division]:
    """Give the ways to lay the words on a page of a size, mm; none where they find no room."""
    view, part = words.view, words.of_page(first)
    across, down = width - LEFT_STRIP - EDGE, height - BOTTOM_STRIP - EDGE
    head = head_across(view, part, None, "sheet 1 of 1", across).height
    columns = max(2, round((across + COLUMN_GAP) / (COLUMN + COLUMN_GAP)))
    column = (across - (columns - 1) * COLUMN_GAP) / columns
    least = least_height(words.body(column, first), columns, down - head)
    if least is not None:
        yield Division(
            width=width,
            height=height,
            head=head,
            columns=columns,
            column_width=column,
            words_height=least,
            x=LEFT_STRIP,
            y=BOTTOM_STRIP,
            wide=across,
            high=down - head - least - GUTTER,
        )
    for column in SIDE_COLUMNS:
        pieces = [
            *head_down(view, part, None, "sheet 1 of 1", column),
            *words.body(column, first),
        ]
        used = sum(piece.height + GAP for piece in pieces)
        if used <= down and column < across / 2:
            yield Division(
                width=width,
                height=height,
                head=None,
                columns=1,
                column_width=column,
                words_height=used,
                x=LEFT_STRIP + column + GUTTER,
                y=BOTTOM_STRIP,
                wide=across - column - GUTTER,
                high=down,
            )


def cut(page: Division, used: float, least: float) -> Division:
    """Give a page cut to its words and to `used` of the room, no shorter than `least`; mm."""
    high = used
    if page.head is None:
        high = max(used, page.words_height)
    high = max(high, least - (page.height - page.high))
    return replace(page, height=page.height - page.high + high, high=high)


WHOLE = (
    "Paper grows, the more the longer: measure the long bar too. Fold at the edges that say so; "
    "where one marked CHECK is off by over 0.5, set each hole out by its written distance."
)
"""What is to be done with a whole face besides."""


def plan_whole(words: SheetWords, paper: Paper) -> list[LongPlan] | None:
    """Lay a whole face on one page; None where the paper is too small for it."""
    words = replace(words, own=(WHOLE,))
    wide, high = whole_size(words.view)
    if paper.longest is not None:
        pages = list(divide(words, paper.width, paper.longest, True))
    else:
        pages = [
            *divide(words, paper.width, paper.height, True),
            *divide(words, paper.height, paper.width, True),
        ]
    pages = [page for page in pages if wide <= page.wide + SLACK and high <= page.high + SLACK]
    card = whole_card(words.view) if pages else None
    if card is None:
        return None
    if paper.longest is not None:
        pages = sorted(
            (cut(page, high, SHORTEST_PAGE) for page in pages), key=lambda page: page.height
        )
    page = pages[0]
    placed = Placed(card=card, dx=page.x - card.box[0], dy=page.y + page.high - card.box[3])
    return [LongPlan(words=words, first=True, page=page, cards=(placed,))]


def plan_roll(words: SheetWords, paper: Paper) -> list[LongPlan]:
    """Lay all cards of a face on one page as wide as the roll, no longer than they need."""
    assert paper.longest is not None, "a roll"
    ways = tuple(divide(words, paper.width, paper.longest, True))
    cards = make_cards(words.view, tuple((way.wide, way.high) for way in ways))
    words = words.for_cards(cards)
    ways = tuple(divide(words, paper.width, paper.longest, True))
    found = [plan for way in ways for plan in [_in_rows(words, way, cards, SHORTEST_PAGE)] if plan]
    return [min(found, key=lambda plan: plan.page.height)]


def _in_rows(
    words: SheetWords, page: Division, cards: Sequence[Card], least: float
) -> LongPlan | None:
    """Lay cards in rows from the top, each as high as its highest; None where they do not fit."""
    spots: list[tuple[Card, float, float]] = []
    x = top = row = 0.0
    for card in cards:
        if x > 0.0 and x + card.width > page.wide + 1e-6:
            x, top, row = 0.0, top + row + GUTTER, 0.0
        if x + card.width > page.wide + 1e-6 or top + card.height > page.high + 1e-6:
            return None
        spots.append((card, x, top))
        x += card.width + GUTTER
        row = max(row, card.height)
    page = cut(page, top + row, least)
    placed = tuple(
        Placed(card=card, dx=page.x + x - card.box[0], dy=page.y + page.high - down - card.box[3])
        for card, x, down in spots
    )
    return LongPlan(words=words, first=True, page=page, cards=placed)


def draw_long(plan: LongPlan, sheet: str, paper: Paper, number: int) -> Sheet:
    """Draw a planned page, page `number` of the document; `sheet` says which of its part's."""
    page, view, part = plan.page, plan.words.view, plan.words.of_page(plan.first)
    cards = tuple(placed.card for placed in plan.cards)
    across, top = page.width - LEFT_STRIP - EDGE, page.height - EDGE
    marks: list[Mark] = border_marks(page.width, page.height, paper, number, holes=True)
    marks += _long_bar(page.height)
    pieces = plan.words.body(page.column_width, plan.first)
    room = page.words_height
    if page.head is None:
        pieces = [*head_down(view, part, cards, sheet, page.column_width), *pieces]
        room += 1.0
    else:
        head = head_across(view, part, cards, sheet, across)
        marks += moved(head.marks, LEFT_STRIP, top)
        top -= head.height
    places = flow(pieces, page.columns, room)
    assert places is not None, "the words were measured with the same pieces"
    for piece, (column, down) in zip(pieces, places, strict=True):
        x = LEFT_STRIP + column * (page.column_width + COLUMN_GAP)
        marks += moved(piece.marks, x, top - down)
    for placed in plan.cards:
        marks += moved(placed.card.marks, placed.dx, placed.dy)
    return Sheet(
        page=Page(width=page.width, height=page.height, marks=tuple(marks), entry=part.entry),
        cards=plan.cards,
        part=part.part,
    )


def _long_bar(height: float) -> list[Mark]:
    """Draw a bar as long as the left border lets it be: the longer a page, the more a printer's
    error along it counts."""
    top = height - 112.0
    length = (top - BOTTOM_STRIP - 4.0) // 100 * 100
    if length < 200.0:
        return []
    words = f"{length:.1f} ±{length * 0.002:.1f}"
    return [
        *bar(2.4, top, length, down=True),
        Text(x=6.6, y=top - length / 2, text=words, anchor="middle", angle=90),
    ]
