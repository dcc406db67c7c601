"""A page of a sheet: bars along two borders, the words in columns, the cards where they fit.

The paper stands or lies, and the words take the top or a column, whichever lets the face do
with the fewest pages.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from templates.card import Card, make_cards
from templates.faces import FaceView
from templates.lettering import bar
from templates.marks import Mark, Page, Text
from templates.panel import PartWords, Piece, flow, least_height, moved, pieces_for
from templates.paper import Paper

LEFT_STRIP, BOTTOM_STRIP = 8.2, 14.5
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

    `room` is x0, y0, width, height of the place for cards, mm.
    """

    width: float
    height: float
    columns: int
    column_width: float
    words_height: float
    room: tuple[float, float, float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """One sheet, ready to print: its page, and the cards on it as data. `part` and `face` say
    what it is for; None for the pack's first page."""

    page: Page
    cards: tuple[Placed, ...]
    part: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class _Plan:
    view: FaceView
    steps: tuple[str, ...]
    pattern: Pattern
    cards: tuple[Placed, ...]


def _patterns(
    view: FaceView, words: PartWords, steps: tuple[str, ...], paper: Paper
) -> list[Pattern]:
    """All ways to divide the paper in which the words find room."""
    result: list[Pattern] = []
    measured: dict[float, list[Piece]] = {}

    def pieces(width: float) -> list[Piece]:
        if width not in measured:
            measured[width] = pieces_for(view, words, steps, (), "sheet 1 of 1", width)
        return measured[width]

    for width, height in ((paper.width, paper.height), (paper.height, paper.width)):
        across = width - LEFT_STRIP - EDGE
        down = height - BOTTOM_STRIP - EDGE
        for columns in TOP_COLUMNS:
            column = (across - (columns - 1) * COLUMN_GAP) / columns
            if not 58.0 <= column <= 110.0:
                continue
            least = least_height(pieces(column), columns, down - 40.0)
            if least is not None:
                result.append(
                    Pattern(
                        width=width,
                        height=height,
                        columns=columns,
                        column_width=column,
                        words_height=least,
                        room=(LEFT_STRIP, BOTTOM_STRIP, across, down - least - GUTTER),
                    )
                )
        for column in SIDE_COLUMNS:
            if flow(pieces(column), 1, down) is not None:
                result.append(
                    Pattern(
                        width=width,
                        height=height,
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
    """Lay as many cards as fit, in order, in rows from the top left of the room."""
    x0, y0, width, height = pattern.room
    placed: list[Placed] = []
    x, top, row = 0.0, height, 0.0
    for card in cards:
        if x > 0.0 and x + card.width > width + 1e-6:
            x, top, row = 0.0, top - row - GUTTER, 0.0
        if card.width > width + 1e-6 or card.height > top + 1e-6:
            break
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


def plan_face(
    view: FaceView, words: PartWords, steps: tuple[str, ...], paper: Paper
) -> list[_Plan]:
    """Divide the cards of one face over as few pages as the patterns allow."""
    patterns = _patterns(view, words, steps, paper)
    rooms = tuple((pattern.room[2], pattern.room[3]) for pattern in patterns)
    rest = make_cards(view, rooms)
    plans: list[_Plan] = []
    while rest:
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
        plans.append(_Plan(view=view, steps=steps, pattern=pattern, cards=tuple(placed)))
        rest = rest[len(placed) :]
    return plans


def draw_plans(plans: list[_Plan], words: PartWords, paper: Paper) -> Iterator[Sheet]:
    """Draw the pages of one part."""
    for row, plan in enumerate(plans, start=1):
        pattern = plan.pattern
        cards = tuple(placed.card for placed in plan.cards)
        pieces = pieces_for(
            plan.view,
            words,
            plan.steps,
            cards,
            f"sheet {row} of {len(plans)}",
            pattern.column_width,
        )
        places = flow(pieces, pattern.columns, pattern.words_height)
        assert places is not None, "the words were measured with the same pieces"
        marks: list[Mark] = border_marks(pattern.width, pattern.height, paper)
        for piece, (column, down) in zip(pieces, places, strict=True):
            x = LEFT_STRIP + column * (pattern.column_width + COLUMN_GAP)
            marks += moved(piece.marks, x, pattern.height - EDGE - down)
        for placed in plan.cards:
            marks += moved(placed.card.marks, placed.dx, placed.dy)
        yield Sheet(
            page=Page(
                width=pattern.width, height=pattern.height, marks=tuple(marks), entry=words.part
            ),
            cards=plan.cards,
            part=words.part,
        )


def border_marks(width: float, height: float, paper: Paper) -> list[Mark]:
    """Draw the bars of 150 across and 100 down, and how the page is to be printed."""
    marks = bar(3.0, 2.6, 150.0)
    marks += bar(2.4, height - 4.0, 100.0, down=True)
    marks.append(Text(x=6.6, y=height - 54.0, text="100.0 ±0.2", anchor="middle", angle=90))
    marks.append(Text(x=156.0, y=1.4, text="150.0 ±0.3"))
    marks.append(
        Text(
            x=3.0,
            y=5.6,
            text="Too short or long? Print again at 100 %, actual size. Still? Use the written "
            "distances and a rule.",
        )
    )
    marks.append(
        Text(
            x=3.0,
            y=9.8,
            text=f"SCALE 1:1. Page {paper.width:g} x {paper.height:g} mm for {paper.sheet}. "
            "Measure both bars with a steel rule today. Inches: +, - a little more, less.",
        )
    )
    return marks
