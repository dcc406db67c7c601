"""The rows of boards at their stations, read from paper alone, come to the holes of the list."""

import re
from dataclasses import replace
from functools import cache

import pytest
from hypothesis import HealthCheck, given, settings

from jigs.bench.boxtable import box_tables
from jigs.bench.station import Station
from jigs.bench.stations import plan_stations
from jigs.box.parts import Layout
from jigs.given.job import Job
from jigs.layout.layout import lay_out
from templates.page.paper import PAPERS
from templates.scan.partpage import part_page
from templates.stations.stationset import make_stations
from templates.words.sidewords import punch_words, sums_of_board
from templates.words.sumwords import punches_words
from templates.writers.pdf import write_pdf
from tests.jobs import jobs
from tests.jobtexts import box_text
from tests.readback import PrintedPage, read_pages
from tests.siderows import Bore, bored_on_page, cards_on, faults_of_rows, unlike
from tests.templates.printed import laid_out
from tests.templates.scan.shown import SERVED, read, show
from tests.uneven import UNEVEN

DOOR = 'kind = "door"\nhinged = "{}"\ncolumn = {}'
DRAWER = 'kind = "drawer"\ncolumn = 1\nslide = "undermount-457"'
PINS = "{{adjustable = true, column = {}, from = 200, to = 520}}"


def columns(id: str, *fronts: str, pins: tuple[int, ...], more: str = "") -> str:
    shelves = ", ".join(PINS.format(column) for column in pins)
    return box_text(
        id, "base", *fronts,
        more=f"columns = [{{width = 400}}, {{share = 1}}]\nshelf = [{shelves}]\n{more}",
    ).replace("width = 457.2", "width = 900")  # fmt: skip


BOTH_DOORS = (DOOR.format("right", 1), DOOR.format("left", 2))
"""Both hang on the partition: it is bored through, and its own cards lie as they are set."""
BOXES = {
    "uneven": UNEVEN,
    "legs": columns(
        "B1", f"{DRAWER}\nheight = 250", DRAWER, DOOR.format("left", 2), pins=(2,),
        more="legs = 101.6",
    ),
    "through": columns("B1", *BOTH_DOORS, pins=(1, 2)),
    "alike": columns("B1", *BOTH_DOORS, pins=(2,)) + columns("B2", *BOTH_DOORS, pins=(2,)),
    "assembled": columns("B1", *BOTH_DOORS, pins=(1, 2), more="assembled = true"),
    "raw": columns("B1", *BOTH_DOORS, pins=(2,), more='band = "later"'),
    "shallow": columns("B1", *BOTH_DOORS, pins=(1, 2)).replace("depth = 584.2", "depth = 323.85")
    + box_text("B2", "base", DOOR.format("left", 1), more=f"shelf = [{PINS.format(1)}]"),
}  # fmt: skip


Printed = tuple[tuple[PrintedPage, ...], list[Station]]
"""The pages of all stations for sides, and these."""


def printed_sides(layout: Layout) -> Printed:
    stations = [each for each in plan_stations(layout) if each.work == "sides"]
    pages = list(make_stations(layout, stations, PAPERS["common"]).pages)
    return read_pages(write_pdf(pages)) if pages else (), stations


@cache
def printed_boxes(name: str) -> Printed:
    return printed_sides(laid_out(BOXES[name]))


def faults_of_parts(printed: Printed, layout: Layout) -> list[str]:
    pages, stations = printed
    shown = show(layout)
    cards, faults, bores = cards_on(pages), list[str](), list[Bore]()
    for part in dict.fromkeys(row.part for station in stations for row in station.rows):
        page = read(part_page(shown.scan, part.id, shown.standings[part.id], SERVED))
        listed = [each for one in page.all("ul", "stations") for each in one.all("li")]
        entries = [each.text.replace("\u2060", "").replace("\u00a0", " ") for each in listed]
        bores += bored_on_page(entries, part, cards, faults)
    return faults + unlike(bores, layout)


@pytest.mark.parametrize("name", BOXES)
def test_a_boards_own_page_says_where_every_hole_is(name: str) -> None:
    """Which card, which crosses, over which edge, on which line, in which face."""
    assert faults_of_parts(printed_boxes(name), laid_out(BOXES[name])) == []


@pytest.mark.parametrize("name", BOXES)
def test_paper_alone_says_where_every_hole_of_a_board_is(name: str) -> None:
    """Edge, crosses and TURNED as the row says them, the card as it is printed."""
    assert faults_of_rows(*printed_boxes(name), laid_out(BOXES[name])) == []


@pytest.mark.slow
@settings(max_examples=25, deadline=None, suppress_health_check=list(HealthCheck))
@given(made=jobs())
def test_of_any_job(made: Job) -> None:
    layout = lay_out(made)
    printed = printed_sides(layout)
    assert faults_of_rows(*printed, layout) == []
    assert faults_of_parts(printed, layout) == []


def test_punch_to_punch_stands_in_the_sum_or_in_a_line_of_its_own() -> None:
    """Where only a door's plates are on a board its sum says it; with pins between, words do."""
    alone = box_text("B3", "base", DOOR.format("left", 1).replace("column = 1", ""))
    in_sum, in_words = 0, 0
    for text in (*BOXES.values(), alone):
        for station in plan_stations(laid_out(text)):
            for table in box_tables((station,)):
                rows = [row for row in station.rows if row.part in (table.left, table.right)]
                sums = " ".join(sums_of_board(table))
                words = " ".join(punch_words(table, rows))
                for row in rows:
                    for closing in row.closing if row.purpose == "plate" else ():
                        steps = punches_words(closing.places)
                        summed = f" + {steps.replace(', ', ' + ')} + " in sums
                        assert summed or f"plates {steps} apart." in words
                        in_sum, in_words = in_sum + summed, in_words + (steps in words)
    assert in_sum
    assert in_words


@pytest.mark.parametrize("name", ["through", "shallow"])
def test_a_table_names_the_page_of_the_other_board(name: str) -> None:
    """There that board is, under the same title, and names the page it is named on."""
    pages, _ = printed_boxes(name)
    named: dict[int, set[tuple[str, int]]] = {}
    for page in pages:
        found = re.findall(
            r"Lay (\S+) beside it, whose lines are at SIDES [AB], page (\d+)", page.text
        )
        named[page.number] = {(board, int(number)) for board, number in found}
    assert {board for each in named.values() for board, _ in each} == {
        "B1-PARTITION-1", "B1-SIDE-L"
    }  # fmt: skip
    for number, each in named.items():
        for board, other in each:
            text = pages[other - 1].text
            assert f"BOX B1, COLUMN 1 {board} " in text
            assert "BOX B1, COLUMN 1" in pages[number - 1].text
            assert number in {back for _, back in named[other]}


@pytest.mark.parametrize(
    ("said", "instead"),
    [("front edge", "rear edge"), (", not TURNED", ""), ("crosses -", "crosses +"), ("; B", "; A")],
)
def test_a_row_that_says_something_else_is_caught(said: str, instead: str) -> None:
    """Another edge, no turn, other crosses, another card."""
    layout = laid_out(BOXES["shallow"])
    pages, stations = printed_boxes("shallow")
    changed = [
        replace(
            page,
            runs=tuple(replace(run, text=run.text.replace(said, instead)) for run in page.runs),
        )
        for page in pages
    ]
    assert changed != list(pages)
    assert faults_of_rows(changed, stations, layout)
