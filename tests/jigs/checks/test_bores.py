"""Holes outside their part, too near its edge or each other, too deep."""

import pytest

from jigs.checks.faces import check_bores, check_side_bores
from jigs.ground.geometry import Face, Fitting, Hole


def fitting(
    x: float,
    y: float,
    diameter: float = 5.0,
    depth: float | None = 12.0,
    face: Face = "back",
) -> Fitting:
    """Give a fitting of one hole by hand."""
    hole = Hole(purpose="manual", face=face, x=x, y=y, diameter=diameter, depth=depth)
    return Fitting(kind="manual", index=1, count=1, part="A", record=None, holes=(hole,))


def found(*fittings: Fitting) -> list[str]:
    """Give the codes found in a front of 400 x 300 x 19."""
    problems = check_bores("A", fittings, width=400, height=300, thickness=19)
    return [problem.code for problem in problems]


@pytest.mark.parametrize(
    ("x", "y", "codes"),
    [
        (200, 150, []),
        (2 + 2.5, 150, []),
        (2 + 2.4, 150, ["hole-near-edge"]),
        (2.4, 150, ["hole-outside"]),
        (401, 150, ["hole-outside"]),
        (200, 300 - 4.4, ["hole-near-edge"]),
    ],
)
def test_two_of_wood_at_the_edge(x: float, y: float, codes: list[str]) -> None:
    """A hole keeps 2 of wood at each edge (common practice, no source)."""
    assert found(fitting(x, y)) == codes


def test_holes_keep_apart() -> None:
    """Two system holes 12.5, others 2 of wood; a hole through meets those of both faces."""
    assert found(fitting(100, 100), fitting(112.5, 100)) == []
    assert found(fitting(100, 100), fitting(112.4, 100)) == ["holes-too-near"]
    assert found(fitting(100, 100, 35), fitting(100 + 17.5 + 2 + 1.5, 100, 3)) == []
    assert found(fitting(100, 100, 35), fitting(100 + 17.5 + 1, 100, 3)) == ["holes-too-near"]
    through = fitting(105, 100, 4, None, "front")
    assert found(fitting(100, 100), through) == ["holes-too-near"]


def test_holes_of_both_faces_that_do_not_reach_each_other() -> None:
    """Shallow holes from both faces may stand on one place while 2 stays between them."""
    assert found(fitting(100, 100, depth=8), fitting(100, 103, depth=9, face="front")) == []
    assert found(fitting(100, 100, depth=9), fitting(100, 103, depth=9, face="front")) == [
        "holes-too-near"
    ]


def test_depth() -> None:
    """A blind hole that comes out is an error, one that leaves less than 2 a warning."""
    assert found(fitting(100, 100, depth=17)) == []
    assert found(fitting(100, 100, depth=17.5)) == ["bored-deep"]
    assert found(fitting(100, 100, depth=19)) == ["bored-through"]


def test_side_holes_name_the_board() -> None:
    """A clash in a box side stands at the front and is printed on the board's sheet."""
    one, other = fitting(37, 100, face="inside"), fitting(37, 108, face="inside")
    (problem,) = check_side_bores(
        "A", "B1-SIDE-L", [one], [other], height=700, depth=560, thickness=18
    )
    assert (problem.code, problem.part, problem.also) == ("holes-too-near", "A", ("B1-SIDE-L",))
