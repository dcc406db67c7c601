"""The finished boards: both sides of a box and its partitions, one value for each drilled face.

Both faces of a partition carry one code, computed from the holes of both: it has one label.
A left and a right side never share one.
"""

from collections.abc import Sequence
from dataclasses import replace

from jigs.box.boards import BoardFace, bore_through
from jigs.box.carcass import Carcass
from jigs.box.fittings import renumber
from jigs.box.parts import Side
from jigs.box.place import BoardEnds
from jigs.box.plan import BoxPlan
from jigs.fittings.kinds import kind_of
from jigs.given.job import Job
from jigs.ground.codes import BoardPlace, board_code
from jigs.ground.geometry import Fitting
from jigs.layout.holding import Held
from jigs.reading.assumed import keys_of_side, list_assumed


def finish_sides(job: Job, plan: BoxPlan, held: Held) -> tuple[Side, ...]:
    """Give every drilled face of a box that has boards; what serves a part held back is left
    out."""
    if not plan.has_boards:
        return ()
    sides: list[Side] = []
    for face in plan.faces:
        fittings, _ = bore_through(face, held.work)
        side = _finish(job, plan.columns.carcasses[0], face, fittings, held.missing[face.key])
        other = next(
            (o for o in plan.faces if o.column == face.column and o.hand != face.hand), None
        )
        if other is not None:
            side = replace(
                side,
                ends=replace(side.ends, across=other.partition, raised=other.base - face.base),
            )
        sides.append(side)
    return tuple(replace(side, code=_code(side, sides)) for side in sides)


def _code(side: Side, sides: Sequence[Side]) -> str:
    """Give the code of the board that a drilled face belongs to, with the holes of all its
    faces."""
    board: BoardPlace = "left-side" if side.side == "left" else "right-side"
    if side.partition:
        board = "partition"
    return board_code(
        board,
        (side.depth, side.height, side.thickness),
        ((face.side, hole) for face in sides if face.board == side.board for hole in face.holes),
    )


def _finish(
    job: Job,
    carcass: Carcass,
    face: BoardFace,
    fittings: Sequence[Fitting],
    missing: tuple[str, ...],
) -> Side:
    box = carcass.box
    hinges = [f.record for f in fittings if kind_of(f).record == "hinge" and f.record]
    return Side(
        box=box.id,
        wall=box.wall,
        box_kind=box.kind,
        column=face.column,
        side=face.hand,
        board=face.board,
        height=face.height,
        depth=face.depth,
        thickness=face.thickness,
        band=job.material.band,
        bottom=0.0 if face.partition else carcass.floor,
        legs=box.legs,
        assembled=box.assembled,
        band_state=box.band,
        x=face.x,
        ends=BoardEnds(base=face.base, below=box.height - face.base - face.height),
        partition=face.partition,
        code="",
        fittings=renumber(face.lowered(fittings)),
        missing=missing,
        assumed=list_assumed(
            job,
            keys_of_side(box, (fitting.kind for fitting in fittings)),
            hinge=", ".join(dict.fromkeys(hinges)),
            box=box,
        ),
    )
