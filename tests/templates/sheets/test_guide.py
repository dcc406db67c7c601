"""Guide pages: the steps in front of the sheets."""

import pytest

from templates.binding.jobsheets import make_sheets
from templates.page.marks import Page, Text
from templates.page.ownpaper import named_paper
from templates.page.paper import PAPERS
from templates.sheets.guide import Guides, Wanted
from templates.words.guidewords import (
    EVERY,
    FOLD_BLACK,
    GUIDES,
    Trait,
    every_steps,
    guide_steps,
)
from tests.clashes import clashes_of_marks
from tests.templates.printed import laid_out
from tests.uneven import UNEVEN

TRAITS: set[Trait] = {"rounded", "standing", "partition", "pilots", "marked", "open"}


def said(page: Page) -> str:
    """Give all that is written on a page."""
    return " ".join(mark.text for mark in page.marks if isinstance(mark, Text))


@pytest.mark.parametrize("name", [*PAPERS, "roll-610"])
def test_guides_share_pages_and_nothing_on_them_meets(name: str) -> None:
    """Each at its longest, whole on its page, in letters of 3.5; what every card wants, its
    pictures and the cautions stand in front, once."""
    guides = Guides(
        wanted={work: Wanted(traits=TRAITS, kinds={"manual"}) for work in GUIDES},
        first=2,
        paper=named_paper(name),
    )
    pages = guides.pages()
    assert len(pages) <= 4
    for page in pages:
        assert clashes_of_marks(page) == []
        for mark in page.marks:
            if isinstance(mark, Text):
                assert mark.y > 0.0
    everywhere = " ".join(map(said, pages))
    for words in (EVERY, FOLD_BLACK, *every_steps(TRAITS)):
        assert everywhere.count(words) == 1
        assert words in said(pages[0])
    for work, number in guides.at.items():
        words = said(pages[number - 2])
        assert GUIDES[work].title in words
        for step in guide_steps(work, TRAITS, ()):
            assert step in words


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
