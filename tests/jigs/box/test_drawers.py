"""The drawers of a column."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from jigs.box.drawers import (
    DrawerPlace,
    DrawerSpace,
    choose_height,
    next_grid_hole,
    off_grid,
    place_drawers,
)
from jigs.given.hardware import SlideRecord
from jigs.ground.grid import balanced_start

RUNNER = SlideRecord(name="runner", fixing_height=33.0, drawer_rise=14.0)
HEIGHT, SIDE, REVEAL, GAP = 774.7, 18.3, 1.6, 3.2
START = balanced_start(HEIGHT)
"""Derived: (774.7 - 23 x 32) / 2 = 19.35."""


def stack(
    heights: list[float], *, on_grid: bool = False, given: float | None = None, start: float = START
) -> tuple[DrawerPlace, ...]:
    """Place a golden box full of drawers, fronts given from the bottom up."""
    drawers = []
    bottom = REVEAL
    for height in heights:
        edge = bottom + height + GAP
        drawers.append(
            DrawerSpace(
                record=RUNNER,
                front_bottom=bottom,
                front_top=edge - GAP,
                front_above=edge,
                height=given,
            )
        )
        bottom = edge
    last = drawers.pop()
    drawers.append(
        DrawerSpace(
            record=RUNNER,
            front_bottom=last.front_bottom,
            front_top=last.front_top,
            ceiling=HEIGHT - SIDE,
            height=given,
        )
    )
    return place_drawers(
        drawers, side=SIDE, reveal_bottom=REVEAL, units="in", start=start, on_grid=on_grid
    )


GOLDEN = [220.8, 188.8, 188.8, 163.5]


@pytest.mark.parametrize(
    ("place", "bottom", "hole", "room", "chosen"),
    [
        (0, 32.3, 51.3, 199.0, 190.5),
        # By its room the example takes 165.1, but then the box's top at 421.4 strikes the front
        # above, whose bottom edge is at 417.6, as it is pulled out.
        (1, 256.3, 275.3, 167.0, 152.4),
        (2, 448.3, 467.3, 167.0, 152.4),
        (3, 640.3, 659.3, 106.1, 101.6),
    ],
)
def test_the_golden_stack(
    place: int, bottom: float, hole: float, room: float, chosen: float
) -> None:
    """Derived, four drawers bottom up: 18.3 + 14 = 32.3 for the first, then up by front and gap."""
    drawer = stack(GOLDEN)[place]
    assert drawer.bottom == pytest.approx(bottom)
    assert drawer.hole == pytest.approx(hole)
    assert drawer.room == pytest.approx(room)
    assert drawer.height == pytest.approx(chosen)
    assert drawer.rise == pytest.approx(SIDE + 14 - REVEAL)
    assert not drawer.too_low
    assert drawer.too_high == 0.0


def test_the_golden_hole_lines_step_by_whole_pitches() -> None:
    """Derived: 220.8 + 3.2 = 7 x 32, 188.8 + 3.2 = 6 x 32."""
    holes = [drawer.hole for drawer in stack(GOLDEN)]
    steps = [(above - below) / 32 for below, above in pairwise(holes)]
    assert steps == pytest.approx([7, 6, 6])


@pytest.mark.parametrize(
    ("front", "top", "others"),
    [(60.0, 2.6, 38.0), (80.0, 23.0, 58.0), (110.0, 53.0, 88.0), (140.0, 83.0, 118.0)],
)
def test_space_by_front_height(front: float, top: float, others: float) -> None:
    """Room for the top drawer and for others, derived: front + 1.6 - 18.3 - 10 - 30.7, and the
    front below another less what they keep."""
    low, high = HEIGHT - REVEAL - 2 * front - GAP, HEIGHT - REVEAL - front
    lower, upper = place_drawers(
        [
            DrawerSpace(record=RUNNER, front_bottom=low, front_top=low + front),
            DrawerSpace(
                record=RUNNER, front_bottom=high, front_top=high + front, ceiling=HEIGHT - SIDE
            ),
        ],
        side=SIDE,
        reveal_bottom=REVEAL,
        units="mm",
        start=START,
        on_grid=False,
    )
    assert upper.room == pytest.approx(top, abs=0.5)
    assert lower.room == pytest.approx(others, abs=0.5)
    assert upper.too_low == (top < 50)


def test_a_box_passes_under_the_front_above() -> None:
    """2 below the bottom edge of the next front; only the top drawer goes by its ceiling."""
    placed = stack(GOLDEN)
    bottoms = [REVEAL + sum(GOLDEN[:n]) + n * GAP for n in range(4)]
    for drawer, edge in zip(placed[:-1], bottoms[1:], strict=True):
        assert drawer.greatest == pytest.approx(edge - 2 - drawer.bottom)
        assert drawer.bottom + drawer.height <= edge - 2
    assert placed[3].greatest == placed[3].room
    assert stack(GOLDEN, given=165.1)[1].too_high == pytest.approx(165.1 - (417.6 - 2 - 256.3))


@pytest.mark.parametrize(
    ("gap", "over"), [(1.5, -0.5), (3.0, 1.0), (3.2, 1.2), (6.0, 1.2), (10.0, 1.2), (25.0, 1.2)]
)
def test_a_wide_gap_gives_no_box_more_height(gap: float, over: float) -> None:
    """Derived: 2 below the front above, but no more than 3.2 - 2 above the box's own front."""
    top = REVEAL + 238.0
    spaces = [
        DrawerSpace(record=RUNNER, front_bottom=REVEAL, front_top=top, front_above=top + gap),
        DrawerSpace(
            record=RUNNER, front_bottom=top + gap, front_top=top + gap + 400, ceiling=HEIGHT - SIDE
        ),
    ]
    for stated in (None, 215.0):
        spaces[0] = replace(spaces[0], height=stated)
        box, _ = place_drawers(
            spaces, side=SIDE, reveal_bottom=REVEAL, units="mm", start=START, on_grid=False
        )
        # What is given is held back by what it would strike alone.
        most = top + over if stated is None else top + gap - 2
        assert box.greatest == pytest.approx(min(most - box.bottom, box.room))


