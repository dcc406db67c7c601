"""Whole jobs laid out: the golden box end to end, and every kind of front."""

import pytest

from jigs.box.parts import Layout
from jigs.checks.advice import slides_off_row
from jigs.given.confirming import StandIn
from jigs.given.hardware import HingeRecord, SlideRecord
from jigs.given.job import FrontKind, FrontSpec, Grid, Use
from jigs.given.stated import Boring, Hung, OpenedBy
from jigs.ground.geometry import Hole
from jigs.layout.layout import lay_out
from tests import uneven
from tests.jigs.sample import UNDER_COUNTER, box, codes, front_of, job, lay, side_of
from tests.templates.printed import laid_out

STACK = (163.5, 188.8, 188.8, 220.8)


def spec(name: str, kind: FrontKind = "drawer", **given: object) -> FrontSpec:
    """Give a front as the job states it."""
    return FrontSpec(id=name, kind=kind, **given)  # type: ignore[arg-type]


def stack() -> Layout:
    """Lay out the golden stack of four drawers."""
    fronts = [spec(f"B1-{i}", height=height) for i, height in enumerate(STACK, start=1)]
    return lay(box(*fronts, kind="drawer"))


def places(holes: tuple[Hole, ...], purpose: str) -> list[tuple[float, float]]:
    """Give the places of the holes for one purpose, to 0.01."""
    return [(round(h.x, 2), round(h.y, 2)) for h in holes if h.purpose == purpose]


def test_golden_door() -> None:
    """The golden box with one door: 454 x 771.5, cups 97.75 from both its ends, plate 3."""
    layout = lay(box(spec("B1-1", "door", hinged="left")))
    door = front_of(layout, "B1-1")
    assert (door.width, door.height) == pytest.approx((457.2 - 3.2, 774.7 - 3.2))
    assert places(door.holes, "cup") == [(22.5, 97.75), (22.5, round(771.5 - 97.75, 2))]
    assert places(door.holes, "cup-fixing")[:2] == [(32.0, 75.25), (32.0, 120.25)]
    assert places(door.holes, "pull") == [
        (454 - 50.8, 771.5 - 63.5 - 160),
        (454 - 50.8, 771.5 - 63.5),
    ]
    left, right = side_of(layout, "B1-SIDE-L"), side_of(layout, "B1-SIDE-R")
    assert places(left.holes, "plate")[:2] == [(37.0, 83.35), (37.0, 115.35)]
    assert right.holes == ()
    assert door.hinge is not None
    assert (door.hinge.tab, door.hinge.plate) == (5.0, 3.0)
    assert door.hinge.error == pytest.approx(15 + 5 - 3 - (18.3 - 1.6))
    assert door.least_reveal is not None
    assert door.least_reveal.width == pytest.approx(0.9 + 0.05 * 0.2)
    assert door.screws.pull == pytest.approx(25.4)
    assert door.reversible


def test_a_nearly_symmetric_door_is_not_reversible() -> None:
    """Under a drawer the cups stand 97.75 from the bottom and not from the top."""
    layout = lay(box(spec("B3-1", height=152.4), spec("B3-2", "door", height=613.0, hinged="left")))
    door = front_of(layout, "B3-2")
    assert places(door.holes, "cup") == [(22.5, 97.75), (22.5, 97.75 + 13 * 32)]
    assert pytest.approx(99.25) == 613.0 - (97.75 + 416.0)
    assert not door.reversible


