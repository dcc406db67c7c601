"""How boxes are set: lines from the floor's high point, the order, widths that add up.

Which box comes first is common practice, no source; heights and widths are arithmetic on the job.
Base units 820, 870 or 920 high with a plinth of 100 at least: EN 1116 (second hand).
"""

import pytest
from msgspec.structs import replace

from jigs.given.job import BoxSpec, FrontSpec
from jigs.given.wallspec import Appliance, EndKind, WallEnd, WallSpec
from jigs.room.hanging import BeginsAt, Hanging, furnish_boxes, plan_hanging
from jigs.room.wallmeasures import room_above
from tests.jigs.sample import box, lay

DOOR = FrontSpec(id="", kind="door", hinged="left")


def base(name: str, width: float = 600.0, above: float = 100.0, height: float = 720.0) -> BoxSpec:
    door = replace(DOOR, id=f"{name}-1")
    return box(door, name=name, width=width, height=height, above_floor=above)


def hung(name: str, width: float = 600.0, x: float | None = None, at: float = 1370.0) -> BoxSpec:
    door = replace(DOOR, id=f"{name}-1")
    return box(door, name=name, kind="wall", width=width, height=720.0, depth=320.0,
               above_floor=at, x=x)  # fmt: skip


def tall(name: str, width: float = 600.0) -> BoxSpec:
    door = replace(DOOR, id=f"{name}-1")
    return box(door, name=name, kind="tall", width=width, height=2100.0, above_floor=100.0)


def plan(*boxes: BoxSpec, wall: WallSpec | None = None) -> Hanging:
    layout = lay(*boxes, units="mm")
    walls = () if wall is None else (wall,)
    [hanging] = plan_hanging(replace(layout, job=replace(layout.job, walls=walls)))
    return hanging


def north(left: EndKind | None = None, right: EndKind | None = None, **more: float) -> WallSpec:
    wall = WallSpec(name="north", left=WallEnd(stands=left), right=WallEnd(stands=right))
    return replace(wall, **more)


def order(hanging: Hanging) -> list[str]:
    return [setting.seen.box.id for setting in hanging.order]


@pytest.mark.parametrize(
    ("above", "height", "top"),
    [(100, 720, 820), (100, 770, 870), (150, 770, 920)],
    ids=["820", "870", "920"],
)
def test_base_tops_stand_at_the_heights_of_the_standard(
    above: float, height: float, top: float
) -> None:
    """EN 1116 (second hand): toe and box add up to 820, 870, 920 from the floor's high point."""
    found = plan(base("B1", above=above, height=height)).strikes
    assert [(line.up, line.serves) for line in found] == [
        (above, (("toe", ("B1",)),)), (top, (("base-top", ("B1",)),)),
    ]  # fmt: skip


def test_heights_count_from_the_floors_high_point() -> None:
    """9 above the job's level line: every line is 9 less above the floor there, and so is the toe
    platform's height."""
    high = plan(base("B1"), hung("W1"), tall("T1"), wall=north(floor_high=9.0, ceiling=2400.0))
    assert [line.up for line in high.strikes] == [100 - 9, 820 - 9, 1370 - 9, 2200 - 9]
    assert {piece.width for piece in high.platforms} == {100 - 9}
    assert room_above(high.elevation) == 2400 - 2200
    assert [each.bands for each in high.nailed if each.boxes == ("W1",)] == [
        ((1370 + 720 - 100 - 9, 1370 + 720 - 9), (1370 - 9, 1370 + 100 - 9))
    ]


def test_walls_that_meet_have_one_level_line() -> None:
    """The floor comes up to 12 along north, to 5 along east, which it meets at a corner, and to 3
    along south beyond that: heights of all three count from the 12, or their counters would not
    meet. Toe platforms are cut by their own wall's floor. The island stands by itself, at 20."""
    walls = (
        replace(north(floor_high=12.0), right=WallEnd(stands="corner", meets="east")),
        WallSpec(
            name="east",
            floor_high=5.0,
            left=WallEnd(stands="corner", meets="north"),
            right=WallEnd(stands="corner", meets="south"),
        ),
        WallSpec(name="south", floor_high=3.0, left=WallEnd(stands="corner", meets="east")),
        WallSpec(name="island", floor_high=20.0),
    )
    boxes = [replace(base(f"B{n}"), wall=wall.name) for n, wall in enumerate(walls)]
    layout = lay(*boxes, units="mm")
    found = plan_hanging(replace(layout, job=replace(layout.job, walls=walls)))
    assert [[line.up for line in each.strikes] for each in found] == [
        [100 - 12, 820 - 12], [100 - 12, 820 - 12], [100 - 12, 820 - 12], [100 - 20, 820 - 20],
    ]  # fmt: skip
    cut = [{piece.width for piece in each.platforms} for each in found]
    assert cut == [{100 - 12}, {100 - 5}, {100 - 3}, {100 - 20}]
    assert [each.elevation.joined for each in found] == [
        *[("north", "east", "south")] * 3, ("island",),
    ]  # fmt: skip


