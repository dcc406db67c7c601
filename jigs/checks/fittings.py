"""Does all that is drilled into one front suit it? Frame, pulls, fixing screws, screw lengths."""

from jigs.box.plan import FrontPlan
from jigs.checks.fivepiece import check_frame, check_pierced
from jigs.checks.pulls import (
    check_blocks,
    check_fixing_room,
    check_fixings,
    check_pull_at_box,
    check_pulls,
    check_screws,
)
from jigs.ground.lengths import Unit
from jigs.ground.problems import Problem


def check_fittings(plan: FrontPlan, unit: Unit) -> list[Problem]:
    """List what does not suit a front, as it was ordered, of what is meant for it."""
    front, fitted = plan.front, plan.ordered
    pulls, fixings = fitted.pulls.fittings, fitted.fixings
    problems = [
        *check_pulls(front, fitted.pulls, fitted.frame, unit),
        *check_frame(front, fitted.frame, unit),
    ]
    if fixings is not None:
        problems += check_pierced(front, fixings, fitted.frame, unit)
        problems += check_fixings(front, fixings, pulls, unit)
        problems += check_blocks(front, plan.carcass, fixings, unit)
    if plan.drawer is not None and fitted.drawer is not None:
        # A box too low to build is told as such: its screws are no further fault.
        if not plan.drawer.place.too_low:
            problems += check_fixing_room(front, fitted.drawer, unit)
        problems += check_pull_at_box(front, pulls, fitted.drawer, unit)
    problems += check_screws(front, fitted, unit)
    return problems
