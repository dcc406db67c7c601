"""A page of a sheet."""

import pytest
from msgspec.structs import replace

from templates.binding.drilled import drilled_parts
from templates.binding.planning import make_face_cards, make_free_cards
from templates.cards.blank import Blanks
from templates.page.border import EDGE, border_marks
from templates.page.marks import Line, Outline, Qr, Text
from templates.page.paper import PAPERS, Paper
from templates.sheets.field import NoRoomError, fields_of
from templates.sheets.sheet import Sheet, draw_plan, plan_pages, rooms_of
from templates.sheets.sheetwords import SheetWords
from tests.templates.worked import worked_layout

SMALL = Paper(name="postcard", width=95.0, height=136.0, sheet="a postcard")


def pages_of(part: str, face: str, paper: Paper = PAPERS["common"]) -> list[Sheet]:
    """The pages of one face by itself."""
    layout = worked_layout("in")
    (found,) = drilled_parts(layout, {part}) if face == "inside" else [
        each for each in drilled_parts(layout, {part}) if each.words.part == part
    ]  # fmt: skip
    view = next(view for view in found.views if view.face == face)
    words, rooms = SheetWords(view=view, part=found.words, guides={"sides": 3}), rooms_of(paper)
    blanks = Blanks()
    free = make_free_cards(view, paper, blanks)
    cards, own, _ = make_face_cards(words, paper, rooms, 1, blanks, free)
    plans = plan_pages(list(fields_of(replace(words, own=own), cards, rooms)), paper)
    return [draw_plan(plan, paper, row) for row, plan in enumerate(plans, start=1)]


def test_both_hinges_of_a_door_share_one_page() -> None:
    """Two cards on one sheet, as in the worked example."""
    (sheet,) = pages_of("B3-2", "back")
    assert [placed.card.number for placed in sheet.cards] == [1, 2]
    assert sheet.page.entry == "B3-2"


@pytest.mark.parametrize("paper", list(PAPERS))
@pytest.mark.parametrize(
    ("part", "face"), [("B3-2", "back"), ("B3-1", "front"), ("B1-SIDE-R", "inside")]
)
def test_cards_keep_apart_and_on_the_page(part: str, face: str, paper: str) -> None:
    """Upright or lying, on every paper."""
    page_size = sorted((PAPERS[paper].width, PAPERS[paper].height))
    for sheet in pages_of(part, face, PAPERS[paper]):
        assert sorted((sheet.page.width, sheet.page.height)) == page_size
        boxes = []
        for placed in sheet.cards:
            x0, y0, x1, y1 = placed.card.box
            box = (x0 + placed.dx, y0 + placed.dy, x1 + placed.dx, y1 + placed.dy)
            assert box[0] >= 0.0
            assert box[1] >= 0.0
            assert box[2] <= sheet.page.width - EDGE + 1e-6
            assert box[3] <= sheet.page.height - EDGE + 1e-6
            boxes.append(box)
        for k, a in enumerate(boxes):
            for b in boxes[k + 1 :]:
                assert a[2] <= b[0] or b[2] <= a[0] or a[3] <= b[1] or b[3] <= a[1]


def test_a_larger_paper_takes_fewer_pages() -> None:
    """Four slides need several common pages and fewer of A3."""
    assert len(pages_of("B1-SIDE-L", "inside", PAPERS["a3"])) < len(pages_of("B1-SIDE-L", "inside"))


def test_each_page_of_a_part_has_the_symbol() -> None:
    """Each says where the steps stand."""
    for sheet in pages_of("B1-SIDE-L", "inside"):
        joined = " ".join(mark.text for mark in sheet.page.marks if isinstance(mark, Text))
        assert len([mark for mark in sheet.page.marks if isinstance(mark, Qr)]) == 1
        assert "STEPS: page 3." in joined


def test_a_paper_that_holds_nothing_is_named() -> None:
    """No sheet is cut off at its border: it is refused with the part."""
    with pytest.raises(NoRoomError, match="B3-2"):
        pages_of("B3-2", "back", SMALL)


def test_the_borders_carry_the_bars() -> None:
    """150 across and 100 down; the same on every page of the paper."""
    marks = border_marks(198.0, 267.0, PAPERS["common"], 7)
    lines = [mark for mark in marks if isinstance(mark, Line) and mark.width == 0.25]
    sizes = [(abs(line.x2 - line.x1), abs(line.y2 - line.y1)) for line in lines]
    assert sizes == [(150.0, 0.0), (0.0, 100.0)]
    assert not [mark for mark in marks if isinstance(mark, Outline)]
    joined = " ".join(mark.text for mark in marks if isinstance(mark, Text))
    for words in ("SCALE 1:1", "Page 198 x 267 mm", "A4 or letter", "100 %, actual size"):
        assert words in joined
