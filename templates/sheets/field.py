"""A field: the words of one face and its cards in a rectangle of a page.

The words stand at the field's upper left corner, the cards beside and below them, each as high
and then as far left as it goes. A face that finds no room in one field goes on in a further one.
"""

from collections.abc import Iterator, Sequence

from msgspec import Struct

from templates.cards.card import Card
from templates.page.packing import PackOrder, Size, lay, orders
from templates.sheets.sheetwords import SetWords, SheetWords, settings_of

GUTTER = 2.0
"""Between cards, and between cards and words, mm."""


class Shape(Struct, frozen=True, kw_only=True):
    """A way to lay a field: its size, how its words are set, and the upper left corner of each
    card, to the right and down from the field's own; mm."""

    width: float
    height: float
    setting: SetWords
    cards: tuple[Size, ...]


class Field(Struct, frozen=True, kw_only=True):
    """Words and cards of one face that stand together, and the ways to lay them, the smallest
    first."""

    words: SheetWords
    cards: tuple[Card, ...]
    shapes: tuple[Shape, ...]


class NoRoomError(ValueError):
    """A card of a part, or what is said of it, finds no room on any page."""

    def __init__(self, part: str) -> None:
        super().__init__(f"{part}: a card or its words find no room on this paper")
        self.part = part


def fields_of(words: SheetWords, cards: Sequence[Card], rooms: Sequence[Size]) -> Iterator[Field]:
    """Give the fields of a face, as few as rooms of these sizes let there be.

    Raises NoRoomError for a card that none holds.
    """
    widths = [width for width, _ in rooms]
    rest = list(cards)
    while rest or words.first:
        words = words.with_cards(rest)
        settings = settings_of(words, widths)
        taken = list(rest)
        shapes = _shapes(settings, taken, rooms)
        if not shapes:
            taken, shapes = _most(settings, rest, rooms)
        if not shapes and words.first:
            words = words.with_cards([])
            shapes = _shapes(settings_of(words, widths), [], rooms)
        if not shapes:
            raise NoRoomError(words.view.part)
        yield Field(words=words, cards=tuple(taken), shapes=shapes)
        rest = [card for card in rest if card not in taken]
        words = words.again()


def single_field(words: SheetWords, cards: Sequence[Card], rooms: Sequence[Size]) -> Field | None:
    """Give the field of a face with all its cards; None where no room of these sizes holds it."""
    words = words.with_cards(cards)
    shapes = _shapes(settings_of(words, [width for width, _ in rooms]), cards, rooms)
    return Field(words=words, cards=tuple(cards), shapes=shapes) if shapes else None


def limits_of(words: SheetWords, rooms: Sequence[Size]) -> tuple[Size, ...]:
    """Give the largest cards that rooms hold beside or below the words of a face."""
    found: list[Size] = []
    settings = settings_of(words.again(), [width for width, _ in rooms])
    for setting in settings:
        for width, height in rooms:
            if setting.width <= width and setting.height <= height:
                found.append((width, height - setting.height - GUTTER))
                found.append((width - setting.width - GUTTER, height))
    return tuple(found)


def _most(
    settings: Sequence[SetWords], cards: Sequence[Card], rooms: Sequence[Size]
) -> tuple[list[Card], tuple[Shape, ...]]:
    """Take one card after the other that still finds room; give them and the ways to lay them."""
    taken: list[Card] = []
    shapes: tuple[Shape, ...] = ()
    for card in cards:
        if found := _shapes(settings, [*taken, card], rooms):
            taken, shapes = [*taken, card], found
    return taken, shapes


def _shapes(
    settings: Sequence[SetWords], cards: Sequence[Card], rooms: Sequence[Size]
) -> tuple[Shape, ...]:
    """Give the ways to lay some cards beside words, but for those of which another one is no
    wider and no higher."""
    sizes = [(card.width, card.height) for card in cards]
    ways = tuple(orders(sizes))
    found = [shape for setting in settings for shape in _laid(setting, sizes, ways, rooms)]
    kept: list[Shape] = []
    for shape in sorted(found, key=lambda shape: (shape.width, shape.height)):
        if not kept or shape.height < kept[-1].height - 0.5:
            kept.append(shape)
    return tuple(sorted(kept, key=lambda shape: shape.width * shape.height))


class _Way(Struct, frozen=True):
    """How cards lie beside words in a field that may be `end` wide: what they take of it, and
    their upper left corners; mm."""

    end: float
    width: float
    height: float
    cards: tuple[Size, ...]


def _laid(
    setting: SetWords, sizes: Sequence[Size], ways: Sequence[PackOrder], rooms: Sequence[Size]
) -> Iterator[Shape]:
    """Lay cards beside words that are set in one way, in several orders, in fields of several
    widths."""
    most, tallest = max(width for width, _ in rooms), max(height for _, height in rooms)
    row = sum(width + GUTTER for width, _ in sizes)
    widest = max((width for width, _ in sizes), default=0.0)
    ends = {setting.width, setting.width + GUTTER + widest, setting.width + row, row, widest}
    ends |= {width for width, _ in rooms}
    grown = [(width + GUTTER, height + GUTTER) for width, height in sizes]
    words = (setting.width + GUTTER, setting.height + GUTTER)
    laid: dict[PackOrder, list[_Way]] = {order: [] for order in ways}
    for end in ends:
        if end < max(setting.width, widest) or end > most + 1e-6:
            continue
        for order in ways:
            # Laid in a wider field, they may find room in this one as they lie.
            alike = (each for each in laid[order] if each.width <= end <= each.end)
            way = next(alike, None)
            if way is None:
                # Packing lays things low; upside down, that is high.
                room = (end + GUTTER, tallest + GUTTER)
                places = lay([words, *(grown[row] for row in order)], room)
                if places is None:
                    continue
                corners = dict(zip(order, places[1:], strict=True))
                way = _Way(
                    end,
                    max([setting.width, *(corners[k][0] + sizes[k][0] for k in order)]),
                    max([setting.height, *(corners[k][1] + sizes[k][1] for k in order)]),
                    tuple(corners[k] for k in range(len(sizes))),
                )
                laid[order].append(way)
            wide, high = way.width, way.height
            if any(wide <= w + 1e-6 and high <= h + 1e-6 for w, h in rooms):
                yield Shape(
                    width=wide,
                    height=high,
                    setting=setting,
                    cards=way.cards,
                )
