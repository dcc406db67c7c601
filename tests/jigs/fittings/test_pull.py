"""Pulls and knobs: places, outlines, screws."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from jigs.fittings.pull import (
    SCREW_STOCK,
    PulledFront,
    PullPlan,
    place_pulls,
    pull_screw,
)
from jigs.given.hardware import PullRecord
from jigs.given.job import BoxKind, FrontKind
from jigs.ground.geometry import Hand, Hole, rectangle
from jigs.ground.lengths import Unit

BAR = PullRecord(name="bar")
"""Centres 160, 50 in, 64 down, two from 762, tall pulls at 1000."""
KNOB = PullRecord(name="knob", centers=None, foot=30.0)


def front(
    kind: FrontKind = "drawer",
    *,
    box_kind: BoxKind = "base",
    hinged: Hand | None = None,
    width: float = 454.0,
    height: float = 771.5,
    floor: float = 101.6,
    stile: float | None = None,
) -> PulledFront:
    return PulledFront(
        id="B1-1",
        kind=kind,
        box_kind=box_kind,
        hinged=hinged,
        width=width,
        height=height,
        floor=floor,
        stile=stile,
    )


def places(plan: PullPlan) -> list[tuple[float, float]]:
    return [(hole.x, hole.y) for fitting in plan.fittings for hole in fitting.holes]


def test_a_drawer_pull_lies_on_the_middle() -> None:
    """Derived: 454 / 2 -+ 160 / 2 = 147 and 307."""
    plan = place_pulls(BAR, front(height=152.4))
    assert places(plan) == [(147.0, 76.2), (307.0, 76.2)]
    assert plan.flags == ()


def test_a_wide_drawer_takes_two_pulls() -> None:
    """Derived: at quarters of 911.2, 227.8 and 683.4, each -+ 80."""
    plan = place_pulls(BAR, front(width=911.2, height=152.4))
    assert [x for x, _ in places(plan)] == pytest.approx([147.8, 307.8, 603.4, 763.4])
    assert [(fitting.index, fitting.count) for fitting in plan.fittings] == [(1, 2), (2, 2)]


@pytest.mark.parametrize(("width", "count"), [(761.9, 1), (762.0, 2), (762.1, 2)])
def test_two_pulls_start_at_the_width_the_job_sets(width: float, count: int) -> None:
    """From 762 up, and not before."""
    assert len(place_pulls(BAR, front(width=width)).fittings) == count


@pytest.mark.parametrize(
    ("centers", "count"), [(2 * (800 / 4 - 38), 2), (2 * (800 / 4 - 38) + 0.1, 1)]
)
def test_two_pulls_that_would_crowd_the_ends_become_one(centers: float, count: int) -> None:
    """A quarter of the width less half the centres must leave 38; otherwise it is said."""
    plan = place_pulls(replace(BAR, centers=centers), front(width=800.0))
    assert len(plan.fittings) == count
    assert plan.flags == (() if count == 2 else ("one-pull-for-two",))


@pytest.mark.parametrize(
    ("drawer", "y"), [("center", 120 / 2), ("upper-third", 2 * 120 / 3), (45.0, 120 - 45.0)]
)
def test_the_height_on_a_drawer_is_the_records_choice(drawer: str | float, y: float) -> None:
    """Centred, two thirds up, or a constant distance below the top edge."""
    record = replace(BAR, drawer=drawer)
    assert {y for _, y in places(place_pulls(record, front(height=120.0)))} == {y}


@pytest.mark.parametrize(("hinged", "x"), [("left", 454.0 - 50.0), ("right", 50.0)])
def test_a_door_pull_stands_at_the_free_edge(hinged: Hand, x: float) -> None:
    """Derived: 771.5 - 64 = 707.5, and 160 below it 547.5."""
    plan = place_pulls(BAR, front("door", hinged=hinged))
    assert places(plan) == [(x, 547.5), (x, 707.5)]


@pytest.mark.parametrize("box_kind", ["base", "drawer", "sink", "open"])
def test_low_boxes_take_the_top_corner(box_kind: BoxKind) -> None:
    """The near screw is 64 below the top edge."""
    plan = place_pulls(BAR, front("door", box_kind=box_kind, hinged="left"))
    assert max(y for _, y in places(plan)) == 771.5 - 64


def test_wall_boxes_take_the_bottom_corner() -> None:
    """The near screw is 64 above the bottom edge."""
    plan = place_pulls(BAR, front("door", box_kind="wall", hinged="right", floor=1370.0))
    assert places(plan) == [(50.0, 64.0), (50.0, 64.0 + 160)]


@pytest.mark.parametrize(
    ("floor", "height", "middle"),
    [
        # Derived: box bottom at 114, reveal 1.6; 1000 - 115.6 = 884.4 on the front.
        (114 + 1.6, 2100.0, 1000 - 115.6),
        # Reaches just 64 beyond both screws, below and above.
        (1000 - 64 - 80, 900.0, 64.0 + 80),
        (1000 - 600 + 64 + 80, 600.0, 600.0 - 64 - 80),
        # A millimetre less at either end: the corner there.
        (1001 - 64 - 80, 900.0, 64.0 + 80),
        (999 - 600 + 64 + 80, 600.0, 600.0 - 64 - 80),
        # Wholly above: bottom corner. Wholly below: top corner.
        (1300.0, 800.0, 64.0 + 80),
        (100.0, 700.0, 700.0 - 64 - 80),
    ],
)
def test_tall_doors_have_their_pull_at_one_height(
    floor: float, height: float, middle: float
) -> None:
    """At 1000 above the floor where the front reaches, otherwise at the corner towards it."""
    plan = place_pulls(
        BAR, front("door", box_kind="tall", hinged="left", height=height, floor=floor)
    )
    assert [y for _, y in places(plan)] == pytest.approx([middle - 80, middle + 80])


@pytest.mark.parametrize(("hinged", "x"), [("left", 454.0 - 57.0 / 2), ("right", 57.0 / 2)])
def test_a_framed_door_takes_its_pull_on_the_middle_of_the_stile(hinged: Hand, x: float) -> None:
    """Half a stile of 57 from the free edge, on either hand."""
    plan = place_pulls(BAR, front("door", hinged=hinged, stile=57.0))
    assert {at for at, _ in places(plan)} == {x}


def test_a_door_without_a_hand_has_no_free_edge() -> None:
    """The hand is never guessed: no pull is placed."""
    assert place_pulls(BAR, front("door")).fittings == ()
    assert place_pulls(BAR, front("opening")).fittings == ()


@pytest.mark.parametrize("kind", ["pullout", "panel"])
def test_a_pullout_is_pulled_at_its_top(kind: FrontKind) -> None:
    """Level, on the middle, 64 below the top edge."""
    plan = place_pulls(BAR, front(kind, width=400.0))
    assert places(plan) == [(120.0, 771.5 - 64), (280.0, 771.5 - 64)]


@pytest.mark.parametrize(("width", "upright"), [(210.0, False), (209.9, True)])
def test_a_narrow_pullout_takes_its_pull_upright(width: float, upright: bool) -> None:
    """Narrower than the centres plus 50: upright on the middle, and said."""
    plan = place_pulls(BAR, front("pullout", width=width))
    assert plan.flags == (("pull-upright",) if upright else ())
    if upright:
        assert places(plan) == [(width / 2, 771.5 - 64 - 160), (width / 2, 771.5 - 64)]


def test_a_false_front_matches_the_drawers() -> None:
    """It carries the same pulls at the same places."""
    drawer = place_pulls(BAR, front("drawer", width=911.2, height=150.0))
    assert places(place_pulls(BAR, front("false-front", width=911.2, height=150.0))) == places(
        drawer
    )


def test_a_lift_front_is_pulled_at_its_bottom() -> None:
    """Level, on the middle, 64 above the bottom edge."""
    plan = place_pulls(BAR, front("lift", box_kind="wall", width=800.0, floor=1370.0))
    assert places(plan) == [(320.0, 64.0), (480.0, 64.0)]


@pytest.mark.parametrize(
    ("part", "expected"),
    [
        (front("drawer", height=150.0), (227.0, 75.0)),
        (front("door", hinged="left"), (404.0, 771.5 - 64)),
        (front("door", box_kind="wall", hinged="left"), (404.0, 64.0)),
        (front("pullout", width=120.0), (60.0, 771.5 - 64)),
    ],
)
def test_a_knob_has_one_hole_by_the_same_rules(
    part: PulledFront, expected: tuple[float, float]
) -> None:
    """The single hole stands where a pull's near screw, or its middle, would be."""
    plan = place_pulls(KNOB, part)
    assert places(plan) == [expected]
    assert plan.flags == ()


