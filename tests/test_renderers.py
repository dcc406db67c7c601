"""Whatever renders a page, the same page: three renderers, no two of them a dot of 0.1 mm apart."""

from pathlib import Path

import pytest
from click.testing import CliRunner

from cli.main import main
from jigs.jobfile import read_job_file
from jigs.layout import lay_out
from templates.marks import Area, Circle, Line, Mark, Outline, Page, Qr, Text
from templates.paper import PAPERS
from templates.pdf import write_pdf
from templates.sheets import make_sheets
from templates.stocks import STOCKS
from tests import tools
from tests.renderers import Ink, pdfium, stray, unlike
from tests.templates.small_layout import small_layout

DEMO = Path(__file__).parents[1] / "templates" / "demo" / "job.toml"


def page_of_marks(right: float = 0.0, scale: float = 1.0) -> Page:
    """Give a page with every kind of mark, drawn so far to the right (mm) or so much larger."""
    x = right
    marks: tuple[Mark, ...] = (
        Line(x1=x + 5.0, y1=5.0, x2=x + 45.0, y2=15.0, dash="dashed"),
        Line(x1=x + 5.03, y1=8.0, x2=x + 5.03, y2=28.0, dash="axis"),
        Circle(x=x + 30.0, y=25.0, diameter=20.0),
        Outline(points=((x + 8.0, 20.0), (x + 18.0, 20.0), (x + 18.0, 28.0)), width=0.25),
        Area(points=((x + 50.0, 2.0), (x + 53.0, 2.0), (x + 53.0, 38.0), (x + 50.0, 38.0))),
        Text(x=x + 6.0, y=34.0, text="B3-2 454.0 ⌀ ½", size=3.5, bold=True),
        Text(x=x + 58.0, y=4.0, text="FOLD DOWN", angle=90),
        Qr(x=x + 23.0, y=19.0, text="B3-2", module=0.5),
    )
    return Page(width=60.0 / scale, height=40.0 / scale, marks=marks, scale=(scale, scale))


def ink(folder: Path, page: Page) -> Ink:
    """Render one page by the one renderer that comes with the tests."""
    path = folder / "page.pdf"
    path.write_bytes(write_pdf([page]))
    return pdfium(path, 1, 1)[0]


def test_the_same_page_has_no_stray_dot(tmp_path: Path) -> None:
    """Nor has one that lies half a dot aside: 400 x 600 dots are 40 x 60 mm."""
    true = ink(tmp_path, page_of_marks())
    assert true.black.shape == (400, 600)
    assert true.black.any()
    assert not true.trace.all()
    assert stray(true, true) == 0
    aside = ink(tmp_path, page_of_marks(right=0.05))
    assert (stray(true, aside), stray(aside, true)) == (0, 0)


@pytest.mark.parametrize(
    "wrong",
    [
        page_of_marks(right=0.2),
        page_of_marks(scale=1.01),
        page_of_marks(scale=0.99),
        Page(width=60.0, height=40.0, marks=page_of_marks().marks[:-1]),
    ],
    ids=["two dots aside", "larger", "smaller", "a mark less"],
)
def test_the_comparison_can_fail(wrong: Page, tmp_path: Path) -> None:
    """Two dots aside, a hundredth larger or smaller, without its symbol: each is seen."""
    true, other = ink(tmp_path, page_of_marks()), ink(tmp_path, wrong)
    assert stray(true, other) > 20


def test_pages_of_two_sizes_are_not_compared(tmp_path: Path) -> None:
    """A renderer that cuts a row off is not let pass."""
    whole = ink(tmp_path, page_of_marks())
    with pytest.raises(AssertionError, match="dots"):
        stray(whole, Ink(whole.black[1:], whole.trace[1:]))


def test_a_program_that_is_missing_is_told_with_its_package(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    """The slow tests fail where one is missing, and say what to install."""
    monkeypatch.setenv("PATH", str(tmp_path))
    monkeypatch.setattr(tools, "_FILTERS", str(tmp_path))
    for name, package in tools.PACKAGES.items():
        with pytest.raises(tools.ToolMissing, match=f"{name} is not installed.* {package}"):
            tools.tool(name)


@pytest.mark.slow
def test_every_kind_of_mark_is_rendered_alike() -> None:
    """Lines with dashes, circles, areas, letters both ways, a symbol; and a corrected page."""
    assert unlike(write_pdf([page_of_marks()])) == []
    assert unlike(write_pdf([page_of_marks(scale=1.003)])) == []


@pytest.mark.slow
@pytest.mark.parametrize("part", range(4))
def test_every_sheet_of_the_demo_is_rendered_alike(part: int) -> None:
    """The first page, fronts of all kinds on both faces, drawer boxes, sides; every fourth page
    at a time."""
    pages = list(make_sheets(lay_out(read_job_file(DEMO)), PAPERS["common"]).pages)
    assert unlike(write_pdf(pages[part::4])) == []


@pytest.mark.slow
@pytest.mark.parametrize("paper", [name for name in PAPERS if name != "common"])
def test_sheets_on_each_paper_are_rendered_alike(paper: str) -> None:
    """A drawer over a door, and the sides of their box."""
    assert unlike(write_pdf(make_sheets(small_layout(), PAPERS[paper]).pages)) == []


KINDS = {
    "elevations": ("elevations", DEMO),
    "story sticks": ("sheets", DEMO, "--stick"),
    "first article": ("sheets", DEMO, "--first"),
    "calibration": ("calibrate",),
    "bench sheet": ("hardware", "--bench"),
    "hinge": ("hardware", "cup35-full"),
    "slide": ("hardware", "undermount-533"),
    "pull": ("hardware", "bar-160"),
    **{f"labels on {stock}": ("labels", DEMO, "--stock", stock) for stock in STOCKS},
}


@pytest.mark.slow
@pytest.mark.parametrize("words", KINDS.values(), ids=KINDS)
def test_every_other_kind_of_page_is_rendered_alike(
    words: tuple[str | Path, ...], tmp_path: Path
) -> None:
    """As the commands write it."""
    path = tmp_path / "pages.pdf"
    result = CliRunner().invoke(main, [*map(str, words), "-o", str(path)])
    assert path.exists(), result.output
    assert unlike(path.read_bytes()) == []
