"""Rows that are alike share a block: each part keeps its boxes to tick, its code, its blanks and
its sum, and what the row above says stands again at the top of a page."""

from collections import Counter

import pytest
from msgspec.structs import replace

from jigs.bench.benchpart import BenchPart
from jigs.bench.station import Station
from jigs.bench.stations import plan_stations
from jigs.box.parts import Layout
from jigs.given.job import FrontSpec
from jigs.ground.lengths import format_mm
from templates.page.marks import Line, Mark, Outline, Text
from templates.page.pieces import MarkBlock
from templates.page.tickbox import BOX
from templates.page.typeface import text_width
from templates.stations.rowblocks import RowWords, alike, row_block, rows_block
from templates.stations.stationrows import one_card, rows_of
from templates.stations.stationview import shop_of
from templates.stations.tablepieces import BLANK, Span, size_and_blanks
from templates.words.markingwords import marks_words
from templates.words.rowwords import NEXT, sum_words
from tests.jigs.bench.test_rows import kitchen
from tests.jigs.bench.test_stations import demo

WIDTH = 188.8
DRAWERS = kitchen(*(FrontSpec(id=f"B-{row}", kind="drawer") for row in range(1, 4)))


def texts(block: MarkBlock) -> list[str]:
    return [mark.text for mark in block.marks if isinstance(mark, Text)]


def ticks(marks: tuple[Mark, ...]) -> int:
    return sum(isinstance(mark, Outline) for mark in marks)


def tables(layout: Layout) -> list[Station]:
    return [station for station in plan_stations(layout) if station.work != "sides"]


@pytest.mark.parametrize("name", ["drawers", pytest.param("demo", marks=pytest.mark.slow)])
def test_each_part_keeps_all_that_is_its_own(name: str) -> None:
    """ID, code, two blanks, a box to tick for each line struck and each setting bored, each sum."""
    layout = demo() if name == "demo" else DRAWERS
    shop, shared = shop_of(layout), 0
    for station in tables(layout):
        blocks = [each.block for each in rows_of(shop, station, WIDTH)]
        shared += len(blocks) < len(station.rows)
        said = " ".join(text for block in blocks for text in texts(block))
        marks = tuple(mark for block in blocks for mark in block.marks)
        assert ".." not in said
        done = [row for row in station.rows if not row.held]
        wanted = sum(
            sum(1 + bool(each.x or each.y) for each in row.settings) + 2 * (row.marks is not None)
            for row in done
        )
        assert ticks(marks) == wanted, station.name
        lines = [mark for mark in marks if isinstance(mark, Line)]
        blanks = [line for line in lines if abs(line.x2 - line.x1 - BLANK) < 1e-6]
        assert len(blanks) == 2 * len(station.rows)
        names = Counter(text for block in blocks for text in texts(block))
        for row in station.rows:
            assert names[row.part.id] >= 1
            assert row.part.code in said
        for row in done:
            sums = [marks_words(row.marks)] if row.marks else map(sum_words, row.closing)
            assert all(each in said for each in sums), row.part.id
    assert shared


def test_a_box_to_tick_stands_under_what_it_is_for() -> None:
    """Card, figure and inches above; below each of them the part's boxes, none under another."""
    layout = DRAWERS
    (station,) = (each for each in tables(layout) if each.work == "fronts-on-boxes")
    block = [*rows_of(shop_of(layout), station, WIDTH)][-1].block
    above = {mark.text: mark.x for mark in block.marks if isinstance(mark, Text)}
    boxes = {min(x for x, _ in mark.points) for mark in block.marks if isinstance(mark, Outline)}
    starts = [above[name] for name in ("A", "B", "marked", "bored")]
    assert sorted(boxes) == pytest.approx(starts, abs=0.6)


PART = BenchPart(
    id="B1-1", code="ABCD", box="B1", face="back", width=400.0, height=200.0, thickness=19.0
)
ROW = RowWords(
    part=PART,
    named="ABCD",
    in_full="ABCD door, north",
    chips=((Span("A", bold=True), Span("97.8", 3.5, True), Span("", tick=True)),),
    copies=(1,),
    closed=("97.8 + 102.2 = 200.0", "across: 50.0 + 350.0 = 400.0"),
)


def test_only_what_is_alike_shares_a_block() -> None:
    """Another copy of a card, figure, warning, open number or hold keeps a row of its own; one sum
    in common is enough, since each part's own is said."""
    assert alike([ROW, replace(ROW, named="EFGH")])
    assert alike([ROW, replace(ROW, closed=("other", ROW.closed[1]))])
    assert not alike([ROW, replace(ROW, closed=("other", "another"))])
    chip = (Span("A", bold=True), Span("97.9", 3.5, True), Span("", tick=True))
    for other in (
        replace(ROW, copies=(2,)),
        replace(ROW, chips=(chip,)),
        replace(ROW, more=("EDGES ROUNDED.",)),
        replace(ROW, open="OPEN: main."),
        replace(ROW, hold="no hand"),
    ):
        assert not alike([ROW, other])


