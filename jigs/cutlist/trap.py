"""The thickness trap: a board is seldom as thick as it is called.

Hardwood plywood sold as 3/4 is usually 18.0 to 18.6 (common practice, no source). Bottoms that
are cut for the name stand between sides of the true thickness, and the box comes out narrower,
often by a whole reveal. The golden box, 457.2 of 18.3 board:

>>> trap = Trap(box="B1", width=457.2, true=18.3, nominal=19.05, guessed=True)
>>> round(trap.bottom, 4), round(trap.comes_to, 4), round(trap.lost, 4)
(419.1, 455.7, 1.5)
"""

from collections.abc import Collection, Mapping
from dataclasses import dataclass

from jigs.given.job import Job
from jigs.ground.geometry import SLACK
from jigs.ground.lengths import Unit

TRADE_SIZES: Mapping[Unit, tuple[float, ...]] = {
    "in": (6.35, 9.525, 12.7, 15.875, 19.05, 25.4),
    "mm": (6.0, 9.0, 12.0, 15.0, 16.0, 18.0, 19.0, 22.0, 25.0),
}
"""What boards are sold as; mm (common practice, no source)."""
NEAR = 1.2
"""A board is taken for a trade size no further off than this; mm (common practice)."""

WHOLE = 0.9
"""From this part of a reveal on, a difference is as good as a whole one (common practice)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Trap:
    """What a box would come to with its bottom cut for the board's name; mm. `guessed`: the job
    does not say what the board was sold as. `reveal`: the job's side reveal."""

    box: str
    width: float
    true: float
    nominal: float
    guessed: bool
    reveal: float = 0.0

    @property
    def bottom(self) -> float:
        """The bottom cut for the name."""
        return self.width - 2 * self.nominal

    @property
    def comes_to(self) -> float:
        """The width of the box made with it."""
        return self.bottom + 2 * self.true

    @property
    def lost(self) -> float:
        """By how much the box is too narrow; below 0 too wide."""
        return self.width - self.comes_to

    @property
    def takes_a_reveal(self) -> bool:
        """Whether the difference is as good as a whole side reveal."""
        return self.reveal > 0 and abs(self.lost) >= WHOLE * self.reveal


def guess_trade_size(true: float, units: Unit) -> float | None:
    """Give the nearest size that boards are sold as, None where none is near; mm."""
    nearest = min(TRADE_SIZES[units], key=lambda size: abs(size - true))
    return nearest if abs(nearest - true) <= NEAR + SLACK else None


def find_trap(job: Job, boxes: Collection[str]) -> Trap | None:
    """Give the trap on the first of these boxes; None without a box or a trade size."""
    box = next((box for box in job.boxes if box.id in boxes), None)
    nominal = job.build.sold_as
    guessed = nominal is None
    if nominal is None:
        nominal = guess_trade_size(job.material.side, job.units)
    if box is None or nominal is None:
        return None
    return Trap(
        box=box.id,
        width=box.width,
        true=job.material.side,
        nominal=nominal,
        guessed=guessed,
        reveal=job.reveal.side,
    )
