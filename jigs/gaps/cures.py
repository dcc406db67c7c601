"""The cheapest cure of a gap that may close: each is tried, the cheap ones first, till one makes it
hold. A wider gap always does, and costs the looks alone; it comes last because it is the only one
that is seen.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from math import ceil

from jigs.gaps.budget import Budget, Cause, Cure, verdict_of, weigh
from jigs.gaps.needs import is_hinge_to_hinge, least_hinged_elsewhere
from jigs.gaps.wood import BOARD_MOVES
from jigs.given.job import Job
from jigs.ground.geometry import SLACK

BEST = 0.4
"""How true a good shop makes fronts, +-; mm (common practice, no source)."""
STEP = 0.1
"""Gaps are made wider in such steps; mm."""


def with_cure(budget: Budget, job: Job) -> Budget:
    """Give a budget with what would make its gap hold."""
    if budget.verdict in ("holds", "unknown"):
        return budget
    return replace(budget, cure=next(_cures(budget, job)))


def _cures(budget: Budget, job: Job) -> Iterator[Cure]:
    """Give all cures that make a gap hold, the cheapest first."""
    gap, causes, least = budget.gap, budget.causes, budget.least.width
    assert least is not None, "a gap of unknown need has no cure"

    def holds(changed: Sequence[Cause], need: float = least) -> bool:
        return verdict_of(weigh(gap.nominal, changed), need) == "holds"

    if holds([cause for cause in causes if cause.name != "paint-film"]):
        yield Cure("sizes-after")
    elsewhere = least_hinged_elsewhere(gap) if is_hinge_to_hinge(gap) else None
    if elsewhere is not None and holds(causes, elsewhere):
        yield Cure("other-hand")
    if any(cause.name == "front-size" for cause in causes):
        if job.tolerance > BEST + SLACK and holds([_closer(cause, job) for cause in causes]):
            yield Cure("closer", BEST)
        one_piece = [_of_board(cause, budget) for cause in causes]
        if job.material.front_kind != "mdf" and holds(one_piece):
            yield Cure("board")
    missing = ceil(round((least - budget.left.low) / STEP, 6)) * STEP
    ordered = any(cause.name == "front-size" for cause in causes)
    yield Cure("wider" if ordered else "plane", missing)


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