def test_the_outline_of_a_bar_has_two_feet_and_the_bar() -> None:
    """Feet of 12 about the screws, the bar between them."""
    (fitting,) = place_pulls(BAR, front(height=152.4)).fittings
    left, right, bar = fitting.outline
    assert left == rectangle(147 - 6, 76.2 - 6, 147 + 6, 76.2 + 6)
    assert right == rectangle(307 - 6, 76.2 - 6, 307 + 6, 76.2 + 6)
    assert bar == rectangle(147 + 6, 76.2 - 3, 307 - 6, 76.2 + 3)


def test_the_outline_of_an_upright_bar_stands() -> None:
    """On a door the bar runs up."""
    (fitting,) = place_pulls(BAR, front("door", hinged="right")).fittings
    assert fitting.outline[2] == rectangle(50 - 3, 547.5 + 6, 50 + 3, 707.5 - 6)


def test_the_outline_of_a_knob_is_an_octagon() -> None:
    """Eight corners, 30 across the flats: a circle on a sheet is always a hole."""
    (fitting,) = place_pulls(KNOB, front(height=150.0)).fittings
    (octagon,) = fitting.outline
    assert len(octagon) == 8
    assert max(x for x, _ in octagon) - min(x for x, _ in octagon) == pytest.approx(30)
    assert max(y for _, y in octagon) - min(y for _, y in octagon) == pytest.approx(30)
    sides = [
        ((x1 - x0) ** 2 + (y1 - y0) ** 2) ** 0.5
        for (x0, y0), (x1, y1) in zip(octagon, (*octagon[1:], octagon[0]), strict=True)
    ]
    assert sides == pytest.approx([sides[0]] * 8)


