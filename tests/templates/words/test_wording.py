"""The words on sheets and cards."""

from dataclasses import replace

import pytest

from jigs.ground.geometry import Fitting, Hole
from templates.faces.faceview import FaceView
from templates.faces.reference import Reference
from templates.words.wording import (
    bore_words,
    card_lines,
    fitting_heading,
    index_words,
    operations,
    ordinal_place,
)
from tests.templates.worked import only_cards


@pytest.mark.parametrize(
    ("index", "count", "words"),
    [
        (1, 1, ""),
        (1, 2, "BOTTOM"),
        (2, 2, "TOP"),
        (2, 3, "2 OF 3"),
        (3, 3, "TOP"),
    ],
)
def test_hinges_are_named_by_their_place(index: int, count: int, words: str) -> None:
    """Counted from the bottom."""
    assert ordinal_place(index, count) == words


def test_an_operation_says_what_is_left() -> None:
    """One line each: 19.05 - 13 leaves 6.05, written 6.0 or 6.1."""
    cup = Hole(purpose="cup", face="back", x=22.5, y=97.75, diameter=35.0, depth=13.0)
    words = bore_words(cup, 19.05)
    assert words.startswith("35 dia, 13 deep, BLIND, leaves 6")
    assert bore_words(replace(cup, diameter=5.0, depth=None), 19.05) == "5 dia, THROUGH"


def test_each_kind_of_hole_is_said_once_with_its_number() -> None:
    """Two fixings alike are one line."""
    card = only_cards("B3-2", "back")[0]
    lines = operations(card.holes, 19.05)
    assert [line.split(":")[0] for line in lines] == ["Cup", "Fixing, 2 holes"]


@pytest.mark.parametrize(
    ("part", "face", "heading", "words"),
    [
        ("B3-2", "back", "BOTTOM HINGE", "LAY YOUR HINGE HERE"),
        ("B3-2", "front", "PULL", "LAY YOUR PULL HERE: 160.0"),
        ("B3-1", "back", "LEFT END AS YOU LOOK AT THE BACK", "DRAWER BOX STANDS HERE"),
        ("B3-1-BOX", "box-front", "LEFT END", "Clearance, 2 holes: 5 dia, THROUGH"),
        ("B1-SIDE-L", "inside", "SLIDE of B1-4", "LAY YOUR SLIDE HERE"),
        ("B3-SIDE-L", "inside", "BOTTOM PLATE for B3-2", "LAY YOUR PLATE HERE"),
    ],
)
def test_a_card_is_named_by_its_fitting_and_asks_for_the_hardware(
    part: str, face: str, heading: str, words: str
) -> None:
    """Whoever lays it on unmasks a wrong pattern before the awl."""
    cards = only_cards(part, face)
    (card,) = [card for card in cards if fitting_heading(card.view, card.fitting) == heading]
    reference = (*card.edges, *card.index)[-1]
    assert words in " ".join(card_lines(card.view, card.fitting, reference))


def test_without_its_outline_nothing_is_laid_on() -> None:
    """A part of a fitting shows no hinge to lay on it."""
    card = only_cards("B3-2", "back")[0]
    bare = replace(card.fitting, outline=())
    assert "LAY YOUR" not in " ".join(card_lines(card.view, bare, card.edges[0]))


@pytest.mark.parametrize("side", ["B1-SIDE-L", "B1-SIDE-R"])
def test_a_slide_names_the_places_that_are_not_on_paper(side: str) -> None:
    """261 from the front edge on either side, carried back with a square."""
    card = only_cards(side, "inside")[0]
    words = " ".join(card_lines(card.view, card.fitting, card.edges[-1]))
    assert "261 from the front edge: carry this line back with a square" in words


def _heading(view: FaceView, fitting: Fitting, **changes: int) -> str:
    return fitting_heading(view, replace(fitting, **changes))  # type: ignore[arg-type]


def test_two_pulls_are_left_and_right() -> None:
    """A knob is called a knob."""
    card = only_cards("B3-1", "front")[0]
    assert _heading(card.view, card.fitting, index=1, count=2) == "LEFT PULL"
    assert _heading(card.view, card.fitting, index=2, count=2) == "RIGHT PULL"
    knob = replace(card.fitting, holes=card.holes[:1])
    assert fitting_heading(replace(card.view, fittings=(knob,)), knob) == "KNOB"


@pytest.mark.parametrize(
    ("value", "words"),
    [
        (254.0, "SET THIS EDGE ON A LINE 10 in (254.0) FROM THE BOTTOM END"),
        (250.0, "SET THIS EDGE ON A LINE 250.0 (9 27/32 in) FROM THE BOTTOM END"),
    ],
)
def test_an_index_line_is_named_by_a_figure_that_a_tape_shows(value: float, words: str) -> None:
    """Whole inches first in inch jobs; on a side also above the bottom panel."""
    view = only_cards("B1-SIDE-L", "inside")[0].view
    line = Reference(axis="y", kind="index", edge="bottom", value=value, at=value, inward=1)
    found = index_words(view, line)
    assert found.startswith(words)
    assert f"{value - 18.3:.1f}" in found
    assert "panel" in found
    assert index_words(replace(view, panel=None), line) == words
