"""The pulls of one front: where they stand by rule, or where another front's pulls want them.

A front that says `pull_over` or `pull_level` has its pulls moved, whole, to that place; they must
still stand where a hand and a screw find wood:

- a door's line 38 to 64 from its free edge, its near screw 50 from the corner; in a five-piece
  door the foot stays on the stile;
- any other pull 38 from the front's ends, and its foot on the front.

Common practice, no source, but the foot (derived). What a record says of its own accord, nearer to
an edge, holds here too.
"""

import math
from collections.abc import Sequence
from typing import Literal

from msgspec import Struct

from jigs.box.fronts import PlacedFront
from jigs.fittings.fivepiece import PullsStand, five_piece_of, settle_pulls
from jigs.fittings.pull import LEAST_END, Flag, PulledFront, place_pulls
from jigs.given.hardware import NO_PULL, PullRecord
from jigs.given.job import BoxSpec, Job
from jigs.ground.geometry import SLACK, Fitting, collect_holes, moved

DOOR_LINE = (38.0, 64.0)
"""A door's pull from its free edge; mm (common practice, no source)."""
DOOR_CORNER = 50.0
"""A door's near screw from the corner; mm (common practice, no source)."""


class PullAim(Struct, frozen=True, kw_only=True):
    """Where a front's pulls are wanted, in its own axes, mm: the middle of each along the wall,
    from the left, and the middle of all in height; empty or None where the rule holds."""

    xs: tuple[float, ...] = ()
    y: float | None = None


class AimMiss(Struct, frozen=True, kw_only=True):
    """Why pulls may not stand where they are wanted: on a thin `panel`; `end`, a screw too near to
    the front's top or bottom; `side`, too near to its left or right; `line`, a door's pull too far
    in or out. `distance` is what that leaves to the edge, below 0 off the front; `least` and `most`
    what it may be; mm."""

    fault: Literal["panel", "end", "side", "line"]
    distance: float = 0.0
    least: float = 0.0
    most: float = math.inf


class FrontPulls(Struct, frozen=True, kw_only=True):
    """The pulls of a front and their record."""

    record: PullRecord | None = None
    fittings: tuple[Fitting, ...] = ()
    flags: tuple[Flag, ...] = ()
    """What placing them by rule came up against."""
    settled: PullsStand = "stays"
    """What became of them on a five-piece front."""
    miss: AimMiss | None = None
    """Why they may not stand where they are wanted; None where they may."""

    @property
    def name(self) -> str | None:
        """The name of their record; None where the front has no pull."""
        return self.record.name if self.record and self.fittings else None


def pull_of(job: Job, front: PlacedFront) -> PullRecord | None:
    """Give the pull of a front: its own, else the job's for such a front; None for none.

    A bevelled front is pulled by its edge, one on a push latch is pushed, a false front not at
    all: they have a pull only where they name one; so has an appliance's panel: the appliance's
    sheet says whether, and where. The leaves of a pair on a kit may fold: where their pull goes
    the tool does not know.
    """
    name = front.spec.opened_by.pull
    if front.spec.by_kit and front.spec.kind == "pair":
        return None
    if name is None:
        if front.spec.edges.profile is not None or front.spec.opened_by.push_latch:
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
        floor=box.above_floor + front.place.y,
        stile=front.spec.five_piece.stile,
    )
    plan = place_pulls(record, pulled)
    frame, low = five_piece_of(front.spec, front.width, front.height), front.kind == "lift"
    wanted = plan.fittings if aim is None else _move(plan.fittings, aim)
    fittings, settled = settle_pulls(frame, wanted, low=low)
    miss = None
    if aim is not None and fittings:
        here, there = collect_holes(fittings), collect_holes(wanted)
        stay = [hole.x for hole in here] == [hole.x for hole in there]
        if not stay or (aim.y is not None and here != there):
            miss = AimMiss(fault="panel")
        else:
            miss = _find_miss(front, record, plan.fittings, wanted)
    return FrontPulls(
        record=record, fittings=fittings, flags=plan.flags, settled=settled, miss=miss
    )


def middle_of(pull: Fitting) -> tuple[float, float]:
    """Give the middle of a pull on its front, mm."""
    xs, ys = [hole.x for hole in pull.holes], [hole.y for hole in pull.holes]
    return (min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2


def _move(pulls: Sequence[Fitting], aim: PullAim) -> tuple[Fitting, ...]:
    """Give the pulls where they are wanted."""
    found = []
    for place, pull in enumerate(pulls):
        x, y = middle_of(pull)
        right = aim.xs[place] - x if aim.xs else 0.0
        found.append(moved(pull, right, aim.y - y if aim.y is not None else 0.0))
    return tuple(found)


def _find_miss(
    front: PlacedFront, record: PullRecord, usual: Sequence[Fitting], wanted: Sequence[Fitting]
) -> AimMiss | None:
    """Find pulls that are wanted where they leave their front, or too near to its edges."""
    here, there = _ends(front, wanted), _ends(front, usual)
    corner = DOOR_CORNER if front.kind == "door" else record.foot
    if min(here[1]) < min(corner, min(there[1])) - SLACK:
        return AimMiss(fault="end", distance=min(here[1]), least=corner)
    if front.kind != "door":
        if min(here[0]) >= min(LEAST_END, min(there[0])) - SLACK:
            return None
        return AimMiss(fault="side", distance=min(here[0]), least=LEAST_END)
    free = 1 if front.hinged == "left" else 0
    line, own = here[0][free], there[0][free]
    low, high = DOOR_LINE
    if front.spec.five_piece.stile is not None:
        low, high = record.foot / 2, front.spec.five_piece.stile - record.foot / 2
    low, high = min(low, own), max(high, own)
    if low - SLACK <= line <= high + SLACK:
        return None
    return AimMiss(fault="line", distance=line, least=low, most=high)


def _ends(
    front: PlacedFront, pulls: Sequence[Fitting]
) -> tuple[tuple[float, float], tuple[float, float]]:
    """Give how far the outer screws stand from left and right, from bottom and top; mm."""
    holes = collect_holes(pulls)
    xs, ys = [hole.x for hole in holes], [hole.y for hole in holes]
    return (min(xs), front.width - max(xs)), (min(ys), front.height - max(ys))
