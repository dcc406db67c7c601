"""Slides beside the 32 mm row: told where the row is wanted, and cured by what is told."""

from dataclasses import replace

import pytest

from jigs.box.parts import Layout
from jigs.checks.slidegrid import slides_off_row
from jigs.given.job import ColumnSpec, FrontSpec, Grid
from jigs.given.stated import DrawerSize
from jigs.layout.layout import lay_out
from templates.words.findings import check_text
from tests.jigs.sample import UNDER_COUNTER, box, codes, job

ROW = Grid(slides=True)
HOLE = 33.0 - 14.0
"""A slide's holes above the drawer's underside (a - b of the sample's slide); mm."""
D_FB = 18.3 + 14.0 - 1.6
"""Every drawer box above its front's bottom edge; mm."""
START = (774.7 - 32 * 23) / 2
"""The balanced row's first hole; mm."""


def over_a_door(height: float = 152.4, door: float | None = None, grid: Grid = ROW) -> Layout:
    """Lay out a drawer over a door, its box so high that it cannot rise to the row."""
    drawer = FrontSpec(
        id="B1-1", kind="drawer", height=height, drawer_box=DrawerSize(drawer_height=92.0)
    )
    below = FrontSpec(id="B1-2", kind="door", hinged="left", height=door)
    return lay_out(job(box(drawer, below), grid=grid, reveal=UNDER_COUNTER))


def test_nothing_is_said_where_the_row_is_not_wanted() -> None:
    """`slides = false`: a slide's holes go by their own distances, and that is all."""
    layout = over_a_door(grid=Grid())
    assert slides_off_row(layout) == ()
    assert codes(layout) == []


def test_a_slide_beside_the_row_is_output_and_no_finding() -> None:
    """Its line is reckoned: the front's bottom edge, d_fb, and the holes above the underside."""
    layout = over_a_door()
    line = 774.7 - 3.2 - 152.4 + D_FB + HOLE
    nearest = START + 32 * round((line - START) / 32)
    (row,) = slides_off_row(layout)
    assert row.box == "B1"
    assert dict(row.off) == pytest.approx({"B1-1": line - nearest})
    assert codes(layout) == []
    text = " ".join(check_text(layout).split())
    assert "B1-1 3/8 in (9.5 mm) above its hole" in text
    assert "B1-1 6 3/8 in (161.9 mm), B1-2 23 13/16 in (604.9 mm)" in text
    assert "Nothing found" in text


def test_the_heights_that_are_told_cure_it() -> None:
    """With these heights the slide's holes are the row's."""
    (row,) = slides_off_row(over_a_door())
    heights = dict(row.heights)
    cured = over_a_door(heights["B1-1"], heights["B1-2"])
    assert slides_off_row(cured) == ()
    assert codes(cured) == []
    assert "row" not in check_text(cured)


def test_a_stack_is_cured_one_edge_at_a_time() -> None:
    """Three drawers over a door, each another way off the row."""

    def stack(*heights: float) -> Layout:
        drawers = [
            FrontSpec(
                id=f"B1-{row}",
                kind="drawer",
                height=high,
                drawer_box=DrawerSize(drawer_height=least),
            )
            for row, (high, least) in enumerate(zip(heights, (92.0, 74.0, 60.0), strict=True), 1)
        ]
        door = FrontSpec(id="B1-4", kind="door", hinged="right")
        return lay_out(job(box(*drawers, door, height=1000.0), grid=ROW, reveal=UNDER_COUNTER))

    (row,) = slides_off_row(stack(152.4, 123.0, 106.0))
    assert len(row.off) > 1
    heights = dict(row.heights)
    cured = stack(*(heights.get(f"B1-{n}", high) for n, high in ((1, 152.4), (2, 123), (3, 106))))
    assert slides_off_row(cured) == ()


@pytest.mark.parametrize("height", [774.7, 800.0])
def test_the_row_comes_to_the_lowest_drawer(height: float) -> None:
    """It stands on the bottom panel, and no front height moves it: the row's start is told."""
    low = FrontSpec(
        id="B1-1", kind="drawer", drawer_box=DrawerSize(drawer_height=height - 1.6 - 3.2 - 60)
    )
    tight = box(low, height=height)
    layout = lay_out(job(tight, grid=replace(ROW, start=20.0 + height / 100)))
    (row,) = slides_off_row(layout)
    assert row.start == pytest.approx(18.3 + 33.0 - 32)
    cured = lay_out(job(tight, grid=replace(ROW, start=row.start)))
    assert slides_off_row(cured) == ()


def test_a_column_on_the_row_is_not_named() -> None:
    """Of two columns only the one beside the row is told, with its own heights."""
    spec = replace(
        box(width=914.4, height=774.7),
        columns=(ColumnSpec(), ColumnSpec()),
        fronts=(
            FrontSpec(
                id="A", kind="drawer", height=161.9, drawer_box=DrawerSize(drawer_height=92.0)
            ),
            FrontSpec(id="B", kind="door", hinged="left"),
            FrontSpec(
                id="C",
                kind="drawer",
                height=152.4,
                drawer_box=DrawerSize(drawer_height=92.0),
                column=2,
            ),
            FrontSpec(id="D", kind="door", hinged="right", column=2),
        ),
    )
    (row,) = slides_off_row(lay_out(job(spec, grid=ROW, reveal=UNDER_COUNTER)))
    assert [name for name, _ in row.off] == ["C"]
    assert [name for name, _ in row.heights] == ["C", "D"]
