"""Do the holes of each part suit the boards they stand in, and those of the other parts there?

Those of a part that is held back count too: they will be drilled one day. What they may yet be,
where that is not settled, is in `jigs.box.waiting`.
"""

from collections.abc import Collection, Mapping, Sequence

from jigs.box.boards import BoardFace, FaceKey, across, bore_through, meeting
from jigs.box.plan import BoxPlan
from jigs.box.waiting import Prospect, Shadow
from jigs.checks.bores import check_side_bores
from jigs.checks.findings import Findings
from jigs.ground.finding import error, warning
from jigs.ground.geometry import Fitting, Purpose
from jigs.ground.grid import first_clash
from jigs.ground.lengths import Unit, format_length
from jigs.ground.problems import Problem


def check_waits(plan: BoxPlan, findings: Findings) -> None:
    """Hold back the doors whose hinges would stand elsewhere beside one without a hand."""
    for part, others in plan.prospect.waits.items():
        if part not in findings.held:
            what = "hung at the same board, that door moves the hinges of this one"
            findings.add((_waits(part, others, what, findings),))


def check_faces(plan: BoxPlan, findings: Findings, unit: Unit) -> None:
    """Check each part's holes in the boards against the board and those of the parts before it.

    Slides drill both sides alike, so that one finding tells of both.
    """
    faces, parts, work, prospect = plan.faces, plan.parts, plan.work, plan.prospect
    found: set[tuple[str, str]] = set()
    done: dict[FaceKey, list[Fitting]] = {face.key: [] for face in faces}
    for face in faces:
        for rank, part in enumerate(parts):
            mine = face.lowered([f for f in work[face.key] if f.part == part])
            if part not in findings.held:
                problems = check_side_bores(
                    part,
                    face.board,
                    mine,
                    done[face.key],
                    height=face.height,
                    depth=face.depth,
                    thickness=face.thickness,
                    unit=unit,
                )
                if face.partition:
                    problems += _check_other_face(face, part, mine, done.get(across(face.key), []))
                before = frozenset(parts[:rank])
                problems += _check_prospect(face, part, mine, prospect, before, findings)
                findings.add(p for p in problems if (part, p.code) not in found)
                found.update((part, problem.code) for problem in problems)
            done[face.key].extend(mine)


def check_shared(
    faces: Sequence[BoardFace], work: Mapping[FaceKey, Sequence[Fitting]], unit: Unit
) -> list[Problem]:
    """Tell which holes stand at the same place in both faces of a partition, of those that are
    drilled (`work`)."""
    problems = []
    for face in faces:
        _, shared = bore_through(face, work)
        if shared and face.hand == "right":
            problems.append(_bored_once(face, shared, unit))
    return problems


def _bored_once(face: BoardFace, shared: Sequence[Purpose], unit: Unit) -> Problem:
    """Say that holes of both faces of a partition are one, and what screws or pins then may be."""
    half = format_length(face.thickness / 2, unit)
    pins, screws = "shelf" in shared, any(purpose != "shelf" for purpose in shared)
    what = "screws and pins" if pins and screws else "pins" if pins else "screws"
    bolt = ", or take one through-bolt for both" if screws else ""
    return warning(
        "bored-through-once",
        face.board,
        f"{len(shared)} of its holes stand at the same place in both faces, and "
        f"{format_length(face.thickness, unit)} does not take both: bore them right through "
        "once, from either face",
        f"keep the {what} under {half}{bolt}",
    )


def _check_other_face(
    face: BoardFace, part: str, mine: Sequence[Fitting], others: Sequence[Fitting]
) -> tuple[Problem, ...]:
    """Find holes that meet those bored from the other face of a partition."""
    met = meeting(mine, others, face.thickness)
    if met is None:
        return ()
    return (
        error(
            "faces-meet",
            part,
            f"in {face.board}, {format_length(face.thickness, 'mm')} thick, its hole at x "
            f"{format_length(met[0].x, 'mm')}, y {format_length(met[0].y, 'mm')} from the bottom "
            f"end meets one from the other face",
            "move one of them, bore both less deep, or make the partition thicker",
            (face.board,),
        ),
    )


def _check_prospect(
    face: BoardFace,
    part: str,
    mine: Sequence[Fitting],
    prospect: Prospect,
    before: Collection[str],
    findings: Findings,
) -> tuple[Problem, ...]:
    """Find holes that may meet those of a part held back, once that is settled: what stands
    `before` this part does not give way to it."""
    if not mine:
        return ()
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
                what = f"its plates would meet the holes of this one in {face.board}"
                one = str(other.part)
                return (_waits(part, prospect.waits.get(one, (one,)), what, findings),)
    if not face.partition:
        return ()
    for shadow in prospect.beside(face.key):
        if _falls(mine, face, shadow, later=shadow.front in before):
            what = f"where its holes will be on the other face of {face.board} is not known"
            return (_waits(part, (shadow.front,), what, findings),)
    return ()


def _falls(mine: Sequence[Fitting], face: BoardFace, shadow: Shadow, *, later: bool) -> bool:
    """Tell whether holes stand at the height of a shadow, and do not stay there undisturbed:
    those of a door give way to slides, and to what stands before it; others to `fixed` holes."""
    return any(
        (shadow.moves_doors or later if fitting.kind == "plate" else shadow.fixed and later)
        and any(shadow.low <= hole.y + face.base <= shadow.high for hole in fitting.holes)
        for fitting in mine
    )


def _waits(part: str, others: Sequence[str], what: str, findings: Findings) -> Problem:
    """Say for which others a part waits, and what holds the first of them."""
    named = ", ".join(others)
    why = "".join(f": {problem.name}" for problem in findings.held.get(others[0], ())[:1])
    return error(
        "neighbour-open",
        part,
        f"waits for {named}{why}; {what}",
        f"settle {named}; what is drilled meanwhile must not move",
    )
