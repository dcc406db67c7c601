"""Fixing drawer fronts and false fronts."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jigs.fittings.fixing import (
    SCREW_STOCK,
    Backing,
    FixingPlan,
    compute_columns,
    compute_rows,
    fixing_screw,
    longest_screw,
    place_fixings,
)
from jigs.ground.geometry import Hole, collect_holes
from tests import uneven

GOLDEN = Backing(x=(454.0 - 409.6) / 2, y=30.7, width=409.6, height=88.9, side=15.9)
"""The drawer over a door of a box 457.2 wide of 18.3 sides: 409.6 of the front's 454 (derived)."""


def pull(x: float, y: float) -> Hole:
    return Hole(purpose="pull", face="front", x=x, y=y, diameter=5.0, depth=None)


def fix(
    backing: Backing = GOLDEN,
    *,
    width: float = 454.0,
    height: float = 152.4,
    thickness: float = 19.05,
    pulls: tuple[Hole, ...] = (),
) -> FixingPlan:
    return place_fixings(
        backing, part="B1-1", width=width, height=height, thickness=thickness, pulls=pulls
    )


def spots(plan: FixingPlan) -> list[tuple[float, float]]:
    return [(hole.x, hole.y) for hole in collect_holes(plan.front)]


def test_the_golden_drawer_has_two_columns_of_two() -> None:
    """Derived: first column at 22.2 + 15.9 + 32 = 70.1, rows 25 in (common practice)."""
    plan = fix()
    rows = (30.7 + 25, 30.7 + 88.9 - 25)
    assert spots(plan) == [
        pytest.approx((x, y)) for x in (22.2 + 15.9 + 32, 454 - 70.1) for y in rows
    ]
    assert [(fitting.index, fitting.count) for fitting in plan.front] == [(1, 2), (2, 2)]


def test_a_drawer_beside_a_partition_is_fixed_where_its_box_stands() -> None:
    """Columns 32 inside each side of a box that stands 17.8 and 13.05 in: 65.7 from the front's
    left end, 60.95 from its right; in its box both 47.9 (derived)."""
    backing = Backing(
        x=uneven.IN_LEFT, y=uneven.RISE, width=uneven.BOX_WIDTH, height=88.9, side=15.9
    )
    plan = fix(backing, width=uneven.DRAWER_WIDTH)
    columns = sorted({x for x, _ in spots(plan)})
    assert columns == pytest.approx([17.8 + 15.9 + 32, 419.85 - 13.05 - 15.9 - 32])
    inside = sorted({hole.x for hole in collect_holes(plan.box)})
    assert inside == pytest.approx([15.9 + 32, 389 - 15.9 - 32])


def test_pilots_stand_in_the_back_and_clearances_in_the_drawer_box() -> None:
    """3 x 12 blind in the back; 5 through, at the same place, in the box's front."""
    plan = fix()
    for pilot, clearance in zip(collect_holes(plan.front), collect_holes(plan.box), strict=True):
        assert (pilot.purpose, pilot.face, pilot.diameter, pilot.depth) == (
            "front-fixing", "back", 3.0, 12.0,
        )  # fmt: skip
        assert (clearance.purpose, clearance.face, clearance.diameter, clearance.depth) == (
            "clearance", "box-front", 5.0, None,
        )  # fmt: skip
        assert (clearance.x, clearance.y) == pytest.approx((pilot.x - 22.2, pilot.y - 30.7))
    assert {fitting.kind for fitting in plan.front} == {"front-fixing"}
    assert {fitting.kind for fitting in plan.box} == {"clearance"}


@pytest.mark.parametrize(("thickness", "depth"), [(19.05, 12.0), (15.0, 12.0), (12.7, 12.7 - 3)])
def test_a_pilot_leaves_3_before_the_face(thickness: float, depth: float) -> None:
    """12 deep at most, 3 less than the front at most."""
    assert {hole.depth for hole in collect_holes(fix(thickness=thickness).front)} == {depth}


@pytest.mark.parametrize(
    ("box_height", "rows"),
    [
        (50.0, (25.0,)),
        (81.9, (81.9 / 2,)),
        (82.0, (25.0, 57.0)),
        (95.9, (25.0, 95.9 - 25)),
        (96.0, (32.0, 64.0)),
        (165.1, (32.0, 165.1 - 32)),
    ],
)
def test_rows_by_the_height_of_the_drawer_box(box_height: float, rows: tuple[float, ...]) -> None:
    """One row below 82, then two, 25 in below 96 and 32 from there."""
    assert compute_rows(box_height, 454.0, 200.0) == pytest.approx(rows)


