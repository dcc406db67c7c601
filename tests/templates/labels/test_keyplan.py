"""The key plan: the part black, in its place on the wall, within its room."""

import pytest

from jigs.box.parts import Layout
from jigs.cutlist.cutlist import cut_list
from jigs.given.job import FrontSpec
from jigs.given.stated import OwnReveals
from templates.labels.keyplan import LEAST_PART, KeyPlan, black_front, black_piece, black_side
from templates.page.marks import MEDIUM, Area, Line, Mark, Outline
from tests.jigs.sample import box, front_of, lay, side_of
from tests.templates.kitchens import labels_of, workshop
from tests.templates.printed import laid_out
from tests.uneven import UNEVEN


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
    front, side = front_of(layout, f"{name}-1"), side_of(layout, f"{name}-SIDE-R")
    for part in (black_front(front), black_side(side)):
        for x, y in corners(KeyPlan(layout).marks(part, 10, 20, 34, 16)):
            assert 10 - 1e-9 <= x <= 44 + 1e-9
            assert 20 - 1e-9 <= y <= 36 + 1e-9


@pytest.mark.parametrize(
    "fronts",
    [
        (FrontSpec(id="W1-1", kind="pair", reveals=OwnReveals(bottom=-20.0)),),
        (FrontSpec(id="W1-1", kind="pair", height=600.0), FrontSpec(id="W1-2", kind="lift")),
        (FrontSpec(id="W1-1", kind="lift", height=900.0), FrontSpec(id="W1-2", kind="lift")),
    ],
)
def test_fronts_that_stand_out_of_their_box_stay_in_the_plan(fronts: tuple[FrontSpec, ...]) -> None:
    """Hung below a wall box for a finger, or held back because they do not fit it."""
    layout = lay(box(*fronts, name="W1", kind="wall", width=914.4, height=600, above_floor=1370))
    side = black_side(side_of(layout, "W1-SIDE-R"))
    for x, y in corners(KeyPlan(layout).marks(side, 10, 20, 34, 16)):
        assert 10 - 1e-9 <= x <= 44 + 1e-9
        assert 20 - 1e-9 <= y <= 36 + 1e-9


def test_the_black_front_is_true_to_the_wall() -> None:
    """The second of three boxes is black between a third and two thirds of the wall."""
    layout = doors(400, 400, 400)
    area = black(KeyPlan(layout).marks(black_front(front_of(layout, "B2-1")), 0, 0, 60, 60))
    scale = 60 / 1200
    left = min(x for x, _ in area.points)
    assert left == pytest.approx((400 + 1.6) * scale)
    assert max(x for x, _ in area.points) == pytest.approx((800 - 1.6) * scale)


@pytest.mark.parametrize(("board", "left"), [("B1-SIDE-L", True), ("B1-SIDE-R", False)])
def test_a_side_is_black_along_its_own_edge(board: str, left: bool) -> None:
    """The left side stands at the left of its box, seen from the room."""
    layout = doors(600, 600)
    marks = KeyPlan(layout).marks(black_side(side_of(layout, board)), 0, 0, 30, 30)
    xs = [x for x, _ in black(marks).points]
    assert (min(xs) == pytest.approx(0)) == left
    assert (max(xs) == pytest.approx(15)) == (not left)


@pytest.mark.parametrize(
    ("part", "left", "right"),
    [("B1-1", 6.0, 425.85), ("B1-2", 6.0, 425.85), ("B1-3", 429.05, 900 - 1.6)],
)
def test_the_black_front_of_the_uneven_box(part: str, left: float, right: float) -> None:
    """The drawers at the left, the wider door at the right."""
    layout = laid_out(UNEVEN)
    area = black(KeyPlan(layout).marks(black_front(front_of(layout, part)), 0, 0, 60, 60))
    xs = [x for x, _ in area.points]
    assert (min(xs), max(xs)) == pytest.approx((left * 60 / 900, right * 60 / 900))


