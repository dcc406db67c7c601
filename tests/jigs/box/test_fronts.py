"""Sizes and places of fronts in their box."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from jigs.box.fronts import (
    FrontStack,
    module_height,
    share_heights,
)
from jigs.given.job import BoxKind, BoxSpec, FrontKind, FrontSpec, Reveal
from jigs.given.stated import Portion
from tests.jigs.sample import GOLDEN, one_column


def front(
    kind: FrontKind = "drawer",
    *,
    height: float | None = None,
    width: float | None = None,
    modules: int | None = None,
    share: float | None = None,
    name: str = "F",
) -> FrontSpec:
    """Give a front as a job states it."""
    return FrontSpec(
        id=name,
        kind=kind,
        height=height,
        width=width,
        portion=Portion(modules=modules, share=share),
    )


def column(
    *fronts: FrontSpec,
    width: float = 457.2,
    height: float = 774.7,
    kind: BoxKind = "base",
    reveal: Reveal = GOLDEN,
    increment: float | None = None,
) -> FrontStack:
    """Place fronts in the golden box."""
    box = BoxSpec(
        id="B1", kind=kind, width=width, height=height, depth=584.2, above_floor=100.0,
        fronts=fronts,
    )  # fmt: skip
    return one_column(box, reveal, increment)


def kinds(placed: FrontStack) -> list[str]:
    """Give the kinds of trouble."""
    return [trouble.kind for trouble in placed.troubles]


def test_single_and_pair() -> None:
    """Golden widths: 457.2 and 914.4 both give fronts of 454.0."""
    (door,) = column(front("door")).fronts
    assert (door.width, door.height) == pytest.approx((457.2 - 3.2, 774.7 - 3.2))
    left, right = column(front("pair", name="B1-1"), width=914.4).fronts
    assert (left.id, right.id) == ("B1-1L", "B1-1R")
    assert (left.hinged, right.hinged) == ("left", "right")
    assert left.kind == "door"
    leaf = (914.4 - 3.2 - 3.2) / 2
    assert (left.width, right.width) == pytest.approx((leaf, leaf))
    assert right.place.x - (left.place.x + left.width) == pytest.approx(3.2)
    assert left.gaps.right == right.gaps.left == 3.2
    assert left.gaps.left == pytest.approx(right.gaps.right) == pytest.approx(1.6)


@pytest.mark.parametrize(
    ("count", "total", "each"),
    [(2, 768.3, 384.15), (3, 765.1, 255.03), (4, 761.9, 190.47), (5, 758.7, 151.74)],
)
def test_equal_stacks(count: int, total: float, each: float) -> None:
    """Stacks of two to five in a box 774.7 high: 774.7 - 3.2 - (n - 1) x 3.2, by n (derived)."""
    fronts = column(*(front() for _ in range(count))).fronts
    assert sum(f.height for f in fronts) == pytest.approx(774.7 - 3.2 - (count - 1) * 3.2)
    assert sum(f.height for f in fronts) == pytest.approx(total)
    assert all(f.height == pytest.approx(each, abs=0.006) for f in fronts)


def test_golden_stack_stands_where_it_should() -> None:
    """Fronts of 220.8, 188.8, 188.8, 163.5 bottom up: bottoms at 1.6, 225.6, 417.6, 609.6."""
    placed = column(*(front(height=h) for h in (163.5, 188.8, 188.8, 220.8)))
    assert [f.place.y for f in placed.fronts] == pytest.approx([609.6, 417.6, 225.6, 1.6])
    assert placed.fronts[0].top == pytest.approx(774.7 - 1.6)
    assert placed.remainder == 0
    assert [f.place.row for f in placed.fronts] == [1, 2, 3, 4]


def test_drawer_over_door() -> None:
    """A 6 in front under a top reveal of 3.2 stands at 619.1; the door takes what is left."""
    reveal = Reveal(side=1.6, top=3.2, bottom=1.6, between=3.2)
    drawer, door = column(front(height=152.4), front("door"), reveal=reveal).fronts
    assert drawer.place.y == pytest.approx(774.7 - 3.2 - 152.4)
    assert door.height == pytest.approx(619.1 - 3.2 - 1.6)
    assert (drawer.gaps.top, drawer.gaps.bottom, door.gaps.bottom) == pytest.approx((3.2, 3.2, 1.6))


def test_given_sizes_leave_a_larger_top_reveal() -> None:
    """Fronts of 152.4 and 613.0 in the golden box leave a top reveal of 4.5, and it is said."""
    placed = column(front(height=152.4), front("door", height=613.0))
    assert placed.fronts[0].gaps.top == pytest.approx(774.7 - 1.6 - 613.0 - 3.2 - 152.4)
    assert kinds(placed) == ["end-reveal"]


def test_shares_and_modules() -> None:
    """The rest is shared by weight; a front of m modules is 32 m less the gap."""
    assert [module_height(m, 3) for m in (5, 8, 10)] == [157, 253, 317]
    first, second, third = column(front(modules=5), front(share=2), front()).fronts
    assert first.height == pytest.approx(32 * 5 - 3.2)
    assert second.height == pytest.approx(2 * third.height)


def test_rounding_loses_less_than_one_increment() -> None:
    """Cumulative heights are rounded down: the remainder is less than one increment in all."""
    placed = column(*(front() for _ in range(4)), increment=1.0)
    assert sorted(f.height for f in placed.fronts) == [190, 190, 190, 191]
    assert placed.remainder == pytest.approx(761.9 - 761)
    assert placed.fronts[-1].place.y == pytest.approx(1.6)
    assert placed.fronts[0].gaps.top == pytest.approx(1.6 + 0.9)


def test_wall_boxes_line_up_at_the_top() -> None:
    """On a wall box the remainder goes to the bottom reveal."""
    placed = column(front("door"), height=762.3, kind="wall", increment=1.0)
    (door,) = placed.fronts
    assert door.top == pytest.approx(762.3 - 1.6)
    assert door.gaps.bottom == pytest.approx(1.6 + placed.remainder) == pytest.approx(door.place.y)


def test_wall_fronts_may_hang_below() -> None:
    """A bottom reveal below zero makes a finger pull."""
    reveal = Reveal(side=1.6, top=1.6, bottom=-18, between=3.2)
    placed = column(front("door"), kind="wall", reveal=reveal)
    assert placed.fronts[0].place.y == pytest.approx(-18)
    assert kinds(placed) == []


def test_a_rounded_width_stands_centred() -> None:
    """Widths round down to the increment, and both side reveals grow alike."""
    (door,) = column(front("door"), width=457.9, increment=1.0).fronts
    assert door.width == 454
    assert door.place.x == door.gaps.right == pytest.approx((457.9 - 454) / 2)


def test_an_opening_takes_a_row() -> None:
    """An opening is a height without a front."""
    placed = column(front(height=150), front("opening", height=400), front())
    assert placed.fronts[2].height == pytest.approx(774.7 - 3.2 - 6.4 - 150 - 400)
    assert placed.fronts[1].kind == "opening"


@pytest.mark.parametrize(
    ("fronts", "kind"),
    [
        ((front(height=400), front(height=400)), "too-high"),
        ((front(height=400), front(height=200)), "uncovered"),
        ((front(height=400), front(height=400), front()), "no-room"),
        ((front(width=460),), "too-wide"),
        ((front(width=400),), "too-narrow"),
        ((front(width=450),), "side-reveal"),
        ((front("door", height=454.0, width=771.5),), "exchanged"),
        ((front("door", height=454.0, width=600.0), front()), "exchanged"),
    ],
)
def test_sizes_that_do_not_close(fronts: tuple[FrontSpec, ...], kind: str) -> None:
    """Each way in which sizes miss their box is told apart."""
    assert kind in kinds(column(*fronts))


def test_an_exchanged_front_is_laid_out_turned() -> None:
    """The others of the box are placed as if the slip had not been made."""
    placed = column(front("door", height=454.0, width=771.5))
    assert (placed.fronts[0].width, placed.fronts[0].height) == (454.0, 771.5)
    assert kinds(placed) == ["exchanged"]


def test_a_front_cut_a_little_long_only_warns() -> None:
    """A door delivered 1.6 too long takes it from the top reveal."""
    placed = column(front("door", height=771.5 + 1.6))
    assert placed.fronts[0].place.y == pytest.approx(1.6)
    assert placed.fronts[0].gaps.top == pytest.approx(0, abs=1e-9)
    assert kinds(placed) == ["end-reveal"]


@settings(max_examples=80)
@given(
    st.lists(st.none() | st.floats(60, 200), min_size=1, max_size=7),
    st.floats(400, 2400),
    st.sampled_from([None, 1.0, 0.5, 25.4 / 16, 25.4 / 32]),
    st.sampled_from(["base", "wall"]),
)
def test_sizes_and_gaps_sum_to_the_box(
    heights: list[float | None], box: float, increment: float | None, kind: BoxKind
) -> None:
    """Fronts, gaps and reveals fill the box, whatever is given and however it is rounded."""
    placed = column(*(front(height=h) for h in heights), height=box, kind=kind, increment=increment)
    total = sum(f.height + f.gaps.top for f in placed.fronts) + placed.fronts[-1].gaps.bottom
    assert total == pytest.approx(box, abs=1e-6)
    for f in placed.fronts:
        assert f.gaps.left + f.width + f.gaps.right == pytest.approx(457.2)
    if None in heights and "no-room" not in kinds(placed):
        assert 0 <= placed.remainder < (increment or 1e-6)
        for f, height in zip(placed.fronts, heights, strict=True):
            assert height is None or f.height == height


@given(
    st.lists(st.floats(0.1, 5), min_size=1, max_size=6),
    st.floats(300, 2400),
    st.sampled_from([1.0, 0.5, 25.4 / 16]),
)
def test_every_shared_height_is_whole_increments(
    weights: list[float], space: float, increment: float
) -> None:
    """Shared heights are whole multiples of the increment."""
    for height in share_heights([None] * len(weights), weights, space, increment):
        steps = height / increment
        assert math.isclose(steps, round(steps), abs_tol=1e-6)
