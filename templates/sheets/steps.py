"""The steps of the work on one face, short and in order, each caution where it happens."""

from collections.abc import Set

from jigs.given.cautions import CAUTION_FOR, PARTITION_HOLES
from jigs.ground.geometry import SLACK, Purpose
from jigs.ground.lengths import format_mm
from templates.cards.card import choose_references
from templates.cards.flap import TRUE_FOLD
from templates.faces.faceview import FaceView
from templates.faces.reference import CardEdge
from templates.sheets.sums import steps_between
from templates.words.wording import drawer_ends

_BARS = "Measure both bars. ID and code as on the label?"
_AWL = "Awl, lightly, then firmly. Lift the paper; check with the rule."
CHECK_LEAFLET = "Check each place against the leaflet."
_BLOCK = "Clamp a straight block against the folded flap; four strips of low-tack tape."
_ALIKE = "Measure all: alike to 0.5?"
"""One card is cut at one height; cups meet their plates within 0.5 (common practice, no source)."""


def _tick(view: FaceView) -> str:
    return f"{'Tick it off; w' if view.name else 'W'}rite DRILLED on its label."


def _measure(view: FaceView, what: str) -> str:
    return _ALIKE if view.name else f"Measure {what}, fill in."


def _top(view: FaceView, what: str) -> str:
    return f"Write TOP on tape on {'each' if view.name else 'the back'}. {_measure(view, what)}"


def _cut(view: FaceView, flaps: bool) -> str:
    if view.rounded and flaps:
        ladder = "; cut the ladder too" if view.ladder else ""
        if view.ladder and view.name:
            ladder = "; cut the ladder too, at their height"
        return f"Cut the cards where white meets black: no black left, no folds{ladder}."
    top = "the top one at their height" if view.name else "the top one at your height"
    cards = "cards and crossed corners" if flaps else "the cards"
    return f"Cut {cards}{f'; {top}' if view.ladder else ''}."


def _set(view: FaceView, flaps: bool) -> str:
    """Say how the paper is set: on edges the one way to fold and to block, else on lines."""
    if not flaps:
        return "Mark the lines and middles that the cards name; lay each on them; low-tack tape."
    if view.rounded:
        return (
            "Clamp a straight block to each reference edge, 3 mm proud; butt the cut paper to it; "
            "four strips of low-tack tape."
        )
    if any(choose_references(view, each)[0].kind == "middle" for each in view.fittings):
        return (
            f"Mark the middle, and the line a card without a flap names. A flap folds down over "
            f"its edge: {TRUE_FOLD}. {_BLOCK}"
        )
    return f"Fold each flap down over its edge: {TRUE_FOLD}. {_BLOCK}"


def steps_for(view: FaceView, *, flaps: bool = True) -> tuple[str, ...]:
    """Give the steps for the holes in a face; `flaps`: whether a card of it has one, or an edge
    to cut and butt."""
    kinds = {fitting.kind for fitting in view.fittings}
    match view.face:
        case "inside":
            return _side_steps(view, flaps)
        case "box-front":
            return (
                _BARS,
                "The front's pilots come first. The box stands on its bottom.",
                _cut(view, flaps),
                _set(view, flaps),
                _AWL,
                f"Bore from outside. {CAUTION_FOR['clearance']}",
                "Stand the box on the front: each hole over its pilot? Then screw it on.",
                *([_tick(view)] if view.name else []),
            )
        case "box-back":
            return (
                _BARS,
                "Turn the box round: it stands on its bottom, its back towards you.",
                f"{_cut(view, flaps)} Where the notch is cut already, the fold hangs free.",
                _set(view, flaps),
                "Hold the slide's rear end to the drawing: its hook must meet the hole.",
                _AWL,
                f"Bore. {CAUTION_FOR['hook']}",
                _tick(view),
            )
        case "front":
            return (
                _BARS,
                f"{_measure(view, 'it')} {_cut(view, flaps)}",
                _set(view, flaps),
                "Lay the pull on the drawing: its holes must match."
                if "pull" in kinds
                else CHECK_LEAFLET,
                _AWL,
                f"Bore. {CAUTION_FOR['pull' if 'pull' in kinds else 'manual']}",
                _tick(view),
            )
        case "back":
            return (
                _hinge_steps(view, flaps) if "hinge" in kinds else _back_steps(view, kinds, flaps)
            )


def steps_again(view: FaceView, *, flaps: bool = True) -> str:
    """Give the steps in one line, for the further sheets of a face, with the caution; `flaps`:
    whether a card on the sheet has one, or an edge to cut and butt."""
    purpose = view.fittings[0].holes[0].purpose
    setting = f"fold each flap down, {TRUE_FOLD}; block against the flap"
    if view.rounded:
        setting = "butt to a block"
    on_edges = [
        any(reference.kind == "edge" for reference in choose_references(view, each))
        for each in view.fittings
    ]
    if not flaps:
        setting = "lay each card on the lines it names"
    elif not all(on_edges):
        setting = f"{setting}, a card without one on the lines it names"
    return (
        "STEPS: measure both bars; ID and code as on the label; measure the part; cut; "
        f"{setting}; tape; lay the hardware; awl; check; bore. {_caution(view, purpose)}"
    )


