"""The bench sheet: gauges at full scale, and a blank for each number."""

import re
import tomllib

import pytest

from jigs.given.hardware import HingeRecord, PullRecord, SlideRecord
from jigs.ground.keys import keys_of
from templates.hardware.bench import bench_pages
from templates.page.marks import Circle, Page, Text
from templates.page.paper import PAPERS
from tests.clashes import clashes_of_marks


def lines_to_type(page: Page) -> list[str]:
    """The lines for the job file, without the words behind them."""
    texts = [mark.text for mark in page.marks if isinstance(mark, Text)]
    return [text.split("   ")[0] for text in texts if re.match(r"[a-z_]+ = ", text)]


@pytest.mark.parametrize("paper", list(PAPERS))
def test_nothing_touches_anything(paper: str) -> None:
    """Three pages on every paper."""
    pages = list(bench_pages(PAPERS[paper]))
    assert [clashes_of_marks(page) for page in pages] == [[], [], []]


def test_each_line_is_one_that_a_job_file_takes() -> None:
    """With a number in its blank it is TOML, and its key is a record's."""
    known = {*keys_of(HingeRecord), *keys_of(SlideRecord), *keys_of(PullRecord)}
    known |= {"like", "overlay_measured", "confirmed"}
    for page in bench_pages(PAPERS["common"]):
        lines = [re.sub("_{4,}", "5", line) for line in lines_to_type(page)]
        assert lines[-1] == 'confirmed = "measured"'
        assert set(tomllib.loads("\n".join(lines))) <= known


def test_the_holes_marked_through_a_slide_have_a_blank() -> None:
    """Both rows of places along a slide, that on the side first."""
    keys = [line.split(" = ")[0] for line in lines_to_type(list(bench_pages(PAPERS["common"]))[1])]
    assert keys.index("carry_at") == keys.index("fixing_at") + 1


def test_the_gauges_are_full_scale() -> None:
    """Cups of 26, 35 and 40; two plate holes 32 apart."""
    hinge = next(iter(bench_pages(PAPERS["common"])))
    circles = [mark for mark in hinge.marks if isinstance(mark, Circle)]
    assert [circle.diameter for circle in circles[:3]] == [26.0, 35.0, 40.0]
    plate = [circle for circle in circles if circle.diameter == 5.0]
    assert plate[1].x - plate[0].x == 32.0
