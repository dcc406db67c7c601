"""The chance that a kitchen closes, against what can be reckoned by hand and drawn otherwise."""

import random
from math import erf, hypot, sqrt

import pytest
from msgspec.structs import replace

from jigs.given.build import GapSpec
from jigs.room.budget import Budget, Cause, Least, weigh
from jigs.room.chance import CHUNK, REVEALS, chance_of
from jigs.room.reckoning import GapBudgets
from tests.jigs.room.test_reckoning import EXACT, budgets, two_doors

FOUND: GapBudgets = budgets(two_doors("left", "left", gaps=GapSpec(exact=EXACT)))


def one_gap(*causes: Cause, planned: float = 3.2, least: float = 1.0) -> Budget:
    """Give the one gap between two fronts with these causes."""
    budget = next(each for each in FOUND.budgets if each.gap.beside == "front")
    gap = replace(budget.gap, nominal=planned)
    return replace(
        budget, gap=gap, causes=causes, left=weigh(planned, causes), least=Least(width=least)
    )


def test_a_gap_with_one_even_cause() -> None:
    """A gap of 3.2 that wants 3.0, +-0.8 evenly, stays open in (0.8 + 0.2) / 1.6 of all kitchens;
    100,000 draws, standard error 0.0015."""
    found = chance_of([one_gap(Cause("front-size", "f", 0.0, 0.8), least=3.0)], 3.2)
    assert found is not None
    assert found.planned == pytest.approx((0.8 + 0.2) / 1.6, abs=0.006)
    assert dict(found.curve)[4.0] == 1.0
    assert dict(found.curve)[3.0] == pytest.approx(0.5, abs=0.006)
    assert dict(found.curve)[2.0] == 0.0


def test_the_sum_of_many_causes_is_normal() -> None:
    """Twelve even causes +-0.5 have the deviation 1 (0.5 / sqrt(3) each): the chance is that of a
    normal distribution (math.erf)."""
    causes = [Cause("front-size", f"f{n}", 0.0, 0.5) for n in range(12)]
    assert hypot(*(0.5 / sqrt(3) for _ in causes)) == pytest.approx(1.0)
    for spare in (0.0, 0.5, 1.0, 2.0):
        found = chance_of([one_gap(*causes, planned=3.2, least=3.2 - spare)], 3.2)
        assert found is not None
        assert found.planned == pytest.approx((1 + erf(spare / sqrt(2))) / 2, abs=0.006)


def test_gaps_that_share_a_front_fall_together() -> None:
    """One cause in two gaps is drawn once: the chance of both is that of one; with two causes it
    is its square."""
    one, other = Cause("front-size", "f", 0.0, 0.8), Cause("front-size", "g", 0.0, 0.8)
    alone = chance_of([one_gap(one, least=3.0)], 3.2)
    shared = chance_of([one_gap(one, least=3.0)] * 2, 3.2)
    apart = chance_of([one_gap(one, least=3.0), one_gap(other, least=3.0)], 3.2)
    assert alone is not None
    assert shared is not None
    assert apart is not None
    assert shared.planned == alone.planned
    assert apart.planned == pytest.approx((1.0 / 1.6) ** 2, abs=0.006)


def test_a_row_against_the_standard_librarys_own_draws() -> None:
    """The same row, drawn one by one with random.uniform."""
    rows = [each for each in FOUND.budgets if each.gap.beside != "counter"]
    tight = [
        replace(each, least=Least(width=each.left.middle - 0.3 + at / 10))
        for at, each in enumerate(rows * 3)
    ]
    found = chance_of(tight, 3.2)
    assert found is not None
    draws = random.Random(14)
    sources = sorted({cause.source for each in tight for cause in each.causes})
    closed = 0
    for _ in range(20_000):
        drawn = {source: draws.uniform(-1, 1) for source in sources}
        closed += all(
            each.left.middle + sum(c.spread * drawn[c.source] for c in each.causes)
            >= (each.least.width or 0.0)
            for each in tight
        )
    assert found.planned == pytest.approx(closed / 20_000, abs=0.015)


def test_the_same_seed_gives_the_same_and_it_never_rises_as_gaps_shrink() -> None:
    """Whatever the number of kitchens, also one that fills no chunk."""
    found = chance_of(FOUND.budgets, 3.2, trials=CHUNK + 7)
    assert found == chance_of(FOUND.budgets, 3.2, trials=CHUNK + 7)
    assert found is not None
    shares = [share for _, share in found.curve]
    assert [at for at, _ in found.curve] == list(REVEALS) == sorted(REVEALS, reverse=True)
    assert shares == sorted(shares, reverse=True)


def test_no_gap_no_chance() -> None:
    """Counters alone are not counted."""
    assert chance_of([each for each in FOUND.budgets if each.gap.beside == "counter"], 3.2) is None
