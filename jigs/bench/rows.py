"""The rows of stations: those of what is held back put in, and those chosen that are wanted.

What is held back stands at the stations where it will be drilled: HOLD and why, no figures. A door
without a hand stands at none: which one it will be, nobody knows yet.

A station for some of its rows has the cards that these set, and as many copies as that wears out.
Letters and codes stay those of the whole station, so that paper printed for one part fits what is
already there.
"""

from collections import Counter
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from itertools import chain

from msgspec.structs import replace

from jigs.bench.benchpart import BenchPart, board_face, drawer_face, front_face
from jigs.bench.firstarticle import FirstArticle
from jigs.bench.fronts import hinge_edge
from jigs.bench.station import Row, Station, Work, settings_of
from jigs.box.parts import Front, Layout
from jigs.given.job import BoxKind, FrontKind
from jigs.ground.geometry import Hand, Purpose
from jigs.ground.grouped import grouped
from jigs.ground.problems import Problem


def with_held(layout: Layout, stations: Sequence[Station]) -> tuple[Station, ...]:
    """Add the rows of what is held back."""
    rows: dict[str, list[Row]] = {}
    for name, row in _held(layout, stations):
        rows.setdefault(name, []).append(row)
    return tuple(
        replace(station, rows=_among(station.rows, rows.get(station.name, ())))
        for station in stations
    )


def _among(rows: Sequence[Row], held: Sequence[Row]) -> tuple[Row, ...]:
    """Put held rows behind those of the same box, or last."""
    waiting = grouped((row.part.box, row) for row in held)
    last = {row.part.box: at for at, row in enumerate(rows)}
    result: list[Row] = []
    for at, row in enumerate(rows):
        result.append(row)
        if last[row.part.box] == at:
            result += waiting.pop(row.part.box, ())
    return (*result, *chain.from_iterable(waiting.values()))


def _held(layout: Layout, stations: Sequence[Station]) -> Iterator[tuple[str, Row]]:
    reasons = {unit.id: unit.held for unit in layout.units if unit.held}
    hanging = {each.name: _hanging_at(layout, each) for each in _of(stations, "pulls")}
    doors = {front.id for front in layout.fronts if front.swings}
    for front in layout.fronts:
        if not front.held:
            continue
        back = front_face(front, "back")
        if front.swings and not front.bored:
            record = front.hinge.record if front.hinge else None
            hand = [station for station in _of(stations, "cups")
                    if station.hand == hinge_edge(front)]  # fmt: skip
            for station in _drawn_for(hand, record) or hand[:1]:
                yield station.name, _row(back, front.id, "cup", front.held)
        for station in _pulled_at(front, _drawn_for(_of(stations, "pulls"), front.pull), hanging):
            yield station.name, _row(front_face(front, "front"), front.id, "pull", front.held)
        if front.drawer is not None:
            box = drawer_face(front.drawer, "box-front")
            for station in _of(stations, "drawer-boxes")[:1]:
                yield station.name, _row(box, front.id, "clearance", front.held)
            box = drawer_face(front.drawer, "box-back")
            for station in _drawn_for(_of(stations, "rear-hooks"), front.drawer.slide):
                yield station.name, _row(box, front.id, "hook", front.held)
            for station in _of(stations, "fronts-on-boxes")[:1]:
                yield station.name, _row(back, front.id, "front-fixing", front.held)
        if front.kind == "false-front":
            for station in _of(stations, "false-fronts")[:1]:
                yield station.name, _row(back, front.id, "front-fixing", front.held)
    for rollout in layout.rollouts:
        for station in _drawn_for(_of(stations, "rear-hooks"), rollout.slide):
            if rollout.held:
                box = drawer_face(rollout, "box-back")
                yield station.name, _row(box, rollout.id, "hook", rollout.held)
    for side in layout.sides:
        for name in side.missing:
            part = board_face(side)
            sides = _of(stations, "sides")
            served = [
                each
                for each in sides
                if any(row.part == part for row in each.rows_of_part.get(part.id, ()))
            ]
            for station in (served or sides)[:1]:
                purpose: Purpose = "plate" if name in doors else "slide"
                if name in reasons:
                    yield station.name, _row(part, name, purpose, reasons[name])


def _of(stations: Sequence[Station], work: Work) -> list[Station]:
    return [station for station in stations if station.work == work]


def _drawn_for(stations: Sequence[Station], record: str | None) -> list[Station]:
    """The stations with a card for a piece of hardware."""
    return [
        station
        for station in stations
        if record is not None and any(record in card.records for card in station.cards)
    ]


