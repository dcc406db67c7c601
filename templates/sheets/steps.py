"""The steps of the work on one face, short and in order, each caution where it happens."""

from collections.abc import Iterator

from jigs.fittings.kinds import KINDS, by_rank
from jigs.ground.geometry import SLACK, FaceEdge, FittingKind
from jigs.ground.lengths import format_mm
from templates.cards.card import choose_references
from templates.cards.flap import TRUE_FOLD
from templates.faces.faceview import FaceView
from templates.words.facewords import drilled_words, edge_words, mate_words
from templates.words.fittingwords import AWL, words_of
from templates.words.holewords import HOLE_WORDS, caution_of

_BARS = "Measure both bars. ID and code as on the label?"
_BLOCK = "Clamp a straight block against the folded flap; four strips of low-tack tape."
_ALIKE = "Measure all: alike to 0.5?"
"""One card is cut at one height; cups meet their plates within 0.5 (common practice, no source)."""


def _tick(view: FaceView) -> str:
    return f"{'Tick it off; w' if view.served.parts else 'W'}rite DRILLED on its label."


def _measure(view: FaceView, what: str) -> str:
    return _ALIKE if view.served.parts else f"Measure {what}, fill in."


def _top(view: FaceView, what: str) -> str:
    on = "each" if view.served.parts else "the back"
    return f"Write TOP on tape on {on}. {_measure(view, what)}"


def _cut(view: FaceView, flaps: bool) -> str:
    if view.rounded and flaps:
        ladder = "; cut the ladder too" if view.ladder else ""
        if view.ladder and view.served.parts:
            ladder = "; cut the ladder too, at their height"
        return f"Cut the cards where white meets black: no black left, no folds{ladder}."
    top = "the top one at their height" if view.served.parts else "the top one at your height"
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
    first = by_rank(fitting.kind for fitting in view.fittings)[0]
    words, caution = words_of(first), caution_of(view, KINDS[first].holes[0])
    match view.face:
        case "inside":
            return _side_steps(view, flaps)
        case "box-front":
            return (
                _BARS,
                "The front's pilots come first. The box stands on its bottom.",
                _cut(view, flaps),
                _set(view, flaps),
                AWL,
                f"Bore from outside. {caution}",
                "Stand the box on the front: each hole over its pilot? Then screw it on.",
                *([_tick(view)] if view.served.parts else []),
            )
        case "box-back":
            return (
                _BARS,
                "Turn the box round: it stands on its bottom, its back towards you.",
                f"{_cut(view, flaps)} Where the notch is cut already, the fold hangs free.",
                _set(view, flaps),
                words.lay(view),
                AWL,
                f"Bore. {caution}",
                _tick(view),
            )
        case "front":
            return (
                _BARS,
                f"{_measure(view, 'it')} {_cut(view, flaps)}",
                _set(view, flaps),
                words.lay(view),
                AWL,
                f"Bore. {caution}",
                *_others(view, first),
                _tick(view),
            )
        case "back":
            return (
                _BARS,
                _top(view, words.measured),
                _cut(view, flaps),
                *words.before,
                _set(view, flaps),
                words.lay(view),
                words.awl(view),
                f"{words.bore} {caution}",
                *_others(view, first),
                _tick(view),
            )


def steps_again(view: FaceView, *, flaps: bool = True) -> str:
    """Give the steps in one line, for the further sheets of a face, with the cautions of all that
    is bored in it; `flaps`: whether a card on the sheet has one, or an edge to cut and butt."""
    kinds = by_rank(fitting.kind for fitting in view.fittings)
    cautions = dict.fromkeys(caution_of(view, KINDS[kind].holes[0]) for kind in kinds)
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
        f"{setting}; tape; lay the hardware; awl; check; bore. {' '.join(cautions)}"
    )


