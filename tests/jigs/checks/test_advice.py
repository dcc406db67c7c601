"""Advice: what stands outside published ranges, by the job's own units.

Slides beside the 32 mm row: told where the row is wanted, and cured by what is told.
"""

import pytest
from msgspec.structs import replace

from jigs.box.parts import Layout
from jigs.checks.advice import EN_1116, KCMA, advise, slides_off_row
from jigs.given.build import Build
from jigs.given.job import BoxSpec, ColumnSpec, FrontSpec, Grid
from jigs.given.stated import DrawerSize
from jigs.ground.lengths import Unit
from jigs.layout.layout import lay_out
from templates.words.findings import advice_words, check_text
from tests.jigs.sample import UNDER_COUNTER, box, codes, job, lay


def told(*boxes: BoxSpec, units: Unit = "mm") -> tuple[str, ...]:
    """Give the advice on these boxes."""
    return advice_words(advise(lay(*boxes, units=units)), units)


# Ranges: EN 1116, KCMA A161.1 (both second hand).
EN_ROWS = [
    (box(height=720.0, above_floor=100.0), None),
    (box(height=770.0, above_floor=100.0), None),
    (box(height=820.0, above_floor=100.0), None),
    (box(height=750.0, above_floor=100.0), "850.0 mm (33 15/32- in) high above the floor"),
    (box(height=770.0, above_floor=50.0), "a plinth 50.0 mm"),
    (replace(box(height=820.0, above_floor=0.0), legs=100.0), None),
    (replace(box(height=820.0, above_floor=0.0), legs=80.0), "a plinth 80.0 mm"),
    (box(height=720.0, above_floor=100.0, depth=560.0), None),
    (box(height=720.0, above_floor=100.0, depth=500.0), f"stand out {600 - 500 - 19.05:.1f} mm"),
    (box(kind="wall", depth=400.0, above_floor=1400.0), None),
    (box(kind="wall", depth=420.0, above_floor=1400.0), "420.0 mm (16 17/32+ in) deep; wall"),
]  # fmt: skip


@pytest.mark.parametrize(("made", "words"), EN_ROWS)
def test_a_metric_job_against_en_1116(made: BoxSpec, words: str | None) -> None:
    """What is inside a range is not spoken of, what is outside is named with the range."""
    found = told(made)
    if words is None:
        assert found == ()
    else:
        assert any(words in text and text.endswith(f"({EN_1116}).") for text in found)


@pytest.mark.parametrize(
    ("made", "words"),
    [
        (box(above_floor=76.2), None),
        (box(above_floor=76.0), "a toe 3- in (76.0 mm) high"),
        (box(kind="wall", depth=900.0, above_floor=10.0), None),
    ],
)
def test_a_job_in_inches_against_kcma(made: BoxSpec, words: str | None) -> None:
    """The toe space is at least 3 in high; nothing of EN 1116 is said."""
    found = told(made, units="in")
    assert bool(found) is (words is not None)
    for text in found:
        assert text.startswith("B1: ")
        assert text.endswith(f"({KCMA}).")
        assert words is not None
        assert words in text


def test_a_shallow_toe_space_in_inches() -> None:
    """At least 2 in deep, said once for all boxes on the platform."""
    boxes = box(name="B1"), box(name="B2"), replace(box(name="B3"), legs=80.0)
    shallow = replace(job(*boxes), build=Build(toe_back=50.0))
    (one,) = advice_words(advise(lay_out(shallow)), "in")
    assert one.startswith("B1, B2: ")
    assert "behind the front edges; the least is 2 in (50.8 mm)" in one
    assert advise(lay_out(replace(shallow, build=Build(toe_back=50.8)))) == ()


def test_a_height_that_nobody_gave_is_not_judged() -> None:
    """Advice on a default would be advice to ourselves; nor are boxes of a bare list judged."""
    low = replace(job(box(above_floor=20.0), units="mm"), assumed=frozenset({"box.B1.above_floor"}))
    assert advise(lay_out(low)) == ()
    assert told(box(above_floor=20.0, inferred=True)) == ()


def test_alike_boxes_are_named_together() -> None:
    """Two boxes of one height share a line."""
    found = told(box(name="B1", height=750.0, above_floor=100.0),
                 box(name="B2", height=750.0, above_floor=100.0, x=600.0))  # fmt: skip
    assert [text.partition(":")[0] for text in found] == ["B1, B2"]


def test_the_check_ends_with_the_advice_and_does_not_count_it() -> None:
    """The block stands last, after the count, and only where there is advice."""
    text = check_text(lay(box(height=750.0, above_floor=100.0), units="mm"))
    heading = "Advice (published ranges, not rules for your kitchen):"
    assert heading in text
    assert text.index(heading) > text.index("Nothing")
    assert "850" not in text[: text.index(heading)]
    assert heading not in check_text(lay(box(height=770.0, above_floor=100.0), units="mm"))


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
