"""Figures and words on a card."""

import pytest

from jigs.ground.geometry import Hole
from templates.cards.lettering import Label, axis_label, block, hole_note
from templates.faces.reference import Reference
from templates.page.marks import Text
from templates.page.typeface import text_box, text_width
from tests.templates.worked import only_cards

EDGE = Reference(axis="x", kind="edge", edge="left", value=0.0, at=0.0, inward=1)
INDEX = Reference(axis="y", kind="index", edge="bottom", value=254.0, at=254.0, inward=1)
MIDDLE = Reference(axis="x", kind="middle", edge="left", value=227.0, at=227.0, inward=1)


def label(
    reference: Reference, distance: float, *, panel: float | None = None, band: float = 0.0
) -> Label:
    return axis_label(reference, distance, edge_name="BOTTOM END", panel=panel, band=band)


def test_a_distance_is_large_in_mm_and_small_in_inches() -> None:
    """Each says what it is measured from."""
    found = label(EDGE, 22.5)
    assert found.mm == "22.5"
    assert found.inches.startswith("7/8+")  # 22.225, and over 0.1 more
    assert found.small == ("from bottom end",)


def test_on_an_index_line_both_distances_are_written() -> None:
    """Third slide of the worked example: 275.3 from the bottom end, 21.3 above 10 in."""
    found = label(INDEX, 275.3 - 254.0)
    assert found.mm == "275.3"
    assert "21.3 from line" in found.small


def test_from_the_middle_no_end_is_written() -> None:
    """Pull holes 80 left and right of it, on a front of any width: the sum beside the card has the
    distances from its own ends."""
    left, right = label(MIDDLE, -80.0), label(MIDDLE, 80.0)
    assert (left.mm, right.mm) == ("80.0", "80.0")
    assert left.small == right.small == ("from middle",)


def test_a_side_is_measured_from_raw_edge_and_panel_too() -> None:
    """36.4 for 37.0 with a band of 0.6 to come; 51.3 is 51.3 - 18.3 = 33.0 over the bottom
    panel (derived)."""
    across = label(EDGE, 37.0, band=0.6)
    assert [line for line in across.small if line.startswith("36.4") and "raw edge" in line]
    up = label(EDGE, 51.3, panel=18.3)
    assert [line for line in up.small if line.startswith("33.0") and "panel" in line]
    assert not [line for line in label(EDGE, 37.0).small if "raw" in line or "panel" in line]


def test_a_label_keeps_within_its_size() -> None:
    """Width and height hold all its letters, upright or turned."""
    found = label(INDEX, 21.3, panel=18.3)
    for mark in found.marks(10.0, 50.0):
        assert isinstance(mark, Text)
        x0, y0, x1, y1 = text_box(mark)
        assert x0 >= 10.0
        assert x1 <= 10.0 + found.width + 1e-9
        assert y0 >= 50.0 - found.height - 0.1
        assert y1 <= 50.0 + 1e-9
    texts = [mark for mark in found.turned_marks(10.0, 50.0) if isinstance(mark, Text)]
    assert {mark.angle for mark in texts} == {90}
    length = text_width(found.mm, 3.5, True) + 1.2 + text_width(found.inches, 2.5)
    assert text_box(texts[-1])[3] == pytest.approx(50.0 + length)


@pytest.mark.parametrize(
    ("diameter", "depth", "words"),
    [
        (35.0, 13.0, "35 dia, 13 deep"),
        (2.5, 11.0, "2.5 dia, 11 deep"),
        (5.0, None, "5 dia, THROUGH"),
    ],
)
def test_a_hole_says_its_diameter_and_depth(
    diameter: float, depth: float | None, words: str
) -> None:
    """Blind or through."""
    hole = Hole(purpose="cup", face="back", x=0.0, y=0.0, diameter=diameter, depth=depth)
    assert hole_note(hole) == words


@pytest.mark.parametrize("width", [65.0, 100.0, 140.0, 220.0])
@pytest.mark.parametrize("with_bar", [True, False])
def test_a_heading_keeps_within_its_size(width: float, with_bar: bool) -> None:
    """Part, fitting, face, number and code are always there."""
    card = only_cards("B3-2", "back")[0]
    words = ("Cup: 35 dia, 13 deep, BLIND, leaves 6.1.", "LAY YOUR HINGE HERE: " + 9 * "it fits ")
    heading = block(card.view, "BOTTOM HINGE", words, width, with_bar=with_bar)
    texts = [mark for mark in heading.marks(0.0, 0.0, 7) if isinstance(mark, Text)]
    for text in texts:
        x0, y0, x1, y1 = text_box(text)
        assert x0 >= 0.0
        assert x1 <= width + 1e-9
        assert y0 >= -heading.height - 0.1
        assert y1 <= 0.35
    joined = " ".join(text.text for text in texts)
    for piece in ("B3-2", "BOTTOM HINGE", "BACK OF DOOR", f"card 7, code {card.view.code}", "UP"):
        assert piece in joined
    assert ("50.0" in [text.text for text in texts]) is with_bar
