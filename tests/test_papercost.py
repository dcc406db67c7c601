"""The measure of paper counts what is printed."""

import json
from typing import Any

import pytest

from jigs.bench.cost import PaperCost
from jigs.bench.stations import plan_stations
from jigs.layout.layout import as_printed
from templates.binding.jobsheets import make_sheets
from templates.binding.jobstations import bind_stations
from templates.binding.sheetdata import sheets_json
from templates.page.paper import PAPERS
from templates.stations.stationset import stations_json
from tests.jigs.bench.test_stations import demo, uneven_box
from tests.jobtexts import box_text
from tests.papercost import cost_of_sheets, cost_of_stations
from tests.templates.printed import laid_out

COMMON = PAPERS["common"]


@pytest.mark.slow
def test_both_ways_to_print_are_counted() -> None:
    stations = cost_of_stations(uneven_box(), COMMON)
    sheets = cost_of_sheets(uneven_box(), COMMON)
    for counted in (stations, sheets):
        assert counted.cost.folds >= 1
        assert counted.words_off > counted.words_on > 20.0
    assert stations.cost.cards < sheets.cost.cards
    assert stations.cost.folds < sheets.cost.folds


@pytest.mark.slow
def test_the_demo_stays_within_its_words() -> None:
    """A page of stations and of sheets, and a card: what says more pays for it elsewhere."""
    stations, sheets = cost_of_stations(demo(), COMMON), cost_of_sheets(demo(), COMMON)
    assert stations.words_off <= 148.0
    assert stations.words_on <= 58.5
    assert sheets.words_off <= 119.0
    assert sheets.words_on <= 76.0


def test_the_cost_is_that_of_the_cards_as_data() -> None:
    """Pages, cards and folds: a rounded edge is butted, a panel stood on, and neither is folded."""
    layout = laid_out(
        box_text("B1", "tall", 'kind = "door"\nhinged = "left"\nedge_radius = 3',
                 more='shelf = [{adjustable = true, from = 90, to = 700}]')
        + box_text("B2", "base", 'kind = "drawer"', more="assembled = true")
    )  # fmt: skip
    file = bind_stations(layout, plan_stations(layout), COMMON)
    made = make_sheets(as_printed(layout), COMMON)
    stations = json.loads(stations_json(file.laid))["stations"]
    _agrees(file.cost, [card for each in stations for card in each["cards"]], [*file.pages])
    _agrees(made.cost, json.loads(sheets_json(made))["cards"], [*made.pages])


def _agrees(cost: PaperCost, cards: list[dict[str, Any]], pages: list[Any]) -> None:
    assert cost.pages == len(pages)
    assert cost.cards == len(cards)
    assert cost.folds == sum(edge["by"] == "fold" for card in cards for edge in card["edges"])
