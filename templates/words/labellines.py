"""The lines on a part's label: where it goes, its sizes, where it is stuck, what is open.

A line is worded several ways, the fullest first; a label takes the fullest that fits its width.
Each has a worth: where a label is too low for all, the line of least worth goes first.
"""

from collections.abc import Iterable

from msgspec import Struct

from jigs.box.bypart import hung_over, hung_under, parts_of_box
from jigs.box.drawerbox import DrawerBox
from jigs.box.parts import Front, Layout
from jigs.cutlist.piece import Piece
from jigs.given.confirming import OpenNumber
from jigs.ground.lengths import Unit, format_inches, format_mm
from jigs.ground.problems import Problem
from templates.words.hingenames import hinge_names
from templates.words.openwords import STAMP, open_line
from templates.words.saying import finding_name, reason_of
from templates.words.wallwords import WALL, bare_wall
from templates.words.wording import FRONT_SHORT, FRONT_WORDS


class Wording(Struct, frozen=True, kw_only=True):
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
    large: bool = False
    """Rather worded shorter, on one line, than in letters under 2.5 mm."""
    small: bool = False
    """In letters no larger than those of the line before it, up to 2.5 mm."""


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


def kind_line(layout: Layout, front: Front) -> Wording:
    """Say what a front is: a door with its hand, a drawer with its place in the stack."""
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
    return Wording(ways=ways, worth=9, most=5.0, bold=True)


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


def hung_line(layout: Layout, front: Front) -> Wording:
    """Say where a front hangs, and under or over which other."""
    above, below = hung_under(layout, front), hung_over(layout, front)
    way, beside = ("UNDER", above) if above else ("OVER", below)
    return place_line(
        front.id,
        front.wall,
        front.box,
        f"{way} {beside.id}" if beside else "",
        f"{way} {FRONT_SHORT[beside.kind].upper()} {beside.id}" if beside else "",
    )


def stick_line(front: Front) -> Wording:
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


def hinge_lines(layout: Layout, front: Front) -> list[Wording]:
    """Name a door's hinge where not all doors of its job take the same."""
    ways = hinge_names(layout, front)
    return [Wording(ways=ways, worth=6, figure=True)] if ways else []


def drawer_line(front: Front, drawer: DrawerBox) -> Wording:
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
            large=True,
        ),
        Wording(
            ways=(
                f"CUT {' x '.join(inches)} in",
                f"CUT {' x '.join(inches[:2])} in",
                "CUT " + "\nx ".join(inches[:2]) + " in",
                "CUT " + "\nx ".join(f'{size}"' for size in inches[:2]),
                "\nx ".join(f'{size}"' for size in inches[:2]),
            ),
            worth=8,
            figure=True,
            small=True,
        ),
    ]


def place_line(part: str, wall: str, box: str, neighbour: str, whole: str = "") -> Wording:
    """Say where a part goes: its wall, its box, and what it is beside; `whole`: this in full. A box
    that the part's ID spells goes before its wall does."""
    own, name = f"BOX {box}", bare_wall(wall)
    tail = f"{own}, {neighbour}" if neighbour else own
    ways = [f"{own}, {whole}"] if whole else []
    ways.append(tail)
    if name:
        ways = [*(f"{name} {WALL}, {way}" for way in ways), f"{name}, {tail}"]
    if name and part.startswith(f"{box}-"):
        if neighbour:
            ways += [f"{name} {WALL}, {neighbour}", f"{name}, {neighbour}"]
        ways += [f"{name} {WALL}", name, neighbour or own]
    else:
        ways += sorted(filter(None, (name and f"{name}, {own}", tail)), key=len, reverse=True)
        ways += [neighbour, own] if neighbour else [own]
    # A longer wording does not fit either where a shorter one did not.
    longest = [min(map(len, ways[:at]), default=len(way) + 1) for at, way in enumerate(ways)]
    ways = [way for way, most in zip(ways, longest, strict=True) if len(way) < most]
    return Wording(ways=tuple(ways), worth=7, most=3.5, figure=True)


def size_lines(sizes: tuple[float, float, float]) -> list[Wording]:
    """Say three sizes in mm, and in inches."""
    mm = [format_mm(size) for size in sizes]
    inches = [format_inches(size) for size in sizes]
    return [
        Wording(
            ways=(" x ".join(mm), " x ".join(mm[:2])), worth=6, most=3.5, figure=True, large=True
        ),
        Wording(
            ways=(f"{' x '.join(inches)} in", f"{' x '.join(inches[:2])} in"),
            worth=4,
            figure=True,
            small=True,
        ),
    ]


def told_lines(note: str, finish: str) -> list[Wording]:
    """Say on one line what the job tells of a part in its own words; what finds no room is cut
    short, its finish first, which is in the order too."""
    told = [(name, text) for name, text in (("Note", note), ("Finish", finish)) if text]
    named = ". ".join(f"{name}: {text}" for name, text in told)
    return [Wording(ways=(named, "; ".join(text for _, text in told)), worth=3)] if told else []


def reason_line(held: Problem, unit: Unit) -> Wording:
    """Say why a part is held: the finding's name alone where the fact is too long."""
    return Wording(ways=(reason_of(held, unit), finding_name(held)), worth=8)
