"""Stations of any job find room on paper, and nothing on them overlaps."""

import pytest
from hypothesis import HealthCheck, given, settings

from jigs.bench.stations import plan_stations
from jigs.box.parts import Layout
from jigs.given.job import Job
from jigs.layout.layout import lay_out
from templates.page.paper import PAPERS
from templates.stations.stationset import make_stations
from tests.clashes import clashes_of_marks
from tests.jobs import jobs
from tests.jobtexts import box_text
from tests.templates.printed import laid_out

CROWDED = box_text(
    "PANTRY-NORTH-1",
    "base",
    'kind = "door"\nhinged = "left"'
    + "".join(
        f'\n[[box.front.hole]]\nx = {x}\ny = {y}\ndiameter = {diameter}\ndepth = 11\n'
        'face = "back"\npurpose = "manual"'
        for x, y, diameter in (
            (74.4, 20.5, 5), (31.2, 24.9, 26), (25.8, 34.5, 3), (100, 44.2, 3), (20, 46.6, 10),
        )
    ),
)  # fmt: skip
"""A fitting whose holes stand one in another, in a box with the longest ID."""


def check(layout: Layout) -> None:
    for page in make_stations(layout, plan_stations(layout), PAPERS["common"]).pages:
        assert clashes_of_marks(page) == []


def test_holes_too_close_for_a_line_to_each_have_their_figures_near() -> None:
    check(laid_out(CROWDED))


@pytest.mark.slow
@settings(max_examples=12, deadline=None, suppress_health_check=list(HealthCheck))
@given(made=jobs())
def test_of_any_job(made: Job) -> None:
    check(lay_out(made))
