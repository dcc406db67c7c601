"""Does the front in hand answer the order? Its sizes, its squareness, width for height, its board;
and has everything arrived?

Of a front whose sizes stand in the job, the person has decided: what is off is a warning. One that
came with a delivered list is judged by the tolerance: beyond it, it is held back.
"""

from collections.abc import Collection, Iterator, Sequence

from jigs.box.fronts import SAME_SIZE, PlacedFront
from jigs.box.inhand import OTHER_BOARD, SAME_PLACE, FrontInHand, is_measured, is_other_board
from jigs.given.measured import Arrival, Delivery, Surplus
from jigs.ground.geometry import SLACK
from jigs.ground.lengths import is_beyond
from jigs.ground.problems import Problem, error, warning

ALIKE = 0.05
"""Two measures of a size that differ by less are written as one, mm."""
LEAST_GAP = 1.0
"""The least gap between two fronts of one box; mm (common practice, no source)."""


def check_measured(front: PlacedFront, hand: FrontInHand) -> Iterator[Problem]:
    """List how a front in hand differs from the order."""
    if not is_measured(front.spec):
        return
    made = hand.made
    if hand.turned:
        yield error(
            "sizes-exchanged",
            front.id,
            case="measured",
            made_width=made.width,
            made_height=made.height,
            width=front.width,
            height=front.height,
        )
        return
    yield from _check_square(front, hand)
    yield from _check_size(front, hand)


def check_gaps_in_hand(
    fronts: Sequence[PlacedFront], delivered: Collection[str]
) -> Iterator[Problem]:
    """Find the gaps between fronts of one box that delivered ones leave too small."""
    for front in fronts:
        for other in fronts:
            if not {front.id, other.id} & set(delivered):
                continue
            above = _near(front.top + front.gaps.top, other.place.y)
            stacked = min(front.place.x + front.width, other.place.x + other.width) > max(
                front.place.x, other.place.x
            )
            beside = _near(front.place.x + front.width + front.gaps.right, other.place.x)
            level = min(front.top, other.top) > max(front.place.y, other.place.y)
            gap = front.gaps.top if above and stacked else front.gaps.right
            if ((above and stacked) or (beside and level)) and gap < LEAST_GAP - SLACK:
                yield _gap(front.id, other.id, gap)


def _gap(front: str, other: str, gap: float) -> Problem:
    return warning(
        "gap-in-hand", front, one=front, other=other, gap=gap, least=LEAST_GAP, also=(other,)
    )


def _check_size(front: PlacedFront, hand: FrontInHand) -> Iterator[Problem]:
    if not hand.off:
        return
    made, limits, hung = hand.made, hand.limits, hand.tried
    gaps = (hung.gaps.left, hung.gaps.right, hung.gaps.top, hung.gaps.bottom)
    yield (error if limits.delivered else warning)(
        "size-differs",
        front.id,
        case="delivered" if limits.delivered else "in-hand",
        across=_ends(front.spec.measured.width or (front.width,)),
        up=_ends(front.spec.measured.height or (front.height,)),
        made_width=made.width,
        made_height=made.height,
        width=front.width,
        height=front.height,
        off=tuple((size, way) for way, size in hand.off),
        small=not dict(hand.off).keys().isdisjoint(("too narrow", "too low")),
        tolerance=limits.tolerance,
        fits=limits.fits[:3],
        gap=min(gaps),
    )


def _check_square(front: PlacedFront, hand: FrontInHand) -> Iterator[Problem]:
    """Find what tells of a skewed front: two measures of one size, or two diagonals."""
    made, limits, spec = hand.made, hand.limits, front.spec
    if (corners := spec.measured.diagonals) is not None:
        mean, due = sum(corners) / 2, made.diagonal
        if abs(mean - due) > SAME_SIZE + SLACK:
            one, other = corners
            yield warning(
                "diagonals-doubtful", front.id, case="front",
                one=one, other=other, width=made.width, height=made.height, due=due,
            )  # fmt: skip
    for skew in hand.skews:
        beyond = skew.beyond and limits.delivered
        found = error if beyond else warning
        if skew.measured == "diagonals":
            one, other = spec.measured.diagonals or (0.0, 0.0)
            yield found(
                "out-of-square", front.id, case="diagonals",
                differ=abs(one - other), lean=skew.lean, beyond=beyond, tolerance=limits.tolerance,
            )  # fmt: skip
            continue
        wide = skew.measured == "width"
        low, high = (spec.measured.width if wide else spec.measured.height) or (0.0, 0.0)
        yield found(
            "out-of-square", front.id, case="ends",
            low=low, high=high, wide=wide, beyond=beyond, tolerance=limits.tolerance,
        )  # fmt: skip


def _ends(sizes: Sequence[float]) -> tuple[float, ...]:
    """Give a size as measured at both ends: once where they are alike."""
    low, high = min(sizes), max(sizes)
    return ((low + high) / 2,) if high - low < ALIKE else (low, high)


def _near(one: float, other: float) -> bool:
    return abs(one - other) < SAME_PLACE


def check_arrival(front: str, delivery: Delivery, tolerance: float) -> Iterator[Problem]:
    """List what is to be said of what arrived for one front, besides its size."""
    arrival = delivery.arrivals.get(front)
    if arrival is None:
        yield warning("not-delivered", front)
        return
    yield from _check_thickness(front, arrival, tolerance)


def check_surplus(delivery: Delivery) -> Iterator[Problem]:
    """List the pieces that no front takes, and the boards that came with the fronts in another size
    than they are cut to."""
    for surplus in delivery.surplus:
        yield _find_surplus(delivery.file.name, surplus)
    for each in delivery.besides:
        if each.fits is False and each.cut is not None:
            piece = each.piece
            width, height = (sum(size) / len(size) for size in (piece.width, piece.height))
            yield warning(
                "board-differs", None,
                file=delivery.file.name, row=piece.row, board=each.id, width=width, height=height,
                cut_width=each.cut[0], cut_height=each.cut[1], scribed=each.scribed,
            )  # fmt: skip


def _find_surplus(file: str, surplus: Surplus) -> Problem:
    piece, count = surplus.piece, surplus.count
    if piece.id:
        return warning(
            "surplus", None, case="known",
            file=file, row=piece.row, one=count == 1, count=count, front=piece.id,
        )  # fmt: skip
    width, height = (sum(size) / len(size) for size in (piece.width, piece.height))
    return warning(
        "surplus", None, case="unknown",
        file=file, row=piece.row, one=count == 1, count=count, width=width, height=height,
    )  # fmt: skip


def _check_thickness(front: str, arrival: Arrival, tolerance: float) -> Iterator[Problem]:
    made, ordered = arrival.piece.thickness, arrival.thickness
    if made is None or not is_beyond(made - ordered, OTHER_BOARD):
        return
    if is_other_board(arrival, tolerance):
        yield error("thickness-differs", front, case="other-board", made=made, ordered=ordered)
        return
    yield warning("thickness-differs", front, made=made, ordered=ordered)
