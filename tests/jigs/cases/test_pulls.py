"""Pulls: centres that look alike, and fronts that have none."""

from pathlib import Path

import pytest

from tests import uneven
from tests.jigs.cases.kitchen import WB, R, across, box, check, codes, front, holes, lay
from tests.templates.printed import laid_out

DRAWER = 'kind = "drawer"\nheight = 152.4'
DOOR = 'kind = "door"\nhinged = "left"'
MIDDLE = (WB - 2 * R) / 2


@pytest.mark.parametrize(
    ("written", "apart"),
    [
        ("96", 96.0),
        ('"3 3/4 in"', 3.75 * 25.4),  # 95.25 is not 96
        ("128", 128.0),
        ('"5 in"', 5 * 25.4),  # 127 is not 128
    ],
)
def test_centres_in_inches_are_not_those_in_millimetres(
    tmp_path: Path, written: str, apart: float
) -> None:
    """x = W/2 +- cc/2, with the centres just as they are written (1 in = 25.4 mm exactly)."""
    made = front(lay(tmp_path, box(DRAWER, DOOR), centers=written), "B1-1")
    assert across(made, "pull") == pytest.approx([MIDDLE - apart / 2, MIDDLE + apart / 2])


def test_golden_pull(tmp_path: Path) -> None:
    """454 / 2 -+ 160 / 2 = 147 and 307 (derived)."""
    made = front(lay(tmp_path, box(DRAWER, DOOR)), "B1-1")
    assert across(made, "pull") == pytest.approx([147.0, 307.0])


def test_pulls_of_the_uneven_box() -> None:
    """On the middle of the drawer front, which is not the middle of its box; on the door, hung at
    the right, 50.8 from its left edge (derived)."""
    layout = laid_out(uneven.UNEVEN)
    drawer, door = front(layout, "B1-1"), front(layout, "B1-3")
    assert across(drawer, "pull") == pytest.approx([419.85 / 2 - 80, 419.85 / 2 + 80])
    assert drawer.drawer is not None
    assert drawer.drawer.x + drawer.drawer.width / 2 == pytest.approx(419.85 / 2 + 4.75 / 2)
    assert across(door, "pull") == pytest.approx([50.8])


def test_no_pulls_at_all(tmp_path: Path) -> None:
    """`pull = "none"`: no hole in the face, and cups and plates as ever."""
    layout = lay(tmp_path, box(f'{DRAWER}\npull = "none"', f'{DOOR}\npull = "none"'))
    for name in ("B1-1", "B1-2"):
        assert holes(front(layout, name), "pull") == []
        assert not front(layout, name).withheld
    assert len(holes(front(layout, "B1-2"), "cup")) == 2


def test_a_pull_screw_at_the_drawer_boxs_edge(tmp_path: Path) -> None:
    """A pull whose screws meet the top edge of the drawer box behind it is told."""
    high = f"{DRAWER}\ndrawer_height = 45.5"
    told = check(tmp_path, box(high, DOOR))
    assert "[drawer-too-low]" in told.text
    # Front 152.4, pull at 76.2; the box's underside 30.7 up, its top 30.7 + 50 = 80.7.
    layout = lay(tmp_path, box(f"{DRAWER}\ndrawer_height = 50", DOOR))
    assert "pull-at-box-edge" in codes(layout, "B1-1")


def test_a_pull_longer_than_its_front(tmp_path: Path) -> None:
    """480 between the holes of a front 296.8 wide: refused, and the remedy is another pull."""
    told = check(tmp_path, box(DRAWER, DOOR, width=300), centers="480")
    assert told.status == 1
    assert (300 - 2 * R - 480) / 2 < 0
    assert "a pull hole at x -91.6 mm" in told.text
    assert "Take a shorter pull or a knob for this front" in told.text


def test_pulls_that_nearly_line_up(tmp_path: Path) -> None:
    """3 between neighbours' pulls looks like a mistake: 0.3 to 6 (common practice)."""
    other = box('kind = "drawer"\nheight = 158.4', DOOR, name="B2")
    layout = lay(tmp_path, box(DRAWER, DOOR), other)
    assert "sight-line" in codes(layout, "B2-1")
