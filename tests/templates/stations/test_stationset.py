"""Stations on paper: from their data alone every hole comes out once; the paper is as its data."""

import json
from copy import deepcopy
from dataclasses import replace
from functools import cache
from typing import Any

import pytest
from msgspec import structs

from jigs.bench.stations import plan_stations
from jigs.box.parts import Layout
from jigs.given.job import FrontSpec
from jigs.ground.lengths import format_mm
from templates.page.marks import Text
from templates.page.paper import PAPERS
from templates.page.typeface import text_width
from templates.stations.cardwriting import titles_of
from templates.stations.stationset import StationSet, make_stations, stations_json
from templates.stations.stationview import shop_of
from templates.writers.pdf import write_pdf
from tests.clashes import clashes_of_marks, clashes_of_print
from tests.jigs.bench.test_rows import kitchen
from tests.jigs.bench.test_stations import demo, sound, uneven_box
from tests.jobtexts import box_text
from tests.readback import PrintedPage, read_pages
from tests.stationholes import Found, compare, listed, listed_marked
from tests.templates.printed import laid_out
from tests.templates.stations.stationreading import card_of, holes_of, origin, title_of

JOBS = ("uneven", *(pytest.param(name, marks=pytest.mark.slow) for name in ("demo", "mill-loft")))
ON_PAPER = 0.02
"""What the paper may differ from the data, mm."""


@cache
def layout_of(name: str) -> Layout:
    if name == "demo":
        return demo()
    return uneven_box() if name == "uneven" else sound(name)


@cache
def made(name: str) -> StationSet:
    layout = layout_of(name)
    return make_stations(layout, plan_stations(layout), PAPERS["common"])


@cache
def data_of(name: str) -> dict[str, Any]:
    data: dict[str, Any] = json.loads(stations_json(made(name)))
    return data


@cache
def printed(name: str) -> tuple[PrintedPage, ...]:
    return read_pages(write_pdf(made(name).pages))


@pytest.mark.parametrize("name", JOBS)
def test_every_hole_comes_out_once_from_the_data(name: str) -> None:
    assert compare(listed(layout_of(name)), holes_of(data_of(name))) == ([], [])


@pytest.mark.parametrize("name", JOBS)
def test_a_slip_in_the_data_is_found(name: str) -> None:
    """A line moved by 0.3, a card turned, two hands exchanged."""
    wanted = listed(layout_of(name))
    moved = deepcopy(data_of(name))
    setting = next(
        setting
        for station in moved["stations"]
        for row in station["rows"]
        for setting in row["settings"]
        if setting["y"] and setting["y"]["value_mm"]
    )
    setting["y"]["value_mm"] += 0.3
    assert compare(wanted, holes_of(moved)) != ([], [])
    turned = deepcopy(data_of(name))
    cups = next(each for each in turned["stations"] if each["purpose"] == "cup")
    cups["rows"][0]["settings"][0]["turned"] = True
    assert compare(wanted, holes_of(turned)) != ([], [])
    exchanged = deepcopy(data_of(name))
    for station in exchanged["stations"]:
        for card in station["cards"]:
            if station["purpose"] == "cup":
                for edge in card["edges"]:
                    edge["edge"] = {"left": "right", "right": "left"}[edge["edge"]]
    assert compare(wanted, holes_of(exchanged)) != ([], [])


