"""The crosses of a pin card: numbered for both ways that it lies; the number that reads right is
the one that the table names."""

from jigs.bench.station import Setting, StationCard
from jigs.bench.stations import plan_stations
from templates.page.marks import Text
from templates.stations.stationcard import draw_copies
from templates.stations.stationview import shop_of
from templates.words.rowwords import cross_words
from tests.jigs.bench.test_stations import uneven_box


def pin_settings() -> list[tuple[StationCard, Setting]]:
    return [
        (station.card(setting.card), setting)
        for station in plan_stations(uneven_box())
        for row in station.rows
        for setting in row.settings
        if setting.holes is not None
    ]


def test_every_cross_has_a_number_each_way() -> None:
    """Counted from the cross on the line, up as each number reads."""
    layout = uneven_box()
    shop = shop_of(layout)
    for station in plan_stations(layout):
        for card in station.cards:
            if not card.numbered:
                continue
            (first, *_) = draw_copies(shop, station, card, [(188.0, 250.0)])
            for hole in card.holes:
                step = round(hole.y / 32)
                near = {
                    (mark.text, mark.angle)
                    for mark in first.marks
                    if isinstance(mark, Text)
                    and mark.size == 3.5
                    and abs(mark.y - hole.y) < 8.0
                    and abs(mark.x - hole.x) < 8.0
                }
                up = f"{step:+d}" if step else "0"
                down = f"{-step:+d}" if step else "0"
                assert near == {(up, 0), (down, 180)}


def test_the_table_names_crosses_as_they_are_read() -> None:
    """Of a card that lies turned the lowest hole on the face is its highest cross."""
    cards = pin_settings()
    assert {setting.turned for _, setting in cards} == {False, True}
    for card, setting in cards:
        way = -1 if setting.turned else 1
        assert setting.holes is not None
        steps = sorted(round(way * card.holes[index].y / 32) for index in setting.holes)
        words = cross_words(setting.holes, setting.turned)
        first = f"{steps[0]:+d}" if steps[0] else "0"
        assert words.startswith(f"crosses {first}")


def test_an_uneven_run_reads_alike_both_ways() -> None:
    """Pins one below the line to two above it: on the turned card those of the other half."""
    assert cross_words((2, 3, 4, 5), False) == "crosses -1 to +2"
    assert cross_words((1, 2, 3, 4), True) == "crosses -1 to +2"
    assert cross_words((1, 2, 3, 4), False) == "crosses -2 to +1"
