"""What is drilled into one front, by its kind: cups, pulls, fixing screws, holes by hand; and holes
by hand in the boards beside it.

Lift and folding fittings, the frame of a pullout, the hinges of a tilting front: their holes
come from the leaflet in the box of the hardware, in a front (`[[box.front.hole]]`) or in the
boards beside it (`[[box.hole]]`). The tool computes nothing for them; it checks that they lie in
the wood and away from other holes, and prints them.

>>> bracket = HandHole(x=60.0, y=100.0, diameter=5.0, depth=12.0, face="back", purpose="bracket",
...                    mirrored=True)
>>> [hole.x for hole in with_mirrored([bracket], width=377.8)]
[60.0, 317.8]
"""

from collections.abc import Iterable, Iterator, Sequence
from math import hypot

from msgspec import Struct
from msgspec.structs import replace

from jigs.box.boards import FaceKey
from jigs.box.carcass import Carcass
from jigs.box.drawerbox import DrawerBox
from jigs.box.drawerplan import DrawerPlan, false_backing
from jigs.box.facework import DoorPlan
from jigs.box.frontpulls import FrontPulls, PullAim, set_pulls
from jigs.box.fronts import PlacedFront
from jigs.box.parts import Screws
from jigs.fittings.fivepiece import FivePiece, five_piece_of, stands_on_panel
from jigs.fittings.fixing import HEAD, FixingPlan, fixing_screw, place_fixings
from jigs.fittings.hinge import cup_fittings
from jigs.fittings.pull import COUNTERBORE_DEPTH, pull_screw
from jigs.given.hardware import SlideRecord
from jigs.given.job import BoxSpec, Job
from jigs.given.kinds import KINDS
from jigs.given.stated import HandHole
from jigs.ground.geometry import SLACK, Fitting, Hand, Hole, collect_holes, mirror_x

GROUP = 100.0
"""Holes by hand this near to each other belong to one piece of hardware; mm (common practice)."""


def holds_kit(holes: Iterable[HandHole]) -> bool:
    """Tell whether some of these holes can hold a front: those in its back, or right through."""
    return any(
        hole.kind == "manual" and (hole.face == "back" or hole.depth is None) for hole in holes
    )


def with_mirrored(holes: Iterable[HandHole], *, width: float) -> Iterator[HandHole]:
    """Give the holes of a front `width` mm wide, the mirrored ones on both its halves."""
    for hole in holes:
        yield hole
        across = mirror_x(hole.x, width)
        if hole.mirrored and abs(across - hole.x) > SLACK:
            yield replace(hole, x=across)


def front_by_hand(front: PlacedFront) -> tuple[Fitting, ...]:
    """Give the holes stated by hand in a front; in a leaf of a pair, those meant for it."""
    leaf = front.hinged if front.spec.kind == "pair" else None
    mine = [hole for hole in front.spec.holes if hole.leaf in (None, leaf)]
    return group_by_hand(with_mirrored(mine, width=front.width), front.id, height=front.height)


def boards_by_hand(
    box: BoxSpec, fronts: Sequence[PlacedFront]
) -> tuple[dict[FaceKey, list[Fitting]], tuple[str, ...]]:
    """Give the holes stated by hand in the boards of a box, face by face, and the fronts that
    some of them name and that are not there. Heights count from the box's bottom end; those that
    are stated from the top count from that of its sides, in a partition too."""
    by_name: dict[tuple[str, Hand], PlacedFront] = {}
    for front in fronts:
        for hand in ("left", "right"):
            by_name[front.id, hand] = front
        if front.spec.kind == "pair" and front.hinged:
            by_name[front.spec.id, front.hinged] = front
    groups: dict[tuple[FaceKey, str], list[HandHole]] = {}
    unknown: dict[str, None] = {}
    for item in box.holes:
        served = by_name.get((item.front, item.hand))
        if served is None:
            unknown[item.front] = None
            continue
        column = served.place.column if item.hand == "left" else served.place.last_column
        groups.setdefault(((column, item.hand), served.id), []).append(item.hole)
    work: dict[FaceKey, list[Fitting]] = {}
    for (face, part), holes in groups.items():
        work.setdefault(face, []).extend(group_by_hand(holes, part, height=box.height))
    return work, tuple(unknown)


def group_by_hand(holes: Iterable[HandHole], part: str, *, height: float) -> tuple[Fitting, ...]:
    """Give the holes stated by hand in a part `height` mm high, those near each other in one face
    and stated from the same end as one fitting."""

    def beside(one: HandHole, other: HandHole) -> bool:
        alike = (one.kind, one.face, one.stated_from) == (
            other.kind,
            other.face,
            other.stated_from,
        )
        apart = hypot(one.x - other.x, one.up(height) - other.up(height))
        return alike and apart <= GROUP

    groups: list[list[HandHole]] = []
    for hole in holes:
        near = [group for group in groups if any(beside(hole, other) for other in group)]
        groups = [group for group in groups if group not in near]
        groups.append([*(other for group in near for other in group), hole])
    groups.sort(key=lambda group: (group[0].face, min((h.up(height), h.x) for h in group)))
    kinds = [group[0].kind for group in groups]
    numbered = [
        (group, kinds[:place].count(kind), kinds.count(kind))
        for place, (group, kind) in enumerate(zip(groups, kinds, strict=True), start=1)
    ]
    return tuple(
        Fitting(
            kind=group[0].kind,
            index=index,
            count=count,
            part=part,
            record=None,
            holes=tuple(
                Hole(
                    purpose=KINDS[hole.kind].holes[0],
                    face=hole.face,
                    x=hole.x,
                    y=hole.up(height),
                    diameter=hole.diameter,
                    depth=hole.depth,
                )
                for hole in group
            ),
            note=", ".join(
                dict.fromkeys(h.purpose for h in group if h.purpose and h.kind == "manual")
            ),
            stated_from=group[0].stated_from,
        )
        for group, index, count in numbered
    )


GENERIC_SLIDE = SlideRecord(name="generic")
"""The slide whose numbers a false front stands by where the job has none."""


class FrontFittings(Struct, frozen=True, kw_only=True):
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
