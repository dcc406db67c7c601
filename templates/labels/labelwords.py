"""The words on a part's label: its name, what it is, where it goes, its size.

Each line has a worth: where a label is too low for all, the line of least worth goes first.
Kind, place and size come in several wordings, the fullest first; the label takes the fullest
that fits its width.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from jigs.box.boxparts import hung_over, hung_under, parts_of_box
from jigs.box.drawerbox import DrawerBox, Rollout
from jigs.box.parts import Front, Layout, Side
from jigs.cutlist.piece import Piece
from jigs.given.confirming import OpenNumber
from jigs.ground.lengths import format_inches, format_mm
from jigs.ground.problems import Problem
from templates.labels.keyplan import Black, black_front, black_rollout, black_side
from templates.labels.labelmarks import Stripe, Toward, to_the_front
from templates.words.openwords import STAMP, open_line
from templates.words.payload import (
    Payload,
    drawer_box_payload,
    front_payload,
    rollout_payload,
    side_payload,
)
from templates.words.wallwords import WALL, bare_wall
from templates.words.wording import FRONT_SHORT, FRONT_WORDS


@dataclass(frozen=True, slots=True, kw_only=True)
class Wording:
    """One line, worded in several ways, the fullest first; a way may be broken on two lines
    (`\\n`). Its letters may grow from 2.5 to
    `most` mm. Where none fits, the last is cut short, but a `figure` is left out: half a number
    is a wrong number, and half an ID another part's. Where a `stamp` has no room, its last way
    stands beside the code."""

    ways: tuple[str, ...]
    worth: int
    most: float = 2.5
    bold: bool = False
    figure: bool = False
    stamp: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class LabelWords:
    """What a label says. `lines` from top to bottom, under the ID. `hold`: a large HOLD stands
    under the ID. `arrow`: the word at the arrow, which points `toward` a side of the label.
    `stripe`: the edge of the label that carries a black stripe, and its words. `black`: what the
    key plan shows black."""

    part: str
    box: str
    code: str
    payload: Payload
    lines: tuple[Wording, ...]
    black: Black
    hold: bool = False
    arrow: str = "UP"
    toward: Toward = "up"
    stripe: Stripe | None = None


ASSUMED = Wording(
    ways=("SIZE ASSUMED: MEASURE FIRST", "SIZE ASSUMED", "ASSUMED"), worth=8, bold=True, stamp=True
)
"""What stands on a piece whose size hangs on numbers that nobody gave."""


def open_lines(numbers: Iterable[OpenNumber]) -> list[Wording]:
    """Say that a part rests on open numbers, where it does; the word stays on any label."""
    numbers = tuple(numbers)
    if not numbers:
        return []
    count = f"{STAMP}: {len(numbers)} NUMBER{'S' if len(numbers) > 1 else ''}"
    return [Wording(ways=(open_line(numbers), count, STAMP), worth=8, bold=True, stamp=True)]


def words_of_front_label(layout: Layout, front: Front) -> LabelWords:
    """Give the words for a door, a drawer front, or any other front."""
    name, short = (words[front.kind].upper() for words in (FRONT_WORDS, FRONT_SHORT))
    order = _order(layout, front)
    if front.kind == "door" and front.hinged:
        hand = f"HINGES {front.hinged.upper()}"
        ways: tuple[str, ...] = (
            f"{name}, {hand} FROM THE ROOM", f"{name}, {hand}\nFROM THE ROOM",
            f"{hand} FROM THE ROOM", f"{hand}\nFROM THE ROOM",
            f"{hand} FROM ROOM", f"{hand}\nFROM ROOM", f"{hand}\nFROM ROOM".replace(" ", "\n", 1),
        )  # fmt: skip
    elif order:
        whole, brief = order
        ways = (
            f"{name}, {whole}", f"{name},\n{whole}", f"{short}, {whole}", f"{short},\n{whole}",
            f"{short}, {brief}", f"{short},\n{brief}", short,
        )  # fmt: skip
    else:
        ways = (name, short)
    above, below = hung_under(layout, front), hung_over(layout, front)
    way, beside = ("UNDER", above) if above else ("OVER", below)
    lines = [
        Wording(ways=ways, worth=9, most=5.0, bold=True),
        _stick_front(front),
        place_line(
            front.wall,
            front.box,
            f"{way} {beside.id}" if beside else "",
            f"{way} {FRONT_SHORT[beside.kind].upper()} {beside.id}" if beside else "",
        ),
    ]
    lines += size_lines((front.width, front.height, front.make.thickness))
    if front.withheld:
        lines.insert(1, _reason(front.held[0]))
    else:
        lines[1:1] = open_lines(front.open)
        if front.drawer is not None:
            lines.append(_box_of_drawer(front, front.drawer))
        lines += [
            Wording(ways=(f"{name}: {text}", text), worth=worth)
            for name, text, worth in (
                ("Note", front.make.note, 2),
                ("Finish", front.make.finish, 3),
            )
            if text
        ]
    return LabelWords(
        part=front.id,
        box=front.box,
        code="" if front.withheld else front.code,
        payload=front_payload(layout, front),
        lines=tuple(lines),
        black=black_front(front),
        hold=front.withheld,
    )


def _stick_front(front: Front) -> Wording:
    """Say where a front's label is stuck: under tape, so that it comes off the paint again, where
    the hinges are or the drawer box hides it."""
    where = ""
    if front.kind in ("drawer", "pullout"):
        where = ", WHERE THE BOX HIDES IT"
    elif front.kind == "door":
        where = f"{', HINGE EDGE' if front.hinged else ''}, UNDER TAPE"
    ways = [f"STICK ON THE BACK{where}", f"ON THE BACK{where}", f"BACK{where}"]
    ways.append("BACK, HINGE EDGE" if front.hinged else "ON BACK")
    return Wording(ways=tuple(sorted(ways, key=len, reverse=True)), worth=5, figure=True)


def words_of_side_label(
    layout: Layout, side: Side, piece: Piece | None = None, *, assumed: bool = False
) -> LabelWords:
    """Give the words for a box side, `piece` as it is cut; its label sticks on the outside face.
    `assumed`: its size hangs on numbers that nobody gave.

    Seen from outside, upright, a left side has its front edge on the right. A partition has no
    outside: its label sticks on its left face, which is turned as that of a left side.
    """
    ways: tuple[str, ...] = (
        f"{side.side.upper()} SIDE, THIS FACE OUT", "THIS FACE OUT", "FACE OUT",
    )  # fmt: skip
    if side.partition:
        between = f"COLUMNS {side.partition} AND {side.partition + 1}"
        ways = (
            f"PARTITION {side.partition}, THIS FACE LEFT, BETWEEN {between}",
            f"PARTITION {side.partition}, THIS FACE LEFT",
            "THIS FACE LEFT",
            "FACE LEFT",
        )
    lines = [
        Wording(ways=ways, worth=10, most=5.0, bold=True),
        place_line(side.wall, side.box, ""),
        *_side_sizes(side, piece),
    ]
    if side.missing:
        come = f"{', '.join(side.missing)} TO COME"
        lines[1:1] = [
            Wording(
                ways=(f"INCOMPLETE: {come}", come, "HOLES TO COME", "TO COME"), worth=8, bold=True
            )
        ]
    if assumed:
        lines.insert(1, ASSUMED)
    lines[1:1] = open_lines(side.open)
    if not side.holes and not side.missing:
        lines.append(Wording(ways=("NO HOLES",), worth=5))
    if side.band > 0 and side.band_state == "later":
        lines.append(Wording(ways=("FRONT EDGE STILL RAW", "FRONT RAW", "RAW"), worth=5))
    elif side.band > 0:
        lines.append(Wording(ways=("FRONT EDGE BANDED", "FRONT BANDED", "BANDED"), worth=5))
    if not side.partition:
        ways = ("STICK ON THE OUTSIDE, NEAR THE REAR TOP", "STICK NEAR THE REAR TOP",
                "NEAR REAR TOP")  # fmt: skip
        lines.append(Wording(ways=ways, worth=3, figure=True))
    return LabelWords(
        part=side.board,
        box=side.box,
        code=side.code,
        payload=side_payload(layout, side),
        lines=tuple(lines),
        black=black_side(side),
        stripe=to_the_front("right" if side.side == "left" or side.partition else "left"),
    )


def _side_sizes(side: Side, piece: Piece | None) -> list[Wording]:
    """Say what the saw is set to; what the side measures with its band on, under that word alone:
    sawn to it, the side would be too deep. Of a box that is built nothing is sawn."""
    if piece is None:
        return [finished_line(side.height, side.depth)]
    finished = [finished_line(side.height, side.depth)] if piece.band else []
    return [*cut_lines(piece), *finished]


def finished_line(length: float, width: float) -> Wording:
    """Say what a piece measures with its band on, mm."""
    done = f"{format_mm(length)} x {format_mm(width)}"
    return Wording(ways=(f"FINISHED {done} WITH BAND", f"FINISHED {done}"), worth=4, figure=True)


def cut_lines(piece: Piece) -> list[Wording]:
    """Say what the saw is set to, in mm and in inches: either may be the rule at the saw."""
    sizes = (piece.length, piece.width, piece.thickness)
    mm = [format_mm(size) for size in sizes]
    inches = [format_inches(size) for size in sizes]
    brief = [size.removesuffix(".0") for size in mm[:2]]
    return [
        Wording(
            ways=(
                f"CUT {' x '.join(mm)}",
                f"CUT {' x '.join(mm[:2])}",
                f"CUT {' x '.join(brief)}",
                "CUT " + "\nx ".join(brief),
                "CUT\n" + "\nx ".join(brief),
            ),
            worth=9,
            most=3.5,
            figure=True,
        ),
        Wording(
            ways=(
                f"CUT {' x '.join(inches)} in",
                f"CUT {' x '.join(inches[:2])} in",
                "CUT " + "\nx ".join(inches[:2]) + " in",
                "CUT " + "\nx ".join(f'{size}"' for size in inches[:2]),
            ),
            worth=8,
            figure=True,
        ),
    ]


def words_of_drawer_box_label(layout: Layout, drawer: DrawerBox, front: Front) -> LabelWords:
    """Give the words for a drawer box; its label sticks under the bottom, arrow to the front."""
    lines = [
        Wording(ways=("DRAWER BOX", "BOX"), worth=9, most=5.0, bold=True),
        place_line(front.wall, front.box, f"BEHIND {front.id}"),
    ]
    if front.withheld:
        lines.insert(1, _reason(front.held[0]))
    else:
        lines[1:1] = open_lines(drawer.open)
        lines += size_lines((drawer.width, drawer.height, drawer.length))
    return LabelWords(
        part=drawer.id,
        box=front.box,
        code="" if front.withheld else drawer.code,
        payload=drawer_box_payload(layout, drawer, front),
        lines=tuple(lines),
        black=black_front(front),
        hold=front.withheld,
        arrow="FRONT",
    )


def words_of_rollout_label(rollout: Rollout) -> LabelWords:
    """Give the words for a rollout; its label sticks under the bottom, arrow to the front."""
    lines = [
        Wording(ways=("ROLLOUT, DRAWER BOX", "ROLLOUT"), worth=9, most=5.0, bold=True),
        place_line(
            rollout.wall,
            rollout.box,
            f"BEHIND {', '.join(rollout.behind)}" if rollout.behind else "",
        ),
    ]
    if rollout.withheld:
        lines.insert(1, _reason(rollout.held[0]))
    else:
        lines[1:1] = open_lines(rollout.open)
        lines += size_lines((rollout.width, rollout.height, rollout.length))
        up = f"UNDERSIDE {format_mm(rollout.y)} UP"
        lines.append(Wording(ways=(f"{up} IN THE BOX", up), worth=5, figure=True))
    return LabelWords(
        part=rollout.id,
        box=rollout.box,
        code="" if rollout.withheld else rollout.code,
        payload=rollout_payload(rollout),
        lines=tuple(lines),
        black=black_rollout(rollout),
        hold=rollout.withheld,
        arrow="FRONT",
    )


def _box_of_drawer(front: Front, drawer: DrawerBox) -> Wording:
    """Say how far above a front's bottom edge its drawer box begins, and whether more of the
    front is free below the box than above it."""
    up = format_mm(drawer.y)
    ways: tuple[str, ...] = (
        f"DRAWER BOX {up} ABOVE BOTTOM EDGE", f"BOX {up} ABOVE BOTTOM EDGE",
        f"BOX {up} ABOVE EDGE", f"EDGE TO BOX {up}",
    )  # fmt: skip
    if front.wide_below:
        ways = (f"WIDE GAP BELOW, {ways[0]}", f"WIDE GAP BELOW, {ways[1]}", *ways)
    return Wording(ways=ways, worth=5, figure=True)


def _order(layout: Layout, front: Front) -> tuple[str, str] | None:
    """Say the place of a drawer front in a stack of drawers, in full and in short: `2 OF 4 FROM
    TOP`, `2 FROM TOP`; None for any other."""
    stack = [
        other
        for other in parts_of_box(layout, front.box).fronts
        if other.kind == "drawer" and other.place.column == front.place.column
    ]
    if front.kind != "drawer" or len(stack) < 2:
        return None
    rank = sorted({other.place.row for other in stack}).index(front.place.row) + 1
    count = len({other.place.row for other in stack})
    if count < 2:
        return None
    if 1 < rank < count:
        return f"{rank} OF {count} FROM TOP", f"{rank} FROM TOP"
    name = "TOP" if rank == 1 else "LOWEST"
    return f"{name} OF {count}", name


def place_line(wall: str, box: str, neighbour: str, whole: str = "") -> Wording:
    """Say where a part goes: its wall, its box, and what it is beside; `whole`: this in full."""
    name = bare_wall(wall)
    tail = f"BOX {box}, {neighbour}" if neighbour else f"BOX {box}"
    full = (f"{name} {WALL}, {tail}", f"{name}, {tail}") if name else ()
    if whole:
        full = (f"{name} {WALL}, BOX {box}, {whole}" if name else f"BOX {box}, {whole}", *full)
    own = f"BOX {box}"
    ways = (*full, tail, neighbour, own) if neighbour else (*full, own)
    return Wording(ways=ways, worth=7, most=3.5, figure=True)


def size_lines(sizes: tuple[float, float, float]) -> list[Wording]:
    """Say three sizes in mm, and in inches."""
    mm = [format_mm(size) for size in sizes]
    inches = [format_inches(size) for size in sizes]
    return [
        Wording(ways=(" x ".join(mm), " x ".join(mm[:2])), worth=6, most=3.5, figure=True),
        Wording(
            ways=(f"{' x '.join(inches)} in", f"{' x '.join(inches[:2])} in"),
            worth=4,
            figure=True,
        ),
    ]


def _reason(held: Problem) -> Wording:
    """Say why a part is held: the finding's name alone where the fact is too long."""
    return Wording(ways=(held.reason, held.name), worth=8)
