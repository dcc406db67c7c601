"""The words of fittings, and of their cards."""

import pytest
from msgspec.structs import replace

from jigs.ground.geometry import Fitting
from templates.faces.faceview import FaceView
from templates.words.cardwords import ordinal_place
from templates.words.fittingwords import card_lines, fitting_heading
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


@pytest.mark.parametrize(
    ("part", "face", "heading", "words"),
    [
        ("B3-2", "back", "BOTTOM HINGE", "LAY YOUR HINGE HERE"),
        ("B3-2", "front", "PULL", "LAY YOUR PULL HERE: 160.0"),
        ("B1-4", "back", "LEFT END, FROM BEHIND", "DRAWER BOX: its LEFT LOWER CORNER stands"),
        ("B3-1-BOX", "box-front", "LEFT END", "Clearance: 5 dia, THROUGH"),
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
    assert words in " ".join(card_lines(card.view, card.fitting))


def test_without_its_outline_nothing_is_laid_on() -> None:
    """A part of a fitting shows no hinge to lay on it."""
    card = only_cards("B3-2", "back")[0]
    bare = replace(card.fitting, outline=())
    assert "LAY YOUR" not in " ".join(card_lines(card.view, bare))


def test_a_slide_says_that_it_sits_on_a_spacer() -> None:
    """A rollout's, beside a door's hinges."""
    card = only_cards("B1-SIDE-L", "inside")[0]
    for spacer, words in ((20.0, "ON A SPACER of 20."), (12.5, "ON A SPACER of 12.5.")):
        assert card_lines(card.view, replace(card.fitting, spacer=spacer))[-1] == words
    assert "SPACER" not in " ".join(card_lines(card.view, card.fitting))


@pytest.mark.parametrize("side", ["B1-SIDE-L", "B1-SIDE-R"])
def test_a_slide_names_the_places_that_are_not_on_paper(side: str) -> None:
    """261 from the front edge on either side, carried back with a square."""
    card = only_cards(side, "inside")[0]
    words = " ".join(card_lines(card.view, card.fitting))
    assert "261: carry the line back" in words


def test_a_slide_of_which_one_place_is_known_marks_the_others() -> None:
    """No place that only a leaflet has is printed: the line is, and the slide is the template."""
    card = only_cards("B1-SIDE-L", "inside")[0]
    one = replace(card.fitting, holes=card.fitting.holes[:1], carry=())
    words = " ".join(card_lines(card.view, one))
    assert "The others: mark through the slide, on this line." in words
    assert "from the front edge:" not in words


def _heading(view: FaceView, fitting: Fitting, **changes: int) -> str:
    return fitting_heading(view, replace(fitting, **changes))


def test_two_pulls_are_left_and_right() -> None:
    """A knob is called a knob."""
    card = only_cards("B3-1", "front")[0]
    assert _heading(card.view, card.fitting, index=1, count=2) == "LEFT PULL"
    assert _heading(card.view, card.fitting, index=2, count=2) == "RIGHT PULL"
    knob = replace(card.fitting, holes=card.holes[:1])
    assert fitting_heading(replace(card.view, fittings=(knob,)), knob) == "KNOB"
