"""Boxes along a wall."""

from dataclasses import replace

from jigs.walls import end_boxes, neighbours, place_boxes
from jigs.wallspec import Appliance, WallEnd, WallSpec
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


def test_boxes_at_the_ends() -> None:
    """Nothing parts them from the end at their own height; each with its distance from it."""
    low = [box(name="B1", width=600), box(name="B2", width=400)]
    high = [
        box(name="W1", width=600, kind="wall", x=30, above_floor=1370),
        box(name="W2", width=300, kind="wall", above_floor=1370),
    ]
    assert [(b.id, d) for b, d in end_boxes([*low, *high], "north", "left")] == [
        ("B1", 0),
        ("W1", 30),
    ]
    assert [(b.id, d) for b, d in end_boxes([*low, *high], "north", "right")] == [
        ("B2", 0),
        ("W2", 70),
    ]
    assert end_boxes(low, "elsewhere", "left") == ()


def test_fillers_panels_and_appliances_take_their_room() -> None:
    """A row begins where the filler ends; panels and appliances stand between boxes; a place that
    is given is kept, and an appliance with one moves nothing."""
    wall = WallSpec(
        name="north",
        left=WallEnd(stands="wall", filler=41.0),
        appliances=(
            Appliance(id="R1", width=762.0, height=914.0, after="B1"),
            Appliance(id="R2", width=20.0, height=914.0, after="R1"),
            Appliance(id="F1", width=900.0, height=1800.0, x=4000.0),
            Appliance(id="H1", width=762.0, height=400.0, above_floor=1400.0, after="W1"),
        ),
    )
    boxes = [
        replace(box(name="B1", width=600), panel_left="flush", panel_right="covered"),
        box(name="B2", width=500),
        box(name="W1", width=400, kind="wall", x=30),
        box(name="W2", width=400, kind="wall"),
    ]
    first = 41.0 + 19.0
    range_at = first + 600 + 19.0
    assert place_boxes(boxes, [wall], 19.0) == {
        "F1": 4000.0, "B1": first, "R1": range_at, "R2": range_at + 762.0,
        "B2": range_at + 762.0 + 20.0, "W1": 30, "H1": 430, "W2": 430 + 762.0,
    }  # fmt: skip
