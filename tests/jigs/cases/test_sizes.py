"""Costly mistakes with sizes: the two reveals, nominal thickness, orders and deliveries."""

from pathlib import Path

import pytest

from tests.jigs.cases.kitchen import (
    DB,
    HB,
    TOP,
    TS,
    WB,
    R,
    T,
    box,
    check,
    codes,
    front,
    heights,
    lay,
    side,
)

DOOR = 'kind = "door"\nhinged = "left"'
PAIR = 'kind = "pair"'
DRAWER = 'kind = "drawer"'
PLAIN = """\
schema = 1
name = "Plain"
units = "mm"
[material]
front = 19.05
side = 18.3
"""
"""A job that states nothing but two thicknesses."""


def test_fronts_follow_the_finished_box(tmp_path: Path) -> None:
    """A box that came out 1.5 narrower than planned has a front 1.5 narrower.

    A bottom cut for sheets of 19.05 between sides of 18.3: 457.2 - 2 x 0.75 = 455.7
    (derived).
    """
    assert front(lay(tmp_path, box(DOOR)), "B1-1").width == pytest.approx(454.0)
    built = WB - 2 * (T - TS)
    narrow = front(lay(tmp_path, box(DOOR, width=built)), "B1-1")
    assert narrow.width == pytest.approx(454.0 - 2 * (T - TS))


@pytest.mark.parametrize(
    ("reveal", "between", "leaf"),
    [
        (1.6, 3.2, (914.4 - 2 * 1.6 - 3.2) / 2),  # a sixteenth at each edge: 454.0
        (0.8, 1.6, (914.4 - 2 * 0.8 - 1.6) / 2),  # a sixteenth in all: 455.6
    ],
)
def test_a_sixteenth_of_reveal_has_two_meanings(
    tmp_path: Path, reveal: float, between: float, leaf: float
) -> None:
    """Both numbers are stated, and sizes follow both (derived: the width less two reveals and
    the gap, halved)."""
    given = f"[reveal]\nside = {reveal}\ntop = 3.2\nbottom = 1.6\nbetween = {between}\n"
    made = lay(tmp_path, box(PAIR, width=914.4), head=PLAIN + given)
    assert front(made, "B1-1L").width == pytest.approx(leaf)
    assert front(made, "B1-1R").place.x - front(made, "B1-1L").place.x - leaf == pytest.approx(
        between
    )


def test_reveals_that_nobody_stated_are_stamped(tmp_path: Path) -> None:
    """Without [reveal] both numbers are assumed, said, and named on the front's sheets."""
    told = check(tmp_path, box(DOOR), head=PLAIN)
    assert told.status == 0
    assert "side reveal 1.6 mm" in told.text
    assert "gap between fronts 3.2 mm" in told.text
    assumed = front(lay(tmp_path, box(DOOR), head=PLAIN), "B1-1").assumed
    assert "reveal.side" in {each.key for each in assumed}


