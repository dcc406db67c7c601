"""How likely it is that all gaps of a kitchen stay open: kitchens drawn at random, each with boxes,
joints and fronts somewhere within their limits.

Gaps that share a box or a front share what was drawn for it, so that a wide front takes from the
gaps on both its sides. Of every kitchen drawn, the smallest reveal is kept at which none of its
gaps is less than it needs: how the chance falls with the reveal then needs no new draws, and never
rises where the reveal shrinks. Fronts keep to the middle of their places; under a counter nothing
is planed, so those gaps do not count here.
"""

from collections.abc import Sequence

from msgspec import Struct

from jigs.room.beside import NextTo
from jigs.room.budget import Budget

TRIALS = 100_000
SEED = 14
CHUNK = 500
"""Kitchens drawn at a time: so few stay in the processor's cache."""
BLOCK = 16
"""Gaps that are reckoned at a time."""
REVEALS = tuple(4.0 - step / 4 for step in range(13))
"""The gaps between fronts for which the chance is told, 4 to 1; mm."""
SHARES: dict[NextTo, float] = {
    "front": 1.0, "box": 0.5, "panel": 0.5, "filler": 0.5, "appliance": 0.5,
}  # fmt: skip
"""How much a gap shrinks with the gap between two fronts: at one edge it is half of that."""


class Chance(Struct, frozen=True, kw_only=True):
    """The chance that all gaps stay open, from 0 to 1."""

    planned: float
    """As the kitchen is planned."""
    curve: tuple[tuple[float, float], ...]
    """By the gap between two fronts, mm."""
    gaps: int
    """How many gaps it counts."""
    unknown: int = 0
    """How many it leaves out because nobody knows what they need."""
    trials: int
    seed: int


def chance_of(
    budgets: Sequence[Budget], reveal: float, trials: int = TRIALS, seed: int = SEED
) -> Chance | None:
    """Draw kitchens, and give the chance that all gaps stay open; None where there is no gap whose
    need is known. `reveal`: the gap between two fronts as planned, mm."""
    counted = [
        (budget, budget.least.width)
        for budget in budgets
        if budget.least.width is not None and budget.gap.beside != "counter"
    ]
    if not counted:
        return None
    # Imported here: the library costs more than the rest of a short command.
    import numpy

    sources: dict[str, int] = {}
    for budget, _ in counted:
        for cause in budget.causes:
            sources.setdefault(cause.source, len(sources))
    # Neighbours share most of their sources: some gaps at a time are one small product of matrices.
    blocks = []
    for first in range(0, len(counted), BLOCK):
        block = [budget.causes for budget, _ in counted[first : first + BLOCK]]
        own = list(dict.fromkeys(cause.source for causes in block for cause in causes))
        spreads = numpy.zeros((len(block), len(own)), dtype=numpy.float32)
        for row, causes in enumerate(block):
            for cause in causes:
                spreads[row, own.index(cause.source)] += 2 * cause.spread
        places = numpy.array([sources[source] for source in own], dtype=numpy.intp)
        blocks.append((slice(first, first + len(block)), places, spreads))
    # Drawn from 0 to 1: a spread counts from where all of them are at one end.
    spare = numpy.array(
        [b.left.middle - sum(c.spread for c in b.causes) - least for b, least in counted],
        dtype=numpy.float32,
    )
    shares = numpy.array([SHARES.get(b.gap.beside, 0.0) for b, _ in counted], dtype=numpy.float32)
    moving = shares > 0
    random = numpy.random.Generator(numpy.random.SFC64(seed))
    needed = numpy.empty(trials, dtype=numpy.float32)
    for start in range(0, trials, CHUNK):
        count = min(CHUNK, trials - start)
        drawn = random.random((len(sources), count), dtype=numpy.float32)
        left = numpy.empty((len(counted), count), dtype=numpy.float32)
        for rows, places, spreads in blocks:
            left[rows] = spreads @ drawn[places]
        left += spare[:, None]
        short = numpy.zeros(count, dtype=numpy.float32)
        if moving.any():
            short = (-left[moving] / shares[moving, None]).max(axis=0)
        short[(left[~moving] < 0).any(axis=0)] = numpy.inf
        needed[start : start + count] = reveal + short

    def share(at: float) -> float:
        return float(numpy.count_nonzero(needed <= at + 1e-6) / trials)

    return Chance(
        planned=share(reveal),
        curve=tuple((at, share(at)) for at in REVEALS),
        gaps=len(counted),
        unknown=sum(budget.least.width is None for budget in budgets),
        trials=trials,
        seed=seed,
    )