@pytest.mark.parametrize(
    ("box_height", "bottom", "rows"),
    [
        # The bottom lies 13 up; a washer head takes 6 above it: 13 + 12 + 6 = 31.
        (50.0, 12.0, (31.0,)),
        (50.0, 6.0, (25.0,)),
        (70.0, 12.0, (35.0,)),
        (88.9, 12.0, (31.0, 88.9 - 25)),
        # 31 and 82 - 25 are 26 apart, 37 and 57 too near to be two.
        (82.0, 12.0, (31.0, 57.0)),
        (82.0, 18.0, (41.0,)),
        (120.0, 18.0, (37.0, 120 - 32)),
        # Raised by 2 or less, the highest row comes down as far.
        (88.9, 6.05, (25.05, 88.9 - 25.05)),
        (120.0, 15.0, (34.0, 120 - 34.0)),
        (120.0, 15.1, (34.1, 120 - 32.0)),
        # Nowhere between the panel and 6 below the top edge.
        (50.0, 26.0, ()),
    ],
)
def test_rows_stay_clear_of_the_bottom_panel(
    box_height: float, bottom: float, rows: tuple[float, ...]
) -> None:
    """A clearance hole at half of 50 stands half in a bottom of 12 (derived)."""
    assert compute_rows(box_height, 454.0, 200.0, floor=13 + bottom) == pytest.approx(rows)


@pytest.mark.parametrize(
    ("width", "height", "count"),
    [(454.0, 250.0, 2), (454.0, 250.1, 3), (600.0, 251.0, 3), (600.1, 251.0, 2)],
)
def test_a_high_front_has_a_third_row(width: float, height: float, count: int) -> None:
    """Over 250 high and not over 600 wide: one more at half the box's height."""
    rows = compute_rows(190.5, width, height)
    assert len(rows) == count
    if count == 3:
        assert rows[1] == 190.5 / 2


@pytest.mark.parametrize(("width", "count"), [(600.0, 2), (600.1, 3), (911.2, 3)])
def test_a_wide_front_has_a_third_column(width: float, count: int) -> None:
    """Over 600 wide: one more at the front's middle."""
    backing = Backing(x=22.2, y=30.7, width=width - 44.4, height=88.9, side=15.9)
    columns = compute_columns(backing, width)
    assert len(columns) == count
    if count == 3:
        assert columns[1] == width / 2


def test_the_third_column_is_the_fronts_though_its_box_stands_beside_it() -> None:
    """A box 20 in on the left and 60 on the right of a front of 900 (derived): 450, and not the
    430 of the box's own middle."""
    backing = Backing(x=20.0, y=30.7, width=900.0 - 20.0 - 60.0, height=88.9, side=15.9)
    inset = 15.9 + 32
    assert compute_columns(backing, 900.0) == pytest.approx((20 + inset, 450.0, 840.0 - inset))


def test_a_box_too_narrow_for_two_columns_has_one() -> None:
    """Columns nearer than 25 become one on the middle."""
    narrow = Backing(x=20.0, y=30.0, width=110.0, height=100.0, side=15.9)
    assert compute_columns(narrow, 150.0) == (75.0,)


def test_a_screw_steps_out_of_a_pulls_way() -> None:
    """By steps of 8 towards the middle until 25 clear; its neighbour above stays."""
    y = 30.7 + 25
    plan = fix(pulls=(pull(70.1, y),))
    low, high = (hole.x for hole in plan.front[0].holes)
    assert low == pytest.approx(70.1 + 4 * 8)
    assert high == pytest.approx(70.1)
    assert plan.left_out == ()
    assert plan.box[0].holes[0].x == pytest.approx(70.1 + 4 * 8 - 22.2)


def test_a_screw_on_the_right_steps_left() -> None:
    """Towards the middle, so that it stays behind the drawer box."""
    plan = fix(pulls=(pull(454 - 70.1, 30.7 + 25),))
    assert plan.front[1].holes[0].x == pytest.approx(454 - 70.1 - 4 * 8)


def test_a_middle_screw_in_a_pulls_way_is_left_out() -> None:
    """The middle has nowhere to go."""
    backing = Backing(x=22.2, y=30.7, width=911.2 - 44.4, height=88.9, side=15.9)
    y = 30.7 + 25
    plan = fix(backing, width=911.2, pulls=(pull(911.2 / 2, y),))
    assert plan.left_out == ((911.2 / 2, y),)
    assert len(plan.front[1].holes) == 1
    assert len(plan.box[1].holes) == 1