def test_boxes_of_a_bare_list_stand_alone() -> None:
    """They were given no place, so no neighbours are drawn."""
    layout = doors(457.2, 457.2, inferred=True)
    marks = KeyPlan(layout).marks(black_front(front_of(layout, "B2-1")), 0, 0, 30, 30)
    assert sum(isinstance(mark, Outline) for mark in marks) == 2  # the box and its door
    assert not any(isinstance(mark, Line) for mark in marks)


LAYOUT = workshop()


def test_every_label_has_a_plan_that_is_read_at_20_mm() -> None:
    """The part is black, 0.9 mm at least either way, and all of it within 20 x 12 mm."""
    plan = KeyPlan(LAYOUT)
    for words in labels_of(LAYOUT):
        marks = plan.marks(words.black, 3.0, 4.0, 20.0, 12.0)
        areas = [mark for mark in marks if isinstance(mark, Area)]
        assert areas, words.part
        for area in areas:
            for across in (0, 1):
                values = [point[across] for point in area.points]
                assert max(values) - min(values) >= LEAST_PART - 1e-9, words.part
        for x, y in corners(marks):
            assert 3 - 1e-9 <= x <= 23 + 1e-9, words.part
            assert 4 - 1e-9 <= y <= 16 + 1e-9, words.part


@pytest.mark.parametrize(
    ("name", "where"),
    [
        ("NORTH-FILLER-L", "left"),
        ("NORTH-FILLER-R", "right"),
        ("B1-PANEL-R", "right"),
        ("S1-PANEL-L", "left"),
        ("NORTH-TOE-1-FRONT", "below"),
    ],
)
def test_what_stands_beside_a_box_is_black_beside_it(name: str, where: str) -> None:
    """Thicker than it is, so that it is seen, but never into the box."""
    piece = next(piece for piece in cut_list(LAYOUT) if piece.id == name)
    marks = KeyPlan(LAYOUT).marks(black_piece(piece), 0.0, 0.0, 20.0, 12.0)
    own = [mark for mark in marks if isinstance(mark, Outline) and mark.width == MEDIUM]
    area = black(marks)
    left, right = (pick(x for x, _ in area.points) for pick in (min, max))
    top = max(y for _, y in area.points)
    edges = [
        (min(x for x, _ in o.points), max(x for x, _ in o.points), min(y for _, y in o.points))
        for o in own
    ]
    if where == "left":
        assert right == pytest.approx(min(x0 for x0, _, _ in edges))
    elif where == "right":
        assert left == pytest.approx(max(x1 for _, x1, _ in edges))
    else:
        assert top == pytest.approx(min(low for _, _, low in edges))


def test_of_several_alike_each_shows_its_own_place() -> None:
    """Three sleepers under two boxes, from left to right; a drawer's two sides."""
    plan = KeyPlan(LAYOUT)
    for name in ("NORTH-TOE-1-SLEEPER", "B1-1-BOX-SIDE", "T1-SHELF-1"):
        piece = next(piece for piece in cut_list(LAYOUT) if piece.id == name)
        places = [
            black(plan.marks(black_piece(piece, number), 0.0, 0.0, 34.0, 16.0)).points[0]
            for number in range(1, piece.count + 1)
        ]
        assert len(set(places)) == piece.count > 1


def test_what_belongs_to_no_wall_shows_its_box_alone() -> None:
    """Its place is not known: no neighbour is drawn, no appliance."""
    marks = KeyPlan(LAYOUT).marks(black_front(front_of(LAYOUT, "L1-1")), 0.0, 0.0, 20.0, 12.0)
    outlines = [mark for mark in marks if isinstance(mark, Outline)]
    assert len(outlines) == 2  # the box and its door


def test_appliances_stand_dashed_between_the_boxes() -> None:
    """The fridge of the north wall, not on the island."""
    for name, dashed in (("B1-1", 1), ("S1-1", 0)):
        marks = KeyPlan(LAYOUT).marks(black_front(front_of(LAYOUT, name)), 0.0, 0.0, 20.0, 12.0)
        found = [mark for mark in marks if isinstance(mark, Outline) and mark.dash]
        assert len(found) == dashed
