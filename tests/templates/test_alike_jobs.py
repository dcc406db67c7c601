"""Sets of sheets of whole jobs: what holds for whatever a kitchen has."""

import json
from collections import Counter
from typing import Any

import pytest
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st

from jigs.box.parts import Layout
from jigs.given.job import FrontSpec, Job
from jigs.ground.geometry import collect_holes
from jigs.layout.layout import lay_out
from templates.binding.jobsheets import make_sheets
from templates.binding.sheetdata import sheets_json
from templates.faces.faceview import FaceView
from templates.page.paper import PAPERS, Paper
from templates.words.facewords import drilled_words
from templates.writers.pdf import write_pdf
from tests.carddata import same_numbers
from tests.cardreading import faults_on_paper
from tests.clashes import clashes_of_marks
from tests.jigs.sample import box, lay
from tests.jobs import jobs, papers, renamed, repeated
from tests.readback import read_pages
from tests.templates.twins import BASE, sheets

few, many = (
    settings(
        max_examples=count,
        deadline=None,
        derandomize=True,
        phases=(Phase.generate,),  # to shrink a job of many boxes takes minutes
        suppress_health_check=[HealthCheck.too_slow],
    )
    for count in (2, 6)
)
times = st.sampled_from((2, 3, 11))
few_times = st.sampled_from((2, 3))


def on_part(card: dict[str, Any]) -> dict[str, Any]:
    """Give a card of the data without its names and page, its places counted from its face."""
    x, y = card["origin_mm"]

    return {
        "face": card["face"],
        "edges": [
            [e["edge"], e["at_mm"] - (x if e["edge"] in ("left", "right") else y)]
            for e in card["edges"]
        ],
        "index": [[i["from"], i["value_mm"]] for i in card["index"]],
        "ladder": card["ladder"]["at_mm"] - y if "ladder" in card else None,
        "side": card.get("side"),
        "holes": [
            [h["purpose"], h["x_mm"] - x, h["y_mm"] - y, h["diameter_mm"]] for h in card["holes"]
        ],
    }


def drilled_in(layout: Layout, part: str, view: FaceView) -> frozenset[tuple[float, ...]]:
    """The holes that the layout has in a face of a part, to 0.0001 mm."""
    fittings = [f for front in layout.fronts if front.id == part for f in front.fittings]
    for drawer in (front.drawer for front in layout.fronts):
        if drawer is not None and drawer.id == part:
            fittings += (*drawer.fittings, *drawer.rear)
    fittings += [f for each in layout.rollouts if each.id == part for f in each.rear]
    for side in layout.sides:
        if side.board == part and (view.column is None or side.column == view.column):
            fittings += side.fittings
    return frozenset(
        (round(h.x, 4), round(h.y, 4), h.diameter, h.depth or 0.0)
        for h in collect_holes(fittings)
        if h.face == view.face or view.face == "inside"
    )


@pytest.mark.slow
@given(jobs(most_boxes=1), times)
@few
def test_the_parts_of_a_set_have_the_same_cards_and_holes(job: Job, times: int) -> None:
    """Apart, each of them has the very cards of the set, but for its ID; and of each the layout
    has the same holes in this face."""
    layout = lay_out(repeated(job, times))
    apart: dict[tuple[str, str], list[dict[str, Any]]] = {}
    for card in json.loads(sheets_json(make_sheets(layout, PAPERS["a3"])))["cards"]:
        apart.setdefault((card["part"], card["face"]), []).append(on_part(card))
    shared = json.loads(sheets_json(sheets(layout, PAPERS["a3"])))["cards"]
    kept = [tuple(card.get("parts", [card["part"]])) for card in shared]
    assert {part for parts in kept for part in parts} == {part for part, _ in apart}
    for card in shared:
        for part in card.get("parts", ()):
            assert any(same_numbers(on_part(card), own) for own in apart[part, card["face"]])
    for batch in sheets(layout)._batches(True):
        assert len({drilled_in(layout, part, batch.views[0]) for _, part in batch.parts}) == 1


@pytest.mark.slow
@given(jobs(most_boxes=2), times, papers)
@many
def test_every_hole_stands_in_exactly_one_set_of_many_jobs(
    job: Job, times: int, paper: Paper
) -> None:
    """Read from paper, page for page, for each part whose box is there to tick; no text touches
    anything; and the summary counts the pages that there are."""
    check_sets(lay_out(repeated(job, times)), paper)


def check_sets(layout: Layout, paper: Paper) -> None:
    drawn = list(sheets(layout, paper))
    for number, sheet in enumerate(drawn, start=1):
        assert clashes_of_marks(sheet.page) == [], f"page {number}, {sheet.part}"
    pages = read_pages(write_pdf(sheet.page for sheet in drawn))
    assert faults_on_paper(pages, layout) == []
    apart = make_sheets(layout, paper)
    counts: dict[str, int] = {}
    for sheet in apart:
        counts[sheet.page.entry] = counts.get(sheet.page.entry, 0) + 1
    assert apart.count() == sum(counts.values())
    assert apart.count_other(counts) == apart.count_other() == len(drawn)
    assert len(drawn) <= sum(counts.values())
    shared: dict[str, int] = {}
    for sheet in drawn:
        shared[sheet.page.entry] = shared.get(sheet.page.entry, 0) + 1
    assert sheets(layout, paper).count_other(shared) == sum(counts.values())


def test_sets_stand_beside_small_parts_that_share_a_page() -> None:
    """With --tight too: a set keeps its own pages, each hole stands on one card, nothing touches
    anything."""
    drawers = (FrontSpec(id=f"B4-{row}", kind="drawer") for row in (1, 2, 3, 4))
    layout = lay(BASE, renamed(BASE, 1), box(*drawers, kind="drawer", name="B4"))
    tight = make_sheets(layout, PAPERS["a3"], same=True, tight=True)
    drawn = list(tight)
    assert len(drawn) == tight.count()
    assert len(drawn) < make_sheets(layout, PAPERS["a3"], same=True).count()
    assert all(clashes_of_marks(sheet.page) == [] for sheet in drawn)
    left = Counter(
        {(v.part, drilled_words(v)): len(collect_holes(v.fittings)) for v in tight.views}
    )
    for card in (placed.card for sheet in drawn for placed in sheet.cards):
        for part in card.view.served.parts or (card.view.part,):
            left[part, drilled_words(card.view)] -= len(card.holes)
    assert set(left.values()) == {0}
