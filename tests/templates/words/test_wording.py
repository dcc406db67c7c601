"""The words on sheets and cards."""

from dataclasses import replace

import pytest

from templates.faces.reference import Reference
from templates.words.facewords import index_words
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
    """Whole inches first in inch jobs; on a side's page also above the bottom panel."""
    view = only_cards("B1-SIDE-L", "inside")[0].view
    line = Reference(axis="y", kind="index", edge="bottom", value=value, at=value, inward=1)
    assert index_words(view, line) == words
    over = f" = {value - 18.3:.1f} over panel"
    assert over in " ".join(own_words(view, [line]))
    loose = replace(view, state=replace(view.state, panel=None))
    assert "panel" not in " ".join(own_words(loose, [line]))