def _others(view: FaceView, first: FittingKind) -> Iterator[str]:
    """Give a step to each kind that the steps for the first of a face do not speak of."""
    for kind in by_rank(fitting.kind for fitting in view.fittings):
        words, purpose = words_of(kind), KINDS[kind].holes[0]
        if kind != first and not words.laid and not words.level:
            name, caution = HOLE_WORDS[purpose].name, caution_of(view, purpose)
            yield f"{name}: {words.lay(view)} {caution}"


def _bore(view: FaceView, first: FittingKind) -> str:
    """Say how a side or a partition is bored, right through only where a hole is; with the caution
    of its first kind, where that is another."""
    if any(hole.depth is None for fitting in view.fittings for hole in fitting.holes):
        return f"Bore; what is marked THROUGH once, from one face. {HOLE_WORDS['manual'].caution}"
    cautions = dict.fromkeys(
        caution_of(view, purpose) for purpose in ("plate", KINDS[first].holes[0])
    )
    return f"Bore. {' '.join(cautions)}"


def _together(view: FaceView) -> str:
    """Say how a board is laid with the one across its column, so that a line is struck on both.

    A partition stands on the bottom panel: an offcut of its board lifts it as high off the stop.
    """
    level = abs(view.ends.raised) <= SLACK
    pair = "LEFT and RIGHT" if level and not view.partition else f"it and the {mate_words(view)}"
    lay = f"Lay {pair} together, front edges touching"
    if level:
        return f"{lay}, bottoms on one stop"
    lift = format_mm(abs(view.ends.raised))
    spacer = f"a block {lift} long" if view.on_legs else f"an offcut of the bottom's board ({lift})"
    low, high = "this bottom", "the partition's"
    if view.ends.raised < 0.0:
        low, high = "the side's bottom", "this one"
    return f"{lay}: {low} on the stop, {spacer} between stop and {high}"


def _side_steps(view: FaceView, flaps: bool) -> tuple[str, ...]:
    edge: FaceEdge = view.front_edge or "left"
    kinds = by_rank(fitting.kind for fitting in view.fittings)
    words = [words_of(kind) for kind in kinds]
    level = " and ".join(each.level for each in words if each.level)
    both = (f"{_together(view)}; draw the {level} lines across BOTH at once.",) if level else ()
    hardware = " and ".join(each.laid for each in words if each.laid)
    lay = f"Lay {hardware} on the drawing." if hardware else words[0].lay(view)
    if view.state.stand:
        side = f"so that the {drilled_words(view)} is up" if view.partition else "on this side"
        panel = edge_words(view, "bottom").lower()
        return (
            _BARS,
            f"Lay the box {side}, its top away, FRONT edge on your {edge.upper()}.",
            f"Cut the cards. Fold the flap down over the front edge alone: {TRUE_FOLD}; stand the "
            f"paper on the {panel}. {_BLOCK}",
            lay,
            f"{AWL}{' Slide lines: left against right, from the panel.' if both else ''}",
            _bore(view, kinds[0]),
            *_others(view, kinds[0]),
            _tick(view),
        )
    if view.partition:
        return (
            _BARS,
            f"{drilled_words(view)} up, top end away, FRONT edge on your {edge.upper()}. Write the "
            "face's name on it.",
            f"Its figures start at its own bottom end, {format_mm(view.ends.base)} above that "
            "of the sides.",
            *both,
            _cut(view, flaps),
            _set(view, flaps),
            lay,
            f"{AWL} Compare with the {mate_words(view)}.",
            _bore(view, kinds[0]),
            *_others(view, kinds[0]),
            _tick(view),
        )
    return (
        _BARS,
        f"Lay it inside up, top end away, FRONT edge on your {edge.upper()}.",
        *both,
        _cut(view, flaps),
        _set(view, flaps),
        lay,
        f"{AWL} {f'{level.capitalize()} lines: left against right.' if both else ''}".rstrip(),
        _bore(view, kinds[0]),
        *_others(view, kinds[0]),
        _tick(view),
    )
