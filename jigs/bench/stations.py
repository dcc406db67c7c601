"""The stations of a job: what shares a bit, a stop, a pattern and a hand, whatever its size.

They follow each other as the work does: sides, drawer boxes, cups, pulls, fronts on their drawer
boxes, false fronts, pulls through both, holes by hand. Every hole of the job stands at exactly one
of them, but those that are marked through a drawer box, and those of what is held back.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import get_args

from jigs.bench.benchpart import BenchPart
from jigs.bench.byhand import place_by_hand
from jigs.bench.cups import place_cups
from jigs.bench.heldrows import with_held
from jigs.bench.placing import CARD_REACH, Alike, Placing, by_place, shape_of
from jigs.bench.pulls import place_pulls
from jigs.bench.screwed import place_boxes, place_clearances, place_fixings, place_hooks
from jigs.bench.sides import place_sides
from jigs.bench.station import Bit, Row, Setting, Station, StationCard, Work
from jigs.box.parts import Layout
from jigs.ground.codes import station_code
from jigs.ground.geometry import Face, Hand, Polygon, Purpose
from jigs.layout.boxparts import findings_at

SETTINGS_A_CARD = 8
"""So often a card is set before its folds are worn, where the place is critical (our choice)."""
SAME_OUTLINE = 0.1
"""Hardware drawn no further apart than this is drawn once; mm."""
_LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"


@dataclass(frozen=True, slots=True)
class _Key:
    """What the placings of one station have in common."""

    work: Work
    face: Face
    hand: Hand | None
    kind: str
    bores: tuple[tuple[float, float | None], ...]
    """Diameters and depths, mm."""


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
        *place_pulls(layout, reach=reach),
        *([] if pilots else place_boxes(layout, reach=reach)),
        *place_fixings(layout, pilots=pilots, reach=reach),
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
        _station(layout, key, name, group)
        for name, (key, group) in zip(names, ordered, strict=True)
    ]
    return with_held(layout, stations)


def _key(placing: Placing) -> _Key:
    bores = {(hole.diameter, hole.depth) for hole in (*placing.holes, *placing.marked)}
    by_hand = placing.work == "by-hand"
    return _Key(
        work=placing.work,
        face=placing.part.face,
        hand=placing.hand,
        kind=placing.kind,
        bores=() if by_hand else tuple(sorted(bores, key=lambda bore: (bore[0], bore[1] or 0.0))),
    )


def _names(keys: Sequence[_Key]) -> list[str]:
    """Name the stations: what is done, the hand, the part served by hand, and a letter where
    several would have one name."""
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
    return names


def letter(number: int) -> str:
    """Give the letter of a number from 0 on.

    >>> letter(0), letter(25), letter(26)
    ('A', 'Z', 'AA')
    """
    more, last = divmod(number, len(_LETTERS))
    return (letter(more - 1) if more else "") + _LETTERS[last]


def _station(layout: Layout, key: _Key, name: str, placed: Sequence[Placing]) -> Station:
    patterns = _patterns(placed)
    rows: dict[tuple[BenchPart, str | None, Purpose], list[tuple[int, Placing]]] = {}
    for number, placing in patterns:
        same = (placing.part, placing.serves, placing.purpose)
        rows.setdefault(same, []).append((number, placing))
    in_order = [sorted(row, key=lambda each: each[0]) for row in rows.values()]
    if key.work not in ("sides", "by-hand"):  # there a box is finished before the next is taken
        in_order.sort(key=lambda row: sorted({number for number, _ in row}))
    bare, letters = _cards([each for row in in_order for each in row])
    cards = tuple(replace(card, code=_code(key, [card])) for card in bare)
    used: dict[int, int] = {}
    made: list[Row] = []
    for row in in_order:
        settings: list[Setting] = []
        for number, placing in row:
            times = used.get(number, 0)
            used[number] = times + 1
            copy = times // SETTINGS_A_CARD + 1 if placing.critical else 1
            settings.append(_setting(placing, letters[number], copy))
        made.append(_row(layout, [placing for _, placing in row], tuple(settings)))
    return Station(
        name=name,
        work=key.work,
        face=key.face,
        hand=key.hand,
        code=_code(key, cards),
        bits=_bits(placed),
        cards=cards,
        rows=tuple(made),
    )


def _patterns(placed: Sequence[Placing]) -> list[tuple[int, Placing]]:
    """Number the patterns of placings. A card that would always be turned lies as it is set."""
    alike = Alike()
    numbers = [alike.number(*shape_of(placing)) for placing in placed]
    unturned = {n for n, placing in zip(numbers, placed, strict=True) if not placing.turned}
    return [
        (number, placing if number in unturned else replace(placing, turned=False))
        for number, placing in zip(numbers, placed, strict=True)
    ]


def _cards(
    in_order: Sequence[tuple[int, Placing]],
) -> tuple[tuple[StationCard, ...], dict[int, str]]:
    """Make the cards, lettered in the order in which they are taken up first."""
    members: dict[int, list[Placing]] = {}
    for number, placing in in_order:
        members.setdefault(number, []).append(placing)
    letters = {number: letter(place) for place, number in enumerate(members)}
    cards: list[StationCard] = []
    for number, placed in members.items():
        first = next((each for each in placed if not each.turned), placed[0])
        critical = any(each.critical for each in placed)
        cards.append(
            StationCard(
                letter=letters[number],
                code="",
                edges=first.edges,
                lines=first.lines,
                holes=tuple(sorted(first.pattern, key=by_place)),
                outline=_outline(placed),
                carry=tuple(sorted(first.sign * (x - first.x.at) for x in first.carry)),
                stands=first.on_card(*first.stands) if first.stands else None,
                numbered=first.used is not None,
                records=tuple(dict.fromkeys(each.record for each in placed if each.record)),
                settings=len(placed),
                copies=-(-len(placed) // SETTINGS_A_CARD) if critical else 1,
            )
        )
    return tuple(cards), letters


def _outline(placed: Sequence[Placing]) -> tuple[Polygon, ...]:
    """The hardware on a card, in its own frame; none where not all of it is alike."""
    drawn = [
        tuple(tuple(each.on_card(x, y) for x, y in polygon) for polygon in each.outline)
        for each in placed
    ]
    boxes = [[_bounds(polygon) for polygon in outline] for outline in drawn]
    alike = all(
        len(other) == len(boxes[0])
        and all(
            abs(a - b) <= SAME_OUTLINE
            for one, two in zip(sorted(boxes[0]), sorted(other), strict=True)
            for a, b in zip(one, two, strict=True)
        )
        for other in boxes
    )
    return drawn[0] if alike else ()


def _bounds(polygon: Polygon) -> tuple[float, float, float, float]:
    xs, ys = [x for x, _ in polygon], [y for _, y in polygon]
    return min(xs), min(ys), max(xs), max(ys)


def _setting(placing: Placing, card: str, copy: int) -> Setting:
    holes = None
    if placing.used is not None:
        pattern = placing.pattern
        order = sorted(range(len(pattern)), key=lambda index: by_place(pattern[index]))
        holes = tuple(place for place, index in enumerate(order) if index in placing.used)
    return Setting(
        card=card,
        copy=copy,
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
        warnings=tuple(
            problem for problem in findings_at(layout, first.part.id) if problem.level == "warning"
        ),
        open=first.part.open,
    )


def _bits(placed: Sequence[Placing]) -> tuple[Bit, ...]:
    purposes: dict[tuple[float, float | None], dict[Purpose, None]] = {}
    leaves: dict[tuple[float, float | None], float] = {}
    for placing in placed:
        for hole in (*placing.holes, *placing.marked):
            bore = (hole.diameter, hole.depth)
            purposes.setdefault(bore, {})[hole.purpose] = None
            if hole.depth is not None:
                left = placing.part.thickness - hole.depth
                leaves[bore] = min(left, leaves.get(bore, left))
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


def _code(key: _Key, cards: Sequence[StationCard]) -> str:
    return station_code(key.face, key.hand, ((_how(card), card.holes) for card in cards))


def _how(card: StationCard) -> str:
    """Tell what a card is set by, for its station's code."""
    edges = [f"{edge.edge} {edge.by} {edge.inside:.4f}" for edge in card.edges]
    stands = [f"stands {card.stands[0]:.4f} {card.stands[1]:.4f}"] if card.stands else []
    return ", ".join([*edges, *card.lines, *stands])
