"""A printing system's own filter, with its default options, leaves the scale of a page alone."""

from functools import cache
from pathlib import Path

import pytest
from click.testing import CliRunner

from cli.main import main
from templates.binding.calibration import calibration_page
from templates.page.paper import PAPERS
from templates.writers.pdf import write_pdf
from tests.printsystem import PrinterPaper, filtered, printer_description, worst
from tests.readback import PrintedPage, extent, read_pages

DEMO = Path(__file__).parents[1] / "templates" / "demo" / "job.toml"
BOTH: tuple[PrinterPaper, ...] = ("Letter", "A4")
MARGINS = (0.0, 6.0, 12.7)
"""None; what a page of ours allows for; half an inch, which many printers leave."""
TRUE = 0.01
"""What a length may change by, mm: the filter writes three decimals of a point and more."""

pytestmark = pytest.mark.slow


@cache
def command(*words: str) -> bytes:
    """What a command writes as a PDF."""
    result = CliRunner().invoke(main, [*words, "-o", "-"])
    assert result.stdout_bytes.startswith(b"%PDF"), result.output
    return result.stdout_bytes


def sheets(paper: str) -> bytes:
    """Sheets that stand and sheets that lie."""
    return command("sheets", str(DEMO), "--only", "S2-SIDE-R", "--paper", paper)


def bar(page: PrintedPage) -> float:
    """Measure the bar of 150: the longest stroke of page 1, mm."""
    return max(stroke.length for stroke in page.strokes)


def test_a_printer_is_described_with_both_papers() -> None:
    """Its margins are those asked for: 6 mm are 17.008 pt."""
    text = printer_description("A4", 6.0)
    assert "*DefaultPageSize: A4" in text
    assert '*ImageableArea Letter/Letter: "17.008 17.008 594.992 774.992"' in text
    assert '*PaperDimension A4/A4: "595.276 841.890"' in text


@pytest.mark.parametrize("margin", MARGINS)
@pytest.mark.parametrize("paper", BOTH)
def test_common_pages_are_left_alone_on_letter_and_a4(paper: PrinterPaper, margin: float) -> None:
    """198 x 267 is a page that both papers take as it is, standing and lying."""
    before = sheets("common")
    assert {page.width > page.height for page in read_pages(before)} == {True, False}
    assert worst(before, filtered(before, paper, margin)) < TRUE


@pytest.mark.parametrize(
    "words",
    [
        ("elevations", str(DEMO), "--only", "B1"),
        ("sheets", str(DEMO), "--stick", "--only", "B2"),
        ("hardware", "--bench"),
        ("hardware", "cup35-full"),
        ("labels", str(DEMO), "--only", "B1-2", "--stock", "cup-tag-round"),
    ],
    ids=["elevations", "story sticks", "bench sheet", "hinge", "tags for cups"],
)
@pytest.mark.parametrize("paper", BOTH)
def test_other_pages_are_left_alone_too(words: tuple[str, ...], paper: PrinterPaper) -> None:
    """All are drawn on the common page."""
    before = command(*words)
    assert worst(before, filtered(before, paper, 6.0)) < TRUE


@pytest.mark.parametrize("paper", BOTH)
def test_the_calibration_page_keeps_its_card_and_bars(paper: PrinterPaper) -> None:
    """ISO/IEC 7810: 85.60 x 53.98 mm."""
    before = write_pdf([calibration_page(PAPERS["common"])])
    after = filtered(before, paper, 6.0)
    assert worst(before, after) < TRUE
    frames = [box for box, _, _ in read_pages(after)[0].frames]
    assert any(
        abs(x1 - x0 - 85.60) < TRUE and abs(y1 - y0 - 53.98) < TRUE for x0, y0, x1, y1 in frames
    )


@pytest.mark.parametrize(("page", "paper"), [("letter", "Letter"), ("a4", "A4")])
@pytest.mark.parametrize("margin", MARGINS)
def test_a_page_made_for_one_paper_is_left_alone_on_it(
    page: str, paper: PrinterPaper, margin: float
) -> None:
    """`--paper letter` on letter, `--paper a4` on A4."""
    before = sheets(page)
    assert worst(before, filtered(before, paper, margin)) < TRUE


LABELS: list[tuple[str, PrinterPaper, float]] = [
    ("letter-3x10", "Letter", 0.0),
    ("letter-2x5", "Letter", 12.7),
    ("a4-3x7", "A4", 6.0),
    ("a4-2x7", "A4", 12.7),
]
"""With a margin each."""


@pytest.mark.parametrize(("stock", "paper", "margin"), LABELS)
def test_labels_stay_on_their_labels(stock: str, paper: PrinterPaper, margin: float) -> None:
    """Sheets of labels are drawn as whole sheets: on their own paper nothing grows or moves."""
    before = command("labels", str(DEMO), "--only", "B1", "--stock", stock)
    after = filtered(before, paper, margin)
    for old, new in zip(read_pages(before), read_pages(after), strict=True):
        assert (new.width, new.height) == pytest.approx((old.width, old.height), abs=0.01)
        assert [run.text for run in new.runs] == [run.text for run in old.runs]
        assert len(old.blacks) == len(new.blacks) > 10
        places = [place for run in (*old.runs,) for place in run.box]
        assert [p for run in new.runs for p in run.box] == pytest.approx(places, abs=0.02)
        for box, moved in zip(old.blacks, new.blacks, strict=True):
            assert moved == pytest.approx(box, abs=0.02)


@pytest.mark.parametrize(
    ("stock", "paper"), [("letter-2x5", "A4"), ("letter-3x10", "A4"), ("a4-3x7", "Letter")]
)
def test_the_check_can_fail(stock: str, paper: PrinterPaper) -> None:
    """A whole sheet of letter on A4, or the other way, does not fit and is scaled, in spite of
    what the PDF asks for; with the printing option that forbids it, it is not."""
    before = command("labels", str(DEMO), "--only", "B1", "--stock", stock)
    assert worst_of_boxes(before, filtered(before, paper, 6.0)) > 1.0
    true = filtered(before, paper, 6.0, "print-scaling=none")
    assert worst_of_boxes(before, true) < TRUE


def worst_of_boxes(before: bytes, after: bytes) -> float:
    """Give the greatest change in size of any black area of page 1, mm."""
    old, new = (read_pages(pdf)[0].blacks for pdf in (before, after))
    return max(
        abs(a - b)
        for one, other in zip(old, new, strict=True)
        for a, b in zip(extent(one), extent(other), strict=True)
    )


def test_a_bar_of_150_measures_150() -> None:
    """As the rule is laid on page 1."""
    before = sheets("common")
    assert bar(read_pages(before)[0]) == pytest.approx(150.0, abs=0.001)
    for paper in BOTH:
        after = read_pages(filtered(before, paper, 6.0))[0]
        assert bar(after) == pytest.approx(150.0, abs=TRUE)
