"""The test page, and sheets corrected for a printer: measured as they come out of it."""

import io
from pathlib import Path

import pdfplumber
import pytest

from cli.jobs import read_in_hand
from jigs.given.printer import BARS, Printer
from jigs.layout.layout import lay_out
from templates.binding.calibration import calibration_page
from templates.binding.cover import CARD
from templates.binding.jobsheets import make_sheets
from templates.page.marks import Text
from templates.page.paper import PAPERS
from templates.writers.pdf import write_pdf
from tests.clashes import clashes_of_marks
from tests.readback import POINTS_TO_MM, PrintedPage, read_pages

CROOKED = Printer(name="garage", across=180 * 0.97, along=200 * 1.012)
"""A printer that shrinks across and stretches along."""
JOB = Path(__file__).parents[3] / "templates" / "demo" / "job.toml"


def _lengths(page: PrintedPage) -> list[float]:
    return [stroke.length for stroke in page.strokes]


@pytest.mark.parametrize("paper", list(PAPERS))
def test_its_bars_measure_true(paper: str) -> None:
    """The bars of 180 and 200 mm, of 7 and 8 in, and the frame's diagonals of 200 mm."""
    page = read_pages(write_pdf([calibration_page(PAPERS[paper])]))[0]
    lengths = _lengths(page)
    for bar in (*BARS["mm"], *BARS["in"]):
        assert any(abs(length - bar) < 0.001 for length in lengths), bar
    assert sum(abs(length - 200.0) < 0.001 for length in lengths) >= 3


@pytest.mark.parametrize("paper", list(PAPERS))
def test_nothing_on_it_overlaps_or_leaves_the_page(paper: str) -> None:
    """Its texts touch no other text, and all lies on the page."""
    page = calibration_page(PAPERS[paper])
    assert clashes_of_marks(page) == []


def test_corrected_sheets_come_out_true() -> None:
    """Put through the printer's own error, every bar and every bank card measures true."""
    layout = lay_out(read_in_hand(JOB))
    paper = PAPERS["common"].corrected(CROOKED)
    pdf = write_pdf(make_sheets(layout, paper, only={"B2-2", "S1-SIDE-L", "T1-1L"}).pages)
    pages = read_pages(pdf)
    error = 1 / CROOKED.scale_across, 1 / CROOKED.scale_along
    assert {page.width > page.height for page in pages} == {True, False}
    for page in pages:
        across, along = error if page.width <= page.height else error[::-1]
        lengths = [(abs(s.x2 - s.x1) * across, abs(s.y2 - s.y1) * along) for s in page.strokes]
        assert any(abs(dx - 150) < 0.02 and dy < 0.01 for dx, dy in lengths)
        assert any(abs(dy - 100) < 0.02 and dx < 0.01 for dx, dy in lengths)
        for ring in page.rings:
            nominal = min((2.5, 3.0, 5.0, 7.0, 35.0), key=lambda d: abs(d - ring.diameter * across))
            assert ring.diameter * across == pytest.approx(nominal, abs=0.02)
            assert ring.height * along == pytest.approx(nominal, abs=0.02)


def test_its_pages_still_fill_the_printable_area() -> None:
    """A corrected page is as large as before, so that no printing system shrinks it."""
    layout = lay_out(read_in_hand(JOB))
    paper = PAPERS["common"].corrected(CROOKED)
    for page in read_pages(write_pdf(make_sheets(layout, paper, only={"B1"}).pages)):
        assert sorted((page.width, page.height)) == pytest.approx([198.0, 267.0], abs=0.001)


def test_the_bank_card_is_true_on_paper() -> None:
    """85.60 x 53.98 mm (ISO/IEC 7810, from memory) after the printer's error."""
    layout = lay_out(read_in_hand(JOB))
    paper = PAPERS["common"].corrected(CROOKED)
    sheet = next(iter(make_sheets(layout, paper, only={"B1"})))
    with pdfplumber.open(io.BytesIO(write_pdf([sheet.page]))) as pdf:
        sizes = [
            (
                float(rect["width"]) * POINTS_TO_MM / CROOKED.scale_across,
                float(rect["height"]) * POINTS_TO_MM / CROOKED.scale_along,
            )
            for rect in pdf.pages[0].rects
        ]
    assert any(size == pytest.approx(CARD, abs=0.02) for size in sizes)


def test_every_sheet_says_for_which_printer() -> None:
    """With the factors; without a printer page 1 says that nothing is corrected."""
    layout = lay_out(read_in_hand(JOB))
    corrected = PAPERS["common"].corrected(CROOKED)
    for page in read_pages(write_pdf(make_sheets(layout, corrected, only={"B1"}).pages)):
        assert "For printer 'garage': x 1.0309, x 0.9881." in page.text
    first, *pages = make_sheets(layout, PAPERS["common"], only={"B1"}).pages
    said = [" ".join(m.text for m in page.marks if isinstance(m, Text)) for page in (first, *pages)]
    assert "Printer not corrected." in said[0]
    assert not any("For printer" in words for words in said)