def test_golden_stack() -> None:
    """Four drawers: boxes 30.7 up, hole lines 51.3, 275.3, 467.3, 659.3, heights as chosen."""
    layout = stack()
    for name, bottom, line, height in (
        ("B1-4", 32.3, 51.3, 190.5),
        # Not the example's 165.1: the box's top at 421.4 would strike the next front at 417.6.
        ("B1-3", 256.3, 275.3, 152.4),
        ("B1-2", 448.3, 467.3, 152.4),
        ("B1-1", 640.3, 659.3, 101.6),
    ):
        front = front_of(layout, name)
        assert front.drawer is not None
        assert front.drawer.y == pytest.approx(18.3 + 14 - 1.6)
        assert front.place.y + front.drawer.y == pytest.approx(bottom)
        assert front.drawer.height == pytest.approx(height)
        assert front.drawer.width == pytest.approx(409.6, abs=0.03)
        assert places(front.holes, "pull")[0][0] == 147.0
        for board in ("B1-SIDE-L", "B1-SIDE-R"):
            (slide,) = (f for f in side_of(layout, board).fittings if f.part == name)
            assert [hole.y for hole in slide.holes] == pytest.approx([line, line])
            assert [hole.x for hole in slide.holes] == [37.0, 165.0]
    assert [f.index for f in side_of(layout, "B1-SIDE-L").fittings] == [1, 2, 3, 4]
    assert front_of(layout, "B1-1").place.y + STACK[0] == pytest.approx(774.7 - 1.6)


def test_fronts_of_the_uneven_box() -> None:
    """Each from its own reveal, or half a gap beyond the partition's middle, to the same at its
    other end; the lower drawer front takes what is left."""
    layout = laid_out(uneven.UNEVEN)
    placed = {f.id: (f.place.x, f.place.y, f.width, f.height) for f in layout.fronts}
    assert placed == {
        "B1-1": pytest.approx((6.0, 571.5, 418.3 + 9.15 - 1.6 - 6, 200.0)),
        "B1-2": pytest.approx((6.0, 1.6, 419.85, 774.7 - 3.2 - 200 - 3.2 - 1.6)),
        "B1-3": pytest.approx((418.3 + 9.15 + 1.6, 1.6, 469.35, 774.7 - 3.2 - 1.6)),
    }
    gaps = [(round(front.gaps.left, 4), round(front.gaps.right, 4)) for front in layout.fronts]
    assert gaps == [(6.0, 3.2), (6.0, 3.2), (3.2, 1.6)]
    assert pytest.approx((571.5, 419.85, 469.35)) == (
        uneven.UPPER_Y,
        uneven.DRAWER_WIDTH,
        uneven.DOOR_WIDTH,
    )


def test_the_uneven_boxs_door_hangs_at_the_right() -> None:
    """Cups 22.5 from its right edge, their screws 9.5 further in, the pull 50.8 from its left; its
    plates in the right side alone, 16 above and below each cup."""
    layout = laid_out(uneven.UNEVEN)
    door = front_of(layout, "B1-3")
    edge = 469.35
    assert places(door.holes, "cup") == [(edge - 22.5, 97.75), (edge - 22.5, 97.75 + 18 * 32)]
    assert places(door.holes, "cup-fixing")[:2] == [(edge - 32.0, 75.25), (edge - 32.0, 120.25)]
    assert places(door.holes, "pull") == [(50.8, 769.9 - 63.5 - 160), (50.8, 769.9 - 63.5)]
    assert places(side_of(layout, "B1-SIDE-R").holes, "plate") == [
        (37.0, round(1.6 + cup + half, 2)) for cup in (97.75, 673.75) for half in (-16, 16)
    ]
    for side in layout.sides:
        assert side.board == "B1-SIDE-R" or not places(side.holes, "plate")
    assert door.hinge is not None
    assert door.hinge.error == pytest.approx(15 + 5 - 3 - (18.3 - 1.6))
    assert not door.reversible


def test_the_uneven_boxs_drawers_run_between_side_and_partition() -> None:
    """400 - 42 + 2 x 15.9 = 389.8, made 389; in the middle of its opening, so 17.8 in from the
    front's left end and 13.05 from its right. The partition stands on the bottom, 18.3 higher."""
    layout = laid_out(uneven.UNEVEN)
    for name, line in (("B1-1", 571.5 + 30.7 + 19), ("B1-2", 1.6 + 30.7 + 19)):
        front = front_of(layout, name)
        assert front.drawer is not None
        assert front.drawer.width == 389.0
        assert front.drawer.x == pytest.approx(18.3 + 200 - 389 / 2 - 6)
        right = front.width - front.drawer.x - front.drawer.width
        assert (front.drawer.x, right) == pytest.approx((uneven.IN_LEFT, uneven.IN_RIGHT))
        assert pytest.approx((17.8, 13.05)) == (uneven.IN_LEFT, uneven.IN_RIGHT)
        assert places(front.holes, "pull") == [
            (round(419.85 / 2 + half, 2), front.height / 2) for half in (-80, 80)
        ]
        columns = [17.8 + 15.9 + 32, 419.85 - 13.05 - 15.9 - 32]
        assert sorted({x for x, _ in places(front.holes, "front-fixing")}) == pytest.approx(columns)
        for board, below in (("B1-SIDE-L", 0.0), ("B1-PARTITION-1", 18.3)):
            fittings = side_of(layout, board).fittings
            (slide,) = (f for f in fittings if f.part == name)
            assert [(h.x, h.y) for h in slide.holes] == [pytest.approx((37.0, line - below))]
    second = [side for side in layout.sides if side.column == 2]
    assert not any(places(side.holes, "slide") for side in second)


