"""Gaps of two walls that meet at a corner, alike in nothing: every one by sums of its own.

What bears on a gap, and what it needs, is common practice, no source, or derived; the sums are
worked here from the sizes of the job alone: half of each part's error, an error of a
pair's box by quarters beside it, a joint that opens by 0 to 0.5, a taper of 0.4, half of it in
square beside what does not lean.
"""

from math import hypot, sqrt

import pytest
from msgspec.structs import replace

from jigs.box.parts import Layout
from jigs.given.job import FrontSpec
from jigs.given.wallspec import WallEnd, WallSpec
from jigs.layout.layout import lay_out
from jigs.room.budget import Budget
from jigs.room.reckoning import reckon_gaps
from tests.jigs.room.test_reckoning import door, named
from tests.jigs.sample import UNDER_COUNTER, job

FRONT, BOX, JOINT, SQUARE = 1.6, 0.8, 0.5, 0.4
"""How true they are made where nobody says otherwise; mm (common practice, no source)."""
THICK, TAB, HINGE = 19.05, 5.0, 0.91
"""A front, its cup's distance from the edge, what its hinge edge needs to open (from memory)."""
SWING = 0.5
"""What a free edge keeps clear beside its own swing (common practice, no source); mm."""


def kitchen() -> Layout:
    """Give north: a pair 800 wide at a wall, a door of 450 hinged right at the corner; east, from
    the corner: a door of 600 hinged right, a door of 350 hinged left, hinge to hinge."""
    pair = FrontSpec(id="", kind="pair")
    boxes = (
        named(pair, name="B1", width=800.0),
        named(door("right"), name="B2", width=450.0),
        named(door("right"), name="B3", width=600.0, wall="east"),
        named(door("left"), name="B4", width=350.0, wall="east"),
    )
    walls = (
        WallSpec(
            name="north", left=WallEnd(stands="wall", filler=41.0),
            right=WallEnd(stands="corner", meets="east", filler=70.0),
        ),
        WallSpec(name="east", left=WallEnd(stands="corner", meets="north", filler=70.0)),
    )  # fmt: skip
    return lay_out(replace(job(*boxes, reveal=UNDER_COUNTER), walls=walls))


def swing(box: float) -> float:
    """Give what the free edge of a single door needs, its pivot at its hinge edge; mm."""
    wide = box - 2 * 1.6 - TAB
    return hypot(wide, THICK) - wide + SWING


LEAF = hypot((800.0 - 2 * 1.6 - 3.2) / 2 - TAB, THICK) - ((800.0 - 2 * 1.6 - 3.2) / 2 - TAB) + SWING
HALF, QUARTER, BESIDE = BOX / 2, BOX / 4, SQUARE / sqrt(2)


@pytest.mark.parametrize(
    ("names", "least", "planned", "spreads"),
    [
        (("B1-1L",), HINGE, 1.6, (FRONT / 2, QUARTER, JOINT / 2, BESIDE)),
        (("B1-1L", "B1-1R"), LEAF, 3.2, (FRONT / 2, FRONT / 2, HALF, SQUARE)),
        (("B1-1R", "B2-1"), max(HINGE, swing(450.0)), 3.2,
         (FRONT / 2, FRONT / 2, QUARTER, HALF, JOINT / 2, SQUARE)),
        (("B2-1",), HINGE, 1.6, (FRONT / 2, HALF, JOINT / 2, BESIDE)),
        (("B3-1",), swing(600.0), 1.6, (FRONT / 2, HALF, JOINT / 2, BESIDE)),
        (("B3-1", "B4-1"), 2 * HINGE, 3.2,
         (FRONT / 2, FRONT / 2, HALF, HALF, JOINT / 2, SQUARE)),
    ],
)  # fmt: skip
def test_each_gap_along_the_walls(
    names: tuple[str, ...], least: float, planned: float, spreads: tuple[float, ...]
) -> None:
    """Hinge to wall, free to free, hinge to free, hinge to the corner's filler, free to it, hinge
    to hinge."""
    found = only(names)
    assert found.least.width == pytest.approx(least, abs=1e-4)
    middle = planned + (JOINT / 2 if JOINT / 2 in spreads else 0.0)
    half = sqrt(sum(each * each for each in spreads))
    assert (found.left.low, found.left.high) == pytest.approx((middle - half, middle + half))


def only(names: tuple[str, ...]) -> Budget:
    """Give the gap along the wall between these, or of one door to its filler."""
    [found] = [
        budget
        for budget in reckon_gaps(kitchen()).budgets
        if budget.gap.axis == "x"
        and budget.gap.names == names
        and (len(names) == 2 or budget.gap.beside == "filler")
    ]
    return found
