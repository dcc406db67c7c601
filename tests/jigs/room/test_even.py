"""Even gaps: the smallest spare as large as can be, with the least sum of moves."""

import random
from collections.abc import Sequence
from itertools import combinations, pairwise

import numpy as np
import pytest

from jigs.room.even import Spare, settle

EPS = 1e-5


def least_spare(moves: dict[str, float], gaps: list[Spare]) -> float:
    def at(name: str | None) -> float:
        return 0.0 if name is None else moves[name]

    return min(spare + at(right) - at(left) for left, right, spare in gaps)


def best_by_paths(reach: dict[str, float], gaps: list[Spare]) -> float:
    """Give the greatest smallest spare by going along every chain of gaps: what the chain has in
    sum, with the reaches at its ends, over the number of its gaps (weak duality; brute force)."""
    found: list[float] = []

    def walk(at: str | None, room: float, count: int) -> None:
        for left, right, spare in gaps:
            if left == at:
                if right is None:
                    found.append((room + spare) / (count + 1))
                else:
                    found.append((room + spare + reach[right]) / (count + 1))
                    walk(right, room + spare, count + 1)

    walk(None, 0.0, 0)
    for name, far in reach.items():
        walk(name, far, 0)
    return min(found)


def made_up(draws: random.Random) -> tuple[dict[str, float], list[Spare]]:
    """Give a wall of up to seven fronts: a row, beside some of them a stack of two."""
    names = [f"F{at}" for at in range(draws.randint(1, 7))]
    reach = {name: draws.choice([0.0, 0.5, 2.0]) for name in names}
    columns: list[list[str]] = []
    for name in names:
        if columns and len(columns[-1]) < 2 and draws.random() < 0.4:
            columns[-1].append(name)
        else:
            columns.append([name])
    ends: list[Sequence[str | None]] = [[None], *columns, [None]]
    gaps = [
        (left, right, round(draws.uniform(-2, 3), 2))
        for before, behind in pairwise(ends)
        for left in before
        for right in behind
    ]
    return reach, gaps


@pytest.mark.parametrize("seed", range(60))
def test_no_other_places_are_better(seed: int) -> None:
    """Nothing makes the smallest spare larger; and no set of fronts, moved together either way,
    makes the sum less without a smaller spare. As sum and limits are of single places and of
    differences alone, what no such set betters is the least of all (Murota, Discrete Convex
    Analysis, 2003, from memory)."""
    reach, gaps = made_up(random.Random(seed))
    spare, moves = settle(reach, gaps)
    assert all(abs(moves[name]) <= far + EPS for name, far in reach.items())
    assert least_spare(moves, gaps) == pytest.approx(spare, abs=EPS)
    assert spare == pytest.approx(best_by_paths(reach, gaps), abs=EPS)
    total = sum(map(abs, moves.values()))
    for size in range(1, len(moves) + 1):
        for some in combinations(moves, size):
            for step in (1e-3, -1e-3):
                tried = {n: at + (step if n in some else 0.0) for n, at in moves.items()}
                if all(abs(tried[n]) <= reach[n] + EPS for n in some) and (
                    least_spare(tried, gaps) >= spare - EPS
                ):
                    assert sum(map(abs, tried.values())) >= total - EPS


def test_a_row_is_not_pushed_further_than_it_needs() -> None:
    """Three gaps of 0, 3, 3 between fixed ends become 2, 2, 2 where the fronts reach so far: the
    first moves 2 and the second 1; reaching 0.5 alone they come to 0.5 at the least."""
    row: list[Spare] = [(None, "A", 0.0), ("A", "B", 3.0), ("B", None, 3.0)]
    assert settle({"A": 2.0, "B": 2.0}, row) == (2.0, {"A": 2.0, "B": 1.0})
    assert settle({"A": 0.5, "B": 0.5}, row) == (0.5, {"A": 0.5, "B": 0.0})


def test_one_front_moves_rather_than_three() -> None:
    """A front whose neighbours stand in a stack gives way to all of them."""
    row: list[Spare] = [("A", name, 0.0) for name in ("B", "C", "D")]
    spare, moves = settle({"A": 1.0, "B": 0.0, "C": 0.0, "D": 0.0}, row)
    assert (spare, moves["A"]) == (1.0, -1.0)


def solved(reach: dict[str, float], gaps: list[Spare]) -> tuple[float, float]:
    """Give the greatest smallest spare, then the least sum of moves that has it, by a general
    solver of linear programmes: of each front how far right and how far left, and the spare.

    It is loaded here: by each worker it would be, and that takes longer than the tests of it."""
    from scipy.optimize import linprog

    names = list(reach)
    rows = np.zeros((len(gaps), 2 * len(names) + 1))
    for row, (left, right, _) in zip(rows, gaps, strict=True):
        for name, sign in ((left, 1.0), (right, -1.0)):
            if name is not None:
                at = names.index(name)
                row[at], row[len(names) + at] = sign, -sign
        row[-1] = 1.0
    own = np.array([spare for _, _, spare in gaps])
    far = [(0.0, reach[name]) for name in names] * 2
    cost = np.zeros(2 * len(names) + 1)
    cost[-1] = -1.0
    first = linprog(cost, A_ub=rows, b_ub=own, bounds=[*far, (None, None)], method="highs")
    assert first.success, first.message
    spare = float(first.x[-1])
    then = linprog(
        1.0 + cost, A_ub=rows, b_ub=own, method="highs", bounds=[*far, (spare - 1e-9,) * 2]
    )
    assert then.success, then.message
    return spare, float(then.fun)


def same_as_solver(seed: int) -> None:
    reach, gaps = made_up(random.Random(1000 + seed))
    spare, moves = settle(reach, gaps)
    wanted, total = solved(reach, gaps)
    assert spare == pytest.approx(wanted, abs=EPS)
    assert sum(map(abs, moves.values())) == pytest.approx(total, abs=EPS)


@pytest.mark.parametrize("seed", range(40))
def test_a_general_solver_finds_the_same(seed: int) -> None:
    """scipy's linear programming (HiGHS), on made-up walls."""
    same_as_solver(seed)


@pytest.mark.slow
@pytest.mark.parametrize("seed", range(40, 200))
def test_a_general_solver_finds_the_same_on_many_walls(seed: int) -> None:
    """The same, at length."""
    same_as_solver(seed)
