"""Tall units tilted up under a ceiling, and shelves that sag to be seen."""

from math import hypot

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from jigs.checks.cutting import check_legs, check_tilting, with_cutting
from jigs.given.job import BoxSpec, ColumnSpec, FrontSpec, ShelfSpec, SideMaterial
from jigs.given.wallspec import WallSpec
from jigs.ground.problems import Problem
from jigs.layout.layout import lay_out
from tests.jigs.sample import MATERIAL, box, job
from tests.said import fact_of, remedy_of


def tall(height: float, depth: float = 600.0, **given: float) -> BoxSpec:
    """Give a tall box."""
    return replace(box(kind="tall", height=height, depth=depth), **given)


def sagging(box: BoxSpec, kind: SideMaterial | None = None) -> list[Problem]:
    """Give what is said of the shelves of a box."""
    material = replace(MATERIAL, side_kind=kind)
    layout, _ = with_cutting(lay_out(job(box, material=material)))
    return [problem for problem in layout.problems if problem.code == "shelf-sag"]


@given(
    height=st.floats(min_value=1500, max_value=2600),
    depth=st.floats(min_value=200, max_value=700),
    ceiling=st.floats(min_value=2000, max_value=3000),
)
def test_a_tall_unit_needs_its_diagonal_and_10(height: float, depth: float, ceiling: float) -> None:
    """Over ceiling - 10 it is told, else not (common practice, no source; the diagonal derived)."""
    found = [*check_tilting(tall(height, depth), ceiling)]
    if abs(hypot(height, depth) - (ceiling - 10)) > 0.001:
        assert bool(found) == (hypot(height, depth) > ceiling - 10)


def test_tilting_says_both_figures_and_a_way() -> None:
    """The finding has the diagonal, the room and what to do; a base box is never asked."""
    (problem,) = check_tilting(tall(2400.0), 2450.0)
    assert (problem.level, problem.code, problem.part) == ("warning", "cannot-be-tilted-up", "B1")
    assert f"{hypot(2400, 600):.1f} mm" in fact_of(problem)
    assert f"{2450 - 10:.1f} mm" in fact_of(problem)
    assert "from the side" in remedy_of(problem)
    assert not [*check_tilting(tall(2400.0), None)]
    assert not [*check_tilting(replace(tall(2400.0), kind="base"), 2450.0)]


def test_an_open_box_is_tilted_up_too() -> None:
    """A bookcase as high as the room is; the place of an appliance's panel is no box."""
    case = replace(tall(2400.0), kind="open")
    assert [one.code for one in check_tilting(case, 2450.0)] == ["cannot-be-tilted-up"]
    place = replace(case, fronts=(FrontSpec(id="B1-1", kind="panel"),))
    assert not [*check_tilting(place, 2450.0)]


@pytest.mark.parametrize(
    ("legs", "height", "said"),
    [
        (0.0, 2400.0, "build it in two parts, or bring it in upright"),
        (100.0, 2400.0, "stand the toe separately"),  # hypot(2300, 600) = 2377 goes
        (20.0, 2400.0, "build it in two parts, or bring it in upright"),  # hypot(2380, 600) = 2454
        (0.0, 2445.0, "build it in two parts"),  # too high to stand in the room that is left
    ],
)
def test_the_remedy_fits_the_unit(legs: float, height: float, said: str) -> None:
    """Legs come off where that is enough; a unit as high as the room is not brought in upright."""
    (problem,) = check_tilting(tall(height, legs=legs), 2450.0)
    assert said in remedy_of(problem)
    assert ("upright" in remedy_of(problem)) == (height <= 2440.0)


