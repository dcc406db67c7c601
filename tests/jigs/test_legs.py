"""Sides that run to the floor: everything stands higher by the legs, the grid from the floor."""

import pytest
from msgspec.structs import replace

from jigs.box.carcass import Carcass
from jigs.box.parts import Layout
from jigs.given.job import BoxSpec, FrontSpec
from jigs.ground.grid import balanced_start
from jigs.layout.layout import lay_out
from tests.jigs.sample import UNDER_COUNTER, box, front_of, job, side_of

LEGS = 101.6


def golden(legs: float) -> BoxSpec:
    """Give the worked example: a drawer of 152.4 over a door; with legs the side is longer."""
    drawer = FrontSpec(id="B1-1", kind="drawer", height=152.4)
    door = FrontSpec(id="B1-2", kind="door", hinged="left")
    made = box(drawer, door, kind="base", height=774.7 + legs, above_floor=LEGS - legs)
    return replace(made, legs=legs)


def laid(legs: float) -> Layout:
    """Lay the box out."""
    return lay_out(job(golden(legs), reveal=UNDER_COUNTER))


def test_fronts_drawers_and_slides_stand_higher_by_the_legs() -> None:
    """Sizes and gaps are those of the same box on a platform; heights count from the floor."""
    short, tall = laid(0.0), laid(LEGS)
    for name in ("B1-1", "B1-2"):
        low, high = front_of(short, name), front_of(tall, name)
        assert (high.width, high.height) == pytest.approx((low.width, low.height))
        assert high.place.y == pytest.approx(low.place.y + LEGS)
        assert high.gaps.bottom == pytest.approx(low.gaps.bottom)
    low_box, high_box = front_of(short, "B1-1").drawer, front_of(tall, "B1-1").drawer
    assert low_box is not None
    assert high_box is not None
    assert (high_box.y, high_box.height) == pytest.approx((low_box.y, low_box.height))
    slides = [
        next(h.y for h in side_of(layout, "B1-SIDE-L").holes if h.purpose == "slide")
        for layout in (short, tall)
    ]
    assert slides[1] == pytest.approx(slides[0] + LEGS)


def test_the_grid_starts_from_the_sides_end_on_the_floor() -> None:
    """A side of 876.3 is balanced from 22.15 (derived): plates straddle 22.15 + 16 + 32 i."""
    assert balanced_start(774.7 + LEGS) == pytest.approx(22.15)
    side = side_of(laid(LEGS), "B1-SIDE-L")
    assert (side.height, side.legs) == pytest.approx((876.3, LEGS))
    assert side.bottom == pytest.approx(LEGS + 18.3)
    plates = [hole.y for hole in side.holes if hole.purpose == "plate"]
    assert len(plates) == 4
    for y in plates:
        assert (y - 22.15) % 32 == pytest.approx(0.0, abs=1e-6)
    assert min(plates) - 16 >= LEGS + 18.3


def test_hinges_keep_off_the_panel_where_it_is() -> None:
    """The bottom panel lies between 101.6 and 119.9 above the floor."""
    carcass = Carcass(box=golden(LEGS), side=18.3, back=6.0)
    assert carcass.panels[0] == pytest.approx((101.6, 119.9))
    assert carcass.floor == pytest.approx(119.9)
