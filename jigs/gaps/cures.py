"""The cheapest cure of a gap that may close: each is tried, the cheap ones first, till one makes it
hold. A wider gap always does, and costs the looks alone; it comes last because it is the only one
that is seen. Where it would be wider than eyes forgive, whichever other cure leaves least of that
is named with it.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from math import ceil

from jigs.gaps.budget import Budget, Cause, Cure, CureKind, weigh
from jigs.gaps.needs import is_hinge_to_hinge, least_hinged_elsewhere
from jigs.gaps.wood import BOARD_MOVES, moves_as
from jigs.given.job import Job
from jigs.ground.geometry import SLACK

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
        if moves_as(job) != "mdf" and wood:
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
