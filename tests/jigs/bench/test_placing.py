"""Placing cards: edges and lines, half a turn, and when an edge is worth a card."""

from dataclasses import replace

import pytest

from jigs.bench.benchpart import BenchPart
from jigs.bench.placing import (
    Alike,
    Option,
    Placing,
    closing_of,
    nearer_end,
    on_edge,
    on_line,
    rest_near,
    settle,
)
from jigs.bench.station import Place, Start
from jigs.ground.geometry import Hole

DOOR = BenchPart(
    id="A-1", code="7K4F", box="A", face="front", width=454.0, height=613.0, thickness=19.05
)


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
    assert Place(start=start, value=value).of(DOOR.width, DOOR.height) == at
    _, bare = knob(63.5)
    line = on_line(start, at)
    if start in ("left", "right", "middle-x"):
        told = replace(bare, x=line).place("x")
    else:
        told = replace(bare, y=line).place("y")
    assert told == Place(start=start, value=value)


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


def test_a_sum_closes_on_the_part() -> None:
    """Derived: 97.75 + 416.0 + 99.25 = 613.0; from the top the same terms in reverse."""
    up = closing_of(DOOR, "bottom", [513.75, 97.75, 513.75])
    down = closing_of(DOOR, "top", [97.75, 513.75])
    assert up.terms == (97.75, 416.0, 99.25)
    assert down.terms == up.terms[::-1]
    assert up.between == (416.0,)
    assert up.length == 613.0