@pytest.mark.parametrize("name", JOBS)
def test_boxes_stand_where_their_fronts_are_marked(name: str) -> None:
    """Through a box that stands on both corner cards its front's holes come where they are
    listed."""
    data = data_of(name)
    boxes = {box.id: box for box in layout_of(name).drawers}
    found: list[Found] = []
    for station in data["stations"]:
        for row in station["rows"]:
            marks = row.get("marks")
            if marks is None:
                continue
            width = boxes[marks["box"]].width
            assert marks["in_left_mm"] + width + marks["in_right_mm"] == pytest.approx(
                row["width_mm"], abs=0.01
            )
            corners = []
            for setting in row["settings"]:
                card = card_of(station, setting["card"])
                dx, dy = origin(card, row, setting)
                corners.append((card["stands"]["x_mm"] + dx, card["stands"]["y_mm"] + dy))
            left, right = sorted(corners)
            assert left == pytest.approx((marks["in_left_mm"], marks["up_mm"]), abs=0.05)
            assert right[0] == pytest.approx(marks["in_left_mm"] + width, abs=0.05)
            for bored in holes_of(data):
                if bored.where[:2] == (marks["box"], "box-front"):
                    seen = marks["in_left_mm"] + width - bored.x
                    x, y = row["width_mm"] - seen, marks["up_mm"] + bored.y
                    where = (row["part"], marks["box"], None, None)
                    found.append(replace(bored, where=where, x=x, y=y))
    wanted = [
        replace(hole, purpose="clearance", diameter=found[0].diameter, depth=found[0].depth)
        for hole in listed_marked(layout_of(name))
    ]
    assert compare(wanted, found) == ([], [])


@pytest.mark.parametrize("name", JOBS)
def test_the_paper_is_as_its_data(name: str) -> None:
    """Every hole of every copy is a circle; bands, lines and borders lie where they are said to."""
    pages = {page.number: page for page in printed(name)}
    rings = {number: list(page.rings) for number, page in pages.items()}
    for station in data_of(name)["stations"]:
        for card in station["cards"]:
            page = pages[card["page"]]
            for hole in card["holes"]:
                near = [
                    ring
                    for ring in rings[card["page"]]
                    if abs(ring.x - hole["x_mm"]) < ON_PAPER
                    and abs(ring.y - hole["y_mm"]) < ON_PAPER
                    and abs(ring.diameter - hole["diameter_mm"]) < ON_PAPER
                    and abs(ring.line - 0.35) < 0.01
                ]
                assert len(near) == 1, (station["name"], card["card"])
                rings[card["page"]].remove(near[0])
            box = (
                card["x_mm"], card["y_mm"], card["x_mm"] + card["width_mm"],
                card["y_mm"] + card["height_mm"],
            )  # fmt: skip
            assert any(frame[0] == pytest.approx(box, abs=ON_PAPER) for frame in page.frames)
            for edge in card["edges"]:
                side = {"left": 2, "right": 0, "bottom": 3, "top": 1}[edge["edge"]]
                bands = [
                    black
                    for black in page.blacks
                    if box[0] - 0.1 < black[0] and black[2] < box[2] + 0.1
                    and box[1] - 0.1 < black[1] and black[3] < box[3] + 0.1
                ]  # fmt: skip
                assert any(abs(black[side] - edge["at_mm"]) < ON_PAPER for black in bands)
            for line in card["lines"]:
                lies = [
                    stroke
                    for stroke in page.strokes
                    if (stroke.y1 == stroke.y2 if line["axis"] == "y" else stroke.x1 == stroke.x2)
                    and stroke.length > 20.0
                ]
                at = [each.y1 if line["axis"] == "y" else each.x1 for each in lies]
                assert any(abs(each - line["at_mm"]) < ON_PAPER for each in at)
    assert not any(rings.values()), "no other circles"


@pytest.mark.parametrize("name", JOBS)
def test_nothing_overlaps(name: str) -> None:
    for number, page in enumerate(made(name).pages, start=1):
        assert clashes_of_marks(page) == [], number
    for printed_page in printed(name):
        assert clashes_of_print(printed_page) == [], printed_page.number


@pytest.mark.parametrize("name", JOBS)
def test_no_hole_is_near_a_border(name: str) -> None:
    for station in data_of(name)["stations"]:
        for card in station["cards"]:
            for hole in card["holes"]:
                assert 7.0 <= hole["x_mm"] - card["x_mm"] <= card["width_mm"] - 7.0
                assert 7.0 <= hole["y_mm"] - card["y_mm"] <= card["height_mm"] - 7.0


