"""The story stick: every height of a family of equal sides, on one long strip.

Sides of one height, whose bottom panels stand at one height, are a family: their lines are struck
from the same stick, left and right at once, so that no two can differ. With it go the spacer
boards: a board cut to the height of a slide's foot, stood on the bottom panel, holds the slide
level while it is screwed on.

>>> round_key(774.70004)
774.7
"""

from collections.abc import Collection, Sequence
from typing import Literal

from msgspec import Struct

from jigs.box.parts import Layout, Side
from jigs.given.confirming import OpenNumber
from jigs.given.hardware import SlideRecord
from jigs.given.kinds import by_rank
from jigs.ground.geometry import Fitting, FittingKind, Hand

StickKind = FittingKind | Literal["fixed-shelf"]
"""What is struck from a stick: lines of holes, and the upper faces of fixed shelves."""
_Height = tuple[float, StickKind, str, tuple[str, Hand]]
"""A hole's height, mm; what it is, the part it serves, and the face it is in: board and hand."""
SAME_LINE = 0.05
"""Heights nearer than this are one line: half of what is printed; mm."""


class StickLine(Struct, frozen=True, kw_only=True):
    """A height at which holes stand, or a fixed shelf's upper face: above the boards' bottom end,
    mm; what they are, the parts they serve (none for shelf pins) and the boards they are in.
    `only`: the faces that alone have it, as short names (`("B4 L+R", "B3 L")`); none where every
    face of the stick has it."""

    y: float
    kind: StickKind
    serves: tuple[str, ...]
    boards: tuple[str, ...]
    only: tuple[str, ...] = ()


class Spacer(Struct, frozen=True, kw_only=True):
    """A spacer board for a drawer's slides: what the slide's lower edge stands above the bottom
    end and above the bottom panel's upper face; mm."""

    part: str
    box: str
    above_end: float
    above_panel: float


class Stick(Struct, frozen=True, kw_only=True):
    """The stick of one family. `height` of its boards, `bottom` the bottom panel's upper face
    above their end (0 for partitions, which stand on it), mm; lines and spacers from below.
    `open`: the open numbers that the lines, or what is mounted on them, rest on;
    `missing`: the fronts and rollouts held back, whose lines are not on it; `standing`: the boxes
    already together, where nothing is laid on the bottom end. `struck`: on left and right side
    of a box together, on each board by itself (no line is on both sides of a box that still lies
    in pieces), or on the faces of partitions."""

    height: float
    bottom: float
    boards: tuple[str, ...]
    lines: tuple[StickLine, ...]
    spacers: tuple[Spacer, ...]
    open: tuple[OpenNumber, ...] = ()
    missing: tuple[str, ...] = ()
    standing: tuple[str, ...] = ()
    struck: Literal["together", "each", "faces"] = "together"


def round_key(height: float) -> float:
    """Give a height as far as paper tells it apart; mm."""
    return round(height, 2)


def find_sticks(layout: Layout, boards: Collection[str] | None = None) -> tuple[Stick, ...]:
    """Give a stick for each family of sides with holes or fixed shelves, the longest first;
    `boards` None: all."""
    families: dict[tuple[float, float, bool], list[Side]] = {}
    for side in layout.sides:
        if (side.holes or side.shelves) and (boards is None or side.board in boards):
            key = (round_key(side.height), round_key(side.bottom), bool(side.partition))
            families.setdefault(key, []).append(side)
    order = sorted(families, key=lambda key: (-key[0], key[1:]))
    return tuple(_stick(layout, families[key]) for key in order)


