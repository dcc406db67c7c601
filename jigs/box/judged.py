"""The front in hand held against its order: in which ways it is off, and whether it is taken.

One whose sizes stand in the job is taken as it is: the person has decided. One that came with a
delivered list is not taken beyond the tolerance, nor is one that was made with width and height
exchanged, or of another board.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Literal

from jigs.box.fronts import SAME_SIZE, PlacedFront
from jigs.box.inhand import Measured, lean_of, take_in_hand
from jigs.given.delivery import Arrival
from jigs.given.job import FrontSpec, Job
from jigs.ground.limits import is_beyond

OUT_OF_SQUARE = 1.0
"""Two measures of one size, or two diagonals, may differ by this much; mm (common practice, no
source)."""
AIMED_AT = 0.8
"""What is aimed at in a front's sizes; a front may lean by as much unsaid. mm (common practice,
no source)."""
BOARD = 0.5
"""A front's thickness may differ from the order by this much unsaid; mm (common practice, no
source)."""

Way = Literal["too wide", "too narrow", "too high", "too low"]
"""How a size is off."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Limits:
    """How far a front may be off, mm, and whether it is held back beyond it: it is then judged as
    `delivered`. `fits`: the other fronts whose size it has."""

    tolerance: float
    delivered: bool = False
    fits: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Skew:
    """Two measures of one size, or the diagonals, that differ by more than a true front's: the
    front leans by `lean` mm, `beyond` what is accepted or not."""

    measured: Literal["width", "height", "diagonals"]
    lean: float
    beyond: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class FrontInHand:
    """A front in hand, held against its order."""

    front: PlacedFront
    """As it is taken: as measured; as ordered, where it is refused or nobody measured it."""
    tried: PlacedFront
    """As it would hang if it were taken, and the others too."""
    made: Measured
    limits: Limits
    turned: bool
    """Whether it has its size only with width and height exchanged."""
    off: tuple[tuple[Way, float], ...]
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


def _ways_off(front: PlacedFront, tolerance: float) -> Iterator[tuple[Way, float]]:
    """Give in which ways a front's size is off by more than is accepted, and by how much; mm."""
    across = front.spec.measured.width or (front.width,)
    up = front.spec.measured.height or (front.height,)
    ways: tuple[tuple[Way, float], ...] = (
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
    return is_beyond(off, BOARD) and is_beyond(off, tolerance)
