"""Small parts of one box on one page: each has a field of its own, with all its words and cards.

A field is framed by a wide line and is cut out first, so that no card is taken for another
part's. It says what a sheet says: the part with its symbol, the face to drill, its picture, its
sizes, the steps in short, and what applies to it. Only a face whose cards all find room on one
page stands in a field; the fields of a box are shared among pages.
"""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from templates.binding.alike import Batch
from templates.binding.planning import AnyPlan, draw_any
from templates.cards.card import Card
from templates.page.border import BOTTOM_STRIP, EDGE, LEFT_STRIP, border_marks
from templates.page.marks import WIDE, Line, Mark, Page
from templates.page.packing import CardRoom, Size
from templates.page.paper import Paper
from templates.page.pieces import GAP, MarkBlock, flow, least_height, moved, paragraph
from templates.sheets.panel import head_across, head_down
from templates.sheets.pattern import COLUMN_GAP, GUTTER, SIDE_COLUMNS, SheetWords
from templates.sheets.sharing import Shared, share_shapes
from templates.sheets.sheet import Placed, Plan, Sheet

PAD = 1.5
"""Between a field's line and what it frames, mm."""
BETWEEN = 3.0
"""Between two fields, mm."""
STRIP = 5.0
"""What the line at the top takes that names the parts, mm."""
CLEAR = 1.0
"""Between the borders' words and a field's line, mm."""
ACROSS = 150.0
"""A field at least so wide may have its head across, mm."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Field:
    """A way to lay words and cards of one face in a field, without its frame; mm.

    `head`: the head lies across. Words flow down `columns` of `column_width`, `words` high in
    all; the cards' lower left corners are counted from the field's.
    """

    width: float
    height: float
    head: bool
    columns: int
    column_width: float
    words: float
    cards: tuple[Size, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Small:
    """A face that may share a page: its words, its cards, the fields it may have."""

    plan: Plan
    sheet: str
    cards: tuple[Card, ...]
    fields: tuple[Field, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Leaf:
    """A page of a box: one plan, or several small faces in fields. `parts`: box and ID of each
    part on it."""

    parts: tuple[tuple[str, str], ...]
    plan: AnyPlan | None = None
    sheet: str = ""
    small: tuple[Small, ...] = ()
    shared: Shared | None = None


def leaves_of_part(batch: Batch, plans: Sequence[AnyPlan]) -> list[Leaf]:
    """Give each plan a page of its own."""
    return [
        Leaf(parts=batch.parts, plan=plan, sheet=f"sheet {row} of {len(plans)}")
        for row, plan in enumerate(plans, start=1)
    ]


def leaves_of_box(planned: Sequence[tuple[Batch, list[AnyPlan]]], paper: Paper) -> list[Leaf]:
    """Plan the pages of one box, its small faces together; a page that they would not share
    stays as it is."""
    leaves: list[Leaf] = []
    small: dict[int, Small] = {}
    for batch, plans in planned:
        pages = Counter(plan.words.view.key for plan in plans)
        for leaf, plan in zip(leaves_of_part(batch, plans), plans, strict=True):
            alone = pages[plan.words.view.key] == 1 and not plan.words.part.members
            if alone and isinstance(plan, Plan):
                face = _small(plan, leaf.sheet, paper)
                if face.fields:
                    small[len(leaves)] = face
            leaves.append(leaf)
    if len(small) < 2:
        return leaves
    rows = list(small)
    fields = share_shapes(
        tuple(tuple(_framed(field) for field in small[row].fields) for row in rows),
        (),
        _rooms(paper),
        BETWEEN,
    )
    for shared in fields:
        if len(shared.cards) < 2:
            continue
        mine = [rows[number] for number, _ in shared.cards]
        leaves[min(mine)] = Leaf(
            parts=tuple(dict.fromkeys(part for row in sorted(mine) for part in leaves[row].parts)),
            small=tuple(small[row] for row in mine),
            shared=shared,
        )
        for row in mine:
            if row != min(mine):
                leaves[row] = Leaf(parts=())
    return [leaf for leaf in leaves if leaf.parts]


def draw_leaf(leaf: Leaf, paper: Paper, number: int) -> Sheet:
    """Draw a page of a box, page `number` of the document."""
    if leaf.plan is not None:
        return draw_any(leaf.plan, paper, number, leaf.sheet)
    assert leaf.shared is not None, "a leaf has one plan or is shared"
    room = _rooms(paper)[leaf.shared.room]
    width, height = (paper.width, paper.height)[:: -1 if leaf.shared.room else 1]
    parts = tuple(dict.fromkeys(part for _, part in leaf.parts))
    names = ", ".join(parts)
    top = height - EDGE
    marks: list[Mark] = border_marks(width, height, paper, number, holes=True)
    head = _head(names, room.width)
    if head.height > STRIP:  # each field has its name too
        head = _head(f"{len(parts)} parts", room.width)
    marks += moved(head.marks, LEFT_STRIP, top)
    placed: list[Placed] = []
    fields = [each.fields[n] for each, n in zip(leaf.small, leaf.shared.shapes, strict=True)]
    corners = [corner for _, corner in leaf.shared.cards]
    used = max(y + _framed(field)[1] for (_, y), field in zip(corners, fields, strict=True))
    for small, field, (x, y) in zip(leaf.small, fields, corners, strict=True):
        x, y = LEFT_STRIP + CLEAR + x, BOTTOM_STRIP + CLEAR + y + room.height - used
        marks += _frame(x, y, _framed(field))
        marks += _words(small, field, x + PAD, y + PAD + field.height)
        for card, (left, low) in zip(small.cards, field.cards, strict=True):
            spot = Placed(
                card=card, dx=x + PAD + left - card.box[0], dy=y + PAD + low - card.box[1]
            )
            marks += moved(card.marks, spot.dx, spot.dy)
            placed.append(spot)
    page = Page(width=width, height=height, marks=tuple(marks), entry=names)
    return Sheet(page=page, cards=tuple(placed), part=leaf.parts[0][1])


def _head(parts: str, width: float) -> MarkBlock:
    return paragraph(
        f"ON THIS PAGE: {parts}. Cut along the wide lines first: each field is one face of one "
        "part.",
        width,
        bold=True,
    )


def _rooms(paper: Paper) -> tuple[CardRoom, ...]:
    return tuple(
        CardRoom(width - LEFT_STRIP - EDGE - CLEAR, height - STRIP - BOTTOM_STRIP - EDGE - CLEAR)
        for width, height in ((paper.width, paper.height), (paper.height, paper.width))
    )


def _framed(field: Field) -> Size:
    return field.width + 2 * PAD, field.height + 2 * PAD


def _frame(x: float, y: float, size: Size) -> Iterator[Mark]:
    x1, y1 = x + size[0], y + size[1]
    for a, b, c, d in ((x, y, x1, y), (x1, y, x1, y1), (x1, y1, x, y1), (x, y1, x, y)):
        yield Line(x1=a, y1=b, x2=c, y2=d, width=2 * WIDE)


def _small(plan: Plan, sheet: str, paper: Paper) -> Small:
    """Give the fields that a face may have: words beside its cards or above them."""
    cards = tuple(placed.card for placed in plan.cards)
    rooms = [(room.width - 2 * PAD, room.height - 2 * PAD) for room in _rooms(paper)]
    found: list[Field] = []
    for places, width, height in _arranged(cards):
        for column in (*SIDE_COLUMNS, width):
            if column < SIDE_COLUMNS[0]:
                continue
            pieces = _pieces_down(plan.words, cards, sheet, column)
            words = sum(piece.height + GAP for piece in pieces)
            beside = _field(column + GUTTER + width, max(words, height), column, words)
            found.append(_laid(beside, places, column + GUTTER, height))
            above = _field(max(column, width), words + GUTTER + height, column, words)
            found.append(_laid(above, places, 0.0, height, low=True))
        for across in {max(ACROSS, width), *(room[0] for room in rooms)}:
            found += _field_across(plan.words, cards, sheet, across, places, width, height)
    fit = [f for f in found if any(f.width <= w and f.height <= h for w, h in rooms)]
    return Small(plan=plan, sheet=sheet, cards=cards, fields=tuple(_least(fit)))


def _field(width: float, height: float, column: float, words: float) -> Field:
    return Field(
        width=width,
        height=height,
        head=False,
        columns=1,
        column_width=column,
        words=words,
        cards=(),
    )


def _laid(
    field: Field, places: tuple[Size, ...], x: float, height: float, *, low: bool = False
) -> Field:
    """Put the cards into a field: at its foot, or at its top beside the words."""
    y = 0.0 if low else field.height - height
    return Field(
        width=field.width,
        height=field.height,
        head=field.head,
        columns=field.columns,
        column_width=field.column_width,
        words=field.words,
        cards=tuple((x + left, y + down) for left, down in places),
    )


def _field_across(
    words: SheetWords,
    cards: tuple[Card, ...],
    sheet: str,
    across: float,
    places: tuple[Size, ...],
    width: float,
    height: float,
) -> Iterator[Field]:
    """Lay the head across a field, two or three columns below it, and then the cards."""
    if width > across:
        return
    head = head_across(words.view, words.part, None, sheet, across).height
    for columns in (2, 3):
        column = (across - (columns - 1) * COLUMN_GAP) / columns
        if column < 58.0:
            continue
        least = least_height(_body(words, cards, column), columns, 400.0)
        if least is not None:
            whole = head + least + GUTTER + height
            yield Field(
                width=across,
                height=whole,
                head=True,
                columns=columns,
                column_width=column,
                words=least,
                cards=places,
            )


def _least(fields: list[Field]) -> Iterator[Field]:
    """Leave out fields of which another one is no wider and no higher."""
    kept: list[Field] = []
    for field in sorted(fields, key=lambda field: (field.width, field.height)):
        if not kept or field.height < kept[-1].height - 0.5:
            kept.append(field)
    return iter(kept)


def _arranged(cards: tuple[Card, ...]) -> Iterator[tuple[tuple[Size, ...], float, float]]:
    """Lay cards in a row, and one above the other; give their places, width and height."""
    x, places = 0.0, []
    for card in cards:
        places.append((x, 0.0))
        x += card.width + GUTTER
    yield tuple(places), x - GUTTER, max(card.height for card in cards)
    if len(cards) > 1:
        y, places = 0.0, []
        for card in cards:
            places.append((0.0, y))
            y += card.height + GUTTER
        yield tuple(places), max(card.width for card in cards), y - GUTTER


def _body(words: SheetWords, cards: tuple[Card, ...], width: float) -> list[MarkBlock]:
    """What holds for the face and the part."""
    return words.for_cards(cards).body(width, True)


def _pieces_down(
    words: SheetWords, cards: tuple[Card, ...], sheet: str, width: float
) -> list[MarkBlock]:
    return [*head_down(words.view, words.part, cards, sheet, width), *_body(words, cards, width)]


def _words(small: Small, field: Field, x: float, top: float) -> list[Mark]:
    """Draw the words of a field from its upper left corner down."""
    words, marks = small.plan.words, list[Mark]()
    if field.head:
        head = head_across(words.view, words.part, small.cards, small.sheet, field.width)
        marks += moved(head.marks, x, top)
        top -= head.height
        pieces = _body(words, small.cards, field.column_width)
    else:
        pieces = _pieces_down(words, small.cards, small.sheet, field.column_width)
    places = flow(pieces, field.columns, field.words + 1e-6)
    assert places is not None, "the words were measured with the same pieces"
    for piece, (column, down) in zip(pieces, places, strict=True):
        marks += moved(piece.marks, x + column * (field.column_width + COLUMN_GAP), top - down)
    return marks
