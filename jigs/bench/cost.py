"""What stations cost at the bench: cards to cut, flaps to fold, cards to set, lines to strike."""

from collections.abc import Iterable, Sequence

from msgspec import Struct

from jigs.bench.boxtable import box_tables
from jigs.bench.station import Station


class BenchCost(Struct, frozen=True, kw_only=True):
    """The work that the paper asks for."""

    stations: int
    cards: int
    """To cut, copies counted."""
    folds: int
    """To fold, on all copies."""
    settings: int
    """How often a card is set."""
    lines: int
    """To strike; one across both boards of a box is one line, a middle too."""


class PaperCost(Struct, frozen=True, kw_only=True):
    """What a file asks for, once it is printed."""

    pages: int
    cards: int
    """To cut, copies counted."""
    folds: int
    """To fold, on all copies."""
    lines: int
    """To strike on the parts."""


def cost_of(stations: Sequence[Station]) -> BenchCost:
    """Count what some stations cost."""
    cards = [card for station in stations for card in station.cards]
    struck = sum(table.strokes for table in box_tables(stations))
    return BenchCost(
        stations=len(stations),
        cards=sum(card.copies for card in cards),
        folds=sum(card.copies * card.folds for card in cards),
        settings=sum(card.settings for card in cards),
        lines=struck + len(set(_struck_elsewhere(stations))),
    )


def _struck_elsewhere(stations: Iterable[Station]) -> Iterable[tuple[object, ...]]:
    """Name the lines that are not told by the tables of boxes: those down the sides, and all on
    other parts; one that two settings share is one line."""
    for station in stations:
        for row in station.rows:
            board = row.part.board
            face = (row.part.id, station.face, board and (board.column, board.side))
            for setting in row.settings:
                if setting.x is not None:
                    yield (*face, setting.x.start, round(setting.x.value, 1))
                if setting.y is not None and station.work != "sides":
                    yield (*face, setting.y.start, round(setting.y.value, 1))
