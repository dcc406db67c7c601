"""The pieces that stand between two upright boards: bottom, top, stretchers, rail and shelves."""

from dataclasses import dataclass, replace

from jigs.box.carcass import Carcass
from jigs.box.columns import Columns
from jigs.cutlist.joints import Joints
from jigs.cutlist.piece import Block, Piece, PieceKind, band_for
from jigs.given.build import Build
from jigs.given.job import Job
from jigs.ground.geometry import SLACK

FULL_TOP = ("wall", "tall", "open")


@dataclass(frozen=True, slots=True, kw_only=True)
class Across:
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
            pieces.append(self.piece(f"FIXED-{number}", "fixed-shelf", block, banded=True))
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
