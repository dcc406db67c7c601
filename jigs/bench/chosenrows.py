"""A station for some of its rows: the cards that these set, and how many copies that wears out.

Letters and codes stay those of the whole station, so that paper printed for one part fits what is
already there.
"""

from collections import Counter
from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import replace

from jigs.bench.firstarticle import FirstArticle
from jigs.bench.station import Row, Setting, Station
from jigs.bench.wear import settings_of
from jigs.box.parts import Layout


def with_rows(station: Station, rows: Iterable[Row]) -> Station:
    """Give a station with these rows: its settings take up copy after copy of the cards, and a card
    that none of them sets is left out."""
    wears = {card.letter: settings_of(card) for card in station.cards}
    times: Counter[str] = Counter()

    def again(row: Row, setting: Setting) -> Setting:
        if row.bored:
            return setting
        before = times[setting.card]
        times[setting.card] += 1
        after = wears[setting.card]
        return replace(setting, copy=1 if after is None else before // after + 1)

    made = tuple(
        replace(row, settings=tuple(again(row, setting) for setting in row.settings))
        for row in rows
    )
    named = {setting.card for row in made for setting in row.settings}
    cards = tuple(
        replace(
            card,
            settings=times[card.letter],
            copies=max(1, -(-times[card.letter] // (wears[card.letter] or 10**6))),
        )
        for card in station.cards
        if card.letter in named
    )
    return replace(station, rows=made, cards=cards)


def choose_rows(
    layout: Layout, stations: Iterable[Station], only: Collection[str]
) -> tuple[Station, ...]:
    """Keep whole stations, and the rows of parts, boxes and walls, that `only` names, in capitals.
    A front's drawer box goes with it. A station with nothing to set is left out."""
    walls = {box.id: box.wall.upper() for box in layout.boxes}
    front_of = {front.drawer.id: front.id for front in layout.fronts if front.drawer is not None}

    def wanted(station: Station, row: Row) -> bool:
        part = row.part
        names = {station.name.upper(), part.id, front_of.get(part.id), part.box, walls[part.box]}
        return not names.isdisjoint(only)

    kept = (
        with_rows(station, [row for row in station.rows if wanted(station, row)])
        for station in stations
    )
    return tuple(station for station in kept if station.cards)


def first_rows(
    stations: Iterable[Station], articles: Sequence[FirstArticle]
) -> tuple[Station, ...]:
    """Keep what is made first at each station: the parts that are tried together for the articles,
    else its first row; on box sides with the board across from it, for each kind of fitting, of
    pins one setting a board. A box already together is taken where there is no other."""
    tried = {article.front.id for article in articles}
    return tuple(with_rows(station, _first(station, tried)) for station in stations)


def tried_together(
    stations: Iterable[Station], articles: Iterable[FirstArticle]
) -> tuple[FirstArticle, ...]:
    """Give the articles of which front and boards all have a row."""
    there = {row.part.id for station in stations for row in station.rows if row.settings}
    return tuple(article for article in articles if there.issuperset(article.names))


def _first(station: Station, tried: Collection[str]) -> Iterator[Row]:
    ready = [row for row in station.rows if not row.withheld]
    chosen = {row.serves for row in ready if row.serves in tried}
    for purpose in dict.fromkeys(row.purpose for row in ready):
        rows = [row for row in ready if row.purpose == purpose]
        rows.sort(key=lambda row: row.part.board is not None and row.part.board.assembled)
        served = [row for row in rows if row.serves in chosen]
        for row in served or [row for row in rows if _pair(row) == _pair(rows[0])]:
            pins = purpose == "shelf"
            yield replace(row, settings=row.settings[:1], closing=()) if pins else row


def _pair(row: Row) -> tuple[object, ...]:
    """Tell which rows are made together: the two boards of a column, for one part."""
    board = row.part.board
    if board is None:
        return (row.part.id, row.serves)
    return (row.part.box, board.column, row.serves)
