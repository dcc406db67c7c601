"""The finished boards: both sides of a box and its partitions, one value for each drilled face.

Both faces of a partition carry one code, computed from the holes of both: it has one label.
A left and a right side never share one.
"""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace

from jigs.box.boards import BoardFace, FaceKey, bore_through
from jigs.box.carcass import Carcass
from jigs.box.fittings import renumber
from jigs.box.parts import Side
from jigs.fittings.kinds import kind_of
from jigs.given.job import Job
from jigs.ground.codes import BoardPlace, board_code
from jigs.ground.finding import warning
from jigs.ground.geometry import Fitting, Purpose
from jigs.ground.lengths import format_length
from jigs.ground.problems import Problem
from jigs.reading.assumed import keys_of_side, list_assumed


def finish_sides(
    job: Job,
    carcass: Carcass,
    faces: Sequence[BoardFace],
    work: Mapping[FaceKey, Sequence[Fitting]],
    held: Collection[str],
    missing: Mapping[FaceKey, tuple[str, ...]],
) -> tuple[tuple[Side, ...], tuple[Problem, ...]]:
    """Give every drilled face of a box; what serves a front in `held` is left out.

    `missing` names, for each face, the fronts whose holes in it are to come. Returned with what
    is to be said of holes that two faces share.
    """
    kept = {
        face.key: [fitting for fitting in work[face.key] if fitting.part not in held]
        for face in faces
    }
    sides: list[Side] = []
    problems: list[Problem] = []
    for face in faces:
        fittings, shared = bore_through(face, kept)
        if shared and face.hand == "right":
            problems.append(_bored_once(face, shared, job))
        side = _finish(job, carcass, face, fittings, missing[face.key])
        other = next(
            (each for each in faces if each.column == face.column and each.hand != face.hand), None
        )
        if other is not None:
            side = replace(side, across=other.partition, raised=other.base - face.base)
        sides.append(side)
    return tuple(replace(side, code=_code(side, sides)) for side in sides), tuple(problems)


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
        base=face.base,
        below=box.height - face.base - face.height,
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


def _bored_once(face: BoardFace, shared: Sequence[Purpose], job: Job) -> Problem:
    """Say that holes of both faces of a partition are one, and what screws or pins then may be."""
    half = format_length(face.thickness / 2, job.shown)
    pins, screws = "shelf" in shared, any(purpose != "shelf" for purpose in shared)
    what = "screws and pins" if pins and screws else "pins" if pins else "screws"
    bolt = ", or take one through-bolt for both" if screws else ""
    return warning(
        "bored-through-once",
        face.board,
        f"{len(shared)} of its holes stand at the same place in both faces, and "
        f"{format_length(face.thickness, job.shown)} does not take both: bore them right through "
        "once, from either face",
        f"keep the {what} under {half}{bolt}",
    )
