"""What is a part's own in the work on it: the lines that its cards are set on, how it is laid with
its neighbour, where its drawer box stands, and the caution of each thing that is bored in it.
"""

from collections.abc import Iterable, Iterator

from jigs.given.kinds import KINDS, by_rank
from jigs.ground.geometry import SLACK, FaceEdge
from jigs.ground.lengths import format_mm
from templates.faces.faceview import FaceView
from templates.faces.reference import Reference
from templates.words.cardwords import drawer_ends
from templates.words.facewords import drilled_words, edge_words, mate_words, reference_words
from templates.words.holewords import HOLE_WORDS
from templates.words.liftwords import lift_words
from templates.words.markingwords import pilot_words


def own_words(view: FaceView, references: Iterable[Reference]) -> tuple[str, ...]:
    """Give what is to be done to a part before its cards lie, in its own figures; `references`
    are what they are set on."""
    return (*_laid(view), *_struck(view, references), *_box_stands(view))


def box_first(view: FaceView, page: int | None) -> str:
    """Say which drawer box is bored before a face is marked through it, and on which page; "" where
    none is."""
    if view.marks is None or view.marks.maker_bored or view.face != "back":
        return ""
    return f"BORE {view.marks.box} FIRST{'' if page is None else f': page {page}'}."


def _struck(view: FaceView, references: Iterable[Reference]) -> Iterator[str]:
    """Say which lines are struck, from each edge the lowest first, and where the middle is."""
    found: dict[FaceEdge, dict[str, None]] = {}
    middle = False
    for reference in sorted(references, key=lambda each: each.value):
        if reference.kind == "index":
            found.setdefault(reference.edge, {})[reference_words(reference)] = None
        middle = middle or reference.kind == "middle"
    for edge, lines in found.items():
        name = edge_words(view, edge)
        yield f"STRIKE from {name}: {', '.join(lines)}."
    if middle:
        half = format_mm(view.width / 2)
        yield f"MIDDLE: half YOUR width ({half})."


def _laid(view: FaceView) -> Iterator[str]:
    """Say how a board is laid whose lines are struck across it and the one across its column,
    where the two are not the sides of one box, level: those lie as on the guide page.

    A partition stands on the bottom panel: what is of that height lifts it as high off the stop.
    """
    if view.face != "inside" or view.state.stand:
        return
    if view.partition:
        yield (
            f"{drilled_words(view)} up: write its name on it. 0 is its own bottom end, "
            f"{format_mm(view.ends.base)} above that of the sides."
        )
    raised = view.ends.raised
    lay = f"Lay it and the {mate_words(view)} together, front edges touching"
    if abs(raised) <= SLACK:
        if view.partition:
            yield f"{lay}, bottoms on one stop."
        return
    spacer = lift_words(raised, on_legs=view.on_legs)
    low, high = "this bottom", "the partition's"
    if raised < 0.0:
        low, high = "the side's bottom", "this one"
    yield f"{lay}: {low} on the stop, {spacer} between stop and {high}."


def _box_stands(view: FaceView) -> Iterator[str]:
    """Say where the drawer box stands on the back of its front, from each end its own figure
    where they differ."""
    if view.marks is not None and view.face == "back":
        yield f"Where marked: {pilot_words(view.thickness)}"
    yield from (f"{words[:-1]} (dashed)." for words in where_box_stands(view))


def where_box_stands(view: FaceView) -> Iterator[str]:
    """Say where the drawer box stands on its front, whose pilots come from paper."""
    if view.face != "back" or view.marks is not None or not view.drawer_outline:
        return
    left, right = drawer_ends(view)
    stands = f"{left} mm from each end"
    if left != right:
        stands = f"{left} mm in from the LEFT end as you look, {right} from the RIGHT"
    rise = format_mm(min(y for _, y in view.drawer_outline))
    yield f"DRAWER BOX STANDS {stands}, {rise} mm up."


def cautions_here(view: FaceView) -> str:
    """Give the caution of each thing that is bored in a face, each once, in one line."""
    kinds = by_rank(fitting.kind for fitting in view.fittings)
    cautions = [HOLE_WORDS[KINDS[kind].holes[0]].caution for kind in kinds]
    through = any(hole.depth is None for fitting in view.fittings for hole in fitting.holes)
    if view.face == "inside" and through:
        cautions = [f"THROUGH: once, from one face. {HOLE_WORDS['manual'].caution}", *cautions]
    return " ".join(dict.fromkeys(cautions))
