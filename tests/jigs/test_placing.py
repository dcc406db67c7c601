"""Placing hinges: the golden door, the rule's edges, and a search written from its text."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from jigs.grid import balanced_start
from jigs.placing import Door, end_distance, place_hinges

GOLDEN = Door(bottom=1.6, height=774.7 - 2 * 1.6, count=2)
PANELS = ((0.0, 18.3), (774.7 - 18.3, 774.7))


def search(
    door: Door,
    grid: float | None,
    panels: tuple[tuple[float, float], ...],
    holes: tuple[tuple[float, float], ...],
) -> tuple[float, ...] | None:
    """Find the heights by trying every candidate, written from the words of the rule alone."""
    end = max(55.0, min(100.0, (door.height - 160) / 2))
    top = door.bottom + door.height
    got: list[float] = []
    eps = 1e-6

    def fits(y: float) -> bool:
        clear = all(y <= low - 35 + eps or y >= high + 35 - eps for low, high in panels)
        inside = door.bottom + 35 - eps <= y <= top - 35 + eps
        apart = all(abs(y - other) >= 64 - eps for other in got)
        bores = True
        for x, z in holes:
            for mine in (y - 16, y + 16):
                distance = math.dist((x, z), (37, mine))
                if 0.2 + eps < distance < 12.5 - eps:
                    bores = False
        return clear and inside and apart and bores

    def settle(target: float, window: float) -> float | None:
        if grid is not None:
            every = [grid + 16 + 32 * i for i in range(-10, 100)]
            able = [y for y in every if abs(y - target) <= window + eps and fits(y)]
            if able:
                least = min(abs(y - target) for y in able)
                return max(y for y in able if abs(y - target) <= least + 6.5e-5)
        steps = [s for s in range(-48, 49) if abs(s) <= window and fits(target + s)]
        if not steps:
            return None
        return target + min(steps, key=lambda s: (abs(s), -s))

    for target in (door.bottom + end, top - end):
        y = settle(target, 30)
        if y is None:
            return None
        got.append(y)
    low, high = got
    for j in range(1, door.count - 1):
        y = settle(low + j * (high - low) / (door.count - 1), 48)
        if y is None:
            return None
        got.append(y)
    return tuple(sorted(got))


def test_golden_door() -> None:
    """Targets 101.6 and 673.1; hinges at 99.35 and 675.35: 97.75 from both ends of the door."""
    placed = place_hinges(GOLDEN, grid=19.35, panels=PANELS)
    assert placed.heights == pytest.approx((99.35, 675.35))
    assert placed.heights[0] - 1.6 == pytest.approx(97.75)
    assert 1.6 + 771.5 - placed.heights[1] == pytest.approx(97.75)
    assert placed.off_grid == ()


@pytest.mark.parametrize(
    ("height", "end"), [(170, 55), (270, 55), (300, 70), (359, 99.5), (360, 100), (2000, 100)]
)
def test_end_distance(height: float, end: float) -> None:
    """(H - 160) / 2 kept within 55 to 100."""
    assert end_distance(height) == end


def test_a_tie_goes_up() -> None:
    """Half way between two grid places the upper one is taken."""
    door = Door(bottom=0, height=700, count=2)
    placed = place_hinges(door, grid=20 + 32 * 2)  # places at 100 -+ 0 +- 32
    assert placed.heights[0] == pytest.approx(100)
    tied = place_hinges(door, grid=16 + 4 + 32)  # places at 68 + 32 i: 100 again
    assert tied.heights[0] == pytest.approx(100)
    half = place_hinges(door, grid=100 - 16 - 16)  # places at 84 and 116
    assert half.heights[0] == pytest.approx(116)


def test_off_the_grid_the_target_itself() -> None:
    """With the grid off the target is taken, and no flag is raised."""
    placed = place_hinges(GOLDEN, grid=None, panels=PANELS)
    assert placed.heights == pytest.approx((101.6, 774.7 - 1.6 - 100))
    assert placed.off_grid == ()


def test_a_slide_hole_moves_the_hinge_off_the_grid() -> None:
    """Slide holes near every grid place within 30 leave a whole millimetre, up before down."""
    holes = tuple((37.0, 83.35 + 8 + 32 * step) for step in (-2, 0, 2))
    placed = place_hinges(GOLDEN, grid=19.35, panels=PANELS, holes=holes)
    target = 101.6
    offset = placed.heights[0] - target
    assert offset == pytest.approx(round(offset))
    assert placed.off_grid == (placed.heights[0],)
    for plate in (placed.heights[0] - 16, placed.heights[0] + 16):
        assert all(abs(plate - y) >= 12.5 - 1e-6 for _, y in holes)


def test_a_hole_on_the_grid_is_shared() -> None:
    """A hole that coincides with a plate hole within 0.2 does not move the hinge."""
    placed = place_hinges(GOLDEN, grid=19.35, panels=PANELS, holes=((37.0, 83.5),))
    assert placed.heights[0] == pytest.approx(99.35)


def test_no_room() -> None:
    """A door too low for two hinges 64 apart and 35 from its ends finds no room."""
    placed = place_hinges(Door(bottom=1.6, height=130, count=2), grid=19.35)
    assert placed.no_room
    assert placed.heights == ()


def test_a_rail_is_kept_clear() -> None:
    """Under a rail on edge 100 high the hinge stands 35 or more below it."""
    door = Door(bottom=1.6, height=613.0, count=2)
    rail = ((0.0, 18.3), (574.0, 674.0))
    placed = place_hinges(door, grid=None, panels=rail)
    assert pytest.approx(514.6) == 1.6 + 613.0 - 100
    assert placed.heights[1] == pytest.approx(514.6)
    lower = place_hinges(door, grid=None, panels=((540.0, 640.0),))
    assert lower.heights[1] == pytest.approx(514.6 - 10)
    assert lower.heights[1] <= 540.0 - 35


@pytest.mark.parametrize("count", [2, 3, 4, 5, 6])
@pytest.mark.parametrize("height", [170, 200, 231.7, 320, 613, 899.5, 1500.25, 1999, 2400])
def test_agrees_with_the_search(height: float, count: int) -> None:
    """Doors from 170 to 2400 come out as the rule's words have it."""
    side = height + 3.2
    panels = ((0.0, 18.3), (side - 18.3, side))
    door = Door(bottom=1.6, height=height, count=count)
    for grid in (balanced_start(side), 46.5, None):
        for holes in ((), ((37.0, 250.0), (165.0, 250.0)), tuple((37.0, 40.0 * k) for k in (2, 4))):
            placed = place_hinges(door, grid=grid, panels=panels, holes=holes)
            want = search(door, grid, panels, holes)
            assert placed.no_room is (want is None)
            assert placed.heights == pytest.approx(want or (), abs=1e-6)


@settings(max_examples=150, deadline=None)
@given(
    st.floats(170, 2400),
    st.floats(-20, 900),
    st.integers(2, 6),
    st.none() | st.floats(16, 48),
    st.lists(st.tuples(st.sampled_from([37.0, 165.0, 45.0]), st.floats(0, 2400)), max_size=6),
)
def test_agrees_with_the_search_everywhere(
    height: float,
    bottom: float,
    count: int,
    grid: float | None,
    holes: list[tuple[float, float]],
) -> None:
    """Any door, anywhere on its side, among any holes, comes out as the rule's words have it."""
    door = Door(bottom=bottom, height=height, count=count)
    panels = ((0.0, 18.0), (bottom + height - 15, bottom + height + 3))
    placed = place_hinges(door, grid=grid, panels=panels, holes=holes)
    want = search(door, grid, panels, tuple(holes))
    assert placed.no_room is (want is None)
    assert placed.heights == pytest.approx(want or (), abs=1e-5)
