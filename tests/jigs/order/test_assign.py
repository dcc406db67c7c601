"""The best assignment, against trying out every one."""

from itertools import permutations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from jigs.order import assign as module
from jigs.order.assign import assign

small = st.integers(0, 5)
tables = st.integers(1, 5).flatmap(
    lambda n: st.lists(
        st.lists(st.one_of(st.none(), st.integers(0, 20)), min_size=n, max_size=n),
        min_size=n,
        max_size=n,
    )
)


def best(table: list[list[int | None]]) -> tuple[int, int]:
    """Try every order: the most that can be placed, and the least that they then cost."""
    n = len(table)
    found = []
    for order in permutations(range(n)):
        costs = [table[i][order[i]] for i in range(n)]
        taken = [cost for cost in costs if cost is not None]
        found.append((-len(taken), sum(taken)))
    return min(found)


@given(tables)
@settings(max_examples=75)
def test_nothing_is_better(table: list[list[int | None]]) -> None:
    """No other assignment places more, or as many for less."""
    check_best(table)


@pytest.mark.slow
@given(tables)
@settings(max_examples=150)
def test_of_many_nothing_is_better(table: list[list[int | None]]) -> None:
    """The same, at length."""
    check_best(table)


def check_best(table: list[list[int | None]]) -> None:
    """Assign, and try every other order."""
    costs = {
        (i, j): float(cost)
        for i, row in enumerate(table)
        for j, cost in enumerate(row)
        if cost is not None
    }
    taken = assign([1] * len(table), [1] * len(table), costs)
    most, least = best(table)
    assert sum(taken.values()) == -most
    assert sum(costs[pair] for pair in taken) == least
    assert len({i for i, _ in taken}) == len({j for _, j in taken}) == len(taken)


@given(st.lists(small, min_size=1, max_size=4), st.lists(small, min_size=1, max_size=4))
def test_nothing_is_placed_twice(pieces: list[int], places: list[int]) -> None:
    """What is taken of a kind is never more than there is; all that has room is placed."""
    costs = {(i, j): float(i + j) for i in range(len(pieces)) for j in range(len(places))}
    taken = assign(pieces, places, costs)
    for i, n in enumerate(pieces):
        assert sum(count for (piece, _), count in taken.items() if piece == i) <= n
    for j, n in enumerate(places):
        assert sum(count for (_, place), count in taken.items() if place == j) <= n
    assert sum(taken.values()) == min(sum(pieces), sum(places))


def test_one_gives_way_to_another() -> None:
    """The piece that fits two places leaves the one to the piece that fits it alone."""
    assert assign([1, 1], [1, 1], {(0, 0): 0.0, (0, 1): 1.0, (1, 0): 0.5}) == {(0, 1): 1, (1, 0): 1}


def test_of_a_very_large_group_the_nearest_come_first(monkeypatch: pytest.MonkeyPatch) -> None:
    """Beyond what a kitchen has, the cheapest pair is taken before the next."""
    monkeypatch.setattr(module, "MOST_PAIRS", 2)
    costs = {(0, 0): 0.0, (0, 1): 1.0, (1, 0): 0.5, (1, 1): 9.0}
    assert assign([1, 1], [1, 1], costs) == {(0, 0): 1, (1, 1): 1}
    assert assign([], [], {}) == {}
