"""What is drilled into one front, by its kind: cups, pulls, fixing screws, holes by hand."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from jigs.box.byhand import front_by_hand
from jigs.box.carcass import Carcass
from jigs.box.doors import DoorPlan
from jigs.box.drawerplan import DrawerPlan, false_backing
from jigs.box.frontpulls import FrontPulls, PullAim, set_pulls
from jigs.box.fronts import PlacedFront
from jigs.box.parts import DrawerBox, Screws
from jigs.fittings.fivepiece import FivePiece, five_piece_of, stands_on_panel
from jigs.fittings.fixing import HEAD, FixingPlan, fixing_screw, place_fixings
from jigs.fittings.hinge import cup_fittings
from jigs.fittings.pull import COUNTERBORE_DEPTH, pull_screw
from jigs.given.hardware import SlideRecord
from jigs.given.job import Job
from jigs.ground.geometry import SLACK, Fitting, collect_holes

GENERIC_SLIDE = SlideRecord(name="generic")
"""The slide whose numbers a false front stands by where the job has none."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FrontFittings:
    """What is drilled into a front, its drawer box with clearance holes, and its screws; mm."""

    front: tuple[Fitting, ...]
    pulls: FrontPulls
    screws: Screws
    frame: FivePiece | None = None
    """Its stiles, rails and panel; None for a slab."""
    fixings: FixingPlan | None = None
    """The screws that hold a drawer front or a false one."""
    drawer: DrawerBox | None = None
    clamped: float | None = None
    """What a pull's screw clamps; None without a pull."""
    passed: float | None = None
    """What a fixing screw passes before it reaches the front; None without one."""


def fit_front(
    job: Job,
    carcass: Carcass,
    front: PlacedFront,
    *,
    door: DoorPlan | None,
    drawer: DrawerPlan | None,
    aim: PullAim | None = None,
) -> FrontFittings:
    """Give everything that is drilled into one front; `aim`: where its pull is wanted."""
    thickness = job.thickness_of(front.spec)
    pulled = set_pulls(job, carcass.box, front, aim)
    pull, pulls = pulled.record, pulled.fittings
    frame = five_piece_of(front.spec, front.width, front.height)
    cups: tuple[Fitting, ...] = ()
    if door and front.hinged and not front.spec.boring.bored:
        cups = cup_fittings(
            door.record,
            door.cups,
            part=front.id,
            width=front.width,
            hinged=front.hinged,
            tab=door.choice.tab,
            material=job.material.front_kind,
        )
    plan = _fix(job, carcass, front, drawer, pulls, thickness, frame)
    fixings = plan.front if plan else ()
    box = replace(drawer.drawer, fittings=plan.box) if drawer and plan else None
    through = False
    if box is not None:
        behind = [box.y < hole.y < box.y + box.height for hole in collect_holes(pulls)]
        through = bool(pull and pull.screws == "through" and behind and all(behind))
    # What a front is screwed to lies against its back: a head that is not sunk holds it off.
    counterbore = COUNTERBORE_DEPTH if pulls and plan and not through else 0.0
    clamped = None
    if pulls:
        on_panel = frame and not through and stands_on_panel(collect_holes(pulls), frame)
        held = frame.panel if frame and on_panel else thickness
        clamped = held - counterbore + (job.material.drawer_side if through else 0.0)
    passed = None
    if fixings or (box is not None and box.maker_bored):
        passed = job.material.drawer_side if box else carcass.side
    return FrontFittings(
        front=(*cups, *fixings, *pulls, *front_by_hand(front)),
        pulls=pulled,
        frame=frame,
        fixings=plan,
        drawer=box,
        screws=Screws(
            pull=None if clamped is None else pull_screw(clamped, job.units),
            through_box=through,
            counterbore=counterbore,
            fixing=None if passed is None else fixing_screw(passed, thickness),
            head=_widest_head(plan),
        ),
        clamped=clamped,
        passed=passed,
    )


def _widest_head(fixings: FixingPlan | None) -> float | None:
    """Give the widest head of a fixing screw, None where a washer head passes; mm."""
    head = None if fixings is None else fixings.head
    return head if head is not None and head < 2 * HEAD - SLACK else None


def _fix(
    job: Job,
    carcass: Carcass,
    front: PlacedFront,
    drawer: DrawerPlan | None,
    pulls: Sequence[Fitting],
    thickness: float,
    frame: FivePiece | None,
) -> FixingPlan | None:
    """Give the fixing screws of a drawer front, or of a false one; those of a drawer box that its
    maker bored have no places."""
    if drawer is not None and drawer.drawer.maker_bored:
        return FixingPlan(front=(), box=())
    if drawer is not None:
        backing = drawer.backing
    elif front.kind == "false-front" and not front.spec.by_kit:
        name = front.spec.slide or job.use.slide
        record = job.slides.get(name, GENERIC_SLIDE) if name else GENERIC_SLIDE
        backing = false_backing(front, carcass, job, record)
    else:
        return None
    return place_fixings(
        backing,
        part=front.id,
        width=front.width,
        height=front.height,
        thickness=thickness,
        pulls=collect_holes(pulls),
        ground=frame,
        at_rest=drawer is None,
    )


def renumber(fittings: Iterable[Fitting]) -> tuple[Fitting, ...]:
    """Number the fittings of a box side by kind, from the bottom up, and put them in order."""
    ordered = sorted(
        fittings, key=lambda fitting: min((hole.y for hole in fitting.holes), default=0.0)
    )
    counts: dict[str, int] = {}
    for fitting in ordered:
        counts[fitting.kind] = counts.get(fitting.kind, 0) + 1
    seen: dict[str, int] = {}
    numbered = []
    for fitting in ordered:
        seen[fitting.kind] = seen.get(fitting.kind, 0) + 1
        numbered.append(replace(fitting, index=seen[fitting.kind], count=counts[fitting.kind]))
    return tuple(numbered)
