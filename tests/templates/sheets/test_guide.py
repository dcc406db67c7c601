"""Guide pages: the steps in front of the sheets."""

import pytest

from templates.binding.jobsheets import make_sheets
from templates.page.marks import Page, Text
from templates.page.ownpaper import named_paper
from templates.page.paper import PAPERS
from templates.sheets.guide import Guides, Wanted
from templates.words.guidewords import CARES, GUIDES, guide_steps
from tests.clashes import clashes_of_marks
from tests.templates.printed import laid_out
from tests.uneven import UNEVEN

ALL = Guides(
    wanted={
        work: Wanted(traits={"rounded", "standing", "partition"}, kinds={"manual"})
        for work in GUIDES
    },
    first=2,
)
"""Each guide at its longest."""


def said(page: Page) -> str:
    """Give all that is written on a page."""
    return " ".join(mark.text for mark in page.marks if isinstance(mark, Text))


@pytest.mark.parametrize("name", [*PAPERS, "roll-610"])
def test_each_guide_is_one_page_and_nothing_on_it_meets(name: str) -> None:
    """Steps, pictures and cautions, in letters of 3.5 where they find room."""
    for work, page in zip(GUIDES, ALL.pages(named_paper(name)), strict=True):
        assert clashes_of_marks(page) == []
        words = said(page)
        assert GUIDES[work].title in words
        assert " ".join(CARES) in words
        for step in guide_steps(work, {"rounded", "standing", "partition"}, ()):
            assert step in words
        assert any(mark.size == 3.5 for mark in page.marks if isinstance(mark, Text))


def test_a_file_has_the_guides_that_its_faces_want() -> None:
    """Behind page 1, also where one part alone is printed: a drawer front, its box."""
    layout = laid_out(UNEVEN)
    sheets = make_sheets(layout, PAPERS["common"], only=["B1-1"])
    pages = list(sheets.pages)
    guides = sheets.plans[0].spots[0].field.words.guides
    assert set(guides) == {"pulls", "marking", "drawer-box"}
    for work, number in guides.items():
        assert GUIDES[work].title in said(pages[number - 1])
        assert f"page {number}" in said(pages[number - 1])
        assert any(f"STEPS: page {number}." in said(page) for page in pages)
