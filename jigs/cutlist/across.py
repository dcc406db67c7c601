"""The pieces that stand between two other boards: bottom, top, stretchers, rail and shelves,
nailers, partitions.

Nailers are what a box is screwed to the wall through. They stand behind the back, between the
sides, where the back is set in far enough for them; a board may stand out there by half a
millimetre, less than any wall is out of flat. A thicker board stands inside, before the back. In a
low box they are fewer, and no wider than there is room (all common practice, no source).

Partitions part a box into columns, screwed to what they stand on and what lies on them. At the foot
the screws are spread over the whole depth; at the top they can only go where there is wood above:
into a front and a rear stretcher, or all along a full top. A pocket is cut into the partition's own
face and keeps clear of the system holes there as well.
"""

import math
from collections.abc import Iterable, Sequence

from msgspec import Struct
from msgspec.structs import replace

from jigs.box.carcass import Carcass
from jigs.box.columns import Columns
from jigs.cutlist.joints import (
    FROM_HOLE,
    POCKET,
    Holes,
    Joints,
    Unclear,
    find_unclear,
    place_pockets,
)
from jigs.cutlist.piece import Block, Piece, PieceKind, PieceNote, band_for
from jigs.given.build import BACK_SET_IN, Build
from jigs.given.job import Job
from jigs.ground.geometry import SLACK

FULL_TOP = ("wall", "tall", "open")


class Across(Struct, frozen=True, kw_only=True):
    """The pieces that are screwed to the upright boards at both their ends."""

    job: Job
    whole: Carcass
    joints: Joints

    def piece(
        self, name: str, kind: PieceKind, block: Block, *, banded: bool, width: float | None = None
    ) -> Piece:
        """Make one that fills a block; `width` where it is cut to a width of its own."""
        on_edge = kind == "rail"
        deep = block.dy if on_edge else block.dz
        band = self.job.material.band if banded and not on_edge else 0.0
        id = f"{self.whole.box.id}-{name}"
        return Piece(
            id=id,
            kind=kind,
            box=self.whole.box.id,
            wall=self.whole.box.wall,
            length=block.dx,
            width=deep - band if width is None else width,
            thickness=self.whole.side,
            band=band_for(band, block.dx),
            grain="length",
            pockets=self.joints.screw(id, block, on_edge=on_edge),
            blocks=(block,),
        )

    def bottom_and_top(self) -> list[Piece]:
        """Give the bottom, and what closes the box at the top."""
        whole, build = self.whole, self.job.build
        box, left, wide = whole.box, whole.side, whole.opening
        deep = whole.inside_depth
        flat = whole.side
        pieces = [
            self.piece(
                "BOTTOM", "bottom",
                Block(x=left, y=box.legs, z=0.0, dx=wide, dy=flat, dz=deep), banded=True,
            )
        ]  # fmt: skip
        upright = whole.rail is not None
        if upright:
            rail = box.height - whole.ceiling
            block = Block(x=left, y=whole.ceiling, z=0.0, dx=wide, dy=rail, dz=flat)
            pieces.append(self.piece("RAIL", "rail", block, banded=False))
        if box.kind in FULL_TOP:
            start = flat if upright else 0.0
            block = Block(x=left, y=whole.flat_ceiling, z=start, dx=wide, dy=flat, dz=deep - start)
            pieces.append(self.piece("TOP", "top", block, banded=not upright))
        elif box.kind != "sink":
            pieces += self._stretchers(build, upright)
        return pieces

    def _stretchers(self, build: Build, upright: bool) -> list[Piece]:
        whole, band = self.whole, self.job.material.band
        # In a shallow box the two meet in the middle.
        wide = min(build.stretcher, (whole.inside_depth - band) / 2)
        front = Block(
            x=whole.side, y=whole.flat_ceiling, z=0.0,
            dx=whole.opening, dy=whole.side, dz=wide + band,
        )  # fmt: skip
        rear = replace(front, z=whole.inside_depth - wide, dz=wide)
        made = [] if upright else [
            self.piece("STRETCHER-1", "stretcher", front, banded=True, width=wide)
        ]  # fmt: skip
        name = "STRETCHER-1" if upright else "STRETCHER-2"
        return [*made, self.piece(name, "stretcher", rear, banded=False)]

    def fixed_shelves(self, columns: Columns) -> list[Piece]:
        """Give the fixed shelves; where no partition stands between two columns at a shelf's
        height, it is one board across both."""
        runs: list[tuple[float, float, int, int]] = []
        for number, carcass in enumerate(columns.carcasses, start=1):
            for low, high in carcass.shelves:
                before = next(
                    (
                        run for run in runs
                        if run[3] == number - 1 and abs(run[0] - low) < SLACK
                        and not _parted(columns, number - 1, low, high)
                    ),
                    None,
                )  # fmt: skip
                if before is None:
                    runs.append((low, high, number, number))
                else:
                    runs[runs.index(before)] = (low, high, before[2], number)
        box = self.whole.box
        stated = {shelf.at for shelf in box.shelves if shelf.at is not None}
        pieces = []
        for number, (low, high, first, last) in enumerate(sorted(runs), start=1):
            left = columns.carcasses[first - 1].inner("left")
            right = columns.carcasses[last - 1].inner("right")
            # Behind an inset door a shelf stands back by the door's thickness.
            behind = box.overlay == "inset" and any(abs(high - at) < SLACK for at in stated)
            start = self.job.material.front if behind else 0.0
            block = Block(
                x=left, y=low, z=start,
                dx=right - left, dy=high - low, dz=self.whole.inside_depth - start,
            )  # fmt: skip
            piece = self.piece(f"FIXED-{number}", "fixed-shelf", block, banded=True)
            up = PieceNote(kind="upper-face", figures=(high,))
            pieces.append(replace(piece, notes=(up,)))
        return pieces


