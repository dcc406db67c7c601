"""The front in hand: it was ordered in one size and has arrived in another. In which ways it is
off, and whether it is taken.

Holes keep their distance from the bottom edge and, on a door, from the hinge edge, so that cups
go on meeting their plates; what stands about the middle follows the middle of the front as it
is. The front is measured across at top and bottom, and up at left and right; what is printed is
the mean of both.

>>> from jigs.given.stated import Taped
>>> spec = FrontSpec(id="F", kind="door", measured=Taped(width=(454.0, 455.0)))
>>> Measured.of(spec, width=454.0, height=613.0).width
454.5

One whose sizes stand in the job is taken as it is: the person has decided. One that came with a
delivered list is not taken beyond the tolerance, nor is one that was made with width and height
exchanged, or of another board.
"""

from collections.abc import Collection, Iterator, Sequence
from math import hypot
from typing import Literal

from msgspec import Struct
from msgspec.structs import replace

from jigs.box.fittings import FrontFittings, front_by_hand
from jigs.box.fronts import SAME_SIZE, PlacedFront
from jigs.box.parts import Gaps
from jigs.given.job import FrontSpec, Job
from jigs.given.kinds import kind_of
from jigs.given.measured import Arrival
from jigs.ground.geometry import moved
from jigs.ground.lengths import is_beyond

SAME_PLACE = 0.01
"""Two edges this near face each other across one gap; mm."""


class Measured(Struct, frozen=True, kw_only=True):
    """A front's sizes as measured, mm; where one was not measured, as ordered."""

    width: float
    height: float

    @staticmethod
    def of(spec: FrontSpec, *, width: float, height: float) -> "Measured":
        """Give the sizes in hand of a front ordered in this size; mm."""
        across, up = spec.measured.width, spec.measured.height
        return Measured(
            width=width if across is None else sum(across) / 2,
            height=height if up is None else sum(up) / 2,
        )

    @property
    def diagonal(self) -> float:
        """From corner to corner, if it is square; mm."""
        return hypot(self.width, self.height)


def is_measured(spec: FrontSpec) -> bool:
    """Tell whether anything of a front was measured across, up or from corner to corner."""
    return has_size(spec) or spec.measured.diagonals is not None


def has_size(spec: FrontSpec) -> bool:
    """Tell whether a front's width or height was measured."""
    return spec.measured.width is not None or spec.measured.height is not None


def lean_of(diagonals: tuple[float, float], size: Measured) -> float:
    """Give how far a front with these diagonals leans over its longer edge, mm.

    Of a front skewed but else true: the difference of its diagonals times the diagonal over
    twice the shorter side (derived: by the law of cosines).

    >>> round(lean_of((763.8, 761.8), Measured(width=454.0, height=613.0)), 2)
    1.68
    """
    return abs(diagonals[0] - diagonals[1]) * size.diagonal / (2 * min(size.width, size.height))


def take_in_hand(
    fronts: Sequence[PlacedFront], refused: Collection[str] = ()
) -> tuple[PlacedFront, ...]:
    """Give the fronts of a box as they are in hand, with the gaps that they then leave.

    Bottom edges stay, and the hinge edges of doors; other fronts stay about their middle. Those
    `refused` are not taken: another is made in the size that was ordered.
    """
    moves = {
        front.id: _moves(front)
        for front in fronts
        if is_measured(front.spec) and front.id not in refused
    }
    if not moves:
        return tuple(fronts)
    still = (0.0, 0.0, 0.0)
    made: list[PlacedFront] = []
    for front in fronts:
        left, right, top = moves.get(front.id, still)
        gap_left, gap_right = front.gaps.left - left, front.gaps.right - right
        gap_top, gap_bottom = front.gaps.top - top, front.gaps.bottom
        for other in fronts:
            theirs = moves.get(other.id, still)
            beside = _overlap(front.place.y, front.top, other.place.y, other.top)
            if beside and _meet(other.place.x + other.width + front.gaps.left, front.place.x):
                gap_left -= theirs[1]
            if beside and _meet(front.place.x + front.width + front.gaps.right, other.place.x):
                gap_right -= theirs[0]
            stacked = _overlap(
                front.place.x,
                front.place.x + front.width,
                other.place.x,
                other.place.x + other.width,
            )
            if stacked and _meet(other.top + front.gaps.bottom, front.place.y):
                gap_bottom -= theirs[2]
        made.append(
            replace(
                front,
                place=replace(front.place, x=front.place.x - left),
                width=front.width + left + right,
                height=front.height + top,
                gaps=Gaps(left=gap_left, right=gap_right, top=gap_top, bottom=gap_bottom),
            )
        )
    return tuple(made)


