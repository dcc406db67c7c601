"""Is a finished box what the job says? Its sizes, its squareness, and what that does to the gaps.

Fronts are ordered from the boxes that stand there, not from their plan: what a box is off its
width goes into the gaps at both its sides, what it is out of square makes them taper.
"""

from collections.abc import Iterator, Sequence
from math import hypot

from jigs.box.fronts import SAME_SIZE, PlacedFront
from jigs.box.inhand import OUT_OF_SQUARE
from jigs.checks.inhand import LEAST_GAP
from jigs.given.job import BoxSpec
from jigs.ground.geometry import SLACK
from jigs.ground.lengths import CAREFUL, Unit, format_length, is_beyond
from jigs.ground.problems import Problem, warning


def check_built(
    box: BoxSpec, fronts: Sequence[PlacedFront], unit: Unit, *, drawers: bool = False
) -> Iterator[Problem]:
    """List where a box as built differs from the job; `fronts` as they hang on it; `drawers`:
    drawer boxes run in it."""
    if not box.built:
        return
    yield from _check_width(box, fronts, unit, drawers)
    yield from _check_height(box, fronts, unit)
    yield from _check_depth(box, unit)
    yield from _check_true(box, fronts, unit)
    yield from _check_square(box, fronts, unit)


def squareness_taper(diagonals: tuple[float, float], *, width: float, height: float) -> float:
    """Give how far the sides of a box lean over its height, and so what its gaps taper; mm.

    The difference of the diagonals times the diagonal over twice the width (derived: by the law
    of cosines).

    >>> round(squareness_taper((900.0, 898.0), width=457.2, height=774.7), 2)
    1.97
    """
    return abs(diagonals[0] - diagonals[1]) * hypot(width, height) / (2 * width)


def _check_width(
    box: BoxSpec, fronts: Sequence[PlacedFront], unit: Unit, drawers: bool
) -> Iterator[Problem]:
    if box.measured.width is None:
        return
    off = sum(box.measured.width) / 2 - box.width
    gap = _side_gap(box, fronts)
    does = "the run grows or shrinks with it"
    if gap is not None:
        does = (
            f"the reveal at each of its sides becomes {_left(gap + off / 2, unit)} instead of "
            f"{_left(gap, unit)}"
        )
    if drawers:
        does += (
            f"; its drawer boxes are still reckoned for {format_length(box.width, unit)}, "
            "not for the box as built"
        )
    yield from _differs(
        box, fronts, unit, "width", ("wide", "wider", "narrower"), off, does, drawers
    )


def _check_height(box: BoxSpec, fronts: Sequence[PlacedFront], unit: Unit) -> Iterator[Problem]:
    if box.measured.height is None:
        return
    off = sum(box.measured.height) / 2 - box.height
    end = "bottom" if box.kind == "wall" else "top"
    gaps = [
        front.gaps.bottom if end == "bottom" else front.gaps.top
        for front in fronts
        if front.place.row == (front.place.rows if end == "bottom" else 1)
    ]
    does = "what stands on it or beside it meets it elsewhere"
    if gaps:
        does = (
            f"the reveal at its {end} becomes {_left(min(gaps) + off, unit)} instead of "
            f"{_left(min(gaps), unit)}"
        )
    yield from _differs(box, fronts, unit, "height", ("high", "higher", "lower"), off, does)


def _check_depth(box: BoxSpec, unit: Unit) -> Iterator[Problem]:
    if box.measured.depth is None:
        return
    off = box.measured.depth - box.depth
    does = "slides and drawer boxes are counted from its depth"
    yield from _differs(box, (), unit, "depth", ("deep", "deeper", "shallower"), off, does, True)


def _differs(
    box: BoxSpec,
    fronts: Sequence[PlacedFront],
    unit: Unit,
    size: str,
    words: tuple[str, str, str],
    off: float,
    does: str,
    drawers: bool = False,
) -> Iterator[Problem]:
    """Tell a size that is further off the job than careful work leaves it; `drawers`: drawer boxes
    are made to it."""
    if not is_beyond(off, CAREFUL):
        return
    stated = {"width": box.width, "height": box.height, "depth": box.depth}[size]
    much = format_length(abs(off), unit)
    yield warning(
        "box-differs",
        box.id,
        f"box {box.id} as built is {format_length(stated + off, unit)} {words[0]}, {much} "
        f"{words[1] if off > 0 else words[2]} than the job says: {does}",
        f"put the measured size into the job as the box's {size} before its fronts are ordered"
        f"{' or its drawer boxes made' if drawers else ''}",
        tuple(front.id for front in fronts),
    )


