"""Drawer boxes that their maker bored: nothing of theirs is set out but where they stand."""

from functools import cache

import pytest

from jigs.bench.stations import plan_stations
from jigs.box.parts import Layout
from jigs.cutlist.cutlist import cut_job
from jigs.fittings.fixing import CLEAR_OF_PULL
from jigs.order.needed import count_items
from templates.page.marks import Text
from templates.page.paper import PAPERS
from templates.stations.stationset import make_stations
from tests import uneven
from tests.stationholes import compare, listed, listed_marked, marked, set_out
from tests.templates.printed import laid_out


@cache
def bored(more: str = "") -> Layout:
    return laid_out(f"{uneven.UNEVEN}\n[build]\ndrawer_bored = true\n{more}")


def test_no_hole_of_theirs_is_listed_or_set() -> None:
    """All other holes stand as ever."""
    holes = listed(bored(), pilots=True)
    assert not [hole for hole in holes if hole.purpose in ("clearance", "front-fixing")]
    usual = listed(laid_out(uneven.UNEVEN))
    others = [hole for hole in usual if hole.purpose not in ("clearance", "front-fixing")]
    assert compare(others, holes) == ([], [])
    for pilots in (False, True):
        stations = plan_stations(bored(), pilots=pilots)
        assert compare(holes, set_out(stations)) == ([], [])
        assert "drawer-boxes" not in {station.work for station in stations}


@pytest.mark.parametrize("pilots", [False, True])
def test_the_place_of_each_is_said_and_its_pilots_bit(pilots: bool) -> None:
    """Derived, see `tests.uneven`; both corners are checked by `marked`."""
    stations = plan_stations(bored(), pilots=pilots)
    (station,) = [each for each in stations if each.work == "fronts-on-boxes"]
    assert [(bit.diameter, bit.depth) for bit in station.bits] == [(3.0, 12.0)]
    assert len(station.rows) == 2
    for row in station.rows:
        assert row.marks is not None
        assert row.marks.in_left == pytest.approx(uneven.IN_RIGHT)
        assert row.marks.in_right == pytest.approx(uneven.IN_LEFT)
        assert row.marks.up == pytest.approx(uneven.RISE)
        assert row.marks.clear_of_pull == CLEAR_OF_PULL
    assert marked(stations) == [] == listed_marked(bored())


def test_the_page_says_what_is_to_be_measured() -> None:
    layout = bored()
    pages = make_stations(layout, plan_stations(layout), PAPERS["common"]).pages
    text = " ".join(mark.text for page in pages for mark in page.marks if isinstance(mark, Text))
    assert text.count("from the pull's screws") == 2


def test_their_fronts_screws_are_bought() -> None:
    """Four a front (common practice, no source), 28 long: 15.9 + 19.05 - 3 = 31.95."""
    layout = bored()
    items = count_items(layout, layout.fronts, cut_job(layout), ())
    assert {item.size: item.count for item in items if item.name == "front-fixing"} == {28.0: 8}
