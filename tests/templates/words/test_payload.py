"""The QR text: dense, short, the ID first, and nothing a telephone takes for a link."""

import re
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from jigs.box.parts import Layout
from jigs.given.job import FrontSpec
from jigs.ground.problems import error
from templates.words.payload import LONGEST, drawer_box_payload, front_payload, side_payload, spell
from tests.jigs.sample import box, lay

GIVEN = (
    FrontSpec(id="B3-1", kind="drawer", height=152.4),
    FrontSpec(id="B3-2", kind="door", height=613.0, hinged="left"),
)


def every(layout: Layout) -> list[tuple[str, str]]:
    """Give each part's ID with its text."""
    found = [(front.id, front_payload(layout, front).text) for front in layout.fronts]
    found += [
        (front.drawer.id, drawer_box_payload(layout, front.drawer, front).text)
        for front in layout.fronts
        if front.drawer is not None
    ]
    return found + [(side.board, side_payload(layout, side).text) for side in layout.sides]


def test_a_doors_text_is_that_of_the_worked_example() -> None:
    """`B3-2 DOOR HINGES LEFT / NORTH BOX B3 / BELOW B3-1 / 454X613 / BACK: 2 CUPS`, and the
    code where there is room."""
    texts = dict(every(lay(box(*GIVEN, name="B3", wall="North wall"))))
    assert texts["B3-2"].startswith(
        "B3-2 DOOR HINGES LEFT / NORTH BOX B3 / BELOW B3-1 / 454X613 / BACK: 2 CUPS / CODE "
    )
    assert texts["B3-1"].startswith("B3-1 DRAWER FRONT / NORTH BOX B3 / ABOVE B3-2 / 454X152.4")
    assert texts["B3-1-BOX"].startswith("B3-1-BOX DRAWER BOX / NORTH BOX B3 / BEHIND B3-1 / ")


def test_a_sides_text_is_that_of_the_worked_example() -> None:
    """`B1-SIDE-L LEFT SIDE BOX B1 / NORTH / THIS FACE OUT / HOLES INSIDE / 4 SLIDES / CODE ...`"""
    layout = lay(box(*(FrontSpec(id=f"B1-{n}", kind="drawer") for n in range(1, 5))))
    text = dict(every(layout))["B1-SIDE-L"]
    assert re.fullmatch(
        "B1-SIDE-L LEFT SIDE BOX B1 / NORTH / THIS FACE OUT / HOLES INSIDE / 4 SLIDES / "
        "CODE [A-Z0-9]{4}",
        text,
    )


def test_a_held_part_says_hold_after_its_kind_and_has_no_code() -> None:
    """Who scans it knows at once that it is not to be drilled."""
    layout = lay(box(FrontSpec(id="B7-1", kind="door"), name="B7"))
    assert layout.fronts[0].withheld
    text = front_payload(layout, layout.fronts[0]).text
    assert text.startswith("B7-1 DOOR HOLD / ")
    assert "CODE" not in text


@pytest.mark.parametrize(
    ("name", "spelt"),
    [
        ("Südwand", "SUDWAND"),
        ("Łódź/straße", "LODZ STRASSE"),
        ("www.galley.example", "WWW GALLEY EXAMPLE"),
        ("Кухня", ""),
        ("wall: 2", "WALL 2"),
    ],
)
def test_names_are_spelt_in_the_dense_alphabet(name: str, spelt: str) -> None:
    """Accents go, other scripts vanish, dots and colons become spaces."""
    assert spell(name) == spelt


@given(
    st.from_regex(r"[A-Z][A-Z0-9-]{0,8}", fullmatch=True),
    st.text(max_size=40),
    st.booleans(),
)
@settings(max_examples=40, deadline=None)
def test_every_text_keeps_the_rules(name: str, wall: str, held: bool) -> None:
    """Dense alphabet, 90 characters, the ID alone in front, no dot between letters."""
    layout = lay(
        box(
            FrontSpec(id=f"{name}-DRAWER", kind="drawer", height=152.4),
            FrontSpec(id=f"{name}-2L", kind="door", hinged="right"),
            name=name,
            wall=wall,
        )
    )
    if held:
        why = (error("overlay", None, "no plate reaches it", "x"),)
        fronts = tuple(replace(front, held=why, fittings=()) for front in layout.fronts)
        layout = replace(layout, fronts=fronts)
    for part, text in every(layout):
        assert re.fullmatch(r"[0-9A-Z $%*+\-./:]+", text)
        assert len(text) <= LONGEST
        assert text.startswith(f"{part} ")
        assert not re.search(r"[A-Z]\.[A-Z]", text)
