"""Two boxes, or a box and an appliance, in one place: who is held back, and what is only told."""

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from jigs.box.parts import Layout
from jigs.checks.room import find_displaced
from jigs.given.job import BoxKind, BoxSpec, FrontSpec, Job
from jigs.given.stated import RolloutSpec
from jigs.given.walls import taken_by
from jigs.given.wallspec import Appliance, WallSpec
from jigs.layout.layout import lay_out
from tests.jigs.sample import box, job
from tests.said import fact_of, remedy_of

TOP = 101.6 + 774.7
"""The golden box's top above the floor, mm."""
NORTH = WallSpec(name="north")


def _box(
    name: str, *, x: float | None = None, kind: BoxKind = "base", up: float = 101.6
) -> BoxSpec:
    made = box(
        FrontSpec(id=f"{name}-1", kind="drawer", height=152.4),
        FrontSpec(id=f"{name}-2", kind="door", hinged="left"),
        name=name, x=x, above_floor=up,
    )  # fmt: skip
    return replace(made, kind=kind)


def _job(*boxes: BoxSpec, wall: WallSpec = NORTH) -> Job:
    return replace(job(*boxes), shown_in="mm", walls=(wall,))


def _found(layout: Layout) -> list[tuple[str, str | None]]:
    return [(p.level, p.part) for p in layout.problems if p.code == "same-place"]


def _held(layout: Layout) -> list[str]:
    return [part.id for part in layout.units if part.withheld]


@pytest.mark.parametrize(("x", "told"), [(457.2, False), (456.7, False), (456.6, True)])
def test_the_box_that_was_put_there_is_held_back(x: float, told: bool) -> None:
    """Half a millimetre is a trifle; more is an error that holds the box with the x, alone."""
    layout = lay_out(_job(_box("B1"), _box("B2", x=x)))
    assert _held(layout) == (["B2-1", "B2-2"] if told else [])
    assert _found(layout) == ([("error", "B2-1"), ("error", "B2-2")] if told else [])
    for problem in layout.problems:
        if problem.code == "same-place":
            assert "B2 and B1 stand in the same place: they overlap 0.6 mm" in fact_of(
                problem, "mm"
            )
            assert "both cannot be built so" in fact_of(problem)
            assert "leave x out of B2" in remedy_of(problem)


def test_of_two_with_an_x_the_later_is_held() -> None:
    """And one that follows it there, not what stood there before."""
    assert _held(lay_out(_job(_box("B1", x=0.0), _box("B2", x=100.0)))) == ["B2-1", "B2-2"]
    shifted = _job(_box("B1", x=300.0), _box("B2", x=1200.0), _box("B3", x=250.0), _box("B4"))
    assert _held(lay_out(shifted)) == ["B3-1", "B3-2", "B4-1", "B4-2"]
    hung = _box("W1", kind="wall", x=0.0)
    assert _held(lay_out(_job(_box("T1"), hung))) == ["W1-1", "W1-2"]


def test_a_place_that_nobody_stated_holds_nothing() -> None:
    """Wall boxes hang from the left filler on by default: before a tall box they are told."""
    tall = replace(_box("T1"), height=2133.6, kind="tall")
    hung = _box("W1", kind="wall", up=1370.0)
    for stated in (tall, replace(tall, x=0.0)):
        layout = lay_out(_job(stated, hung))
        assert _held(layout) == []
        assert _found(layout) == [("warning", "W1")]
    layout = lay_out(_job(tall, hung))
    [problem] = [p for p in layout.problems if p.code == "same-place"]
    assert "give W1 its x" in remedy_of(problem)
    # Where one before it in its row has an x, it was put there by that.
    second = _box("W2", kind="wall", up=1370.0)
    layout = lay_out(_job(tall, _box("W0", kind="wall", x=-500.0, up=1370.0), second))
    assert _held(layout) == ["W2-1", "W2-2"]


def test_boxes_above_each_other_or_on_other_walls_are_apart() -> None:
    """They share a stretch of wall but no height, or the height but no wall."""
    above = box(name="W1", kind="wall", x=0.0, above_floor=TOP)
    assert _found(lay_out(_job(box(), above, box(name="S1", wall="south")))) == []


def test_a_rollout_is_held_with_its_box_and_a_bare_box_is_told() -> None:
    """Whatever the box brings; one without fronts has only its name to hold."""
    rolling = replace(_box("B2", x=100.0), rollouts=(RolloutSpec(at=200.0, height=120.0),))
    assert _held(lay_out(_job(_box("B1"), rolling))) == ["B2-1", "B2-2", "B2-ROLLOUT-1"]
    bare = replace(box(name="B2", x=100.0), kind="open")
    assert _found(lay_out(_job(_box("B1"), bare))) == [("error", "B2")]


def test_an_appliance_in_a_boxs_place() -> None:
    """A box that follows the one before it is where it belongs: the job is wrong, no part is
    held. One with an x of its own was put there."""
    fridge = Appliance(id="F1", width=900.0, height=1800.0, x=400.0)
    wall = WallSpec(name="north", appliances=(fridge,))
    layout = lay_out(_job(_box("B1"), wall=wall))
    assert (_held(layout), _found(layout)) == ([], [("error", None)])
    [problem] = [p for p in layout.problems if p.code == "same-place"]
    assert "B1 and F1" in fact_of(problem)
    assert "57.2 mm" in fact_of(problem)
    assert "correct x or after of F1" in remedy_of(problem)
    assert _held(lay_out(_job(_box("B1", x=0.0), wall=wall))) == ["B1-1", "B1-2"]


def test_two_appliances_in_one_place() -> None:
    """Neither has sheets: the finding is the job's."""
    both = tuple(Appliance(id=f"F{k}", width=9.0, height=9.0, x=1000.0) for k in (1, 2))
    layout = lay_out(_job(box(), wall=WallSpec(name="north", appliances=both)))
    assert _found(layout) == [("error", None)]


eighths = st.integers(0, 8 * 2500).map(lambda n: n / 8)


@given(st.lists(st.none() | eighths, min_size=2, max_size=5))
@settings(max_examples=80)
def test_what_is_not_held_stands_apart(places: list[float | None]) -> None:
    """Whatever the places: without the boxes held, no two of a row overlap."""
    made = _job(*(box(name=f"B{k}", x=x) for k, x in enumerate(places)))
    held = find_displaced(made)
    row = sorted(
        (each for each in taken_by(made) if each.id not in held), key=lambda each: each.left
    )
    for one, other in pairwise(row):
        assert one.right <= other.left + 0.5 + 1e-6
