"""The page of pass marks."""

import pytest
from msgspec.structs import replace

from jigs.bench.firstarticle import first_articles
from jigs.given.confirming import numbers_that_matter
from jigs.given.hardware import SlideRecord
from templates.binding.firstpage import first_pages
from templates.binding.jobsheets import make_sheets
from templates.page.marks import Page, Text
from templates.page.paper import PAPERS
from tests.clashes import clashes_of_marks
from tests.templates.small_layout import small_layout


def words(page: Page) -> str:
    return " ".join(mark.text for mark in page.marks if isinstance(mark, Text))


@pytest.mark.parametrize("paper", list(PAPERS))
def test_nothing_touches_anything_however_many_there_are(paper: str) -> None:
    """What finds no room goes to the next page."""
    found = first_articles(small_layout())
    assert len(found) == 2
    pages = list(first_pages([*found] * 5, PAPERS[paper], 2))
    assert len(pages) > 1
    assert [clashes_of_marks(page) for page in pages] == [[] for _ in pages]
    assert sum(words(page).count("hinge 'cup35-full'") for page in pages) == 5


def test_it_says_what_is_wanted_allowed_and_what_to_do() -> None:
    """The line for the job file solves the constant."""
    [page] = first_pages(first_articles(small_layout()), PAPERS["common"], 2)
    text = words(page)
    assert "16.7 15.7 to 17.7" in text
    assert "overlay_measured = {" in text
    assert "drawer_rise" in text
    assert "page 2" in text


def test_a_side_mount_is_measured_by_its_own_number() -> None:
    """It has no floor line: its centre line above the drawer's underside is what is wrong."""
    article = first_articles(small_layout())[1]
    assert isinstance(article.record, SlideRecord)
    side = replace(article, record=replace(article.record, mount="side"))
    [page] = first_pages([side], PAPERS["common"], 2)
    assert "centre_height" in words(page)
    assert "fixing_height" not in words(page)
    assert "drawer_rise" not in words(page)


def test_where_no_number_is_open_none_is_asked_for() -> None:
    """Each record whose numbers all are confirmed: the trial only says that one may go on."""
    for article in first_articles(small_layout()):
        record = article.record
        sure = replace(record, confirmed=dict.fromkeys(numbers_that_matter(record), "leaflet"))
        [page] = first_pages([replace(article, record=sure)], PAPERS["common"], 2)
        assert "open numbers" not in words(page)
        assert f"All within: the numbers of {article.kind} '{record.name}' hold" in words(page)
        [page] = first_pages([article], PAPERS["common"], 2)
        assert "open numbers" in words(page)


def test_it_stands_behind_the_first_page_of_the_sheets() -> None:
    """And behind the guides; the parts' pages are numbered on from it."""
    layout = small_layout()
    sheets = make_sheets(layout, PAPERS["common"], first=True)
    pages = list(sheets.pages)
    (place,) = (row for row, page in enumerate(pages) if "FIRST ARTICLE" in words(page))
    assert not any("DRILL THIS FACE" in words(page) for page in pages[:place])
    assert f"page {place + 1}" in words(pages[place])
    assert f"page {len(pages)}" in words(pages[-1])
    assert any("INCOMPLETE: for a trial on scrap" in words(page) for page in pages)
