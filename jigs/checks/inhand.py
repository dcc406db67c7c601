"""Does the front in hand answer the order? Its sizes, its squareness, width for height, its board;
and has everything arrived?

Of a front whose sizes stand in the job, the person has decided: what is off is a warning. One that
came with a delivered list is judged by the tolerance: beyond it, it is held back.
"""

from collections.abc import Collection, Iterator, Sequence

from jigs.box.fronts import SAME_SIZE, PlacedFront
from jigs.box.inhand import BOARD, SAME_PLACE, FrontInHand, Skew, is_measured, is_other_board
from jigs.given.delivery import Arrival, Delivery, Surplus
from jigs.ground.geometry import SLACK
from jigs.ground.lengths import Unit, format_length, is_beyond, telling_unit
from jigs.ground.problems import Problem, error, warning

ALIKE = 0.05
"""Two measures of a size that differ by less are written as one, mm."""
REFUSALS = ("sizes-exchanged", "size-differs", "out-of-square", "thickness-differs")
"""The findings by which a delivered front is held back: it is what it was made, not as ordered."""
LEAST_GAP = 1.0
"""The least gap between two fronts of one box; mm (common practice, no source)."""


def check_measured(front: PlacedFront, hand: FrontInHand, unit: Unit) -> Iterator[Problem]:
    """List how a front in hand differs from the order."""
    if not is_measured(front.spec):
        return
    made = hand.made
    if hand.turned:
        yield error(
            "sizes-exchanged",
            front.id,
            f"width and height swapped? Measured {_size(made.width, made.height, unit)}, "
            f"ordered {_size(front.width, front.height, unit)}",
            "measure again, up being the way it hangs; if it was made so, have it made anew",
        )
        return
    yield from _check_square(front, hand, unit)
    yield from _check_size(front, hand, unit)