def test_slides_go_to_the_grid_when_asked() -> None:
    """With the grid on for slides the hole line is a grid hole, where that costs nothing."""
    fronts = [spec(f"B1-{i}", height=height) for i, height in enumerate(STACK, start=1)]
    layout = lay_out(job(box(*fronts), grid=Grid(slides=True)))
    lines = [f.holes[0].y for f in side_of(layout, "B1-SIDE-L").fittings]
    assert lines == pytest.approx([51.35, 51.35 + 7 * 32, 51.35 + 13 * 32, 51.35 + 19 * 32])
    assert slides_off_row(layout) == ()


def test_pair() -> None:
    """Two leaves, the left one hinged left and the right one right, on their own sides."""
    layout = lay(box(spec("B1-1", "pair"), width=914.4))
    left, right = layout.fronts
    assert (left.id, left.kind, left.hinged) == ("B1-1L", "door", "left")
    assert (right.id, right.kind, right.hinged) == ("B1-1R", "door", "right")
    assert places(left.holes, "cup")[0][0] == pytest.approx(22.5)
    assert places(right.holes, "cup")[0][0] == pytest.approx(454 - 22.5)
    assert {f.part for f in side_of(layout, "B1-SIDE-L").fittings} == {"B1-1L"}
    assert {f.part for f in side_of(layout, "B1-SIDE-R").fittings} == {"B1-1R"}
    assert codes(layout) == ["counter-reveal", "counter-reveal"]


def test_sink() -> None:
    """A false front is fastened at four places and has no pull; it brings no slides."""
    layout = lay(
        box(spec("B1-1", "false-front", height=152.4), spec("B1-2", "pair"), width=914.4,
            kind="sink"),
        reveal=UNDER_COUNTER,
    )  # fmt: skip
    front = front_of(layout, "B1-1")
    assert front.drawer is None
    assert places(front.holes, "pull") == []
    assert len([f for f in front.fittings if f.kind == "front-fixing"]) == 2
    assert not [f for side in layout.sides for f in side.fittings if f.kind == "slide"]
    plates = [h.y for h in side_of(layout, "B1-SIDE-L").holes if h.purpose == "plate"]
    assert max(plates) - 16 <= 774.7 - 100 - 35


def test_tall_and_wall() -> None:
    """A tall door has its pull at 1000 above the floor, a wall door at its bottom corner."""
    layout = lay(
        box(spec("B1-1", "door", hinged="left"), name="B1", kind="tall", height=2133.6,
            above_floor=114.0),
        box(spec("W1-1", "door", hinged="right"), name="W1", kind="wall", height=762.0,
            above_floor=1370.0),
    )  # fmt: skip
    tall, wall = layout.fronts
    assert [y for _, y in places(tall.holes, "pull")] == pytest.approx([804.4, 964.4])
    assert len(places(tall.holes, "cup")) == 5
    assert [y for _, y in places(wall.holes, "pull")] == pytest.approx([63.5, 223.5])
    assert [x for x, _ in places(wall.holes, "pull")] == pytest.approx([50.8, 50.8])


def test_no_overlay() -> None:
    """With plates of 9 alone no tab reaches the overlay."""
    hinge = HingeRecord(name="far", constant=11.0, plates=(9.0,))
    layout = lay_out(job(box(spec("B1-1", "door", hinged="left")), hinge=hinge))
    assert "overlay" in codes(layout, "B1-1")


