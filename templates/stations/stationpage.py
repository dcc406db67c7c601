"""The pages of a station: its title with its steps, its cards, the table of its parts.

Cards hang from the title in the order in which they are taken up; the table follows them and flows
over as many pages as it needs. The paper lies where a card is too wide for it upright, or where it
so holds the table too; a card that is as high as the page has its title beside it.
"""

from collections.abc import Iterable, Iterator, Sequence

from msgspec import Struct, field
from msgspec.structs import replace

from jigs.bench.station import Station
from jigs.ground.shared import Shared
from templates.page.border import BOTTOM_STRIP, EDGE, LEFT_STRIP, border_marks
from templates.page.marks import Mark, Page
from templates.page.packing import Size, place_sizes
from templates.page.paper import Paper
from templates.page.pieces import GAP, MarkBlock, moved
from templates.stations.sidetable import side_blocks
from templates.stations.stationcard import DrawnCard, draw_copies
from templates.stations.stationhead import StationHead
from templates.stations.stationrows import rows_of
from templates.stations.stationview import Shop
from templates.stations.tablepieces import TableBlock
from templates.words.stationwords import drilled_faces, station_title

BETWEEN = 2.0
"""Between two cards, mm."""
COLUMN = 34.0
"""Least width of a title beside a card, mm."""


class PlacedCard(Struct, frozen=True, kw_only=True):
    """A card on a page; (dx, dy) moves its own frame to the page, mm."""

    drawn: DrawnCard
    dx: float
    dy: float


class PlacedMarks(Struct, frozen=True):
    """What stands in one piece on a page, and how far it is moved for that; mm."""

    marks: tuple[Mark, ...]
    dx: float
    dy: float


class StationPage(Struct, frozen=True, kw_only=True):
    """A page of a station as it is laid out, and the cards on it; drawn when it is asked for."""

    station: Station
    paper: Paper
    number: int
    width: float
    height: float
    opens: bool
    """Whether it is the first one of its station."""
    pieces: tuple[PlacedMarks, ...]
    cards: tuple[PlacedCard, ...]
    begins: tuple[tuple[str, int], ...]
    """The boxes and columns whose tables begin on it."""

    @property
    def page(self) -> Page:
        """The page, drawn anew each time."""
        holes = bool(self.cards) or self.opens
        marks = border_marks(
            self.width, self.height, self.paper, self.number, holes=holes, brief=True
        )
        for piece in self.pieces:
            marks += moved(piece.marks, piece.dx, piece.dy)
        name = station_title(self.station)
        drawn = Page(width=self.width, height=self.height, marks=tuple(marks), entry=name)
        return self.paper.scaled(drawn)


class _Draft(Struct, kw_only=True):
    """A page while it is filled, and how far down from its top it is; mm."""

    width: float
    height: float
    pieces: list[PlacedMarks] = field(default_factory=list)
    cards: list[PlacedCard] = field(default_factory=list)
    used: float = 0.0
    begins: list[tuple[str, int]] = field(default_factory=list)

    @property
    def inner(self) -> float:
        """The width between its borders, mm."""
        return self.width - LEFT_STRIP - EDGE

    @property
    def left(self) -> float:
        """What is left of its height, mm."""
        return self.height - EDGE - BOTTOM_STRIP - self.used

    def add(self, block: MarkBlock) -> None:
        """Add a block below what stands there."""
        top = self.height - EDGE - self.used
        self.pieces.append(PlacedMarks(block.marks, LEFT_STRIP, top))
        self.used += block.height + GAP


BegunPage = tuple[_Draft, Size]
"""A page begun in one way to lay it out, and its room for cards."""


def station_pages(
    shop: Shop,
    station: Station,
    paper: Paper,
    first: int,
    *,
    told: Sequence[str],
    reason: str = "",
) -> list[StationPage]:
    """Lay out the pages of a station, of which the first has the number `first`. `told`: its
    steps; `reason`: what tells it from its like."""
    faces = drilled_faces(station, shop.views_of(station))
    heading = StationHead(station=station, faces=faces, reason=reason, told=told)
    ways = list(_ways(heading, paper, 0))
    rooms = [room for _, room in ways]
    # Copies of a card differ by a word, most rows of a long table by some figures.
    shared = Shared()
    cards = [
        replace(drawn, marks=tuple(map(shared.one, drawn.marks)))
        for card in station.cards
        for drawn in draw_copies(shop, station, card, rooms)
    ]
    width = min(paper.width, paper.height) - LEFT_STRIP - EDGE
    blocks = (side_blocks if station.work == "sides" else rows_of)(shop, station, width)
    table = [_share_block(shared, each) for each in blocks]
    drafts = _card_pages(heading, cards, paper, ways, _height(table))
    last = drafts[-1]
    begun: _Draft | None = None
    for each in table:
        begun_with = each.first or each.block
        height = each.block.height if begun is last else begun_with.height + each.head.height + GAP
        if height > last.left:
            last = _new(heading, paper.width, paper.height, len(drafts))
            drafts.append(last)
        if begun is last:
            last.add(each.block)
        else:
            last.add(each.head)
            last.add(begun_with)
            begun = last
        last.begins += [each.begins] if each.begins else []
    return [
        StationPage(
            station=station,
            paper=paper,
            number=first + row,
            width=draft.width,
            height=draft.height,
            opens=row == 0,
            pieces=tuple(draft.pieces),
            cards=tuple(draft.cards),
            begins=tuple(draft.begins),
        )
        for row, draft in enumerate(drafts)
    ]


