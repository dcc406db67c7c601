"""The stations of a job: what shares a bit, a stop, a pattern and a hand, whatever its size.

They follow each other as the work does: sides, drawer boxes, cups, pulls, fronts on their drawer
boxes, false fronts, pulls through both, holes by hand. Every hole of the job stands at exactly one
of them, but those that are marked through a drawer box, and those of what is held back.
"""

from collections.abc import Callable, Mapping, Sequence
from typing import cast, get_args

from msgspec import Struct
from msgspec.structs import replace

from jigs.bench.benchpart import BenchPart
from jigs.bench.cardmaking import code_of, letter, make_station_cards, number_patterns
from jigs.bench.fronts import place_by_hand, place_cups, place_pull_cards
from jigs.bench.placing import CARD_REACH, Placing, by_place
from jigs.bench.rows import with_held, with_rows
from jigs.bench.screwed import place_box_corners, place_clearances, place_fixing_cards, place_hooks
from jigs.bench.sides import place_sides
from jigs.bench.station import Bit, Row, Setting, Start, Station, Work
from jigs.box.bypart import findings_at, findings_in_face
from jigs.box.parts import Layout
from jigs.given.confirming import OpenNumber, RecordKind
from jigs.given.kinds import KINDS, Kind
from jigs.ground.geometry import Axis, Face, FittingKind, Hand, Purpose
from jigs.ground.problems import Problem
from jigs.ground.shared import Shared

_RECORD_OF: Mapping[Purpose, RecordKind] = {
    purpose: kind.record
    for kind in cast("Mapping[FittingKind, Kind]", KINDS).values()
    for purpose in kind.holes
    if kind.record is not None
}
"""The kind of record whose numbers decide where holes stand."""
PINS = "shelf-pins"
"""What a pin card on a sheet is called, where no station names it."""


class _Key(Struct, frozen=True):
    """What the placings of one station have in common."""

    work: Work
    face: Face
    hand: Hand | None
    kind: str
    bores: tuple[tuple[float, float | None], ...]
    """Diameters and depths, mm."""


_Placed = list[tuple[int, Placing]]
"""The placings of one row, each with the number of its pattern."""
_AXES: tuple[Axis, Axis] = ("x", "y")


def plan_stations(
    layout: Layout, *, pilots: bool = False, reach: float = CARD_REACH
) -> tuple[Station, ...]:
    """Plan the stations of a job, in the order of the work.

    `pilots`: set the pilots in drawer fronts from paper too, instead of marking them through the
    drawer boxes. `reach`: how far a hole may lie from what its card is set by, mm; paper larger
    than the usual page takes more.
    """
    placed = [
        *place_sides(layout, reach=reach),
        *place_clearances(layout, reach=reach),
        *place_hooks(layout, reach=reach),
        *place_cups(layout),
        *place_pull_cards(layout, reach=reach),
        *place_box_corners(layout, pilots=pilots),
        *place_fixing_cards(layout, pilots=pilots, reach=reach),
        *place_by_hand(layout, reach=reach),
    ]
    groups: dict[_Key, list[Placing]] = {}
    for placing in placed:
        groups.setdefault(_key(placing), []).append(placing)
    works: tuple[Work, ...] = get_args(Work)
    served = list(dict.fromkeys(key.kind for key in groups))
    ordered = sorted(
        groups.items(),
        key=lambda group: (
            works.index(group[0].work),
            served.index(group[0].kind) if group[0].work == "by-hand" else 0,
        ),
    )
    names = _names([key for key, _ in ordered])
    stations = [
        with_rows(*_station(layout, key, named, group))
        for named, (key, group) in zip(names, ordered, strict=True)
    ]
    shared = Shared()
    return tuple(_share_rows(shared, station) for station in with_held(layout, stations))


def _share_rows(shared: Shared, station: Station) -> Station:
    """Give a station whose rows share what they have alike: a long job has thousands of them."""
    rows = (shared.fields(row, "settings", "closing", "warnings", "open") for row in station.rows)
    return replace(station, rows=tuple(rows))


def pin_station(layout: Layout, placed: Sequence[Placing], card: str) -> Station:
    """Give what one pin card sets as a station by itself, for the sheets; `card` names it. There
    each face of a board is set by itself, whatever was bored through from the other one."""
    station, rows = _station(layout, _key(placed[0]), (PINS, PINS), placed, lambda _: card)
    return with_rows(station, [replace(row, bored=False) for row in rows])


def _key(placing: Placing) -> _Key:
    bores = {*((hole.diameter, hole.depth) for hole in placing.holes), *placing.pilots}
    by_hand = placing.work == "by-hand"
    return _Key(
        work=placing.work,
        face=placing.part.face,
        hand=placing.hand,
        kind=placing.kind,
        bores=() if by_hand else tuple(sorted(bores, key=lambda bore: (bore[0], bore[1] or 0.0))),
    )


def _names(keys: Sequence[_Key]) -> list[tuple[str, str]]:
    """Name the stations: what is done, the hand, the part served by hand, and a letter where
    several would have one name; behind it the name without the letter."""
    plain = [
        "-".join(
            filter(None, (key.work, key.hand, key.kind.lower() if key.work == "by-hand" else ""))
        )
        for key in keys
    ]
    names: list[str] = []
    for name in plain:
        lettered = (f"{name}-{letter(number).lower()}" for number in range(len(plain) + 1))
        several = plain.count(name) > 1
        free = (each for each in lettered if each not in names and each not in plain)
        names.append(next(free) if several else name)
    return list(zip(names, plain, strict=True))


