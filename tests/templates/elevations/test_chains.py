"""Chains of dimensions: units, room, and values that go further out."""

import pytest

from jigs.ground.lengths import Unit
from templates.elevations.chains import Chain, Length, named
from templates.page.marks import Line, Page, Text
from templates.page.typeface import text_box
from tests.clashes import clashes_of_marks


def chain(*widths: float, scale: float = 20.0, unit: Unit = "mm", lying: bool = True) -> Chain:
    """Give a chain of widths in true mm, from 30 mm on the page on."""
    lengths, at = [], 30.0
    for width in widths:
        lengths.append(Length(at, at + width / scale, width))
        at += width / scale
    return Chain(lengths=tuple(lengths), at=60.0, unit=unit, lying=lying)


def texts(drawn: Chain) -> list[Text]:
    return [mark for mark in drawn.marks() if isinstance(mark, Text)]


@pytest.mark.parametrize(("unit", "large"), [("in", '24"'), ("mm", "609.6")])
def test_the_jobs_unit_is_large_and_the_other_small(unit: Unit, large: str) -> None:
    """24 in are 609.6 mm."""
    first, second = texts(chain(609.6, unit=unit))
    assert (first.text, first.size) == (large, 2.5)
    assert {first.text, second.text} == {'24"', "609.6"}
    assert second.size == 1.8


@pytest.mark.parametrize("lying", [True, False])
def test_a_value_stands_above_its_line_and_parallel_to_it(lying: bool) -> None:
    """ISO 129-1; of a standing line above is its left, read from the right."""
    for text in texts(chain(600, lying=lying)):
        assert text.angle == (0 if lying else 90)
        if lying:
            assert text_box(text)[1] > 60.0
        else:
            assert text_box(text)[2] < 60.0


@pytest.mark.parametrize("lying", [True, False])
@pytest.mark.parametrize("outside", ["above", "below"])
def test_small_lengths_are_written_further_out_and_none_on_another(
    lying: bool, outside: str
) -> None:
    """Fillers and gaps beside boxes; everything stays within the chain's reach."""
    row = chain(600, 40, 12, 40, 600, 18, lying=lying)
    row = Chain(
        lengths=row.lengths, at=row.at, unit="mm", lying=lying,
        outside="above" if outside == "above" else "below",
    )  # fmt: skip
    assert len(row.crowded) == 4
    marks = row.marks()
    assert sum(isinstance(mark, Text) and mark.size == 1.8 for mark in marks) >= 4
    assert clashes_of_marks(Page(width=120, height=120, marks=tuple(marks))) == []
    for text in texts(row):
        x0, y0, x1, y1 = text_box(text)
        low, high = (y0, y1) if lying else (60 - (x1 - 60), 60 - (x0 - 60))
        out = high - 60 if outside == "above" else 60 - low
        assert out <= row.reach + 0.1


def test_the_line_breaks_off_at_a_wide_gap() -> None:
    """Boxes that stand apart have chains of their own on one line."""
    lengths = (Length(0, 20, 400), Length(35, 60, 500))
    lines = [m for m in Chain(lengths=lengths, at=10, unit="mm").marks() if isinstance(m, Line)]
    along = [(line.x1, line.x2) for line in lines if line.y1 == line.y2 == 10]
    assert along == [(0, 20), (35, 60)]


def test_no_lengths_no_marks() -> None:
    """An empty chain is nothing."""
    assert Chain(lengths=(), at=0, unit="mm").marks() == []


def test_a_name_is_set_as_large_as_its_room() -> None:
    """Then smaller, then turned, then shortened, then left out."""

    def name(text: str, room: float) -> Text | None:
        marks = named(text, 50, 0, room, 4.0, 3.5)
        assert all(isinstance(mark, Text) for mark in marks)
        return next((mark for mark in marks if isinstance(mark, Text)), None)

    large, small, turned = name("B1", 20), name("PANTRY-1", 8), name("B1", 1.6)
    assert large is not None
    assert large.size == 3.5
    assert small is not None
    assert small.size == 1.8
    assert small.angle == 0
    assert turned is not None
    assert turned.angle == 90
    short = name("PANTRY-NORTH-1", 6)
    assert short is not None
    assert short.text.endswith("…")
    assert name("PANTRY-NORTH-1", 1.5) is None