def test_bored_front_is_answered_by_its_plates() -> None:
    """A front bored by its supplier has no cups here; the plates stand at its heights."""
    front = spec(
        "B1-1",
        "door",
        hinged="right",
        boring=Boring(bored=True),
        hung=Hung(hinges_at=(90.0, 680.0)),
    )
    layout = lay(box(front))
    assert places(layout.fronts[0].holes, "cup") == []
    assert places(layout.fronts[0].holes, "pull") != []
    ys = [h.y for h in side_of(layout, "B1-SIDE-R").holes]
    assert ys == pytest.approx([1.6 + 90 - 16, 1.6 + 90 + 16, 1.6 + 680 - 16, 1.6 + 680 + 16])


def test_a_given_height_on_a_slide_is_refused() -> None:
    """A plate hole nearer than 12.5 to a slide's hole is told, and withholds the door."""
    layout = lay(
        box(
            spec("B1-1", height=152.4),
            spec("B1-2", "door", hinged="left", hung=Hung(hinges_at=(100.0, 500.0))),
            spec("B1-3", height=150),
        )
    )
    slides = [h.y for h in side_of(layout, "B1-SIDE-L").holes if h.purpose == "slide"]
    door = front_of(layout, "B1-2")
    near = slides[-1] - 16 - 6 - door.place.y
    layout = lay(
        box(
            spec("B1-1", height=152.4),
            spec("B1-2", "door", hinged="left", hung=Hung(hinges_at=(100.0, near))),
            spec("B1-3", height=150),
        )
    )
    assert "hinge-against" in codes(layout, "B1-2")


def test_unconfirmed_hardware_is_told_with_the_boards() -> None:
    """Each front on unconfirmed hardware is named, and so are the sides it is drilled into."""
    fronts = (spec("B1-1", height=152.4), spec("B1-2", "door", hinged="left"))
    layout = lay_out(job(box(*fronts), hinge=HingeRecord(name="h"), slide=SlideRecord(name="s")))
    found = {p.code: p for p in layout.problems if p.code.startswith("unconfirmed")}
    assert (found["unconfirmed-hinge"].part, found["unconfirmed-hinge"].also) == (
        "B1-2",
        ("B1-SIDE-L",),
    )
    assert found["unconfirmed-slide"].also == ("B1-SIDE-L", "B1-SIDE-R", "B1-1-BOX")


def test_no_pulls_at_all() -> None:
    """Without a pull in [use] fronts have none; `none` takes it from a single front."""
    use = Use(hinge="mine", slide="runner")
    layout = lay_out(job(box(spec("B1-1")), use=use))
    assert places(layout.fronts[0].holes, "pull") == []
    layout = lay(box(spec("B1-1", opened_by=OpenedBy(pull="none"))))
    assert places(layout.fronts[0].holes, "pull") == []


def test_same_job_same_layout() -> None:
    """The same job gives the same values, codes included."""
    assert stack() == stack()


def test_code_follows_the_holes() -> None:
    """Twins share a code; another hand has another."""
    layout = lay(
        box(spec("B1-1", "door", hinged="left")),
        box(spec("B2-1", "door", hinged="left"), name="B2"),
        box(spec("B3-1", "door", hinged="right"), name="B3"),
    )
    one, twin, other = layout.fronts
    assert one.code == twin.code != other.code


def test_assumed_numbers_are_named_on_the_parts_they_touch() -> None:
    """A default side thickness touches the door and both sides, the depth of another box none."""
    layout = lay_out(
        job(
            box(spec("B1-1", "door", hinged="left")),
            assumed=frozenset({"material.side", "box.B2.depth", "material.drawer_side"}),
            units="mm",
        )
    )
    assert len(layout.fronts[0].assumed) == 1
    assert layout.fronts[0].assumed[0] == StandIn("material.side", 18.3)
    assert layout.sides[0].assumed == layout.fronts[0].assumed


def test_echo() -> None:
    """One line says what was understood."""
    layout = lay(box(spec("A", height=150), spec("B")), box(spec("C", "door"), name="B2"))
    assert layout.echo.startswith("3 fronts: 1 door, 2 drawers, on 2 boxes")
