"""The figures of a card that is set by two edges say which way they run in words that its flaps do
not have, and that hold however the card lies."""

import re

from jigs.bench.station import Station, StationCard
from jigs.bench.stations import plan_stations
from jigs.ground.lengths import format_mm
from templates.page.marks import Text
from templates.page.packing import Size
from templates.stations.stationcard import draw_copies
from templates.stations.stationview import Shop, shop_of
from tests.jigs.bench.test_stations import demo

ROOMS: tuple[Size, ...] = ((190.0, 250.0), (250.0, 190.0))
WAYS = {"across", "up", "down", "up/down"}


def corner_cards() -> list[tuple[Shop, Station, StationCard]]:
    layout = demo()
    return [
        (shop_of(layout), station, card)
        for station in plan_stations(layout, pilots=True)
        for card in station.cards
        if len(card.edges) == 2
    ]


def texts(shop: Shop, station: Station, card: StationCard) -> list[str]:
    drawn = draw_copies(shop, station, card, ROOMS)[0]
    return [mark.text for mark in drawn.marks if isinstance(mark, Text)]


def ways_on(card: StationCard, said: list[str]) -> dict[str, set[str]]:
    """Give the figures behind which each word stands: large ones stand before their inches, those
    of a drawer box's corner with them."""
    found: dict[str, set[str]] = {}
    for before, text in zip(["", *said], said, strict=False):
        if match := re.fullmatch(r'[^"]+" ([a-z/]+)', text):
            found.setdefault(match[1], set()).add(before)
        elif match := re.fullmatch(r"([0-9.]+) \(.*\) ([a-z/]+)", text):
            found.setdefault(match[2], set()).add(match[1])
    return found


def test_no_flap_has_the_words_of_the_figures() -> None:
    """A rule laid from the wrong flap gives a figure that is on the card too."""
    kinds = set()
    for shop, station, card in corner_cards():
        said = texts(shop, station, card)
        ways = ways_on(card, said).keys()
        edges = shop.under(station, card).edges
        flaps = [edges[edge.edge].lower() for edge in card.edges]
        assert ways <= WAYS
        assert len(ways) == 2
        assert not any(re.search(rf"\b{way}\b", flap) for way in ways for flap in flaps)
        kinds.add(station.work)
    assert {"pulls", "drawer-boxes", "fronts-on-boxes"} <= kinds


def test_each_figure_runs_as_it_says() -> None:
    """Up from a lower edge, down from an upper one; of a card that also lies turned either."""
    turns = set()
    for shop, station, card in corner_cards():
        ways = ways_on(card, texts(shop, station, card))
        turned = {each.turned for row in station.rows for each in row.settings
                  if each.card == card.letter}  # fmt: skip
        low = any(edge.edge == "bottom" for edge in card.edges)
        way = "up/down" if len(turned) == 2 else "up" if low != (True in turned) else "down"
        places = [(hole.x, hole.y) for hole in card.holes]
        places += [(card.stands.x, card.stands.y)] if card.stands else []
        assert ways["across"] == {format_mm(abs(x)) for x, _ in places}
        assert ways[way] == {format_mm(abs(y)) for _, y in places}
        turns.add(way)
    assert len(turns) > 1
