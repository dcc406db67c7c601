"""The windows of a station's card."""

import pytest

from jigs.bench.station import CardEdge, StationCard
from jigs.ground.geometry import FaceEdge, Hole
from templates.stations.cardframe import card_frames, windows_of


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
