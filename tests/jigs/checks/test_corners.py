"""Inside corners: 19 + 35 + 6 = 60 (common practice, no source)."""

import pytest
from msgspec.structs import replace

from jigs.given.job import BoxSpec, FrontSpec, Material
from jigs.given.stated import BlindEnd, Hung, OpenedBy
from jigs.given.wallspec import WallEnd, WallSpec
from jigs.ground.problems import Problem
from jigs.layout.layout import lay_out
from tests.jigs.sample import box, job
from tests.said import fact_of, remedy_of

BOARDS = Material(side=18.0, front=19.0, back=6.0, drawer_side=15.9)
T, PULL, SPARE = 19.0, 35.0, 6.0


def door(name: str, hinged: str, **more: object) -> FrontSpec:
    return FrontSpec(id=name, kind="door", hinged=hinged, **more)  # type: ignore[arg-type]


def drawer(name: str, **more: object) -> FrontSpec:
    return FrontSpec(id=name, kind="drawer", **more)  # type: ignore[arg-type]


def found(
    north: BoxSpec, south: BoxSpec | None, *, filler: float, reach: float | None = None
) -> list[Problem]:
    """Give what is found where the north wall's right end meets the south wall's left one."""
    end = WallEnd(
        stands="corner", filler=filler, reach=reach, meets="south" if south else None
    )  # fmt: skip
    boxes = (north, replace(south, wall="south")) if south else (north,)
    given = job(*boxes, material=BOARDS)
    given = replace(given, shown_in="mm", walls=(WallSpec(name="north", right=end),))
    return [p for p in lay_out(given).problems if p.code == "corner-filler"]


@pytest.mark.parametrize(("filler", "told"), [(0.0, True), (59.8, True), (60.0, False)])
@pytest.mark.parametrize(
    "front", [drawer("B1-1"), door("B1-1", "left"), door("B1-1", "right")], ids=lambda f: f.kind
)
def test_fronts_against_pulls(front: FrontSpec, filler: float, told: bool) -> None:
    """Drawers and doors of either hand: 19 + 35 + 6 = 60 (derived; 6: common practice)."""
    opposite = box(door("C1-1", "left"), name="C1")
    problems = found(box(front), opposite, filler=filler)
    assert [p.part for p in problems] == ["B1-1"] * told
    if told:
        assert "60.0 mm" in fact_of(problems[0], "mm")
        assert f"make the filler {T + PULL + SPARE:.1f} mm" in remedy_of(problems[0], "mm")


def test_a_handle_reaches_further() -> None:
    """An oven's handle of 50 counts before the pulls: 19 + 50 + 6."""
    opposite = box(drawer("C1-1"), name="C1")
    assert found(box(drawer("B1-1")), opposite, filler=75.0, reach=50.0) == []
    [problem] = found(box(drawer("B1-1")), opposite, filler=74.0, reach=50.0)
    assert "75.0 mm" in fact_of(problem, "mm")
    assert len(found(box(drawer("B1-1")), None, filler=74.0, reach=50.0)) == 1


def test_fronts_without_pulls_opposite() -> None:
    """19 + 6 for a drawer; a door that opens before them brings its own pull: 60."""
    bare = box(drawer("C1-1", opened_by=OpenedBy(pull="none")), name="C1")
    assert found(box(drawer("B1-1")), bare, filler=T + SPARE) == []
    assert found(box(door("B1-1", "left")), bare, filler=T + SPARE) == []
    assert len(found(box(door("B1-1", "right")), bare, filler=59.0)) == 1


def test_a_restrictor_helps_the_door_hinged_there() -> None:
    """Not the one whose free edge passes the corner."""
    opposite = box(drawer("C1-1"), name="C1")
    assert found(box(door("B1-1", "right", hung=Hung(restrictor=True))), opposite, filler=0.0) == []
    assert (
        len(found(box(door("B1-1", "left", hung=Hung(restrictor=True))), opposite, filler=0.0)) == 1
    )


