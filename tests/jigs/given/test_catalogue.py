"""The generic hardware records, and records derived from them."""

import typing
from typing import get_args

import pytest
from msgspec.structs import fields, replace

from jigs.given.catalogue import (
    derive,
    generic_hinges,
    generic_pulls,
    generic_slides,
    solve_constant,
)
from jigs.given.hardware import HingeRecord, NumberStanding, PullRecord, SlideRecord
from tests.jigs.sample import SURE


def every_record() -> list[HingeRecord | SlideRecord | PullRecord]:
    """All generic records of the three kinds."""
    return [
        *generic_hinges().values(),
        *generic_slides().values(),
        *generic_pulls().values(),
    ]


# Patterns of the trade, spacing/inboard, and the hole line from the door's edge for a tab of 5
# and a cup of 35: common practice, no source; the line derived: 5 + 35 / 2 + inboard.
@pytest.mark.parametrize(
    ("name", "spacing", "inboard", "line"),
    [
        ("cup35-full", 45.0, 9.5, 32.0),
        ("cup35-full-48", 48.0, 6.0, 28.5),
        ("cup35-full-52", 52.0, 5.5, 28.0),
        ("cup35-half-52", 52.0, 5.5, 28.0),
        ("cup35-inset-48", 48.0, 6.0, 28.5),
    ],
)
def test_hinge_patterns(name: str, spacing: float, inboard: float, line: float) -> None:
    """A hinge's fixing pattern is told by its name."""
    hinge = generic_hinges()[name]
    assert (hinge.fixing_spacing, hinge.fixing_inboard) == (spacing, inboard)
    assert 5 + hinge.cup_diameter / 2 + hinge.fixing_inboard == line


# Constants from memory, unsure.
@pytest.mark.parametrize(("kind", "constant"), [("full", 15.0), ("half", 5.5), ("inset", -4.0)])
def test_hinge_constants_are_from_memory(kind: str, constant: float) -> None:
    """The constant of a generic hinge is from memory, and neither tab nor tabs are fixed."""
    hinge = generic_hinges()[f"cup35-{kind}"]
    assert (hinge.kind, hinge.constant, hinge.standing["constant"]) == (kind, constant, "M")
    assert (hinge.tab, hinge.tabs) == (None, None)


def test_least_reveal() -> None:
    """The least reveal at the hinge edge stands as pairs, from memory."""
    hinge = generic_hinges()["cup35-full"]
    assert hinge.least_reveal == ((19, 0.9), (20, 1.1), (21, 1.4), (22, 1.6), (24, 2.4))
    assert hinge.standing["least_reveal"] == "M"


@pytest.mark.parametrize("record", every_record(), ids=lambda record: record.name)
def test_records_are_unconfirmed_and_state_their_standing(
    record: HingeRecord | SlideRecord | PullRecord,
) -> None:
    """No generic record is confirmed, none is named by anything but geometry, and each of its
    numbers that differs from nothing has a standing."""
    assert record.confirmed == {}
    assert record.like is None
    names = {field.name for field in fields(record)}
    assert set(record.standing) <= names
    assert set(record.standing.values()) <= set(get_args(NumberStanding))


@pytest.mark.parametrize("record", every_record(), ids=lambda record: record.name)
def test_records_have_the_types_they_say(record: HingeRecord | SlideRecord | PullRecord) -> None:
    """A number of a record is a float, a list of numbers a tuple: the data are read as such."""
    for name, annotation in typing.get_type_hints(type(record)).items():
        value = getattr(record, name)
        if annotation is float:
            assert type(value) is float, name
        if isinstance(value, tuple):
            assert all(type(item) in (float, tuple) for item in value), name