def move_fittings(
    fitted: FrontFittings, ordered: PlacedFront, in_hand: PlacedFront
) -> FrontFittings:
    """Give what is drilled into a front in hand, from what was meant for it as ordered.

    Holes by hand stay where the person has stated them; a mirrored one is counted from the right
    edge of the front in hand, one stated from the top from its top edge.
    """
    shift = ordered.place.x - in_hand.place.x
    if shift == 0.0 and (ordered.width, ordered.height) == (in_hand.width, in_hand.height):
        return fitted
    drawer = fitted.drawer
    return replace(
        fitted,
        front=(
            *(moved(fitting, shift) for fitting in fitted.front if not kind_of(fitting).stated),
            *front_by_hand(in_hand),
        ),
        drawer=drawer and replace(drawer, x=drawer.x + shift),
    )


def _moves(front: PlacedFront) -> tuple[float, float, float]:
    """Give how far the left, right and top edges lie further out than ordered; mm."""
    measured = Measured.of(front.spec, width=front.width, height=front.height)
    wider, higher = measured.width - front.width, measured.height - front.height
    if front.kind == "door" and front.hinged == "left":
        return 0.0, wider, higher
    if front.kind == "door" and front.hinged == "right":
        return wider, 0.0, higher
    return wider / 2, wider / 2, higher


def _overlap(low: float, high: float, other_low: float, other_high: float) -> bool:
    return min(high, other_high) - max(low, other_low) > SAME_PLACE


def _meet(one: float, other: float) -> bool:
    return abs(one - other) < SAME_PLACE


OUT_OF_SQUARE = 1.0
"""Two measures of one size, or two diagonals, may differ by this much; mm (common practice, no
source)."""
AIMED_AT = 0.8
"""What is aimed at in a front's sizes; a front may lean by as much unsaid. mm (common practice,
no source)."""
OTHER_BOARD = 0.5
"""A front's thickness may differ from the order by this much unsaid; mm (common practice, no
source)."""

Misfit = Literal["too wide", "too narrow", "too high", "too low"]
"""How a size is off."""


class Limits(Struct, frozen=True, kw_only=True):
    """How far a front may be off, mm, and whether it is held back beyond it: it is then judged as
    `delivered`. `fits`: the other fronts whose size it has."""

    tolerance: float
    delivered: bool = False
    fits: tuple[str, ...] = ()


class Skew(Struct, frozen=True, kw_only=True):
    """Two measures of one size, or the diagonals, that differ by more than a true front's: the
    front leans by `lean` mm, `beyond` what is accepted or not."""

    measured: Literal["width", "height", "diagonals"]
    lean: float
    beyond: bool


class FrontInHand(Struct, frozen=True, kw_only=True):
    """A front in hand, held against its order."""

    front: PlacedFront
    """As it is taken: as measured; as ordered, where it is refused or nobody measured it."""
    tried: PlacedFront
    """As it would hang if it were taken, and the others too."""
    made: Measured
    limits: Limits
    turned: bool
    """Whether it has its size only with width and height exchanged."""
    off: tuple[tuple[Misfit, float], ...]
    """In which ways its size is off by more than is accepted, and by how much; mm."""
    skews: tuple[Skew, ...]
    other_board: bool
    """Whether it came in another thickness than was ordered, beyond what is accepted."""

    @property
    def refused(self) -> bool:
        """Whether it is not taken: another is made."""
        beyond = bool(self.off) or any(skew.beyond for skew in self.skews)
        return self.turned or self.other_board or (self.limits.delivered and beyond)


