"""The measure of paper counts what is printed."""

import pytest

from templates.page.paper import PAPERS
from tests.jigs.bench.test_stations import uneven_box
from tests.papercost import cost_of_sheets, cost_of_stations


@pytest.mark.slow
def test_both_ways_to_print_are_counted() -> None:
    stations = cost_of_stations(uneven_box(), PAPERS["common"])
    sheets = cost_of_sheets(uneven_box(), PAPERS["common"])
    for cost in (stations, sheets):
        assert cost.folds >= 1
        assert cost.words_off > cost.words_on > 20.0
    assert stations.cards < sheets.cards
    assert stations.folds < sheets.folds
