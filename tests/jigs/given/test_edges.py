"""Rounded and bevelled edges of fronts."""

import math

import pytest

from jigs.given.edges import bevelled_edge, fold_error
from jigs.given.job import BoxKind


@pytest.mark.parametrize("radius", [0.0, 1.0, 3.0, 10.0])
def test_fold_error(radius: float) -> None:
    """Twice the radius round the corner, less a quarter circle: 0.43 R (derived)."""
    assert fold_error(radius) == pytest.approx(2 * radius - math.pi * radius / 2)
    assert fold_error(radius) == pytest.approx(0.43 * radius, abs=0.001 * radius + 1e-9)


@pytest.mark.parametrize(
    ("kind", "edge"), [("base", "top"), ("drawer", "top"), ("tall", "top"), ("wall", "bottom")]
)
def test_the_bevel_is_where_the_hand_is(kind: BoxKind, edge: str) -> None:
    """The top of base fronts, the bottom of wall fronts (common practice, no source)."""
    assert bevelled_edge("finger-bevel", kind) == edge
    assert bevelled_edge(None, kind) is None
