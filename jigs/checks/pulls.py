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
from jigs.ground.lengths import Unit, format_length
from jigs.ground.problems import Problem, error, warning


def check_fittings(plan: FrontPlan, unit: Unit) -> Iterator[Problem]:
    """List what does not suit a front, as it was ordered, of what is meant for it."""
    front, fitted = plan.front, plan.ordered
    pulls, fixings = fitted.pulls.fittings, fitted.fixings
    yield from check_pulls(front, fitted.pulls, fitted.frame, unit)
    yield from check_frame(front, fitted.frame, unit)
    if fixings is not None:
        yield from check_pierced(front, fixings, fitted.frame, unit)
        yield from check_fixings(front, fixings, pulls, unit)
        yield from check_blocks(front, plan.carcass, fixings, unit)
    if plan.drawer is not None and fitted.drawer is not None:
        # A box too low to build is told as such: its screws are no further fault.
        if not plan.drawer.place.too_low:
            yield from check_fixing_room(front, fitted.drawer, unit)
        yield from check_pull_at_box(front, pulls, fitted.drawer, unit)
    yield from check_screws(front, fitted, unit)


OFF_BOX_EDGE = 8.0
"""A pull screw keeps this from the height of the drawer box's top edge; mm (common practice)."""


def check_pulls(
    front: PlacedFront, pulls: FrontPulls, frame: FivePiece | None, unit: Unit
) -> Iterator[Problem]:
    """List what placing the pulls came up against."""
    flags = tuple(_word_flag(front, flag, unit) for flag in pulls.flags)
    if pulls.miss is not None and pulls.miss.fault == "panel":
        yield from flags
        yield _word_miss(front, pulls.miss, unit)
        return
    settled = check_settled(front, frame, pulls.settled, unit)
    missed = () if pulls.miss is None else (_word_miss(front, pulls.miss, unit),)
    yield from flags
    yield from settled
    yield from missed


def _word_flag(front: PlacedFront, flag: Flag, unit: Unit) -> Problem:
    width = format_length(front.width, unit)
    if flag == "one-pull-for-two":
        return warning(
            "one-pull-for-two",
            front.id,
            f"two pulls do not fit on a width of {width}: one is set in the middle",
            "take a shorter pull, or leave it so",
        )
    return warning(
        "pull-upright",
        front.id,
        f"the pull does not lie across a width of {width}: it stands upright",
        "take a shorter pull or a knob, or leave it so",
    )


def _word_miss(front: PlacedFront, miss: AimMiss, unit: Unit) -> Problem:
    """Say why pulls may not stand where a front asks for them."""
    keys = " and ".join(
        f'{key} = "{other}"'
        for key, other in (
            ("pull_over", front.spec.opened_by.pull_over),
            ("pull_level", front.spec.opened_by.pull_level),
        )
        if other is not None
    )  # fmt: skip
    left, least = format_length(miss.distance, unit), format_length(miss.least, unit)
    if miss.fault == "panel":
        why = "there it would stand on its thin panel"
    elif miss.distance < 0:
        why = "there it would stand off its front"
    elif miss.fault == "line":
        why = (
            f"there it would stand {left} from its free edge; {least} to "
            f"{format_length(miss.most, unit)} is allowed"
        )
    else:
        edge = "top or bottom" if miss.fault == "end" else "left or right"
        why = f"there a screw would stand {left} from its {edge} edge; at least {least} is allowed"
    return error(
        "pull-aim",
        front.id,
        f"its pull does not fit where {keys} puts it: {why}",
        f"take {keys} away, or give the fronts sizes that let the pulls line up",
    )


def check_pull_at_box(
    front: PlacedFront, pulls: Sequence[Fitting], drawer: DrawerBox, unit: Unit
) -> Iterator[Problem]:
    """Find a pull screw that meets the top edge of the drawer box behind it."""
    top = drawer.y + drawer.height
    misses = [abs(hole.y - top) for hole in collect_holes(pulls)]
    if not misses or min(misses) >= OFF_BOX_EDGE - SLACK:
        return
    yield warning(
        "pull-at-box-edge",
        front.id,
        f"a pull screw is {format_length(min(misses), unit)} from the height of the drawer "
        f"box's top edge; it keeps {format_length(OFF_BOX_EDGE, unit)}",
        "give a lower drawer_height, or set the pull elsewhere",
        (drawer.id,),
    )