def judge_in_hand(job: Job, fronts: Sequence[PlacedFront]) -> tuple[FrontInHand, ...]:
    """Hold the fronts of a box in hand against their order, and take those that answer it."""
    tried = take_in_hand(fronts)
    judged = [_judge(job, front, hung) for front, hung in zip(fronts, tried, strict=True)]
    refused = {hand.front.id for hand in judged if hand.refused}
    taken = take_in_hand(fronts, refused)
    return tuple(replace(hand, front=front) for hand, front in zip(judged, taken, strict=True))


def _judge(job: Job, front: PlacedFront, tried: PlacedFront) -> FrontInHand:
    arrival = job.delivery.arrivals.get(front.id) if job.delivery else None
    limits = Limits(
        tolerance=job.tolerance,
        delivered=arrival is not None and arrival.piece.is_measured,
        fits=arrival.fits if arrival else (),
    )
    made = Measured.of(front.spec, width=front.width, height=front.height)
    return FrontInHand(
        front=front,
        tried=tried,
        made=made,
        limits=limits,
        turned=_is_turned(front, made, limits.tolerance),
        off=tuple(_ways_off(front, limits.tolerance)),
        skews=tuple(_find_skews(front.spec, made, limits.tolerance)),
        other_board=arrival is not None and is_other_board(arrival, job.tolerance),
    )


def _is_turned(front: PlacedFront, made: Measured, tolerance: float) -> bool:
    """Tell whether a front is in size, or nearly, only with width and height exchanged."""
    straight = max(abs(made.width - front.width), abs(made.height - front.height))
    turned = max(abs(made.width - front.height), abs(made.height - front.width))
    return any(
        is_beyond(straight, limit) and not is_beyond(turned, limit)
        for limit in (tolerance, max(SAME_SIZE, tolerance))
    )


def _ways_off(front: PlacedFront, tolerance: float) -> Iterator[tuple[Misfit, float]]:
    """Give in which ways a front's size is off by more than is accepted, and by how much; mm."""
    across = front.spec.measured.width or (front.width,)
    up = front.spec.measured.height or (front.height,)
    ways: tuple[tuple[Misfit, float], ...] = (
        ("too wide", max(across) - front.width),
        ("too narrow", front.width - min(across)),
        ("too high", max(up) - front.height),
        ("too low", front.height - min(up)),
    )
    yield from ((way, off) for way, off in ways if off > 0 and is_beyond(off, tolerance))


def _find_skews(spec: FrontSpec, made: Measured, tolerance: float) -> Iterator[Skew]:
    """Find two measures of one size, and two diagonals, that tell of a skewed front."""
    sizes: tuple[tuple[Literal["width", "height"], tuple[float, float] | None], ...] = (
        ("width", spec.measured.width), ("height", spec.measured.height),
    )  # fmt: skip
    for size, both in sizes:
        if both is not None and is_beyond(both[0] - both[1], OUT_OF_SQUARE):
            lean = abs(both[0] - both[1])
            yield Skew(measured=size, lean=lean, beyond=is_beyond(lean, tolerance))
    if spec.measured.diagonals is not None:
        differ = spec.measured.diagonals[0] - spec.measured.diagonals[1]
        lean = lean_of(spec.measured.diagonals, made)
        if is_beyond(lean, AIMED_AT):
            beyond = is_beyond(lean, tolerance) and is_beyond(differ, OUT_OF_SQUARE)
            yield Skew(measured="diagonals", lean=lean, beyond=beyond)


def is_other_board(arrival: Arrival, tolerance: float) -> bool:
    """Tell whether a front came in another thickness, by more than is accepted."""
    made = arrival.piece.thickness
    off = 0.0 if made is None else made - arrival.thickness
    return is_beyond(off, OTHER_BOARD) and is_beyond(off, tolerance)
