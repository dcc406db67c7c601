"""A wall from the room: places, hands, stretches."""

import pytest
from msgspec.structs import replace

from jigs.box.parts import Layout
from jigs.given.job import FrontKind, FrontSpec
from jigs.given.stated import NOTED, BlindEnd, EndPanels, FrontWords
from jigs.given.wallspec import EndKind, WallEnd, WallSpec
from jigs.layout.layout import lay_out
from jigs.room.elevation import levels, part_wall, see_walls
from jigs.room.wallmeasures import rows_along
from tests import uneven
from tests.jigs.sample import box, job, lay
from tests.templates.printed import laid_out


def wall_of_three() -> Layout:
    """Give a base box, a drawer box beside it, and a wall box that begins over the second."""
    return lay(
        box(FrontSpec(id="B1-1", kind="door", hinged="left"), name="B1"),
        box(FrontSpec(id="B2-1", kind="drawer", height=152.4), FrontSpec(id="B2-2", kind="pair"),
            name="B2", width=914.4),
        box(FrontSpec(id="W1-1", kind="door", hinged="right"), name="W1", kind="wall",
            above_floor=1371.6, x=457.2),
    )  # fmt: skip


def test_a_front_stands_at_its_boxs_place_plus_its_own() -> None:
    """Along the wall, and above the finished floor; the golden box with 1.6 of reveal."""
    [wall] = see_walls(wall_of_three())
    at = {f.front.id: (f.x, f.y) for seen in wall.boxes for f in seen.fronts}
    assert at["B1-1"] == pytest.approx((0 + 1.6, 101.6 + 1.6))
    assert at["B2-2L"] == pytest.approx((457.2 + 1.6, 101.6 + 1.6))
    assert at["B2-2R"] == pytest.approx((457.2 + 914.4 / 2 + 3.2 / 2, 101.6 + 1.6))
    assert at["W1-1"] == pytest.approx((457.2 + 1.6, 1371.6 + 1.6))
    assert wall.extent == pytest.approx((0, 0, 457.2 + 914.4, 1371.6 + 774.7))


def test_the_uneven_box_on_its_wall() -> None:
    """Its own reveal of 6 at the left, 1.6 at the right; the door turns on its right edge."""
    layout = laid_out(uneven.UNEVEN)
    [wall] = see_walls(layout)
    seen = [f for one in wall.boxes for f in one.fronts]
    places = {f.front.id: (f.x, f.y) for f in seen}
    assert places["B1-1"] == pytest.approx((6.0, 100 + 571.5))
    assert places["B1-2"] == pytest.approx((6.0, 100 + 1.6))
    assert places["B1-3"] == pytest.approx((900 - 1.6 - 469.35, 100 + 1.6))
    assert {f.front.id: f.swing for f in seen} == {"B1-1": None, "B1-2": None, "B1-3": "right"}


@pytest.mark.parametrize(
    ("kind", "swing"),
    [("door", "right"), ("drawer", None), ("lift", "top"), ("pullout", None), ("panel", None)],
)
def test_what_turns_and_on_which_edge(kind: FrontKind, swing: str | None) -> None:
    """A door on its hand, a lift on its top; what is drawn out or fixed on none."""
    front = FrontSpec(id="B1-1", kind=kind, hinged="right" if kind == "door" else None)
    [wall] = see_walls(lay(box(front)))
    assert [f.swing for f in wall.boxes[0].fronts] == [swing]


def test_a_door_without_a_hand_turns_on_no_edge() -> None:
    """It is never guessed."""
    [wall] = see_walls(lay(box(FrontSpec(id="B1-1", kind="door"))))
    assert wall.boxes[0].fronts[0].swing is None


def test_an_opening_keeps_its_place_and_says_what_is_for_it() -> None:
    """It has no front in the layout, but it is seen."""
    layout = lay(
        box(FrontSpec(id="T1-1", kind="door", hinged="left"),
            FrontSpec(id="T1-2", kind="opening", height=595.0, words=FrontWords(note="oven")),
            FrontSpec(id="T1-3", kind="drawer", height=300.0), name="T1", kind="tall",
            height=2133.6)
    )  # fmt: skip
    [opening] = see_walls(layout)[0].boxes[0].openings
    assert (opening.words, opening.height) == ("oven", 595.0)
    assert opening.y == pytest.approx(101.6 + 1.6 + 300.0 + 3.2)


def test_boxes_that_stand_nowhere_come_last_and_apart() -> None:
    """300 between them, on a row of their own."""
    layout = lay(
        box(FrontSpec(id="A-1", kind="drawer"), name="A", inferred=True),
        box(FrontSpec(id="B-1", kind="drawer"), name="B"),
        box(FrontSpec(id="C-1", kind="drawer"), name="C", inferred=True),
    )
    wall, row = see_walls(layout)
    assert (wall.placed, row.placed) == (True, False)
    assert [seen.x for seen in row.boxes] == pytest.approx([0, 457.2 + 300])


