"""Doors that will not hang, or not well."""

from dataclasses import replace

import pytest

from jigs.box.parts import Layout
from jigs.given.hardware import HingeKind, HingeRecord
from jigs.given.job import FrontSpec, Reveal
from jigs.layout.layout import lay_out
from tests.jigs.sample import GOLDEN, HINGE, MATERIAL, box, codes, job


def door(
    hinge: HingeRecord = HINGE,
    *,
    reveal: Reveal = GOLDEN,
    width: float = 457.2,
    height: float = 774.7,
    **given: object,
) -> Layout:
    """Lay out one left-hung door."""
    front = FrontSpec(id="B1-1", **{"kind": "door", "hinged": "left", **given})  # type: ignore[arg-type]
    bare = replace(box(front, width=width, height=height, kind="wall"), no_shelf=True)
    return lay_out(job(bare, hinge=hinge, reveal=reveal))


def test_the_golden_door_has_no_findings() -> None:
    """Nothing is wrong with the golden door."""
    assert codes(door()) == []


@pytest.mark.parametrize(
    ("thickness", "depth", "point", "held"),
    [(19.05, 13, 1, False), (15.5, 13, 1, False), (15.4, 13, 1, True), (16, 13, 2.5, True),
     (16.5, 13, 2.5, False)],
)  # fmt: skip
def test_skin(thickness: float, depth: float, point: float, held: bool) -> None:
    """2.5 stays under the cup, and 1 under the bit's point (common practice, no source)."""
    record = replace(HINGE, cup_depth=depth, bit_point=point)
    assert ("skin-under-cup" in codes(door(record, thickness=thickness))) is held


@pytest.mark.parametrize(
    ("plates", "tabs", "held"),
    [((3.0,), None, False), ((9.0,), None, True), ((4.0,), (5.0,), False), ((0.0,), (5.0,), True)],
)
def test_overlay(plates: tuple[float, ...], tabs: tuple[float, ...] | None, held: bool) -> None:
    """More than 1.0 beside the overlay needed (16.7) withholds the door."""
    record = replace(HINGE, plates=plates, tabs=tabs)
    assert ("overlay" in codes(door(record))) is held


def test_what_the_search_moved_is_told() -> None:
    """Needed 16.7, constant 9.5, plate 0 alone: 9.5 + 5 misses by 2.2; tab 7.0 comes to 0.2, the
    next, 6.5, to 0.7. Its cups stand 7 + 35 / 2 from the edge. A stated tab stands, and is held
    instead. Where the tab moved from is the next itself, it is told once."""
    record = replace(HINGE, constant=9.5, plates=(0.0,))
    (told,) = [p for p in door(record).problems if p.code == "tab-moved"]
    assert "cups at 24.5 mm from the hinge edge, tab 7.0: with 5.0 the overlay misses by 2.2" in (
        told.text
    )
    assert "is the constant of hinge 'mine' right? full overlay is usually 11 to 16" in told.remedy
    assert told.text.endswith("; with 7.0 by 0.2, with 6.5, the next at hand, by 0.7")
    stated = door(replace(record, tab=5.0))
    assert "tab-moved" not in codes(stated)
    assert "overlay" in codes(stated)
    assert stated.fronts[0].withheld
    two = door(replace(record, constant=10.0, tabs=(5.0, 7.0))).problems
    assert [p.text for p in two if p.code == "tab-moved"] == [
        "cups at 24.5 mm from the hinge edge, tab 7.0: with 5.0 the overlay misses by 1.7, "
        "with plates 0; with 7.0 by 0.3"
    ]


@pytest.mark.parametrize(
    ("changed", "plates", "fault"),
    [({"kind": "half", "constant": 5.5}, (3.0,), "hinge-kind"),
     ({"kind": "inset", "constant": -4.0}, (), "hinge-kind"),
     ({"constant": 9.0}, (9.0,), "overlay")],
)  # fmt: skip
def test_an_overlay_out_of_reach_is_told_once(
    changed: dict[str, object], plates: tuple[float, ...], fault: str
) -> None:
    """What tab or plate the search ended at says nothing of a hinge of the wrong kind, or held."""
    record = replace(HINGE, plates=plates, **changed)  # type: ignore[arg-type]
    assert codes(door(record)) == [fault]