def _check_true(box: BoxSpec, fronts: Sequence[PlacedFront], unit: Unit) -> Iterator[Problem]:
    """Find a box that is wider at one end, or higher at one side, than at the other."""
    also = tuple(front.id for front in fronts)
    for both, size, places, does in (
        (
            box.measured.width,
            "wide",
            ("at the top", "at the bottom"),
            "the gap at each side tapers",
        ),
        (box.measured.height, "high", ("at the left", "at the right"), "the gaps above taper"),
    ):
        if both is None or not is_beyond(both[0] - both[1], OUT_OF_SQUARE):
            continue
        differ = abs(both[0] - both[1])
        taper = differ / 2 if size == "wide" else differ
        yield warning(
            "box-tapers",
            box.id,
            f"box {box.id} as built is {format_length(both[0], unit)} {size} {places[0]} and "
            f"{format_length(both[1], unit)} {places[1]}: {does} by "
            f"{format_length(taper, unit)}",
            "look for a joint that has not closed, and draw it together; else size the fronts "
            "from the smaller figure",
            also,
        )


def _check_square(box: BoxSpec, fronts: Sequence[PlacedFront], unit: Unit) -> Iterator[Problem]:
    """Find diagonals that make the gaps taper by more than they bear, or that cannot be."""
    corners = box.measured.diagonals
    if corners is None:
        return
    width = sum(box.measured.width) / 2 if box.measured.width else box.width
    height = sum(box.measured.height) / 2 if box.measured.height else box.height
    also = tuple(front.id for front in fronts)
    due = hypot(width, height)
    if abs(sum(corners) / 2 - due) > SAME_SIZE + SLACK:
        yield warning(
            "diagonals-doubtful",
            box.id,
            f"diagonals of {format_length(corners[0], unit)} and "
            f"{format_length(corners[1], unit)} are not those of box {box.id}, "
            f"{format_length(width, unit)} x {format_length(height, unit)}, which are "
            f"{format_length(due, unit)}",
            "measure the box again, from outer corner to outer corner of its front",
        )
    gap = _side_gap(box, fronts)
    if gap is None:
        return
    taper = squareness_taper(corners, width=width, height=height)
    gap += (width - box.width) / 2
    # Between two boxes the gap is this reveal and the neighbour's, which is taken to be alike.
    between = gap if box.overlay == "inset" else 2 * gap
    bears = max(0.0, between - LEAST_GAP)
    if is_beyond(taper, bears):
        yield warning(
            "box-out-of-square",
            box.id,
            f"the diagonals of box {box.id} as built differ by "
            f"{format_length(abs(corners[0] - corners[1]), unit)}: "
            f"its sides lean by {format_length(taper, unit)} over its height, and "
            f"{_bears(between, bears, unit)}",
            "rack the box square before the back is fixed, or with packing under one corner as "
            "it is screwed to the wall, and measure again",
            also,
        )


def _bears(gap: float, bears: float, unit: Unit) -> str:
    """Say what a gap bears, if it is one."""
    if not is_beyond(max(0.0, gap), 0.0):
        return "its fronts leave no gap beside them to take that up"
    if not is_beyond(bears, 0.0):
        least = format_length(LEAST_GAP, unit)
        return f"a gap of {format_length(gap, unit)} has nothing to give; {least} must stay"
    return f"a gap of {format_length(gap, unit)} bears {format_length(bears, unit)}"


def _side_gap(box: BoxSpec, fronts: Sequence[PlacedFront]) -> float | None:
    """Give the smallest gap between a front and the box's own end; None where no front is."""
    last = max(1, len(box.columns))
    gaps, blind = [], None if box.blind is None else box.blind.hand
    # A front of whose height nothing is left, told elsewhere, stands beside no gap.
    for front in (front for front in fronts if front.height > SLACK):
        level = [o for o in fronts if min(o.top, front.top) > max(o.place.y, front.place.y) + SLACK]
        if (
            front.place.column == 1
            and blind != "left"
            and not any(o.place.x < front.place.x for o in level)
        ):
            gaps.append(front.gaps.left)
        ends = [o.place.x + o.width for o in level]
        if front.place.last_column == last and blind != "right":
            gaps += [front.gaps.right] if front.place.x + front.width >= max(ends) else []
    return min(gaps, default=None)


def _left(size: float, unit: Unit) -> str:
    return format_length(size, unit) if size > SLACK else "nothing"
