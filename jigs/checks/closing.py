"""Do the sizes close? Fronts, gaps and reveals against their box, and against the counter; and a
finished box against what the job says of it.

Fronts are ordered from the boxes that stand there, not from their plan: what a box is off its
width goes into the gaps at both its sides, what it is out of square makes them taper.
"""

from collections.abc import Iterator, Sequence
from math import hypot

from jigs.box.carcass import Carcass
from jigs.box.frontgaps import UNDER_COUNTER, stands_under_counter
from jigs.box.fronts import SAME_SIZE, WORTH_SAYING, FrontStack, PlacedFront, Trouble
from jigs.box.inhand import OUT_OF_SQUARE
from jigs.checks.inhand import LEAST_GAP
from jigs.given.job import BoxSpec
from jigs.ground.geometry import SLACK
from jigs.ground.lengths import CAREFUL, is_beyond
from jigs.ground.problems import Problem, error, warning

NOT_CLOSED = "reveals-do-not-close"
"""The finding on sizes that miss their box by more than a reveal can take."""
LEAST_COLUMN = 50.0
"""A column narrower than this is a slip; mm (common practice, no source)."""


def check_closing(carcass: Carcass, column: FrontStack) -> tuple[Problem, ...]:
    """List where the fronts of a box do not fill it as its reveals have it."""
    fronts = tuple(front.id for front in column.fronts if front.kind != "opening")
    # How wide an appliance's panel is, its leaflet says, and no reveal of the job.
    ruled = {front.id for front in column.fronts if front.kind == "panel" and front.spec.leaflet}
    return tuple(
        _find(carcass, trouble, fronts)
        for trouble in column.troubles
        if trouble.kind != "side-reveal" or trouble.front not in ruled
    )


def check_counter(carcass: Carcass, column: FrontStack) -> tuple[Problem, ...]:
    """List the top fronts that would rub on the counter, an appliance's panel among them."""
    if not stands_under_counter(carcass.box):
        return ()
    return tuple(
        warning("counter-reveal", front.id, gap=front.gaps.top, least=UNDER_COUNTER)
        for front in column.fronts
        if front.place.row == 1
        and front.place.overlay != "inset"
        and front.kind != "opening"
        and front.gaps.top < UNDER_COUNTER - SLACK
    )


def check_columns(
    box: BoxSpec, spare: float, uneven: Sequence[str], fronts: Sequence[PlacedFront]
) -> Iterator[Problem]:
    """Find columns that do not fill their box, and fronts that stand askew before them."""
    names = tuple(front.id for front in fronts)
    by_name = {front.id: front.place for front in fronts}
    for name in (name for name in uneven if name in by_name):
        yield error(
            NOT_CLOSED,
            name,
            case="columns-uneven",
            first=by_name[name].column,
            last=by_name[name].last_column,
        )
    fixed = all(column.width is not None for column in box.columns)
    if box.columns and (abs(spare) > WORTH_SAYING if fixed else spare < LEAST_COLUMN):
        yield error(
            NOT_CLOSED,
            box.id,
            case="columns",
            overrun=spare < 0,
            box=box.id,
            off=abs(spare),
            also=names,
        )


def _find(carcass: Carcass, trouble: Trouble, fronts: tuple[str, ...]) -> Problem:
    box, size, allowed = carcass.box, trouble.size, trouble.allowed
    hung = box.kind == "wall"
    match trouble.kind:
        case "no-room":
            return error(
                NOT_CLOSED, box.id, case="no-room", also=fronts,
                box=box.id, height=box.height, size=size, allowed=allowed,
            )  # fmt: skip
        case "rounded-away":
            return error(NOT_CLOSED, trouble.front, case="rounded-away", size=size, allowed=allowed)
        case "too-high":
            return error(
                NOT_CLOSED, box.id, case="too-high", also=fronts,
                box=box.id, hung=hung, size=size, allowed=allowed,
            )  # fmt: skip
        case "uncovered":
            return error(
                NOT_CLOSED, box.id, case="uncovered", also=fronts,
                box=box.id, hung=hung, size=size, allowed=allowed,
            )  # fmt: skip
        case "end-reveal":
            return warning(
                "end-reveal", box.id, also=fronts,
                box=box.id, hung=hung, size=size, allowed=allowed,
            )  # fmt: skip
        case "exchanged":
            return error(
                "sizes-exchanged", trouble.front, case="given",
                box=box.id, size=size, allowed=allowed,
            )  # fmt: skip
        case "exchanged-perhaps":
            return warning(
                "exchanged-perhaps", trouble.front, case="given", size=size, allowed=allowed
            )
        case "too-wide":
            return error(
                NOT_CLOSED, trouble.front, case="too-wide",
                box=box.id, width=box.width, size=size, allowed=allowed,
            )  # fmt: skip
        case "too-narrow":
            return error(
                NOT_CLOSED, trouble.front, case="too-narrow",
                box=box.id, size=size, allowed=allowed,
            )  # fmt: skip
        case "side-reveal":
            return warning("side-reveal", trouble.front, size=size, allowed=allowed)


