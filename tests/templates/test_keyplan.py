"""The key plan: the part black, in its place on the wall, within its room."""

import pytest

from jigs.job import FrontSpec
from jigs.parts import Layout
from templates.keyplan import KeyPlan
from templates.marks import Area, Line, Mark, Outline
from tests.jigs.sample import box, front_of, lay, side_of


def doors(*widths: float, inferred: bool = False) -> Layout:
    """Give a wall of single doors of these box widths."""
    return lay(
        *(
            box(
                FrontSpec(id=f"B{n}-1", kind="door", hinged="left"),
                name=f"B{n}",
                width=width,
                inferred=inferred,
            )
            for n, width in enumerate(widths, start=1)
        )
    )


def corners(marks: tuple[Mark, ...]) -> list[tuple[float, float]]:
    points: list[tuple[float, float]] = []
    for mark in marks:
        if isinstance(mark, Area | Outline):
            points += mark.points
        elif isinstance(mark, Line):
            points += [(mark.x1, mark.y1), (mark.x2, mark.y2)]
    return points


def black(marks: tuple[Mark, ...]) -> Area:
    [area] = [mark for mark in marks if isinstance(mark, Area)]
    return area


@pytest.mark.parametrize("name", ["B1", "B2", "B3", "B9"])
def test_the_plan_stays_in_its_room(name: str) -> None:
    """Whatever box it is for, from one end of the wall to the other."""
    layout = doors(*(457.2,) * 9)
    for part in (front_of(layout, f"{name}-1"), side_of(layout, f"{name}-SIDE-R")):
        for x, y in corners(KeyPlan(layout).marks(part, 10, 20, 34, 16)):
            assert 10 - 1e-9 <= x <= 44 + 1e-9
            assert 20 - 1e-9 <= y <= 36 + 1e-9


@pytest.mark.parametrize(
    "fronts",
    [
        (FrontSpec(id="W1-1", kind="pair", reveal_bottom=-20.0),),
        (FrontSpec(id="W1-1", kind="pair", height=600.0), FrontSpec(id="W1-2", kind="lift")),
        (FrontSpec(id="W1-1", kind="lift", height=900.0), FrontSpec(id="W1-2", kind="lift")),
    ],
)
def test_fronts_that_stand_out_of_their_box_stay_in_the_plan(fronts: tuple[FrontSpec, ...]) -> None:
    """Hung below a wall box for a finger, or held back because they do not fit it."""
    layout = lay(box(*fronts, name="W1", kind="wall", width=914.4, height=600, above_floor=1370))
    for x, y in corners(KeyPlan(layout).marks(side_of(layout, "W1-SIDE-R"), 10, 20, 34, 16)):
        assert 10 - 1e-9 <= x <= 44 + 1e-9
        assert 20 - 1e-9 <= y <= 36 + 1e-9


def test_the_black_front_is_true_to_the_wall() -> None:
    """The second of three boxes is black between a third and two thirds of the wall."""
    layout = doors(400, 400, 400)
    area = black(KeyPlan(layout).marks(front_of(layout, "B2-1"), 0, 0, 60, 60))
    scale = 60 / 1200
    left = min(x for x, _ in area.points)
    assert left == pytest.approx((400 + 1.6) * scale)
    assert max(x for x, _ in area.points) == pytest.approx((800 - 1.6) * scale)


@pytest.mark.parametrize(("board", "left"), [("B1-SIDE-L", True), ("B1-SIDE-R", False)])
def test_a_side_is_black_along_its_own_edge(board: str, left: bool) -> None:
    """The left side stands at the left of its box, seen from the room."""
    layout = doors(600, 600)
    marks = KeyPlan(layout).marks(side_of(layout, board), 0, 0, 30, 30)
    xs = [x for x, _ in black(marks).points]
    assert (min(xs) == pytest.approx(0)) == left
    assert (max(xs) == pytest.approx(15)) == (not left)


def test_boxes_of_a_bare_list_stand_alone() -> None:
    """They were given no place, so no neighbours are drawn."""
    layout = doors(457.2, 457.2, inferred=True)
    marks = KeyPlan(layout).marks(front_of(layout, "B2-1"), 0, 0, 30, 30)
    assert sum(isinstance(mark, Outline) for mark in marks) == 1
    assert not any(isinstance(mark, Line) for mark in marks)