def test_a_drawer_over_a_door_follows_the_same_rule() -> None:
    """Derived: 774.7 - 3.2 - 152.4 = 619.1, the drawer 30.7 above, its holes 19 above that."""
    (drawer,) = place_drawers(
        [
            DrawerSpace(
                record=RUNNER,
                front_bottom=HEIGHT - 3.2 - 6 * 25.4,
                front_top=HEIGHT - 3.2,
                ceiling=HEIGHT - SIDE,
            )
        ],
        side=SIDE,
        reveal_bottom=REVEAL,
        units="in",
        start=START,
        on_grid=False,
    )
    assert drawer.bottom == pytest.approx(649.8)
    assert drawer.hole == pytest.approx(668.8)
    assert drawer.greatest == pytest.approx(96.6)
    assert drawer.height == pytest.approx(3.5 * 25.4)


@pytest.mark.parametrize(
    ("greatest", "inch", "metric"),
    [(199.0, 190.5, 195.0), (190.5, 190.5, 190.0), (101.6, 101.6, 100.0), (-4.0, 0.0, 0.0)],
)
def test_heights_round_down(greatest: float, inch: float, metric: float) -> None:
    """To half an inch or 5 mm, and never below nothing."""
    assert choose_height(greatest, "in") == pytest.approx(inch)
    assert choose_height(greatest, "mm") == pytest.approx(metric)


def test_a_given_height_is_kept_and_judged() -> None:
    """A box given too high says by how much."""
    top = stack(GOLDEN, given=108.0)[3]
    assert top.height == 108.0
    assert top.too_high == pytest.approx(108.0 - 106.1)
    assert stack(GOLDEN, given=45.0)[3].too_low


def test_the_distance_off_the_grid_is_signed() -> None:
    """Above a grid hole it is positive, below it negative."""
    assert off_grid(51.3, START) == pytest.approx(51.3 - 51.35)
    assert off_grid(55.0, START) == pytest.approx(55.0 - 51.35)
    assert off_grid(668.8, START) == pytest.approx(668.8 - (19.35 + 20 * 32))


@pytest.mark.parametrize(
    ("hole", "meets"),
    [(51.3, 51.35), (51.85, 51.35), (51.86, 83.35), (3.0, START)],
)
def test_the_next_grid_hole_may_lie_half_a_millimetre_below(hole: float, meets: float) -> None:
    """A hole line goes up to the grid, or down by no more than 0.5."""
    assert next_grid_hole(hole, START) == pytest.approx(meets)


