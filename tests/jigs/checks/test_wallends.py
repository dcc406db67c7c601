"""The ends of a wall: doors at walls, casings and panels (filler and restrictor: common practice,
no source)."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from jigs.given.job import BoxSpec, FrontSpec, Reveal
from jigs.given.stated import EndPanels, Hung, OpenedBy
from jigs.given.wallspec import EndKind, WallEnd, WallSpec
from jigs.ground.problems import Problem
from jigs.layout.layout import lay_out
from tests.jigs.sample import box, job
from tests.said import remedy_of

ENDS = {"wall-filler", "end-reach", "hinge-at-end", "edge-at-end"}


def door(hinged: str = "left", **more: object) -> FrontSpec:
    return FrontSpec(id="B1-1", kind="door", hinged=hinged, **more)  # type: ignore[arg-type]


def found(
    *boxes: BoxSpec,
    stands: EndKind = "wall",
    filler: float = 0.0,
    reach: float | None = None,
    reveal: Reveal | None = None,
) -> list[Problem]:
    """Give what is found at the left end of the wall of these boxes."""
    end = WallEnd(stands=stands, filler=filler, reach=reach)
    given = job(*boxes, reveal=reveal) if reveal else job(*boxes)
    given = replace(given, shown_in="mm", walls=(WallSpec(name="north", left=end),))
    return [p for p in lay_out(given).problems if p.code in ENDS]


@pytest.mark.parametrize(("filler", "told"), [(0.0, True), (40.8, True), (41.0, False)])
def test_a_door_at_a_wall(filler: float, told: bool) -> None:
    """A pull that stands out 35 wants 35 + 6 = 41 (derived; 6: common practice)."""
    problems = found(box(door()), filler=filler)
    assert [p.code for p in problems] == ["wall-filler"] * told
    if told:
        assert "41.0 mm" in remedy_of(problems[0])
        assert "restrictor = true" in remedy_of(problems[0])


def test_without_a_filler_the_restrictor_comes_first() -> None:
    """Where there is no filler at all, a restrictor below 90 degrees is asked for."""
    [problem] = found(box(door()))
    assert remedy_of(problem).startswith("fit a restrictor that stops it below 90 degrees")


def test_a_door_with_a_restrictor_strikes_nothing() -> None:
    """It says that it has one."""
    assert found(box(door(hung=Hung(restrictor=True)))) == []


def test_a_door_without_a_pull() -> None:
    """Its face alone comes to the wall: 6."""
    assert found(box(door(opened_by=OpenedBy(pull="none"))), filler=6.0) == []
    assert len(found(box(door(opened_by=OpenedBy(pull="none"))), filler=5.0)) == 1


def test_the_other_hand_and_another_box_strike_nothing() -> None:
    """Only the box at the end, and only a door hinged there."""
    second = box(replace(door(), id="B2-1"), name="B2")
    assert found(box(door("right")), second, filler=6.0) == []


def test_a_pair_strikes_with_the_leaf_at_the_end() -> None:
    """The left leaf at the left end."""
    pair = box(FrontSpec(id="B1-1", kind="pair"), width=914.4)
    assert [p.part for p in found(pair)] == ["B1-1L"]


def test_a_wall_box_further_off_has_that_much_room() -> None:
    """The end is where the outermost box of the wall ends, and its filler."""
    hung = box(door(), kind="wall", above_floor=1400.0, x=41.0)
    low = box(FrontSpec(id="B2-1", kind="drawer"), name="B2", x=0.0)
    assert found(low, hung) == []
    assert [p.part for p in found(low, replace(hung, x=40.0))] == ["B1-1"]


@pytest.mark.parametrize(("filler", "told"), [(60.8, True), (61.0, False)])
def test_a_casing_is_added(filler: float, told: bool) -> None:
    """20 of casing, 35 of pull, 6."""
    problems = found(box(door()), stands="casing", reach=20.0, filler=filler)
    assert [p.code for p in problems] == ["wall-filler"] * told


@pytest.mark.parametrize(("filler", "told"), [(24.2, True), (24.4, False)])
def test_a_drawer_passes_a_casing(filler: float, told: bool) -> None:
    """Filler and reveal keep 20 + 6 from the wall: 24.4 + 1.6."""
    drawer = box(FrontSpec(id="B1-1", kind="drawer"))
    problems = found(drawer, stands="casing", reach=20.0, filler=filler)
    assert [p.code for p in problems] == ["end-reach"] * told


def test_a_flush_panel_leaves_the_pull_alone() -> None:
    """Only the hinge edge needs its least reveal: 0.9 at 19 (from memory), 0.91 at 19.05."""
    assert found(box(door()), stands="panel") == []
    tight = Reveal(side=0.8, top=1.6, bottom=1.6, between=1.6)
    [problem] = found(box(door()), stands="panel", reveal=tight)
    assert problem.code == "hinge-at-end"
    assert found(box(door()), stands="panel", reveal=tight, filler=0.2) == []


def test_the_hinge_edge_is_told_once() -> None:
    """Beside a panel the finding names it, and the plain one is not said as well."""
    tight = Reveal(side=0.8, top=1.6, bottom=1.6, between=1.6)
    at_panel = replace(box(door()), panels=EndPanels(left="flush"))
    told = [p.code for p in lay_out(job(at_panel, reveal=tight)).problems]
    assert "hinge-at-end" in told
    assert "hinge-edge-reveal" not in told


def test_a_panel_beyond_the_faces() -> None:
    """Far enough out to meet the pull it wants 41; else 6 for the face."""
    assert len(found(box(door()), stands="panel", reach=450.0, filler=40.0)) == 1
    assert found(box(door()), stands="panel", reach=450.0, filler=41.0) == []
    assert found(box(door()), stands="panel", reach=100.0, filler=6.0) == []


@pytest.mark.parametrize(
    ("front", "side", "told"),
    [
        (FrontSpec(id="B1-1", kind="drawer"), 0.9, True),
        (FrontSpec(id="B1-1", kind="drawer"), 1.0, False),
        # W 456.2, K 5: 0.5 + sqrt(451.2 ** 2 + 19.05 ** 2) - 451.2 = 0.902 (derived)
        (door("right"), 0.85, True),
        (door("right"), 0.95, False),
    ],
)
def test_edges_beside_a_wall(front: FrontSpec, side: float, told: bool) -> None:
    """A drawer keeps 1, a free edge what it swings out and 0.5 (common practice, no source)."""
    reveal = Reveal(side=side, top=1.6, bottom=1.6, between=3.2)
    assert [p.code for p in found(box(front), reveal=reveal)] == ["edge-at-end"] * told


@given(filler=st.floats(0, 200), reach=st.floats(0, 100))
def test_a_filler_as_told_is_enough(filler: float, reach: float) -> None:
    """Whatever stands there, the filler that is asked for silences the finding."""
    ends = found(box(door()), stands="casing", reach=reach, filler=filler)
    assert bool(ends) == (filler < reach + 35 + 6 - 0.1 - 1e-6)
    assert found(box(door()), stands="casing", reach=reach, filler=reach + 41) == []
