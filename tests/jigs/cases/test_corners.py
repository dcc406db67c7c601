"""A blind corner: a box whose front is closed, at the corner, by a panel that the run round the
corner covers."""

from pathlib import Path

import pytest

from tests.jigs.cases.kitchen import (
    HB,
    TOP,
    TS,
    G,
    R,
    T,
    across,
    box,
    check,
    codes,
    front,
    heights,
    lay,
    printed,
    side,
)

WIDE, BLIND = 1066.8, 670.0
DOOR = 'kind = "door"\nhinged = "right"'
DRAWER = 'kind = "drawer"\nheight = 152.4'


def blind(*fronts: str, more: str = f"blind_left = {BLIND}", **given: float) -> str:
    """Write a corner box."""
    return box(*fronts, width=WIDE, more=more, **given)  # type: ignore[arg-type]


def test_a_door_laps_the_panel_as_it_laps_a_side(tmp_path: Path) -> None:
    """From 670 - (18.3 - 1.6) to 1066.8 - 1.6: 411.9 wide; on the side, as ever (derived)."""
    layout = lay(tmp_path, blind(DOOR))
    door = front(layout, "B1-1")
    assert door.place.x == pytest.approx(BLIND - (TS - R))
    assert door.width == pytest.approx(WIDE - BLIND + TS - 2 * R)
    assert door.height == pytest.approx(HB - TOP - R)
    assert across(door, "cup") == pytest.approx([door.width - 22.5])
    plates = heights(side(layout, "B1-SIDE-R"), "plate")
    assert plates[0] + 16 == pytest.approx(R + heights(door, "cup")[0])
    assert side(layout, "B1-SIDE-L").fittings == ()
    assert layout.problems == ()


def test_the_other_hand_is_its_mirror(tmp_path: Path) -> None:
    """Blind at the right, hinged left: the same door, the same heights."""
    layout = lay(tmp_path, blind('kind = "door"\nhinged = "left"', more=f"blind_right = {BLIND}"))
    door = front(layout, "B1-1")
    assert (door.place.x, door.width) == pytest.approx((R, WIDE - BLIND + TS - 2 * R))
    assert across(door, "cup") == pytest.approx([22.5])
    assert side(layout, "B1-SIDE-R").fittings == ()


def test_an_inset_door_stands_beside_the_panel(tmp_path: Path) -> None:
    """2 of gap (the default) from panel and side: 1066.8 - 18.3 - 670 - 2 x 2 = 374.5 wide; its
    hinge by Hp - K - C0 = 3 - 5 + 4 = 2 (derived)."""
    inset = f'blind_left = {BLIND}\noverlay = "inset"'
    hung = f'{DOOR}\nhinge = "in"'
    record = '"measured"\n[hinge.in]\nlike = "cup35-inset"\nconfirmed = "measured"'
    door = front(lay(tmp_path, blind(hung, more=inset), confirmed=record), "B1-1")
    assert (door.place.x, door.width) == pytest.approx((BLIND + 2, WIDE - TS - BLIND - 2 * 2))
    assert not door.withheld
    words = printed(tmp_path, blind(hung, more=inset), only="B1-1", confirmed=record)
    assert "BLIND PANEL on the LEFT from the room: this front keeps 2.0 from it." in words
    assert "laps it by 16.7" in printed(tmp_path, blind(DOOR), only="B1-1")


def test_a_panel_that_leaves_no_opening(tmp_path: Path) -> None:
    """A panel as far as the other side: no door finds room, and that is an error, not a crash."""
    assert check(tmp_path, blind(DOOR, more="blind_left = 1050")).status == 1


def test_an_own_reveal_shifts_the_lap(tmp_path: Path) -> None:
    """`reveal_left = 8.3` leaves a lap of 10 on the panel (derived)."""
    door = front(lay(tmp_path, blind(f"{DOOR}\nreveal_left = 8.3")), "B1-1")
    assert BLIND - door.place.x == pytest.approx(TS - 8.3)


