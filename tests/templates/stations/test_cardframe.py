"""The windows of a station's card, and what it leaves whole."""

from itertools import pairwise
from math import hypot

import pytest

from jigs.bench.station import CardEdge, StationCard
from jigs.bench.stations import plan_stations
from jigs.given.hardware import PullRecord
from jigs.given.job import FrontSpec
from jigs.ground.geometry import FaceEdge, Hole
from jigs.layout.layout import lay_out
from templates.page.marks import Line
from templates.stations.cardframe import card_frames, windows_of
from templates.stations.stationcard import draw_copies
from templates.stations.stationview import shop_of
from tests.jigs.sample import box, job


@pytest.mark.parametrize("edge", ["bottom", "top"])
@pytest.mark.parametrize("away", [5.5, 7.0, 9.0])
def test_no_window_takes_a_cross_near_the_edge(edge: FaceEdge, away: float) -> None:
    """A cross is 10 over all (common practice, no source)."""
    y = away if edge == "bottom" else -away
    hole = Hole(purpose="hook", face="box-back", x=0.0, y=y, diameter=7.0, depth=11.0)
    card = StationCard(
        letter="A", code="K7Q2", edges=(CardEdge(edge=edge, by="fold"),), lines=("x",),
        holes=(hole,),
    )  # fmt: skip
    for frame in card_frames(card):
        for _, low, _, high in windows_of(card, "x", frame):
            assert high <= y - 5.0 or low >= y + 5.0


def test_a_knobs_outline_stands_whole_on_its_card() -> None:
    """All eight sides of it, whatever else is written there: it shows whether the knob is right.
    The card is set turned too, so that it has two titles."""
    base = box(FrontSpec(id="B1-1", kind="door", hinged="left"))
    hung = box(FrontSpec(id="W1-1", kind="door", hinged="right"), name="W1", kind="wall")
    layout = lay_out(job(base, hung, pull=PullRecord(name="round", centers=None)))
    shop, found = shop_of(layout), 0
    for station in plan_stations(layout):
        for card in station.cards if station.name.startswith("pulls") else ():
            ((x, y),) = [(hole.x, hole.y) for hole in card.holes]
            (drawn,) = draw_copies(shop, station, card, [(188.0, 250.0)])
            dashed = [m for m in drawn.marks if isinstance(m, Line) and m.dash == "dashed"]
            (outline,) = card.outline
            sides = sum(hypot(b[0] - a[0], b[1] - a[1]) for a, b in
                        pairwise((*outline, outline[0])))  # fmt: skip
            assert sum(hypot(m.x2 - m.x1, m.y2 - m.y1) for m in dashed) == pytest.approx(sides)
            assert all(hypot(m.x1 - x, m.y1 - y) < 20.0 for m in dashed)
            found += 1
    assert found