def _station(
    layout: Layout,
    key: _Key,
    names: tuple[str, str],
    placed: Sequence[Placing],
    name_of: Callable[[int], str] = letter,
) -> tuple[Station, list[Row]]:
    name, stem = names
    patterns = number_patterns(placed)
    rows: dict[tuple[BenchPart, str | None, Purpose], list[tuple[int, Placing]]] = {}
    for number, placing in patterns:
        same = (placing.part, placing.serves, placing.purpose)
        rows.setdefault(same, []).append((number, placing))
    in_order = [sorted(row, key=lambda each: each[0]) for row in rows.values()]
    if key.work not in ("sides", "by-hand"):  # there a box is finished before the next is taken
        in_order = _alike_together(in_order)
    cards, letters = make_station_cards(
        key.face, key.hand, [each for row in in_order for each in row], name_of
    )
    made = [
        _row(
            layout,
            [placing for _, placing in row],
            tuple(_setting(placing, letters[number]) for number, placing in row),
        )
        for row in in_order
    ]
    station = Station(
        name=name,
        stem=stem,
        work=key.work,
        face=key.face,
        hand=key.hand,
        pattern=key.kind,
        code=code_of(key.face, key.hand, cards),
        bits=_bits(placed),
        cards=cards,
        rows=(),
    )
    return station, made


def _alike_together(rows: Sequence[_Placed]) -> list[_Placed]:
    """Order rows by their cards, so that one is done with before the next is taken up; of the same
    cards those together that are set alike, and of these those of one width, each group where the
    first of it stood: what is measured and struck once serves them all."""
    cards = [sorted({number for number, _ in row}) for row in rows]
    set_alike = [
        tuple(
            (number, placing.turned, *(_figure(placing, axis) for axis in _AXES))
            for number, placing in row
        )
        for row in rows
    ]
    wide = [
        (each, round(row[0][1].part.width, 2)) for each, row in zip(set_alike, rows, strict=True)
    ]
    first: dict[object, int] = {}
    for at, (one, other) in enumerate(zip(set_alike, wide, strict=True)):
        first.setdefault(one, at)
        first.setdefault(other, at)
    order = sorted(
        range(len(rows)), key=lambda at: (cards[at], first[set_alike[at]], first[wide[at]])
    )
    return [rows[at] for at in order]


def _figure(placing: Placing, axis: Axis) -> tuple[Start, float] | None:
    """Give the figure that a card's line is set on, mm to a hundredth."""
    place = placing.place(axis)
    return None if place is None else (place.start, round(place.value, 2))


def _setting(placing: Placing, card: str) -> Setting:
    holes = None
    if placing.used is not None:
        pattern = placing.pattern
        order = sorted(range(len(pattern)), key=lambda index: by_place(pattern[index]))
        holes = tuple(place for place, index in enumerate(order) if index in placing.used)
    return Setting(
        card=card,
        turned=placing.turned,
        x=placing.place("x"),
        y=placing.place("y"),
        holes=holes,
    )


def _row(layout: Layout, placed: Sequence[Placing], settings: tuple[Setting, ...]) -> Row:
    first = placed[0]
    return Row(
        part=first.part,
        serves=first.serves,
        purpose=first.purpose,
        settings=settings,
        closing=tuple(dict.fromkeys(each for placing in placed for each in placing.closing)),
        marks=first.marks,
        spacer=first.spacer,
        bored=all(placing.bored for placing in placed),
        warnings=tuple(
            problem for problem in _findings(layout, first.part) if problem.level == "warning"
        ),
        open=_open(placed),
    )


def _findings(layout: Layout, part: BenchPart) -> tuple[Problem, ...]:
    """The findings of a part, of a board those that concern this face of it."""
    if part.board is None:
        return findings_at(layout, part.id)
    face = (part.board.column, part.board.side)
    return findings_in_face(layout, part.box, part.id, face)


def _open(placed: Sequence[Placing]) -> tuple[OpenNumber, ...]:
    """The open numbers of the hardware that a row is for."""
    kind = _RECORD_OF.get(placed[0].purpose)
    records = {placing.record for placing in placed if placing.record}
    return tuple(
        number
        for number in placed[0].part.open
        if number.kind == kind and (not records or number.record in records)
    )


def _bits(placed: Sequence[Placing]) -> tuple[Bit, ...]:
    purposes: dict[tuple[float, float | None], dict[Purpose, None]] = {}
    leaves: dict[tuple[float, float | None], float] = {}
    for placing in placed:
        bores = [(hole.diameter, hole.depth, hole.purpose) for hole in placing.holes]
        bores += [(*pilot, placing.purpose) for pilot in placing.pilots]
        for diameter, depth, purpose in bores:
            purposes.setdefault((diameter, depth), {})[purpose] = None
            if depth is not None:
                left = placing.part.thickness - depth
                leaves[diameter, depth] = min(left, leaves.get((diameter, depth), left))
    order = sorted(purposes, key=lambda bore: (-bore[0], bore[1] or 0.0))
    return tuple(
        Bit(
            purposes=tuple(purposes[bore]),
            diameter=bore[0],
            depth=bore[1],
            leaves=leaves.get(bore),
        )
        for bore in order
    )
