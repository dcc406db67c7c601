"""What is drilled into the sides and partitions of a box: slides first, then plates.

Slides come first because their heights follow from the fronts alone; hinges then find places
that leave the slides' holes alone, those in the other face of a partition too.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from jigs.boards import BoardFace, FaceKey, across, meeting
from jigs.carcass import Carcass
from jigs.checks.bores import check_side_bores
from jigs.checks.finding import error
from jigs.columns import Columns
from jigs.doors import DoorPlan, plan_door
from jigs.drawerplan import DrawerPlan
from jigs.findings import Findings
from jigs.fronts import PlacedFront
from jigs.geometry import SLACK, Fitting
from jigs.hardware import HingeRecord, SlideRecord
from jigs.hinge import PLATE_BEYOND, plate_fittings
from jigs.job import Hand, Job
from jigs.lengths import format_length
from jigs.placing import FROM_PANEL
from jigs.problems import Problem
from jigs.slide import slide_fitting

Work = dict[FaceKey, list[Fitting]]
"""The fittings of each drilled face, counted from the box's bottom end."""


BESIDE_SLIDE = 2.0
"""Between a hinge plate and a rollout's slide or its spacer; mm (common practice, no source)."""


def face_of(front: PlacedFront, hand: Hand) -> FaceKey:
    """Give the face that holds a front on one side."""
    return (front.column if hand == "left" else front.last_column, hand)


def run_slides(
    job: Job,
    faces: Sequence[BoardFace],
    fronts: Sequence[PlacedFront],
    drawers: Mapping[str, DrawerPlan],
) -> Work:
    """Set the slides of all drawers on the faces at both sides of them."""
    work: Work = {face.key: [] for face in faces}
    for front in fronts:
        if front.id not in drawers:
            continue
        plan = drawers[front.id]
        run = slide_fitting(
            plan.record,
            plan.place.hole,
            part=front.id,
            set_back=front.set_back(job.thickness_of(front.spec)),
        )
        for key in (face_of(front, "left"), face_of(front, "right")):
            work.setdefault(key, []).append(run)
    return work


def hang_doors(
    job: Job,
    columns: Columns,
    fronts: Sequence[PlacedFront],
    hinges: Mapping[str, HingeRecord],
    start: float,
    work: Work,
    findings: Findings,
    bands: Mapping[FaceKey, Sequence[tuple[float, float]]],
) -> dict[str, DoorPlan]:
    """Plan the doors, and set their plates; each leaves alone the holes that are there.

    `bands`: lower and upper edge of what else stands on a face; hinges keep clear of it;
    mm.

    Slides of drawers that are held back count as well: they will be drilled one day.
    """
    doors: dict[str, DoorPlan] = {}
    for front in fronts:
        if front.id not in hinges or front.hinged is None:
            continue
        record = hinges[front.id]
        carcass = columns.seen[front.id]
        key = face_of(front, front.hinged)
        behind = work.get(across(key), []) if front.hinged in carcass.shared else []
        holes = [
            *(hole for fitting in work.get(key, []) for hole in fitting.holes),
            *(
                hole
                for fitting in behind
                for hole in fitting.holes
                if (hole.depth or 0.0) + record.plate_depth + 1.0 > carcass.partition + SLACK
            ),
        ]
        plan = plan_door(
            front,
            beside_slides(carcass, record, bands.get(key, ())),
            record,
            material=job.material,
            thickness=job.thickness_of(front.spec),
            grid=start if job.grid.hinges else None,
            holes=[(hole.x, hole.y) for hole in holes],
            unit=job.shown,
        )
        doors[front.id] = plan
        findings.add(_beside_rollouts(plan.problems) if key in bands else plan.problems)
        set_back = front.set_back(job.thickness_of(front.spec))
        work.setdefault(key, []).extend(
            plate_fittings(record, plan.plates, part=front.id, set_back=set_back)
        )
    return doors


def beside_slides(
    carcass: Carcass, record: HingeRecord, bands: Sequence[tuple[float, float]]
) -> Carcass:
    """Give a box as the hinges on one of its faces see it: a slide that lies there is a panel.

    As a plate needs less room beside a slide than a hinge beside a panel, it is a thinner one.
    """
    less = FROM_PANEL - (record.plate_spacing / 2 + PLATE_BEYOND + BESIDE_SLIDE)
    slides = ((low + less, high - less) for low, high in bands)
    return replace(carcass, shelves=(*carcass.shelves, *slides))


def _beside_rollouts(problems: Sequence[Problem]) -> Iterator[Problem]:
    """Say of a hinge that finds no place what else lies on its side."""
    for problem in problems:
        crowded = problem.code in ("hinge-no-room", "hinge-against")
        text = f"{problem.text}; the slides of rollouts lie on this side too"
        yield replace(problem, text=text) if crowded else problem


def name_missing(
    held: Sequence[PlacedFront],
    slides: Mapping[str, SlideRecord],
    face: BoardFace,
    work: Mapping[FaceKey, Sequence[Fitting]],
) -> tuple[str, ...]:
    """Name the fronts held back that will have holes in a face one day.

    A door whose hand is not known yet may come on either side.
    """
    return tuple(
        front.id
        for front in held
        if face_of(front, face.hand) == face.key
        and (
            (front.kind == "drawer" and not front.spec.by_kit)
            or front.id in slides
            or any(front.id == fitting.part for fitting in work.get(face.key, ()))
            or (
                front.kind == "door" and not front.spec.by_kit and front.hinged in (None, face.hand)
            )
        )
    )


def check_faces(
    job: Job,
    faces: Sequence[BoardFace],
    parts: Sequence[str],
    work: Mapping[FaceKey, Sequence[Fitting]],
    findings: Findings,
) -> None:
    """Check each part's holes in the boards against the board and those of the parts before it.

    `parts`: the IDs of the fronts, from the top, then of the rollouts.

    Slides drill both sides alike, so that one finding tells of both.
    """
    found: set[tuple[str, str]] = set()
    done: dict[FaceKey, list[Fitting]] = {face.key: [] for face in faces}
    for face in faces:
        for part in parts:
            if part in findings.held:
                continue
            mine = face.lowered([f for f in work[face.key] if f.part == part])
            problems = check_side_bores(
                part,
                face.board,
                mine,
                done[face.key],
                height=face.height,
                depth=face.depth,
                thickness=face.thickness,
                unit=job.shown,
            )
            if face.partition:
                problems += _check_other_face(face, part, mine, done.get(across(face.key), []))
            findings.add(p for p in problems if (part, p.code) not in found)
            found.update((part, problem.code) for problem in problems)
            if part not in findings.held:
                done[face.key].extend(mine)


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
