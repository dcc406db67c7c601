"""The budget of a gap: what boxes, joints, fronts, paint and seasons may take from it, what is
left, and whether that is enough.

    gap = planned + 1/2 (boxes) + joint - 1/2 (fronts) - film - movement

Each front stands in the middle of its own place, so that an error of its box moves it in part, and
its own error goes to both edges alike. What is uncertain by itself is added as the root of the sum
of squares: parts that are spread evenly within their limits then keep within it in `CONFIDENCE` of
all cases. Reckoned for the dampest season, when gaps are least. All of it derived; the tolerances
are common practice.

>>> pair = [Cause("box-size", f"box {n}", 0.0, 0.5 / 2) for n in (1, 2)]
>>> pair += [Cause("front-size", f"front {n}", 0.0, 0.8 / 2) for n in (1, 2)]
>>> pair += [Cause("out-of-square", "square", 0.0, 0.4), Cause("paint-film", "film", -0.25, 0.0),
...          Cause("seasons", "wood", -0.8, 0.0)]
>>> [(round(left.low, 1), round(left.high, 1), verdict_of(left, 0.9)) for gap in (3.2, 2.4, 1.6)
...  for left in [weigh(gap, pair)]]
[(1.4, 2.9, 'holds'), (0.6, 2.1, 'marginal'), (-0.2, 1.3, 'rubs')]
"""

from collections.abc import Iterable
from dataclasses import dataclass
from math import erf, hypot, sqrt
from typing import Literal

from jigs.gaps.beside import Meeting
from jigs.gaps.needs import Least
from jigs.ground.geometry import SLACK

CONFIDENCE = erf(sqrt(3 / 2))
"""Of a sum of many parts, each spread evenly within its limits, so much lies within the root of the
sum of the squares of these: 1.73 standard deviations of a normal distribution, 0.917 (derived)."""
CauseName = Literal[
    "box-size", "box-as-built", "joint", "front-size", "front-as-measured", "out-of-square",
    "paint-film", "seasons",
]  # fmt: skip
Verdict = Literal["holds", "marginal", "rubs", "unknown"]


@dataclass(frozen=True, slots=True)
class Cause:
    """What moves one gap; mm."""

    name: CauseName
    source: str
    """What it comes from: gaps that share a source move together."""
    shift: float
    """By how much it surely widens the gap, below 0 where it narrows it."""
    spread: float
    """By how much it may widen or narrow it besides, for the source's full deviation."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Left:
    """What a gap comes to; mm."""

    middle: float
    low: float
    """The least, and so `high` the most, with `CONFIDENCE`."""
    high: float
    worst: float
    """The least if all goes against it at once."""
    widest: float
    """The most if all goes for it at once."""


def weigh(planned: float, causes: Iterable[Cause]) -> Left:
    """Give what a gap as planned (mm) comes to with its causes."""
    causes = tuple(causes)
    middle = planned + sum(cause.shift for cause in causes)
    likely, most = hypot(*(c.spread for c in causes)), sum(abs(c.spread) for c in causes)
    return Left(
        middle=middle, low=middle - likely, high=middle + likely,
        worst=middle - most, widest=middle + most,
    )  # fmt: skip


def verdict_of(left: Left, least: float | None) -> Verdict:
    """Judge a gap by the least it needs (mm), None where only a leaflet knows that."""
    if least is None:
        return "unknown"
    if left.low >= least - SLACK:
        return "holds"
    return "marginal" if left.middle >= least - SLACK else "rubs"


CureKind = Literal["sizes-after", "other-hand", "closer", "board", "wider", "plane"]


@dataclass(frozen=True, slots=True)
class Cure:
    """What would make a gap hold, the cheapest that does: fronts sized after their finish, a door
    hinged at its other edge, fronts made to a closer tolerance, one-piece fronts of MDF, a wider
    gap; where its fronts are in hand, one planed."""

    kind: CureKind
    more: float = 0.0
    """How much wider the gap is to be besides; mm."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Budget:
    """A gap with all that bears on it."""

    gap: Meeting
    least: Least
    causes: tuple[Cause, ...]
    left: Left
    verdict: Verdict
    adjust: float
    """How far the adjusters can move the gap's two sides, together; mm."""
    dry: float | None = None
    """What it likely comes to in the driest season; None where nobody says how dry it becomes;
    mm."""
    cure: Cure | None = None
    """None where it holds, or where only a leaflet knows what it needs."""

    @property
    def spare(self) -> float | None:
        """What is left at the least, less what is needed; below 0 where it is not enough; mm."""
        return None if self.least.width is None else self.left.low - self.least.width

    @property
    def parts(self) -> tuple[tuple[CauseName, float], ...]:
        """What each kind of cause may take from the gap, the most first; mm."""
        taken: dict[CauseName, float] = {}
        for cause in self.causes:
            takes = abs(cause.spread) - cause.shift
            taken[cause.name] = taken.get(cause.name, 0.0) + takes
        found = ((name, max(mm, 0.0)) for name, mm in taken.items())
        return tuple(sorted(((n, mm) for n, mm in found if mm > SLACK), key=lambda part: -part[1]))
