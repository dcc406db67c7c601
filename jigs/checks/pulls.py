"""Does all that is drilled into one front suit it? Its frame, its pulls, its fixing screws: do they
fit, miss each other, and have a screw of the right length?
"""

import math
from collections.abc import Iterator, Sequence

from jigs.box.carcass import SINK_RAIL, Carcass
from jigs.box.drawerbox import DrawerBox
from jigs.box.fittings import FrontFittings
from jigs.box.frontpulls import AimMiss, FrontPulls
from jigs.box.fronts import PlacedFront
from jigs.box.plan import FrontPlan
from jigs.checks.fivepiece import check_frame, check_pierced, check_settled
from jigs.fittings.fivepiece import FivePiece
from jigs.fittings.fixing import CLEAR_OF_PULL, OFF_RAIL_EDGE, FixingPlan, compute_rows
from jigs.fittings.pull import Flag
from jigs.ground.geometry import SLACK, Fitting, collect_holes
from jigs.ground.problems import Problem, error, warning


def check_fittings(plan: FrontPlan) -> Iterator[Problem]:
    """List what does not suit a front, as it was ordered, of what is meant for it."""
    front, fitted = plan.front, plan.ordered
    pulls, fixings = fitted.pulls.fittings, fitted.fixings
    yield from check_pulls(front, fitted.pulls, fitted.frame)
    yield from check_frame(front, fitted.frame)
    if fixings is not None:
        yield from check_pierced(front, fixings, fitted.frame)
        yield from check_fixings(front, fixings, pulls)
        yield from check_blocks(front, plan.carcass, fixings)
    if plan.drawer is not None and fitted.drawer is not None:
        # A box too low to build is told as such: its screws are no further fault.
        if not plan.drawer.place.too_low:
            yield from check_fixing_room(front, fitted.drawer)
        yield from check_pull_at_box(front, pulls, fitted.drawer)
    yield from check_screws(front, fitted)


OFF_BOX_EDGE = 8.0
"""A pull screw keeps this from the height of the drawer box's top edge; mm (common practice)."""


def check_pulls(
    front: PlacedFront, pulls: FrontPulls, frame: FivePiece | None
) -> Iterator[Problem]:
    """List what placing the pulls came up against."""
    flags = tuple(_word_flag(front, flag) for flag in pulls.flags)
    if pulls.miss is not None and pulls.miss.fault == "panel":
        yield from flags
        yield _word_miss(front, pulls.miss)
        return
    settled = check_settled(front, frame, pulls.settled)
    missed = () if pulls.miss is None else (_word_miss(front, pulls.miss),)
    yield from flags
    yield from settled
    yield from missed


def _word_flag(front: PlacedFront, flag: Flag) -> Problem:
    if flag == "one-pull-for-two":
        return warning("one-pull-for-two", front.id, width=front.width)
    return warning("pull-upright", front.id, width=front.width)


def _word_miss(front: PlacedFront, miss: AimMiss) -> Problem:
    """Say why pulls may not stand where a front asks for them."""
    over, level = front.spec.opened_by.pull_over, front.spec.opened_by.pull_level
    if miss.fault == "panel":
        case = "panel"
    elif miss.distance < 0:
        case = "off"
    elif miss.fault == "line":
        case = "line"
    else:
        case = "end" if miss.fault == "end" else "side"
    return error(
        "pull-aim",
        front.id,
        case=case,
        over=over,
        level=level,
        both=over is not None and level is not None,
        left=miss.distance,
        least=miss.least,
        most=miss.most,
    )


def check_pull_at_box(
    front: PlacedFront, pulls: Sequence[Fitting], drawer: DrawerBox
) -> Iterator[Problem]:
    """Find a pull screw that meets the top edge of the drawer box behind it."""
    top = drawer.y + drawer.height
    misses = [abs(hole.y - top) for hole in collect_holes(pulls)]
    if not misses or min(misses) >= OFF_BOX_EDGE - SLACK:
        return
    yield warning(
        "pull-at-box-edge", front.id, near=min(misses), keeps=OFF_BOX_EDGE, also=(drawer.id,)
    )


def check_fixing_room(front: PlacedFront, drawer: DrawerBox) -> Iterator[Problem]:
    """Find a drawer box so low that no screw stays clear of its bottom panel and its top edge."""
    if compute_rows(drawer.height, front.width, front.height, floor=drawer.floor):
        return
    yield error(
        "fixing-no-room", front.id, high=drawer.height, floor=drawer.floor, also=(drawer.id,)
    )


def check_fixings(
    front: PlacedFront, plan: FixingPlan, pulls: Sequence[Fitting]
) -> Iterator[Problem]:
    """Word which fixing screws a pull pushed out, and find those still too near to it."""
    if plan.left_out:
        yield warning("fixing-left-out", front.id, case="pull", places=plan.left_out)
    near = [
        math.hypot(fixing.x - pull.x, fixing.y - pull.y)
        for fixing in collect_holes(plan.front)
        for pull in collect_holes(pulls)
    ]
    if near and min(near) < CLEAR_OF_PULL - SLACK:
        yield warning("pull-at-fixing", front.id, near=min(near))


def check_blocks(front: PlacedFront, carcass: Carcass, plan: FixingPlan) -> Iterator[Problem]:
    """Find screws of a false front that no rail on edge takes."""
    if front.kind != "false-front":
        return
    rows = dict.fromkeys(front.place.y + hole.y for hole in collect_holes(plan.front))
    low = math.inf if carcass.rail is None else carcass.rail[0] + OFF_RAIL_EDGE
    missed = sorted(row for row in rows if row < low - SLACK)
    if not missed:
        return
    yield warning(
        "blocks-needed",
        front.id,
        rail=carcass.rail is not None,
        ends=carcass.rail and carcass.rail[0],
        heights=tuple(missed),
        some=len(missed) < len(rows),
        one=len(missed) == 1,
        thick=carcass.side,
        add_rail=carcass.rail is None and front.place.row == 1,
        high=SINK_RAIL,
    )


def check_screws(front: PlacedFront, fitted: FrontFittings) -> Iterator[Problem]:
    """Find screws for which no usual length suits."""
    if fitted.clamped is not None and fitted.screws.pull is None:
        yield warning("pull-screw", front.id, clamped=fitted.clamped)
    if fitted.passed is not None and fitted.screws.fixing is None:
        yield warning("fixing-screw", front.id, through=fitted.passed)
