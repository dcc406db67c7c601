"""The rollouts of a box planned: each drawer box's width and place, and its slides' hole line.

The width goes by the inside rule of any drawer, between the faces of the spacers. The slides'
holes stand as a drawer's do: on the system line, a - b (undermount) or the centre height (side
mount) above the box's underside. On the side where a door before it hangs a rollout has a spacer
of 20 (20 to 25; common practice, no source).

>>> from jigs.given.hardware import SlideRecord
>>> runner = SlideRecord(name="runner", width_less=42.0)
>>> width_between(runner, 420.6, (20.0, 0.0), 15.9, "mm")  # 420.6 - 20 - 42 + 2 * 15.9
390.0
"""

from collections.abc import Mapping, Sequence

from msgspec import Struct

from jigs.box.boards import FaceKey
from jigs.box.carcass import Carcass
from jigs.box.columns import Columns
from jigs.box.drawerbox import Rollout
from jigs.box.fronts import PlacedFront
from jigs.fittings.slide import (
    drawer_length,
    hole_above_drawer,
    hook_fittings,
    outside_width,
    recess_and_notch,
    rise_above_floor_line,
    slide_fitting,
)
from jigs.given.hardware import SlideRecord
from jigs.given.ids import name_rollout
from jigs.given.job import BoxSpec, Job
from jigs.given.stated import RolloutSpec
from jigs.ground.codes import part_code
from jigs.ground.geometry import SLACK, Fitting, Hand, collect_holes
from jigs.ground.lengths import Unit

SPACER = 20.0
"""Spacer under a rollout's slide where a door hangs; mm (common practice, no source)."""


class RolloutPlan(Struct, frozen=True, kw_only=True):
    """A rollout planned: its slide (`stated`: somebody named one), the box as its column sees
    it, the fronts before it, and its slides on both sides, mm from the bottom end."""

    spec: RolloutSpec
    rollout: Rollout
    record: SlideRecord
    stated: bool
    carcass: Carcass
    fronts: tuple[PlacedFront, ...]
    slides: Mapping[FaceKey, Fitting]

    @property
    def low(self) -> float:
        """The lower end of the rollout and what hangs under it; mm."""
        return self.rollout.y - rise_above_floor_line(self.record)

    @property
    def hung(self) -> tuple[Hand, ...]:
        """The sides of its column on which a door before it hangs."""
        return hung_sides(self.fronts, self.rollout.column)


def width_between(
    record: SlideRecord,
    opening: float,
    spacers: tuple[float, float],
    drawer_side: float,
    units: Unit,
) -> float:
    """Give the outside width of a rollout whose slides stand on spacers, left and right; mm."""
    return outside_width(record, opening - sum(spacers), drawer_side, units)


def plan_rollouts(
    job: Job, box: BoxSpec, columns: Columns, fronts: Sequence[PlacedFront]
) -> tuple[RolloutPlan, ...]:
    """Plan the rollouts of a box, in the job's order."""
    return tuple(
        _plan(job, box, spec, name_rollout(box.id, number), columns, fronts)
        for number, spec in enumerate(box.rollouts, start=1)
    )


def hung_sides(fronts: Sequence[PlacedFront], column: int) -> tuple[Hand, ...]:
    """Give the sides of a column on which one of these doors hangs."""
    left = any(front.hinged == "left" and front.place.column == column for front in fronts)
    right = any(front.hinged == "right" and front.place.last_column == column for front in fronts)
    hands: tuple[tuple[bool, Hand], ...] = ((left, "left"), (right, "right"))
    return tuple(hand for hung, hand in hands if hung)


def run_rollouts(plans: Sequence[RolloutPlan], work: dict[FaceKey, list[Fitting]]) -> None:
    """Add the slides of the rollouts to what is drilled into the faces."""
    for plan in plans:
        for key, slide in plan.slides.items():
            work.setdefault(key, []).append(slide)


def slide_bands(plans: Sequence[RolloutPlan]) -> dict[FaceKey, list[tuple[float, float]]]:
    """Give the lower and upper edge of each rollout's slide on each face, of which hinges keep
    clear; mm."""
    bands: dict[FaceKey, list[tuple[float, float]]] = {}
    for plan in plans:
        for key, slide in plan.slides.items():
            heights = [y for polygon in slide.outline for _, y in polygon]
            bands.setdefault(key, []).append((min(heights), max(heights)))
    return bands


def _plan(
    job: Job,
    box: BoxSpec,
    spec: RolloutSpec,
    name: str,
    columns: Columns,
    fronts: Sequence[PlacedFront],
) -> RolloutPlan:
    carcass = columns.carcasses[spec.column - 1]
    before = tuple(
        front
        for front in fronts
        if front.place.column <= spec.column <= front.place.last_column
        and front.place.y < spec.at + spec.height - SLACK
        and front.top > spec.at + SLACK
    )
    hung = hung_sides(before, spec.column)
    left = _spacer(spec.spacer_left, "left" in hung)
    right = _spacer(spec.spacer_right, "right" in hung)
    chosen = spec.slide or job.use.slide
    record = job.slides.get(chosen) if chosen else None
    stated = record is not None
    record = record or SlideRecord(name="none")
    drawer_side = job.material.drawer_side
    width = width_between(record, carcass.opening, (left, right), drawer_side, job.units)
    length = drawer_length(record)
    recess, notch = recess_and_notch(record)
    set_back = max(
        (front.set_back(job.thickness_of(front.spec)) for front in before),
        default=job.material.front if box.overlay == "inset" else 0.0,
    )
    hole = spec.at + hole_above_drawer(record)
    rear = hook_fittings(record, part=name, width=width, height=spec.height, side=drawer_side)
    spacers: tuple[tuple[Hand, float], ...] = (("left", left), ("right", right))
    return RolloutPlan(
        spec=spec,
        record=record,
        stated=stated,
        carcass=carcass,
        fronts=before,
        slides={
            (spec.column, hand): slide_fitting(
                record, hole, part=name, set_back=set_back, spacer=spacer
            )
            for hand, spacer in spacers
        },
        rollout=Rollout(
            id=name,
            box=box.id,
            wall=box.wall,
            column=spec.column,
            slide=record.name,
            width=width,
            height=spec.height,
            length=length,
            side=drawer_side,
            x=carcass.inner("left") + left + (carcass.opening - left - right - width) / 2,
            y=spec.at,
            z=set_back,
            spacer_left=left,
            spacer_right=right,
            code=part_code(width, spec.height, drawer_side, collect_holes(rear), length=length),
            behind=tuple(front.id for front in before),
            recess=recess,
            notch=notch,
            slide_length=record.length,
            rear=rear,
        ),
    )


def _spacer(given: float | None, hung: bool) -> float:
    if given is not None:
        return given
    return SPACER if hung else 0.0