HangsLike = tuple[bool, Hand | None, BoxKind, FrontKind]
"""How a front hangs: whether it swings, its hand, the kind of its box, and its own kind."""


def _hangs(front: Front) -> HangsLike:
    return (front.swings, front.hinged, front.box_kind, front.kind)


def _hanging_at(layout: Layout, station: Station) -> frozenset[HangsLike]:
    """The ways in which the fronts of a station hang."""
    fronts = (layout.front_of.get(row.part.id) for row in station.rows)
    return frozenset(_hangs(front) for front in fronts if front is not None)


def _pulled_at(
    front: Front, stations: Sequence[Station], hanging: Mapping[str, Iterable[HangsLike]]
) -> list[Station]:
    """Give the one station at which a front's pull will be set, of those with a card for it: that
    of the first front that hangs most nearly as it does; none where nothing that swings, or does
    not, as it does has such a pull. `hanging`: how the fronts of each station hang."""

    def likeness(station: Station) -> tuple[bool, ...]:
        return max(
            tuple(a == b for a, b in zip(_hangs(front), other, strict=True))
            for other in hanging[station.name]
        )

    best = max(stations, key=likeness, default=None)
    return [best] if best is not None and likeness(best)[0] else []


def _row(part: BenchPart, serves: str, purpose: Purpose, held: tuple[Problem, ...]) -> Row:
    return Row(part=part, serves=serves, purpose=purpose, held=held)


def with_rows(station: Station, rows: Iterable[Row]) -> Station:
    """Give a station with these rows: its settings take up copy after copy of the cards, and a card
    that none of them sets is left out."""
    wears = {card.letter: settings_of(card) for card in station.cards}
    times: Counter[str] = Counter()
    made = [replace(row, settings=tuple(replace(e, copy=1) for e in row.settings)) for row in rows]
    for _, at, number in sorted(_in_order(made, boards=station.work == "sides")):
        setting = made[at].settings[number]
        after = wears[setting.card]
        copy = 1 if after is None else times[setting.card] // after + 1
        times[setting.card] += 1
        settings = list(made[at].settings)
        settings[number] = replace(setting, copy=copy)
        made[at] = replace(made[at], settings=tuple(settings))
    cards = tuple(
        replace(
            card,
            settings=times[card.letter],
            copies=-(-times[card.letter] // (wears[card.letter] or 10**6)),
        )
        for card in station.cards
        if times[card.letter]
    )
    return replace(station, rows=tuple(made), cards=cards)


def _in_order(rows: Sequence[Row], *, boards: bool) -> Iterator[tuple[tuple[float, ...], int, int]]:
    """Give row and setting, 0-based, behind what puts them in the order of the bench: row by row;
    of `boards` box by box, line by line from below, the left one before the right one. What is
    bored already is not set."""
    columns: dict[tuple[str, int], int] = {}
    for at, row in enumerate(rows):
        for number, setting in enumerate(() if row.bored else row.settings):
            key: tuple[float, ...] = (at,)
            board = row.part.board if boards else None
            if board is not None and setting.y is not None:
                column = columns.setdefault((row.part.box, board.column), len(columns))
                up = setting.y.of(row.part.width, row.part.height) - board.panel
                key = (column, round(up, 2), board.side == "right")
            yield key, at, number


def choose_rows(
    layout: Layout, stations: Iterable[Station], only: Collection[str]
) -> tuple[Station, ...]:
    """Keep whole stations, and the rows of parts, boxes and walls, that `only` names, in capitals;
    a station's name without its letter takes all that have it.
    A front's drawer box goes with it. A station with nothing to set is left out."""
    walls = {box.id: box.wall.upper() for box in layout.boxes}
    front_of = {front.drawer.id: front.id for front in layout.fronts if front.drawer is not None}

    def wanted(station: Station, row: Row) -> bool:
        part = row.part
        names = {
            station.name.upper(),
            station.stem.upper(),
            part.id,
            front_of.get(part.id),
            part.box,
            walls[part.box],
        }
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
    rows = [*_tried(station, tried)]
    kept = {_key(row) for row in rows}
    left = {row.part.id for row in station.rows if not row.bored and _key(row) not in kept}
    # What nobody bores from a board's other face is bored from this one.
    return (replace(row, bored=row.bored and row.part.id not in left) for row in rows)


def _key(row: Row) -> tuple[object, ...]:
    return row.part, row.serves, row.purpose


def _tried(station: Station, tried: Collection[str]) -> Iterator[Row]:
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