def _caution(view: FaceView, purpose: Purpose) -> str:
    """Give the caution of an operation on a face: a partition has no outside."""
    if view.partition and purpose in ("plate", "slide", "shelf"):
        return PARTITION_HOLES
    return CAUTION_FOR[purpose]


def _hinge_steps(view: FaceView, flaps: bool) -> tuple[str, ...]:
    holes = [hole for fitting in view.fittings for hole in fitting.holes]
    cups = sorted(hole.y for hole in holes if hole.purpose == "cup")
    inset = next(min(h.x, view.width - h.x) for h in holes if h.purpose == "cup")
    apart = f"{steps_between(cups)} and " if len(cups) > 1 else ""
    return (
        _BARS,
        _top(view, "the door"),
        _cut(view, flaps),
        "Hold it at its box, arrow up: cups must face the plates.",
        "Lay it on a blanket, back up, TOP away from you.",
        _set(view, flaps),
        "Lay the hinge on the drawing. Awl, lightly, then firmly.",
        f"Lift the paper: check {apart}{format_mm(inset)} with the rule.",
        f"Depth stop from the rim. Bore. {CAUTION_FOR['cup']}",
        _tick(view),
    )


def _back_steps(view: FaceView, kinds: Set[str], flaps: bool) -> tuple[str, ...]:
    if "front-fixing" not in kinds:
        return (
            _BARS,
            _top(view, "the part"),
            _cut(view, flaps),
            _set(view, flaps),
            CHECK_LEAFLET,
            _AWL,
            f"Bore. {CAUTION_FOR['manual']}",
            _tick(view),
        )
    return (
        _BARS,
        _top(view, "the front"),
        _cut(view, flaps),
        _set(view, flaps),
        _stand_box(view)
        if view.drawer_outline
        else "Hold it at its box: the holes must lie over the rail or the blocks.",
        _AWL,
        f"Bore the pilots. {CAUTION_FOR['front-fixing']}",
        _tick(view),
    )


def _stand_box(view: FaceView) -> str:
    left, right = drawer_ends(view)
    how = "as far in at both ends"
    if left != right:
        how = f"{left} mm from the LEFT end, {right} from the RIGHT"
    return f"Stand the real drawer box on its drawing: {how}?"


def _bore(view: FaceView) -> str:
    """Say how a side or a partition is bored: right through only where a hole is."""
    if any(hole.depth is None for fitting in view.fittings for hole in fitting.holes):
        return f"Bore; what is marked THROUGH once, from one face. {CAUTION_FOR['manual']}"
    return f"Bore. {_caution(view, 'plate')}"


def _together(view: FaceView) -> str:
    """Say how a board is laid with the one across its column, so that a line is struck on both.

    A partition stands on the bottom panel: an offcut of its board lifts it as high off the stop.
    """
    level = abs(view.raised) <= SLACK
    pair = "LEFT and RIGHT" if level and not view.partition else f"it and the {view.mate}"
    lay = f"Lay {pair} together, front edges touching"
    if level:
        return f"{lay}, bottoms on one stop"
    lift = format_mm(abs(view.raised))
    spacer = f"a block {lift} long" if view.on_legs else f"an offcut of the bottom's board ({lift})"
    low, high = "this bottom", "the partition's"
    if view.raised < 0.0:
        low, high = "the side's bottom", "this one"
    return f"{lay}: {low} on the stop, {spacer} between stop and {high}"


def _side_steps(view: FaceView, flaps: bool) -> tuple[str, ...]:
    edge: CardEdge = view.front_edge or "left"
    kinds = {fitting.kind for fitting in view.fittings}
    level = " and ".join(kind.upper() for kind in ("slide", "shelf") if kind in kinds)
    both = (f"{_together(view)}; draw the {level} lines across BOTH at once.",) if level else ()
    hardware = " and ".join(kind for kind in ("slide", "plate") if kind in kinds)
    lay = f"Lay {hardware} on the drawing." if hardware else CHECK_LEAFLET
    if not hardware and "shelf" in kinds:
        lay = "Rule along each row: 32.0 from hole to hole."
    if view.stand:
        side = f"so that the {view.drilled} is up" if view.partition else "on this side"
        panel = view.edges["bottom"].lower()
        return (
            _BARS,
            f"Lay the box {side}, its top away, FRONT edge on your {edge.upper()}.",
            f"Cut the cards. Fold the flap down over the front edge alone: {TRUE_FOLD}; stand the "
            f"paper on the {panel}. {_BLOCK}",
            lay,
            f"{_AWL}{' Slide lines: left against right, from the panel.' if both else ''}",
            _bore(view),
            _tick(view),
        )
    if view.partition:
        return (
            _BARS,
            f"{view.drilled} up, top end away, FRONT edge on your {edge.upper()}. Write the "
            "face's name on it.",
            f"Its figures start at its own bottom end, {format_mm(view.base)} above that of the "
            "sides.",
            *both,
            _cut(view, flaps),
            _set(view, flaps),
            lay,
            f"{_AWL} Compare with the {view.mate}.",
            _bore(view),
            _tick(view),
        )
    return (
        _BARS,
        f"Lay it inside up, top end away, FRONT edge on your {edge.upper()}.",
        *both,
        _cut(view, flaps),
        _set(view, flaps),
        lay,
        f"{_AWL} {f'{level.capitalize()} lines: left against right.' if both else ''}".rstrip(),
        _bore(view),
        _tick(view),
    )
