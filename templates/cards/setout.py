"""Where a card is set: from which edges its holes are set out, and whether paper is folded over one
or a line struck.
"""

from msgspec.structs import replace

from jigs.bench.placing import counted_from
from jigs.given.kinds import kind_of
from jigs.ground.geometry import SLACK, Axis, FaceEdge, Fitting
from templates.faces.faceview import FaceView
from templates.faces.reference import FOLD_REACH, REACH, Reference, Wish, choose_reference

NEAR_FOLD = 100.0
"""How far from an edge a card is folded over it that is set on a line the other way, mm: where one
line is struck, a second beside it costs less than a card so tall."""
CLEAR = 20.0
"""Least distance from an index line to a hole's centre: room for the words along the line."""

Places = tuple[tuple[float, float], ...]
"""Where a fitting's holes stand, or the corner of a drawer box: x, y on the face as seen; mm."""


def _wishes(view: FaceView, fitting: Fitting) -> tuple[Wish, Wish]:
    """From which edges a fitting is set out: across, then up.

    All its holes from the same ones, though they may stand on several cards; those by hand at
    the two ends of a front from one edge up, but each from its own end across.
    """
    whole = places_of_whole(view, fitting)
    return _wish_across(view, fitting, whole), _wish_up(view, fitting, whole)


def _wish_across(view: FaceView, fitting: Fitting, whole: Places) -> Wish:
    front: Wish = "low" if view.front_edge == "left" else "high"
    match kind_of(fitting).across:
        case "hinge-edge":
            return "low" if view.hinge_edge == "left" else "high"
        case "front-edge":
            return front
        case "nearer-edge":
            # The back of a box already together keeps paper from its sides' rear edges.
            return front if view.state.stand else _nearer_side(view, whole)
        case "middle":
            xs = [x for x, _ in whole]
            central = abs((min(xs) + max(xs)) / 2 - view.width / 2) < 1e-6
            return "middle" if central else _nearer_side(view, whole)
        case "as-stated":
            # Leaflets count from a side's front edge; brackets at both ends of a front fold
            # each over its own.
            return front if view.front_edge else _nearer_side(view, fitting.places)


def _wish_up(view: FaceView, fitting: Fitting, whole: Places) -> Wish:
    match kind_of(fitting).up:
        case "bottom" if view.kind == "false-front":
            # The holes behind it are bored where its own come: no part says from which end.
            return _nearer_end(view, fitting.places)
        case "bottom":
            return "low"
        case "free-end" if view.hinge_edge:
            return _nearer_end(view, whole, tie="top")
        case "free-end":
            return "low" if view.kind == "lift" else "high"
        case "nearer-end":
            # Patterns that must meet those of another part are set out from the same end.
            return "low" if view.marks is None else _nearer_end(view, fitting.places)
        case "as-stated":
            return _end_by_hand(view, fitting, whole)


def _nearer_side(view: FaceView, places: Places) -> Wish:
    """The left or right edge, whichever is nearer to some places."""
    first, last = view.datums.get("left", 0.0), view.datums.get("right", 0.0)
    left = min(x for x, _ in places) - first
    right = view.width - last - max(x for x, _ in places)
    return "low" if left <= right + SLACK else "high"


def _nearer_end(view: FaceView, places: Places, *, tie: FaceEdge = "bottom") -> Wish:
    """The end that the heights of some places count from, as at the stations."""
    above = view.height - max(y for _, y in places)
    below = min(y for _, y in places) - view.state.low
    return "high" if counted_from(below, above, tie=tie) == "top" else "low"


def _end_by_hand(view: FaceView, fitting: Fitting, places: Places) -> Wish:
    """The end that holes by hand are set from: the one they were stated from, else the nearer, of a
    board the bottom end.

    In a box already together paper reaches the panel below alone.
    """
    if view.state.stand:
        return "low"
    match fitting.stated_from:
        case "top":
            return "high"
        case "bottom":
            return "low"
        case None:
            return "low" if view.front_edge else _nearer_end(view, places)


