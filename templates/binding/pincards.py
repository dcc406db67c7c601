"""The pin cards of a job's sheets: the stations' own, for the rows of pins that no other card sets.

One card serves all rows of all boards; a fresh copy is taken up where one is worn. Each copy has a
card's number and stands with the first board that it is set on; each board has a table of the
lines that are struck on it, with the crosses that are bored there.
"""

from collections.abc import Callable, Hashable, Iterable, Iterator, Sequence

from msgspec import Struct, field
from msgspec.structs import replace

from jigs.bench.benchpart import board_face
from jigs.bench.placing import Alike, Placing, shape_of
from jigs.bench.sides import place_pins
from jigs.bench.station import SETTINGS_A_PIN_CARD, Offset, Setting, Station, StationCard
from jigs.bench.stations import pin_station
from jigs.box.parts import Layout
from jigs.given.kinds import kind_of
from jigs.ground.geometry import Axis, Fitting, Hand
from templates.binding.once import Cards
from templates.binding.planning import FaceCards
from templates.cards.card import Card
from templates.cards.ticks import Member
from templates.faces.faceview import FaceView
from templates.faces.reference import Reference
from templates.page.packing import Size
from templates.sheets.field import NoRoomError
from templates.sheets.pintable import PinLine, PinRows
from templates.stations.stationcard import draw_copies
from templates.stations.stationview import Shop, shop_of
from templates.words.pinwords import CARD
from templates.words.rowwords import cross_numbers
from templates.words.sidewords import beside_words, row_words


class PinCard(Struct, kw_only=True):
    """A copy of a pin card, as it is set on boards one after the other; `rooms`: the sizes that
    the page of the first has for it."""

    number: int
    rooms: Sequence[Size]
    placed: list[tuple[FaceView, Placing]] = field(default_factory=list)

    def stands_with(self, view: FaceView) -> bool:
        """Tell whether it stands on the page of a face."""
        return self.placed[0][0] is view


class PinCards:
    """The pin cards of a job, numbered with its other `cards`."""

    def __init__(self, layout: Layout, cards: Cards) -> None:
        self._layout, self._cards = layout, cards
        self._sides = {_face(side.board, side.column, side.side): side for side in layout.sides}
        self._alike = Alike()
        self._taken: dict[Hashable, PinCard] = {}
        self._shop: Shop | None = None
        self._stations: dict[int, Station] = {}

    def use(
        self, view: FaceView, made: Iterable[Card], make: Callable[[], FaceCards]
    ) -> list[PinCard]:
        """Set pin cards wherever a face has pins that are on no card `made` for it; `make` makes
        its cards, from which the sizes are known that its page has for a pin card."""
        fittings = _left_over(view, made)
        if not fittings:
            return []
        part = board_face(self._sides[_face(view.part, view.column, view.side)])
        used: dict[int, PinCard] = {}
        placed = sorted(place_pins(part, fittings), key=lambda each: (each.y.at, each.x.at))
        for placing in placed:
            pattern = self._alike.number(*shape_of(placing))
            key = (pattern, view.part, view.key) if self._cards.each else pattern
            card = self._taken.get(key)
            if card is None or len(card.placed) == SETTINGS_A_PIN_CARD:
                card = PinCard(number=self._cards.next_number(), rooms=make()[2])
                self._taken[key] = card
            card.placed.append((view, placing))
            used[card.number] = card
        return list(used.values())

    def drawn(self, pins: PinCard) -> Card:
        """Draw a card for all that it is set on.

        Raises NoRoomError if no page has room for it.
        """
        if self._shop is None:
            self._shop = shop_of(self._layout)
        first = pins.placed[0][0]
        station = self._station(pins)
        (card,) = station.cards
        try:
            (drawn,) = draw_copies(self._shop, station, card, pins.rooms)
        except ValueError:
            raise NoRoomError(first.part) from None
        row = next(fitting for fitting in first.fittings if kind_of(fitting).on_crosses)
        return Card(
            number=pins.number,
            view=first,
            fittings=(replace(row, holes=card.holes),),
            box=drawn.box,
            edges=tuple(_references(card)),
            index=(),
            ladder=None,
            drawn=drawn.marks,
            members=tuple(
                Member(view=view, serves="", dx=placing.x.at, dy=placing.y.at, setting=setting)
                for view, placing, setting in _settings(pins, station)
            ),
        )

    def rows(self, pins: PinCard, view: FaceView) -> Iterator[PinRows]:
        """Give the lines of a face that a card is set on, those where it lies alike together."""
        assert view.side is not None, "boards alone have pins"
        station = self._station(pins)
        (card,) = station.cards
        fronts: dict[PinLine, set[bool]] = {}
        where: dict[tuple[PinLine, Offset | None], str] = {}
        for of, placing, setting in _settings(pins, station):
            if of is view and setting.y is not None:
                height = round(setting.y.value - view.state.low, 3)
                line = PinLine(height, cross_numbers(setting.holes or (), setting.turned))
                words = beside_words(setting, view.side)
                if setting.x is None:
                    fronts.setdefault(line, set()).add(placing.x.start == view.side)
                    words = row_words(fronts[line])
                where[line, setting.x] = words
        for words in dict.fromkeys(where.values()):
            lines = tuple(line for (line, _), its in where.items() if its == words)
            yield PinRows(card=pins.number, code=card.code, where=words, lines=lines)

    def _station(self, pins: PinCard) -> Station:
        if pins.number not in self._stations:
            placed = [placing for _, placing in pins.placed]
            named = pin_station(self._layout, placed, CARD.format(pins.number))
            self._stations[pins.number] = named
        return self._stations[pins.number]


def _settings(pins: PinCard, station: Station) -> Iterator[tuple[FaceView, Placing, Setting]]:
    """Give where a card is set, in the order of its boards: on which face, and how."""
    for row in station.rows:
        board = row.part.board
        assert board is not None, "boards alone have pins"
        face = _face(row.part.id, board.column, board.side)
        mine = [each for each in pins.placed
                if _face(each[0].part, each[0].column, each[0].side) == face]  # fmt: skip
        for (view, placing), setting in zip(mine, row.settings, strict=True):
            yield view, placing, setting


def _face(part: str, column: int | None, side: Hand | None) -> Hashable:
    return part, column, side


def _left_over(view: FaceView, made: Iterable[Card]) -> list[Fitting]:
    """Give the rows of pins of a face that are on no card, or what is left of them."""
    there = {(hole.x, hole.y) for card in made for hole in card.holes}
    rows = [fitting for fitting in view.fittings if kind_of(fitting).on_crosses]
    left = [
        replace(row, holes=tuple(hole for hole in row.holes if (hole.x, hole.y) not in there))
        for row in rows
    ]
    return [row for row in left if row.holes]


def _references(card: StationCard) -> Iterator[Reference]:
    """Give the edges of a pin card as those of a card are given: its origin lies on them."""
    for edge in card.edges:
        axis: Axis = "x" if edge.edge in ("left", "right") else "y"
        low = edge.edge in ("left", "bottom")
        yield Reference(
            axis=axis, kind="edge", edge=edge.edge, value=0.0, at=0.0, inward=1 if low else -1
        )
