"""Hinges that do not bring their door over its side."""

import pytest
from msgspec.structs import replace

from jigs.given.hardware import HingeKind
from tests.jigs.checks.test_doors import door
from tests.jigs.sample import HINGE, codes
from tests.said import fact_of, remedy_of


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
        fact_of(told)
    )
    assert "is the constant of hinge 'mine' right? full overlay is usually 11 to 16" in remedy_of(
        told
    )
    assert fact_of(told).endswith("), with 7.0 by 0.2, with 6.5, the next best, by 0.7")
    assert "high covers" not in remedy_of(told)
    stated = door(replace(record, tab=5.0))
    assert "tab-moved" not in codes(stated)
    assert "overlay" in codes(stated)
    assert stated.fronts[0].withheld
    two = door(replace(record, constant=10.0, tabs=(5.0, 7.0))).problems
    assert [fact_of(p) for p in two if p.code == "tab-moved"] == [
        "cups at 24.5 mm from the hinge edge, tab 7.0: with 5.0 the overlay misses by 1.7 "
        "(plates 0), with 7.0 by 0.3"
    ]


def test_the_plate_that_needs_no_other_tab_is_told() -> None:
    """Needed 16.7, constant 14, one plate, of 0: 14 + 5 - 16.7 is a plate of 2.3, which is not
    listed; 2.5 is near enough, and the cups stay where they usually are."""
    record = replace(HINGE, constant=14.0, plates=(0.0,))
    (told,) = [p for p in door(record).problems if p.code == "tab-moved"]
    assert 'tab = "5 mm"; a plate 2.3 high covers with it what is wanted' in remedy_of(told)
    assert "tab-moved" not in codes(door(replace(record, plates=(0.0, 2.5))))


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
    record = replace(HINGE, plates=plates, **changed)
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
    low = door(replace(HINGE, constant=9.0, plates=())).problems
    (asked,) = (fact_of(p) for p in low if p.code == "unlikely-number")
    assert "-2.7 mm" in asked


def test_without_plates_a_hinge_of_the_wrong_kind_is_one_still() -> None:
    """A half hinge on a whole side would want a plate of 5.5 + 5 - 16.7, lower than none."""
    made = door(replace(HINGE, kind="half", constant=5.5, plates=()))
    assert "hinge-kind" in codes(made, "B1-1")
    assert made.fronts[0].withheld