@pytest.mark.parametrize(
    ("kind", "constant", "asked"),
    [
        ("full", 8.0, False), ("full", 20.0, False), ("full", 7.9, True), ("full", 20.1, True),
        ("half", 2.0, False), ("half", 12.0, False), ("half", 1.9, True), ("half", 12.1, True),
        ("inset", -8.0, False), ("inset", 0.0, False), ("inset", -8.1, True), ("inset", 0.1, True),
    ],
)  # fmt: skip
def test_a_constant_no_hinge_has_is_asked_about(
    kind: HingeKind, constant: float, asked: bool
) -> None:
    """8 to 20 full, 2 to 12 half, -8 to 0 inset (from memory), whatever else is wrong with it."""
    found = codes(door(replace(HINGE, kind=kind, constant=constant)), "B1-1")
    assert ("unlikely-number" in found) is asked


def test_without_plates_no_overlay_is_wrong() -> None:
    """The plate is named that this wants, 12 + 5 - 16.7; one lower than none is asked about."""
    made = door(replace(HINGE, constant=12.0, plates=()))
    assert codes(made) == []
    choice = made.fronts[0].hinge
    assert choice is not None
    assert not choice.plate_stated
    assert (choice.tab, choice.plate, choice.error) == pytest.approx((5.0, 12 + 5 - 16.7, 0.0))
    assert made.fronts[0].holes == door(replace(HINGE, plates=(3.0,))).fronts[0].holes
    low = [p.text for p in door(replace(HINGE, constant=9.0, plates=())).problems]
    assert [text for text in low if "-2.7 mm" in text]


def test_without_plates_a_hinge_of_the_wrong_kind_is_one_still() -> None:
    """A half hinge on a whole side would want a plate of 5.5 + 5 - 16.7, lower than none."""
    made = door(replace(HINGE, kind="half", constant=5.5, plates=()))
    assert "hinge-kind" in codes(made, "B1-1")
    assert made.fronts[0].withheld


def test_hinge_edge_reveal() -> None:
    """A front 22 thick needs 1.6 at its hinge edge, one of 24 needs 2.4 (from memory)."""
    assert "hinge-edge-reveal" not in codes(door(thickness=22.0))
    assert "hinge-edge-reveal" in codes(door(thickness=24.0))
    assert "least-reveal-unknown" in codes(door(thickness=25.0))


def test_low_and_wide_doors() -> None:
    """Outer hinges under 150 apart, or under half the door's width, are told."""
    assert "hinges-close" in codes(door(height=230))
    assert "hinges-close" in codes(door(height=360, width=500))
    assert codes(door(height=480)) == []


def test_hinge_off_grid_and_no_room() -> None:
    """Slides in the way move a hinge off the grid; a door too low has no room at all."""
    assert "hinge-no-room" in codes(door(height=130))


def test_few_hinges_given() -> None:
    """Two heights on a door of 1200 are told: the table asks for three."""
    assert "hinges-few" in codes(door(height=1203.2, hinges_at=(100.0, 1100.0)))


def test_beyond_the_tables() -> None:
    """A door over 2400 high gets six hinges and a warning."""
    layout = door(height=2450)
    assert "door-beyond-tables" in codes(layout)
    assert len([f for f in layout.fronts[0].fittings if f.kind == "hinge"]) == 6


def test_density_counts() -> None:
    """A job's own density decides the weight: at 1600 kg/m3 the golden door takes three."""
    heavy = replace(MATERIAL, front_density=1600.0)
    front = FrontSpec(id="B1-1", kind="door", hinged="left")
    layout = lay_out(job(box(front), material=heavy))
    assert 0.454 * 0.7715 * 0.01905 * 1600 > 6
    assert len([f for f in layout.fronts[0].fittings if f.kind == "hinge"]) == 3
