"""The best assignment, against scipy's (`scipy.optimize.linear_sum_assignment`)."""

import os
import subprocess
import sys

from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import linear_sum_assignment

from jigs.order.assign import Pair, assign

FORBIDDEN = 1e6
"""In scipy's full table, what is no pair: dearer than all that are one."""

counts = st.lists(st.integers(0, 4), min_size=1, max_size=6)


@st.composite
def lists(draw: st.DrawFn) -> tuple[list[int], list[int], dict[Pair, float]]:
    """Kinds of pieces and of places, some with nothing left of them, and what may be paired."""
    pieces, places = draw(counts), draw(counts)
    pairs = [(i, j) for i in range(len(pieces)) for j in range(len(places))]
    # Tenths of a millimetre squared, as a tape gives them, so that some cost the same.
    costs = st.one_of(st.none(), st.integers(0, 20).map(lambda tenths: (tenths / 10) ** 2))
    table = {pair: draw(costs) for pair in pairs}
    return pieces, places, {pair: cost for pair, cost in table.items() if cost is not None}


@given(lists())
@settings(max_examples=60)
def test_as_many_and_as_near_as_scipy(
    made_up: tuple[list[int], list[int], dict[Pair, float]],
) -> None:
    """No other assignment places more, or as many for less; none is placed twice."""
    pieces, places, costs = made_up
    each_piece = [kind for kind, count in enumerate(pieces) for _ in range(count)]
    each_place = [kind for kind, count in enumerate(places) for _ in range(count)]
    table = [[costs.get((i, j), FORBIDDEN) for j in each_place] for i in each_piece]
    found = (
        [table[i][j] for i, j in zip(*linear_sum_assignment(table), strict=True)] if table else []
    )
    found = [cost for cost in found if cost < FORBIDDEN]

    taken = assign(pieces, places, costs)
    assert sum(taken.values()) == len(found)
    assert abs(sum(costs[pair] * count for pair, count in taken.items()) - sum(found)) < 1e-4
    assert all(count > 0 for count in taken.values())
    for kind, count in enumerate(pieces):
        assert sum(n for (piece, _), n in taken.items() if piece == kind) <= count
    for kind, count in enumerate(places):
        assert sum(n for (_, place), n in taken.items() if place == kind) <= count


def test_one_gives_way_to_another() -> None:
    """The piece that fits two places leaves the one to the piece that fits it alone."""
    assert assign([1, 1], [1, 1], {(0, 0): 0.0, (0, 1): 1.0, (1, 0): 0.5}) == {(0, 1): 1, (1, 0): 1}


def test_nothing_to_pair() -> None:
    """A list whose pieces fit nowhere."""
    assert assign([], [], {}) == {}
    assert assign([1], [1], {}) == {}


def test_the_same_in_every_run() -> None:
    """Where several assignments are equally good, each run finds the same of them."""
    program = (
        "from jigs.order.assign import assign\n"
        "print(assign([2] * 6, [2] * 7, {(i, j): (i + j) % 2 for i in range(6) for j in range(7)}))"
    )
    said = {
        subprocess.run(
            [sys.executable, "-c", program],
            env=os.environ | {"PYTHONHASHSEED": seed},
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for seed in ("1", "2")
    }
    assert len(said) == 1