def _stick(layout: Layout, sides: list[Side]) -> Stick:
    heights: list[_Height] = []
    for side in sides:
        for fitting in side.fittings:
            heights += [
                (hole.y, fitting.kind, fitting.part or "", (side.board, side.side))
                for hole in fitting.holes
            ]
        heights += [(y, "fixed-shelf", "", (side.board, side.side)) for y in side.shelves]
    spacers = {
        (spacer.box, spacer.part): spacer
        for side in sides
        for fitting in side.fittings
        if fitting.kind == "slide" and fitting.part and fitting.record
        if (spacer := spacer_of(side, fitting, layout.job.slides[fitting.record]))
    }
    boards = tuple(dict.fromkeys(side.board for side in sides))
    lines = _lines(heights, sides)
    return Stick(
        height=sides[0].height,
        bottom=sides[0].bottom,
        boards=boards,
        lines=lines,
        spacers=tuple(sorted(spacers.values(), key=lambda spacer: spacer.above_end)),
        open=tuple(dict.fromkeys(number for side in sides for number in side.open)),
        missing=tuple(dict.fromkeys(part for side in sides for part in side.missing)),
        standing=tuple(dict.fromkeys(side.box for side in sides if side.assembled)),
        struck="faces"
        if sides[0].partition
        else "together"
        if any(_shared(line, sides) for line in lines)
        else "each",
    )


def _lines(heights: list[_Height], sides: Sequence[Side]) -> tuple[StickLine, ...]:
    """Join what stands at one height and is of one kind."""
    rows: list[list[_Height]] = []
    kinds = by_rank(kind for _, kind, _, _ in heights if kind != "fixed-shelf")
    for kind in (*kinds, "fixed-shelf"):
        last: list[_Height] = []
        for entry in sorted(entry for entry in heights if entry[1] == kind):
            if last and entry[0] - last[0][0] <= SAME_LINE:
                last.append(entry)
            else:
                last = [entry]
                rows.append(last)
    lines = [
        StickLine(
            y=row[0][0],
            kind=row[0][1],
            serves=tuple(dict.fromkeys(part for _, _, part, _ in row if part)),
            boards=tuple(dict.fromkeys(face[0] for _, _, _, face in row)),
            only=name_faces(sides, {face for _, _, _, face in row}),
        )
        for row in rows
    ]
    return tuple(sorted(lines, key=lambda line: line.y))


def name_faces(sides: Sequence[Side], marked: Collection[tuple[str, Hand]]) -> tuple[str, ...]:
    """Name the faces among those of a stick that alone have a line, each by its board and hand.

    None where all have it and nobody can take another board for one of them: where the sides of
    each box are all there, or the stick serves one face. A stick of one box names them by hand
    alone.
    """
    every = len(marked) == len(sides)
    if every and (
        (len(sides) == 1 and not sides[0].partition) or all(_paired(side, sides) for side in sides)
    ):
        return ()
    boxes = {side.box for side in sides}
    named: dict[str, list[str]] = {}
    for side in sides:
        if (side.board, side.side) not in marked:
            continue
        if side.partition:  # the right side of a column is the left face of what stands beyond it
            face = "L" if side.side == "right" else "R"
            named.setdefault(f"{side.box} P{side.partition} face", []).append(face)
        elif len(boxes) == 1:
            named[side.side.upper()] = []
        else:
            named.setdefault(side.box, []).append("L" if side.side == "left" else "R")
    return tuple(f"{name} {'+'.join(sorted(hands))}".strip() for name, hands in named.items())


def _shared(line: StickLine, sides: Sequence[Side]) -> bool:
    """Tell whether a line is on both sides of a box that is not yet together. With a partition
    between them the drawers of each column have their own lines."""
    boxes = [side.box for side in sides if side.board in line.boards and not side.assembled]
    return len(boxes) > len(set(boxes))


def _paired(side: Side, sides: Sequence[Side]) -> bool:
    """Tell whether the other side of a side's box, or a partition's other face, is there too."""
    return any(
        other.box == side.box and other.partition == side.partition and other.side != side.side
        for other in sides
    )


def spacer_of(side: Side, fitting: Fitting, record: SlideRecord) -> Spacer | None:
    """An undermount stands on its floor line, `fixing_height` below its holes, whatever it is
    drawn like. A side mount has none: where its edges lie from its holes no record says."""
    if record.mount == "side":
        return None
    foot = fitting.holes[0].y - record.fixing_height
    return Spacer(
        part=fitting.part or "",
        box=side.box,
        above_end=foot,
        above_panel=foot - side.bottom,
    )