@pytest.mark.parametrize("name", JOBS)
def test_each_row_says_part_code_and_heights(name: str) -> None:
    """Where a person looks for them: on the pages of the station; heights in mm, to a tenth."""
    pages = {page.number: page for page in printed(name)}
    stations = data_of(name)["stations"]
    starts = [*(station["page"] for station in stations), len(pages) + 1]
    for station, first, after in zip(stations, starts, starts[1:], strict=False):
        words = {
            word for number in range(first, after) for run in pages[number].runs
            for word in run.text.replace(",", " ").split()
        }  # fmt: skip
        for row in station["rows"]:
            assert {row["part"], row["code"]} <= words, (station["name"], row["part"])
            for setting in row["settings"]:
                for axis in ("x", "y"):
                    place = setting[axis]
                    if place is None or place["value_mm"] is None:
                        continue
                    figure = format_mm(place["value_mm"])
                    assert figure in words, (station["name"], row["part"], figure)


@pytest.mark.parametrize("name", JOBS)
def test_title_and_codes_stand_where_they_are_needed(name: str) -> None:
    """Title, code, bit and caution stand on the first page; the code of each card on the card."""
    pages = {page.number: page for page in printed(name)}
    ids = [front.id for front in layout_of(name).fronts]
    for station in data_of(name)["stations"]:
        text = pages[station["page"]].text
        assert title_of(station["name"], ids) in text
        assert f"code {station['code']}" in text
        assert "DRILL THIS FACE" in text
        for card in station["cards"]:
            box = (card["x_mm"], card["y_mm"], card["x_mm"] + card["width_mm"],
                   card["y_mm"] + card["height_mm"])  # fmt: skip
            on_it = " ".join(
                run.text
                for run in pages[card["page"]].runs
                if box[0] <= run.box[0] and run.box[2] <= box[2]
                and box[1] <= run.box[1] and run.box[3] <= box[3]
            )  # fmt: skip
            assert f"code {card['code']}" in on_it
            for hole in card["holes"]:
                assert f"{hole['diameter_mm']:.1f}".removesuffix(".0") + " dia" in on_it


def test_what_is_held_says_why_and_has_no_figures() -> None:
    layout = kitchen(
        FrontSpec(id="B-1", kind="drawer", height=40.0), FrontSpec(id="B-2", kind="drawer")
    )
    stations = plan_stations(layout)
    held = [row for station in stations for row in station.rows if row.held]
    assert held
    pages = list(make_stations(layout, stations, PAPERS["common"]).pages)
    texts = [mark.text for page in pages for mark in page.marks if isinstance(mark, Text)]
    assert any(text.startswith("HOLD") for text in texts)
    for page in pages:
        assert clashes_of_marks(page) == []


def test_a_title_stays_within_its_own_width() -> None:
    """Beyond it lies the black of a fold: code, copy and corner share a line where they fit."""
    shop = shop_of(demo())
    for station in plan_stations(demo(), pilots=True):
        for card in station.cards:
            faces, many = shop.under(station, card), structs.replace(card, copies=12)
            for title in titles_of(faces, station, many, 10):
                heading = title.heading
                for text, size, bold in heading.lines:
                    assert text_width(text, size, bold) <= heading.width - 10.0, text
                words = " ".join((*(text for text, _, _ in heading.lines), *heading.body))
                assert "opy 10 of 12" in words


def test_a_page_lies_where_it_so_holds_the_table_too() -> None:
    """Two cards 103 wide with a flap at the top: upright they stand above each other, and the one
    row went over to a page of its own."""
    layout = laid_out(
        box_text(
            "W1", "wall",
            'kind = "lift"\n[[box.front.hole]]\nface = "back"\nx = 40\ny = 727\n'
            'diameter = 3\ndepth = 12\npurpose = "bracket"\nmirror = true\n'
            '[[box.front.hole]]\nface = "back"\nx = 40\ny = 675\n'
            'diameter = 3\ndepth = 12\npurpose = "bracket"\nmirror = true',
        )
    )  # fmt: skip
    (station,) = [each for each in plan_stations(layout) if each.work == "by-hand"]
    (page,) = make_stations(layout, [station], PAPERS["common"]).pages
    assert page.width > page.height
    assert any(isinstance(mark, Text) and mark.text == "W1-1" for mark in page.marks)
