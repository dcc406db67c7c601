"""Boxes side by side: sight lines, and doors hinged back to back."""

import pytest
from msgspec.structs import replace

from jigs.given.job import BoxSpec, ColumnSpec, FrontSpec, Reveal
from jigs.given.stated import OpenedBy
from jigs.ground.lengths import format_length
from jigs.layout.layout import lay_out
from tests.jigs.sample import box, codes, job
from tests.said import fact_of


def drawers(name: str, height: float, **given: object) -> BoxSpec:
    """Give a box with a drawer of this height over an opening."""
    return box(
        FrontSpec(id=f"{name}-1", kind="drawer", height=height),
        FrontSpec(id=f"{name}-2", kind="opening"),
        name=name,
        kind="tall",
        **given,  # type: ignore[arg-type]
    )


def sight_lines(*boxes: BoxSpec) -> list[tuple[str | None, tuple[str, ...]]]:
    """Give the parts of the findings on sight lines."""
    found = lay_out(job(*boxes)).problems
    return [(p.part, p.also) for p in found if p.code == "sight-line"]


@pytest.mark.parametrize(
    ("difference", "told"), [(0.0, False), (0.5, False), (0.6, True), (12.0, True), (12.2, False)]
)
def test_nearly_aligned(difference: float, told: bool) -> None:
    """Pulls at half height differ by half as much: 0.3 to 6 is told (common practice)."""
    found = sight_lines(drawers("B1", 152.4), drawers("B2", 152.4 + difference))
    assert found == ([("B2-1", ("B1-1",))] if told else [])


def test_only_neighbours_of_one_wall() -> None:
    """Another wall, a gap, or an inferred box is no neighbour."""
    one, other = drawers("B1", 152.4), drawers("B2", 158.0, wall="south")
    assert sight_lines(one, other) == []
    assert sight_lines(one, drawers("B2", 158.0, x=600.0)) == []
    assert (
        sight_lines(drawers("B1", 152.4, inferred=True), drawers("B2", 158.0, inferred=True)) == []
    )


def test_only_the_leaves_that_meet() -> None:
    """Of two pairs side by side the right leaf and the left one are compared, once."""
    pairs = [
        box(FrontSpec(id=f"B{i}-1", kind="pair", height=height), name=f"B{i}", width=914.4)
        for i, height in ((1, 771.5), (2, 770.5))
    ]
    assert sight_lines(*pairs) == [("B2-1L", ("B1-1R",))]


def test_a_false_front_is_compared_with_a_drawer() -> None:
    """An eye takes a false front with a pull for a drawer."""
    false = box(
        FrontSpec(id="B2-1", kind="false-front", height=155.0, opened_by=OpenedBy(pull="bar")),
        FrontSpec(id="B2-2", kind="opening"),
        name="B2",
        kind="tall",
    )
    assert sight_lines(drawers("B1", 152.4), false) == [("B2-1", ("B1-1",))]


def test_hinged_back_to_back() -> None:
    """Two doors hinged on adjoining sides need twice the least reveal between them."""
    tight = Reveal(side=0.8, top=1.6, bottom=1.6, between=1.6)
    boxes = [
        box(FrontSpec(id=f"B{i}-1", kind="door", hinged=hand), name=f"B{i}", kind="tall")  # type: ignore[arg-type]
        for i, hand in ((1, "right"), (2, "left"))
    ]
    assert "hinge-to-hinge" in codes(lay_out(job(*boxes, reveal=tight)), "B2-1")
    assert "hinge-to-hinge" not in codes(lay_out(job(*boxes)))
    assert "hinge-to-hinge" not in codes(lay_out(job(*reversed(boxes), reveal=tight)))


@pytest.mark.parametrize("increment", [None, 25.4 / 16])
def test_hinged_back_to_back_over_a_partition(increment: float | None) -> None:
    """Doors of 24 need 2 x 2.4 between them; between two that were rounded down there is what
    their edges leave, and both say so."""
    doors = (
        FrontSpec(id="A", kind="door", hinged="right", thickness=24.0),
        FrontSpec(id="B", kind="door", hinged="left", thickness=24.0, column=2),
    )
    made = replace(box(*doors, width=900.0), columns=(ColumnSpec(), ColumnSpec(share=2.0)))
    layout = lay_out(job(made, increment=increment, units="mm"))
    one, other = layout.fronts
    gap = other.place.x - one.place.x - one.width
    assert (gap > 3.2 + 1e-6) is (increment is not None)
    assert (one.gaps.right, other.gaps.left) == pytest.approx((gap, gap))
    [problem] = [p for p in layout.problems if p.code == "hinge-to-hinge"]
    # It stands on both doors' papers, so that it names both.
    assert fact_of(problem, "mm").startswith("B and A are hinged back to back")
    assert f"with a gap of {format_length(gap, 'mm')}" in fact_of(problem, "mm")