def test_lines_at_a_corner_lie_off_the_rooms_wall() -> None:
    """Round the corner stand a base box 584.2 deep and a wall box 320 deep: each row counts from
    its own line, as far off the room's wall. A base box whose filler is 65 begins 649.2 off it, a
    wall box with the same filler 385."""
    walls = (
        WallSpec(name="west", right=WallEnd(stands="corner", meets="north")),
        WallSpec(name="north", left=WallEnd(stands="corner", meets="west", filler=65.0)),
    )
    boxes = [*(replace(b, wall="west") for b in (base("C1"), hung("C2"))), base("B1"), hung("W1")]
    layout = lay(*boxes, units="mm")
    _, found = plan_hanging(replace(layout, job=replace(layout.job, walls=walls)))
    assert found.corner is not None
    assert (found.corner.base, found.corner.hung) == (584.2, 320.0)
    starts = {
        turn.seen.box.id: found.place_of(turn.seen)[0]
        + (found.corner.hung if turn.seen.hangs else found.corner.base)
        for turn in found.order
    }
    assert starts == pytest.approx({"B1": 584.2 + 65.0, "W1": 320.0 + 65.0})


def test_boxes_of_one_level_share_a_line() -> None:
    """0.3 apart is one line (0.5 at most), 30 is another; from the left each."""
    found = plan(hung("W2", x=600.0), hung("W1", x=0.0, at=1370.3), hung("W3", x=1200.0, at=1400.0))
    assert [line.serves for line in found.strikes] == [
        (("hung-bottom", ("W1", "W2")),), (("hung-bottom", ("W3",)),),
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("ends", "talls", "begin", "wanted"),
    [
        (("corner", "wall"), True, "corner", ["W1", "W2", "T1", "B1", "B2"]),
        (("wall", "corner"), True, "corner", ["W2", "W1", "B2", "B1", "T1"]),
        (("wall", "open"), True, "tall", ["T1", "W1", "W2", "B1", "B2"]),
        (("wall", "open"), False, "end", ["W1", "W2", "B1", "B2"]),
        (("open", "wall"), False, "end", ["W2", "W1", "B2", "B1"]),
        ((None, None), False, "left", ["W1", "W2", "B1", "B2"]),
    ],
)
def test_the_order_begins_where_nothing_can_give_way(
    ends: tuple[EndKind | None, EndKind | None], talls: bool, begin: BeginsAt, wanted: list[str]
) -> None:
    """The corner, else a tall box, else a fast end, else the left; what hangs before the base."""
    boxes = [base("B1"), base("B2"), hung("W1", x=600.0), hung("W2", x=1200.0)]
    if talls:
        boxes.insert(0, tall("T1"))
    found = plan(*boxes, wall=north(*ends))
    assert found.begin is not None
    assert found.begin.at == begin
    assert order(found) == wanted


def test_both_sides_of_a_tall_box_begin_beside_it() -> None:
    """Rightwards first, then leftwards; each is clamped to the one before it, or to the tall."""
    found = plan(base("B1"), base("B2"), tall("T1"), base("B3"), base("B4"))
    assert order(found) == ["T1", "B3", "B4", "B2", "B1"]
    assert [setting.beside for setting in found.order] == [(), ("T1",), ("B3",), ("T1",), ("B2",)]
    assert [setting.heavy for setting in found.order] == [True, False, False, False, False]


def test_what_stands_on_another_box_comes_last_and_is_joined_to_it() -> None:
    """A box at 820 on a base box is lifted by two, and clamped to the one that carries it."""
    upper = replace(base("B2", above=820.0), x=0.0)
    found = plan(base("B1"), upper)
    assert order(found) == ["B1", "B2"]
    assert found.order[1].turn == "stacked"
    assert found.order[1].beside == ("B1",)
    assert [kind for line in found.strikes for kind, _ in line.serves] == ["toe", "base-top"]


def test_what_hangs_is_no_wall_box_by_name_alone() -> None:
    """Open shelves at 1400, nothing below that carries them: a line of their own, before the base
    boxes, lifted by two."""
    shelves = BoxSpec(
        id="S1", kind="open", width=600, height=700, depth=300, above_floor=1400, wall="north"
    )
    found = plan(base("B1"), replace(shelves, x=0.0))
    assert order(found) == ["S1", "B1"]
    assert found.order[0].heavy
    assert found.strikes[-1].serves == (("hung-bottom", ("S1",)),)