def _share_block(shared: Shared, table: TableBlock) -> TableBlock:
    """Give a block that shares its marks with others that have the same."""

    def share(block: MarkBlock) -> MarkBlock:
        return MarkBlock(height=block.height, marks=tuple(map(shared.one, block.marks)))

    first = None if table.first is None else share(table.first)
    return replace(table, block=share(table.block), first=first)


def _new(heading: StationHead, width: float, height: float, number: int) -> _Draft:
    """Begin a page with its title."""
    draft = _Draft(width=width, height=height)
    draft.add(heading.across(draft.inner, number))
    return draft


def _height(table: Sequence[TableBlock]) -> float:
    """How high a table is that goes over no page, mm."""
    if not table:
        return 0.0
    first, *rest = table
    blocks = [first.head, first.first or first.block, *(each.block for each in rest)]
    return sum(block.height + GAP for block in blocks)


def _card_pages(
    heading: StationHead,
    cards: Sequence[DrawnCard],
    paper: Paper,
    first: Sequence[BegunPage],
    table: float,
) -> list[_Draft]:
    """Share the cards among pages, as many on each as find room, in their order; `first`: the ways
    to lay out the first of them; `table`: how high the table below them is, mm."""
    drafts: list[_Draft] = []
    rest = list(cards)
    while rest or not drafts:
        number = len(drafts)
        ways = _ways(heading, paper, number) if drafts else first
        draft, taken = _fill(heading, rest, paper, ways, number, table)
        drafts.append(draft)
        rest = rest[taken:]
    return drafts


def _ways(heading: StationHead, paper: Paper, number: int) -> Iterator[BegunPage]:
    """Begin a page in each way that it can be laid out, upright or lying, and give the room for
    cards: below its title, or beside one that is still to come."""
    for across in (True, False):
        for width, height in ((paper.width, paper.height), (paper.height, paper.width)):
            if across:
                draft = _new(heading, width, height, number)
                yield draft, (draft.inner, draft.left)
            else:
                draft = _Draft(width=width, height=height)
                yield draft, (draft.inner - COLUMN - BETWEEN, draft.left)


def _fill(
    heading: StationHead,
    cards: Sequence[DrawnCard],
    paper: Paper,
    ways: Iterable[BegunPage],
    number: int,
    table: float,
) -> tuple[_Draft, int]:
    """Begin a page with as many of the first cards as the first way to lay it out holds that holds
    any; but with all of them in another way that has room for the whole table below them too."""
    found: tuple[_Draft, int] | None = None
    for draft, room in ways:
        taken = _most(cards, room)
        if taken < (len(cards) if found else min(1, len(cards))):
            continue
        beside = not draft.used
        _hang(draft, cards[:taken], room)
        if beside:
            head = heading.beside(COLUMN, number)
            left, top = draft.width - EDGE - COLUMN, draft.height - EDGE
            draft.pieces.append(PlacedMarks(head.marks, left, top))
            draft.used = max(draft.used, head.height)
        if taken == len(cards) and table <= draft.left:
            return draft, taken
        found = found or (draft, taken)
        if table > paper.height:
            break
    if found is not None:
        return found
    card = cards[0]
    raise ValueError(
        f"{heading.station.name}: card {card.card.letter} ({card.width:.0f} x {card.height:.0f} "
        f"mm) finds no room on {paper.name}"
    )


def _most(cards: Sequence[DrawnCard], room: Size) -> int:
    """Count how many of the first cards a room holds together."""
    taken = 0
    while taken < len(cards) and _places(cards[: taken + 1], room) is not None:
        taken += 1
    return taken


def _places(cards: Sequence[DrawnCard], room: Size) -> tuple[Size, ...] | None:
    return place_sizes([(card.width, card.height) for card in cards], room, BETWEEN)


def _hang(draft: _Draft, cards: Sequence[DrawnCard], room: Size) -> None:
    """Hang cards from what stands at the top of a page."""
    places = _places(cards, room)
    assert places is not None, "they were counted so that they find room"
    top = draft.height - EDGE - draft.used
    deepest = 0.0
    for card, (x, y) in zip(cards, places, strict=True):
        dx, dy = LEFT_STRIP + x - card.box[0], top - y - card.height - card.box[1]
        draft.cards.append(PlacedCard(drawn=card, dx=dx, dy=dy))
        draft.pieces.append(PlacedMarks(card.marks, dx, dy))
        deepest = max(deepest, y + card.height)
    draft.used += deepest + BETWEEN
