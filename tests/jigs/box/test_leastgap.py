"""What a front needs beside it, against a door that is turned."""

from math import cos, sin

import pytest
from shapely import affinity
from shapely.geometry import box

from jigs.box.leastgap import swing_of_edge


@pytest.mark.parametrize(
    ("width", "tab", "thickness"),
    [(454.0, 5.0, 19.05), (300.0, 3.0, 22.0), (150.0, 7.0, 26.0), (605.0, 5.0, 16.0)],
)
def test_the_swing_of_a_free_edge(width: float, tab: float, thickness: float) -> None:
    """A rectangle turned about the rim of its cup, on its back, reaches furthest by as much as the
    formula says; turned step by step (shapely)."""
    door = box(0.0, 0.0, width, thickness)
    pivot = (tab, 0.0)
    furthest = max(
        affinity.rotate(door, -angle / 50, origin=pivot).bounds[2] for angle in range(90 * 50)
    )
    assert furthest - width == pytest.approx(
        swing_of_edge(width, tab=tab, thickness=thickness), abs=1e-4
    )


def test_it_is_the_diagonals_turn() -> None:
    """At the angle where the far corner is level with the pivot (derived)."""
    width, tab, thickness = 454.0, 5.0, 19.05
    most = max((width - tab) * cos(a / 1e5) + thickness * sin(a / 1e5) for a in range(10_000))
    assert swing_of_edge(width, tab=tab, thickness=thickness) == pytest.approx(
        most - (width - tab), abs=1e-6
    )
