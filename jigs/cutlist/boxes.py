"""The pieces of one box, each with its place, so that the box can be put together on paper.

| piece | size (common practice, no source) |
|---|---|
| side | box height x (box depth - band) |
| bottom, full top, fixed shelf | opening x (inside depth - band) |
| stretcher | opening x its width; one at the front, one at the back |
| back | (opening + 2 grooves - play) x box height |
| nailer | opening x its width, behind the back |
| adjustable shelf | (opening - play) x (inside depth - 25) |
| partition | (height between bottom and top) x (inside depth - band) |

A wall or tall box, and an open one, has a full top; the others two stretchers; a sink box a rail
on edge at the front and nothing else above. A box of kind `open` whose front is an appliance's
panel is that appliance's place: there is nothing to cut.
"""

from collections.abc import Sequence
from dataclasses import replace

from jigs.build import Build
from jigs.carcass import Carcass, name_partition, name_side
from jigs.columns import Columns, place_columns
from jigs.cutlist.piece import Block, Edge, Groove, Piece, PieceKind
from jigs.cutlist.pockets import FROM_HOLE, place_pockets
from jigs.geometry import SLACK
from jigs.job import BoxSpec, Job
from jigs.parts import Side
from jigs.slide import BACK_SET_IN

FULL_TOP = ("wall", "tall", "open")
TWO_NAILERS = ("wall", "tall")
FRONT: tuple[Edge, ...] = ("front",)


def is_place(box: BoxSpec) -> bool:
    """Tell whether a box is only the place of an appliance."""
    return box.kind == "open" and any(front.kind == "panel" for front in box.fronts)


def pieces_of_box(job: Job, box: BoxSpec, sides: Sequence[Side]) -> tuple[Piece, ...]:
    """Give all pieces of a box; `sides` are its drilled faces, whose holes the screws avoid."""
    if is_place(box):
        return ()
    columns = place_columns(job, box)
    whole = Carcass(box=box, side=job.material.side, back=job.material.back)
    across = _Across(job, whole, sides)
    pieces = [
        *across.bottom_and_top(),
        *_partitions(job, columns, whole),
        *_fixed_shelves(across, columns),
        *_adjustable_shelves(job, columns),
        _back(job, whole),
        *_nailers(job, whole),
    ]
    return (*_sides(job, whole, pieces), *pieces)


class _Across:
    """The pieces that stand between two upright boards and are screwed to them."""

    def __init__(self, job: Job, whole: Carcass, sides: Sequence[Side]) -> None:
        self.job, self.whole, self.sides = job, whole, sides

    def piece(
        self, name: str, kind: PieceKind, block: Block, *, banded: bool, width: float | None = None
    ) -> Piece:
        """Make one that fills a block; `width` where it is cut to a width of its own."""
        on_edge = kind == "rail"
        deep = block.dy if on_edge else block.dz
        band = self.job.material.band if banded and not on_edge else 0.0
        return Piece(
            id=f"{self.whole.box.id}-{name}",
            kind=kind,
            box=self.whole.box.id,
            wall=self.whole.box.wall,
            length=block.dx,
            width=deep - band if width is None else width,
            thickness=self.whole.side,
            band=FRONT if band else (),
            band_thickness=band,
            banded_length=block.dx if band else 0.0,
            grain="length",
            pockets=place_pockets(deep) if on_edge else place_pockets(deep, *self._near(block)),
            blocks=(block,),
        )

    def _near(self, block: Block) -> tuple[list[tuple[float, float]], float]:
        """Give the holes of the boards at both ends near the line of its screws."""
        line = block.y + block.dy / 2
        return [
            (hole.x, hole.y + side.base - line)
            for side in self.sides
            for hole in side.holes
            if abs(hole.y + side.base - line) < FROM_HOLE
        ], block.z

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
        rail = box.height - whole.ceiling
        upright = rail > whole.side + SLACK
        if upright:
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
        whole, wide = self.whole, build.stretcher
        band = self.job.material.band
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


def _sides(job: Job, whole: Carcass, pieces: Sequence[Piece]) -> list[Piece]:
    box, band = whole.box, job.material.band
    reached = sorted(
        {round(place, 6) for piece in pieces for place in piece.pockets if _at_side(piece, whole)}
    )
    return [
        Piece(
            id=name_side(box.id, hand),
            kind="side",
            box=box.id,
            wall=box.wall,
            length=box.height,
            width=box.depth - band,
            thickness=whole.side,
            band=FRONT if band else (),
            band_thickness=band,
            banded_length=box.height if band else 0.0,
            grain="length",
            pockets=tuple(reached),
            groove=Groove(
                at=box.depth - BACK_SET_IN, width=job.material.back, depth=job.build.groove
            ),
            blocks=(
                Block(
                    x=0.0 if hand == "left" else box.width - whole.side,
                    y=0.0, z=0.0, dx=whole.side, dy=box.height, dz=box.depth,
                ),
            ),
        )
        for hand in ("left", "right")
    ]  # fmt: skip