def test_a_column_that_is_left_out_whole_is_no_fitting() -> None:
    """One row, the middle screw in the way: two fittings remain, numbered 1 and 2 of 2."""
    backing = Backing(x=22.2, y=30.7, width=911.2 - 44.4, height=60.0, side=15.9)
    plan = fix(backing, width=911.2, pulls=(pull(911.2 / 2, 30.7 + 30),))
    assert [(fitting.index, fitting.count) for fitting in plan.front] == [(1, 2), (2, 2)]


@given(
    st.floats(min_value=220, max_value=1000),
    st.floats(min_value=60, max_value=300),
    st.lists(
        st.tuples(st.floats(min_value=0, max_value=1), st.floats(min_value=0, max_value=1)),
        max_size=4,
    ),
)
def test_no_screw_is_nearer_than_25_to_a_pulls(
    width: float, height: float, pulls: list[tuple[float, float]]
) -> None:
    """Wherever the pulls are, each screw keeps clear or is left out, and stays in the box."""
    backing = Backing(x=22.2, y=30.7, width=width - 44.4, height=height, side=15.9)
    screws = tuple(pull(u * width, v * (height + 60)) for u, v in pulls)
    plan = fix(backing, width=width, height=height + 60, pulls=screws)
    for x, y in spots(plan):
        assert all(math.hypot(x - s.x, y - s.y) >= 25 - 1e-5 for s in screws)
        assert backing.x + backing.side < x < backing.x + backing.width - backing.side
        assert backing.y < y < backing.y + height
    meant = len(compute_columns(backing, width)) * len(compute_rows(height, width, height + 60))
    assert len(spots(plan)) + len(plan.left_out) == meant


@given(st.floats(min_value=220, max_value=1000), st.floats(min_value=50, max_value=300))
def test_screws_are_symmetric_about_the_middle(width: float, height: float) -> None:
    """Without pulls, mirrored screws fall on screws."""
    backing = Backing(x=22.2, y=30.7, width=width - 44.4, height=height, side=15.9)
    columns = fix(backing, width=width, height=height + 60).front
    for column, mirror in zip(columns, reversed(columns), strict=True):
        assert [width - hole.x for hole in column.holes] == pytest.approx(
            [hole.x for hole in mirror.holes]
        )
        assert [hole.y for hole in column.holes] == [hole.y for hole in mirror.holes]


@pytest.mark.parametrize(("width", "height"), [(911.2, 152.4), (454.0, 300.0)])
def test_a_front_at_rest_has_four_screws(width: float, height: float) -> None:
    """Wide or high, a false front has no third column and no third row."""
    backing = Backing(x=22.2, y=30.7, width=width - 44.4, height=height - 63.5, side=15.9)
    loose = fix(backing, width=width, height=height)
    held = place_fixings(
        backing, part="B1-1", width=width, height=height, thickness=19.05, at_rest=True
    )
    assert (len(spots(loose)), len(spots(held))) == (6, 4)
    assert set(spots(held)) < set(spots(loose))


@pytest.mark.parametrize(
    ("box_front", "thickness", "screw"),
    [
        # Derived: at most 15.9 + 19.05 - 3 = 31.95, so 28.
        (15.9, 19.05, 28.0),
        (15.9, 19.0, 28.0),
        (12.7, 19.0, 28.0),
        (15.9, 16.0, 28.0),
        (15.9, 19.1, 32.0),
        # Nothing in stock lies between 15.9 + 6 and 15.9 + 10 - 3.
        (15.9, 10.0, None),
    ],
)
def test_fixing_screws_are_stock_lengths(
    box_front: float, thickness: float, screw: float | None
) -> None:
    """The longest in stock that stays 3 below the face."""
    assert fixing_screw(box_front, thickness) == screw


@given(st.floats(min_value=10, max_value=20), st.floats(min_value=10, max_value=25))
def test_a_fixing_screw_never_reaches_the_face(box_front: float, thickness: float) -> None:
    """3 stay before the face, and no longer stock length would leave them."""
    screw = fixing_screw(box_front, thickness)
    most = longest_screw(box_front, thickness)
    if screw is not None:
        assert screw <= most + 1e-5
        assert all(length <= screw or length > most for length in SCREW_STOCK)
