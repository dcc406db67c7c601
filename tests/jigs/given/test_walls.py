"""Boxes along a wall."""

import pytest
from msgspec.structs import replace

from jigs.given.job import BoxSpec
from jigs.given.stated import BlindEnd, EndPanels
from jigs.given.walls import corner_lines, end_boxes, neighbours, place_boxes
from jigs.given.wallspec import Appliance, WallEnd, WallSpec
from jigs.ground.geometry import Hand
from jigs.layout.layout import lay_out
from tests.jigs.sample import box, job


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
        replace(box(name="B1", width=600), panels=EndPanels(left="flush", right="covered")),
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


# --- inside corners ---------------------------------------------------------------------------

BASE_DEEP, WALL_DEEP = 584.2, 320.0


def corner(hand: Hand) -> tuple[WallSpec, WallSpec]:
    """Two walls that meet at this end of the first, with a filler of 60."""
    here = WallEnd(stands="corner", filler=60.0, meets="west")
    there = WallEnd(stands="corner", meets="north")
    if hand == "left":
        return WallSpec(name="north", left=here), WallSpec(name="west", right=there)
    return WallSpec(name="north", right=here), WallSpec(name="west", left=there)


def rows(*, hung_x: float | None = None) -> list[BoxSpec]:
    """A base box and a wall box on the north wall."""
    return [
        box(name="B1", width=900.0),
        box(name="W1", width=600.0, kind="wall", depth=WALL_DEEP, x=hung_x, above_floor=1370.0),
    ]


def west(*, hung: bool = True, tall: bool = False) -> list[BoxSpec]:
    """What stands on the other wall."""
    made = [box(name="C1", wall="west", depth=BASE_DEEP)]
    if hung:
        made.append(box(name="D1", wall="west", kind="wall", depth=WALL_DEEP, above_floor=1370.0))
    if tall:
        made = [box(name="T1", wall="west", kind="tall", depth=600.0, height=2100.0)]
    return made


@pytest.mark.parametrize(
    ("other", "line"),
    [
        (west(), BASE_DEEP - WALL_DEEP),
        (west(hung=False), BASE_DEEP),
        (west(tall=True), 0.0),
        ([], 0.0),
    ],
    ids=["wall boxes", "the room's wall", "a tall box", "nothing"],
)
def test_wall_boxes_count_from_the_other_runs_wall_boxes(other: list[BoxSpec], line: float) -> None:
    """Each row begins at its own filler: that of the wall boxes by the difference of the depths
    nearer to the room's wall (derived); a place that is given counts from there too."""
    walls = corner("left")
    places = place_boxes([*rows(), *other], walls)
    assert (places["B1"], places["W1"]) == pytest.approx((60.0, 60.0 - line))
    places = place_boxes([*rows(hung_x=100.0), *other], walls)
    assert places["W1"] == pytest.approx(100.0 - line)
    # At the right end places count from the left as ever.
    places = place_boxes([*rows(), *other], corner("right"))
    assert (places["B1"], places["W1"]) == (0.0, 0.0)


@pytest.mark.parametrize(("hung", "x"), [(True, 60.0 + WALL_DEEP), (False, 60.0)])
def test_a_blind_box_begins_at_the_rooms_wall(hung: bool, x: float) -> None:
    """It goes on behind the other run: its filler counts from the room's wall, that of the wall
    boxes from the other run's wall boxes, as deep as these beyond it (derived)."""
    first, wall_box = rows()
    blind = replace(first, blind=BlindEnd(hand="left", reach=BASE_DEEP + 60.0))
    places = place_boxes([blind, wall_box, *west(hung=hung)], corner("left"))
    assert (places["B1"], places["W1"]) == pytest.approx((60.0, x))


@pytest.mark.parametrize("hand", ["left", "right"])
def test_each_row_keeps_its_own_filler_at_a_corner(hand: Hand) -> None:
    """The row of wall boxes reaches 264.2 further into the corner, and as near to its own line."""
    boxes = rows()
    if hand == "right":
        boxes[1] = replace(boxes[1], x=900.0 + (BASE_DEEP - WALL_DEEP) - 600.0)
    boxes += west()
    walls = corner(hand)
    places = place_boxes(boxes, walls)
    lines = corner_lines(boxes, walls, 0.0)
    near = end_boxes(boxes, "north", hand, places, (), 0.0, lines)
    assert {each.id: distance for each, distance in near} == pytest.approx({"B1": 0, "W1": 0})


def test_the_run_of_a_wall_is_that_of_each_row() -> None:
    """60 and 900 and 41 on a wall of 1001 from the base boxes' line; 264.2 more of wall boxes fill
    the same wall, and a millimetre beyond that is too long."""
    walls = corner("left")
    ends = replace(walls[0], right=WallEnd(stands="wall", filler=41.0), length=1001.0)
    longer = BASE_DEEP - WALL_DEEP
    for width, told in ((900.0, []), (900.0 + 1.0, ["wall-short"])):
        boxes = [rows()[0], replace(rows()[1], width=width + longer), *west()]
        made = lay_out(replace(job(*boxes), walls=(ends, walls[1])))
        found = [p.code for p in made.problems if p.code.startswith(("wall-", "before", "beyond"))]
        assert found == told
