"""Is every hole inside its part, with wood around it and under it, and do the holes of all parts
suit the boards they stand in, and each other?

Those of a part that is held back count too: they will be drilled one day. What they may yet be,
where that is not settled, is in `jigs.box.waiting`.
"""

import math
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from itertools import combinations
from typing import Literal

from jigs.box.boards import BoardFace, FaceKey, across, bore_through, meeting
from jigs.box.plan import BoxPlan
from jigs.box.waiting import Prospect, Shadow
from jigs.given.kinds import HOLES
from jigs.ground.geometry import SLACK, Fitting, Hole, Purpose
from jigs.ground.grid import WOOD_BETWEEN, first_clash, holes_agree
from jigs.ground.problems import Problem, error, warning

Withheld = Mapping[str, Sequence[Problem]]
"""What is held back, by its ID, with the errors that withhold it."""
Waiting = Literal["hinges", "plates", "other-face"]
"""What another part's place decides: this part's hinges, whether its plates leave holes here, or
what stands on the other face of a board."""


def check_bores(
    part: str,
    fittings: Sequence[Fitting],
    *,
    width: float,
    height: float,
    thickness: float,
) -> Iterator[Problem]:
    """List the holes of a front that leave it, come through it, or meet each other; mm."""
    holes = [hole for fitting in fittings for hole in fitting.holes]
    for hole in holes:
        yield from _check_edges(part, hole, width, height)
        yield from _check_depth(part, hole, thickness)
    for one, other in combinations(fittings, 2):
        clash = _meeting(one.holes, other.holes, thickness)
        if clash:
            yield _too_near(part, *clash)


def check_side_bores(
    part: str,
    board: str,
    fittings: Sequence[Fitting],
    others: Iterable[Fitting],
    *,
    height: float,
    depth: float,
    thickness: float,
) -> Iterator[Problem]:
    """List the holes that a front brings into a box side and that do not suit it; mm.

    `others` are the fittings that other fronts have there.
    """
    for fitting in fittings:
        for hole in fitting.holes:
            yield from _check_edges(part, hole, depth, height, board)
            yield from _check_depth(part, hole, thickness, board)
    mine = [hole for fitting in fittings for hole in fitting.holes]
    clash = first_clash(mine, (hole for fitting in others for hole in fitting.holes))
    if clash:
        yield _too_near(part, *clash, board)


def _check_edges(
    part: str, hole: Hole, width: float, height: float, board: str | None = None
) -> Iterator[Problem]:
    wood = min(hole.x, width - hole.x, hole.y, height - hole.y) - hole.diameter / 2
    if wood >= WOOD_BETWEEN - SLACK:
        return
    what, also = HOLES[hole.purpose], (board,) if board else ()
    if wood < -SLACK:
        yield error(
            "hole-outside", part, also=also, hole=what, x=hole.x, y=hole.y, board=board,
            width=width, height=height, pull=hole.purpose == "pull",
        )  # fmt: skip
        return
    yield error(
        "hole-near-edge", part, also=also, hole=what, x=hole.x, y=hole.y, board=board,
        wood=wood, least=WOOD_BETWEEN,
    )  # fmt: skip


def _check_depth(
    part: str, hole: Hole, thickness: float, board: str | None = None
) -> Iterator[Problem]:
    if hole.depth is None or hole.depth <= thickness - WOOD_BETWEEN + SLACK:
        return
    if hole.purpose == "cup":
        # The skin under a cup has a limit and a finding of its own.
        return
    also, what = (board,) if board else (), HOLES[hole.purpose]
    if hole.depth >= thickness - SLACK:
        yield error(
            "bored-through", part, also=also,
            hole=what, depth=hole.depth, thick=thickness, board=board,
        )  # fmt: skip
        return
    yield warning(
        "bored-deep", part, also=also, hole=what, depth=hole.depth, thick=thickness, board=board
    )


def _meeting(
    holes: Sequence[Hole], others: Sequence[Hole], thickness: float
) -> tuple[Hole, Hole] | None:
    """Give two holes of a front that come too near, whichever faces they start from."""
    for hole in holes:
        for other in others:
            if _reach_each_other(hole, other, thickness) and not holes_agree(hole, other):
                return hole, other
    return None


def _reach_each_other(one: Hole, other: Hole, thickness: float) -> bool:
    if one.face == other.face or one.depth is None or other.depth is None:
        return True
    return one.depth + other.depth > thickness - WOOD_BETWEEN + SLACK


def _too_near(part: str, one: Hole, other: Hole, board: str | None = None) -> Problem:
    return error(
        "holes-too-near", part, also=(board,) if board else (),
        one=HOLES[one.purpose], other=HOLES[other.purpose], x=one.x, y=one.y, board=board,
        apart=math.hypot(one.x - other.x, one.y - other.y),
    )  # fmt: skip


def check_waits(plan: BoxPlan, held: Withheld) -> Iterator[Problem]:
    """Hold back the doors whose hinges would stand elsewhere beside one without a hand; `held`:
    the errors of what is held back already."""
    for part, others in plan.prospect.waits.items():
        if part not in held:
            yield _waits(part, others, held, "hinges")


