"""Pocket screws: their steps, and how they keep clear."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jigs.cutlist.joints import FROM_HOLE, find_unclear, is_clear, place_pockets


@pytest.mark.parametrize(
    ("width", "places"),
    [
        # 50 from each edge, then 150 to 200, two at least (common practice, no source).
        (559.2, [50 + k * (559.2 - 100) / 3 for k in range(4)]),
        (300.0, [50, 250]),
        (150.0, [50, 100]),
        (100.0, [25, 75]),
        (80.0, [20, 60]),
    ],
)
def test_screws_stand_from_both_edges(width: float, places: list[float]) -> None:
    """The first and the last 50 from the edge, on narrow joints at the quarters."""
    assert place_pockets(width) == pytest.approx(places)


def test_a_screw_moves_beside_a_hole() -> None:
    """37 + 25 = 62 is the nearest place clear of a hole at 37 on the same line."""
    assert place_pockets(559.2, [(37.0, 0.0)])[0] == pytest.approx(62.0)
    assert place_pockets(559.2, [(37.0, 20.0)])[0] == pytest.approx(37 + math.sqrt(25**2 - 20**2))
    assert place_pockets(559.2, [(37.0, 25.0)])[0] == pytest.approx(50.0)


def test_a_joint_behind_the_front_edge_counts_from_there() -> None:
    """A rear stretcher's screws are told from the front edge as well."""
    assert place_pockets(100.0, start=459.2) == pytest.approx((484.2, 534.2))


def test_a_screw_without_a_place_stays() -> None:
    """Where holes leave no room, the place is the one without them, and not clear."""
    holes = [(float(k * 20), 0.0) for k in range(6)]
    places = place_pockets(100.0, holes)
    assert places == pytest.approx((25.0, 75.0))
    assert find_unclear(places, 100.0, holes) == places


@given(
    st.floats(40, 800),
    st.lists(st.tuples(st.floats(0, 800), st.floats(-24, 24)), max_size=4),
)
def test_screws_keep_within_the_joint_and_apart(
    width: float, holes: list[tuple[float, float]]
) -> None:
    """Whatever holes there are: in the joint, and clear of all, or told."""
    places, plain = place_pockets(width, holes), place_pockets(width)
    assert len(places) == len(plain) >= 2
    told = find_unclear(places, width, holes)
    for place, usual in zip(places, plain, strict=True):
        assert 0 < place < width
        assert place == usual or is_clear(place, holes)
        if place not in told:
            others = places[: places.index(place)]
            assert all(abs(place - other) >= min(FROM_HOLE, width / 4) - 1e-6 for other in others)
