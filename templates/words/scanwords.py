"""What the QR symbol of each kind of part says, in the order in which it is read.

First the ID, what it is, its hand; then where it goes, as seen from the room: its wall, which box
from the left, what it hangs under; then what the drill needs, by the names of the stations; then
what is done with it next; its code. What the ID spells is not spelt again.
"""

from collections.abc import Mapping, Sequence

from jigs.bench.benchpart import marks_of
from jigs.bench.station import Row, Station
from jigs.box.bypart import hung_over, hung_under
from jigs.box.drawerbox import DrawerBox, Rollout
from jigs.box.parts import Front, Layout, Side
from jigs.cutlist.piece import Piece, PieceKind
from jigs.given.job import FrontKind
from jigs.ground.geometry import Hand
from jigs.ground.lengths import format_mm
from jigs.ground.problems import Problem
from jigs.room.seen import along_wall
from templates.words.fittingwords import work_words
from templates.words.payload import Payload, Phrase, spell
from templates.words.piecenames import PIECE_WORDS, WHERE
from templates.words.saying import finding_name
from templates.words.stationwords import FROM_WORDS, hand_words, station_title
from templates.words.wallwords import WALL, wall_title
from templates.words.wording import FRONT_WORDS

HAND, NEXT, STATION, LINES, NEIGHBOUR, HEIGHT, INCOMPLETE = range(7)
"""What a phrase is worth, by what it says: the lesser goes first."""

NEXT_FRONT: dict[FrontKind, str] = {
    "door": "THEN PAINT AND HANG",
    "pair": "THEN PAINT AND HANG",
    "lift": "THEN PAINT AND HANG",
    "drawer": "THEN PAINT AND SCREW ON",
    "pullout": "THEN PAINT AND SCREW ON",
    "false-front": "THEN PAINT AND SCREW ON",
    "panel": "THEN PAINT AND FIT",
    "opening": "",
}
NEXT_PAINTED: dict[FrontKind, str] = NEXT_FRONT | {
    "door": "THEN HANG",
    "pair": "THEN HANG",
    "lift": "THEN HANG",
    "drawer": "THEN SCREW ON",
    "pullout": "THEN SCREW ON",
    "false-front": "THEN SCREW ON",
    "panel": "THEN FIT",
}
"""The same of a front that came painted."""
NEXT_PIECE: dict[PieceKind, str] = {
    "shelf": "THEN SET ON PINS",
    "filler": "THEN PAINT AND FIT",
    "end-panel": "THEN PAINT AND FIT",
    "island-back": "THEN PAINT AND FIT",
}
"""What is done with a piece that is neither banded nor scribed; all others are assembled."""


def station_phrases(stations: Sequence[Station]) -> Mapping[str, tuple[Phrase, ...]]:
    """Say of each part at which stations it is drilled, in the order of the work."""
    said: dict[str, dict[Phrase, None]] = {}
    for station in stations:
        for row in station.rows:
            if not row.withheld and (phrases := _at(station, row)):
                said.setdefault(row.part.id, {}).update(dict.fromkeys(phrases))
    return {part: tuple(phrases) for part, phrases in said.items()}


def _at(station: Station, row: Row) -> tuple[Phrase, ...]:
    title = station_title(station)
    if station.work == "sides":  # the ID of a side spells the name of its only station
        return ((title, STATION),) if station.name != station.work else ()
    if station.work == "cups":
        places = [setting.y for setting in row.settings if setting.y is not None]
        lines = " ".join(format_mm(place.value) for place in places)
        ends = " ".join({FROM_WORDS[place.start].upper(): None for place in places})
        at = f"{title} {lines} {ends}".rstrip()
        return (at, LINES), (hand_words(station).upper(), HAND)
    if row.marks is not None and not row.marks.maker_bored:
        return ((f"{title} AFTER ITS BOX", STATION),)
    return ((title, STATION),)