def test_a_fresh_copy_is_named_where_it_is_taken() -> None:
    """Before the settings of the first part that takes it."""
    fresh = (Span(NEXT, bold=True, loose=True), *ROW.chips[0])
    rows = [replace(ROW, chips=(fresh,), copies=(2,)), replace(ROW, copies=(2,))]
    assert alike(rows)
    block = rows_block(rows, WIDTH, first=False)
    assert block is not None
    assert texts(block).count(NEXT) == 1


def test_sums_of_a_block_say_whose_they_are() -> None:
    other = replace(ROW, part=replace(PART, id="B2-1", height=300.0),
                    closed=("97.8 + 202.2 = 300.0", ROW.closed[1]))  # fmt: skip
    block = rows_block([ROW, other], WIDTH, first=False)
    assert block is not None
    assert " ".join(texts(block)).endswith(
        "All: across: 50.0 + 350.0 = 400.0. B1-1: 97.8 + 102.2 = 200.0; B2-1: 97.8 + 202.2 = 300.0."
    )
    assert {"400.0 x 200.0", "400.0 x 300.0"} <= {*texts(block)}
    alone = rows_block([ROW, ROW], WIDTH, first=False)
    assert alone is not None
    assert texts(alone).count("400.0 x 200.0") == 1


def test_a_block_that_finds_no_room_is_none() -> None:
    """Its rows then stand by themselves."""
    many = replace(ROW, chips=ROW.chips * 12, copies=(1,) * 12)
    assert rows_block([many, many], WIDTH, first=False) is None
    block = rows_block([ROW, ROW], WIDTH, first=False)
    assert block is not None
    for mark in block.marks:
        if isinstance(mark, Text):
            assert mark.x + text_width(mark.text, mark.size, mark.bold) <= WIDTH
        if isinstance(mark, Outline):
            assert max(x for x, _ in mark.points) - min(x for x, _ in mark.points) == BOX


def test_kind_and_wall_stand_where_they_change_and_first_on_a_page() -> None:
    assert "ABCD door, north" in texts(row_block(ROW, WIDTH, first=True))
    assert "ABCD" in texts(row_block(ROW, WIDTH, first=False))
    layout = DRAWERS
    (station,) = (each for each in tables(layout) if each.work == "drawer-boxes")
    blocks = [*rows_of(shop_of(layout), station, WIDTH)]
    wall = layout.job.boxes[0].wall
    for block in blocks[1:]:
        assert block.first is not None
        assert wall in " ".join(texts(block.first))
    assert sum(wall in " ".join(texts(each.block)) for each in blocks) == 1


def test_a_stations_only_card_is_named_above_its_rows() -> None:
    """Where every setting has a figure; else a row would have a box to tick and nothing else."""
    shop = shop_of(DRAWERS)
    (cups,) = (each for each in tables(DRAWERS) if each.work == "cups")
    blocks = [*rows_of(shop, cups, WIDTH)]
    said = [text for each in blocks for text in texts(each.block)]
    heads = texts(blocks[0].head)
    assert "CARD A:" in heads
    assert "↑ UP FROM BOTTOM EDGE:" in heads
    assert "A" not in said
    bare = replace(cups, rows=tuple(
        replace(row, settings=tuple(replace(each, x=None, y=None) for each in row.settings))
        for row in cups.rows
    ))  # fmt: skip
    assert one_card(cups, frozenset()) == "A"
    assert one_card(bare, frozenset()) == ""


def test_each_row_says_from_which_end_its_lines_are_struck() -> None:
    """The sum closes from either end; struck from the wrong one, a middle cup is off."""
    shop = shop_of(DRAWERS)
    struck = 0
    for station in tables(DRAWERS):
        low = {"box-front": "UNDERSIDE", "box-back": "UNDERSIDE"}.get(station.face, "BOTTOM EDGE")
        for row in station.rows:
            places = [each.y for each in row.settings if each.y and each.y.start == "bottom"]
            if not places:
                continue
            struck += 1
            (mine,) = rows_of(shop, replace(station, rows=(row,)), WIDTH)
            assert f"↑ UP FROM {low}:" in texts(mine.head), station.name
            said = texts(mine.block)
            assert {f"↑ {format_mm(place.value)}" for place in places} <= {*said}
            assert any(text.startswith("↑ ") and " = " in text for text in said)
    assert struck > 3


@pytest.mark.parametrize(("height", "said"), [(88.9, ["409.6 x 88.9"]), (0.0, [])])
def test_a_drawer_box_that_finds_no_height_has_no_size(height: float, said: list[str]) -> None:
    """What is measured on it is written all the same."""
    [station] = [each for each in tables(DRAWERS) if each.work == "drawer-boxes"]
    part = replace(station.rows[0].part, width=409.6, height=height)
    marks = size_and_blanks(part, 0.0).marks
    assert [mark.text for mark in marks if isinstance(mark, Text)] == said
    assert sum(isinstance(mark, Line) for mark in marks) == 2
