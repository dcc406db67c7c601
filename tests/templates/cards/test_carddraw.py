"""A card drawn: what stands on it keeps clear of what else does."""

import pytest

from jigs.box.parts import Layout
from templates.binding.jobsheets import make_sheets
from templates.cards.card import Card
from templates.page.marks import Line
from templates.page.paper import PAPERS
from templates.page.space import segment_meets
from tests.templates.lists.test_holelist import boxes_layout
from tests.templates.printed import laid_out
from tests.uneven import PLAIN, UNEVEN


def struck(card: Card) -> list[Line]:
    """Give the dashed lines that come to a card's bar of 50, the ticks at its ends included."""
    lines = [mark for mark in card.marks if isinstance(mark, Line)]
    (bar,) = (
        line
        for line in lines
        if line.y1 == line.y2 and abs(line.x2 - line.x1 - 50.0) < 1e-6 and line.width == 0.25
    )
    box = (bar.x1, bar.y1 - 1.2, bar.x2, bar.y1 + 1.2)
    return [
        line
        for line in lines
        if line.dash and segment_meets(line.x1, line.y1, line.x2, line.y2, box, 0.5)
    ]


@pytest.mark.parametrize("layout", [laid_out(PLAIN), laid_out(UNEVEN), boxes_layout()])
def test_no_outline_runs_through_the_bar(layout: Layout) -> None:
    """The side of a drawer box, on the card of its front's screws and on that of its hooks, and
    an axis end beside the bar: it is laid against a rule, and nothing else may look like it."""
    cards = [placed.card for _, placed in make_sheets(layout, PAPERS["common"]).cards]
    assert len(cards) > 5
    assert {card.view.part: struck(card) for card in cards if struck(card)} == {}
