"""Placing cards: edges and lines, half a turn, and when an edge is worth a card."""

import pytest
from msgspec.structs import replace

from jigs.bench.benchpart import BenchPart, Board
from jigs.bench.placing import (
    Alike,
    Option,
    Placing,
    closing_of,
    nearer_end,
    nearer_side,
    on_edge,
    on_line,
    rest_near,
    settle,
)
from jigs.bench.sides import place_pins
from jigs.bench.station import Offset, Start
from jigs.ground.geometry import Fitting, Hole

DOOR = BenchPart(
    id="A-1", code="7K4F", box="A", face="front", width=454.0, height=613.0, thickness=19.05
)


BOARD = Board(
    side="left", column=1, partition=0, assembled=False, panel=18.0, base=0.0, legs=0.0,
    band=0.0, raw=False, missing=(),
)  # fmt: skip


def pull(y: float, x: float = 403.2) -> Hole:
    return Hole(purpose="pull", face="front", x=x, y=y, diameter=5.0, depth=None)


def knob(below_top: float, part: BenchPart = DOOR) -> Option:
    """A knob so far below the top, on the top edge or on a line."""
    y = part.height - below_top
    line = Placing(
        work="pulls", part=part, purpose="pull", serves=part.id,
        x=on_edge(part, "right"), y=on_line("top", y), holes=(pull(y),),
    )  # fmt: skip
    return replace(line, y=on_edge(part, "top")), line


@pytest.mark.parametrize(
    ("start", "value", "at"),
    [("left", 50.0, 50.0), ("right", 50.0, 404.0), ("bottom", 50.0, 50.0), ("top", 50.0, 563.0),
     ("middle-x", 0.0, 227.0), ("middle-y", 0.0, 306.5)],
)  # fmt: skip
def test_a_place_counts_from_its_own_end(start: Start, value: float, at: float) -> None:
    """And a line there is told by the same figure."""
    assert Offset(start=start, value=value).of(DOOR.width, DOOR.height) == at
    _, bare = knob(63.5)
    line = on_line(start, at)
    if start in ("left", "right", "middle-x"):
        told = replace(bare, x=line).place("x")
    else:
        told = replace(bare, y=line).place("y")
    assert told == Offset(start=start, value=value)


def test_a_turned_card_has_its_pattern_half_round() -> None:
    """Derived: 63.5 above the bottom edge, 50.8 from the left one, is 63.5 below and 50.8 from the
    right one when turned; its edges are named as on the card as drawn."""
    placing = Placing(
        work="pulls", part=DOOR, purpose="pull", serves="A-1", turned=True,
        x=on_edge(DOOR, "left"), y=on_edge(DOOR, "bottom"), holes=(pull(63.5, x=50.8),),
    )  # fmt: skip
    ((hole,), edges) = (placing.pattern, placing.edges)
    assert (hole.x, hole.y) == (-50.8, -63.5)
    assert [edge.edge for edge in edges] == ["right", "top"]


def test_an_edge_is_reached_up_to_160_away() -> None:
    """Beyond it, and where the far hole would not lie on the page, a line is struck."""
    assert rest_near(DOOR, "top", [pull(613.0 - 160.0)]).by == "fold"
    assert rest_near(DOOR, "top", [pull(613.0 - 160.1)]).by is None
    assert rest_near(DOOR, "top", [pull(613.0 - 70.0), pull(613.0 - 229.0)]).by == "fold"
    far = rest_near(DOOR, "top", [pull(613.0 - 70.0), pull(613.0 - 230.0)])
    assert (far.by, far.at) == (None, 613.0 - 70.0)


def test_one_distance_is_an_edge_and_many_are_lines() -> None:
    """Three at one distance have a card of their own; of the rest one distance alone too."""
    assert [placing.y.by for placing in settle([knob(60.0)])] == ["fold"]
    assert [p.y.by for p in settle([knob(60.0), knob(60.0)])] == ["fold"] * 2
    assert [p.y.by for p in settle([knob(60.0), knob(70.0)])] == [None] * 2
    mixed = settle([knob(60.0), knob(60.0), knob(60.0), knob(70.0), knob(80.0)])
    assert [placing.y.by for placing in mixed] == ["fold"] * 3 + [None] * 2
    left = settle([knob(60.0), knob(60.0), knob(60.0), knob(70.0)])
    assert [placing.y.by for placing in left] == ["fold"] * 4
    assert [p.y.by for p in settle([knob(60.0), knob(60.0), knob(70.0)], enough=2)] == ["fold"] * 3