def test_each_wall_has_its_own_ceiling() -> None:
    """A unit is held against the ceiling of its own wall; without one nothing is said."""
    units = (
        replace(tall(2400.0), id="T1"),
        replace(tall(2400.0), id="T2", wall="south"),
        replace(tall(2400.0), id="T3", wall="east"),
    )
    walls = (
        WallSpec(name="north", ceiling=2500.0),
        WallSpec(name="south", ceiling=2450.0),
        WallSpec(name="east"),
    )
    layout = lay_out(replace(job(*units), walls=walls))
    found = [p.part for p in layout.problems if p.code == "cannot-be-tilted-up"]
    assert found == ["T2"]


def test_a_long_shelf_is_told_with_its_remedy() -> None:
    """1200 - 2 x 18.3 - 3 of plywood sags 5 q L^4 / (32 E t^3), over 1 in 300; assumed, it says."""
    (problem,) = sagging(replace(box(FrontSpec(id="B1-1", kind="pair"), width=1200.0),
                                 shelves=(ShelfSpec(),)))  # fmt: skip
    span = 1200 - 2 * 18.3 - 3
    down = 5 * 7.182e-4 * span**4 / (32 * 6960 * 18.3**3)
    assert f"({down:.1f} mm)" in fact_of(problem)
    assert f"({span / 300:.1f} mm) is not seen" in fact_of(problem)
    assert "plywood (ASSUMED: side_kind is not stated)" in fact_of(problem)
    assert "B1-SHELF-1" in fact_of(problem)
    assert "partition" in remedy_of(problem)
    assert problem.level == "warning"


@pytest.mark.parametrize(
    ("kind", "width", "told"),
    [
        # Longest straight shelf of 18.3: t (32 E / (1500 q))^(1/3), and 39.6 more of the box.
        ("plywood", 1082.1 + 39.6 - 10, False),
        ("plywood", 1082.1 + 39.6 + 10, True),
        ("mdf", 867.8 + 39.6 - 10, False),
        ("mdf", 867.8 + 39.6 + 10, True),
        ("particleboard", 795.0 + 39.6 - 10, False),
        ("particleboard", 795.0 + 39.6 + 10, True),
        ("solid", 1156.6 + 39.6 - 10, False),
        ("solid", 1156.6 + 39.6 + 10, True),
    ],
)
def test_each_board_has_its_longest_shelf(kind: SideMaterial, width: float, told: bool) -> None:
    """What is told follows the board's stiffness, and a stated board is not called assumed."""
    made = box(FrontSpec(id="B1-1", kind="pair"), width=width)
    found = sagging(replace(made, shelves=(ShelfSpec(),)), kind)
    assert bool(found) is told
    assert not any("ASSUMED" in fact_of(problem) for problem in found)


def test_a_partition_halves_the_shelf() -> None:
    """Fixed shelves count as they are cut: one board across a box, or two beside a partition."""
    wide = replace(
        box(FrontSpec(id="B1-1", kind="pair"), width=1300.0), shelves=(ShelfSpec(at=300.0),)
    )
    (problem,) = sagging(wide, "mdf")
    assert "B1-FIXED-1" in fact_of(problem)
    doors = (
        FrontSpec(id="B1-1", kind="door", hinged="left"),
        FrontSpec(id="B1-2", kind="door", hinged="right", column=2),
    )
    assert sagging(replace(wide, fronts=doors, columns=(ColumnSpec(), ColumnSpec())), "mdf") == []


def test_a_box_on_its_own_legs_is_not_set_above_the_floor() -> None:
    """legs 100 with above_floor 40 contradict each other; either alone is sound."""
    both = replace(tall(2100.0), legs=100.0, above_floor=40.0)
    (problem,) = check_legs(both)
    assert (problem.level, problem.code, problem.part) == ("warning", "legs-above-floor", "B1")
    assert "100.0 mm" in fact_of(problem)
    assert "40.0 mm" in fact_of(problem)
    assert "leave above_floor out" in remedy_of(problem)
    assert not [*check_legs(replace(both, above_floor=0.0))]
    assert not [*check_legs(replace(both, legs=0.0))]
    assert [one.code for one in lay_out(job(both)).problems].count("legs-above-floor") == 1
