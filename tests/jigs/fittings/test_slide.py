"""Drawer slides: heights, widths and holes."""

import pytest
from msgspec.structs import replace

from jigs.fittings.slide import (
    SLIDE_SET_BACK,
    depth_needed,
    depth_short,
    drawer_length,
    hole_above_drawer,
    nominal_outside,
    opening_width,
    outside_width,
    rise_above_front,
    slide_fitting,
    width_error,
)
from jigs.given.build import inside_depth
from jigs.given.hardware import SlideRecord
from jigs.ground.geometry import rectangle
from tests import uneven

RUNNER = SlideRecord(
    name="runner",
    fixing_height=33.0,
    drawer_rise=14.0,
    fixing_at=(37.0, 165.0),
    carry_at=(261.0,),
)
SIDE_MOUNT = SlideRecord(
    name="side",
    mount="side",
    drawer_rise=15.0,
    centre_height=32.0,
    width_less=26.0,
    width_tolerance=1.0,
    end_height=45.0,
)
OPENING = 457.2 - 2 * 18.3
"""A box of our own, 18 in wide, of sides 18.3."""


def test_the_opening_is_the_box_less_both_sides() -> None:
    """The golden box has an opening of 420.6."""
    assert opening_width(457.2, 18.3) == pytest.approx(420.6)


@pytest.mark.parametrize(
    ("drawer_side", "deducted"), [(12.7, 16.6), (13.0, 16.0), (15.0, 12.0), (15.9, 10.2)]
)
def test_undermount_goes_by_the_inside_width(drawer_side: float, deducted: float) -> None:
    """The opening less 42 (common practice, no source), plus both sides: 42 - 2 x 12.7 = 16.6."""
    assert nominal_outside(RUNNER, OPENING, drawer_side) == pytest.approx(OPENING - deducted)


def test_the_golden_drawer_box_is_ordered_to_a_sixteenth() -> None:
    """410.4 outside rounds down to 258 sixteenths, 409.6; in a metric job to 410."""
    assert nominal_outside(RUNNER, OPENING, 15.9) == pytest.approx(378.6 + 2 * 15.9)
    assert outside_width(RUNNER, OPENING, 15.9, "in") == pytest.approx(258 * 25.4 / 16)
    assert outside_width(RUNNER, OPENING, 15.9, "in") == pytest.approx(409.6, abs=0.05)
    assert outside_width(RUNNER, OPENING, 15.9, "mm") == pytest.approx(410.0)


def test_a_drawer_box_between_a_side_and_a_partition() -> None:
    """Its opening is the column's, 400 of 900: 389.8 outside, made 389 (derived)."""
    assert nominal_outside(RUNNER, uneven.FIRST, 15.9) == pytest.approx(400 - 42 + 2 * 15.9)
    assert outside_width(RUNNER, uneven.FIRST, 15.9, "mm") == uneven.BOX_WIDTH == 389.0


def test_a_width_on_the_step_is_not_rounded_away() -> None:
    """Float noise below a whole sixteenth costs no sixteenth."""
    assert outside_width(RUNNER, 42.0 + 300 * 1.5875 - 2 * 15.9, 15.9, "in") == pytest.approx(
        300 * 1.5875
    )


@pytest.mark.parametrize(
    ("drawer_side", "width", "error"),
    [
        # Derived: ordered for 15.9, sides really 15.2: 409.6 - 30.4 = 379.2 inside where
        # 420.6 - 42 = 378.6 is the most.
        (15.2, 409.6, 409.6 - 2 * 15.2 - 378.6),
        (15.9, 410.4, 0.0),
        (15.9, 410.4 - 1.5, 0.0),
        (15.9, 410.4 - 1.8, -0.3),
        (15.9, 410.5, 0.1),
    ],
)
def test_a_given_undermount_width_is_checked(
    drawer_side: float, width: float, error: float
) -> None:
    """The inside width may be 1.5 less than the opening less 42, and no more than that."""
    assert width_error(RUNNER, OPENING, drawer_side, width) == pytest.approx(error)


@pytest.mark.parametrize(
    ("each_side", "error"),
    [(12.7, 0.0), (13.0, 0.0), (13.5, 0.0), (12.6, 0.2), (13.6, -0.2)],
)
def test_a_side_mount_leaves_12_7_to_13_5_each_side(each_side: float, error: float) -> None:
    """Common practice, no source: 12.7 each side, +0.8 / -0."""
    width = OPENING - 2 * each_side
    assert width_error(SIDE_MOUNT, OPENING, 15.9, width) == pytest.approx(error)


