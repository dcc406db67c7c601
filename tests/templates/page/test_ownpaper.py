"""Papers by their size: rolls by width, sheets by both sizes; what is nonsense is refused."""

import pytest

from jigs.given.printer import Printer
from jigs.ground.errors import LengthError
from templates.page.marks import Page
from templates.page.ownpaper import LEAST_PAPER, named_paper
from templates.page.paper import MARGIN, PAPERS


@pytest.mark.parametrize(
    ("name", "width"),
    [
        ("roll-610", 610),
        ("ROLL-914", 914),
        ("roll-24in", 24 * 25.4),
        ("roll-36 in", 36 * 25.4),
        ("roll-210mm", 210),
        ("roll-3ft", 3 * 12 * 25.4),
    ],
)
def test_a_roll_is_named_by_its_width(name: str, width: float) -> None:
    """It is as wide as its name less the margins, and up to 10 m long, as any length is."""
    paper = named_paper(name)
    assert paper.width == pytest.approx(width - 2 * MARGIN)
    assert paper.longest == pytest.approx(10_000 - 2 * MARGIN)
    assert paper.large


@pytest.mark.parametrize(
    ("name", "width", "height"),
    [
        ("610x1500mm", 610, 1500),
        ("610 x 1500", 610, 1500),
        ("610mm×1500mm", 610, 1500),
        ("1500x610mm", 610, 1500),
        ("24x60in", 24 * 25.4, 60 * 25.4),
        ('24"x60"', 24 * 25.4, 60 * 25.4),
        ("24 1/2 x 60in", 24.5 * 25.4, 60 * 25.4),
        ("2'x5'", 24 * 25.4, 60 * 25.4),
        ("61x150cm", 610, 1500),
        ("610mm x 60in", 610, 60 * 25.4),
    ],
)
def test_a_sheet_is_named_by_its_sizes(name: str, width: float, height: float) -> None:
    """Upright, less the margins; a unit after the second size counts for both."""
    paper = named_paper(name)
    assert (paper.width, paper.height) == pytest.approx((width - 2 * MARGIN, height - 2 * MARGIN))
    assert paper.longest is None


def test_names_of_the_list_stand() -> None:
    """In any letters."""
    for name, paper in PAPERS.items():
        assert named_paper(name.upper()) is paper


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("b5", "is not one of common, letter, a4, legal, tabloid, a3, nor a roll"),
        ("", "is not one of common"),
        ("roll", "is not one of common"),
        ("roll-", "is not one of common"),
        ("610x1500x3", "is not one of common"),
        ("roll-100", "100 mm wide is too narrow for a page; from 210 mm on"),
        ("roll-24", "24 mm wide is too narrow"),
        ("roll-2000", "no printer takes paper 2000 mm wide; up to 1828.8 mm"),
        ("2000x3000mm", "no printer takes paper 2000 mm wide"),
        ("24x60", "24 x 60 mm is too small for a page; from 210 x 279 mm on. Inches"),
        ("210x270mm", "too small"),
        ("0x500mm", "a size must be over 0"),
        ("-610x1500mm", "cannot be negative"),
        ("610x20000mm", "longer than 10 m"),
        ("roll-11m", "longer than 10 m"),
        ("nanx500", "not a finite number"),
        ("roll-1e3", "not a length"),
        ("roll-6,100", "a comma before three digits"),
        ("610x1/0mm", "the denominator is 0"),
        ("fooxbar", "not a length"),
        ("610x" + "9" * 80, "more than 64 characters"),
    ],
)
def test_nonsense_is_refused_with_what_is_allowed(name: str, words: str) -> None:
    """The message says what was given, what is wrong with it and what is allowed."""
    with pytest.raises(LengthError) as refused:
        named_paper(name)
    assert words in str(refused.value)
    assert "610x1500mm" in str(refused.value) or " mm" in str(refused.value)


def test_the_least_sheet_holds_the_common_page() -> None:
    """Nothing smaller has room for the words of a page."""
    least = named_paper(f"{LEAST_PAPER[0]:g}x{LEAST_PAPER[1]:g}mm")
    assert (least.width, least.height) == pytest.approx(
        (PAPERS["common"].width, PAPERS["common"].height)
    )


def test_a_page_off_a_roll_never_lies() -> None:
    """Corrected for a printer, across stays across where a page is wider than it is long."""
    printer = Printer(name="plotter", across=179.0, along=201.0)
    roll = named_paper("roll-610").corrected(printer)
    page = roll.scaled(Page(width=roll.width, height=200, marks=()))
    assert page.scale == pytest.approx((180 / 179, 200 / 201))
    assert page.width * page.scale[0] == pytest.approx(610 - 2 * MARGIN)
    assert roll.longest == pytest.approx((10_000 - 2 * MARGIN) * 201 / 200)


def test_drawings_on_a_roll_lie_on_a_long_sheet() -> None:
    """Elevations take a stretch of the roll of an A sheet's shape (ISO 216)."""
    drawn = named_paper("roll-610").for_drawings
    assert drawn.height / drawn.width == pytest.approx(2**0.5)
    assert PAPERS["a3"].for_drawings is PAPERS["a3"]
