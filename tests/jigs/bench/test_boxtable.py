"""The table of a box: the golden stack of four drawers, a partition, a box already together."""

from functools import cache

import pytest
from msgspec.structs import replace

from jigs.bench.boxtable import BoxTable, box_tables
from jigs.bench.cost import cost_of
from jigs.bench.stations import plan_stations
from jigs.box.parts import Layout
from jigs.given.job import FrontSpec, ShelfSpec
from tests.jigs.sample import box, lay
from tests.templates.printed import laid_out
from tests.uneven import UNEVEN


def drawer(name: str, height: float | None = None) -> FrontSpec:
    return FrontSpec(id=name, kind="drawer", height=height)


STACK = box(
    drawer("B1-1", 163.5), drawer("B1-2", 188.8), drawer("B1-3", 188.8), drawer("B1-4", 220.8)
)
"""The golden box with its four drawers."""


@cache
def golden() -> Layout:
    return lay(STACK)


def table_of(layout: Layout) -> BoxTable:
    (table,) = box_tables(plan_stations(layout))
    return table


def test_the_golden_stack() -> None:
    """Derived: hole lines 51.3, 275.3, 467.3, 659.3, so 224, 192, 192 apart; the spacer of the
    second drawer 275.3 - 33 - 18.3 = 224.0 over the bottom panel."""
    table = table_of(golden())
    assert [line.left for line in table.lines] == pytest.approx([51.3, 275.3, 467.3, 659.3])
    assert [line.right for line in table.lines] == [line.left for line in table.lines]
    assert [line.serves for line in table.lines] == [("B1-4",), ("B1-3",), ("B1-2",), ("B1-1",)]
    assert {line.mark for line in table.lines} == {"S"}
    assert [line.above_panel for line in table.lines] == pytest.approx([33.0, 257.0, 449.0, 641.0])
    spacers = [line.spacer.above_panel for line in table.lines if line.spacer]
    assert spacers == pytest.approx([0.0, 224.0, 416.0, 608.0])
    assert table.strokes == 4


def test_a_box_already_together_is_struck_board_by_board() -> None:
    """The same heights, told above its panel."""
    together = table_of(lay(replace(STACK, assembled=True)))
    assert together.assembled
    assert [line.above_panel for line in together.lines] == pytest.approx(
        [line.above_panel for line in table_of(golden()).lines]
    )
    assert together.strokes == 8


def test_boxes_already_together_come_last() -> None:
    """A block of their own, whatever their order in the job."""
    first = replace(STACK, assembled=True)
    other = replace(
        STACK,
        id="B2",
        fronts=tuple(replace(f, id=f.id.replace("B1", "B2")) for f in STACK.fronts),
    )
    tables = box_tables(plan_stations(lay(first, other)))
    assert [table.box for table in tables] == ["B2", "B1"]


def test_a_partition_counts_from_its_own_end() -> None:
    """It stands on the bottom panel, 18.3 up; over the panel both boards agree."""
    first, second = box_tables(plan_stations(laid_out(UNEVEN)))
    assert (first.column, second.column) == (1, 2)
    for line in first.lines:
        assert line.left is not None
        assert line.right is not None
        assert line.left - line.right == pytest.approx(18.3)
        assert line.right == pytest.approx(line.above_panel)
    marks = {line.mark for line in second.lines}
    assert marks == {"P", "N"}


def test_pins_say_which_crosses() -> None:
    """Whole steps of 32 from the line, which passes through the middle one."""
    layout = lay(replace(box(), shelves=(ShelfSpec(low=100.0, high=500.0),), fronts=()))
    table = table_of(layout)
    pins = [line for line in table.lines if line.mark == "N"]
    heights = sorted(
        line.above_panel + 18.3 + 32 * cross for line in pins for cross in line.crosses
    )
    (left,) = [side for side in layout.sides if side.side == "left"]
    assert heights == pytest.approx(sorted({round(hole.y, 4) for hole in left.holes}))
    assert all(0 in line.crosses for line in pins)


def test_a_line_across_both_boards_is_struck_once() -> None:
    """Four slide lines; the drawer boxes and fronts are set on edges, the pulls on the middle and
    a line below the top edge."""
    cost = cost_of(plan_stations(golden()))
    assert cost.lines == 4 + 2 * 4
    assert cost.settings == 8 + 4 * 4 + 4 + 2 * 4


def test_the_plates_of_a_pair_are_one_line_across_both_boards() -> None:
    """Its doors are alike, so that each line serves the left door's plate and the right one's."""
    table = table_of(lay(box(FrontSpec(id="B1-1", kind="pair"))))
    assert len(table.lines) == table.strokes == 2
    for line in table.lines:
        assert line.serves == ("B1-1L", "B1-1R")
        assert line.left == line.right
