"""Fronts of which nothing is left are told, in a box that stands already too."""

from pathlib import Path

import pytest

from tests.jigs.cases.kitchen import box, check, codes, lay

DOOR = 'kind = "door"\nhinged = "left"'
BUILT = (
    "built = true\nmeasured_width = [457, 457.2]\nmeasured_height = [774, 775]\n"
    "diagonals = [900, 898]"
)
WIDE = "built = true\nmeasured_width = [914, 914.4]\nmeasured_height = [774, 775]"
ROUNDED = "3.2\n[fronts]\nincrement = 32"


@pytest.mark.parametrize("more", ["", BUILT])
def test_given_heights_that_leave_nothing(tmp_path: Path, more: str) -> None:
    """A drawer as high as the box, and a door under it."""
    told = check(tmp_path, box('kind = "drawer"\nheight = 771.5', DOOR, more=more))
    assert told.status == 1
    assert "the given heights leave nothing for the other fronts" in told.text


@pytest.mark.parametrize("more", ["", BUILT])
def test_an_increment_that_leaves_nothing(tmp_path: Path, more: str) -> None:
    """774.7 less reveals, gap and 740 leave 26.7: no whole 32 is in that; the drawer is drilled."""
    assert 774.7 - 3.2 - 1.6 - 3.2 - 740 < 32
    fronts = 'kind = "drawer"\nheight = 740', DOOR
    told = check(tmp_path, box(*fronts, more=more), between=ROUNDED)
    assert told.status == 1
    assert "B1-2: its height, rounded down to whole 32.0 mm" in told.text
    layout = lay(tmp_path, box(*fronts, more=more), between=ROUNDED)
    assert [front.withheld for front in layout.fronts] == [False, True]
    assert codes(layout, "B1-1") & {"reveals-do-not-close"} == set()


def test_both_leaves_of_a_pair_are_named(tmp_path: Path) -> None:
    """And the appliance's opening over them is none that is ordered."""
    fronts = 'kind = "opening"\nheight = 740', 'kind = "pair"'
    layout = lay(tmp_path, box(*fronts, width=914.4, more=WIDE), between=ROUNDED)
    assert [front.withheld for front in layout.fronts] == [True, True]
