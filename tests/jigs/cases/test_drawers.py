"""Costly mistakes with drawers: width, level slides, length, recess and notch, long screws."""

from itertools import pairwise
from pathlib import Path

import pytest

from tests.jigs.cases.kitchen import (
    TOP,
    TS,
    WB,
    G,
    R,
    T,
    across,
    box,
    check,
    codes,
    front,
    heights,
    holes,
    job,
    lay,
    printed,
    side,
)

DRAWER = 'kind = "drawer"'
DOOR = 'kind = "door"\nhinged = "left"'
TD = 15.9
LW = WB - 2 * TS


def test_a_drawer_box_is_as_wide_inside_as_its_slide_asks(tmp_path: Path) -> None:
    """Inside 420.6 - 42 = 378.6, outside + 2 x 15.9 = 410.4, rounded down to whole mm
    (derived; 42 less: common practice, no source)."""
    drawer = front(lay(tmp_path, box(DRAWER)), "B1-1").drawer
    assert drawer is not None
    assert pytest.approx(410.4) == LW - 42 + 2 * TD
    assert drawer.width == pytest.approx(410.0)


@pytest.mark.parametrize(
    ("wide", "thick", "found"),
    [
        (410.4, 15.9, None),
        (409.6, 15.2, "drawer-too-wide"),  # inside 379.2, 378.6 allowed
        (409.6, 15.9, None),  # inside 377.8: within the 1.5 that it may be less
        (408.0, 15.9, "drawer-too-narrow"),  # inside 376.2: 2.4 less
    ],
)
def test_a_drawer_box_given_in_hand(
    tmp_path: Path, wide: float, thick: float, found: str | None
) -> None:
    """Too wide is refused, too narrow is told: +0/-1.5 inside (common practice; the leaflet
    rules)."""
    given = box(f"{DRAWER}\ndrawer_width = {wide}")
    layout = lay(tmp_path, given, drawer_side=f"{thick}")
    assert codes(layout, "B1-1") & {"drawer-too-wide", "drawer-too-narrow"} == (
        {found} if found else set()
    )
    told = check(tmp_path, given, drawer_side=f"{thick}")
    assert told.status == (1 if found == "drawer-too-wide" else 0)
    if told.status:
        assert "is 0.6 mm (1/32- in) too wide for slide 'runner'" in told.text


def test_slides_stand_level_left_and_right(tmp_path: Path) -> None:
    """The golden stack: hole lines 51.3, 275.3, 467.3, 659.3 on both sides alike. Derived:
    18.3 + 33 = 51.3, then up by front and gap: 220.8 + 3.2, 188.8 + 3.2, 188.8 + 3.2."""
    stack = [f"{DRAWER}\nheight = {high}" for high in (163.5, 188.8, 188.8, 220.8)]
    layout = lay(tmp_path, box(*stack, kind="drawer"))
    left, right = side(layout, "B1-SIDE-L"), side(layout, "B1-SIDE-R")
    assert heights(left, "slide") == pytest.approx([51.3, 275.3, 467.3, 659.3])
    assert [(h.x, h.y) for h in left.holes] == [(h.x, h.y) for h in right.holes]


