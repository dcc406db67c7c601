"""The story stick's heights: every hole of every side of a family, and the spacer boards."""

from pathlib import Path

import pytest
from hypothesis import given, settings

from jigs.bench.boxtable import box_tables
from jigs.bench.stations import plan_stations
from jigs.bench.storystick import SAME_LINE, find_sticks
from jigs.box.parts import Layout
from jigs.given.job import Job
from jigs.layout.layout import lay_out
from jigs.reading.inputs import read_job
from tests.jobs import jobs
from tests.templates.printed import laid_out
from tests.uneven import UNEVEN

GOLDEN = """
schema = 1
units = "mm"
[material]
side = 18.3
front = 19.05
[reveal]
side = 1.6
top = 1.6
bottom = 1.6
between = 3.2
[slide.runner]
like = "undermount-533"
width_less = 42
depth_allowance = 16
drawer_shorter = 0
fixing_at = [37, 165]
carry_at = [261]
fixing_height = 33
drawer_rise = 14
[use]
slide = "runner"
[[box]]
id = "B1"
kind = "drawer"
width = 457.2
height = 774.7
depth = 584.2
  [[box.front]]
  kind = "drawer"
  height = 163.5
  [[box.front]]
  kind = "drawer"
  height = 188.8
  [[box.front]]
  kind = "drawer"
  height = 188.8
  [[box.front]]
  kind = "drawer"
  height = 220.8
"""


def _laid(text: str, folder: Path) -> Layout:
    path = folder / "job.toml"
    path.write_text(text, encoding="utf-8")
    return lay_out(read_job(path))


def test_golden_drawers_stand_on_one_stick(tmp_path: Path) -> None:
    """Hole lines 51.3, 275.3, 467.3, 659.3 (derived: 18.3 + 33, then 7, 6 and 6 x 32), on both
    sides."""
    (stick,) = find_sticks(_laid(GOLDEN, tmp_path))
    assert stick.boards == ("B1-SIDE-L", "B1-SIDE-R")
    assert [line.y for line in stick.lines] == pytest.approx([51.3, 275.3, 467.3, 659.3])
    assert [line.serves for line in stick.lines] == [("B1-4",), ("B1-3",), ("B1-2",), ("B1-1",)]
    assert all(line.boards == stick.boards for line in stick.lines)


def test_the_uneven_box_has_a_stick_for_its_sides_and_one_for_its_partition() -> None:
    """The left side's slide lines are not the right side's, and stand 18.3 lower on the
    partition; the spacer boards are the same."""
    sides, partition = find_sticks(laid_out(UNEVEN))
    assert (sides.boards, partition.boards) == (("B1-SIDE-L", "B1-SIDE-R"), ("B1-PARTITION-1",))
    left = [line for line in sides.lines if line.boards == ("B1-SIDE-L",)]
    assert [line.serves for line in left] == [("B1-2",), ("B1-1",)]
    assert [line.y for line in left] == pytest.approx([18.3 + 33, 571.5 + 30.7 + 19])
    own = [line.y for line in partition.lines if line.serves]
    assert own == pytest.approx([33.0, 571.5 + 30.7 + 19 - 18.3])
    for stick in (sides, partition):
        spacers = [spacer.above_panel for spacer in stick.spacers]
        assert spacers == pytest.approx([0.0, 571.5 + 30.7 + 19 - 33 - 18.3])


def test_golden_spacer_boards(tmp_path: Path) -> None:
    """A slide's foot stands 33 below its hole line: the lowest on the panel, 51.3 - 33 = 18.3."""
    (stick,) = find_sticks(_laid(GOLDEN, tmp_path))
    assert [spacer.part for spacer in stick.spacers] == ["B1-4", "B1-3", "B1-2", "B1-1"]
    assert [spacer.above_panel for spacer in stick.spacers] == pytest.approx(
        [line - 33 - 18.3 for line in (51.3, 275.3, 467.3, 659.3)]
    )


def test_a_spacer_goes_by_the_slides_own_numbers(tmp_path: Path) -> None:
    """An undermount's foot is its fixing height below the line, however low it is drawn (end height
    40 here): the lowest still stands on the panel."""
    tall = GOLDEN.replace("fixing_height = 33", "fixing_height = 42")
    tall = tall.replace("drawer_rise = 14", "drawer_rise = 23")
    (stick,) = find_sticks(_laid(tall, tmp_path))
    assert [spacer.above_panel for spacer in stick.spacers] == pytest.approx([0, 224, 416, 608])


@pytest.mark.parametrize("stated", ["", "end_height = 35\n"])
def test_a_side_mount_has_no_spacer(tmp_path: Path, stated: str) -> None:
    """It is screwed to holes on its centre line; how high its end is drawn sets nothing."""
    text = GOLDEN.replace("fixing_height = 33\ndrawer_rise = 14\n", stated)
    text = text.replace("undermount-533", "sidemount-508")
    layout = _laid(text, tmp_path)
    (stick,) = find_sticks(layout)
    assert (len(stick.lines), stick.spacers) == (4, ())
    tables = box_tables(plan_stations(layout))
    assert [line.spacer for table in tables for line in table.lines] == [None] * 4


