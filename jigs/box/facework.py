"""What is drilled into the sides and partitions of a box, slides first, then plates; which hardware
each front has, its own, else the job's; and how each door hangs on it.

Slides come first because their heights follow from the fronts alone; hinges then find places
that leave the slides' holes alone, those in the other face of a partition too. A door is planned
with the number of its hinges, its tab and plate, and the heights of both. The plates stand on the
side at the door's bottom edge plus the cups' heights, so that the two agree whatever the door
measures.
"""

from collections.abc import Iterator, Mapping, Sequence

from msgspec import Struct

from jigs.box.boards import BoardFace, FaceKey, across
from jigs.box.carcass import Carcass
from jigs.box.columns import Columns
from jigs.box.drawerplan import DrawerPlan
from jigs.box.fronts import PlacedFront
from jigs.fittings.fivepiece import five_piece_of, glass_door_mass
from jigs.fittings.hinge import (
    PLATE_BEYOND,
    HingeChoice,
    choose_tab_and_plate,
    least_reveal,
    plate_fittings,
)
from jigs.fittings.placing import (
    DENSITIES,
    FROM_PANEL,
    Against,
    Door,
    HingeHeights,
    compute_mass,
    count_hinges,
    find_against,
    place_hinges,
)
from jigs.fittings.slide import slide_fitting
from jigs.given.catalogue import DEFAULT_HINGES
from jigs.given.hardware import HingeRecord, SlideRecord
from jigs.given.job import BoxSpec, Job, Material
from jigs.ground.geometry import SLACK, Fitting, Hand
from jigs.ground.grid import balanced_start


def hinge_of(job: Job, front: PlacedFront) -> HingeRecord | None:
    """Give the hinge a front hangs on; None where it has none, or none is stated.

    Of several it is the one of the kind that the front hangs on; the first, where none is.
    """
    if front.spec.by_kit or front.kind != "door":
        return None
    names = front.spec.hung.hinge_names or job.use.hinge_names
    if "use.hinge" in job.assumed and front.spec.hung.hinge is None:
        names = (DEFAULT_HINGES[front.hung],)
    records = [job.hinges[name] for name in names if name in job.hinges]
    fitting = (record for record in records if record.kind == front.hung)
    return next(fitting, records[0] if records else None)


def slide_of(job: Job, front: PlacedFront) -> SlideRecord | None:
    """Give the slide a front runs on; None where it has none, or none is stated.

    A pullout with holes by hand in its back stands on a kit, which brings its own slides; only
    a slide that the person named is set beside it.
    """
    if front.spec.by_kit:
        return None
    by_kit = front.kind == "pullout" and any(hole.face == "back" for hole in front.spec.holes)
    own = None if by_kit and "use.slide" in job.assumed else front.spec.slide
    name = own or (None if by_kit else job.use.slide)
    return job.slides.get(name) if front.kind in ("drawer", "pullout") and name else None


def first_hole(job: Job, box: BoxSpec) -> float:
    """Give the first hole of the 32 mm row above the bottom end of a box's sides; mm."""
    return balanced_start(box.height) if job.grid.start is None else job.grid.start


BESIDE_SLIDE = 2.0
"""Between a hinge plate and a rollout's slide or its spacer; mm (common practice, no source)."""


class DoorPlan(Struct, frozen=True, kw_only=True):
    """What a door needs of its hinges. `plates` are heights on the side from its bottom end,
    `cups` the same above the door's bottom edge; mm."""

    record: HingeRecord
    choice: HingeChoice
    mass: float
    """The door's mass; kg."""
    needed: int
    """How many hinges its size and mass ask for."""
    plates: tuple[float, ...]
    cups: tuple[float, ...]
    least_reveal: float | None
    placing: HingeHeights | None = None
    """What came of placing its hinges by the rule; None where their heights are stated, or must
    be."""
    against: tuple[Against, ...] = ()
    """The heights given by hand that something stands in the way of."""
    beside_slides: bool = False
    """Whether slides of rollouts lie on its side too."""


def door_mass(front: PlacedFront, material: Material, thickness: float) -> float:
    """Give a door's mass in kg, at the job's density or its material's usual one."""
    density = material.front_density
    if density is None:
        density = DENSITIES[material.front_kind]
    frame = five_piece_of(front.spec, front.width, front.height)
    if frame is not None and frame.glass:
        return glass_door_mass(frame, thickness, density)
    return compute_mass(front.width, front.height, thickness, density)


def plan_door(
    front: PlacedFront,
    carcass: Carcass,
    record: HingeRecord,
    *,
    material: Material,
    thickness: float,
    grid: float | None,
    holes: Sequence[tuple[float, float]],
    slides: Sequence[tuple[float, float]] = (),
) -> DoorPlan:
    """Plan the hinges of a door whose hand is known.

    `holes` are the places (x, y) of the holes that its side already has; `grid` the first hole's
    height, None where plates need not keep to it; `slides` lower and upper edge of each rollout's
    slide there; mm.
    """
    spec = front.spec
    tab = spec.boring.tab if spec.boring.bored_tab is None else spec.boring.bored_tab
    mass = door_mass(front, material, thickness)
    asked = Door(
        bottom=front.place.y,
        height=front.height,
        count=count_hinges(width=front.width, height=front.height, mass=mass),
        plate_line=record.plate_line + front.set_back(thickness),
        plate_spacing=record.plate_spacing,
    )
    panels = (*carcass.panels, *_as_panels(slides, record))
    plates: tuple[float, ...] = ()
    placing: HingeHeights | None = None
    against: tuple[Against, ...] = ()
    if spec.hung.hinges_at:
        plates = tuple(sorted(front.place.y + height for height in spec.hung.hinges_at))
        against = find_against(plates, asked, panels=panels, holes=holes)
    elif not spec.boring.bored:
        placing = place_hinges(asked, grid=grid, panels=panels, holes=holes)
        plates = placing.heights
    return DoorPlan(
        record=record,
        choice=choose_tab_and_plate(record, front.lap, tab, fixed=spec.boring.bored),
        mass=mass,
        needed=asked.count,
        plates=plates,
        cups=tuple(height - front.place.y for height in plates),
        least_reveal=least_reveal(record, thickness),
        placing=placing,
        against=against,
        beside_slides=bool(slides),
    )


def _as_panels(
    slides: Sequence[tuple[float, float]], record: HingeRecord
) -> Iterator[tuple[float, float]]:
    """Give the slides of rollouts as a hinge on their side sees them: as panels.

    As a plate needs less room beside a slide than a hinge beside a panel, they are thinner ones.
    """
    less = FROM_PANEL - (record.plate_spacing / 2 + PLATE_BEYOND + BESIDE_SLIDE)
    for low, high in slides:
        yield low + less, high - less


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
