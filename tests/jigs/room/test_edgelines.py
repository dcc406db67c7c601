"""Edges side by side that part though every gap is as planned, by arithmetic."""

import pytest
from msgspec.structs import replace

from jigs.box.parts import Layout
from jigs.given.job import FrontSpec
from tests.jigs.room.test_reckoning import door, named
from tests.jigs.room.test_screws import plan, row, wall_of


def stacks(*heights: float) -> Layout:
    """Give a box for each height: a drawer so high above a door that takes the rest."""
    return wall_of(
        *(
            named(
                door("left"),
                name=f"B{at}",
                fronts=(
                    FrontSpec(id=f"B{at}-1", kind="drawer", height=height),
                    FrontSpec(id=f"B{at}-2", kind="door", hinged="left"),
                ),
            )
            for at, height in enumerate(heights, start=1)
        )
    )


def parted(layout: Layout, *pairs: tuple[str, str]) -> list[tuple[str, str, str, float]]:
    rows = [replace(row(one, "right", 3.2), other=other) for one, other in pairs]
    return [
        (each.lower.id, each.higher.id, each.edge, round(each.step, 6))
        for each in plan(layout, *rows).parted
    ]


BOTH = ("B1-1", "B2-1"), ("B1-2", "B2-2")


@pytest.mark.parametrize("step", [0.4, 5.9])
def test_a_line_that_parts(step: float) -> None:
    """The lower edges of drawers of 150 and of 150 and a step, under one top edge; and the upper
    edges of the doors below them."""
    layout = stacks(150.0, 150.0 + step)
    assert parted(layout, *BOTH) == [
        ("B2-2", "B1-2", "top", step), ("B2-1", "B1-1", "bottom", step),
    ]  # fmt: skip


@pytest.mark.parametrize("step", [0.0, 0.25, 6.5])
def test_what_is_not_seen_or_meant_so(step: float) -> None:
    """Less than an eye sees; more than it takes for a slip."""
    assert not parted(stacks(150.0, 150.0 + step), *BOTH)


def test_only_beside_what_was_measured() -> None:
    """Fronts at no measured gap are not spoken of."""
    assert parted(stacks(150.0, 151.0, 150.0), ("B1-1", "B2-1")) == [
        ("B2-1", "B1-1", "bottom", 1.0)
    ]