def check_faces(plan: BoxPlan, held: Withheld) -> Iterator[Problem]:
    """Check each part's holes in the boards against the board and those of the parts before it;
    `held`: the errors of what is held back already.

    Slides drill both sides alike, so that one finding tells of both.
    """
    held = dict(held)
    found: set[tuple[str, str]] = set()
    done: dict[FaceKey, list[Fitting]] = {face.key: [] for face in plan.faces}
    for face in plan.faces:
        for rank, part in enumerate(plan.parts):
            mine = face.lowered([f for f in plan.work[face.key] if f.part == part])
            if part not in held:
                problems = tuple(_check_part(plan, face, rank, mine, done, held))
                yield from (p for p in problems if (part, p.code) not in found)
                found.update((part, problem.code) for problem in problems)
                if errors := [problem for problem in problems if problem.level == "error"]:
                    held[part] = errors
            done[face.key].extend(mine)


def _check_part(
    plan: BoxPlan,
    face: BoardFace,
    rank: int,
    mine: Sequence[Fitting],
    done: Mapping[FaceKey, Sequence[Fitting]],
    held: Withheld,
) -> Iterator[Problem]:
    """Check the holes of one part in one face; `done`: those of the parts before it."""
    part = plan.parts[rank]
    yield from check_side_bores(
        part,
        face.board,
        mine,
        done[face.key],
        height=face.height,
        depth=face.depth,
        thickness=face.thickness,
    )
    if face.partition:
        yield from _check_other_face(face, part, mine, done.get(across(face.key), []))
    yield from _check_prospect(face, part, mine, plan.prospect, plan.parts[:rank], held)


def check_shared(
    faces: Sequence[BoardFace], work: Mapping[FaceKey, Sequence[Fitting]]
) -> Iterator[Problem]:
    """Tell which holes stand at the same place in both faces of a partition, of those that are
    drilled (`work`)."""
    for face in faces:
        _, shared = bore_through(face, work)
        if shared and face.hand == "right":
            yield _bored_once(face, shared)


def _bored_once(face: BoardFace, shared: Sequence[Purpose]) -> Problem:
    """Say that holes of both faces of a partition are one, and what screws or pins then may be."""
    pins, screws = "shelf" in shared, any(purpose != "shelf" for purpose in shared)
    return warning(
        "bored-through-once", face.board, holes=len(shared), thick=face.thickness,
        half=face.thickness / 2, pins=pins, both=pins and screws, screws=screws,
    )  # fmt: skip


def _check_other_face(
    face: BoardFace, part: str, mine: Sequence[Fitting], others: Sequence[Fitting]
) -> Iterator[Problem]:
    """Find holes that meet those bored from the other face of a partition."""
    met = meeting(mine, others, face.thickness)
    if met is None:
        return
    yield error(
        "faces-meet", part, also=(face.board,),
        board=face.board, thick=face.thickness, x=met[0].x, y=met[0].y,
    )  # fmt: skip


def _check_prospect(
    face: BoardFace,
    part: str,
    mine: Sequence[Fitting],
    prospect: Prospect,
    before: Collection[str],
    held: Withheld,
) -> Iterator[Problem]:
    """Find holes that may meet those of a part held back, once that is settled: what stands
    `before` this part does not give way to it."""
    if not mine:
        return
    for key in (face.key, across(face.key)) if face.partition else (face.key,):
        coming = [f for f in prospect.plates.get(key, ()) if f.part in before and f.part != part]
        for other, plate in zip(coming, face.lowered(coming), strict=True):
            holes = [hole for fitting in mine for hole in fitting.holes]
            clash = (
                first_clash(holes, plate.holes)
                if key == face.key
                else meeting(mine, (plate,), face.thickness)
            )
            if clash:
                one = str(other.part)
                yield _waits(part, prospect.waits.get(one, (one,)), held, "plates", face.board)
                return
    if not face.partition:
        return
    for shadow in prospect.beside(face.key):
        if _falls(mine, face, shadow, later=shadow.front in before):
            yield _waits(part, (shadow.front,), held, "other-face", face.board)
            return


def _falls(mine: Sequence[Fitting], face: BoardFace, shadow: Shadow, *, later: bool) -> bool:
    """Tell whether holes stand at the height of a shadow, and do not stay there undisturbed:
    those of a door give way to slides, and to what stands before it; others to `fixed` holes."""
    return any(
        (shadow.moves_doors or later if fitting.kind == "plate" else shadow.fixed and later)
        and any(shadow.low <= hole.y + face.base <= shadow.high for hole in fitting.holes)
        for fitting in mine
    )


def _waits(
    part: str, others: Sequence[str], held: Withheld, where: Waiting, board: str | None = None
) -> Problem:
    """Say for which others a part waits, and what holds the first of them."""
    why = [problem.code for problem in held.get(others[0], ())[:1]]
    return error(
        "neighbour-open", part, case=where, others=tuple(others), why=why[0] if why else None,
        board=board,
    )  # fmt: skip
