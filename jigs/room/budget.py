"""The budget of a gap: the least it needs, what boxes, joints, fronts, paint and seasons may take
from it, what is left, and the cheapest cure where that is not enough.

    gap = planned + 1/2 (boxes) + joint - 1/2 (fronts) - film - movement

Each front stands in the middle of its own place, so that an error of its box moves it in part, and
its own error goes to both edges alike. What is uncertain by itself is added as the root of the sum
of squares: parts that are spread evenly within their limits then keep within it in `CONFIDENCE` of
all cases. Reckoned for the dampest season, when gaps are least. All of it derived; the tolerances
are common practice.

What a gap needs goes by what stands at it: two hinge edges want both their least reveals, a free
edge its swing, a drawer room to pass, a counter its distance; what never moves needs none. Common
practice, but for the swing (`jigs.box.frontgaps`). A gap out of square is told among what takes
from it.

Of the cures each is tried, the cheap ones first, till one makes the gap hold. A wider gap always
does, and costs the looks alone; it comes last because it is the only one that is seen. Where it
would be wider than eyes forgive, whichever other cure leaves least of that is named with it.

>>> pair = [Cause("box-size", f"box {n}", 0.0, 0.5 / 2) for n in (1, 2)]
>>> pair += [Cause("front-size", f"front {n}", 0.0, 0.8 / 2) for n in (1, 2)]
>>> pair += [Cause("out-of-square", "square", 0.0, 0.4), Cause("paint-film", "film", -0.25, 0.0),
...          Cause("seasons", "wood", -0.8, 0.0)]
>>> [(round(left.low, 1), round(left.high, 1), verdict_of(left, 0.9)) for gap in (3.2, 2.4, 1.6)
...  for left in [weigh(gap, pair)]]
[(1.4, 2.9, 'holds'), (0.6, 2.1, 'marginal'), (-0.2, 1.3, 'rubs')]
"""

from collections.abc import Iterable, Iterator, Sequence
from math import ceil, erf, hypot, sqrt
from typing import Literal

from msgspec import Struct
from msgspec.structs import replace

from jigs.box.frontgaps import LEAST_DRAWER, UNDER_COUNTER, least_at_free_edge
from jigs.box.parts import Front
from jigs.given.job import Job
from jigs.ground.geometry import SLACK, FaceEdge
from jigs.room.beside import EDGES, Meeting
from jigs.room.wood import BOARD_MOVES


class Least(Struct, frozen=True, kw_only=True):
    """The least gap that is needed, mm: None where only the leaflet knows it. `open`: it rests on
    a hinge's least reveal that nobody has looked up."""

    width: float | None
    open: bool = False


def least_of(gap: Meeting) -> Least:
    """Give the least that a gap needs."""
    needs = [_need(front, edge) for front, edge in gap.sides]
    if gap.beside == "counter":
        needs.append(Least(width=UNDER_COUNTER))
    widths = [need.width for need in needs]
    known = [width for width in widths if width is not None]
    if len(known) < len(widths):
        return Least(width=None)
    if is_hinge_to_hinge(gap):
        return Least(width=sum(known), open=any(need.open for need in needs))
    width = max(known)
    return Least(width=width, open=any(n.open for n in needs if n.width == width))


def is_hinge_to_hinge(gap: Meeting) -> bool:
    """Tell whether two doors are hinged at a gap."""
    return gap.other is not None and all(_is_hinge_edge(*side) for side in gap.sides)


def least_hinged_elsewhere(gap: Meeting) -> float | None:
    """Give the least that a gap between two hinge edges would need, were one of the doors hinged at
    its other edge; None where only the leaflet knows; mm."""
    needs = [_need(front, edge).width for front, edge in gap.sides]
    free = [least_at_free_edge(front) for front, _ in gap.sides]
    known = [need for need in needs if need is not None]
    return max(min(known), *free) if len(known) == len(needs) else None


def _is_hinge_edge(front: Front, edge: FaceEdge) -> bool:
    return front.kind == "door" and front.hinged == edge and front.place.overlay != "inset"


def _need(front: Front, edge: FaceEdge) -> Least:
    """Give what a front needs at one of its edges."""
    if front.kind == "false-front":
        return Least(width=0.0)
    if _is_hinge_edge(front, edge):
        least = front.least_reveal
        return Least(width=None) if least is None else Least(width=least.width, open=least.open)
    if front.kind == "door" and EDGES[edge] == "x":
        return Least(width=least_at_free_edge(front))
    return Least(width=LEAST_DRAWER)


