"""Marks turned half round: twice is as they were, and words are read again from the paper."""

from templates.page.marks import Line, Mark, Page, Text
from templates.page.typeface import text_box, text_width
from templates.stations.halfround import half_round
from templates.writers.pdf import write_pdf
from tests.readback import read_pages

MARKS: tuple[Mark, ...] = (
    Text(x=10.0, y=20.0, text="CUPS RIGHT: A", size=5.0, bold=True),
    Text(x=30.0, y=30.0, text="middle", anchor="middle"),
    Line(x1=10.0, y1=10.0, x2=60.0, y2=10.0),
)


def test_twice_is_as_it_was() -> None:
    once = half_round(MARKS, 50.0, 40.0)
    assert once != MARKS
    assert half_round(once, 50.0, 40.0) == MARKS


def test_a_turned_text_keeps_its_place_on_the_paper_that_is_turned() -> None:
    """Its box is the box of the text, turned about the same point."""
    for mark, turned in zip(MARKS[:2], half_round(MARKS[:2], 50.0, 40.0), strict=True):
        assert isinstance(mark, Text)
        assert isinstance(turned, Text)
        x0, y0, x1, y1 = text_box(mark)
        box = text_box(turned)
        for got, want in zip(box, (100 - x1, 80 - y1, 100 - x0, 80 - y0), strict=True):
            assert abs(got - want) < 1e-9


def test_it_is_printed_where_it_is_said_to_be() -> None:
    [page] = read_pages(write_pdf([Page(width=100, height=80, marks=half_round(MARKS, 50, 40))]))
    first = next(run for run in page.runs if run.text == "CUPS RIGHT: A")
    assert abs(first.box[2] - 90.0) < 0.02
    assert abs(first.box[0] - (90.0 - text_width("CUPS RIGHT: A", 5.0, True))) < 0.3
    assert abs(first.box[3] - 60.0) < 0.02
    assert abs(first.size - 5.0) < 0.05
    middle = next(run for run in page.runs if run.text == "middle")
    assert abs((middle.box[0] + middle.box[2]) / 2 - 70.0) < 0.3
