"""Cards for the rear hooks of a drawer box, read back from paper and as data."""

import json

import pytest
from msgspec.structs import replace

from jigs.box.parts import Layout
from jigs.given.job import FrontSpec
from jigs.given.stated import RolloutSpec
from jigs.ground.lengths import Unit
from jigs.layout.layout import lay_out
from templates.binding.drilled import drilled_parts
from templates.binding.jobsheets import make_sheets
from templates.binding.sheetdata import sheets_json
from templates.cards.outlines import outline_page
from templates.page.paper import PAPERS
from templates.writers.pdf import write_pdf
from tests.carddata import faults_in_data
from tests.cardreading import faults_on_paper
from tests.cardwords import faults_in_words
from tests.clashes import clashes_of_print
from tests.jigs.fittings.test_hooks import HOOKED
from tests.jigs.sample import box, job
from tests.readback import read_pages
from tests.templates.drawnonce import draw_once

DRAWER = FrontSpec(id="B1-1", kind="drawer", height=152.4)
DOOR = FrontSpec(id="B2-1", kind="door", hinged="left")


def _layout(units: Unit = "in") -> Layout:
    rolling = replace(box(DOOR, name="B2"), rollouts=(RolloutSpec(at=200.0, height=120.0),))
    boxes = (box(DRAWER, FrontSpec(id="B1-2", kind="drawer"), kind="drawer"), rolling)
    return lay_out(job(*boxes, slide=HOOKED, units=units))


@pytest.mark.parametrize("paper", ["common", "a3"])
@pytest.mark.parametrize("units", ["in", "mm"])
def test_every_hook_is_on_one_card(units: Unit, paper: str) -> None:
    """At its place, with its words, clear of all else; the same in the data."""
    layout = _layout(units)
    sheets = draw_once(make_sheets(layout, PAPERS[paper], only=("B1-1-BOX", "B2-ROLLOUT-1")))
    pages = read_pages(write_pdf(sheets.pages))
    alone = replace(
        layout,
        fronts=tuple(replace(f, fittings=()) for f in layout.fronts if f.id == "B1-1"),
        sides=(),
    )
    assert faults_on_paper(pages, alone) == []
    assert faults_in_data(pages, json.loads(sheets_json(sheets)), alone) == []
    assert faults_in_words(pages, alone) == []
    assert [clash for page in pages for clash in clashes_of_print(page)] == []
    text = " ".join(page.text for page in pages)
    assert text.count("DRILL THIS FACE: BACK OF DRAWER BOX") == 1
    assert "ALSO B2-ROLLOUT-1, code" in text
    assert "NOTCH 38.0 × 13.0 high" in " ".join(text.split())


def test_a_hook_drawn_without_turning_is_found() -> None:
    """The comparison can fail: holes that stand unlike left and right, as from the room."""
    layout = _layout()
    (front,) = [front for front in layout.fronts if front.id == "B1-1"]
    assert front.drawer
    left, right = front.drawer.rear
    (hole,) = left.holes
    skew = (replace(left, holes=(replace(hole, x=hole.x + 5.0),)), right)
    moved = replace(front, fittings=(), drawer=replace(front.drawer, rear=skew))
    sheets = make_sheets(layout, PAPERS["common"], only=("B1-1-BOX",))
    pages = read_pages(write_pdf(sheets.pages))
    wrong = replace(layout, fronts=(moved,), sides=(), rollouts=())
    assert faults_on_paper(pages, wrong)
    # Turned over, the left hole of the room is the right one on paper.
    right_sheets = make_sheets(wrong, PAPERS["common"])
    assert faults_on_paper(read_pages(write_pdf(right_sheets.pages)), wrong) == []


def test_the_data_says_where_they_are() -> None:
    """24 above the underside; 15.9 + 8 from each end; each end's card lies on its own end."""
    sheets = make_sheets(_layout(), PAPERS["common"], only=("B1-1-BOX",))
    cards = [c for c in json.loads(sheets_json(sheets))["cards"] if c["face"] == "box-back"]
    assert [[edge["edge"] for edge in card["edges"]] for card in cards] == [
        ["left", "bottom"],
        ["right", "bottom"],
    ]
    for card, sign in zip(cards, (1, -1), strict=True):
        (hole,) = card["holes"]
        across, up = (edge["at_mm"] for edge in card["edges"])
        assert hole["purpose"] == "hook"
        assert hole["x_mm"] - across == pytest.approx(sign * (15.9 + 8.0), abs=2e-4)
        assert hole["y_mm"] - up == pytest.approx(24.0, abs=2e-4)


def test_the_bare_face_has_them() -> None:
    """For a router: outline and two holes, 6 wide and 10 deep."""
    (part,) = drilled_parts(_layout(), ("B1-1-BOX",))
    (view,) = [view for view in part.views if view.face == "box-back"]
    layers = [getattr(mark, "layer", "") for mark in outline_page(view).marks]
    assert layers.count("drill hook-6-10") == 2


def test_a_rollout_of_a_slide_without_hooks_has_no_sheet() -> None:
    """Its slides are on the sheets of the sides."""
    plain = replace(HOOKED, hook_diameter=None)
    rolling = replace(box(DOOR, name="B2"), rollouts=(RolloutSpec(at=200.0, height=120.0),))
    layout = lay_out(job(rolling, slide=plain))
    assert list(drilled_parts(layout, ("B2-ROLLOUT-1",))) == []
