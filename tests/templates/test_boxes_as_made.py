"""The sheets and labels of boxes that are not plain, read back from print."""

import json

import pytest

from templates.labels.stocks import STOCKS
from templates.lists.holelist import holes_json
from templates.writers.pdf import write_pdf
from tests.cardreading import faults_on_paper
from tests.cardwords import faults_in_words
from tests.clashes import clashes_of_print
from tests.jobtexts import box_text
from tests.readback import read_pages
from tests.templates.kitchens import pages_of
from tests.templates.printed import printed

INSET = box_text(
    "B1", "base", 'kind = "drawer"\nheight = 152.4\nslide = "undermount-457"',
    'kind = "door"\nhinged = "right"\nhinge = "cup35-inset"', more='overlay = "inset"',
)  # fmt: skip

COLUMNS = box_text(
    "B1", "base", 'kind = "drawer"\nheight = 160\nspan = 2\nslide = "undermount-457"',
    'kind = "door"\nhinged = "right"\nhinge = "cup35-half"',
    'kind = "drawer"\ncolumn = 2\nslide = "undermount-457"',
    more="columns = [{width = 220}, {share = 1}]",
).replace("width = 457.2", "width = 914.4")  # fmt: skip

SHELVES = box_text(
    "B1", "base", 'kind = "door"\nhinged = "left"',
    more="shelf = [{at = 387}, {adjustable = true, from = 90, to = 700}]",
)  # fmt: skip


@pytest.mark.parametrize("boxes", [INSET, COLUMNS, SHELVES], ids=["inset", "columns", "shelves"])
def test_sheets_hold_every_hole_and_nothing_clashes(boxes: str) -> None:
    """Every hole in its true place, every figure written, no text on a text or a line."""
    layout, pages = printed(boxes)
    assert not any(front.withheld for front in layout.fronts)
    assert faults_on_paper(pages, layout) == []
    assert faults_in_words(pages, layout) == []
    assert [clash for page in pages for clash in clashes_of_print(page)] == []


def test_each_face_of_a_partition_has_its_own_sheets() -> None:
    """Named by face and column, its front edge on the hand that the face shows."""
    _, pages = printed(COLUMNS)
    texts = [page.text for page in pages if "B1-PARTITION-1" in page.text]
    left = next(text for text in texts if "DRILL THIS FACE: LEFT FACE OF PARTITION 1" in text)
    right = next(text for text in texts if "DRILL THIS FACE: RIGHT FACE OF PARTITION 1" in text)
    assert "FRONT edge on your RIGHT" in left
    assert "column 1" in left
    assert "FRONT edge on your LEFT" in right
    assert "column 2" in right
    assert all("BOX ASSEMBLED" not in text for text in texts)


TOGETHER = box_text(
    "B1", "base", 'kind = "door"\nhinged = "right"\nhinge = "cup35-half"',
    'kind = "drawer"\ncolumn = 2\nheight = 200\nslide = "undermount-457"',
    'kind = "drawer"\ncolumn = 2\nslide = "undermount-457"',
    more="columns = [{share = 1}, {share = 1}]\nassembled = true\nlegs = 101.6\nband = \"later\"\n"
    "shelf = [{adjustable = true, column = 1, from = 200, to = 500}]",
).replace("width = 457.2", "width = 914.4").replace("height = 774.7", "height = 876.3")  # fmt: skip


def test_paper_that_reaches_no_end_of_a_partition_stands_on_the_panel() -> None:
    """In a box already together nothing folds over a bottom end, or over an edge at the back; and
    what is blind on all cards is not bored through."""
    layout, pages = printed(TOGETHER)
    assert not any(front.withheld for front in layout.fronts)
    assert {side.partition for side in layout.sides if side.fittings} == {0, 1}
    assert faults_on_paper(pages, layout) == []
    assert faults_in_words(pages, layout) == []
    assert [clash for page in pages for clash in clashes_of_print(page)] == []
    inside = [page.text for page in pages if "PARTITION-1" in page.text or "-SIDE-" in page.text]
    text = " ".join(" ".join(inside).split())
    assert "PANEL BELOW" in text
    for words in ("BOTTOM END", "OVER THE REAR EDGE", "THROUGH"):
        assert words not in text


def test_a_partition_has_one_label_with_its_code() -> None:
    """The same code as both its faces' sheets."""
    layout, _ = printed(COLUMNS)
    labels = read_pages(write_pdf(pages_of(layout, STOCKS["letter-2x5"])))
    text = " ".join(page.text for page in labels)
    assert text.count("PARTITION-1") == 1
    codes = {side.code for side in layout.sides if side.partition}
    assert len(codes) == 1
    assert f"code {codes.pop()}" in text


def test_the_hole_list_names_each_face() -> None:
    """One entry for each drilled face: box, column, side, board; a partition says its height."""
    layout, _ = printed(COLUMNS)
    sides = json.loads(holes_json(layout))["sides"]
    assert [(s["column"], s["side"], s["board"]) for s in sides] == [
        (1, "left", "B1-SIDE-L"), (1, "right", "B1-PARTITION-1"),
        (2, "left", "B1-PARTITION-1"), (2, "right", "B1-SIDE-R"),
    ]  # fmt: skip
    assert [s.get("bottom_mm") for s in sides] == [None, 18.3, 18.3, None]