def _on_the_floor(view: FaceView) -> bool:
    """Tell whether a face's bottom end is a side's end on the floor, which no paper is folded
    over: it may be scribed, and cut away before the toe (common practice, no source)."""
    return view.on_legs and not view.partition and not view.state.stand


def places_of_whole(view: FaceView, part: Fitting) -> Places:
    """Give the places of all holes that are set out from the same edges as those of `part`, which
    may be only some of its fitting's: by hand, all that serve one front, stated from the same
    end."""
    if part.stands is not None:
        return part.places
    if kind_of(part).stated:
        return tuple(
            place
            for fitting in view.fittings
            if (fitting.kind, fitting.part, fitting.stated_from)
            == (part.kind, part.part, part.stated_from)
            for place in fitting.places
        )
    for fitting in view.fittings:
        if (fitting.kind, fitting.index, fitting.part, fitting.record, fitting.stands) == (
            part.kind,
            part.index,
            part.part,
            part.record,
            None,
        ):
            return fitting.places
    return part.places


def choose_references(
    view: FaceView, fitting: Fitting, *, lowered: float = 0.0, no_edge: Axis | None = None
) -> tuple[Reference, Reference]:
    """Choose where the card of a fitting is set, across and up.

    `lowered` moves an index line that much further from the holes, mm; `no_edge` asks for an
    index line along one axis even where an edge is near.
    """
    wish_x, wish_y = _wishes(view, fitting)
    wish_y = _away_from_bevel(view, wish_y)
    xs = [x for x, _ in fitting.places]
    ys = [y for _, y in fitting.places]
    if wish_x == "middle" and max(abs(x - view.width / 2) for x in xs) > REACH:
        wish_x = _nearer_side(view, places_of_whole(view, fitting))
    first, last = view.datums.get("left", 0.0), view.datums.get("right", 0.0)
    across = _from_datum(
        choose_reference(
            "x",
            min(xs) - first,
            max(xs) - first,
            view.width - first - last,
            wish_x,
            step=view.step,
            clear=CLEAR,
            edge=no_edge != "x",
            reach=_fold_reach([[x for x, _ in f.places] for f in view.fittings], xs),
        ),
        first,
    )
    up = choose_reference(
        "y",
        min(ys) - view.state.low,
        max(ys) - view.state.low,
        view.height - view.state.low,
        _away_from_bevel(view, "low") if lowered else wish_y,
        step=view.step,
        clear=CLEAR + lowered,
        fallback="near" if wish_y == "high" else "low",
        edge=no_edge != "y" and not (_on_the_floor(view) and wish_y == "low"),
        reach=_fold_reach([[y for _, y in f.places] for f in view.fittings], ys, across),
    )
    return across, _from_datum(up, view.state.low)


def _fold_reach(
    fittings: list[list[float]], own: list[float], across: Reference | None = None
) -> float:
    """Give how far away an edge is folded for the line that it spares, mm: not so far that a card
    grows which is set on a line `across` anyway, or for a line that the cards of other fittings
    with holes at the same places have in common."""
    if across is not None and across.kind != "edge":
        return NEAR_FOLD
    alike = (
        all(any(abs(place - each) <= SLACK for place in places) for each in own)
        for places in fittings
    )
    return FOLD_REACH if sum(alike) <= 1 else REACH


def _from_datum(reference: Reference, datum: float) -> Reference:
    """Give a reference in the coordinates of the face, chosen from its datum, `datum` in; mm."""
    return replace(reference, at=reference.at + datum) if datum else reference


def _away_from_bevel(view: FaceView, wish: Wish) -> Wish:
    """A bevelled edge is no reference: the opposite one is."""
    if view.bevel is None:
        return wish
    return "low" if view.bevel == "top" else "high"