def test_no_door_hangs_on_the_panel(tmp_path: Path) -> None:
    """There is no side behind it: refused, with what to do; a pair's leaf too."""
    told = check(tmp_path, blind('kind = "door"\nhinged = "left"'))
    assert told.status == 1
    assert "hinged left, where box B1 has its blind panel and no side for the plates" in told.text
    assert "Hang it on the right" in told.text
    layout = lay(tmp_path, blind('kind = "pair"'))
    assert "hinge-at-blind" in codes(layout, "B1-1L")
    assert not front(layout, "B1-1R").withheld


def test_no_drawer_runs_beside_the_panel(tmp_path: Path) -> None:
    """A slide wants a board at both sides: refused, and the door below it is drilled."""
    told = check(tmp_path, blind(DRAWER, DOOR))
    assert told.status == 1
    assert "[slide-at-blind]" in told.text
    assert "part the box: columns in place of blind_left" in told.text.replace("Part", "part")
    assert not front(lay(tmp_path, blind(DRAWER, DOOR)), "B1-2").withheld


def test_a_false_front_beside_the_panel(tmp_path: Path) -> None:
    """It is screwed to rail or blocks: nothing hinders it."""
    layout = lay(tmp_path, blind('kind = "false-front"\nheight = 152.4', DOOR))
    assert not any(f.withheld for f in layout.fronts)


def test_a_corner_box_with_a_drawer_has_a_partition(tmp_path: Path) -> None:
    """Columns of 640 and the rest, nothing before the first: 1066.8 - 2 x 18.3 - 18.3 - 640 =
    371.9 clear, drawer box 371.9 - 42 + 31.8 = 361.7, down to 361; its slides on partition and
    side; the fronts lap half the partition: 371.9 + 18.3 + 18.3 / 2 - 1.6 - 1.6."""
    parted = blind(
        f"{DRAWER}\ncolumn = 2", f"{DOOR}\ncolumn = 2",
        more="columns = [{width = 640}, {share = 1}]",
    )  # fmt: skip
    layout = lay(tmp_path, parted)
    clear = WIDE - 3 * TS - 640
    drawer = front(layout, "B1-1").drawer
    assert drawer is not None
    assert drawer.width == pytest.approx((clear - 42 + 2 * 15.9) // 1)
    assert front(layout, "B1-2").width == pytest.approx(clear + 1.5 * TS - R - G / 2)
    held = {s.board: s for s in layout.sides if s.fittings}
    assert set(held) == {"B1-PARTITION-1", "B1-SIDE-R"}
    left, right = heights(held["B1-PARTITION-1"], "slide"), heights(held["B1-SIDE-R"], "slide")
    assert [y + TS for y in left] == pytest.approx(right)
    assert not any(f.withheld for f in layout.fronts)


@pytest.mark.parametrize(
    ("more", "fault"),
    [
        ("blind_left = 1066.8", "as wide as the box or wider"),
        ("blind_left = 500\nblind_right = 500", "a box is blind at one end"),
        ("blind_left = 500\ncolumns = [{}, {}]", "stands beside columns"),
    ],
)
def test_faults(tmp_path: Path, more: str, fault: str) -> None:
    """What cannot be built is a fault of the job file: nothing is made."""
    told = check(tmp_path, blind(DOOR, more=more))
    assert told.status == 1
    assert fault in told.text


def test_the_panel_keeps_the_filler_of_an_inside_corner(tmp_path: Path) -> None:
    """The run round the corner is 584.2 deep, its fronts 19.05, its pulls 35, and 6 to spare: the
    door may begin at 644.25; with 670 it begins at 653.3 (filler T + projection + 6: common
    practice, no source)."""
    door = front(lay(tmp_path, blind(DOOR)), "B1-1")
    assert door.place.x >= 584.2 + T + 35 + 6
