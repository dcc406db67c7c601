"""Where a strip is parted into pieces."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from templates.strips.strip import part_strip


def test_a_join_keeps_more_from_the_hole_above_it_than_from_the_one_below() -> None:
    """The words on the foot above a join want more room than its marks below it: 15 and 9."""
    for at, join in ((100.0, 110.0), (93.0, 110.0), (115.0, 100.0)):
        parting = part_strip(200.0, [], [at], lambda *_: 110.0, 10.0, (15.0, 9.0))
        assert parting is not None
        assert parting.joins == (0.0, join, 200.0)


@given(
    st.floats(min_value=150, max_value=2400),
    st.lists(st.floats(min_value=20, max_value=2380), max_size=12),
    st.floats(min_value=150, max_value=260),
)
def test_a_parted_length_adds_up_and_keeps_off_the_holes(
    length: float, ats: list[float], most: float
) -> None:
    """Whole steps, no piece longer than the paper carries, no stump, joins clear of holes."""
    holes = [at for at in ats if at < length]
    parting = part_strip(length, [], holes, lambda *_: most, 10.0, (20.0, 12.0))
    if parting is None:
        return
    assert (parting.joins[0], parting.joins[-1]) == (0.0, length)
    for low, high in pairwise(parting.joins):
        assert 70.0 - 1e-6 <= high - low <= most + 1e-6
    for join in parting.joins[1:-1]:
        assert join % 10.0 == pytest.approx(0.0)
        assert not any(-12.0 + 1e-6 < hole - join < 20.0 - 1e-6 for hole in holes)
