"""The words on sheets and cards."""

import pytest

from templates.faces.reference import Reference
from templates.words.facewords import index_words, reference_words
from templates.words.ownwords import own_words
from tests.templates.worked import only_cards


@pytest.mark.parametrize(
    ("value", "words"),
    [
        (254.0, "SET THIS EDGE 10 in (254.0) FROM BOTTOM END"),
        (250.0, "SET THIS EDGE 250.0 (9 27/32 in) FROM BOTTOM END"),
    ],
)
def test_an_index_line_is_named_by_a_figure_that_a_tape_shows(value: float, words: str) -> None:
    """Whole inches first in inch jobs; its holes' figures say how high over the panel they are."""
    view = only_cards("B1-SIDE-L", "inside")[0].view
    line = Reference(axis="y", kind="index", edge="bottom", value=value, at=value, inward=1)
    assert index_words(view, line) == words
    assert f"STRIKE from BOTTOM END: {reference_words(line)}." in own_words(view, [line])
