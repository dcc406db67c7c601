"""The words of holes."""

from typing import get_args

from msgspec.structs import replace

from jigs.ground.geometry import Hole, Purpose
from templates.words.holewords import HOLE_WORDS, bore_words, operations
from tests.templates.worked import only_cards


def test_every_operation_has_its_short_caution() -> None:
    """One for each purpose of a hole: a sentence short enough for a line of a sheet."""
    purposes: tuple[Purpose, ...] = get_args(Purpose)
    assert set(HOLE_WORDS) == set(purposes)
    for words in (HOLE_WORDS[purpose] for purpose in purposes):
        assert words.caution.endswith(".")
        assert len(words.caution) <= 80


def test_an_operation_says_what_is_left() -> None:
    """One line each: 19.05 - 13 leaves 6.05, written 6.0 or 6.1."""
    cup = Hole(purpose="cup", face="back", x=22.5, y=97.75, diameter=35.0, depth=13.0)
    words = bore_words(cup, 19.05)
    assert words.startswith("35 dia, 13 deep, BLIND, leaves 6")
    assert bore_words(replace(cup, diameter=5.0, depth=None), 19.05) == "5 dia, THROUGH"


def test_each_kind_of_hole_is_said_once() -> None:
    """Two fixings alike are one line."""
    card = only_cards("B3-2", "back")[0]
    lines = operations(card.holes, 19.05)
    assert [line.split(":")[0] for line in lines] == ["Cup", "Fixing"]
