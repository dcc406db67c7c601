"""Words laid out in pieces."""

from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import fields

from templates.page.marks import Area, Circle, Line, Mark, Outline, Qr, Text
from templates.page.pieces import GAP, MarkBlock, flow, least_height, moved, paragraph, stacked
from templates.page.typeface import text_box

heights = st.lists(st.floats(4, 60), min_size=1, max_size=20)


def pieces_of(wanted: list[float]) -> list[MarkBlock]:
    return [MarkBlock(height=height, marks=()) for height in wanted]


def test_what_is_measured_is_not_drawn() -> None:
    """Pieces below each other are drawn where their marks are asked for, and then as they lie."""
    drawn: list[str] = []

    def draw() -> tuple[Mark, ...]:
        drawn.append("drawn")
        return (Line(x1=0.0, y1=0.0, x2=5.0, y2=-3.0, width=0.18),)

    block = stacked([MarkBlock(height=3.0, marks=draw), MarkBlock(height=4.0, marks=draw)])
    assert (block.height, drawn) == (3.0 + GAP + 4.0, [])
    first, second = block.marks
    assert (first, second) == (*draw(), *moved(draw(), 0.0, -3.0 - GAP))


@given(heights, st.integers(1, 4), st.floats(40, 200))
def test_pieces_flow_down_and_never_split(wanted: list[float], columns: int, height: float) -> None:
    """In order, column after column, none below the foot."""
    places = flow(wanted, columns, height)
    if places is None:
        return
    assert [column for column, _ in places] == sorted(column for column, _ in places)
    assert places[-1][0] < columns
    for k, (piece, (column, down)) in enumerate(zip(wanted, places, strict=True)):
        assert down + piece <= height + 1e-6
        if k and places[k - 1][0] == column:
            assert down >= places[k - 1][1] + wanted[k - 1] + GAP - 1e-6


@given(heights, st.integers(1, 4))
def test_the_least_height_is_the_least(wanted: list[float], columns: int) -> None:
    """A millimetre less does not do, or would be less than the words themselves."""
    height = least_height(wanted, columns, 2000.0)
    assert height is not None
    assert flow(wanted, columns, height) is not None
    assert flow(wanted, columns, height - 2.0) is None
    assert least_height(wanted, columns, height - 1.5) is None


def test_a_paragraph_keeps_within_its_piece() -> None:
    """All its letters lie between its upper edge and its height, within its width; the ring of
    a capital may rise into the gap above."""
    piece = paragraph("Ångström gauges lie Ready. " * 6, 60.0, hang="12")
    for mark in piece.marks:
        assert isinstance(mark, Text)
        x0, y0, x1, y1 = text_box(mark)
        assert x0 >= 0.0
        assert x1 <= 60.0
        assert y0 >= -piece.height
        assert y1 <= 0.7


def test_every_kind_of_mark_is_moved_whole() -> None:
    """By as much in all its points; all else it says stays, whatever that is."""
    around = ((1.0, 2.0), (3.0, 4.0), (5.0, 2.0))
    marks: tuple[Mark, ...] = (
        Text(x=1.0, y=2.0, text="UP", size=5.0, bold=True, anchor="end", angle=90,
             layer="front", name="B1-1"),
        Circle(x=1.0, y=2.0, diameter=5.0, width=0.5, layer="pull", name="B1-1"),
        Qr(x=1.0, y=2.0, text="B1", module=0.7, rise=0.6, short=0.1),
        Line(x1=1.0, y1=2.0, x2=3.0, y2=4.0, width=0.5, dash="axis", layer="swing", name="B1-1"),
        Area(points=around, fill="white", layer="front", name="B1-1"),
        Outline(points=around, width=0.5, dash="dashed", layer="front", name="B1-1"),
    )  # fmt: skip
    for mark in marks:  # else a field that is forgotten would not be missed
        assert all(getattr(mark, field.name) != field.default for field in fields(mark))
    assert tuple(moved(tuple(moved(marks, 8.0, -4.0)), -8.0, 4.0)) == marks
    text, _, _, line, *_ = moved(marks, 8.0, -4.0)
    assert isinstance(text, Text)
    assert isinstance(line, Line)
    assert (text.x, text.y) == (9.0, -2.0)
    assert (line.x1, line.y1, line.x2, line.y2) == (9.0, -2.0, 11.0, 0.0)