def _parted(columns: Columns, number: int, low: float, high: float) -> bool:
    foot, head = columns.partitions[number - 1]
    return foot < high - SLACK and head > low + SLACK


def adjustable_shelves(job: Job, columns: Columns) -> list[Piece]:
    """Give the adjustable shelves of all columns."""
    build, band = job.build, job.material.band
    made: list[Piece] = []
    for column, carcass in enumerate(columns.carcasses, start=1):
        box = carcass.box
        for spec in box.shelves:
            if spec.at is not None or spec.column not in (None, column):
                continue
            long = carcass.opening - build.shelf_play
            low = carcass.floor if spec.low is None else spec.low
            high = carcass.ceiling if spec.high is None else spec.high
            start = Block(
                x=carcass.inner("left") + build.shelf_play / 2, y=low, z=build.shelf_back,
                dx=long, dy=carcass.side, dz=carcass.inside_depth - build.shelf_back,
            )  # fmt: skip
            made.append(
                Piece(
                    id=f"{box.id}-SHELF-{len(made) + 1}",
                    kind="shelf",
                    box=box.id,
                    wall=box.wall,
                    length=long,
                    width=carcass.inside_depth - build.shelf_back,
                    thickness=carcass.side,
                    count=spec.count,
                    band=band_for(band, long),
                    grain="length",
                    spread=tuple(
                        replace(start, y=low + (high - low) * number / (spec.count + 1))
                        for number in range(1, spec.count + 1)
                    ),
                )
            )
    return made


TWO_NAILERS = ("wall", "tall")
PROUD = 0.5
"""What a nailer may stand out behind the sides; mm (common practice, no source)."""


def nailers_behind(whole: Carcass) -> bool:
    """Tell whether nailers of the sides' board find room behind the back."""
    return whole.side <= BACK_SET_IN + PROUD + SLACK