def front_payload(layout: Layout, front: Front, work: Sequence[Phrase] = ()) -> Payload:
    """Say of a front: kind and hand, where it hangs, what is drilled where, what comes next."""
    hand = ("HINGES", front.hinged.upper()) if front.kind == "door" and front.hinged else ()
    above, below = hung_under(layout, front), hung_over(layout, front)
    neighbour = f"UNDER {above.id}" if above else f"OVER {below.id}" if below else ""
    after = NEXT_FRONT if layout.job.paint.here else NEXT_PAINTED
    return _say(
        layout, front.id, _unspelt(front.id, FRONT_WORDS[front.kind]), front.wall,
        (front.box,), front.code, (neighbour, NEIGHBOUR), *work, (after[front.kind], NEXT),
        hand=hand, held=front.held,
    )  # fmt: skip


def side_payload(layout: Layout, side: Side, work: Sequence[Phrase] = ()) -> Payload:
    """Say of a box side or a partition: how it stands, what is bored in it, what comes next."""
    name, hand, stands = "PARTITION", [], "LABEL FACES LEFT"
    between = f"BETWEEN COLUMNS {side.partition} AND {side.partition + 1}"
    if not side.partition:
        name, hand, stands, between = "SIDE", _hand(side.board, side.side), "OUTER FACE OUT", ""
    bored = work_words(side.fittings)
    if not side.holes and not side.missing:
        bored = "NO HOLES"
    return _say(
        layout, side.board, [*hand, *_unspelt(side.board, name)], side.wall, (side.box,),
        side.code, (between, NEIGHBOUR), (stands, NEIGHBOUR),
        ("HOLES TO COME" if side.missing else "", INCOMPLETE), *work, (bored, LINES),
        ("" if side.missing or side.assembled else "THEN ASSEMBLE", NEXT),
    )  # fmt: skip


def drawer_box_payload(
    layout: Layout, drawer: DrawerBox, front: Front, work: Sequence[Phrase] = ()
) -> Payload:
    """Say of a drawer box: where it runs, its size, what is bored in it, what comes next; its
    front its ID spells."""
    marked = marks_of(front) is not None
    return _say(
        layout, drawer.id, _unspelt(drawer.id, "DRAWER BOX"), front.wall, (front.box,),
        drawer.code, (_figures(*(drawer.size or ())), LINES), *work,
        ("THEN MARK ITS FRONT" if marked else "THEN SCREW ON ITS FRONT", NEXT),
        held=front.held,
    )  # fmt: skip


def rollout_payload(layout: Layout, rollout: Rollout, work: Sequence[Phrase] = ()) -> Payload:
    """Say of a rollout: behind which fronts it runs and how high, its size, what is bored in it."""
    return _say(
        layout, rollout.id, _unspelt(rollout.id, "ROLLOUT"), rollout.wall, (rollout.box,),
        rollout.code, (f"BEHIND {' '.join(rollout.behind)}" if rollout.behind else "", NEIGHBOUR),
        (f"UNDERSIDE {_figures(rollout.y)} UP", LINES),
        (_figures(*(rollout.size or ())), LINES), *work, ("THEN SET ON SLIDES", NEXT),
        held=rollout.held,
    )  # fmt: skip


def piece_payload(layout: Layout, piece: Piece, which: str, number: int) -> Payload:
    """Say of a piece without holes: where it goes, which of several alike, its size as cut.
    `which` tells it from its like: `FRONT`, or its hand."""
    words = which.split() if piece.hand is None else _hand(piece.id, piece.hand)
    after = NEXT_PIECE.get(piece.kind, "THEN ASSEMBLE")
    if piece.band:
        after = f"THEN BAND {' '.join(piece.banded).upper()}"
    elif piece.scribe is not None:
        after = "THEN SCRIBE"
    before = WHERE.get(piece.kind, "" if piece.box else "UNDER")
    return _say(
        layout, piece.id, [*words, *_unspelt(piece.id, *PIECE_WORDS[piece.kind])], piece.wall,
        (piece.box,) if piece.box else piece.beside, piece.code,
        (f"{number} OF {piece.count}" if piece.count > 1 else "", NEIGHBOUR),
        (f"CUT {_figures(piece.length, piece.width, piece.thickness)}", LINES), (after, NEXT),
        before=before,
    )  # fmt: skip


