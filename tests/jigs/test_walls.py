"""Boxes along a wall."""

from jigs.walls import neighbours, place_boxes
from tests.jigs.sample import box


def test_boxes_follow_each_other() -> None:
    """A box without an x follows the one before it in its row; hanging boxes have their own."""
    boxes = [
        box(name="B1", width=600),
        box(name="W1", width=400, kind="wall"),
        box(name="B2", width=500),
        box(name="B3", width=500, x=2000),
        box(name="B4", width=450),
        box(name="S1", wall="south"),
    ]
    assert place_boxes(boxes) == {
        "B1": 0, "W1": 0, "B2": 600, "B3": 2000, "B4": 2500, "S1": 0,
    }  # fmt: skip
    assert [(a.id, b.id) for a, b in neighbours(boxes)] == [("B1", "B2"), ("B3", "B4")]


def test_a_tall_box_stands_beside_base_and_wall_boxes() -> None:
    """Neighbours are those whose ends touch and whose heights overlap; a base box and the wall
    box over it are none, nor are boxes over and beside each other."""
    boxes = [
        box(name="B1", width=600),
        box(name="T1", width=600, kind="tall", height=2100),
        box(name="B2", width=500),
        box(name="W1", width=600, kind="wall", above_floor=1370),
        box(name="W2", width=500, kind="wall", x=1200, above_floor=1370),
        box(name="W3", width=500, kind="wall", x=1200, above_floor=2201.6),
    ]
    pairs = {(a.id, b.id) for a, b in neighbours(boxes)}
    assert pairs == {("B1", "T1"), ("T1", "B2"), ("W1", "T1"), ("T1", "W2")}