def test_it_says_what_is_unconfirmed_and_what_is_missing(tmp_path: Path) -> None:
    """Nothing where the slide was measured; a drawer held back is named, its line is not there."""
    (stick,) = find_sticks(_laid(GOLDEN, tmp_path))
    assert {number.record for number in stick.open} == {"runner"}
    assert "fixing_height" in {number.key for number in stick.open}
    sure = GOLDEN.replace("drawer_rise = 14", 'drawer_rise = 14\nconfirmed = "measured"')
    (stick,) = find_sticks(_laid(sure, tmp_path))
    assert (stick.open, stick.missing) == ((), ())
    held = sure.replace("  height = 188.8\n", "  height = 188.8\n  drawer_height = 300\n", 1)
    (stick,) = find_sticks(_laid(held, tmp_path))
    assert stick.missing == ("B1-2",)
    assert all("B1-2" not in line.serves for line in stick.lines)


def test_sides_of_other_heights_have_another_stick(tmp_path: Path) -> None:
    """The longest comes first; boxes may be chosen."""
    second = GOLDEN[GOLDEN.index("[[box]]") :].replace('"B1"', '"B2"').replace("774.7", "800")
    second = second.replace("  height = 220.8\n", "")
    layout = _laid(GOLDEN + second, tmp_path)
    assert [stick.height for stick in find_sticks(layout)] == pytest.approx([800, 774.7])
    assert [stick.height for stick in find_sticks(layout, ["B1-SIDE-L"])] == pytest.approx([774.7])


def check_every_hole_of_every_side_is_on_a_stick(job: Job) -> None:
    layout = lay_out(job)
    sticks = find_sticks(layout)
    for side in layout.sides:
        if not side.holes:
            continue
        (stick,) = [stick for stick in sticks if side.board in stick.boards]
        assert stick.height == pytest.approx(side.height, abs=0.01)
        for hole in side.holes:
            assert any(
                abs(line.y - hole.y) <= SAME_LINE + 1e-6 and side.board in line.boards
                for line in stick.lines
            )


@pytest.mark.slow
@given(jobs())
@settings(max_examples=30)
def test_every_hole_of_every_side_is_on_a_stick_in_many_jobs(job: Job) -> None:
    """Each board is on one stick, each of its holes on a line that names the board."""
    check_every_hole_of_every_side_is_on_a_stick(job)


DOOR = (
    GOLDEN.split("[[box]]")[0]
    + """
[[box]]
id = "T1"
kind = "tall"
width = 457.2
height = 2000
depth = 584.2
  [[box.front]]
  kind = "door"
  hinged = "left"
"""
)
ADJUSTABLE = "  [[box.shelf]]\n  adjustable = true\n"


def _only(text: str, folder: Path, kind: str) -> set[tuple[str, ...]]:
    (stick,) = find_sticks(_laid(text, folder))
    return {line.only for line in stick.lines if line.kind == kind}


def test_a_line_of_one_side_names_it(tmp_path: Path) -> None:
    """A door hinged at its left has plates in the left side alone; its shelf pins are in both."""
    assert _only(DOOR + ADJUSTABLE, tmp_path, "plate") == {("LEFT",)}
    assert _only(DOOR + ADJUSTABLE, tmp_path, "shelf") == {()}
    right = DOOR.replace('"left"', '"right"') + ADJUSTABLE
    assert _only(right, tmp_path, "plate") == {("RIGHT",)}


def test_lines_of_several_boxes_name_boards_by_their_boxes(tmp_path: Path) -> None:
    """Pins in both sides of T1, plates in the left sides of both: T2's right side has no line at
    all, so that even a line on every other board is named."""
    other = DOOR[DOOR.index("[[box]]") :].replace("T1", "T2")
    text = DOOR + ADJUSTABLE + other
    assert _only(text, tmp_path, "plate") == {("T1 L", "T2 L")}
    assert _only(text, tmp_path, "shelf") == {("T1 L+R",)}


def test_a_stick_of_one_board_is_struck_on_no_other(tmp_path: Path) -> None:
    """Nothing but a door hinged at its left: the right side has no holes, and no line."""
    (stick,) = find_sticks(_laid(DOOR, tmp_path))
    assert (stick.boards, stick.struck) == (("T1-SIDE-L",), "each")


def test_sides_parted_by_a_partition_are_not_struck_together(tmp_path: Path) -> None:
    """Drawers in two columns: each side shares its lines with the partition, none with the other
    side, whose heights differ. With the same drawers in one column both sides share them."""
    (sides, *_) = [stick for stick in find_sticks(laid_out(UNEVEN)) if stick.struck != "faces"]
    assert {line.only for line in sides.lines} == {("LEFT",), ("RIGHT",)}
    assert sides.struck == "each"
    (golden,) = find_sticks(_laid(GOLDEN, tmp_path))
    assert golden.struck == "together"


def test_a_box_already_together_is_laid_on_no_stop(tmp_path: Path) -> None:
    """Its sides cannot be laid edge to edge, nor a stick on their ends."""
    text = GOLDEN.replace('id = "B1"', 'id = "B1"\nassembled = true')
    (stick,) = find_sticks(_laid(text, tmp_path))
    assert (stick.struck, stick.standing) == ("each", ("B1",))
