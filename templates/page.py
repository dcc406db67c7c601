"""A page of a sheet: bars along two borders, the words in columns, the cards where they fit.

The paper stands or lies, and the words take the top or a column, whichever lets the face do
with the fewest pages.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from templates.card import Card, make_cards
from templates.faces import FaceView
from templates.lettering import bar
from templates.marks import Mark, Page, Text
from templates.panel import PartWords, body, body_again, head_across, head_down
from templates.paper import Paper
from templates.pieces import Piece, flow, least_height, moved

LEFT_STRIP, BOTTOM_STRIP = 8.2, 12.6
"""Borders that carry the bars, mm."""
EDGE = 1.0
"""Paper left free along the other borders, mm."""
GUTTER = 2.0
"""Between cards, and between cards and words, mm."""
COLUMN_GAP = 4.0
TOP_COLUMNS = (2, 3, 4, 5)
SIDE_COLUMNS = (62.0, 68.0, 76.0, 86.0)
"""Ways to lay the words: columns across the top, or one column of such a width at the left."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Placed:
    """A card on a page; (dx, dy) moves the face's coordinates to the page's, mm."""

    card: Card
    dx: float
    dy: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Pattern:
    """A way to divide a page: its size, how the words flow, and the room left for cards.

    The head lies across if `head` is its height, else it heads the one column. `room` is x0,
    y0, width, height of the place for cards, mm.
    """

    width: float
    height: float
    head: float | None
    columns: int
    column_width: float
    words_height: float
    room: tuple[float, float, float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """One sheet, ready to print: its page, and the cards on it as data. `part` is what it is
    for; None for the pack's first page."""

    page: Page
    cards: tuple[Placed, ...]
    part: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetWords:
    """What is said on the sheets of one face: in full on the first, in short on the others."""

    view: FaceView
    part: PartWords
    steps: tuple[str, ...]
    again: str

    def of_page(self, first: bool) -> PartWords:
        """Give the part's words: on a further page of several parts their boxes stand close."""
        return self.part if first or not self.part.members else replace(self.part, brief=True)

    def body(self, width: float, first: bool) -> list[Piece]:
        """Give the steps and notes as pieces `width` mm wide."""
        if first:
            return body(self.view, self.part, self.steps, width)
        return body_again(self.view, self.part, self.again, width)


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """A planned page: the words and cards of one face, how the page is divided."""

    words: SheetWords
    first: bool
    pattern: Pattern
    cards: tuple[Placed, ...]


def _patterns(words: SheetWords, paper: Paper, first: bool) -> list[Pattern]:
    """Give all ways to divide the paper in which the words find room."""
    result: list[Pattern] = []
    view, part = words.view, words.of_page(first)
    for width, height in ((paper.width, paper.height), (paper.height, paper.width)):
        across = width - LEFT_STRIP - EDGE
        down = height - BOTTOM_STRIP - EDGE
        head = head_across(view, part, (), "sheet 1 of 1", across).height
        for columns in TOP_COLUMNS:
            column = (across - (columns - 1) * COLUMN_GAP) / columns
            if not 58.0 <= column <= 110.0:
                continue
            least = least_height(words.body(column, first), columns, down - head - 40.0)
            if least is not None:
                used = head + least + GUTTER
                result.append(
                    Pattern(
                        width=width,
                        height=height,
                        head=head,
                        columns=columns,
                        column_width=column,
                        words_height=least,
                        room=(LEFT_STRIP, BOTTOM_STRIP, across, down - used),
                    )
                )
        for column in SIDE_COLUMNS:
            pieces = head_down(view, part, (), "sheet 1 of 1", column)
            if flow([*pieces, *words.body(column, first)], 1, down) is not None:
                result.append(
                    Pattern(
                        width=width,
                        height=height,
                        head=None,
                        columns=1,
                        column_width=column,
                        words_height=down,
                        room=(
                            LEFT_STRIP + column + GUTTER,
                            BOTTOM_STRIP,
                            across - column - GUTTER,
                            down,
                        ),
                    )
                )
                break
    return result


def _pack(cards: tuple[Card, ...], pattern: Pattern) -> list[Placed]:
    """Lay cards in rows from the top left of the room: as many as fit, in order if they can."""
    x0, y0, width, height = pattern.room
    placed: list[Placed] = []
    x, top, row = 0.0, height, 0.0
    for card in cards:
        if x > 0.0 and x + card.width > width + 1e-6 and card.height <= top - row - GUTTER:
            x, top, row = 0.0, top - row - GUTTER, 0.0
        if x + card.width > width + 1e-6 or card.height > top + 1e-6:
            continue
        placed.append(
            Placed(
                card=card,
                dx=x0 + x - card.box[0],
                dy=y0 + top - card.height - card.box[1],
            )
        )
        x += card.width + GUTTER
        row = max(row, card.height)
    return placed


def plan_face(words: SheetWords, paper: Paper) -> list[Plan]:
    """Divide the cards of one face over as few pages as the patterns allow."""
    view = words.view
    patterns = _patterns(words, paper, True)
    further = _patterns(words, paper, False)
    rooms = tuple((pattern.room[2], pattern.room[3]) for pattern in (*patterns, *further))
    rest = make_cards(view, rooms)
    plans: list[Plan] = []
    while rest:
        # A card that leaves no room for the steps in full takes them in short.
        first = not plans and any(_pack(rest, pattern) for pattern in patterns)
        if not first:
            patterns = further
        best: tuple[Pattern, list[Placed]] | None = None
        for pattern in patterns:
            placed = _pack(rest, pattern)
            if placed and (best is None or len(placed) > len(best[1])):
                best = pattern, placed
        if best is None:
            raise ValueError(
                f"{view.part}: card {rest[0].number} ({rest[0].width:.0f} x "
                f"{rest[0].height:.0f} mm) finds no room on {paper.name}"
            )
        pattern, placed = best
        plans.append(Plan(words=words, first=first, pattern=pattern, cards=tuple(placed)))
        done = {spot.card.number for spot in placed}
        rest = tuple(card for card in rest if card.number not in done)
    return plans


def draw_plans(plans: list[Plan], paper: Paper, number: int) -> Iterator[Sheet]:
    """Draw the pages of one part, the first of them page `number` of the document."""
    for row, plan in enumerate(plans, start=1):
        pattern, view, part = plan.pattern, plan.words.view, plan.words.of_page(plan.first)
        cards = tuple(placed.card for placed in plan.cards)
        sheet = f"sheet {row} of {len(plans)}"
        across = pattern.width - LEFT_STRIP - EDGE
        top = pattern.height - EDGE
        marks: list[Mark] = border_marks(pattern.width, pattern.height, paper, number + row - 1)
        pieces = plan.words.body(pattern.column_width, plan.first)
        if pattern.head is None:
            pieces = [*head_down(view, part, cards, sheet, pattern.column_width), *pieces]
        else:
            head = head_across(view, part, cards, sheet, across)
            marks += moved(head.marks, LEFT_STRIP, top)
            top -= head.height
        places = flow(pieces, pattern.columns, pattern.words_height)
        assert places is not None, "the words were measured with the same pieces"
        for piece, (column, down) in zip(pieces, places, strict=True):
            x = LEFT_STRIP + column * (pattern.column_width + COLUMN_GAP)
            marks += moved(piece.marks, x, top - down)
        for placed in plan.cards:
            marks += moved(placed.card.marks, placed.dx, placed.dy)
        yield Sheet(
            page=Page(
                width=pattern.width, height=pattern.height, marks=tuple(marks), entry=part.entry
            ),
            cards=plan.cards,
            part=part.part,
        )


def border_marks(width: float, height: float, paper: Paper, number: int) -> list[Mark]:
    """Draw the bars of 150 across and 100 down, the page's number, and how it is printed."""
    marks = bar(3.0, 2.6, 150.0)
    marks += bar(2.4, height - 4.0, 100.0, down=True)
    marks.append(Text(x=6.6, y=height - 54.0, text="100.0 ±0.2", anchor="middle", angle=90))
    marks.append(Text(x=155.0, y=1.4, text="150.0 ±0.3"))
    marks.append(Text(x=width - EDGE, y=1.4, text=f"page {number}", anchor="end"))
    marks.append(
        Text(
            x=3.0,
            y=5.2,
            text="Measure both bars with a steel rule today. Wrong? Print again at 100 %, actual "
            "size. Still? Calibrate, or trust a rule and the figures.",
        )
    )
    marks.append(
        Text(
            x=3.0,
            y=9.2,
            text=f"SCALE 1:1. Page {paper.width:.5g} x {paper.height:.5g} mm for {paper.sheet}. "
            f"{paper.correction} + or -: a little more or less.",
        )
    )
    return marks
