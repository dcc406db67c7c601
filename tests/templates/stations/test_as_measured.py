"""Rows of fronts in hand follow what a tape said of them: size, sums, where their boxes stand."""

import pytest

from jigs.bench.station import Row
from jigs.bench.stations import plan_stations
from templates.page.marks import Text
from templates.page.paper import PAPERS
from templates.stations.stationset import make_stations
from tests.jobtexts import box_text
from tests.stationholes import compare, listed, listed_marked, marked, set_out
from tests.templates.printed import laid_out

MEASURED = box_text(
    "B1", "base",
    'kind = "drawer"\nheight = 152.4\nmeasured_width = [454.8, 455.2]',
    'kind = "door"\nhinged = "right"\nmeasured_width = [453, 453.4]\n'
    "measured_height = [615.2, 615.6]",
)  # fmt: skip
"""Ordered 454.0 x 152.4 and 454.0 x 614.3; a tape says 455.0 wide, and 453.2 x 615.4."""


def rows() -> dict[tuple[str, str], Row]:
    stations = plan_stations(laid_out(MEASURED))
    return {(row.part.id, row.purpose): row for each in stations for row in each.rows}


def test_sizes_and_sums_are_those_measured() -> None:
    cups = rows()["B1-2", "cup"]
    assert (cups.part.width, cups.part.height) == pytest.approx((453.2, 615.4))
    assert cups.part.ordered == pytest.approx((454.0, 614.3), abs=0.06)
    (up,) = cups.closing
    assert up.length == pytest.approx(615.4)
    assert sum(up.terms) == pytest.approx(615.4)


def test_the_drawer_box_stands_in_its_opening() -> None:
    """Derived: 457.2 - 1.6 - 1.6 = 454.0 was ordered; 455.0 stands in the same middle."""
    marks = rows()["B1-1", "front-fixing"].marks
    assert marks is not None
    assert marks.in_left + marks.width + marks.in_right == pytest.approx(455.0)
    assert marks.in_left == pytest.approx(marks.in_right)


def test_every_hole_comes_out_once() -> None:
    layout = laid_out(MEASURED)
    stations = plan_stations(layout)
    assert compare(listed(layout), set_out(stations)) == ([], [])
    assert compare(listed_marked(layout), marked(stations)) == ([], [])


def test_the_page_has_both_sizes() -> None:
    layout = laid_out(MEASURED)
    pages = make_stations(layout, plan_stations(layout), PAPERS["common"]).pages
    texts = [mark.text for page in pages for mark in page.marks if isinstance(mark, Text)]
    assert any("MEASURED; ordered 454.0 × 614.3" in text for text in texts)
    assert "453.2 x 615.4" in texts
