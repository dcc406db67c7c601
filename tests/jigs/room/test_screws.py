"""Which screw is turned: a worked wall, asymmetric, by arithmetic; and any wall put back by turning
its screws as they are said, reckoned as rigid rectangles on their hinges."""

import random
from math import atan, cos, sin

import pytest
from msgspec.structs import replace

from jigs.box.parts import Layout
from jigs.given.job import BoxSpec, FrontSpec
from jigs.given.measured import MeasuredGap, MeasuredGaps
from jigs.given.wallspec import WallEnd, WallSpec
from jigs.ground.errors import ReadingError
from jigs.ground.geometry import Hand
from jigs.layout.layout import lay_out
from jigs.room.beside import Meeting
from jigs.room.even import level
from jigs.room.hung import HungFront, hung_fronts
from jigs.room.reckoning import ADJUSTS, reckon_gaps
from jigs.room.screws import Adjustment, Turn, choose_turns, plan_turns
from tests.jigs.room.test_reckoning import door, named
from tests.jigs.sample import UNDER_COUNTER, job

OTHER: dict[Hand, Hand] = {"left": "right", "right": "left"}


def wall_of(*boxes: BoxSpec) -> Layout:
    """Give boxes between two walls, each with a filler of 40."""
    end = WallEnd(stands="wall", filler=40.0)
    made = job(*boxes, reveal=UNDER_COUNTER)
    return lay_out(replace(made, walls=(WallSpec(name="north", left=end, right=end),)))


def doors(*hands: Hand) -> Layout:
    """Give wall boxes with a door each, side by side."""
    return wall_of(
        *(
            named(door(hand), name=f"W{at}", kind="wall", above_floor=1400.0, depth=320.0)
            for at, hand in enumerate(hands, start=1)
        )
    )


def row(front: str, edge: str, first: float, second: float | None = None) -> MeasuredGap:
    return MeasuredGap(where=front, front=front, edge=edge, first=first, second=second)


def plan(layout: Layout, *rows: MeasuredGap) -> Adjustment:
    return plan_turns(layout, reckon_gaps(layout), MeasuredGaps(rows=rows))


def turned(made: Adjustment, screw: str) -> list[tuple[str, int | None, float]]:
    return [
        (turn.front.id, turn.at, round(turn.move, 3))
        for turn in made.turns
        if turn.screw == screw and abs(turn.move) > 0.05
    ]


def test_a_row_by_arithmetic() -> None:
    """Planned 1.6, 3.2, 1.6 at filler, between, filler. Measured 0.6, 5.2, 0.6: the first door
    goes 1 to the right, the second 1 to the left. Both hinged left: the first laps 1 less over
    its side, the second 1 more."""
    made = plan(
        doors("left", "left"),
        row("W1-1", "left", 0.6), row("W1-1", "right", 5.2), row("W2-1", "right", 0.6),
    )  # fmt: skip
    assert turned(made, "side") == [("W1-1", None, 1.0), ("W2-1", None, -1.0)]
    assert [t.overlay for t in made.turns if t.screw == "side"] == pytest.approx([-1.0, 1.0])
    assert [gap.then[0] for gap in made.gaps] == pytest.approx([1.6, 3.2, 1.6])
    assert not made.beyond


@pytest.mark.parametrize("hand", ["left", "right"])
def test_a_door_that_leans(hand: Hand) -> None:
    """Beside a filler 2.6 at the top, 0.6 at the bottom, planned 1.6: it leans to the right by 2
    on its own height. The hinges go back by their share, the top one to the left; what that takes
    from the height at its middle stays at the hinge edge, and so falls to the height screws."""
    layout = doors(hand)
    front = layout.fronts[0]
    made = plan(layout, row("W1-1", "left", 2.6, 0.6))
    lean = -2.0 / front.height
    cups = sorted((h.y for h in front.holes if h.purpose == "cup"), reverse=True)
    shares = [lean * (y - front.height / 2) for y in cups]
    sides = [turn for turn in made.turns if turn.screw == "side"]
    assert [turn.at for turn in sides] == [*range(1, len(cups) + 1)]
    assert [turn.move for turn in sides] == pytest.approx(shares, abs=1e-3)
    assert shares[0] < 0 < shares[-1]
    # Hinge edge at the left: it would rise as the door turns left about its middle; it is held.
    away = -front.width / 2 if hand == "left" else front.width / 2
    [height] = [turn for turn in made.turns if turn.screw == "height"]
    assert height.move == pytest.approx(-lean * away, abs=1e-3)
    assert made.gaps[0].then == pytest.approx((1.6, 1.6), abs=1e-3)
    assert sides[0].overlay == pytest.approx(-shares[0] if hand == "left" else shares[0], abs=1e-3)


