"""One box planned: where its fronts stand, what they hang on and run on, what is drilled.

A plan is made from the job alone. What cannot be planned is left out, and the reason stands in
the plan as a value: a drawer box too low, hinges without room, a pull without wood. Whether that
is an error, and what is to be said of it, the checks decide; what is held back, the layout.
"""

from collections.abc import Iterator, Mapping

from msgspec import Struct

from jigs.box.boards import BoardFace, FaceKey, find_faces
from jigs.box.carcass import Carcass
from jigs.box.columns import Columns, place_columns
from jigs.box.drawerplan import DrawerPlan, plan_drawers
from jigs.box.facework import DoorPlan, first_hole, hang_doors, hinge_of, run_slides, slide_of
from jigs.box.fittings import FrontFittings, boards_by_hand, fit_front
from jigs.box.frontpulls import PullAim
from jigs.box.fronts import PlacedFront
from jigs.box.inhand import FrontInHand, judge_in_hand, move_fittings
from jigs.box.rollouts import RolloutPlan, plan_rollouts, run_rollouts, slide_bands
from jigs.box.shelves import set_pins
from jigs.box.waiting import Prospect, foresee
from jigs.fittings.fivepiece import FivePiece, five_piece_of
from jigs.given.hardware import HingeRecord, SlideRecord
from jigs.given.job import BoxSpec, Job
from jigs.ground.geometry import Fitting
from jigs.ground.grouped import grouped


class FrontPlan(Struct, frozen=True, kw_only=True):
    """One front planned."""

    front: PlacedFront
    """In its place, as it was ordered."""
    carcass: Carcass
    """The box as it sees it."""
    hinge: HingeRecord | None
    """What it hangs on; None where it does not hang, or nobody named one."""
    slide: SlideRecord | None
    """What it runs on; None where it does not run, or nobody named one."""
    door: DoorPlan | None
    """Its hinges in their places; None where it has none, or its hand is not known."""
    drawer: DrawerPlan | None
    """Its drawer box and its place; None where it has none."""
    hand: FrontInHand
    """As it is in hand, beside its order."""
    ordered: FrontFittings
    """What is meant for it as it was ordered."""
    fitted: FrontFittings
    """What is drilled into it as it is in hand."""

    @property
    def id(self) -> str:
        """Its ID."""
        return self.front.id

    @property
    def frame(self) -> FivePiece | None:
        """Its stiles, rails and panel as it is in hand; None of a slab."""
        front = self.hand.front
        return five_piece_of(front.spec, front.width, front.height)


class BoxPlan(Struct, frozen=True, kw_only=True):
    """One box planned; heights from its bottom end, mm."""

    box: BoxSpec
    columns: Columns
    faces: tuple[BoardFace, ...]
    """Every drilled face of its boards."""
    fronts: tuple[FrontPlan, ...]
    """Column by column from the top, left before right; openings are none."""
    rollouts: tuple[RolloutPlan, ...]
    work: Mapping[FaceKey, tuple[Fitting, ...]]
    """What is drilled into each face, that of parts that may be held back too."""
    prospect: Prospect
    """What may still come into the faces when that is settled which is open."""
    unserved: tuple[str, ...]
    """The fronts that holes by hand in its boards name, and that it does not have."""

    @property
    def parts(self) -> tuple[str, ...]:
        """The IDs of all that may be held back: the fronts, then the rollouts."""
        fronts = (front.id for front in self.fronts)
        return (*fronts, *(plan.rollout.id for plan in self.rollouts))

    @property
    def has_boards(self) -> bool:
        """Whether it has boards to drill: an open place with nothing in it has none."""
        return bool(self.parts or self.box.shelves) or self.box.kind != "open"

    @property
    def by_columns(self) -> Iterator[tuple[FrontPlan, ...]]:
        """The fronts that stand before the same columns, from the lowest up."""
        groups = grouped(
            ((plan.front.place.column, plan.front.place.span), plan) for plan in self.fronts
        )
        yield from (tuple(reversed(group)) for group in groups.values())


def plan_box(job: Job, box: BoxSpec, aims: Mapping[str, PullAim] | None = None) -> BoxPlan:
    """Plan one box of a job; `aims`: by front ID, where pulls are to line up with others.

    Slides are set first, then the holes by hand, then the plates, which keep clear of both; pins
    come last, where nothing stands and nothing may yet come.
    """
    columns = place_columns(job, box)
    fronts = tuple(front for front in columns.fronts if front.kind != "opening")
    start, faces = first_hole(job, box), find_faces(columns)
    rollouts, drawers = plan_rollouts(job, box, columns, fronts), _plan_drawers(job, columns, start)
    work = run_slides(job, faces, fronts, drawers)
    run_rollouts(rollouts, work)
    by_hand, unserved = boards_by_hand(box, fronts)
    for key, fittings in by_hand.items():
        work.setdefault(key, []).extend(fittings)
    before = {key: list(fittings) for key, fittings in work.items()}
    bands = slide_bands(rollouts)
    doors = hang_doors(job, columns, fronts, start, work, bands)
    prospect = foresee(job, columns, fronts, start, before, bands, doors)
    set_back = job.material.front if box.overlay == "inset" else 0.0
    set_pins(columns, faces, work, prospect, start=start, set_back=set_back)
    return BoxPlan(
        box=box,
        columns=columns,
        faces=faces,
        fronts=tuple(
            _plan_front(
                job,
                hand,
                front,
                columns.seen[front.id],
                doors.get(front.id),
                drawers.get(front.id),
                (aims or {}).get(front.id),
            )
            for front, hand in zip(fronts, judge_in_hand(job, fronts), strict=True)
        ),
        rollouts=rollouts,
        work={key: tuple(fittings) for key, fittings in work.items()},
        prospect=prospect,
        unserved=unserved,
    )


def _plan_drawers(job: Job, columns: Columns, start: float) -> dict[str, DrawerPlan]:
    """Plan the drawers, those before the same columns together."""
    groups: dict[tuple[int, int], dict[str, SlideRecord]] = {}
    for front in columns.fronts:
        if (slide := slide_of(job, front)) is not None:
            groups.setdefault((front.place.column, front.place.span), {})[front.id] = slide
    drawers: dict[str, DrawerPlan] = {}
    for (column, _), records in groups.items():
        stack, carcass = columns.stacks[column - 1], columns.seen[next(iter(records))]
        drawers |= plan_drawers(stack, carcass, job, records=records, start=start)
    return drawers


def _plan_front(
    job: Job,
    hand: FrontInHand,
    front: PlacedFront,
    carcass: Carcass,
    door: DoorPlan | None,
    drawer: DrawerPlan | None,
    aim: PullAim | None,
) -> FrontPlan:
    ordered = fit_front(job, carcass, front, door=door, drawer=drawer, aim=aim)
    return FrontPlan(
        front=front,
        carcass=carcass,
        hinge=hinge_of(job, front),
        slide=slide_of(job, front),
        door=door,
        drawer=drawer,
        hand=hand,
        ordered=ordered,
        fitted=move_fittings(ordered, front, hand.front),
    )
