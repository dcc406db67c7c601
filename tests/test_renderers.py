"""Whatever renders a page, the same page: three renderers, no two of them a dot of 0.1 mm apart."""

from math import ceil, floor
from pathlib import Path

import numpy as np
import pytest
from click.testing import CliRunner
from msgspec.structs import replace

from cli.jobs import read_in_hand
from cli.main import main
from jigs.layout.layout import lay_out
from templates.binding.drilled import drilled_parts
from templates.binding.jobsheets import make_sheets
from templates.cards.outlines import lines_on, outline_page
from templates.elevations.elevation import draw_elevations
from templates.page.marks import Area, Circle, Line, Mark, Outline, Page, Qr, Text
from templates.page.paper import PAPERS
from templates.page.typeface import text_box
from templates.writers.pdf import write_pdf
from templates.writers.svg import write_svg
from tests import tools
from tests.renderers import Ink, grown, librsvg, pdfium, stray, unlike
from tests.templates.cards.test_outlines import FACES
from tests.templates.printed import laid_out
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


NINTH = slice(None, None, 9)
"""Of the demo's pages so many that each kind is among them: all of them take minutes."""


@pytest.mark.slow
def test_sheets_of_the_demo_are_rendered_alike() -> None:
    """The first page, fronts of all kinds on both faces, drawer boxes, sides."""
    pages = list(make_sheets(lay_out(read_in_hand(DEMO)), PAPERS["common"]).pages)
    assert unlike(write_pdf(pages[NINTH])) == []


@pytest.mark.slow
@pytest.mark.parametrize("paper", ["a4", "tabloid"])
def test_sheets_on_other_paper_are_rendered_alike(paper: str) -> None:
    """A drawer over a door, and the sides of their box: every third page."""
    pages = list(make_sheets(small_layout(), PAPERS[paper]).pages)
    assert unlike(write_pdf(pages[::3])) == []


KINDS = {
    "elevations": ("elevations", DEMO),
    "story sticks": ("sheets", DEMO, "--stick", "--only", "B2"),
    "first article": ("sheets", DEMO, "--first"),
    "calibration": ("calibrate",),
    "bench sheet": ("hardware", "--bench"),
    "hinge": ("hardware", "cup35-full"),
    "slide": ("hardware", "undermount-533"),
    "pull": ("hardware", "bar-160"),
    **{
        f"labels on {stock}": ("labels", DEMO, "--only", "B1", "--stock", stock)
        for stock in ("letter-3x10", "roll-62x29", "cup-tag-round")
    },
}
"""Of labels a sheet, a roll and a tag: the others are drawn by the same marks."""


@pytest.mark.slow
@pytest.mark.parametrize("words", KINDS.values(), ids=KINDS)
def test_every_other_kind_of_page_is_rendered_alike(
    words: tuple[str | Path, ...], tmp_path: Path
) -> None:
    """As the commands write it; of many pages every third."""
    path = tmp_path / "pages.pdf"
    result = CliRunner().invoke(main, [*map(str, words), "-o", str(path)])
    assert path.exists(), result.output
    assert unlike(path.read_bytes(), every=3) == []


def whole(page: Page) -> Page:
    """The page with so much white above and to the right that its dots are whole."""
    return replace(page, width=ceil(page.width), height=ceil(page.height))


def as_svg_and_pdf(folder: Path, page: Page) -> tuple[Ink, Ink]:
    """Render a page from both files."""
    return librsvg(write_svg(page)), ink(folder, page)


def without_letters(page: Page) -> Page:
    return replace(page, marks=tuple(m for m in page.marks if not isinstance(m, Text)))


@pytest.mark.slow
def test_a_drawing_that_is_not_the_page_is_seen(tmp_path: Path) -> None:
    """The comparison of SVG and PDF can fail: a page two dots aside, and one of another size."""
    true = ink(tmp_path, without_letters(page_of_marks()))
    assert stray(true, librsvg(write_svg(without_letters(page_of_marks())))) == 0
    assert stray(true, librsvg(write_svg(without_letters(page_of_marks(right=0.2))))) > 20
    assert stray(true, librsvg(write_svg(without_letters(page_of_marks(scale=1.01))))) > 20


@pytest.mark.slow
def test_sheets_are_the_same_as_svg_and_as_pdf(tmp_path: Path) -> None:
    """Lines with their dashes, circles, areas and symbols of the demo's sheets and elevations,
    to a dot."""
    layout = lay_out(read_in_hand(DEMO))
    pages = [*make_sheets(layout, PAPERS["common"]).pages][NINTH]
    pages += [sheet.page for sheet in draw_elevations(layout, PAPERS["common"])]
    for page in pages:
        svg, pdf = as_svg_and_pdf(tmp_path, without_letters(page))
        assert (stray(svg, pdf), stray(pdf, svg)) == (0, 0), page.entry


@pytest.mark.slow
def test_bare_faces_are_the_same_as_svg_and_as_pdf(tmp_path: Path) -> None:
    """The outline and every circle, dashed lines too; of a face that is not over 300 mm high."""
    marked = set()
    for view in [view for part in drilled_parts(laid_out(FACES)) for view in part.views]:
        if view.height > 300.0:
            continue
        marked |= {name for name, _ in lines_on(view)}
        page = without_letters(whole(outline_page(view)))
        svg, pdf = as_svg_and_pdf(tmp_path, page)
        assert (stray(svg, pdf), stray(pdf, svg)) == (0, 0), page.entry
    assert marked >= {"frame", "drawer-box"}


@pytest.mark.slow
def test_letters_of_an_svg_stay_in_their_places(tmp_path: Path) -> None:
    """This renderer moves letters together as it likes, and knows no length of a text: each line
    is held to its own box, and begins where it should; on every second page."""
    for page in [*make_sheets(small_layout(), PAPERS["common"]).pages][::2]:
        texts = [mark for mark in page.marks if isinstance(mark, Text)]
        shown = librsvg(write_svg(replace(page, marks=tuple(texts))))
        allowed = np.zeros_like(shown.black)
        for text in texts:
            x0, y0, x1, y1 = text_box(text)
            rows = slice(floor((page.height - y1) * 10), ceil((page.height - y0) * 10))
            columns = slice(floor(x0 * 10), ceil(x1 * 10))
            allowed[rows, columns] = True
            assert shown.black[rows, columns].any(), text
        assert not np.count_nonzero(shown.black & ~grown(allowed))
