"""Does all that is drilled into one front suit it? Frame, pulls, fixing screws, screw lengths."""

from jigs.box.carcass import Carcass
from jigs.box.drawerplan import DrawerPlan
from jigs.box.fittings import FrontFittings
from jigs.box.fronts import PlacedFront
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


def check_fittings(
    front: PlacedFront,
    carcass: Carcass,
    drawer: DrawerPlan | None,
    fitted: FrontFittings,
    unit: Unit,
) -> list[Problem]:
    """List what does not suit a front, as it was ordered, of what is meant for it."""
    pulls = fitted.pulls.fittings
    problems = [
        *check_pulls(front, fitted.pulls, fitted.frame, unit),
        *check_frame(front, fitted.frame, unit),
    ]
    if fitted.fixings is not None:
        problems += check_pierced(front, fitted.fixings, fitted.frame, unit)
        problems += check_fixings(front, fitted.fixings, pulls, unit)
        problems += check_blocks(front, carcass, fitted.fixings, unit)
    if drawer is not None and fitted.drawer is not None:
        # A box too low to build is told as such: its screws are no further fault.
        if not drawer.place.too_low:
            problems += check_fixing_room(front, fitted.drawer, unit)
        problems += check_pull_at_box(front, pulls, fitted.drawer, unit)
    problems += check_screws(front, fitted, unit)
    return problems