def check_fixing_room(front: PlacedFront, drawer: DrawerBox, unit: Unit) -> Iterator[Problem]:
    """Find a drawer box so low that no screw stays clear of its bottom panel and its top edge."""
    if compute_rows(drawer.height, front.width, front.height, floor=drawer.floor):
        return
    yield error(
        "fixing-no-room",
        front.id,
        f"its drawer box, {format_length(drawer.height, unit)} high, leaves no room for a "
        "fixing screw above its bottom panel, which ends "
        f"{format_length(drawer.floor, unit)} above its underside",
        "take a thinner drawer_bottom, or a higher drawer box",
        (drawer.id,),
    )


def check_fixings(
    front: PlacedFront, plan: FixingPlan, pulls: Sequence[Fitting], unit: Unit
) -> Iterator[Problem]:
    """Word which fixing screws a pull pushed out, and find those still too near to it."""
    if plan.left_out:
        places = ", ".join(
            f"x {format_length(x, unit)}, y {format_length(y, unit)}" for x, y in plan.left_out
        )
        yield warning(
            "fixing-left-out",
            front.id,
            f"no place for the fixing screw at {places}: the pull is in the way",
            "set the pull elsewhere, or trust the other screws",
        )
    near = [
        math.hypot(fixing.x - pull.x, fixing.y - pull.y)
        for fixing in collect_holes(plan.front)
        for pull in collect_holes(pulls)
    ]
    if near and min(near) < CLEAR_OF_PULL - SLACK:
        yield warning(
            "pull-at-fixing",
            front.id,
            f"a fixing screw is {format_length(min(near), unit)} from a pull screw",
            "set the pull elsewhere",
        )


def check_blocks(
    front: PlacedFront, carcass: Carcass, plan: FixingPlan, unit: Unit
) -> Iterator[Problem]:
    """Find screws of a false front that no rail on edge takes."""
    if front.kind != "false-front":
        return
    rows = dict.fromkeys(front.place.y + hole.y for hole in collect_holes(plan.front))
    low = math.inf if carcass.rail is None else carcass.rail[0] + OFF_RAIL_EDGE
    missed = sorted(row for row in rows if row < low - SLACK)
    if not missed:
        return
    heights = " and ".join(format_length(row, unit) for row in missed)
    which = "lower row" if len(missed) < len(rows) else "row" if len(missed) == 1 else "rows"
    fact, cure = "no rail on edge stands behind it", ""
    if front.place.row == 1:
        cure = f', or give the box a rail on edge: rail = "{SINK_RAIL:g} mm"'
    if carcass.rail is not None:
        end = format_length(carcass.rail[0], unit)
        fact, cure = f"the rail behind it ends {end} above the box's bottom", ""
    thick = format_length(carcass.side, unit)
    yield warning(
        "blocks-needed",
        front.id,
        f"{fact}: its screws at {heights} want blocks behind them",
        f"put blocks {thick} thick behind the {which} at {heights} above the box's bottom{cure}",
    )


def check_screws(front: PlacedFront, fitted: FrontFittings, unit: Unit) -> Iterator[Problem]:
    """Find screws for which no usual length suits."""
    if fitted.clamped is not None and fitted.screws.pull is None:
        yield warning(
            "pull-screw",
            front.id,
            f"no usual screw is 6 to 9 mm longer than the "
            f"{format_length(fitted.clamped, unit)} that the pull clamps",
            "cut a longer one",
        )
    if fitted.passed is not None and fitted.screws.fixing is None:
        yield warning(
            "fixing-screw",
            front.id,
            f"no usual screw goes through {format_length(fitted.passed, unit)}, holds 6 mm and "
            "stays 3 mm below the face",
            "cut a longer one, or counterbore the drawer box",
        )
