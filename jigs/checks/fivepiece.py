"""Is there wood where a five-piece front is drilled? Cups, pulls, fixing screws, glass."""

from collections.abc import Iterator, Sequence

from jigs.box.fittings import with_mirrored
from jigs.box.fronts import PlacedFront
from jigs.fittings.fivepiece import NARROW_STILE, FivePiece, Settled, five_piece_of
from jigs.fittings.fixing import FixingPlan
from jigs.given.hardware import HingeRecord
from jigs.ground.geometry import SLACK, Fitting
from jigs.ground.problems import Problem, error, warning


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
    front: PlacedFront, frame: FivePiece | None, settled: Settled
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
