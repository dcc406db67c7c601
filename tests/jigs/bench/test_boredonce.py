"""Holes that both faces of a partition share: bored through once, counted once."""

from jigs.bench.boxtable import box_tables
from jigs.bench.cost import cost_of
from jigs.bench.firstarticle import first_articles
from jigs.bench.rows import first_rows
from jigs.bench.stations import plan_stations
from templates.page.marks import Text
from templates.page.paper import PAPERS
from templates.stations.stationset import make_stations
from templates.words.sidewords import BORED
from tests.jobtexts import box_text
from tests.stationholes import compare, listed, set_out
from tests.templates.printed import laid_out

PINS = box_text(
    "B1", "open", 'kind = "opening"',
    more="columns = [{width = 400}, {share = 1}]\n"
    "shelf = [{adjustable = true, from = 200, to = 500}]",
).replace("width = 457.2", "width = 900")  # fmt: skip
"""Pins at the same heights in both columns meet in their partition of 18.3."""


def test_they_are_counted_once_and_listed_in_both_faces() -> None:
    layout = laid_out(PINS)
    stations = plan_stations(layout)
    assert compare(listed(layout), set_out(stations)) == ([], [])
    rows = [row for station in stations for row in station.rows if row.part.board]
    bored = [row for row in rows if row.bored]
    through = [row for row in rows if row.part.board and row.part.board.partition]
    assert len(through) == 2 * len(bored) > 0
    assert {row.part.board.side for row in bored if row.part.board} == {"left"}
    settings = sum(len(row.settings) for row in rows if not row.bored)
    assert cost_of(stations).settings == settings


def test_no_line_is_struck_for_them_alone() -> None:
    tables = box_tables(plan_stations(laid_out(PINS)))
    alone = [line for table in tables for line in table.lines if line.left_bored]
    assert alone
    struck = sum(len(table.lines) for table in tables)
    once = sum(line.right is None for line in alone)
    assert sum(table.strokes for table in tables) == struck - once


def test_the_page_says_bore_once() -> None:
    layout = laid_out(PINS)
    pages = make_stations(layout, plan_stations(layout), PAPERS["common"]).pages
    said = [m.text for page in pages for m in page.marks if isinstance(m, Text) and BORED in m.text]
    assert said


def test_a_first_article_is_bored_from_its_own_face() -> None:
    """Slides of two records with the same screws meet in a partition; the other column's drawer is
    not tried, since a box with one column tries its slide."""
    other = '[slide.other]\nlike = "runner"\nconfirmed = "measured"\n'
    two = box_text(
        "B2", "drawer",
        'kind = "drawer"\ncolumn = 1', 'kind = "drawer"\ncolumn = 2\nslide = "other"',
        more="columns = [{share = 1}, {share = 1}]",
    ).replace("width = 457.2", "width = 900")  # fmt: skip
    layout = laid_out(other + box_text("B1", "drawer", 'kind = "drawer"') + two)
    stations = plan_stations(layout)
    (through,) = [s for s in stations if any(row.bored for row in s.rows)]
    assert [row.bored for row in through.rows] == [False, True]
    tried = first_rows(stations, first_articles(layout))
    (alone,) = [station for station in tried if station.name == through.name]
    assert [(row.serves, row.bored) for row in alone.rows] == [("B2-2", False)]
    assert [(card.settings, card.copies) for card in alone.cards] == [(1, 1)]