def test_the_other_hand_turns_the_screw_the_other_way() -> None:
    """The same gap: the door moves the same way, its overlay the opposite."""
    [one], [other] = (
        [t for t in plan(doors(hand), row("W1-1", "left", 0.6)).turns if t.screw == "side"]
        for hand in ("left", "right")
    )
    assert one.move == other.move == pytest.approx(1.0)
    assert (one.overlay, other.overlay) == pytest.approx((-1.0, 1.0))


def mirrored(rows: list[MeasuredGap]) -> list[MeasuredGap]:
    names = {"W1-1": "W2-1", "W2-1": "W1-1"}
    edges = {"left": "right", "right": "left"}
    return [
        replace(each, front=names[each.front], edge=edges[each.edge], where=each.where)
        for each in rows
    ]


def test_a_mirrored_wall_is_adjusted_in_the_mirror() -> None:
    """Hands, ends and gaps exchanged: every side move turns round, no overlay does."""
    rows = [row("W1-1", "left", 0.9, 2.1), row("W1-1", "right", 3.9, 3.0)]
    one = plan(doors("left", "left"), *rows)
    other = plan(doors("right", "right"), *mirrored(rows))

    def sides(made: Adjustment, name: str) -> list[tuple[int | None, float, float | None]]:
        return [
            (t.at, t.move, t.overlay)
            for t in made.turns
            if t.screw == "side" and t.front.id == name
        ]

    for name, its in (("W1-1", "W2-1"), ("W2-1", "W1-1")):
        for (at, move, lap), (its_at, its_move, its_lap) in zip(
            sides(one, name), sides(other, its), strict=True
        ):
            assert at == its_at
            assert move == pytest.approx(-its_move, abs=1e-3)
            assert lap == pytest.approx(its_lap, abs=1e-3)


def moved_point(hung: HungFront, turns: list[Turn], x: float, y: float) -> tuple[float, float]:
    """Give where a point of a front comes when its screws are turned: the front is a rigid
    rectangle that hangs on its points at its hinge edge (at its middle, if it has none)."""
    side = sorted((t for t in turns if t.screw == "side"), key=lambda t: t.at or 0)
    [height] = [t.move for t in turns if t.screw == "height"]
    top, low = hung.points[0], hung.points[-1]
    above, below = side[0].move, side[-1].move
    angle = atan((above - below) / (top - low))
    # About the point of the lowest hinge, which moves by its own screw.
    px, py = hung.x + hung.edge, hung.y + low
    right, up = x - px, y - py
    return (
        px + below + right * cos(angle) + up * sin(angle),
        py + height + up * cos(angle) - right * sin(angle),
    )


def widened(
    gap: Meeting, hung: dict[str, HungFront], made: Adjustment, x: float, y: float
) -> float:
    """Give by how much the turns widen a gap at a place on it."""
    total = 0.0
    for front, edge in gap.sides:
        turns = [turn for turn in made.turns if turn.front.id == front.id]
        if not turns:
            continue
        tx, ty = moved_point(hung[front.id], turns, x, y)
        total += {"left": tx - x, "right": x - tx, "bottom": ty - y, "top": y - ty}[edge]
    return total