def test_the_golden_stack_goes_onto_the_grid() -> None:
    """Each of the four rises by 0.05 and keeps its box height."""
    placed = stack(GOLDEN, on_grid=True)
    off = [off_grid(drawer.hole, START) for drawer in placed]
    assert off == pytest.approx([0.0] * 4, abs=1e-9)
    assert [drawer.moved for drawer in placed] == pytest.approx([0.05] * 4)
    assert [drawer.height for drawer in placed] == pytest.approx(
        [drawer.height for drawer in stack(GOLDEN)]
    )


def test_a_drawer_that_would_lose_height_stays_off_the_grid() -> None:
    """106.1 leaves 4.5 to rise without going below 101.6; 20 is too much."""
    start = 659.3 + 20.0 - 32 * 20
    placed = stack(GOLDEN, on_grid=True, start=start)
    assert placed[3].moved == 0.0
    assert off_grid(placed[3].hole, start) == pytest.approx(32 - 20)
    assert placed[3].height == pytest.approx(101.6)


def test_the_lowest_drawer_does_not_sink_below_what_its_slide_needs() -> None:
    """Where the record says that b is all the clearance there is, it stays."""
    tight = SlideRecord(name="tight", fixing_height=33.0, drawer_rise=14.0, least_rise=14.0)
    for record, moved in ((tight, 0.0), (RUNNER, -0.4)):
        (drawer,) = place_drawers(
            [
                DrawerSpace(
                    record=record, front_bottom=REVEAL, front_top=770.0, ceiling=HEIGHT - SIDE
                )
            ],
            side=SIDE,
            reveal_bottom=REVEAL,
            units="mm",
            start=51.3 - 0.4 - 32,
            on_grid=True,
        )
        assert drawer.moved == pytest.approx(moved)


@pytest.mark.parametrize(("shelf", "room"), [(700.0, 700.0 - 10 - 649.8), (None, 96.6)])
def test_a_drawer_keeps_10_under_a_fixed_shelf(shelf: float | None, room: float) -> None:
    """As under a stretcher, not the 25 that it keeps under a drawer (common practice, no source);
    without one its ceiling is the stretcher at 756.4."""
    under = DrawerSpace(
        record=RUNNER, front_bottom=619.1, front_top=771.5, ceiling=HEIGHT - SIDE, shelf_above=shelf
    )
    (place,) = place_drawers(
        [under], side=SIDE, reveal_bottom=REVEAL, units="in", start=START, on_grid=False
    )
    assert place.room == pytest.approx(room)


@given(
    st.lists(st.floats(min_value=90, max_value=300), min_size=1, max_size=6),
    st.floats(min_value=16, max_value=48),
    st.booleans(),
)
def test_drawers_keep_their_clearances(heights: list[float], start: float, on_grid: bool) -> None:
    """Whatever the grid does, no box comes nearer than 25 to the next, strikes the front above
    it, or loses height."""
    drawers = []
    bottom = REVEAL
    for height in heights:
        edge = bottom + height + GAP
        drawers.append(
            DrawerSpace(
                record=RUNNER, front_bottom=bottom, front_top=bottom + height, front_above=edge
            )
        )
        bottom = edge
    last = drawers.pop()
    top = DrawerSpace(
        record=RUNNER,
        front_bottom=last.front_bottom,
        front_top=last.front_top,
        ceiling=bottom - GAP + REVEAL - SIDE,
    )
    placed, plain = (
        place_drawers(
            [*drawers, top],
            side=SIDE,
            reveal_bottom=REVEAL,
            units="mm",
            start=start,
            on_grid=grid,
        )
        for grid in (on_grid, False)
    )
    for drawer, natural in zip(placed, plain, strict=True):
        assert drawer.height >= natural.height
        assert drawer.moved == 0 or abs(off_grid(drawer.hole, start)) < 1e-6
        assert -0.5 - 1e-6 <= drawer.moved < 32
    for below, above in pairwise(placed):
        reach = below.bottom + below.height
        assert below.height == 0 or reach + 25 <= above.bottom + 1e-5
        assert below.height == 0 or reach + 2 <= above.bottom - above.rise + 1e-5
