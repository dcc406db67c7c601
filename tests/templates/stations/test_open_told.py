"""Paper says of each part whether its holes rest on open numbers, and of an outline that does not
turn with its card on which boards it holds."""

import re

import pytest
from msgspec.structs import replace

from jigs.bench.station import Station
from jigs.bench.stations import plan_stations
from jigs.box.parts import Layout
from jigs.given.job import BoxSpec, FrontSpec
from jigs.layout.layout import lay_out
from templates.page.marks import Text
from templates.page.paper import PAPERS
from templates.stations.plate import draw_plate
from templates.stations.stationset import make_stations
from templates.stations.stationview import shop_of
from templates.words.openwords import STAMP
from tests.jigs.sample import HINGE, SLIDE, box, job

DRAWER = FrontSpec(id="", kind="drawer", height=160.0)
DOOR = FrontSpec(id="", kind="door", hinged="left")


def boxed(name: str, *fronts: FrontSpec) -> BoxSpec:
    named = (replace(front, id=f"{name}-{row}") for row, front in enumerate(fronts, start=1))
    return box(*named, name=name)


def kitchen(*boxes: BoxSpec) -> Layout:
    """Boxes whose hinge and slide nobody has looked up."""
    hinge, slide = replace(HINGE, confirmed={}), replace(SLIDE, confirmed={})
    return lay_out(job(*boxes, hinge=hinge, slide=slide))


def station_of(layout: Layout, name: str) -> Station:
    return next(each for each in plan_stations(layout) if each.name == name)


def said(layout: Layout, station: Station) -> str:
    pages = make_stations(layout, [station], PAPERS["common"]).pages
    return "\n".join(mark.text for page in pages for mark in page.marks if isinstance(mark, Text))


def test_a_box_that_rests_on_all_open_numbers_of_its_station_says_so_too() -> None:
    """Doors alone rest on the hinge, a drawer over a door on the slide too: each table has its own
    line, though the title names both; the page of a table need not have the title."""
    layout = kitchen(boxed("D", DOOR), boxed("M", DRAWER, DOOR))
    station = station_of(layout, "sides")
    _, *tables = said(layout, station).split("\nBOX ")
    lines: dict[str, list[str]] = {}
    for text in tables:  # one that goes on to the next page begins anew there
        found = re.findall(f"{STAMP}: (.*)[.]", text)
        lines.setdefault(text.split()[0].rstrip(","), []).extend(found)
    assert lines.keys() == {"D", "M"}
    for name, found in lines.items():
        rows = (row for row in station.rows if row.part.box == name)
        records = {number.record for row in rows for number in row.open}
        assert len(found) == 1, name
        assert {*found[0].split(", ")} == records


def test_where_all_rest_on_the_same_numbers_the_title_alone_says_so() -> None:
    layout = kitchen(boxed("D", DOOR), boxed("E", DOOR))
    assert said(layout, station_of(layout, "sides")).count(f"{STAMP}: ") == 1


@pytest.mark.parametrize("work", ["cups", "fronts-on-boxes"])
def test_beside_a_part_without_open_numbers_the_others_say_theirs(work: str) -> None:
    """The title says it of some: which, their rows say."""
    layout = kitchen(boxed("D", DRAWER, DOOR), boxed("M", DRAWER, DOOR))
    station = next(each for each in plan_stations(layout) if each.work == work)
    assert said(layout, station).count(f"{STAMP}: ") == 1
    first, *others = station.rows
    mixed = replace(station, rows=(replace(first, open=()), *others))
    assert said(layout, mixed).count(f"{STAMP}: ") == 1 + len(others)


def test_an_outline_that_does_not_turn_names_the_boards_it_holds_for() -> None:
    """A slide reaches further up from its line than down: turned for the right side it would lie
    upside down. What is cut from hardboard says the same as paper."""
    layout = kitchen(boxed("M", DRAWER, DOOR))
    station = station_of(layout, "sides")
    (card,) = (each for each in station.cards if each.one_way)
    shop = shop_of(layout)
    unturned = {view.side for view in shop.lying(station, card, turned=False)}
    assert shop.under(station, card).hand == "left"
    assert unturned == {"left"}
    plate = " ".join(m.text for m in draw_plate(shop, station, card).marks if isinstance(m, Text))
    for words in (said(layout, station), plate):
        assert words.count("LAY SLIDE HERE, LEFT boards ONLY.") == 1
        assert words.count("LAY NO SLIDE HERE.") == 1
