"""What stands along the borders: the care that drilling wants, on each page that has holes."""

import pytest

from jigs.bench.stations import plan_stations
from templates.binding.jobsheets import make_sheets
from templates.binding.jobstations import bind_stations
from templates.page.border import DRILL_CARE
from templates.page.marks import Text
from templates.page.paper import PAPERS
from templates.sheets.sheetwords import set_words
from templates.words.cautions import CAUTIONS
from tests.templates.printed import laid_out
from tests.templates.test_byhandsheets import arm, wall_box
from tests.uneven import UNEVEN


@pytest.mark.parametrize("name", ["common", "a3"])
def test_every_page_with_holes_says_what_care_they_want(name: str) -> None:
    """In one line, once, beside the check of the bars; the first page has the cautions in full."""
    first, *others = make_sheets(laid_out(UNEVEN), PAPERS[name])
    opening = " ".join(mark.text for mark in first.page.marks if isinstance(mark, Text))
    assert all(caution in opening for caution in CAUTIONS)
    for sheet in others:
        lines = [
            mark for mark in sheet.page.marks if isinstance(mark, Text) and mark.text == DRILL_CARE
        ]
        assert len(lines) == 1
        assert lines[0].bold
    assert DRILL_CARE not in {mark.text for mark in first.page.marks if isinstance(mark, Text)}


@pytest.mark.parametrize("name", ["common", "a3"])
def test_every_page_says_its_size_and_to_print_it_as_large(name: str) -> None:
    """Whichever way it lies; the first page in full, with the paper that it is for."""
    layout = laid_out(UNEVEN)
    paper = PAPERS[name]
    for pages in (
        [each.page for each in make_sheets(layout, paper)],
        [*bind_stations(layout, plan_stations(layout), paper).pages],
    ):
        first, *others = pages
        opening = " ".join(mark.text for mark in first.marks if isinstance(mark, Text))
        assert paper.size_of(first.width, first.height) in opening
        assert "at 100 %" in opening
        for page in others:
            size = f"100 %: {page.width:g} x {page.height:g} mm."
            assert sum(mark.text == size for mark in page.marks if isinstance(mark, Text)) == 1


def test_the_care_names_each_danger() -> None:
    """And that no glove belongs near a spindle."""
    for word in ("CLAMP", "Eyes", "ears", "lungs", "NO GLOVES"):
        assert word in DRILL_CARE


def test_the_first_page_says_to_print_one_side_alone() -> None:
    """Sheets are cut up: what stood on the back would be cut with them."""
    first = next(iter(make_sheets(laid_out(UNEVEN), PAPERS["common"])))
    words = " ".join(mark.text for mark in first.page.marks if isinstance(mark, Text))
    assert words.count("Print one-sided") == 1


def test_the_arms_of_a_lift_are_sprung() -> None:
    """Said on the door's sheet and on those of both sides; nowhere in a box without a lift."""
    for boxes, parts in (
        (wall_box(arm(250)), {"B1-1", "B1-SIDE-L", "B1-SIDE-R"}),
        (UNEVEN, set()),
    ):
        said = {
            field.words.view.part
            for plan in make_sheets(laid_out(boxes), PAPERS["common"]).plans
            for field in (spot.field for spot in plan.spots)
            if "arms are sprung"
            in " ".join(
                mark.text
                for mark in set_words(field.words, field.cards, field.shapes[0].setting)
                if isinstance(mark, Text)
            )
        }
        assert said == parts
