"""Fronts that are held back: hatched, and named where they are too low for words."""

import pytest

from jigs.given.job import FrontSpec
from templates.elevations.elevation import Drawn, draw_elevations
from templates.page.marks import Line, Outline, Text
from templates.page.paper import PAPERS
from templates.page.typeface import text_box
from tests.clashes import clashes_of_marks
from tests.jigs.sample import box, lay


def test_a_held_front_says_hold() -> None:
    """It is drawn all the same, hatched, and listed in the notes."""
    [drawn] = draw_elevations(lay(box(FrontSpec(id="B1-1", kind="door"))), PAPERS["common"])
    words = [m.text for m in drawn.page.marks if isinstance(m, Text)]
    assert "HOLD" in words
    assert any(word.startswith("HOLD, hatched: B1-1:") for word in words)
    assert len(held_lines(drawn)) > 10


def held_lines(drawn: Drawn) -> list[Line]:
    return [mark for mark in drawn.page.marks if isinstance(mark, Line) and mark.layer == "held"]


def test_a_held_front_too_low_for_words_is_named_beside_it() -> None:
    """1.2 mm high at 1:50; the leader's line begins at its words and ends within the front."""
    low = box(FrontSpec(id="B1-1", kind="drawer", height=60.0),
              FrontSpec(id="B1-2", kind="drawer"), name="B1", width=1200.0)  # fmt: skip
    wide = [box(name=f"B{k}", width=1500.0) for k in range(2, 6)]
    [drawn] = draw_elevations(lay(low, *wide), PAPERS["common"])
    [front] = [m for m in drawn.page.marks if isinstance(m, Outline) and m.name == "B1-1"]
    (x0, y0), _, (x1, y1), _ = front.points
    assert y1 - y0 == pytest.approx(60 / drawn.reduction)
    [named] = [m for m in drawn.page.marks if isinstance(m, Text) and m.text == "B1-1 HOLD"]
    words = text_box(named)
    ends = [
        line for line in held_lines(drawn)
        if x0 < line.x2 < x1 and line.y2 == pytest.approx((y0 + y1) / 2)
        and words[0] - 1 < line.x1 < words[2] + 1 and words[1] - 1 < line.y1 < words[3] + 1
    ]  # fmt: skip
    assert len(ends) == 1
    assert clashes_of_marks(drawn.page) == []