def test_a_side_mount_drawer_box_is_26_narrower_than_the_opening() -> None:
    """420.6 - 26 = 394.6, whatever the drawer's sides (26: common practice, no source)."""
    assert nominal_outside(SIDE_MOUNT, OPENING, 12.0) == pytest.approx(394.6)
    assert outside_width(SIDE_MOUNT, OPENING, 15.9, "mm") == pytest.approx(394.0)


def test_the_slide_needs_the_inside_depth() -> None:
    """584.2 - 19 - 6 = 559.2 takes a slide of 533 and its 16 (derived; 16: from memory)."""
    assert inside_depth(584.2, 6.0) == pytest.approx(559.2)
    assert depth_needed(RUNNER) == 533.0 + 16.0
    assert depth_short(RUNNER, 559.2) == 0.0
    assert depth_short(RUNNER, 549.0) == 0.0
    assert depth_short(RUNNER, 540.0) == pytest.approx(9.0)


def test_metric_drawers_may_be_shorter_than_their_slide() -> None:
    """The drawer's length is the nominal one less what the record says."""
    assert drawer_length(RUNNER) == 533.0
    metric = SlideRecord(name="metric", length=500.0, drawer_shorter=10.0)
    assert drawer_length(metric) == 490.0


def test_heights_come_from_two_measured_numbers() -> None:
    """18.3 + 14 - 1.6 = 30.7 above the front, hole 33 - 14 = 19 higher (derived)."""
    assert rise_above_front(RUNNER, side=18.3, reveal_bottom=1.6) == pytest.approx(30.7)
    assert hole_above_drawer(RUNNER) == 33.0 - 14.0


def test_a_side_mount_shares_its_centre_line() -> None:
    """The lowest drawer clears the bottom by 15; the hole line is the centre line."""
    assert rise_above_front(SIDE_MOUNT, side=18.3, reveal_bottom=1.6) == pytest.approx(
        18.3 + 15 - 1.6
    )
    assert hole_above_drawer(SIDE_MOUNT) == 32.0


def test_the_fitting_holds_the_holes_and_the_carried_ones() -> None:
    """First hole at 37, the next at 165; 261 is carried back along the line."""
    fitting = slide_fitting(RUNNER, 51.3, part="B1-4", index=1, count=4)
    assert [(hole.x, hole.y) for hole in fitting.holes] == [(37.0, 51.3), (165.0, 51.3)]
    assert {(hole.diameter, hole.depth, hole.face) for hole in fitting.holes} == {
        (5.0, 12.0, "inside")
    }
    assert (fitting.kind, fitting.part, fitting.record) == ("slide", "B1-4", "runner")
    assert (fitting.index, fitting.count, fitting.carry) == (1, 4, (261.0,))


def test_the_outline_of_an_undermount_stands_on_the_floor_line() -> None:
    """The hole lies a above the slide's foot, so the lowest slide stands on the bottom panel."""
    (outline,) = slide_fitting(RUNNER, 51.3, part="B1-4").outline
    assert outline == rectangle(SLIDE_SET_BACK, 51.3 - 33, SLIDE_SET_BACK + 533, 51.3 - 33 + 40)
    assert outline[0][1] == pytest.approx(18.3)


def test_the_outline_of_a_side_mount_lies_about_its_centre_line() -> None:
    """Half of the slide's height stands on either side of the line."""
    (outline,) = slide_fitting(SIDE_MOUNT, 100.0, part="B1-4").outline
    assert (outline[0][1], outline[2][1]) == (100 - 45 / 2, 100 + 45 / 2)


def test_a_short_slide_has_no_hole_beyond_its_end() -> None:
    """A slide of 229 reaches 165 and not 261."""
    short = replace(RUNNER, length=229.0)
    fitting = slide_fitting(short, 51.3, part="B1-4")
    assert [hole.x for hole in fitting.holes] == [37.0, 165.0]
    assert fitting.carry == ()


def test_a_wood_screw_pilot_comes_from_the_record() -> None:
    """A slide for wood screws takes its own pilot, not a system hole."""
    wood = SlideRecord(name="wood", fixing_diameter=2.5, fixing_depth=10.0)
    (first, *_) = slide_fitting(wood, 51.3, part="B1-4").holes
    assert (first.diameter, first.depth) == (2.5, 10.0)
