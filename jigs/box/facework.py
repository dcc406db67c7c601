"""What is drilled into the sides and partitions of a box: slides first, then plates.

Slides come first because their heights follow from the fronts alone; hinges then find places
that leave the slides' holes alone, those in the other face of a partition too.
"""

from collections.abc import Mapping, Sequence

from jigs.box.boards import BoardFace, FaceKey, across
from jigs.box.chosen import hinge_of
from jigs.box.columns import Columns
from jigs.box.doors import DoorPlan, plan_door
from jigs.box.drawerplan import DrawerPlan
from jigs.box.fronts import PlacedFront
from jigs.fittings.hinge import plate_fittings
from jigs.fittings.slide import slide_fitting
from jigs.given.hardware import HingeRecord
from jigs.given.job import Job
from jigs.ground.geometry import SLACK, Fitting, Hand

FaceWork = dict[FaceKey, list[Fitting]]
"""The fittings of each drilled face, counted from the box's bottom end."""


def face_of(front: PlacedFront, hand: Hand) -> FaceKey:
    """Give the face that holds a front on one side."""
    return (front.place.column if hand == "left" else front.place.last_column, hand)


def run_slides(
    job: Job,
    faces: Sequence[BoardFace],
    fronts: Sequence[PlacedFront],
    drawers: Mapping[str, DrawerPlan],
) -> FaceWork:
    """Set the slides of all drawers on the faces at both sides of them."""
    work: FaceWork = {face.key: [] for face in faces}
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
    start: float,
    work: FaceWork,
    bands: Mapping[FaceKey, Sequence[tuple[float, float]]],
) -> dict[str, DoorPlan]:
    """Plan the doors, and set their plates; each leaves alone the holes that are there.

    `bands`: lower and upper edge of what else stands on a face; hinges keep clear of it;
    mm.

    Slides of drawers, and plates of doors, that are held back count as well: they will be drilled
    one day.
    """
    doors: dict[str, DoorPlan] = {}
    for front in fronts:
        hinge = hinge_of(job, front)
        if hinge is None or front.hinged is None:
            continue
        key = face_of(front, front.hinged)
        plan, plates = hang_door(job, columns, front, hinge, start, work, bands)
        doors[front.id] = plan
        work.setdefault(key, []).extend(plates)
    return doors


def hang_door(
    job: Job,
    columns: Columns,
    front: PlacedFront,
    record: HingeRecord,
    start: float,
    work: Mapping[FaceKey, Sequence[Fitting]],
    bands: Mapping[FaceKey, Sequence[tuple[float, float]]],
) -> tuple[DoorPlan, tuple[Fitting, ...]]:
    """Plan one door whose hand is known beside what is drilled already; give its plates too."""
    hand = front.hinged or "left"
    carcass = columns.seen[front.id]
    key = face_of(front, hand)
    behind = work.get(across(key), ()) if hand in carcass.shared else ()
    holes = [
        *(hole for fitting in work.get(key, ()) for hole in fitting.holes),
        *(
            hole
            for fitting in behind
            for hole in fitting.holes
            if (hole.depth or 0.0) + record.plate_depth + 1.0 > carcass.partition + SLACK
        ),
    ]
    thickness = job.thickness_of(front.spec)
    plan = plan_door(
        front,
        carcass,
        record,
        material=job.material,
        thickness=thickness,
        grid=start if job.grid.hinges else None,
        holes=[(hole.x, hole.y) for hole in holes],
        slides=bands.get(key, ()),
    )
    return plan, plate_fittings(
        record, plan.plates, part=front.id, set_back=front.set_back(thickness)
    )
