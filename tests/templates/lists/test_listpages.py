"""The cut list and the order on paper: the same figures as on a screen, on pages that are read by
themselves."""

import re
from collections.abc import Sequence
from functools import cache

import pytest
from msgspec.structs import replace

from jigs.checks.cutting import with_cutting
from jigs.cutlist.cutlist import PartsList, choose_parts, cut_job
from jigs.given.job import FrontSpec, Job
from jigs.given.stated import FrontWords
from jigs.layout.layout import lay_out
from jigs.order.buying import make_order
from templates.lists.listing import Listing, Table, Words
from templates.lists.listpages import list_pages
from templates.lists.ordertables import order_listing, order_text
from templates.lists.partstables import parts_listing, parts_text
from templates.page.marks import Outline, Page, Text
from templates.page.paper import PAPERS
from templates.writers.pdf import write_pdf
from tests.clashes import clashes_of_marks
from tests.jigs.sample import SLIDE, box, job
from tests.readback import read_pages

COMMON = PAPERS["common"]
NOTE = "måla två gånger, é α"


@cache
def many(count: int = 12) -> Job:
    """Give a job of boxes with names as long as they may be, the first with a door whose hand
    nobody stated."""
    boxes = []
    for number in range(count):
        name = f"LONGNAMEDBOX-{number:02}"
        fronts = (
            FrontSpec(id=f"{name}-1", kind="drawer", height=180.0, words=FrontWords(note=NOTE)),
            FrontSpec(id=f"{name}-2", kind="door", hinged="left" if number else None),
        )
        boxes.append(replace(box(*fronts, name=name), width=460.0 + number))
    open_slide = replace(SLIDE, confirmed={})
    return replace(job(*boxes, slide=open_slide), name="Kök Ängsö, κουζίνα", units="mm")


@cache
def cut() -> PartsList:
    layout, pieces = with_cutting(lay_out(many()))
    return choose_parts(layout, pieces)


@cache
def ordered() -> tuple[Listing, str]:
    layout = lay_out(many())
    order = make_order(layout, cut_job(layout))
    return order_listing(order, layout.job), order_text(order, layout.job)


@cache
def pages_of(name: str, paper: str = "common") -> list[Page]:
    listing = parts_listing(cut()) if name == "parts" else ordered()[0]
    return list_pages(listing, PAPERS[paper])


def texts(page: Page) -> list[Text]:
    return [mark for mark in page.marks if isinstance(mark, Text)]


def ticks(pages: Sequence[Page]) -> int:
    return sum(isinstance(mark, Outline) for page in pages for mark in page.marks)


@pytest.mark.parametrize("name", ["parts", "order"])
@pytest.mark.parametrize("paper", ["common", "a3"])
def test_nothing_touches_and_nothing_leaves_a_page(name: str, paper: str) -> None:
    """On the common paper and on a large one."""
    for page in pages_of(name, paper):
        assert clashes_of_marks(page) == []


def test_every_piece_stands_once_with_its_size_large_and_a_box_to_tick() -> None:
    """Its name, its code, and the cut size 3.5 mm high, in one line; `cut` for each, and `banded`
    for each that is."""
    parts = cut()
    rows: dict[str, list[Text]] = {}
    for page in pages_of("parts"):
        lines: dict[float, list[Text]] = {}
        for text in texts(page):
            lines.setdefault(round(text.y, 2), []).append(text)
        for line in lines.values():
            for piece in parts.pieces:
                if any(text.text == piece.id for text in line):
                    assert piece.id not in rows
                    rows[piece.id] = line
    for piece, code in parts.coded():
        line = rows[piece.id]
        assert [t.size for t in line if t.text == f"{piece.length:.1f} × {piece.width:.1f}"] == [
            3.5
        ]
        assert code in [text.text for text in line]
    banded = sum(bool(piece.banded) for piece in parts.pieces)
    assert ticks(pages_of("parts")) == len(parts.pieces) + banded


def test_each_page_is_numbered_and_says_what_goes_on() -> None:
    """A page picked up from the floor: the job, its number, the board, the heads of the columns."""
    pages = pages_of("parts")
    assert len(pages) > 2
    for number, page in enumerate(pages, start=1):
        said = [text.text for text in texts(page)]
        assert "Cut list: Kök Ängsö, κουζίνα" in said
        assert f"Cut list, page {number} of {len(pages)}" in said
    inside = [text.text for text in texts(pages[1])]
    assert "Board of the sides: 18.3 mm (23/32 in) thick, GOES ON" in inside
    assert "cut: length by width, mm (in)" in inside


@pytest.mark.parametrize("name", ["parts", "order"])
def test_paper_says_all_that_a_screen_says(name: str) -> None:
    """Word for word, as another library reads the file back."""
    text = parts_text(cut()) if name == "parts" else ordered()[1]
    read = read_pages(write_pdf(pages_of(name)))
    said = "".join(run.text for page in read for run in page.runs).replace(" ", "")
    for word in set(text.split()):
        assert word.replace(" ", "") in said


def test_what_is_held_is_said_and_not_cut() -> None:
    """The drawer box of a held front stays, what waits for the front is named."""
    said = " ".join(text.text for page in pages_of("order") for text in texts(page))
    assert "LONGNAMEDBOX-00-2 HELD BACK: hand not stated" in re.sub(" +", " ", said)


def test_what_rests_on_open_numbers_is_stamped_in_its_row() -> None:
    """The boards of drawer boxes, whose width hangs on the slide's leaflet."""
    table = next(
        block
        for section in parts_listing(cut()).sections
        for block in section.blocks
        if isinstance(block, Table) and "BOX-FRONT" in block.rows[1].cells[1].text
    )
    stamp = [column.head for column in table.columns].index("stamp")
    assert {row.cells[stamp].text for row in table.rows} == {"OPEN"}


def test_the_page_lies_where_a_table_is_too_wide_upright() -> None:
    """The order of long names; a cut list of short ones stands upright."""
    listing = parts_listing(cut())
    assert all(page.width < page.height for page in pages_of("order", "a3"))
    one = next(s for s in listing.sections if any(isinstance(b, Table) for b in s.blocks))
    assert list_pages(replace(listing, sections=(one,)), COMMON)[0].width == 198.0
    wide = replace(COMMON, name="narrow", width=150.0)
    assert list_pages(listing, wide)[0].width == COMMON.height


def test_stamps_are_bold() -> None:
    """What must be seen before anything is bought."""
    open_words = [
        block
        for section in ordered()[0].sections
        for block in section.blocks
        if isinstance(block, Words) and block.text.startswith("OPEN: ")
    ]
    assert [block.stamp for block in open_words] == [True]
    bold = [text for text in texts(pages_of("order")[0]) if text.text.startswith("OPEN: ")]
    assert [text.bold for text in bold] == [True]