def _at_side(piece: Piece, whole: Carcass) -> bool:
    """Tell whether a piece lies flat against a side of the box."""
    if piece.kind in ("partition", "rail", "nailer"):
        return False
    return any(
        abs(block.x - whole.side) < SLACK
        or abs(block.x + block.dx - whole.box.width + whole.side) < SLACK
        for block in piece.blocks
    )


def _partitions(job: Job, columns: Columns, whole: Carcass) -> list[Piece]:
    box, band = whole.box, job.material.band
    made = []
    for number, (low, high) in enumerate(columns.partitions, start=1):
        if high - low <= SLACK:
            continue
        left = columns.carcasses[number - 1].inner("right")
        thick = job.material.partition_board
        made.append(
            Piece(
                id=name_partition(box.id, number),
                kind="partition",
                box=box.id,
                wall=box.wall,
                length=high - low,
                width=whole.inside_depth - band,
                thickness=thick,
                stuff="side" if abs(thick - whole.side) < SLACK else "partition",
                band=FRONT if band else (),
                band_thickness=band,
                banded_length=high - low if band else 0.0,
                grain="length",
                pockets=place_pockets(whole.inside_depth),
                blocks=(
                    Block(x=left, y=low, z=0.0, dx=thick, dy=high - low, dz=whole.inside_depth),
                ),
            )
        )
    return made


def _fixed_shelves(across: _Across, columns: Columns) -> list[Piece]:
    """Give the fixed shelves; where no partition stands between two columns at a shelf's height,
    it is one board across both."""
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
    box = across.whole.box
    stated = {shelf.at for shelf in box.shelves if shelf.at is not None}
    pieces = []
    for number, (low, high, first, last) in enumerate(sorted(runs), start=1):
        left = columns.carcasses[first - 1].inner("left")
        right = columns.carcasses[last - 1].inner("right")
        # Behind an inset door a shelf stands back by the door's thickness.
        behind = box.overlay == "inset" and any(abs(high - at) < SLACK for at in stated)
        start = across.job.material.front if behind else 0.0
        block = Block(
            x=left, y=low, z=start,
            dx=right - left, dy=high - low, dz=across.whole.inside_depth - start,
        )  # fmt: skip
        pieces.append(across.piece(f"FIXED-{number}", "fixed-shelf", block, banded=True))
    return pieces


def _parted(columns: Columns, number: int, low: float, high: float) -> bool:
    foot, head = columns.partitions[number - 1]
    return foot < high - SLACK and head > low + SLACK


def _adjustable_shelves(job: Job, columns: Columns) -> list[Piece]:
    build, band = job.build, job.material.band
    made: list[Piece] = []
    for number, carcass in enumerate(columns.carcasses, start=1):
        box = carcass.box
        for spec in box.shelves:
            if spec.at is not None or spec.column not in (None, number):
                continue
            long = carcass.opening - build.shelf_play
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
                    band=FRONT if band else (),
                    band_thickness=band,
                    banded_length=long if band else 0.0,
                    grain="length",
                )
            )
    return made


def _back(job: Job, whole: Carcass) -> Piece:
    box, build = whole.box, job.build
    wide = whole.opening + 2 * build.groove - build.back_play
    return Piece(
        id=f"{box.id}-BACK",
        kind="back",
        box=box.id,
        wall=box.wall,
        stuff="back",
        length=box.height,
        width=wide,
        thickness=whole.back,
        grain="length",
        blocks=(
            Block(
                x=(box.width - wide) / 2, y=0.0, z=whole.inside_depth,
                dx=wide, dy=box.height, dz=whole.back,
            ),
        ),
    )  # fmt: skip


def _nailers(job: Job, whole: Carcass) -> list[Piece]:
    """Give the nailers: behind the back where they find room there, else before it."""
    box, build = whole.box, job.build
    count = build.nailers or (2 if box.kind in TWO_NAILERS else 1)
    behind = whole.side <= BACK_SET_IN + SLACK
    start = whole.inside_depth + whole.back if behind else whole.inside_depth - whole.side
    foot = 0.0 if behind else whole.floor
    head = (box.height if behind else whole.flat_ceiling) - build.nailer
    step = (head - foot) / (count - 1) if count > 1 else 0.0
    return [
        Piece(
            id=f"{box.id}-NAILER-{number + 1}" if count > 1 else f"{box.id}-NAILER",
            kind="nailer",
            box=box.id,
            wall=box.wall,
            length=whole.opening,
            width=build.nailer,
            thickness=whole.side,
            grain="length",
            pockets=place_pockets(build.nailer),
            blocks=(
                Block(
                    x=whole.side, y=head - number * step, z=start,
                    dx=whole.opening, dy=build.nailer, dz=whole.side,
                ),
            ),
        )
        for number in range(count)
    ]  # fmt: skip