def nailers(job: Job, whole: Carcass, joints: Joints) -> list[Piece]:
    """Give the nailers of a box, from the top down."""
    box, build = whole.box, job.build
    count = build.nailers or (2 if box.kind in TWO_NAILERS else 1)
    behind = nailers_behind(whole)
    start = whole.inside_depth + whole.back if behind else whole.inside_depth - whole.side
    foot = box.legs if behind else whole.floor
    top = box.height if behind else whole.flat_ceiling
    wide = min(build.nailer, top - foot)
    head = top - wide
    # A low box has no more of them than stand clear of each other.
    count = min(count, 1 + math.floor((head - foot) / build.nailer + SLACK))
    step = (head - foot) / (count - 1) if count > 1 else 0.0
    made = []
    for number in range(count):
        name = f"{box.id}-NAILER-{number + 1}" if count > 1 else f"{box.id}-NAILER"
        block = Block(
            x=whole.side, y=head - number * step, z=start,
            dx=whole.opening, dy=wide, dz=whole.side,
        )  # fmt: skip
        made.append(
            Piece(
                id=name,
                kind="nailer",
                box=box.id,
                wall=box.wall,
                length=whole.opening,
                width=wide,
                thickness=whole.side,
                grain="length",
                pockets=joints.screw(name, block, on_edge=True),
                blocks=(block,),
            )
        )
    return made


def partitions(
    job: Job,
    whole: Carcass,
    boards: Sequence[tuple[str, Block]],
    lying: Sequence[Piece],
    joints: Joints,
) -> list[Piece]:
    """Give the partitions of a box; `lying` are the pieces that they stand on and reach up to."""
    material = job.material
    band, thick = material.band, material.partition_board
    made = []
    for name, block in boards:
        holes = [
            place
            for upright in joints.uprights
            if upright.id == name
            for place in upright.holes
        ]  # fmt: skip
        foot = _end(name, _spans(block, lying, block.y, above=False), _low(holes, block), joints)
        top = block.y + block.dy
        head = _end(name, _spans(block, lying, top, above=True), _high(holes, block), joints)
        made.append(
            Piece(
                id=name,
                kind="partition",
                box=whole.box.id,
                wall=whole.box.wall,
                length=block.dy,
                width=block.dz - band,
                thickness=thick,
                stuff="side" if abs(thick - whole.side) < SLACK else "partition",
                band=band_for(band, block.dy),
                grain="length",
                pockets=foot,
                pockets_top=None if head == foot else head,
                notes=() if head else (PieceNote(kind="nothing-on-it"),),
                blocks=(block,),
            )
        )
    return made


def _spans(
    block: Block, lying: Sequence[Piece], height: float, *, above: bool
) -> list[tuple[float, float]]:
    """Give where along the depth a piece lies on a partition, or carries it: start and width."""
    found = []
    for piece in lying:
        other = piece.blocks[0]
        face = other.y if above else other.y + other.dy
        beside = other.x < block.x + block.dx - SLACK and block.x < other.x + other.dx - SLACK
        if piece.kind != "rail" and beside and abs(face - height) < SLACK:
            found.append((other.z, min(other.dz, block.dz - other.z)))
    return sorted(found)


def _end(
    name: str, spans: Sequence[tuple[float, float]], holes: Holes, joints: Joints
) -> tuple[float, ...]:
    places: list[float] = []
    for start, width in spans:
        placed = place_pockets(width, holes, start)
        joints.unclear += [
            Unclear(piece=name, place=place, boards=(name,))
            for place in find_unclear(placed, width, holes)
        ]
        places += placed
    return tuple(places)


def _low(holes: Sequence[tuple[float, float]], block: Block) -> list[tuple[float, float]]:
    """Give the holes near its foot, as their distance from the pockets that reach up from it."""
    return _near((z, y - block.y) for z, y in holes)


def _high(holes: Sequence[tuple[float, float]], block: Block) -> list[tuple[float, float]]:
    return _near((z, block.y + block.dy - y) for z, y in holes)


def _near(holes: Iterable[tuple[float, float]]) -> list[tuple[float, float]]:
    return [(z, max(0.0, up - POCKET)) for z, up in holes if up - POCKET < FROM_HOLE]