def _say(
    layout: Layout,
    part: str,
    words: Sequence[str],
    wall: str,
    boxes: Sequence[str],
    code: str,
    *phrases: Phrase,
    hand: tuple[str, ...] = (),
    before: str = "",
    held: Sequence[Problem] = (),
) -> Payload:
    """Say of a part what there is to say; of one that is held back why, and neither a code nor
    what is done with it. `before`: what stands before the boxes that it belongs to."""
    title = spell_wall(layout, wall)
    found = along_wall(layout.job, boxes[0]) if len(boxes) == 1 else None
    height = found.height if found is not None else None
    said = [
        *(each for each in phrases if each[1] == NEIGHBOUR),
        (f"HANGS AT {_figures(height)}" if height is not None else "", HEIGHT),
        *(each for each in phrases if each[1] != NEIGHBOUR and not held),
        *((spell(finding_name(problem)), LINES) for problem in held[:1]),
    ]
    return Payload(
        part=part,
        words=tuple(words),
        hand=hand,
        wall=title,
        place=_place(layout, part, boxes, before),
        phrases=tuple(each for each in said if each[0]),
        code="" if held else code,
        hold=bool(held),
    )


def spell_wall(layout: Layout, wall: str) -> str:
    """Name a wall in the letters of a symbol; one whose script has none of these by its own ID, or
    by its place among the job's walls, as its pieces are called too. Empty for no wall."""
    if not wall or spell(wall):
        return spell(wall_title(wall)) if wall else ""
    given = next((each.id for each in layout.job.walls if each.name == wall), "")
    if given:
        return wall_title(given)
    names = list(dict.fromkeys(box.wall for box in layout.boxes))
    return f"{WALL} {names.index(wall) + 1}"


def tell_walls(layout: Layout) -> tuple[str, ...]:
    """Say of each wall whose name symbols cannot spell what they call it."""
    walls = dict.fromkeys(box.wall for box in layout.boxes)
    return tuple(
        f"wall '{wall}': a symbol has no such letters and says {spell_wall(layout, wall)}"
        for wall in walls
        if wall and not spell(wall)
    )


def _place(layout: Layout, part: str, boxes: Sequence[str], before: str) -> tuple[str, str]:
    """Say which box of its wall a part belongs to, in full and in short; of a box that stands
    nowhere its name, unless the ID spells it."""
    found = [each for box in boxes if (each := along_wall(layout.job, box)) is not None]
    if not found:
        named = " ".join(box for box in boxes if not part.startswith(box))
        return (f"BOX {named}",) * 2 if named else ("", "")
    numbers = sorted({each.number for each in found})
    counted = " TO ".join(_ordinal(each) for each in dict.fromkeys((numbers[0], numbers[-1])))
    upper = "UPPER" if all(each.hangs for each in found) else ""
    ways = ((before, counted, upper, "BOX", "FROM LEFT"), (before, counted, upper, "FROM LEFT"))
    full, short = (" ".join(filter(None, way)) for way in ways)
    return full, short


def _ordinal(number: int) -> str:
    """Write a place in a row.

    >>> [_ordinal(number) for number in (1, 2, 3, 4, 11, 22, 113)]
    ['1ST', '2ND', '3RD', '4TH', '11TH', '22ND', '113TH']
    """
    teens = number % 100 in (11, 12, 13)
    return f"{number}{'TH' if teens else {1: 'ST', 2: 'ND', 3: 'RD'}.get(number % 10, 'TH')}"


def _unspelt(part: str, *names: str) -> list[str]:
    """Give the words of a name that a part's ID does not spell; none where it spells one of its
    shorter forms, which follow.

    >>> _unspelt("B1-3-BOX", "DRAWER BOX"), _unspelt("B5-PANEL-R", "END PANEL", "PANEL")
    (['DRAWER'], [])
    """
    spelt = set(part.split("-"))
    left = [[word for word in spell(name).split() if word not in spelt] for name in names]
    return left[0] if all(left) else []


def _hand(part: str, hand: Hand) -> list[str]:
    """Say a board's hand, unless its ID ends with it (`B1-SIDE-L`)."""
    return [] if part.split("-")[-1] == hand[0].upper() else [hand.upper()]


def _figures(*sizes: float) -> str:
    return "X".join(format_mm(size).removesuffix(".0") for size in sizes)