def test_what_is_alike_to_0_005_is_one() -> None:
    """Measured from the first; another shape is another thing."""
    alike = Alike()
    assert alike.number("pull", (22.5,)) == 0
    assert alike.number("pull", (22.505,)) == 0
    assert alike.number("pull", (22.506,)) == 1
    assert alike.number("cup", (22.5,)) == 2


def test_a_bevelled_end_is_never_the_nearer_one() -> None:
    """However near its holes are."""
    assert nearer_end(DOOR, [pull(550.0)]) == "top"
    assert nearer_end(replace(DOOR, bevel="top"), [pull(550.0)]) == "bottom"


def test_the_nearer_side_is_the_left_one_of_two() -> None:
    """Holes 100 in from the left and 100 in from the right; 1 to either side it is that one."""
    middle = [pull(300.0, 100.0), pull(300.0, 354.0)]
    assert nearer_side(DOOR, middle) == "left"
    assert nearer_side(DOOR, [pull(300.0, 101.0), pull(300.0, 355.0)]) == "right"
    assert nearer_side(DOOR, [pull(300.0, 99.0), pull(300.0, 353.0)]) == "left"


def test_in_a_box_together_a_sum_counts_from_the_bottom_panel() -> None:
    """Derived: on 18 of panel, 97.75 and 513.75 above the end are 79.75 and 495.75 above it, and
    613 is 595; from the top, and in a box not yet together, nothing is taken off."""
    board = replace(BOARD, assembled=True)
    together = replace(DOOR, face="inside", board=board)
    up = closing_of(together, "bottom", [97.75, 513.75])
    assert (up.places, up.length, up.above) == ((79.75, 495.75), 595.0, 18.0)
    down = closing_of(together, "top", [97.75, 513.75])
    assert (down.places, down.length, down.above) == ((99.25, 515.25), 613.0, 0.0)
    apart = replace(together, board=replace(board, assembled=False))
    assert closing_of(apart, "bottom", [97.75]).places == (97.75,)


def test_a_sum_closes_on_the_part() -> None:
    """Derived: 97.75 + 416.0 + 99.25 = 613.0; from the top the same terms in reverse."""
    up = closing_of(DOOR, "bottom", [513.75, 97.75, 513.75])
    down = closing_of(DOOR, "top", [97.75, 513.75])
    assert up.terms == (97.75, 416.0, 99.25)
    assert down.terms == up.terms[::-1]
    assert up.between == (416.0,)
    assert up.length == 613.0


@pytest.mark.parametrize(
    ("pins", "lines"),
    [
        (1, [(100.0, (3,))]),
        (2, [(132.0, (2, 3))]),
        (3, [(132.0, (2, 3, 4))]),
        (4, [(164.0, (1, 2, 3, 4))]),
        (7, [(196.0, (0, 1, 2, 3, 4, 5, 6))]),
        (9, [(196.0, (0, 1, 2, 3, 4, 5, 6)), (356.0, (2, 3))]),
    ],
)
def test_the_line_of_pins_runs_through_their_middle_one(
    pins: int, lines: list[tuple[float, tuple[int, ...]]]
) -> None:
    """Derived: 32 apart from 100 up, seven crosses a setting, the upper one of two middle pins."""
    holes = tuple(
        Hole(purpose="shelf", face="inside", x=37.0, y=100.0 + 32 * n, diameter=5.0, depth=12.0)
        for n in range(pins)
    )
    row = Fitting(kind="shelf", index=1, count=1, part=None, record=None, holes=holes)
    placed = place_pins(replace(DOOR, face="inside", board=BOARD), [row])
    assert [(each.y.at, each.used) for each in placed] == lines