CONFIDENCE = erf(sqrt(3 / 2))
"""Of a sum of many parts, each spread evenly within its limits, so much lies within the root of the
sum of the squares of these: 1.73 standard deviations of a normal distribution, 0.917 (derived)."""
CauseName = Literal[
    "box-size", "box-as-built", "joint", "front-size", "front-as-measured", "out-of-square",
    "paint-film", "seasons",
]  # fmt: skip
Verdict = Literal["holds", "marginal", "rubs", "unknown"]


class Cause(Struct, frozen=True):
    """What moves one gap; mm."""

    name: CauseName
    source: str
    """What it comes from: gaps that share a source move together."""
    shift: float
    """By how much it surely widens the gap, below 0 where it narrows it."""
    spread: float
    """By how much it may widen or narrow it besides, for the source's full deviation."""


class Left(Struct, frozen=True, kw_only=True):
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


class Cure(Struct, frozen=True):
    """What would make a gap hold, the cheapest that does: fronts sized after their finish, a door
    hinged at its other edge, fronts made to a closer tolerance, one-piece fronts of MDF, a wider
    gap; where its fronts are in hand, one planed."""

    kind: CureKind
    more: float = 0.0
    """How much wider the gap is to be besides; mm."""


class Budget(Struct, frozen=True, kw_only=True):
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


BEST = 0.4
"""How true a good shop makes fronts, +-; mm (common practice, no source)."""
SEEN = 1.6
"""A gap that is wider than planned by more is seen as wide; mm (our own choice)."""
STEP = 0.1
"""Gaps are made wider in such steps; mm."""


def with_cure(budget: Budget, job: Job) -> Budget:
    """Give a budget with what would make its gap hold."""
    if budget.verdict in ("holds", "unknown"):
        return budget
    return replace(budget, cure=_choose(budget, job))


def _choose(budget: Budget, job: Job) -> Cure:
    missing = _missing(budget, budget.causes)
    ordered = _is_ordered(budget, job)
    tried = [(kind, _missing(budget, *changed)) for kind, *changed in _changes(budget, job)]
    enough = next((Cure(kind) for kind, more in tried if more <= 0), None)
    if enough is not None:
        return enough
    if ordered and missing > SEEN and tried:
        kind, more = min(tried, key=lambda each: each[1])
        if more < missing:
            return Cure(kind, more)
    return Cure("wider" if ordered else "plane", missing)


def _is_ordered(budget: Budget, job: Job) -> bool:
    """Tell whether a front of a gap is still to be ordered."""
    return not job.gaps.fronts_in_hand and any(
        cause.name == "front-size" for cause in budget.causes
    )


def _missing(budget: Budget, causes: Sequence[Cause], least: float | None = None) -> float:
    """Give by how much a gap would have to be wider, with these causes and this need; mm."""
    need = budget.least.width if least is None else least
    assert need is not None, "a gap of unknown need has no cure"
    short = need - weigh(budget.gap.nominal, causes).low
    return max(ceil(round(short / STEP, 6)) * STEP, 0.0)


_Change = tuple[CureKind, Sequence[Cause]] | tuple[CureKind, Sequence[Cause], float]
"""A cure, the causes that are left with it, and the need if it changes that too."""


def _changes(budget: Budget, job: Job) -> Iterator[_Change]:
    """Give what each cure but a wider gap makes of a gap, the cheapest first."""
    gap, causes = budget.gap, budget.causes
    if not job.gaps.fronts_in_hand and any(cause.name == "paint-film" for cause in causes):
        yield "sizes-after", [cause for cause in causes if cause.name != "paint-film"]
    elsewhere = least_hinged_elsewhere(gap) if is_hinge_to_hinge(gap) else None
    if elsewhere is not None:
        yield "other-hand", causes, elsewhere
    if _is_ordered(budget, job):
        if job.tolerance > BEST + SLACK:
            yield "closer", [_closer(cause, job) for cause in causes]
        wood = any(cause.name == "seasons" for cause in causes)
        if job.moves_as != "mdf" and wood:
            yield "board", [_of_board(cause, budget) for cause in causes]


def _closer(cause: Cause, job: Job) -> Cause:
    if cause.name != "front-size":
        return cause
    return replace(cause, spread=cause.spread * BEST / job.tolerance)


def _of_board(cause: Cause, budget: Budget) -> Cause:
    """Give what a front of MDF does in place of one of wood."""
    if cause.name != "seasons":
        return cause
    size = max(
        front.width if budget.gap.axis == "x" else front.height for front, _ in budget.gap.sides
    )
    low, high = (size * part / 2 for part in BOARD_MOVES)
    return replace(cause, shift=-(low + high) / 2, spread=-(high - low) / 2)