# Nominal lengths: common practice; the drawer's own length: from memory.
@pytest.mark.parametrize(
    ("name", "drawer"),
    [
        ("undermount-229", 229),
        ("undermount-533", 533),
        ("undermount-250", 250 - 10),
        ("undermount-750", 750 - 10),
        ("sidemount-300", 300),
        ("sidemount-559", 559),
    ],
)
def test_drawer_lengths(name: str, drawer: float) -> None:
    """An inch drawer is as long as its slide, a metric undermount one 10 shorter."""
    slide = generic_slides()[name]
    assert slide.length - slide.drawer_shorter == drawer


def test_slide_numbers() -> None:
    """The numbers of the two mounts: from memory, as the records say; 533 + 16 = 549 derived."""
    under, side = generic_slides()["undermount-533"], generic_slides()["sidemount-500"]
    assert (under.fixing_height, under.drawer_rise, under.width_less) == (33, 14, 42)
    assert under.length + under.depth_allowance == 549
    assert under.standing["fixing_height"] == "M"
    assert (side.mount, side.width_less) == ("side", 26)
    assert side.fixing_height == side.drawer_rise + side.centre_height


@pytest.mark.parametrize("name", list(generic_slides()))
def test_a_generic_slide_has_its_first_place_alone(name: str) -> None:
    """37 from the front edge is the system's (common practice, no source); the others are each
    make's own: marked through the slide."""
    slide = generic_slides()[name]
    assert (slide.fixing_at, slide.carry_at) == ((37.0,), ())


@pytest.mark.parametrize("name", list(generic_hinges()))
def test_a_generic_hinge_lists_no_plates(name: str) -> None:
    """Which heights there are is the make's."""
    assert generic_hinges()[name].plates == ()


# 1 in = 25.4 mm exactly: NIST SP 811, Appendix B.
@pytest.mark.parametrize(
    ("name", "centers"),
    [("bar-96", 96), ("bar-480", 480), ("bar-3in", 76.2), ("bar-5in", 127), ("knob", None)],
)
def test_pull_centers(name: str, centers: float | None) -> None:
    """A bar's name says its hole centres; a knob has none."""
    assert generic_pulls()[name].centers == centers


def test_derive_marks_what_was_given() -> None:
    """A given number has the standing `user`, the others keep theirs; `like` names the origin."""
    mine = derive(generic_hinges()["cup35-full"], name="mine", given={"constant": 14.0})
    assert (mine.name, mine.like, mine.constant) == ("mine", "cup35-full", 14.0)
    assert mine.standing["constant"] == "user"
    assert mine.standing["cup_depth"] == "C"


def test_derive_inherits_no_confirmation() -> None:
    """A record like a confirmed one is another piece of hardware: it is not confirmed."""
    mine = derive(generic_hinges()["cup35-full"], name="a", given={"confirmed": SURE})
    assert mine.confirmed == SURE
    assert "confirmed" not in mine.standing
    assert derive(mine, name="b", given={}).confirmed == {}


def test_derive_shortens_a_slide() -> None:
    """A slide derived with a lesser length loses the places it does not reach, if inherited."""
    long = replace(
        generic_slides()["undermount-533"], fixing_at=(37.0, 165.0), carry_at=(261.0, 357.0)
    )
    assert derive(long, name="s", given={"length": 300.0}).carry_at == (261,)
    kept = derive(long, name="s", given={"length": 300.0, "carry_at": (290.0,)})
    assert kept.carry_at == (290,)


def test_derive_keeps_a_side_mount_on_its_centre_line() -> None:
    """The hole line of a side mount follows its rise and its centre line."""
    slide = derive(generic_slides()["sidemount-500"], name="s", given={"centre_height": 22.0})
    assert slide.fixing_height == 15 + 22


# OV = C0 + K - Hp: common practice, no source.
@pytest.mark.parametrize(
    ("tab", "plate", "overlay", "constant"),
    [(5, 0, 20, 15), (5, 3, 17, 15), (5, 3, 7.5, 5.5), (5, 3, -2, -4)],
)
def test_solve_constant(tab: float, plate: float, overlay: float, constant: float) -> None:
    """One cell of the leaflet's table fixes the constant."""
    assert solve_constant(tab=tab, plate=plate, overlay=overlay) == constant