@given(
    st.sampled_from(["drawer", "pullout", "false-front", "panel", "lift"]),
    st.floats(min_value=100, max_value=1200),
    st.sampled_from([None, 64.0, 96.0, 160.0, 320.0, 480.0]),
)
def test_pulls_are_symmetric_about_the_middle(
    kind: FrontKind, width: float, centers: float | None
) -> None:
    """On every front without a hinge edge, mirrored screws fall on screws."""
    plan = place_pulls(replace(BAR, centers=centers), front(kind, width=width))
    xs = sorted(x for x, _ in places(plan))
    assert sorted(width - x for x in xs) == pytest.approx(xs)


@given(st.floats(min_value=200, max_value=700), st.floats(min_value=300, max_value=2200))
def test_left_and_right_doors_mirror_each_other(width: float, height: float) -> None:
    """A pair's two leaves have their pulls at one height, at their meeting edges."""
    left, right = (
        places(place_pulls(BAR, front("door", hinged=hand, width=width, height=height)))
        for hand in ("left", "right")
    )
    assert [width - x for x, _ in right] == pytest.approx([x for x, _ in left])
    assert [y for _, y in right] == [y for _, y in left]


def test_pull_holes_go_through_from_the_face() -> None:
    """5 mm, or what the record says, right through, drilled from the front."""
    plan = place_pulls(replace(BAR, hole_diameter=4.7625), front())
    holes = plan.fittings[0].holes
    assert holes[0] == Hole(
        purpose="pull", face="front", x=147.0, y=771.5 / 2, diameter=4.7625, depth=None
    )


@pytest.mark.parametrize("hole", [5.0, 25.4 * 3 / 16])
@pytest.mark.parametrize(
    ("thread", "clearance"),
    [
        # ISO 724: M4 major diameter 4.0. ISO 273, from memory: clearance 4.3 fine, 4.5 medium,
        # 4.8 coarse.
        (4.0, 4.5),
        # ASME B1.1: 8-32 major diameter 0.1640 in. Close clearance 0.1695 in (No. 18): drill
        # charts, common practice, no source; ASME B18.2.8 has larger holes (from memory).
        (0.1640 * 25.4, 0.1695 * 25.4),
    ],
)
def test_a_pull_hole_clears_both_usual_screws(hole: float, thread: float, clearance: float) -> None:
    """5 mm and 3/16 in both clear M4 and 8-32, and are no sloppier than a millimetre."""
    assert clearance <= hole <= thread + 1.0


def test_the_pull_hole_clears_by_the_loosest_figures_of_both() -> None:
    """M4 coarse 4.8 (ISO 273, from memory); 8-32 free 0.1770 in, No. 16 (drill charts: common
    practice, no source)."""
    assert BAR.hole_diameter >= 4.8
    assert 25.4 * 3 / 16 >= 0.1770 * 25.4


@pytest.mark.parametrize(
    ("clamped", "units", "screw"),
    [
        # Derived: what is clamped and 6 to 9 of thread (common practice, no source): 19 + 7
        # is an inch; through a drawer box 19 + 15.9 + 7 = 41.9 is 1 5/8 in, in metric stock 41;
        # of 40 and 41 for 18 + 16 the one that is 7 longer.
        (19.0, "in", 25.4),
        (19.05, "in", 25.4),
        (19.0 + 15.9, "in", 25.4 * 13 / 8),
        (19.0 + 15.9, "mm", 41.0),
        (18.0 + 16.0, "mm", 41.0),
        (19.0, "mm", 25.0),
        (22.0, "mm", 28.0),
        (60.0, "mm", None),
    ],
)
def test_pull_screws_are_stock_lengths(clamped: float, units: Unit, screw: float | None) -> None:
    """The stock length nearest to 7 more than what is clamped."""
    assert pull_screw(clamped, units) == (None if screw is None else pytest.approx(screw))


@given(st.floats(min_value=12, max_value=45), st.sampled_from(["mm", "in"]))
def test_a_pull_screw_is_6_to_9_longer(clamped: float, units: Unit) -> None:
    """A screw is named only where it neither misses the pull's thread nor bottoms in it."""
    screw = pull_screw(clamped, units)
    inside = [s for s in SCREW_STOCK[units] if clamped + 6 <= s <= clamped + 9]
    assert (screw is None and not inside) or (
        screw is not None and clamped + 6 - 1e-5 <= screw <= clamped + 9 + 1e-5
    )