def test_a_long_wall_is_parted_into_stretches_of_whole_boxes() -> None:
    """Every box is in one stretch, none longer than asked for where its boxes are shorter."""
    layout = lay(*(box(FrontSpec(id=f"B{k}-1", kind="drawer"), name=f"B{k}") for k in range(9)))
    [wall] = see_walls(layout)
    stretches = part_wall(wall, 2000.0)
    assert [len(s.boxes) for s in stretches] == [4, 4, 1]
    assert all(s.extent[2] - s.extent[0] <= 2000 for s in stretches)
    assert part_wall(wall, 9 * 457.2) == (wall,)


def test_boxes_that_overlap_are_one_group() -> None:
    """Those that only touch are not."""
    layout = lay(
        box(name="A"), box(name="B", x=457.2), box(name="C", x=700.0), box(name="D", x=2000.0)
    )
    [wall] = see_walls(layout)
    groups = {tuple(seen.box.id for seen in group) for group in wall.clear_of_each_other()}
    assert groups == {("A",), ("B", "C"), ("D",)}


def test_levels_are_told_once() -> None:
    """Half a millimetre is no level of its own."""
    assert levels([]) == ()
    assert levels([5.0, 0.0, 5.4, 6.0]) == (0.0, 5.0, 6.0)


def test_end_panels_stand_beside_their_box_down_to_the_floor() -> None:
    """As thick as the fronts' board, 19.05; the golden box with its toe is 774.7 + 101.6 high."""
    layout = lay(replace(box(name="B1", x=500.0), panels=EndPanels(left="flush", right="covered")))
    [wall] = see_walls(layout)
    left, right = wall.boxes[0].strips
    assert (left.id, left.x, left.y) == ("B1-PANEL-L", 500 - 19.05, 0)
    assert (right.id, right.x, right.covered) == ("B1-PANEL-R", 500 + 457.2, True)
    assert left.height == pytest.approx(774.7 + 101.6)
    assert wall.extent[:3:2] == pytest.approx((500 - 19.05, 500 + 457.2 + 19.05))


def test_a_toe_platform_is_under_boxes_alone() -> None:
    """Not under the place of an appliance, a box on legs, or one above another."""
    panel = FrontSpec(id="D-1", kind="panel", leaflet=NOTED)
    layout = lay(
        box(name="B"),
        box(panel, name="D", kind="open"),
        replace(box(name="L", above_floor=0.0), legs=101.6),
        box(name="F", above_floor=1800.0),
    )
    [wall] = see_walls(layout)
    assert [seen.box.id for seen in wall.boxes if seen.on_platform] == ["B"]
    assert [seen.box.id for seen in wall.hanging] == ["F"]


@pytest.mark.parametrize(
    ("stands", "kind"), [("corner", "hidden"), ("wall", "filler"), ("panel", "filler")]
)
def test_behind_the_other_run_there_is_room_and_no_filler(stands: EndKind, kind: str) -> None:
    """Beside a blind box that goes on into its corner; it keeps its place in what adds up."""
    blind = replace(box(name="B1"), blind=BlindEnd(hand="right", reach=250.0))
    spec = WallSpec(name="north", right=WallEnd(stands=stands, filler=60.0))
    [wall] = see_walls(lay_out(replace(job(blind), walls=(spec,))))
    [strip] = wall.boxes[0].strips
    assert (strip.kind, strip.covered) == (kind, kind == "hidden")
    assert wall.extent[2] == pytest.approx(457.2 + 60.0)
    assert wall.ends_at("right") == ("wall" if stands == "corner" else stands)
    [row] = rows_along(wall)
    assert [each.stands for each in row.stretches] == ["box", kind]


def test_fillers_stand_between_the_ends_of_a_wall_and_its_boxes() -> None:
    """Beside the base box and the wall box over it; one that keeps further off has none."""
    boxes = (
        box(name="B1"),
        box(name="W1", kind="wall", above_floor=1371.6),
        box(name="W2", kind="wall", above_floor=1371.6, x=41 + 600.0),
        box(name="B2", x=41 + 457.2),
    )
    spec = WallSpec(
        name="north",
        left=WallEnd(stands="wall", filler=41.0),
        right=WallEnd(stands="corner", filler=60.0, reach=35.0),
    )
    [wall] = see_walls(lay_out(replace(job(*boxes), walls=(spec,))))
    found = {seen.box.id: [(s.kind, s.x, s.width) for s in seen.strips] for seen in wall.boxes}
    assert found["B1"] == found["W1"] == [("filler", 0.0, 41.0)]
    assert found["W2"] == [("filler", 41 + 600 + 457.2, 60.0)]
    assert found["B2"] == []
    assert (wall.left, wall.right) == ("wall", "corner")
    assert wall.extent[:3:2] == pytest.approx((0, 41 + 600 + 457.2 + 60))
