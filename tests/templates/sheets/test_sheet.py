"""A page of a sheet."""

import pytest

from templates.faces.faceview import FaceView
from templates.page.border import EDGE, border_marks
from templates.page.marks import Line, Outline, Qr, Text
from templates.page.paper import PAPERS, Paper
from templates.sheets.panel import PartWords
from templates.sheets.partwords import words_of_front, words_of_side
from templates.sheets.pattern import SheetWords
from templates.sheets.sheet import Sheet, draw_plan, plan_face
from tests.jigs.sample import front_of, side_of
from tests.templates.worked import only_cards, worked_layout

SMALL = Paper(name="postcard", width=95.0, height=136.0, sheet="a postcard")


def words_of(part: str, face: str) -> SheetWords:
    layout = worked_layout("in")
    view: FaceView = only_cards(part, face)[0].view
    own: PartWords = (
        words_of_side(layout, side_of(layout, part))
        if face == "inside"
        else words_of_front(layout, front_of(layout, part))
    )
    return SheetWords(
        view=view,
        part=own,
        guides={"hinges": 2, "sides": 3},
    )


def pages_of(part: str, face: str, paper: str = "common") -> list[Sheet]:
    plans = plan_face(words_of(part, face), PAPERS[paper])
    return [
        draw_plan(plan, PAPERS[paper], row + 1, f"sheet {row} of {len(plans)}")
        for row, plan in enumerate(plans, start=1)
    ]


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
    for sheet in pages_of(part, face, paper):
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
    assert len(pages_of("B1-SIDE-L", "inside", "a3")) < len(pages_of("B1-SIDE-L", "inside"))


def test_sheets_of_a_part_are_numbered_and_each_has_the_symbol() -> None:
    """Each says where the steps stand, and has the caution."""
    sheets = pages_of("B1-SIDE-L", "inside")
    for row, sheet in enumerate(sheets, start=1):
        texts = [mark.text for mark in sheet.page.marks if isinstance(mark, Text)]
        joined = " ".join(texts)
        assert f"sheet {row} of {len(sheets)}, code" in joined
        assert len([mark for mark in sheet.page.marks if isinstance(mark, Qr)]) == 1
        assert "STEPS: page 3." in joined
        assert "a hole through shows outside" in joined


def test_a_paper_that_holds_nothing_is_named() -> None:
    """No sheet is cut off at its border: it is refused with part and paper."""
    with pytest.raises(ValueError, match=r"B3-2.*postcard|postcard.*B3-2"):
        plan_face(words_of("B3-2", "back"), SMALL)


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
