"""Marking through: which holes of a front are marked through its drawer box."""

import pytest
from msgspec.structs import replace

from jigs.bench.benchpart import marked_holes
from jigs.box.parts import Front
from jigs.given.job import FrontSpec
from tests.jigs.sample import box, front_of, lay


def golden() -> Front:
    """The golden box's upper drawer: front 454 wide, box 409.6, so 22.2 in, 30.7 up."""
    layout = lay(
        box(FrontSpec(id="A-1", kind="drawer", height=152.4), FrontSpec(id="A-2", kind="drawer"))
    )
    return front_of(layout, "A-1")


def moved(front: Front, x: float, y: float) -> Front:
    assert front.drawer is not None
    drawer = replace(front.drawer, x=front.drawer.x + x, y=front.drawer.y + y)
    return replace(front, drawer=drawer)


def test_all_that_have_a_hole_behind_them() -> None:
    """Derived: 22.2 + 15.9 + 32 = 70.1 from both ends."""
    marked = marked_holes(golden())
    assert [hole.purpose for hole in marked] == ["front-fixing"] * 4
    assert sorted({round(hole.x, 1) for hole in marked}) == [70.1, 383.9]


@pytest.mark.parametrize(("x", "y"), [(1.0, 0.0), (0.0, 1.0)])
def test_a_hole_beside_its_counterpart_is_not_marked(x: float, y: float) -> None:
    """It keeps its pilot from paper."""
    assert marked_holes(moved(golden(), x, y)) == ()


@pytest.mark.parametrize(("x", "y"), [(-30.0, 0.0), (30.0, 0.0), (0.0, -40.0)])
def test_a_box_beyond_its_front_places_nothing(x: float, y: float) -> None:
    """No corner card reaches a corner that lies beside the front."""
    front = golden()
    fittings = tuple(
        replace(
            fitting,
            holes=tuple(replace(hole, x=hole.x + x, y=hole.y + y) for hole in fitting.holes),
        )
        for fitting in front.fittings
    )
    assert marked_holes(moved(replace(front, fittings=fittings), x, y)) == ()


def test_no_drawer_box_no_marking() -> None:
    """A false front's screws and a door's cups stand on paper."""
    assert marked_holes(replace(golden(), drawer=None)) == ()
