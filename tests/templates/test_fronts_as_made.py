"""The sheets of fronts that are not plain slabs, read back from print."""

import json

import pytest

from templates.binding.jobsheets import make_sheets
from templates.binding.sheetdata import sheets_json
from templates.page.paper import PAPERS
from tests.carddata import faults_in_data
from tests.cardreading import faults_on_paper
from tests.cardwords import faults_in_words
from tests.clashes import clashes_of_print
from tests.jobtexts import box_text
from tests.readback import PrintedCard, PrintedPage
from tests.sheetholes import by_part
from tests.templates.printed import printed

FIVE_PIECE = (
    box_text("B1", "base", 'kind = "drawer"\nheight = 152.4\nstile = 57\nrail = 38',
             'kind = "door"\nhinged = "left"\nstile = 57')
    + box_text("B2", "wall", 'kind = "door"\nhinged = "right"\nstile = 57\nglass = true')
)  # fmt: skip

EDGES = (
    box_text("B1", "base", 'kind = "drawer"\nheight = 152.4\nedge_radius = 3',
             'kind = "door"\nhinged = "left"\nedge_radius = 3')
    + box_text("B2", "wall", 'kind = "door"\nhinged = "left"\nprofile = "finger-bevel"')
    + box_text("B3", "base", 'kind = "drawer"\nheight = 152.4\nprofile = "finger-bevel"',
               'kind = "door"\nhinged = "right"\nprofile = "finger-bevel"\npull = "bar"')
)  # fmt: skip

IN_HAND = (
    box_text("B1", "base", 'kind = "drawer"\nheight = 152.4\nmeasured_width = [454.8, 455.2]',
             'kind = "door"\nhinged = "right"\nmeasured_width = [453, 453.4]\n'
             'measured_height = [615.2, 615.6]')
)  # fmt: skip

DRAWERS = [f'kind = "drawer"\nheight = {height}' for height in (163.5, 188.8, 188.8, 220.8)]
ASSEMBLED = box_text("B1", "drawer", *DRAWERS, more="assembled = true")
FRONTS = ('kind = "drawer"\nheight = 152.4', 'kind = "door"\nhinged = "left"')
BANDED_LATER = box_text("B1", "base", *FRONTS, more='band = "later"')
ON_THE_FLOOR = (
    box_text("B1", "base", *FRONTS, more="legs = 101.6").replace("height = 774.7", "height = 876.3")
).replace("above_floor = 100\n", "")


@pytest.mark.parametrize(
    "boxes", [FIVE_PIECE, EDGES, IN_HAND, ASSEMBLED, BANDED_LATER, ON_THE_FLOOR]
)
def test_sheets_hold_every_hole_and_nothing_clashes(boxes: str) -> None:
    """Every hole in its true place, every figure written, no text on a text or a line."""
    layout, pages = printed(boxes)
    assert not any(front.withheld for front in layout.fronts)
    assert faults_on_paper(pages, layout) == []
    assert faults_in_words(pages, layout) == []
    assert [clash for page in pages for clash in clashes_of_print(page)] == []


def test_the_lines_of_stile_and_rail_are_dashed() -> None:
    """A dashed line runs 57 from the free edge on the card of the door's pull."""
    layout, pages = printed(FIVE_PIECE)
    text = " ".join(page.text for page in pages)
    assert "Five-piece: stiles 57.0, rails 57.0 (dashed), groove 11.0," in text
    assert "NO HOLE IN GLASS" in text
    door = next(front for front in layout.fronts if front.id == "B1-2")
    page = next(p for p in pages if "DOOR, HINGES LEFT" in p.text and "FRONT FACE" in p.text)
    black = max((b for b in page.blacks if abs(b[2] - b[0] - 3.0) < 0.01), key=lambda b: b[0])
    inner = [s for s in page.strokes if s.dashed and abs(s.x1 - s.x2) < 0.01]
    assert door.make.frame is not None
    assert any(abs(black[0] - 57.0 - stroke.x1) < 0.01 for stroke in inner)


def cards_of(pages: tuple[PrintedPage, ...], part: str) -> list[PrintedCard]:
    """Give the cards of one part, in the order of their pages."""
    return [
        card
        for page in pages
        if any(run.text == part and run.size > 3.0 for run in page.runs)
        for card in page.cards
    ]