@pytest.mark.parametrize("seed", range(12))
def test_turned_as_said_the_gaps_come_out_as_said(seed: int) -> None:
    """Doors of both hands, drawers over doors: whatever was measured, the turns bring it to what is
    foretold, within what a small angle leaves out; no screw goes further than it reaches."""
    draws = random.Random(seed)
    hands: list[Hand] = [draws.choice(["left", "right"]) for _ in range(4)]
    drawer = FrontSpec(id="", kind="drawer", height=150.0)
    layout = wall_of(
        named(drawer, door(hands[0]), name="B1"),
        named(door(hands[1]), name="B2", width=draws.choice([380.0, 600.0])),
        named(drawer, FrontSpec(id="", kind="drawer"), name="B3"),
        named(door(hands[2]), name="B4"),
    )
    hung = hung_fronts(layout)
    rows = [
        MeasuredGap(
            where=str(at), front=b.gap.one.id, other=b.gap.other.id if b.gap.other else "",
            beside=b.gap.beside, axis=b.gap.axis, edge=b.gap.edge,
            first=max(b.gap.nominal + draws.uniform(-1.5, 1.5), 0.0),
            second=draws.choice([None, max(b.gap.nominal + draws.uniform(-1.5, 1.5), 0.0)]),
        )
        for at, b in enumerate(reckon_gaps(layout).budgets)
        if draws.random() < 0.8
    ]  # fmt: skip
    made = plan(layout, *rows)
    assert len(made.gaps) == len(rows)
    for taped in made.gaps:
        gap = taped.budget.gap
        half = gap.length / 2
        for sign, now, then in zip((1, -1), taped.now, taped.then, strict=True):
            x = gap.x if gap.axis == "x" else gap.x - sign * half
            y = gap.y + sign * half if gap.axis == "x" else gap.y
            assert now + widened(gap, hung, made, x, y) == pytest.approx(then, abs=0.06)
    for turn in made.turns:
        assert abs(turn.move) <= hung[turn.front.id].reach + 1e-3


def test_what_the_screws_do_not_reach_is_said() -> None:
    """Two doors 6 too wide together: no place helps. A door 5 off: its screws end at 2. A gap of
    0.6 above, 3.6 below beside another that is true on both sides: not square."""
    rows = [row("W1-1", "left", 0.0), row("W1-1", "right", 0.4), row("W2-1", "right", 0.0)]
    wide = plan(doors("left", "right"), *rows)
    assert {each.why for each in wide.beyond} == {"size"}
    assert sum(each.taped.off for each in wide.beyond) == pytest.approx(-6.0)
    off = plan(doors("left"), row("W1-1", "left", 6.6))
    [beyond] = off.beyond
    assert (beyond.why, [front.id for front in beyond.fronts]) == ("place", ["W1-1"])
    assert beyond.taped.off == pytest.approx(5.0 - ADJUSTS)
    bent = plan(doors("left"), row("W1-1", "left", 0.6, 2.6), row("W1-1", "right", 0.6, 2.6))
    assert {each.why for each in bent.beyond} == {"square"}


def test_two_doors_share_what_other_plates_are_to_do() -> None:
    """Planned 3.2 between them, measured 13.2: with both plates changed, it is 3.2."""
    [beyond] = plan(doors("left", "right"), row("W1-1", "right", 13.2)).beyond
    assert [front.id for front in beyond.fronts] == [*beyond.plates] == ["W1-1", "W2-1"]
    higher = [plate.wanted - plate.now for plate in beyond.plates.values()]
    assert higher == pytest.approx([5.0, 5.0])


def test_a_gap_that_is_true_asks_for_no_turn() -> None:
    """What was measured as planned stays; one gap that nothing moves spoils no other."""
    made = plan(doors("left", "right"), row("W1-1", "left", 1.6), row("W1-1", "right", 3.2))
    assert turned(made, "side") == turned(made, "height") == []
    assert level({"A": 0.0, "B": 2.0}, [(None, "A", -3.0), ("A", "B", -1.0)]) == {"A": 0, "B": 1}


def test_a_row_names_one_gap() -> None:
    """Every fault at once: a gap that is not there, one that is not told from its mate, twice."""
    rows = [
        MeasuredGap(where="row 2", front="W9", first=1.0),
        MeasuredGap(where="row 3", front="W1-1", beside="filler", axis="x", first=1.0),
        MeasuredGap(where="row 4", front="W1-1", edge="left", first=1.0),
        MeasuredGap(where="row 5", front="W1-1", edge="left", first=1.0),
    ]
    with pytest.raises(ReadingError) as caught:
        plan(doors("left"), *rows)
    told = [str(fault) for fault in caught.value.faults]
    assert len(told) == 3
    assert "no such gap ('W9' given)" in told[0]
    assert "W1-1 filler x left; W1-1 filler x right" in told[1]
    assert "measured twice" in told[2]


def test_only_what_is_named() -> None:
    """A box by its name has its own front's turns, and the gaps at it."""
    made = plan(doors("left", "left"), row("W1-1", "left", 0.6), row("W2-1", "right", 0.6))
    own = choose_turns(made, frozenset({"W2"}))
    assert {turn.front.id for turn in own.turns} == {"W2-1"}
    assert [gap.budget.gap.one.id for gap in own.gaps] == ["W2-1"]
