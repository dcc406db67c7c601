"""Whatever a kitchen has: no hole where none may be, and what belongs together agrees."""

import pytest
from hypothesis import given, settings
from msgspec.structs import replace

from jigs.box.parts import Layout, Side
from jigs.given.job import BoxSpec, ColumnSpec, Job
from jigs.layout.layout import lay_out
from tests.holefaults import faults_in_holes
from tests.jigs.box.test_columns import TS, door, drawer, face
from tests.jigs.sample import box, front_of, job
from tests.jigs.test_overlay import HINGES
from tests.jobs import jobs


@given(jobs(most_boxes=2))
@settings(max_examples=10)
def test_holes_of_any_job(made: Job) -> None:
    """Inside their parts, apart, clear of glass and panels; cups, slides and faces agree."""
    assert faults_in_holes(lay_out(made)) == []


@pytest.mark.slow
@given(jobs())
@settings(max_examples=60)
def test_holes_of_many_jobs(made: Job) -> None:
    """The same, at length."""
    assert faults_in_holes(lay_out(made)) == []


# --- the search can find ----------------------------------------------------------------------


def _worked() -> Layout:
    spec = replace(
        box(door("A", hinged="right"), drawer("C", 2, height=200.0), drawer("D", 2), width=914.4),
        columns=(ColumnSpec(), ColumnSpec()),
    )
    made = job(spec, hinge=HINGES["half"])
    return lay_out(made)


def _moved(side: Side, x: float, y: float) -> Side:
    """Move the first fitting of a face."""
    first = side.fittings[0]
    holes = tuple(replace(hole, x=hole.x + x, y=hole.y + y) for hole in first.holes)
    return replace(side, fittings=(replace(first, holes=holes), *side.fittings[1:]))


@pytest.mark.parametrize(
    ("key", "x", "y", "words"),
    [((1, "right"), 0.0, 0.01, "cups at"), ((1, "right"), -36.0, 0.0, "not inside"),
     ((1, "right"), 0.1, 0.0, "off the front line"), ((2, "right"), 0.0, 0.01, "slides differ"),
     ((2, "right"), 0.0, -40.0, "in the bottom"), ((2, "right"), 1.0, 622.8 - 51.3, "too near")],
)  # fmt: skip
def test_the_search_finds(key: tuple[int, str], x: float, y: float, words: str) -> None:
    """One fitting moved by hand is told each time."""
    layout = _worked()
    assert faults_in_holes(layout) == []
    sides = tuple(
        _moved(side, x, y) if (side.column, side.side) == key else side for side in layout.sides
    )
    assert any(words in fault for fault in faults_in_holes(replace(layout, sides=sides)))


# --- partitions in boxes on legs, and in boxes already together -------------------------------


def _on_legs(legs: float) -> Layout:
    spec: BoxSpec = replace(
        box(
            door("A", hinged="right"), drawer("C", 2, height=200.0), drawer("D", 2),
            width=914.4, height=774.7 + legs, above_floor=0.0,
        ),
        columns=(ColumnSpec(), ColumnSpec()), legs=legs, assembled=True, band="later",
    )  # fmt: skip
    return lay_out(job(spec, hinge=HINGES["half"]))


def test_a_partition_stands_on_the_bottom_panel_wherever_that_is() -> None:
    """On legs of 101.6 all is 101.6 higher, but for the partition, whose end is on the panel."""
    flat, high = _on_legs(0.0), _on_legs(101.6)
    for key in ((1, "right"), (2, "left")):
        here, there = face(flat, *key), face(high, *key)
        assert there.height == pytest.approx(here.height) == 774.7 - 2 * TS
        assert there.ends.base == pytest.approx(here.ends.base + 101.6)
        assert (there.bottom, there.assembled, there.band_state) == (0.0, True, "later")
    slides = [h.y for f in face(flat, 2, "left").fittings for h in f.holes]
    raised = [h.y for f in face(high, 2, "left").fittings for h in f.holes]
    assert raised == pytest.approx(slides)
    assert face(high, 2, "right").bottom == pytest.approx(101.6 + TS)
    assert faults_in_holes(high) == []
    assert not any(front.withheld for front in high.fronts)
    assert front_of(high, "A").place.y == pytest.approx(101.6 + 1.6)
