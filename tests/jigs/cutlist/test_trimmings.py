"""Fillers, end panels and island backs."""

from dataclasses import replace

import pytest

from jigs.build import Build
from jigs.cutlist.trimmings import end_panel, filler, island_back, panel_depth
from tests.jigs.sample import box, job

DB, T, BUMPER = 584.2, 19.05, 2.0


def test_a_filler_is_wider_than_its_place() -> None:
    """Place 41 (pull of 35 and 6), 12 over for scribing; as high as its box."""
    piece = filler(job(box()), "NORTH-FILLER-L", "north", width=41.0, height=774.7)
    assert (piece.length, piece.width, piece.thickness) == pytest.approx((774.7, 41 + 12, T))
    assert piece.box is None
    assert "12.0 of its width to scribe" in piece.note


@pytest.mark.parametrize(("flush", "depth"), [(True, DB + T + BUMPER), (False, DB)])
def test_an_end_panel_is_flush_with_the_faces_or_covered(flush: bool, depth: float) -> None:
    """Depth Db + T + bumper, or Db; 15 more at the wall edge (common practice, no source)."""
    assert panel_depth(DB, front=T, bumper=BUMPER, flush=flush) == pytest.approx(depth)
    piece = end_panel(
        job(box()), "B1-PANEL-L", box="B1", wall="north", box_depth=DB, height=876.3, flush=flush
    )
    assert (piece.length, piece.width) == pytest.approx((876.3, depth + 15))
    assert piece.stuff == "front"


def test_nothing_to_scribe_is_not_spoken_of() -> None:
    """panel_scribe = 0, as on an island."""
    made = replace(job(box()), build=Build(panel_scribe=0.0, scribe=0.0))
    piece = end_panel(
        made, "B1-PANEL-L", box="B1", wall="", box_depth=DB, height=876.3, flush=False
    )
    assert piece.note == "the fronts cover its front edge"
    assert not filler(made, "NORTH-FILLER-L", "north", width=41.0, height=774.7).note


def test_an_island_back_has_its_grain_upright() -> None:
    """As wide as the run and as high as the boxes stand."""
    piece = island_back(job(box()), "ISLAND-BACK-1", "island", width=914.4, height=876.3)
    assert (piece.length, piece.width, piece.grain) == (876.3, 914.4, "length")
