"""Is there wood where a five-piece front is drilled? Cups, pulls, fixing screws, glass."""

from collections.abc import Iterator, Sequence

from jigs.box.fittings import spread
from jigs.box.fronts import PlacedFront
from jigs.fittings.fivepiece import NARROW_STILE, FivePiece, Settled, five_piece_of
from jigs.fittings.fixing import FixingPlan
from jigs.given.hardware import HingeRecord
from jigs.ground.geometry import SLACK, Fitting
from jigs.ground.lengths import Unit, format_length
from jigs.ground.problems import Problem, error, warning


def check_frame(front: PlacedFront, frame: FivePiece | None, unit: Unit) -> Iterator[Problem]:
    """Find stiles and rails that leave no panel, and holes by hand in a thin panel or glass."""
    if frame is None:
        if not front.spec.five_piece.glass:
            return
        yield error(
            "glass-without-frame",
            front.id,
            "all of glass: nothing is drilled into it here, and no stile is stated",
            "give the stile of its frame; holes in glass are the glazier's, by the leaflet "
            "of the fitting",
        )
        return
    if not frame.closes:
        yield error(
            "frame-without-panel",
            front.id,
            f"stiles of {format_length(frame.stile, unit)} and rails of "
            f"{format_length(frame.rail, unit)} leave no panel in "
            f"{format_length(front.width, unit)} x {format_length(front.height, unit)}",
            "give the true stile and rail, or order it as a slab",
        )
        return
    if not frame.thin:
        return
    yield from (
        error(
            "hole-in-glass" if frame.glass else "hole-in-panel",
            front.id,
            f"the hole given by hand at x {format_length(hole.x, unit)}, y "
            f"{format_length(hole.up(front.height), unit)} meets {_panel(frame, unit)}",
            "set it in a stile or a rail",
        )
        for hole in spread(front.spec.holes, width=front.width)
        if frame.meets_panel(hole.x, hole.up(front.height), hole.diameter / 2)
    )


def check_stile(
    front: PlacedFront, record: HingeRecord, tab: float, unit: Unit
) -> Iterator[Problem]:
    """Find a stile too narrow for the cup, or a cup that opens into the groove."""
    frame = five_piece_of(front.spec, front.width, front.height)
    if frame is None:
        return
    if frame.stile <= NARROW_STILE + SLACK:
        yield error(
            "stile-narrow",
            front.id,
            f"a stile of {format_length(frame.stile, unit)} is too narrow for a cup; it takes "
            f"more than {format_length(NARROW_STILE, unit)}",
            "order wider stiles, or hang the door on hinges without a cup",
        )
        return
    margin = frame.hinge_margin(tab=tab, cup=record.cup_diameter)
    if margin >= -SLACK:
        return
    yield warning(
        "cup-at-groove",
        front.id,
        f"the cup opens {format_length(-margin, unit)} into the groove: stile "
        f"{format_length(frame.stile, unit)}, groove {format_length(frame.groove, unit)}, tab "
        f"{format_length(tab, unit)}",
        "bore a smaller tab, or try the cup on scrap: panel and groove must not show",
    )


def check_settled(
    front: PlacedFront, frame: FivePiece | None, settled: Settled, unit: Unit
) -> Iterator[Problem]:
    """Tell which pulls of a five-piece front had to move, or found no wood."""
    if frame is None or settled == "stays":
        return
    if settled == "nowhere":
        what = "hole-in-glass" if frame.glass else "pull-on-panel"
        fact = f"its pull stands on {_panel(frame, unit)}, and no rail is wide enough for it"
        remedy = 'take a knob or a shorter pull, give the rail\'s true width, or say pull = "none"'
        yield error(what, front.id, fact, remedy)
        return
    place = f"{format_length(frame.rail / 2, unit)} from its edge"
    yield warning(
        "pull-on-rail",
        front.id,
        f"its pull would stand on {_panel(frame, unit)}: it is set on the middle of the rail, "
        f"{place}",
        "leave it so, or give the panel's thickness as the caliper has it",
    )


def check_pierced(
    front: PlacedFront, plan: FixingPlan, frame: FivePiece | None, unit: Unit
) -> Iterator[Problem]:
    """Find fixing screws that neither stile nor rail can take; a middle one is left out."""
    if frame is None or not frame.closes:
        return
    if not plan.pierced:
        if not plan.spared:
            return
        yield warning(
            "fixing-left-out",
            front.id,
            f"no stile or rail for the middle fixing screw at {_places(plan.spared, unit)}: "
            "it is left out",
            "trust the other screws, or glue a block in behind the panel",
        )
        return
    places = _places(plan.pierced, unit)
    yield error(
        "fixing-in-panel",
        front.id,
        f"a fixing screw at {places} would go into {_panel(frame, unit)}: neither stile "
        f"({format_length(frame.stile, unit)}) nor rail ({format_length(frame.rail, unit)}) "
        "reaches so far behind the drawer box",
        "take wider stiles or rails, a slab, or a wider or higher drawer box",
    )


def check_wood_in_hand(
    front: PlacedFront, fittings: Sequence[Fitting], unit: Unit
) -> Iterator[Problem]:
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
    meets = f"meet {_panel(frame, unit)}" if pierced else "open into its frame's groove"
    yield error(
        "hole-in-panel-in-hand",
        front.id,
        f"as measured, a hole at {_places([(lost[0].x, lost[0].y)], unit)} would {meets}",
        "measure it again; is it so, give its true stile and rail, or another pull or drawer box",
    )


def _places(places: Sequence[tuple[float, float]], unit: Unit) -> str:
    return ", ".join(f"x {format_length(x, unit)}, y {format_length(y, unit)}" for x, y in places)


def _panel(frame: FivePiece, unit: Unit) -> str:
    if frame.glass:
        return "glass"
    return f"a panel {format_length(frame.panel, unit)} thick"
