"""Toe platforms: the low ladders that standing boxes are set on.

One stands under each run of boxes side by side that are equally deep and stand equally high,
set back 75 at the front, with crosswise sleepers at most 600 apart from middle to middle. A run
longer than a sheet is parted at a joint between two boxes. An appliance that stands on the floor
ends a run. Where the floor is not level, a platform is as high as its highest point leaves: it is
set there first, and shimmed up elsewhere. All common practice, no source.

Its front runs on under the filler beside its end box: to the wall, or at an inside corner to the
front of the other run's platform, which is set back as far behind that run's boxes: filler and 75.
A blind box goes on into its corner by itself. Derived.

>>> [round(place, 1) for place in sleeper_places(1500.0, 18.0, 600.0)]
[0.0, 494.0, 988.0, 1482.0]
"""

import math
from collections.abc import Mapping, Sequence

from jigs.cutlist.joints import place_pockets
from jigs.cutlist.piece import Block, Piece, PieceKind, PieceNote
from jigs.cutlist.totals import BOARD_SHEETS
from jigs.cutlist.trimmings import name_wall_piece
from jigs.given.job import BoxSpec, Job
from jigs.given.walls import HIGHEST, boxes_at_end, join_runs, place_job
from jigs.ground.geometry import HANDS, SLACK, Hand


def sleeper_places(length: float, board: float, apart: float) -> tuple[float, ...]:
    """Give where each sleeper begins along a platform; they are `apart` at most; mm."""
    steps = max(1, math.ceil((length - board) / apart - SLACK))
    return tuple((length - board) * number / steps for number in range(steps + 1))


def stands(box: BoxSpec) -> bool:
    """Tell whether a box stands on a toe platform."""
    return (
        box.kind != "wall"
        and not box.inferred
        and not box.legs
        and SLACK < box.above_floor <= HIGHEST
        and not box.is_place
    )


def find_runs(job: Job) -> tuple[tuple[BoxSpec, ...], ...]:
    """Give the boxes that share a platform, wall by wall, each run from left to right."""
    beyond = _beyond(job)

    def joins(run: Sequence[BoxSpec], box: BoxSpec) -> bool:
        last = run[-1]
        level = abs(last.above_floor - box.above_floor) < SLACK
        return level and abs(last.depth - box.depth) < SLACK and _fits(job, (*run, box), beyond)

    return join_runs(filter(stands, job.boxes), place_job(job), joins)


def _fits(job: Job, run: Sequence[BoxSpec], beyond: Mapping[tuple[str, Hand], float]) -> bool:
    long, _ = BOARD_SHEETS[job.units]
    ends = beyond.get((run[0].id, "left"), 0.0) + beyond.get((run[-1].id, "right"), 0.0)
    return sum(box.width for box in run) + ends <= long + SLACK


def _beyond(job: Job) -> dict[tuple[str, Hand], float]:
    """Give how far a platform's front runs on beyond a box at an end of its wall; mm. Beside an end
    panel, which goes down to the floor, it ends."""
    return {
        (box.id, hand): end.filler + (job.build.toe_back if end.stands == "corner" else 0.0)
        for wall in job.walls
        for hand in HANDS
        for end in [wall.end(hand)]
        if end.filler
        for box in boxes_at_end(job, wall.name, hand)
        if stands(box)
        and box.panels.at(hand) is None
        and not (box.blind is not None and box.blind.hand == hand)
    }


def toe_pieces(job: Job, tags: Mapping[str, str]) -> list[Piece]:
    """Give the pieces of all toe platforms; `tags`: the walls' short names."""
    made: list[Piece] = []
    numbers: dict[str, int] = {}
    places, beyond = place_job(job), _beyond(job)
    floors = {wall.name: wall.floor_high for wall in job.walls}
    for run in find_runs(job):
        wall = run[0].wall
        height = run[0].above_floor - floors.get(wall, 0.0)
        if height <= SLACK:
            continue
        numbers[wall] = numbers.get(wall, 0) + 1
        length = sum(box.width for box in run)
        made += platform(
            job, name_wall_piece(tags[wall], "TOE", str(numbers[wall])), wall,
            length=length, height=height, depth=run[0].depth - job.build.toe_back,
            under=tuple(box.id for box in run), shimmed=floors.get(wall, 0.0) > SLACK,
            start=places[run[0].id], foot=floors.get(wall, 0.0),
            left=beyond.get((run[0].id, "left"), 0.0),
            right=beyond.get((run[-1].id, "right"), 0.0),
        )  # fmt: skip
    return made


def platform(
    job: Job, name: str, wall: str, *, length: float, height: float, depth: float,
    under: tuple[str, ...], shimmed: bool = False, start: float = 0.0, foot: float = 0.0,
    left: float = 0.0, right: float = 0.0,
) -> list[Piece]:  # fmt: skip
    """Give the pieces of one platform; mm. `shimmed`: the floor under it is not level. `start`:
    its left end along the wall; `foot`: the floor's high point. `left`, `right`: how far its front
    runs on beyond its ends."""
    thick = job.material.side
    sleepers = sleeper_places(length, thick, job.build.sleepers)
    fore = job.build.toe_back
    between = depth - 2 * thick
    beyond: tuple[tuple[float, Hand], ...] = ((left, "left"), (right, "right"))
    notes = [PieceNote(kind="under", names=under)]
    notes += [
        PieceNote(kind="runs-on", figures=(more,), hand=hand) for more, hand in beyond if more
    ]
    notes += [PieceNote(kind="shim")] if shimmed else []

    def block(x: float, z: float, dx: float, dz: float) -> Block:
        return Block(x=start + x, y=foot, z=fore + z, dx=dx, dy=height, dz=dz)

    def piece(word: str, kind: PieceKind, long: float, *blocks: Block) -> Piece:
        return Piece(
            id=f"{name}-{word}",
            kind=kind,
            box=None,
            wall=wall,
            length=long,
            width=height,
            thickness=thick,
            count=len(blocks),
            grain="length",
            pockets=place_pockets(height) if kind == "sleeper" else (),
            on_wall=blocks,
            beside=under,
            notes=tuple(notes) if kind == "toe-front" else (),
        )

    standing = [block(place, thick, thick, between) for place in sleepers]
    return [
        piece(
            "FRONT", "toe-front", left + length + right,
            block(-left, 0.0, left + length + right, thick),
        ),
        piece("BACK", "toe-back", length, block(0.0, depth - thick, length, thick)),
        piece("SLEEPER", "sleeper", between, *standing),
    ]  # fmt: skip