@pytest.mark.parametrize(("true", "wide"), [(18.3, 410.4), (19.05, 408.9)])
def test_drawers_follow_the_true_thickness(tmp_path: Path, true: float, wide: float) -> None:
    """Opening 457.2 - 2 ts, less 42 inside, plus two drawer sides of 15.9, rounded down to 1.

    Sheets sold as 3/4 in (19.05) are 18 to 18.6 (common practice, no source).
    """
    assert wide == pytest.approx(WB - 2 * true - 42 + 2 * 15.9)
    layout = lay(tmp_path, box(DRAWER), side=f"{true}", head=PLAIN)
    drawer = front(layout, "B1-1").drawer
    assert drawer is not None
    assert drawer.width == pytest.approx(wide // 1)


def test_a_thickness_that_nobody_measured_is_stamped(tmp_path: Path) -> None:
    """A job that does not state its sides' thickness says so, with what it took."""
    told = check(tmp_path, box(DRAWER), head='schema = 1\nname = "X"\nunits = "mm"\n')
    assert "side thickness 18.0 mm" in told.text


def test_width_and_height_exchanged_on_the_order(tmp_path: Path) -> None:
    """A front that fits only with its sizes exchanged is held back; its neighbour is drilled."""
    swapped = f"{DRAWER}\nwidth = 152.4\nheight = 454"
    told = check(tmp_path, box(swapped, DOOR))
    assert told.status == 1
    assert "B1-1: width and height swapped?" in told.text
    assert "[sizes-exchanged]" in told.text
    layout = lay(tmp_path, box(swapped, DOOR))
    assert front(layout, "B1-1").withheld
    assert heights(front(layout, "B1-2"), "cup")


def test_a_delivered_door_keeps_its_cups_with_their_plates(tmp_path: Path) -> None:
    """A door that came 1.6 too high and too narrow: cups and pull as on the box, from the bottom.

    1.6 beside the order is accepted (common practice, no source): no finding.
    """
    high, wide = HB - TOP - R, WB - 2 * R
    ordered = lay(tmp_path, box(DOOR))
    measured = f"measured_width = [{wide - 1.6}, {wide - 1.6}]\n" + (
        f"measured_height = [{high + 1.6}, {high + 1.6}]"
    )
    made = lay(tmp_path, box(f"{DOOR}\n{measured}"))
    one, other = front(ordered, "B1-1"), front(made, "B1-1")
    assert (other.width, other.height) == pytest.approx((wide - 1.6, high + 1.6))
    assert heights(other, "cup") == heights(one, "cup")
    assert heights(side(made, "B1-SIDE-L"), "plate") == heights(side(ordered, "B1-SIDE-L"), "plate")
    assert heights(other, "pull") == heights(one, "pull")
    assert not codes(made, "B1-1") & {"size-differs", "out-of-square"}


def test_a_delivered_door_far_from_the_order(tmp_path: Path) -> None:
    """More than 1.6 beside the order is said with the gap that is left, before it is drilled."""
    wide = WB - 2 * R + 2.5
    told = check(tmp_path, box(f"{DOOR}\nmeasured_width = [{wide}, {wide}]"))
    assert told.status == 0
    assert "its smallest gap becomes -0.9 mm" in told.text  # at the free edge: 1.6 - 2.5
    assert "[size-differs]" in told.text


def test_a_front_out_of_square(tmp_path: Path) -> None:
    """1.2 between top and bottom is told: more than 1.0 (common practice, no source)."""
    told = check(tmp_path, box(f"{DOOR}\nmeasured_width = [454.6, 453.4]"))
    assert "454.6 mm (17 29/32- in) wide at the top and 453.4 mm" in told.text
    assert "[out-of-square]" in told.text


@pytest.mark.parametrize(("reveal", "rubs"), [(1.6, True), (2.9, True), (3.0, False)])
def test_a_counter_rubs_on_a_small_top_reveal(tmp_path: Path, reveal: float, rubs: bool) -> None:
    """Under a counter at least 3 (common practice, no source); a warning, not a refusal."""
    made = lay(tmp_path, box(f"{DRAWER}\nreveal_top = {reveal}\nheight = 150", DOOR))
    assert ("counter-reveal" in codes(made, "B1-1")) is rubs
    assert not front(made, "B1-1").withheld


def test_floor_out_of_level_moves_no_hole(tmp_path: Path) -> None:
    """The boxes are set from the floor's high point, the toe is shimmed: no hole of a base box
    depends on the floor (derived)."""
    low, high = (lay(tmp_path, box(DRAWER, DOOR, floor=floor)) for floor in (100, 118))
    assert [f.code for f in low.fronts] == [f.code for f in high.fronts]
    assert [s.code for s in low.sides] == [s.code for s in high.sides]


def test_heights_that_do_not_close_are_refused(tmp_path: Path) -> None:
    """Fronts that overrun their box by more than its reveal are held, with the figures."""
    told = check(tmp_path, box(f"{DRAWER}\nheight = 160", f"{DOOR}\nheight = 640"))
    # 774.7 - 160 - 3.2 - 640 - 1.6 = -30.1
    assert told.status == 1
    assert "its top reveal would be -30.1 mm" in told.text
    assert "[reveals-do-not-close]" in told.text


def test_a_slide_longer_than_the_box_is_deep(tmp_path: Path) -> None:
    """533 and 16 of allowance want 549 of inside depth; a box of 560 leaves 560 - 19 - 6 = 535.

    Back set in 19 (common practice, no source); allowance from memory, in the record.
    """
    assert front(lay(tmp_path, box(DRAWER, depth=DB)), "B1-1").held == ()
    told = check(tmp_path, box(DRAWER, depth=560))
    assert told.status == 1
    assert "takes 549.0 mm" in told.text
    assert "leaves 535.0 mm" in told.text
    assert "457.0 mm" in told.text  # the longest usual inch length that fits: 457 + 16 = 473
    assert "[slide-too-long]" in told.text