def check_gaps_in_hand(
    fronts: Sequence[PlacedFront], delivered: Collection[str], unit: Unit
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
                yield _gap(front.id, other.id, gap, unit)


def _gap(front: str, other: str, gap: float, unit: Unit) -> Problem:
    unit = telling_unit(unit, gap, LEAST_GAP)
    left = "nothing" if gap <= SLACK else format_length(gap, unit)
    return warning(
        "gap-in-hand",
        front,
        f"as measured, it and {other} leave {left} between them; "
        f"at least {format_length(LEAST_GAP, unit)} is wanted",
        "trim one of them before drilling, or set them apart with the hinges' and slides' screws",
        (other,),
    )


def _check_size(front: PlacedFront, hand: FrontInHand, unit: Unit) -> Iterator[Problem]:
    if not hand.off:
        return
    across = front.spec.measured.width or (front.width,)
    up = front.spec.measured.height or (front.height,)
    made, limits, beyond = hand.made, hand.limits, dict(hand.off)
    unit = telling_unit(telling_unit(unit, made.width, front.width), made.height, front.height)
    too_small = not beyond.keys().isdisjoint(("too narrow", "too low"))
    off = " and ".join(f"{format_length(size, unit)} {way}" for way, size in beyond.items())
    sizes = (
        f"measured {_range(across, unit)} x {_range(up, unit)}, ordered "
        f"{_size(front.width, front.height, unit)}: {off}; "
        f"{format_length(limits.tolerance, unit)} is accepted"
    )
    if limits.delivered:
        remedy = (
            "order it anew, or make the gaps in the job so much larger that this is its size"
            if too_small
            else "trim it and measure again, or have it made anew"
        )
        if limits.fits:
            remedy = (
                f"compare the labels: it has the size of {', '.join(limits.fits[:3])}; "
                f"otherwise {remedy}"
            )
        yield error("size-differs", front.id, sizes, remedy)
        return
    other = "order it anew" if too_small else "trim it, or have it made anew"
    hung = hand.tried
    gaps = (hung.gaps.left, hung.gaps.right, hung.gaps.top, hung.gaps.bottom)
    yield warning(
        "size-differs",
        front.id,
        f"{sizes}; its smallest gap becomes {format_length(min(gaps), unit)}",
        f"try it on its box before drilling; {other}",
    )


def _check_square(front: PlacedFront, hand: FrontInHand, unit: Unit) -> Iterator[Problem]:
    """Word what tells of a skewed front: two measures of one size, or two diagonals."""
    made, limits = hand.made, hand.limits
    if (corners := front.spec.measured.diagonals) is not None:
        mean, due = sum(corners) / 2, made.diagonal
        if abs(mean - due) > SAME_SIZE + SLACK:
            yield warning(
                "diagonals-doubtful",
                front.id,
                f"diagonals of {format_length(corners[0], unit)} and "
                f"{format_length(corners[1], unit)} are not those of a front "
                f"{_size(made.width, made.height, unit)}, which are {format_length(due, unit)}",
                "measure it again, from corner to corner",
            )
    for skew in hand.skews:
        said = _word_skew(front, skew, unit)
        if skew.beyond and limits.delivered:
            text = f"{said}; {format_length(limits.tolerance, unit)} is accepted"
            remedy = "true it up and measure again, or have it made anew"
            yield error("out-of-square", front.id, text, remedy)
        else:
            remedy = "set it out from the edges that the cards name, and try it before painting"
            yield warning("out-of-square", front.id, said, remedy)


def _word_skew(front: PlacedFront, skew: Skew, unit: Unit) -> str:
    spec = front.spec
    if skew.measured == "diagonals":
        corners = spec.measured.diagonals or (0.0, 0.0)
        return (
            f"its diagonals differ by {format_length(abs(corners[0] - corners[1]), unit)}: out of "
            f"square by {format_length(skew.lean, unit)} over its longer edge"
        )
    both, size, first, second = (
        (spec.measured.width, "wide", "top", "bottom")
        if skew.measured == "width"
        else (spec.measured.height, "high", "left", "right")
    )
    low, high = both or (0.0, 0.0)
    return (
        f"{format_length(low, unit)} {size} at the {first} and "
        f"{format_length(high, unit)} at the {second}: it is out of square"
    )


def _size(width: float, height: float, unit: Unit) -> str:
    return f"{format_length(width, unit)} x {format_length(height, unit)}"


def _range(sizes: Sequence[float], unit: Unit) -> str:
    """Write a size as measured at both ends: once where they are alike."""
    low, high = min(sizes), max(sizes)
    if high - low < ALIKE:
        return format_length((low + high) / 2, unit)
    return f"{format_length(low, unit)} to {format_length(high, unit)}"


def _near(one: float, other: float) -> bool:
    return abs(one - other) < SAME_PLACE


def check_arrival(
    front: str, delivery: Delivery, tolerance: float, unit: Unit
) -> Iterator[Problem]:
    """List what is to be said of what arrived for one front, besides its size."""
    arrival = delivery.arrivals.get(front)
    if arrival is None:
        yield warning(
            "not-delivered",
            front,
            "not delivered yet; its sheets are for the size that was ordered",
            "measure it when it comes, and print them anew",
        )
        return
    yield from _check_thickness(front, arrival, tolerance, unit)


def check_surplus(delivery: Delivery, unit: Unit) -> tuple[Problem, ...]:
    """List the pieces that no front takes."""
    return tuple(_word_surplus(delivery.file.name, s, unit) for s in delivery.surplus)


def _word_surplus(file: str, surplus: Surplus, unit: Unit) -> Problem:
    piece = surplus.piece
    pieces = "a piece" if surplus.count == 1 else f"{surplus.count} pieces"
    if piece.id:
        return warning(
            "surplus",
            None,
            f"{file}, {piece.row}: {pieces} more than was ordered of {piece.id}",
            "put it aside; drill the one that you have measured",
        )
    size = " x ".join(format_length(sum(s) / len(s), unit) for s in (piece.width, piece.height))
    return warning(
        "surplus",
        None,
        f"{file}, {piece.row}: {pieces} of {size}, which no front still missing has",
        "look for its label; it may be another job's, or a front much out of size",
    )


def _check_thickness(
    front: str, arrival: Arrival, tolerance: float, unit: Unit
) -> Iterator[Problem]:
    made = arrival.piece.thickness
    if made is None or not is_beyond(made - arrival.thickness, BOARD):
        return
    text = (
        f"{format_length(made, unit)} thick, ordered {format_length(arrival.thickness, unit)} thick"
    )
    if is_other_board(arrival, tolerance):
        yield error(
            "thickness-differs",
            front,
            f"{text}: it is of another board",
            "send it back; if it stays, give its thickness at the front in the job",
        )
        return
    yield warning(
        "thickness-differs",
        front,
        text,
        "its bores and screws follow what was measured; see that its face comes level with "
        "its neighbours",
    )
