"""A page of a sheet: bars along two borders, and fields, each within its frame."""

from collections.abc import Mapping, Sequence

from msgspec import Struct
from msgspec.structs import replace

from jigs.ground.geometry import rectangle
from templates.cards.card import Card
from templates.faces.faceview import FaceView
from templates.page.bars import bar
from templates.page.border import BOTTOM_STRIP, EDGE, LEFT_STRIP, border_marks
from templates.page.marks import Mark, Outline, Page, Text
from templates.page.packing import Size
from templates.page.paper import Paper
from templates.page.pieces import moved
from templates.sheets.field import Field, Shape
from templates.sheets.sharing import share_pages
from templates.sheets.sheetwords import SheetWords, set_words

PAD, FRAME = 0.7, 0.5
"""Between a field and its frame, and the frame's width, mm: frames lie in a page's borders."""
BETWEEN = 3.0
"""Between two fields, mm."""
SHORTEST = 116.0
"""The least height of a page's room off a roll, mm: the bar of 100 stands along it."""
LONG = 112.0
"""Where down the border a bar may begin that is longer than that of 100, mm."""
RAISED = 0.3
"""Between the words below and a frame, mm."""


class Placed(Struct, frozen=True, kw_only=True):
    """A card on a page; (dx, dy) moves the face's coordinates to the page's, mm."""

    card: Card
    dx: float
    dy: float


class Sheet(Struct, frozen=True, kw_only=True):
    """One sheet, ready to print: its page, and the cards on it as data. `parts` are those that
    it is for, () for what stands before the sheets."""

    page: Page
    cards: tuple[Placed, ...] = ()
    parts: tuple[str, ...] = ()


class Spot(Struct, frozen=True, kw_only=True):
    """A field on a page: which of its shapes it has, and its lower left corner, mm."""

    field: Field
    shape: Shape
    x: float
    y: float

    @property
    def top(self) -> float:
        """Its upper edge, mm."""
        return self.y + self.shape.height

    @property
    def cards(self) -> tuple[Placed, ...]:
        """Its cards in their places on the page."""
        return tuple(
            Placed(card=card, dx=self.x + x - card.box[0], dy=self.top - down - card.box[3])
            for card, (x, down) in zip(self.field.cards, self.shape.cards, strict=True)
        )

    def numbered(self, names: Sequence[str]) -> "Spot":
        """Say which of their parts' sheets its words and the rows among them are."""
        own, *rows = names
        words = self.field.words
        also = [replace(row, sheet=name) for row, name in zip(words.also, rows, strict=True)]
        words = replace(words, sheet=own, also=tuple(also))
        return replace(self, field=replace(self.field, words=words))

    def told(self, page: int, cards: Mapping[int, int], boxes: Mapping[str, int]) -> "Spot":
        """Give it, on a page, with the pages of the cards that stand elsewhere, by their numbers,
        and of the drawer box that it is marked through, by its name."""

        def with_pages(words: SheetWords, *, row: bool) -> SheetWords:
            marks = words.view.marks
            elsewhere = tuple(
                replace(card, page=cards[card.number], here=row and cards[card.number] == page)
                for card in words.elsewhere
            )
            return replace(
                words,
                elsewhere=elsewhere,
                pins=tuple(replace(rows, page=cards[rows.card]) for rows in words.pins),
                box_page=None if marks is None else boxes.get(marks.box),
                also=tuple(with_pages(each, row=True) for each in words.also),
            )

        return replace(
            self, field=replace(self.field, words=with_pages(self.field.words, row=False))
        )


class Plan(Struct, frozen=True, kw_only=True):
    """A planned page: its size, and its fields in their places."""

    width: float
    height: float
    spots: tuple[Spot, ...]

    @property
    def views(self) -> tuple[FaceView, ...]:
        """The faces that are drilled by it."""
        return tuple(view for spot in self.spots for view in spot.field.words.views)

    @property
    def cards(self) -> tuple[Placed, ...]:
        """The cards on the page."""
        return tuple(placed for spot in self.spots for placed in spot.cards)


def rooms_of(paper: Paper) -> tuple[Size, ...]:
    """Give what fields may take of a paper that stands, and of one that lies, mm."""
    if paper.longest is not None:
        return (_room(paper.width, paper.longest),)
    return (_room(paper.width, paper.height), _room(paper.height, paper.width))


def _room(width: float, height: float) -> Size:
    return (
        width - LEFT_STRIP - EDGE,
        height - BOTTOM_STRIP - EDGE - RAISED,
    )


def plan_pages(fields: Sequence[Field], paper: Paper) -> list[Plan]:
    """Share fields among pages. Off a roll, each has a page, cut to its height."""
    if paper.longest is not None:
        return [_cut(field, paper) for field in fields]
    rooms = rooms_of(paper)
    sizes = [tuple((s.width, s.height) for s in field.shapes) for field in fields]
    plans: list[Plan] = []
    for page in share_pages(sizes, rooms, BETWEEN):
        width, height = (paper.width, paper.height)[:: -1 if page.room else 1]
        spots: list[Spot] = []
        for number, size, (x, y) in page.fields:
            shape = fields[number].shapes[size]
            # Packing lays the first things low; turned over, they lie high.
            low = height - EDGE - y - shape.height
            spots.append(Spot(field=fields[number], shape=shape, x=LEFT_STRIP + x, y=low))
        plans.append(Plan(width=width, height=height, spots=tuple(spots)))
    return plans


def _cut(field: Field, paper: Paper) -> Plan:
    """Give a field a page off a roll, as short as it goes."""
    shape = min(field.shapes, key=lambda shape: shape.height)
    height = max(shape.height, SHORTEST) + BOTTOM_STRIP + RAISED + EDGE
    spot = Spot(field=field, shape=shape, x=LEFT_STRIP, y=height - EDGE - shape.height)
    return Plan(width=paper.width, height=height, spots=(spot,))


def draw_plan(plan: Plan, paper: Paper, number: int) -> Sheet:
    """Draw a page, page `number` of the document."""
    marks: list[Mark] = border_marks(plan.width, plan.height, paper, number, holes=True)
    marks += _long_bar(plan.height) if paper.large else []
    for spot in plan.spots:
        field, shape = spot.field, spot.shape
        if len(plan.spots) > 1:
            marks.append(_frame(spot.x, spot.y, shape.width, shape.height))
        marks += moved(set_words(field.words, field.cards, shape.setting), spot.x, spot.top)
    for placed in plan.cards:
        marks += moved(placed.card.marks, placed.dx, placed.dy)
    parts = tuple(dict.fromkeys(view.part for view in plan.views))
    return Sheet(
        page=Page(width=plan.width, height=plan.height, marks=tuple(marks), entry=", ".join(parts)),
        cards=plan.cards,
        parts=parts,
    )


def _long_bar(height: float) -> list[Mark]:
    """Draw a bar as long as the left border lets it be: the longer a page, the more a printer's
    error along it counts."""
    top = height - LONG
    length = (top - BOTTOM_STRIP - 4.0) // 100 * 100
    if length < 200.0:
        return []
    words = f"{length:.1f} ±{length * 0.002:.1f}"
    return [
        *bar(2.4, top, length, down=True),
        Text(x=6.6, y=top - length / 2, text=words, anchor="middle", angle=90),
    ]


def _frame(x: float, y: float, width: float, height: float) -> Outline:
    x0, y0, x1, y1 = x - PAD, y - PAD, x + width + PAD, y + height + PAD
    return Outline(points=rectangle(x0, y0, x1, y1), width=FRAME)
