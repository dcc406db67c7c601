"""Gaps that a front states for itself, edge by edge."""

import pytest
from msgspec.structs import replace

from jigs.given.job import FrontSpec
from jigs.given.stated import OwnReveals
from tests.jigs.sample import box, codes, front_of, lay


def door(**given: object) -> FrontSpec:
    """Give a left-hung door with these gaps."""
    return FrontSpec(id="A", **{"kind": "door", "hinged": "left", **given})  # type: ignore[arg-type]


def test_a_wall_front_hangs_below_its_box() -> None:
    """15 below, as a finger pull (12 to 20, common practice); cups still meet their plates."""
    layout = lay(replace(box(door(reveals=OwnReveals(bottom=-15.0)), kind="wall"), no_shelf=True))
    front = front_of(layout, "A")
    assert front.place.y == pytest.approx(-15.0)
    assert front.height == pytest.approx(774.7 - 1.6 + 15.0)
    assert front.gaps.bottom == pytest.approx(-15.0)
    cups = sorted(h.y + front.place.y for h in front.holes if h.purpose == "cup")
    plates = sorted(h.y for h in layout.sides[0].holes)[::2]
    assert [low + 16 for low in plates] == pytest.approx(cups)
    assert codes(layout) == []


def test_a_wide_reveal_on_one_side() -> None:
    """Beside a wall: the front is narrower by it, and the hinge covers so much less."""
    layout = lay(box(door(reveals=OwnReveals(left=3.2)), kind="wall"))
    front = front_of(layout, "A")
    assert front.width == pytest.approx(457.2 - 3.2 - 1.6)
    assert (front.place.x, front.gaps.right) == pytest.approx((3.2, 1.6))
    assert front.hinge is not None
    got = 15 + front.hinge.tab - front.hinge.plate
    assert front.hinge.error == pytest.approx(got - (18.3 - 3.2))


def test_a_gap_inside_a_stack() -> None:
    """A front's own gap to the one above it, all else as the job has it."""
    drawer = FrontSpec(id="D", kind="drawer", height=200.0)
    layout = lay(box(drawer, door(reveals=OwnReveals(top=10.0)), kind="wall"))
    upper, lower = front_of(layout, "D"), front_of(layout, "A")
    assert upper.place.y - (lower.place.y + lower.height) == pytest.approx(10.0)
    assert upper.gaps.bottom == lower.gaps.top == 10.0
    total = upper.height + lower.height + 10.0 + 2 * 1.6
    assert total == pytest.approx(774.7)


def test_doors_above_a_fridge() -> None:
    """The opening below has no front; the pair stands on what it leaves."""
    opening = FrontSpec(id="F", kind="opening", height=1780.0)
    pair = FrontSpec(id="P", kind="pair")
    layout = lay(box(pair, opening, kind="tall", width=914.4, height=2286.0))
    assert [front.id for front in layout.fronts] == ["PL", "PR"]
    for front in layout.fronts:
        assert front.height == pytest.approx(2286.0 - 1.6 - 1.6 - 3.2 - 1780.0)
    assert not any(front.withheld for front in layout.fronts)
