"""Does all that is drilled into one front suit it? Its frame, its cups, its pulls, its fixing
screws: is there wood, do they fit, miss each other, and have a screw of the right length?
"""

import math
from collections.abc import Iterator, Sequence

from jigs.box.carcass import SINK_RAIL, Carcass
from jigs.box.drawerbox import DrawerBox
from jigs.box.fittings import FrontFittings, with_mirrored
from jigs.box.frontpulls import AimMiss, FrontPulls
from jigs.box.fronts import PlacedFront
from jigs.box.plan import FrontPlan
from jigs.fittings.fivepiece import NARROW_STILE, FivePiece, PullsStand, five_piece_of
from jigs.fittings.fixing import (
    CLEAR_OF_PULL,
    LEAST_BITE,
    OFF_RAIL_EDGE,
    SKIN,
    FixingPlan,
    compute_rows,
)
from jigs.fittings.pull import SCREW_BITE, Flag
from jigs.given.hardware import HingeRecord
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
        least, _, most = SCREW_BITE
        yield warning("pull-screw", front.id, clamped=fitted.clamped, least=least, most=most)
    if fitted.passed is not None and fitted.screws.fixing is None:
        yield warning("fixing-screw", front.id, through=fitted.passed, bite=LEAST_BITE, skin=SKIN)


def check_frame(front: PlacedFront, frame: FivePiece | None) -> Iterator[Problem]:
    """Find stiles and rails that leave no panel, and holes by hand in a thin panel or glass."""
    if frame is None:
        if not front.spec.five_piece.glass:
            return
        yield error("glass-without-frame", front.id)
        return
    if not frame.closes:
        yield error(
            "frame-without-panel",
            front.id,
            stile=frame.stile,
            rail=frame.rail,
            width=front.width,
            height=front.height,
        )
        return
    if not frame.thin:
        return
    yield from (
        error(
            "hole-in-glass" if frame.glass else "hole-in-panel",
            front.id,
            case="by-hand",
            x=hole.x,
            y=hole.up(front.height),
            panel=frame.panel,
        )
        for hole in with_mirrored(front.spec.holes, width=front.width)
        if frame.meets_panel(hole.x, hole.up(front.height), hole.diameter / 2)
    )


def check_stile(front: PlacedFront, record: HingeRecord, tab: float) -> Iterator[Problem]:
    """Find a stile too narrow for the cup, or a cup that opens into the groove."""
    frame = five_piece_of(front.spec, front.width, front.height)
    if frame is None:
        return
    if frame.stile <= NARROW_STILE + SLACK:
        yield error("stile-narrow", front.id, stile=frame.stile, least=NARROW_STILE)
        return
    margin = frame.hinge_margin(tab=tab, cup=record.cup_diameter)
    if margin >= -SLACK:
        return
    yield warning(
        "cup-at-groove", front.id, opens=-margin, stile=frame.stile, groove=frame.groove, tab=tab
    )


def check_settled(
    front: PlacedFront, frame: FivePiece | None, settled: PullsStand
) -> Iterator[Problem]:
    """Tell which pulls of a five-piece front had to move, or found no wood."""
    if frame is None or settled == "stays":
        return
    if settled == "nowhere":
        yield error(
            "hole-in-glass" if frame.glass else "pull-on-panel",
            front.id,
            case="pull",
            panel=frame.panel,
        )
        return
    yield warning(
        "pull-on-rail", front.id, glass=frame.glass, panel=frame.panel, place=frame.rail / 2
    )


def check_pierced(
    front: PlacedFront, plan: FixingPlan, frame: FivePiece | None
) -> Iterator[Problem]:
    """Find fixing screws that neither stile nor rail can take; a middle one is left out."""
    if frame is None or not frame.closes:
        return
    if not plan.pierced:
        if not plan.spared:
            return
        yield warning("fixing-left-out", front.id, case="frame", places=plan.spared)
        return
    yield error(
        "fixing-in-panel",
        front.id,
        places=plan.pierced,
        glass=frame.glass,
        panel=frame.panel,
        stile=frame.stile,
        rail=frame.rail,
    )


def check_wood_in_hand(front: PlacedFront, fittings: Sequence[Fitting]) -> Iterator[Problem]:
    """Find pulls and screws of a measured front that no longer stand in its stiles and rails.

    They keep their distance from its bottom edge or follow its middle, so that a front that came
    in another size may bring a hole over its panel, or a screw to its groove: the 2 of wood that
    were left between them are for what a front is off.
    """
    frame = five_piece_of(front.spec, front.width, front.height)
    if frame is None or not frame.closes or not frame.thin:
        return
    pierced = [
        hole
        for fitting in fittings
        if fitting.kind in ("front-fixing", "pull")
        for hole in fitting.holes
        if frame.meets_panel(hole.x, hole.y, hole.diameter / 2)
    ]
    at_groove = [
        hole
        for fitting in fittings
        if fitting.kind == "front-fixing"
        for hole in fitting.holes
        if not frame.is_solid(hole.x, hole.y, hole.diameter / 2)
    ]
    lost = (*pierced, *at_groove)
    if not lost:
        return
    yield error(
        "hole-in-panel-in-hand",
        front.id,
        places=((lost[0].x, lost[0].y),),
        groove=not pierced,
        glass=bool(pierced) and frame.glass,
        panel=bool(pierced) and not frame.glass,
        thick=frame.panel,
    )
