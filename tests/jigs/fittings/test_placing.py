"""Placing hinges: the golden door, the rule's edges, and a search written from its text."""

from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from jigs.fittings.placing import Door, count_hinges, end_distance, place_hinges
from jigs.ground.grid import balanced_start
from tests.jigs.placingrule import answer, first_hole, hinges_of

GOLDEN = Door(bottom=1.6, height=774.7 - 2 * 1.6, count=2)
PANELS = ((0.0, 18.3), (774.7 - 18.3, 774.7))


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


def _agrees(
    door: Door,
    grid: float | None,
    panels: tuple[tuple[float, float], ...],
    holes: tuple[tuple[float, float], ...] = (),
) -> bool:
    """Whether a door comes out as by the rule's words."""
    placed = place_hinges(door, grid=grid, panels=panels, holes=holes)
    want = answer(
        bottom=door.bottom, height=door.height, count=door.count,
        grid=grid, panels=panels, holes=holes,
    )  # fmt: skip
    if want is None:
        return placed.no_room and placed.heights == ()
    return (
        not placed.no_room
        and placed.heights == pytest.approx(want.heights, abs=1e-5)
        and placed.off_grid == pytest.approx(want.off_grid, abs=1e-5)
    )


def test_the_words_of_the_rule_give_the_golden_door() -> None:
    """The search by itself: y0 19.35, hinges at 99.35 and 675.35."""
    assert first_hole(774.7) == pytest.approx(19.35)
    want = answer(bottom=1.6, height=771.5, count=2, grid=19.35, panels=PANELS, holes=())
    assert want is not None
    assert want.heights == pytest.approx((99.35, 675.35))


@pytest.mark.parametrize("count", [2, 3, 4, 5, 6])
@pytest.mark.parametrize("height", [170, 200, 231.7, 320, 613, 899.5, 1500.25, 1999, 2400])
def test_agrees_with_the_search(height: float, count: int) -> None:
    """Doors from 170 to 2400 come out as the rule's words have it."""
    side = height + 3.2
    panels = ((0.0, 18.3), (side - 18.3, side))
    door = Door(bottom=1.6, height=height, count=count)
    # The balanced start of a side of an odd number of twentieths is no whole number of them.
    for grid in (round(balanced_start(side) * 20) / 20, 46.5, None):
        for holes in ((), ((37.0, 250.0), (165.0, 250.0)), tuple((37.0, 40.0 * k) for k in (2, 4))):
            assert _agrees(door, grid, panels, holes)


def _twentieths(low: int, high: int) -> st.SearchStrategy[float]:
    return st.integers(low * 20, high * 20).map(lambda number: number / 20)


@pytest.mark.slow
@settings(max_examples=80)
@given(
    _twentieths(170, 2400),
    _twentieths(-20, 900),
    st.integers(2, 6),
    st.none() | _twentieths(16, 48),
    st.lists(st.tuples(st.sampled_from([37.0, 165.0, 45.0]), _twentieths(0, 2400)), max_size=6),
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
    assert _agrees(door, grid, panels, tuple(holes))


@pytest.mark.slow
def test_one_answer_for_every_door() -> None:
    """All 22,301 doors from 170 to 2400 mm in steps of 0.1, each in its own box of 18.3 board."""
    wrong = []
    for tenths in range(1700, 24001):
        height = tenths / 10
        side = height + 3.2
        door = Door(bottom=1.6, height=height, count=hinges_of(height))
        assert balanced_start(side) == pytest.approx(first_hole(side))
        assert count_hinges(width=400.0, height=height, mass=0.0) == door.count
        if not _agrees(door, first_hole(side), ((0.0, 18.3), (side - 18.3, side))):
            wrong.append(height)
    assert wrong == []


@pytest.mark.slow
def test_doors_among_shelves_and_holes() -> None:
    """600 doors with fixed shelves, rails and holes about them, a third of them off the grid."""
    chance = Random(20)
    at_odds, told = [], set()
    for number in range(600):
        height = chance.randrange(1700, 24001) / 10
        bottom = chance.choice((1.6, -15.0, 120.0, 619.1))
        top = bottom + height
        shelves = [chance.randrange(0, int(top * 20) + 1) / 20 for _ in range(number % 4)]
        panels = (
            (0.0, 18.3),
            *((upper - 18.3, upper) for upper in shelves),
            (top - chance.choice((16.7, 98.4)), top + 1.6),
        )
        holes = tuple(
            (chance.choice((37.0, 37.0, 45.0, 165.0)), chance.randrange(0, int(top * 20)) / 20)
            for _ in range(chance.choice((0, 3, 12, 40)))
        )
        grid = None if number % 3 == 0 else first_hole(round(top * 10 + 16) / 10)
        door = Door(bottom=bottom, height=height, count=chance.choice((2, 3, 4, 5, 6)))
        if not _agrees(door, grid, panels, holes):
            at_odds.append((door, grid, panels, holes))
        placed = place_hinges(door, grid=grid, panels=panels, holes=holes)
        told.add("no room" if placed.no_room else "off the grid" if placed.off_grid else "on it")
    assert at_odds == []
    assert told == {"no room", "off the grid", "on it"}