def test_widths_add_up_to_the_wall() -> None:
    """Filler, boxes, an appliance, and what is to spare: 45 + 600 + 600 + 500 + 55 = 1800."""
    wall = replace(
        north("wall", "open", length=1800.0),
        left=WallEnd(stands="wall", filler=45.0),
        appliances=(Appliance(id="R1", width=600.0, height=860.0, after="B1"),),
    )
    layout = lay(base("B1"), base("B2", width=500.0), units="mm")
    job = replace(layout.job, walls=(wall,))
    [found] = plan_hanging(replace(layout, job=job))
    [row] = found.rows
    assert [(each.stands, each.end - each.start) for each in row.stretches] == [
        ("filler", 45), ("box", 600), ("appliance", 600), ("box", 500), ("open", 55),
    ]  # fmt: skip
    assert row.spare == pytest.approx(1800 - 45 - 600 - 600 - 500)
    assert [(each.id, each.start) for each in found.spaces] == [("R1", 45 + 600)]
    assert found.order[1].beside == ()
    [filler] = found.scribed
    assert (filler.width, filler.spare) == (45 + 12, 12)


def test_overlapping_boxes_have_no_sum() -> None:
    """Two in one place add up to nothing that a tape could find."""
    assert plan(base("B1"), replace(base("B2"), x=300.0)).rows == ()


def test_wall_boxes_at_a_corner_count_from_their_own_line() -> None:
    """Base boxes opposite are 584.2 deep, nothing hangs there: a wall box whose own x is 65 stands
    65 from the room's wall, whatever it is from the base boxes' line."""
    walls = (
        WallSpec(name="north", left=WallEnd(stands="corner", meets="west")),
        WallSpec(name="west", right=WallEnd(stands="corner", meets="north")),
    )
    opposite = replace(base("C1"), wall="west")
    layout = lay(base("B1"), hung("W1", x=65.0), opposite, units="mm")
    job = replace(layout.job, walls=walls)
    found = plan_hanging(replace(layout, job=job))[0]
    [seen] = [each.seen for each in found.order if each.seen.box.id == "W1"]
    assert seen.x == pytest.approx(65 - 584.2)
    assert found.place_of(seen) == pytest.approx((65, 65 + 600))


def test_an_order_from_the_right_is_measured_from_the_right() -> None:
    """Fillers of 45 and 65: the last box begins 65 from the right corner's line, whatever the wall
    has to spare: it falls to the left."""
    for length in (None, 2000.0):
        wall = WallSpec(
            name="north", length=length, left=WallEnd(stands="wall", filler=45.0),
            right=WallEnd(stands="corner", filler=65.0),
        )  # fmt: skip
        layout = lay(base("B1"), base("B2", width=500.0), units="mm")
        [found] = plan_hanging(replace(layout, job=replace(layout.job, walls=(wall,))))
        assert found.measured_from == "right"
        assert [found.place_of(each.seen) for each in found.order] == [
            pytest.approx((65, 65 + 500)), pytest.approx((65 + 500, 65 + 500 + 600)),
        ]  # fmt: skip


def test_wall_boxes_at_a_right_corner_count_from_their_own_line() -> None:
    """Opposite, base boxes are 584.2 deep and nothing hangs: their line is the room's wall, 584.2
    beyond that of the base boxes."""
    walls = (
        WallSpec(name="north", right=WallEnd(stands="corner", meets="west")),
        WallSpec(name="west", left=WallEnd(stands="corner", meets="north")),
    )
    opposite = replace(base("C1"), wall="west")
    layout = lay(base("B1"), hung("W1", x=300.0), opposite, units="mm")
    found = plan_hanging(replace(layout, job=replace(layout.job, walls=walls)))[0]
    places = {each.seen.box.id: found.place_of(each.seen) for each in found.order}
    assert places["B1"] == pytest.approx((0, 600))
    assert places["W1"] == pytest.approx((600 + 584.2 - 900, 600 + 584.2 - 300))


def test_boxes_that_stand_nowhere_have_lines_but_no_order() -> None:
    """Nothing is guessed: no place, no sum."""
    found = plan(box(replace(DOOR, id="A-1"), name="A", inferred=True))
    assert found.begin is None
    assert (found.order, found.rows) == ((), ())
    assert found.strikes


def test_fronts_come_from_below_on_shims_of_the_gap_between() -> None:
    """Gap 3.2 between two, none under the lowest; drawer boxes from below too."""
    drawers = [FrontSpec(id=f"B1-{k}", kind="drawer") for k in (1, 2, 3)]
    layout = lay(box(*drawers, kind="drawer"))
    [hanging] = plan_hanging(layout)
    [found] = furnish_boxes(layout, hanging)
    assert found.drawers == ("B1-3-BOX", "B1-2-BOX", "B1-1-BOX")
    [column] = found.fronts
    assert [front.id for front in column] == ["B1-3", "B1-2", "B1-1"]
    assert column[0].gap is None
    assert [front.gap for front in column[1:]] == pytest.approx([3.2, 3.2])


def test_what_is_held_is_not_hung() -> None:
    """A door without a hand has no place among the doors."""
    layout = lay(box(FrontSpec(id="B1-1", kind="door"), FrontSpec(id="B1-2", kind="drawer")))
    [hanging] = plan_hanging(layout)
    [found] = furnish_boxes(layout, hanging)
    assert found.held == ("B1-1",)
    assert found.doors == ()