def test_one_finding_for_a_stack() -> None:
    """The drawers of one box are told together."""
    stack = box(drawer("B1-1"), drawer("B1-2"), drawer("B1-3"))
    [problem] = found(stack, box(drawer("C1-1"), name="C1"), filler=0.0)
    assert {problem.part, *problem.also} == {"B1-1", "B1-2", "B1-3"}


def test_what_hangs_meets_what_hangs() -> None:
    """A wall box has nothing to do with the base boxes round the corner."""
    hung = box(door("B1-1", "right"), kind="wall", above_floor=1400.0)
    assert found(hung, box(drawer("C1-1"), name="C1"), filler=0.0) == []


def test_a_blind_panel_is_the_filler() -> None:
    """The run opposite is 584.2 deep: the door begins at 670 - 16.4 = 653.6, 69.4 beyond it;
    with a panel of 650 the door keeps 49.4."""
    blind = box(door("B1-1", "left"), width=1066.8)
    opposite = box(drawer("C1-1"), name="C1")
    assert (
        found(replace(blind, blind=BlindEnd(hand="right", reach=670.0)), opposite, filler=0.0) == []
    )
    [problem] = found(
        replace(blind, blind=BlindEnd(hand="right", reach=650.0)), opposite, filler=0.0
    )
    assert f"make blind_right {650 + 60 - (650 - 16.4 - 584.2):.1f} mm" in remedy_of(problem, "mm")


@pytest.mark.parametrize(("reach", "words"), [
    (500.0, f"it would end {16.4 + 584.2 - 500:.1f} mm "),
    (650.0, f"it passes the run opposite with {650 - 16.4 - 584.2:.1f} mm "),
])  # fmt: skip
def test_a_front_that_ends_behind_the_run_opposite_is_told_by_how_much(
    reach: float, words: str
) -> None:
    blind = replace(
        box(door("B1-1", "left"), width=1066.8), blind=BlindEnd(hand="right", reach=reach)
    )
    (problem,) = found(blind, box(drawer("C1-1"), name="C1"), filler=0.0)
    assert words in fact_of(problem, "mm")
    assert ("behind the front edges of the boxes opposite" in fact_of(problem)) is (reach < 600)


def test_a_box_in_the_corner_is_seen_from_both_walls() -> None:
    """The other wall's last box, when the corner is its left end."""
    end = WallEnd(stands="corner", meets="south")
    boxes = (
        box(drawer("B1-1")),
        replace(box(drawer("C1-1"), name="C1"), wall="south"),
        replace(box(drawer("C2-1", opened_by=OpenedBy(pull="none")), name="C2"), wall="south"),
    )
    given = replace(job(*boxes, material=BOARDS), walls=(WallSpec(name="north", left=end),))
    [problem] = [p for p in lay_out(given).problems if p.code == "corner-filler"]
    assert "0 in (0.0 mm) for what stands out" in fact_of(problem)


@pytest.mark.parametrize(("filler", "told"), [(0.0, True), (40.0, True), (41.0, False)])
def test_a_wall_box_at_the_rooms_own_wall(filler: float, told: bool) -> None:
    """Where nothing of the other run hangs, the wall boxes go on to the room's wall: a door hinged
    there wants its pull's 35 and 6, as at any wall."""
    north = box(door("W1-1", "right"), name="W1", kind="wall", above_floor=1370.0, depth=320.0)
    south = replace(box(door("C1-1", "left"), name="C1"), wall="south")
    given = job(north, south, material=BOARDS)
    end = WallEnd(stands="corner", filler=filler, meets="south")
    made = lay_out(replace(given, walls=(WallSpec(name="north", right=end),)))
    codes = [p.code for p in made.problems if p.part == "W1-1"]
    assert ("wall-filler" in codes) is told
    assert "corner-filler" not in codes