def check_built(
    box: BoxSpec, fronts: Sequence[PlacedFront], *, drawers: bool = False
) -> Iterator[Problem]:
    """List where a box as built differs from the job; `fronts` as they hang on it; `drawers`:
    drawer boxes run in it."""
    if not box.built:
        return
    yield from _check_width(box, fronts, drawers)
    yield from _check_height(box, fronts)
    yield from _check_depth(box)
    yield from _check_true(box, fronts)
    yield from _check_square(box, fronts)


def squareness_taper(diagonals: tuple[float, float], *, width: float, height: float) -> float:
    """Give how far the sides of a box lean over its height, and so what its gaps taper; mm.

    The difference of the diagonals times the diagonal over twice the width (derived: by the law
    of cosines).

    >>> round(squareness_taper((900.0, 898.0), width=457.2, height=774.7), 2)
    1.97
    """
    return abs(diagonals[0] - diagonals[1]) * hypot(width, height) / (2 * width)


def _check_width(box: BoxSpec, fronts: Sequence[PlacedFront], drawers: bool) -> Iterator[Problem]:
    if box.measured.width is None:
        return
    built, gap = sum(box.measured.width) / 2, _side_gap(box, fronts)
    off = built - box.width
    if is_beyond(off, CAREFUL):
        yield warning(
            "box-differs", box.id, case="width", also=tuple(front.id for front in fronts),
            box=box.id, built=built, off=abs(off), more=off > 0, width=box.width, drawers=drawers,
            front=gap is not None, gap=gap, becomes=None if gap is None else gap + off / 2,
        )  # fmt: skip


def _check_height(box: BoxSpec, fronts: Sequence[PlacedFront]) -> Iterator[Problem]:
    if box.measured.height is None:
        return
    built, hung = sum(box.measured.height) / 2, box.kind == "wall"
    off = built - box.height
    gap = min(
        (
            front.gaps.bottom if hung else front.gaps.top
            for front in fronts
            if front.place.row == (front.place.rows if hung else 1)
        ),
        default=None,
    )
    if is_beyond(off, CAREFUL):
        yield warning(
            "box-differs", box.id, case="height", also=tuple(front.id for front in fronts),
            box=box.id, built=built, off=abs(off), more=off > 0, hung=hung,
            front=gap is not None, gap=gap, becomes=None if gap is None else gap + off,
        )  # fmt: skip


def _check_depth(box: BoxSpec) -> Iterator[Problem]:
    built = box.measured.depth
    if built is None or not is_beyond(built - box.depth, CAREFUL):
        return
    yield warning(
        "box-differs", box.id, case="depth",
        box=box.id, built=built, off=abs(built - box.depth), more=built > box.depth,
    )  # fmt: skip


def _check_true(box: BoxSpec, fronts: Sequence[PlacedFront]) -> Iterator[Problem]:
    """Find a box that is wider at one end, or higher at one side, than at the other."""
    also = tuple(front.id for front in fronts)
    for wide, both in ((True, box.measured.width), (False, box.measured.height)):
        if both is None or not is_beyond(both[0] - both[1], OUT_OF_SQUARE):
            continue
        differ = abs(both[0] - both[1])
        taper = differ / 2 if wide else differ
        yield warning(
            "box-tapers", box.id, also=also,
            box=box.id, wide=wide, one=both[0], other=both[1], taper=taper,
        )  # fmt: skip


def _check_square(box: BoxSpec, fronts: Sequence[PlacedFront]) -> Iterator[Problem]:
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
            case="box",
            one=corners[0],
            other=corners[1],
            box=box.id,
            width=width,
            height=height,
            due=due,
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
        if not is_beyond(max(0.0, between), 0.0):
            case = "no-gap"
        else:
            case = "bears" if is_beyond(bears, 0.0) else "nothing-to-give"
        yield warning(
            "box-out-of-square",
            box.id,
            case=case,
            also=also,
            box=box.id,
            differ=abs(corners[0] - corners[1]),
            lean=taper,
            gap=between,
            bears=bears,
            least=LEAST_GAP,
        )


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
