"""The sink base: a false front on a rail on edge, over doors."""

import re
from pathlib import Path

import pytest

from tests.jigs.cases.kitchen import (
    HB,
    TOP,
    TS,
    G,
    R,
    box,
    check,
    codes,
    front,
    heights,
    holes,
    lay,
    side,
)

FALSE = 'kind = "false-front"\nheight = 152.4'
PAIR = 'kind = "pair"'
DOOR = 'kind = "door"\nhinged = "left"'


def test_a_sink_base(tmp_path: Path) -> None:
    """No stretchers but a rail of 100 on edge (common practice, no source): hinge centres keep
    35 below it. The doors end at 774.7 - 3.2 - 152.4 - 3.2 = 615.9, the rail at 674.7."""
    layout = lay(tmp_path, box(FALSE, PAIR, kind="sink", width=914.4))
    left = front(layout, "B1-2L")
    assert left.place.y + left.height == pytest.approx(HB - TOP - 152.4 - G)
    assert all(left.place.y + cup <= HB - 100 - 35 for cup in heights(left, "cup"))
    assert not any(f.withheld for f in layout.fronts)


@pytest.mark.parametrize(("rail", "more"), [(100, ""), (150, "rail = 150")])
def test_full_doors_before_a_rail_are_told_heights(tmp_path: Path, rail: int, more: str) -> None:
    """A full door's upper hinge would stand 100 from its top, behind the rail: refused, with
    heights that it may have, 35 or more below the rail; said so, it is drilled."""
    told = check(tmp_path, box(DOOR, kind="sink", more=more))
    assert told.status == 1
    assert "[hinge-no-room]" in told.text
    said = re.search(r"Say (hinges_at = \[[^]]*\])", told.text)
    assert said is not None
    layout = lay(tmp_path, box(f"{DOOR}\n{said[1]}", kind="sink", more=more))
    door = front(layout, "B1-1")
    assert not door.withheld
    assert R + heights(door, "cup")[-1] <= HB - rail - 35
    plates = heights(side(layout, "B1-SIDE-L"), "plate")
    assert plates[-1] - 16 == pytest.approx(R + heights(door, "cup")[-1])


def test_doors_above_a_false_front_are_asked_whether_they_stand_so(tmp_path: Path) -> None:
    """The list had them upside down: a remedy by heights alone would bore for it. A door that is
    alone in its box is not asked."""
    asked = "Do the fronts of its box stand in this order from the top"
    swapped = check(tmp_path, box(PAIR, FALSE, kind="sink", width=914.4)).text
    assert "[hinge-no-room]" in swapped
    assert asked in " ".join(swapped.split())
    assert asked not in " ".join(check(tmp_path, box(DOOR, kind="sink")).text.split())


def test_a_false_front_is_fastened_too(tmp_path: Path) -> None:
    """Four screws from behind, through the rail of 100: a third of the 96.8 of it that the front
    covers from its edges, 32, so that no one wants a block (derived)."""
    layout = lay(tmp_path, box(FALSE, PAIR, kind="sink", width=600))
    false = front(layout, "B1-1")
    screws = holes(false, "front-fixing")
    assert len(screws) == 4
    assert {h.face for h in screws} == {"back"}
    assert heights(false, "front-fixing") == pytest.approx(
        [HB - 100 - false.place.y + 32, HB - TOP - false.place.y - 32]
    )
    told = check(tmp_path, box(FALSE, PAIR, kind="sink", width=600))
    assert told.status == 0
    assert "[blocks-needed]" not in told.text


@pytest.mark.parametrize("high", [60, 80, 152.4])
def test_a_false_front_without_a_rail_wants_blocks(tmp_path: Path, high: float) -> None:
    """The stretchers of a base box lie flat: nothing stands behind any of its four screws, however
    low it is. A rail that the job states takes them."""
    made = box(f'kind = "false-front"\nheight = {high}', DOOR)
    assert len(holes(front(lay(tmp_path, made), "B1-1"), "front-fixing")) == 4
    told = check(tmp_path, made)
    assert told.status == 0
    assert "[blocks-needed]" in told.text
    assert "no rail on edge stands behind it" in told.text
    assert 'rail = "100 mm"' in told.text
    railed = box(f'kind = "false-front"\nheight = {high}', DOOR, more="rail = 100")
    assert "[blocks-needed]" not in check(tmp_path, railed).text


def test_the_lower_row_of_a_high_false_front_wants_blocks(tmp_path: Path) -> None:
    """300 high it would hang from its top alone."""
    told = check(
        tmp_path, box('kind = "false-front"\nheight = 300', PAIR, kind="sink", width=914.4)
    )
    assert "the rail behind it ends 674.7 mm" in told.text
    assert "behind the lower row" in told.text


def test_a_false_front_has_no_pull_unless_it_names_one(tmp_path: Path) -> None:
    """Nobody pulls at it. Of one that it names the screws' heads are sunk: against its back lies
    the rail."""
    layout = lay(tmp_path, box(FALSE, PAIR, kind="sink", width=600))
    assert holes(front(layout, "B1-1"), "pull") == []
    named = front(
        lay(tmp_path, box(f'{FALSE}\npull = "bar"', PAIR, kind="sink", width=600)), "B1-1"
    )
    assert len(holes(named, "pull")) == 2
    assert named.screws.counterbore == 4.0


def test_a_drawer_under_a_sinks_rail(tmp_path: Path) -> None:
    """A drawer where the false front should be has 674.7 - 10 above it: no room, refused."""
    told = check(tmp_path, box('kind = "drawer"\nheight = 152.4', PAIR, kind="sink", width=914.4))
    assert HB - 100 - 10 - (HB - TOP - 152.4 + TS + 14 - R) < 50
    assert told.status == 1
    assert "[drawer-too-low]" in told.text
    assert "or make it a false front" in told.text


def test_a_false_front_lines_up_with_the_drawer_beside_it(tmp_path: Path) -> None:
    """Equal heights beside each other, both with pulls: one line, nothing to say; 3 lower is
    told."""
    pulled = f'{FALSE}\npull = "bar"'
    drawer = 'kind = "drawer"\nheight = {}'
    beside = box(drawer.format(152.4), DOOR, name="B2")
    assert "sight-line" not in codes(lay(tmp_path, box(pulled, PAIR, kind="sink"), beside), "B2-1")
    lower = box(drawer.format(158.4), DOOR, name="B2")
    assert "sight-line" in codes(lay(tmp_path, box(pulled, PAIR, kind="sink"), lower), "B2-1")
