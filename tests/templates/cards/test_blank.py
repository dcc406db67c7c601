"""Blanks: what is cut alike is laid out once."""

from collections.abc import Iterator
from typing import Any

import pytest
from hypothesis import given, settings
from msgspec.structs import replace

from jigs.box.parts import Layout
from jigs.given.job import Job
from jigs.layout.layout import lay_out
from templates.binding.jobsheets import make_sheets
from templates.cards.blank import Blanks
from templates.cards.card import Card, make_cards
from templates.cards.setout import choose_references
from templates.faces.faceview import BoardState
from templates.page.paper import PAPERS
from tests.jobs import jobs, renamed
from tests.templates.worked import only_cards

COMMON = PAPERS["common"]


def printed(layout: Layout) -> Iterator[Card]:
    """The cards of a job that are planned when they are drawn."""
    for each in (True, False):
        for _, placed in make_sheets(layout, COMMON, each=each).cards:
            if placed.card.seat is not None:
                yield placed.card


def check(layout: Layout) -> None:
    """Each card is cut as it comes out when it is planned by itself, though another part's may
    have been laid out for it."""
    for card in printed(layout):
        plan = card.plan
        assert card.box == pytest.approx(plan.box, abs=1e-5), card.parts
        assert card.crowded == (plan.shortage > 0.0), card.parts
        assert (card.ladder is None) == (plan.ladder_v is None), card.parts
        if card.ladder is not None:
            assert card.ladder == pytest.approx(card.view.height, abs=1e-5)


def together(jobs: list[Job]) -> Job:
    """The boxes of several jobs, in the first of them."""
    boxes = (renamed(box, n) for n, each in enumerate(jobs) for box in each.boxes)
    return replace(jobs[0], boxes=tuple(boxes))


@given(jobs(most_boxes=2), jobs(most_boxes=2))
@settings(max_examples=2)
def test_cards_come_out_as_their_blanks_say(first: Job, second: Job) -> None:
    """In a job of many boxes, which know nothing of each other."""
    check(lay_out(together([first, second])))


@pytest.mark.slow
@given(jobs(), jobs())
@settings(max_examples=20)
def test_cards_of_many_jobs_come_out_as_their_blanks_say(first: Job, second: Job) -> None:
    """The same, at length."""
    check(lay_out(together([first, second])))


WORDS = "Push the bumper in before the door is hung, and try it. " * 3
VIEWS: tuple[dict[str, Any], ...] = (
    {"thickness": 1000.5},
    {"rounded": True},
    {"ladder": True},
    {"height": 1500.0},
    {"hinge_edge": "left"},
    {"hinge_edge": None},
    {"front_edge": "right"},
    {"face": "box-back"},
    {"state": BoardState(panel=17.0)},
    {"state": BoardState(low=17.0, stand=True)},
    {"state": BoardState(band=1.0)},
    {"state": BoardState(band=1.0, raw=True)},
)
FITTINGS: tuple[dict[str, Any], ...] = (
    {"note": WORDS},
    {"spacer": 6.0},
    {"carry": (150.0, 250.0, 350.0)},
    {"outline": ()},
    {"index": 2, "count": 2},
    {"kind": "manual"},
    {"kind": "manual", "stated_from": "top"},
)
HOLES: tuple[dict[str, Any], ...] = (
    {"purpose": "manual"},
    {"diameter": 60.0},
    {"depth": None},
    {"depth": 111.5},
)


@pytest.mark.parametrize(("part", "face"), [("B3-2", "back"), ("B3-2", "front"),
                                            ("B1-SIDE-L", "inside")])  # fmt: skip
def test_what_changes_a_card_makes_another_blank(part: str, face: str) -> None:
    """Whatever else is laid out already, a card is cut as if it were the first."""
    blanks = Blanks()
    for card in only_cards(part, face):
        view, fitting = card.view, card.fitting
        others = [replace(fitting, **change) for change in FITTINGS]
        others += [
            replace(fitting, holes=tuple(replace(hole, **change) for hole in fitting.holes))
            for change in HOLES
        ]
        changed = [(replace(view, **change), fitting) for change in VIEWS]
        changed += [(replace(view, fittings=(other,)), other) for other in others]
        assert card.seat is not None
        for each in [(view, fitting), *changed]:
            for pair in ((card.seat.across, card.seat.up), choose_references(*each)):
                for with_ladder in (True, False):
                    alone = Blanks().find(*each, *pair, with_ladder=with_ladder)
                    assert blanks.find(*each, *pair, with_ladder=with_ladder) == alone


def test_cards_that_are_set_alike_are_laid_out_once() -> None:
    """A door 100 mm wider, whose hinges stand as before: not one blank more; hinges 3 mm further
    in: others."""
    view = only_cards("B3-2", "back")[0].view
    blanks = Blanks()
    made = make_cards(view, ((1000.0, 1000.0),), blanks)
    laid = len(blanks)
    assert laid == len(made)
    for by, more in ((100.0, 0), (103.0, laid)):
        moved = [
            replace(fitting, holes=tuple(replace(h, x=h.x + by) for h in fitting.holes), outline=())
            for fitting in view.fittings
        ]
        bare = [replace(fitting, outline=()) for fitting in view.fittings]
        blanks = Blanks()
        make_cards(replace(view, fittings=tuple(bare)), ((1000.0, 1000.0),), blanks)
        wider = replace(view, width=view.width + 100.0, fittings=tuple(moved))
        make_cards(wider, ((1000.0, 1000.0),), blanks)
        assert len(blanks) == laid + more, by