def test_a_drawer_over_a_door(tmp_path: Path) -> None:
    """6 in of front under a top reveal of 3.2: front bottom 619.1, drawer bottom 649.8, hole
    668.8; 774.7 - 18.3 - 10 - 649.8 = 96.6 of room (derived)."""
    layout = lay(tmp_path, box(f"{DRAWER}\nheight = 152.4", DOOR))
    over = front(layout, "B1-1")
    assert over.drawer is not None
    assert over.place.y == pytest.approx(619.1)
    assert over.place.y + over.drawer.y == pytest.approx(649.8)
    assert over.drawer.height == pytest.approx(96.6 // 5 * 5)
    assert heights(side(layout, "B1-SIDE-R"), "slide") == pytest.approx([668.8])
    # Plates and slide share the left side, and keep 12.5 between their 5 mm holes.
    mixed = [h for h in side(layout, "B1-SIDE-L").holes if h.x == 37.0]
    ys = sorted(h.y for h in mixed)
    assert min(b - a for a, b in pairwise(ys)) >= 12.5


def test_recess_and_notch_are_told_on_the_drawer_boxs_sheet(tmp_path: Path) -> None:
    """An undermount's drawer box: bottom 13 up, back notched 38 x 13 (common practice, no
    source); the leaflet's recess, where it is stated."""
    words = printed(tmp_path, box(DRAWER), only="B1-1-BOX")
    assert "bottom panel 13.0 up;" in words
    assert "notched 38.0 × 13.0 at both lower corners" in words
    deeper = printed(tmp_path, box(DRAWER), only="B1-1-BOX", drawer_rise="14\nrecess = 12.5")
    assert "bottom panel 12.5 up;" in deeper


def test_a_side_mount_asks_for_no_notch(tmp_path: Path) -> None:
    """Its drawer box is 26 less than the opening: 420.6 - 26 = 394.6, down to 394 (common
    practice); nothing is said of recess or notch."""
    head = job().replace('like = "undermount-533"', 'like = "sidemount-500"')
    told = {"drawer_rise": "15", "width_less": "26"}
    made = front(lay(tmp_path, box(DRAWER), head=head, **told), "B1-1").drawer
    assert made is not None
    assert made.width == pytest.approx((LW - 26) // 1)
    words = printed(tmp_path, box(DRAWER), only="B1-1-BOX", head=head, **told)
    assert "notched" not in words


def test_front_screws_stay_below_the_face(tmp_path: Path) -> None:
    """15.9 + 19.05 - 3 = 31.9: 28 is the longest usual one, pan head (derived; 3 kept below the
    face and lengths in stock: common practice); the front's sheet says so."""
    assert pytest.approx(31.95) == TD + T - 3
    assert front(lay(tmp_path, box(DRAWER)), "B1-1").screws.fixing == 28
    words = printed(tmp_path, box(DRAWER), only="B1-1")
    assert "Front screws 28.0 at most, pan or washer heads." in words
    assert "Pull screws 22.0 long." in words


def test_a_thin_front_has_no_usual_screw(tmp_path: Path) -> None:
    """Through 15.9 and into a front of 8: 6 of hold would leave 2 below the face, 3 wanted."""
    layout = lay(tmp_path, box(f"{DRAWER}\nthickness = 8"))
    assert front(layout, "B1-1").screws.fixing is None
    assert "fixing-screw" in codes(layout, "B1-1")


def test_pilots_never_come_through_a_front(tmp_path: Path) -> None:
    """The pilot stays in the front, whatever its thickness: it leaves wood below the face."""
    for thick in (19.05, 16.0, 12.0):
        made = lay(tmp_path, box(f"{DRAWER}\nthickness = {thick}"))
        pilots = holes(front(made, "B1-1"), "front-fixing")
        assert all(h.depth is not None and h.depth <= thick - 2 for h in pilots)


def test_front_screws_of_a_five_piece_front_land_in_its_stiles(tmp_path: Path) -> None:
    """The drawer box's side ends at 22.4 + 15.9 = 38.3; behind a stile of 57 less a groove of 11
    the screws find wood, behind one of 45 less 11 they would pierce a panel of 8: refused."""
    frame = "rail = 57\ngroove = 11\npanel = 8"
    made = front(lay(tmp_path, box(f"{DRAWER}\nstile = 57\n{frame}")), "B1-1")
    inner = (WB - 2 * R - 410) / 2 + TD
    for x in across(made, "front-fixing"):
        assert inner + 4 <= min(x, made.width - x) <= 57 - 11 - 1.5 - 2 + 1e-6
    assert made.screws.head == pytest.approx(2 * (57 - 11 - 1.5 - 2 - inner))
    told = check(tmp_path, box(f"{DRAWER}\nstile = 45\n{frame}"))
    assert told.status == 1
    assert "[fixing-in-panel]" in told.text


@pytest.mark.parametrize(("width", "columns", "pulls"), [(900, 3, 2), (1200, 3, 2), (600, 2, 1)])
def test_wide_drawers(tmp_path: Path, width: float, columns: int, pulls: int) -> None:
    """Above 600 a third column of screws at the middle, from 762 two pulls at W/4 and 3W/4
    (common practice, no source)."""
    layout = lay(tmp_path, box(DRAWER, width=width, height=300, kind="drawer"))
    wide = front(layout, "B1-1")
    made = width - 2 * R
    assert wide.width == pytest.approx(made)
    assert len(across(wide, "front-fixing")) == columns
    centres = [made / 4, 3 * made / 4] if pulls == 2 else [made / 2]
    assert across(wide, "pull") == pytest.approx([c + o for c in centres for o in (-80, 80)])
    assert wide.drawer is not None
    assert wide.drawer.width == pytest.approx((width - 2 * TS - 42 + 2 * TD) // 1)


@pytest.mark.parametrize(("bottom", "low"), [(6, 25.0), (12, 13 + 12 + 6)])
def test_clearance_holes_stay_above_the_bottom_panel(
    tmp_path: Path, bottom: float, low: float
) -> None:
    """A drawer box 50 high has its screws at half of it; with a bottom of 12 in its recess of 13
    that is the panel's own face: they stand a washer head, 6, above it, and so do the pilots."""
    build = f"[build]\ndrawer_bottom = {bottom}\n"
    given = box(f"{DRAWER}\nheight = 152.4\ndrawer_height = 50", DOOR)
    made = front(lay(tmp_path, build, given), "B1-1")
    assert made.drawer is not None
    assert {hole.y for hole in made.drawer.holes} == {low}
    assert heights(made, "front-fixing") == pytest.approx([TS + 14 - R + low])


def test_a_bottom_that_leaves_a_screw_no_room(tmp_path: Path) -> None:
    """13 + 26 + 6 is nearer than 6 to the top edge of a box 50 high: refused."""
    given = box(f"{DRAWER}\nheight = 152.4\ndrawer_height = 50", DOOR)
    told = check(tmp_path, "[build]\ndrawer_bottom = 26\n", given)
    assert told.status == 1
    assert "[fixing-no-room]" in told.text
    assert "39.0 mm" in told.text


def test_a_low_front_has_no_room_for_a_drawer(tmp_path: Path) -> None:
    """Room under a top: 60 of front leaves 60 + 3.2 - 30.7 - 18.3 - 10 = 4.2: refused."""
    told = check(tmp_path, box(f"{DRAWER}\nheight = 60", DOOR))
    assert pytest.approx(4.2) == TOP + 60 - (TS + 14 - R) - TS - 10
    assert told.status == 1
    assert "there is room for a drawer box 4.2 mm" in told.text
    assert "Give its front at least 105.8 mm" in told.text  # 60 + 50 - 4.2
    assert "[fixing-no-room]" not in told.text  # of a box that is not built


@pytest.mark.parametrize(
    ("above", "room"), [((), TOP - TS - 10), ((f"{DRAWER}\nheight = 150",), G - 2)]
)
def test_the_least_front_takes_a_box(tmp_path: Path, above: tuple[str, ...], room: float) -> None:
    """A box of 50 high; 0.2 less of front does not. Under a top its room is the front's height
    + 3.2 - 18.3 - 10 - 30.7, under another front, 2 below its edge, + 3.2 - 2 - 30.7."""
    least = 50 - room + (TS + 14 - R)

    def told(height: float) -> str:
        return check(tmp_path, box(*above, f"{DRAWER}\nheight = {height}", DOOR)).text

    assert f"Give its front at least {least:.1f} mm" in told(60)
    assert "[drawer-too-low]" in told(least - 0.2)
    assert "[drawer-too-low]" not in told(least + 0.001)