def test_rounded_edges_are_cut_and_not_folded() -> None:
    """Paper folded over a radius of 3 would lie 0.43 R out; sides fold as ever."""
    _, pages = printed(EDGES)
    for part in ("B1-1", "B1-2"):
        cards = cards_of(pages, part)
        assert cards
        assert not any("FOLD DOWN" in card.text for card in cards)
        assert all("CUT" in card.text for card in cards)
    assert any("FOLD DOWN" in card.text for card in cards_of(pages, "B1-SIDE-L"))
    text = " ".join(page.text for page in pages)
    assert "BUTT TO A BLOCK ON THE HINGE EDGE" in text
    assert "EDGES ROUNDED, R 3.0: cut and butt; a fold would lie 1.3 out." in text


@pytest.mark.parametrize(("part", "edge"), [("B2-1", "bottom"), ("B3-1", "top"), ("B3-2", "top")])
def test_a_bevelled_edge_is_no_reference(part: str, edge: str) -> None:
    """Nothing is set out from the top of base fronts, nor from the bottom of wall fronts."""
    _, pages = printed(EDGES)
    cards = cards_of(pages, part)
    assert cards
    for card in cards:
        assert f"from {edge} edge" not in card.text
        assert f"OVER THE {edge.upper()}" not in card.text
        assert "CUT AT THE HEIGHT" not in card.text
    assert f"FINGER BEVEL at the {edge.upper()} edge" in " ".join(page.text for page in pages)


def test_a_bevelled_front_has_a_pull_only_where_it_names_one() -> None:
    """B3-2 names one; the others are pulled by their edges."""
    layout, _ = printed(EDGES)
    pulled = {f.id for f in layout.fronts if any(hole.purpose == "pull" for hole in f.holes)}
    assert pulled == {"B1-1", "B1-2", "B3-2"}


def test_sheets_follow_the_front_in_hand() -> None:
    """Size, sum and ladder are the measured ones (ordered 454.0 x 614.3); the cups stay."""
    _, pages = printed(IN_HAND)
    text = " ".join(page.text for page in pages)
    assert "453.2 × 615.4." in text
    assert "97.8 + 416.0 + 101.6 = 615.4" in text
    assert "MEASURED: drawn to the part in hand; 454.0 × 614.3 was ordered" in text
    (ladder,) = [card for card in cards_of(pages, "B1-2") if "CUT AT YOUR HEIGHT" in card.text]
    assert {"613.4", "614.4", "615.4", "616.4", "617.4"} <= set(ladder.text.split())
    assert "147.5 + 160.0 + 147.5 = 455.0" in text


def test_an_assembled_box_is_measured_from_its_bottom_panel() -> None:
    """Derived, 18.3 less over the panel: hole lines at 51.3, 275.3, 467.3 and 659.3
    from the bottom end are 33.0, 257.0, 449.0 and 641.0 over the panel."""
    layout, pages = printed(ASSEMBLED)
    text = " ".join(page.text for page in pages if "B1-SIDE-L" in page.text)
    for over_panel in ("33.0", "257.0", "449.0", "641.0"):
        assert over_panel in text.split()
    assert "from bottom panel" in text
    assert "from bottom end" not in text
    assert "STAND" in text
    assert "BOX ASSEMBLED?" not in text
    data = json.loads(sheets_json(make_sheets(layout, PAPERS["common"])))
    cards = [card for card in by_part(data) if card["part"] == "B1-SIDE-L"]
    heights = {h["y_mm"] - card["origin_mm"][1] for card in cards for h in card["holes"]}
    assert sorted(heights) == pytest.approx([51.3, 275.3, 467.3, 659.3], abs=0.001)
    values = [line["value_mm"] for card in cards for line in card["index"]]
    # Set on the panel, 18.3 up, or on lines at whole 10 mm over it.
    assert values
    assert all((value - 18.3) % 10 == pytest.approx(0.0, abs=1e-6) for value in values)
    assert faults_in_data(pages, data, layout) == []


def test_before_its_band_a_side_is_measured_from_the_raw_edge() -> None:
    """36.4 for 37.0 with 0.6 of band: the raw figure is the large one."""
    _, pages = printed(BANDED_LATER)
    cards = cards_of(pages, "B1-SIDE-L")
    large = {run.text for card in cards for run in card.runs if run.size > 3.0}
    assert "36.4" in large
    assert "37.0" not in large
    assert all("37.0 once banded" in card.text for card in cards)
    assert any("RAW FRONT EDGE" in card.text for card in cards)


def test_a_side_that_runs_to_the_floor_says_where_0_is() -> None:
    """Its end is the zero; the panel's faces are named."""
    _, pages = printed(ON_THE_FLOOR)
    text = " ".join(page.text for page in pages)
    assert "0 is the side's end on the FLOOR" in text
    assert "underside stands 101.6, its upper face 119.9 above the side's end" in text
