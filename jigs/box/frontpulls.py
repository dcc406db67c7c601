"""The pulls of one front: where they stand by rule, or where another front's pulls want them.

A front that says `pull_over` or `pull_level` has its pulls moved, whole, to that place; they must
still stand where a hand and a screw find wood:

- a door's line 38 to 64 from its free edge, its near screw 50 from the corner; in a five-piece
  door the foot stays on the stile;
- any other pull 38 from the front's ends, and its foot on the front.

Common practice, no source, but the foot (derived). What a record says of its own accord, nearer to
an edge, holds here too.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from jigs.box.fronts import PlacedFront
from jigs.checks.fivepiece import settle_pulls
from jigs.checks.pulls import check_pull_flags
from jigs.fittings.fivepiece import frame_of
from jigs.fittings.pull import LEAST_END, PulledFront, place_pulls
from jigs.given.hardware import NO_PULL, PullRecord
from jigs.given.job import BoxSpec, Job
from jigs.ground.finding import error
from jigs.ground.geometry import SLACK, Fitting, collect_holes
from jigs.ground.lengths import Unit, format_length
from jigs.ground.problems import Problem

DOOR_LINE = (38.0, 64.0)
"""A door's pull from its free edge; mm (common practice, no source)."""
DOOR_CORNER = 50.0
"""A door's near screw from the corner; mm (common practice, no source)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PullAim:
    """Where a front's pulls are wanted, in its own axes, mm: the middle of each along the wall,
    from the left, and the middle of all in height; empty or None where the rule holds."""

    xs: tuple[float, ...] = ()
    y: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class FrontPulls:
    """The pulls of a front, their record, and what is to be said of them."""

    record: PullRecord | None = None
    fittings: tuple[Fitting, ...] = ()
    problems: tuple[Problem, ...] = ()


def pull_of(job: Job, front: PlacedFront) -> PullRecord | None:
    """Give the pull of a front: its own, else the job's for such a front; None for none.

    A bevelled front is pulled by its edge, one on a push latch is pushed, a false front not at
    all: they have a pull only where they name one; so has an appliance's panel: the appliance's
    sheet says whether, and where. The leaves of a pair on a kit may fold: where their pull goes
    the tool does not know.
    """
    name = front.spec.pull
    if front.spec.by_kit and front.spec.kind == "pair":
        return None
    if name is None:
        if front.spec.profile is not None or front.spec.push_latch:
            return None
        if front.kind in ("panel", "false-front"):
            return None
        hung = front.kind in ("door", "lift")
        name = job.use.door_pull if hung else job.use.drawer_pull
    return None if name is None or name.lower() == NO_PULL else job.pulls.get(name)


def set_pulls(job: Job, box: BoxSpec, front: PlacedFront, aim: PullAim | None = None) -> FrontPulls:
    """Give the pulls of a front; `aim`: where they are wanted."""
    record = pull_of(job, front)
    if record is None:
        return FrontPulls()
    pulled = PulledFront(
        id=front.id,
        kind=front.kind,
        box_kind=box.kind,
        hinged=front.hinged,
        width=front.width,
        height=front.height,
        floor=box.above_floor + front.y,
        stile=front.spec.stile,
    )
    plan = place_pulls(record, pulled)
    flags = check_pull_flags(front, plan.flags, job.shown)
    frame = frame_of(front.spec, front.width, front.height)
    if aim is None or not plan.fittings:
        settled, found = settle_pulls(front, frame, plan.fittings, job.shown)
        return FrontPulls(record=record, fittings=settled, problems=(*flags, *found))
    wanted = _move(plan.fittings, aim)
    settled, found = settle_pulls(front, frame, wanted, job.shown)
    stay = [hole.x for hole in collect_holes(settled)] == [hole.x for hole in collect_holes(wanted)]
    if aim.y is not None:
        stay = stay and collect_holes(settled) == collect_holes(wanted)
    problems: tuple[Problem, ...] = (*flags, *found)
    if settled and not stay:
        problems = (*flags, _refuse(front, "there it would stand on its thin panel"))
    elif settled:
        problems += _check_limits(front, record, plan.fittings, wanted, job.shown)
    return FrontPulls(record=record, fittings=settled, problems=problems)


def middle_of(pull: Fitting) -> tuple[float, float]:
    """Give the middle of a pull on its front, mm."""
    xs, ys = [hole.x for hole in pull.holes], [hole.y for hole in pull.holes]
    return (min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2


def _move(pulls: Sequence[Fitting], aim: PullAim) -> tuple[Fitting, ...]:
    """Give the pulls where they are wanted."""
    moved = []
    for place, pull in enumerate(pulls):
        x, y = middle_of(pull)
        right = aim.xs[place] - x if aim.xs else 0.0
        up = aim.y - y if aim.y is not None else 0.0
        holes = tuple(replace(hole, x=hole.x + right, y=hole.y + up) for hole in pull.holes)
        outline = tuple(tuple((x + right, y + up) for x, y in each) for each in pull.outline)
        moved.append(replace(pull, holes=holes, outline=outline))
    return tuple(moved)


def _check_limits(
    front: PlacedFront,
    record: PullRecord,
    usual: Sequence[Fitting],
    wanted: Sequence[Fitting],
    unit: Unit,
) -> tuple[Problem, ...]:
    """Find pulls that are wanted where they leave their front, or too near to its edges."""
    here, there = _ends(front, wanted), _ends(front, usual)
    corner = DOOR_CORNER if front.kind == "door" else record.foot
    if min(here[1]) < min(corner, min(there[1])) - SLACK:
        return (_refuse(front, _near(min(here[1]), "top or bottom", corner, unit)),)
    if front.kind != "door":
        if min(here[0]) >= min(LEAST_END, min(there[0])) - SLACK:
            return ()
        return (_refuse(front, _near(min(here[0]), "left or right", LEAST_END, unit)),)
    free = 1 if front.hinged == "left" else 0
    line, own = here[0][free], there[0][free]
    low, high = DOOR_LINE
    if front.spec.stile is not None:
        low, high = record.foot / 2, front.spec.stile - record.foot / 2
    low, high = min(low, own), max(high, own)
    if low - SLACK <= line <= high + SLACK:
        return ()
    return (
        _refuse(
            front,
            f"there it would stand {format_length(line, unit)} from its free edge; "
            f"{format_length(low, unit)} to {format_length(high, unit)} is allowed"
            if line >= 0
            else "there it would stand off its front",
        ),
    )


def _ends(
    front: PlacedFront, pulls: Sequence[Fitting]
) -> tuple[tuple[float, float], tuple[float, float]]:
    """Give how far the outer screws stand from left and right, from bottom and top; mm."""
    holes = collect_holes(pulls)
    xs, ys = [hole.x for hole in holes], [hole.y for hole in holes]
    return (min(xs), front.width - max(xs)), (min(ys), front.height - max(ys))


def _near(distance: float, edge: str, least: float, unit: Unit) -> str:
    if distance < 0:
        return "there it would stand off its front"
    return (
        f"there a screw would stand {format_length(distance, unit)} from its {edge} edge; at least "
        f"{format_length(least, unit)} is allowed"
    )


def _refuse(front: PlacedFront, why: str) -> Problem:
    keys = [
        f'{key} = "{other}"'
        for key, other in (
            ("pull_over", front.spec.pull_over), ("pull_level", front.spec.pull_level),
        )
        if other is not None
    ]  # fmt: skip
    return error(
        "pull-aim",
        front.id,
        f"its pull does not fit where {' and '.join(keys)} puts it: {why}",
        f"take {' and '.join(keys)} away, or give the fronts sizes that let the pulls line up",
    )
