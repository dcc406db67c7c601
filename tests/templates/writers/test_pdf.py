"""The PDF writer: operators, places read back by an independent library, and the same bytes."""

import hashlib
import io
import os
import shutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pdfplumber
import pytest

from templates.page.marks import Area, Circle, Line, Mark, Outline, Page, Qr, Text
from templates.page.typeface import text_width
from templates.writers.pdf import POINT, write_pdf


def page_of(*marks: Mark, width: float = 100.0, height: float = 50.0) -> Page:
    return Page(width=width, height=height, marks=marks)


def operators(page: Page) -> str:
    """Give the content stream of a document of one page."""
    with pdfplumber.open(io.BytesIO(write_pdf([page]))) as pdf:
        [stream] = pdf.pages[0].page_obj.contents
        return str(stream.get_data().decode("latin-1"))


def read(*marks: Mark) -> Any:
    """Give the first page as an independent library reads it."""
    return pdfplumber.open(io.BytesIO(write_pdf([page_of(*marks)]))).pages[0]


INCH = 25.4


def test_a_tiny_page_operator_by_operator() -> None:
    """Strokes of one width and dash are one path; then fills; then texts."""
    page = page_of(
        Line(x1=0, y1=0, x2=INCH, y2=INCH / 2, width=INCH / 72),
        Line(x1=0, y1=INCH, x2=INCH, y2=INCH, width=INCH / 72),
        Outline(points=((0, 0), (INCH, 0), (INCH, INCH)), width=INCH / 72, dash="dashed"),
        Area(points=((0, 0), (INCH, 0), (INCH, INCH))),
        Text(x=INCH, y=INCH / 2, text="B(3)", size=INCH * 0.688 / 72 * 10),
        Text(x=INCH, y=INCH / 2, text="B", size=INCH * 0.688 / 72 * 10, angle=90),
    )
    assert [line.strip() for line in operators(page).split("\n") if line.strip()] == [
        "1 0 0 1 0 0 cm",
        "0.0000 0.0000 m 72.0000 0.0000 l 72.0000 72.0000 l h f",
        "1.0000 w [] 0 d",
        "0.0000 0.0000 m 72.0000 36.0000 l",
        "0.0000 72.0000 m 72.0000 72.0000 l",
        "S",
        "1.0000 w [12.0000 3.0000] 0 d",
        "0.0000 0.0000 m 72.0000 0.0000 l 72.0000 72.0000 l h",
        "S",
        "BT",
        "1 0 0 1 72.0000 36.0000 Tm",
        "/F1+0 10.0000 Tf",
        r"(B\(3\)) Tj",
        "0 1 -1 0 72.0000 36.0000 Tm",
        "(B) Tj",
        "ET",
    ]


def test_white_areas_cover_what_was_drawn_before_and_nothing_after() -> None:
    """A white area keeps its turn between the marks."""
    square = ((0.0, 0.0), (INCH, 0.0), (INCH, INCH))
    line = Line(x1=0, y1=0, x2=INCH, y2=0)
    stream = operators(page_of(line, Area(points=square, fill="white"), line))
    before, after = stream.split("1 g", 1)
    assert before.count("S") == 1
    assert after.index("0 g") < after.index("S")


@pytest.mark.parametrize(("x", "y", "diameter"), [(22.5, 97.75, 35), (431.5, 0.1, 5), (7, 8, 2.5)])
def test_a_circle_is_read_back_in_its_place(x: float, y: float, diameter: float) -> None:
    """Centre and diameter hold within a thousandth of a millimetre, the width within a tenth
    of that."""
    page = read(Circle(x=x, y=y, diameter=diameter))
    [curve] = page.curves
    centre_x, centre_y = (curve["x0"] + curve["x1"]) / 2, (curve["y0"] + curve["y1"]) / 2
    assert centre_x / POINT == pytest.approx(x, abs=0.001)
    assert centre_y / POINT == pytest.approx(y, abs=0.001)
    assert (curve["x1"] - curve["x0"]) / POINT == pytest.approx(diameter, abs=0.001)
    assert curve["linewidth"] / POINT == pytest.approx(0.35, abs=0.0001)


def test_lines_and_polygons_are_read_back_in_their_places() -> None:
    """Each line of a common path is a line of its own again."""
    page = read(
        Line(x1=1, y1=2, x2=30, y2=2),
        Line(x1=5, y1=1, x2=5, y2=49.5),
        Outline(points=((10, 10), (20, 10), (20, 30), (10, 30))),
    )
    places = [(line["x0"], line["y0"], line["x1"], line["y1"]) for line in page.lines]
    wanted = [(1, 2, 30, 2), (5, 1, 5, 49.5)]
    for place, want in zip(places, wanted, strict=True):
        assert [n / POINT for n in place] == pytest.approx(want, abs=0.001)
    [rect] = page.rects
    assert [rect[key] / POINT for key in ("x0", "y0", "x1", "y1")] == pytest.approx(
        (10, 10, 20, 30), abs=0.001
    )


@pytest.mark.parametrize("anchor", ["start", "middle", "end"])
@pytest.mark.parametrize("bold", [False, True])
def test_text_takes_the_width_that_was_measured(anchor: Any, bold: bool) -> None:
    """In every script, at every anchor, the words stand where the measure says."""
    text = "Łódź Кухня Νότια 454.0"
    page = read(Text(x=50, y=20, text=text, size=3.5, bold=bold, anchor=anchor))
    width = text_width(text, 3.5, bold)
    left = 50 - {"start": 0.0, "middle": width / 2, "end": width}[anchor]
    assert page.chars[0]["x0"] / POINT == pytest.approx(left, abs=0.01)
    assert page.chars[-1]["x1"] / POINT == pytest.approx(left + width, abs=0.02)
    assert "".join(char["text"] for char in page.chars) == text


def test_turned_text_reads_upwards() -> None:
    """Angle 90 runs up the page from its anchor."""
    chars = read(Text(x=50, y=20, text="TO THE FRONT", angle=90)).chars
    assert all(not char["upright"] for char in chars)
    bottoms = [char["y0"] for char in chars]
    assert bottoms == sorted(bottoms)
    assert bottoms[0] / POINT == pytest.approx(20, abs=0.01)


def test_a_symbol_is_one_path_of_whole_numbers() -> None:
    """Modules drawn one by one would show seams; the path is whole, scaled by one transform."""
    stream = operators(page_of(Qr(x=10, y=20, text="B3-2", module=0.5)))
    start, end = stream.index("q "), stream.index(" f Q")
    scale, path = stream[start:end].split(" cm ")
    assert [float(n) for n in scale.split()[1:]] == pytest.approx(
        [0.5 * POINT, 0, 0, 0.5 * POINT, 10 * POINT, 20 * POINT], abs=1e-4
    )
    assert all(number.isdigit() for number in path.replace("re", "").split())


@pytest.mark.parametrize(
    ("length", "unit"),
    [(5079.0, 1), (200 * 25.4, 1), (5081.0, 2), (400 * 25.4, 2), (400 * 25.4 + 1, 3)],
)
def test_a_page_over_200_inches_counts_in_a_larger_unit(length: float, unit: int) -> None:
    """ISO 32000-1:2008, from memory, annex C: 14,400 units at most; table 30: UserUnit. Times it,
    all is true."""
    mark = Line(x1=100, y1=20, x2=length - 100, y2=20, width=0.35)
    data = write_pdf([page_of(mark, width=length, height=300.0)])
    with pdfplumber.open(io.BytesIO(data)) as document:
        (page,) = document.pages
        assert page.page_obj.attrs.get("UserUnit", 1) == unit
        assert page.width <= 14_400 + 1e-3
        assert page.width * unit / POINT == pytest.approx(length, abs=0.005)
        assert page.height * unit / POINT == pytest.approx(300, abs=0.001)
        (line,) = page.lines
        assert line["x0"] * unit / POINT == pytest.approx(100, abs=0.001)
        assert line["x1"] * unit / POINT == pytest.approx(length - 100, abs=0.001)


@pytest.mark.skipif(shutil.which("gs") is None, reason="no renderer here that knows UserUnit")
def test_a_renderer_gives_a_page_of_a_larger_unit_its_true_size(tmp_path: Path) -> None:
    """Ghostscript honours the unit: 10 dots an inch, and a bar of 5000 mm is so many dots long."""
    area = Area(points=((100, 50), (5100, 50), (5100, 100), (100, 100)))
    source, dots = tmp_path / "long.pdf", tmp_path / "long.pgm"
    source.write_bytes(write_pdf([page_of(area, width=5400.0, height=300.0)]))
    subprocess.run(
        ["gs", "-q", "-dSAFER", "-sDEVICE=pgmraw", "-r10", "-o", str(dots), str(source)],
        check=True,
        capture_output=True,
    )
    lines = [line for line in dots.read_bytes().split(b"\n")[:4] if not line.startswith(b"#")]
    assert lines[0] == b"P5"
    width, height = map(int, lines[1].split())
    assert (width, height) == (round(5400 / 2.54), round(300 / 2.54))
    pixels = dots.read_bytes()[-width * height :]
    row = pixels[(height - round(75 / 2.54)) * width :][:width]
    assert sum(dot < 128 for dot in row) == pytest.approx(5000 / 2.54, abs=1.5)


@pytest.mark.parametrize("bad", [float("nan"), float("inf"), -float("inf")])
@pytest.mark.parametrize(
    "mark",
    [
        lambda n: Line(x1=n, y1=0, x2=1, y2=1),
        lambda n: Circle(x=0, y=0, diameter=n),
        lambda n: Area(points=((0, 0), (1, n), (1, 1))),
        lambda n: Text(x=0, y=n, text="x"),
        lambda n: Text(x=0, y=0, text="x", size=n),
        lambda n: Qr(x=n, y=0, text="B3-2"),
    ],
)
def test_numbers_that_are_not_finite_are_refused(mark: Any, bad: float) -> None:
    """No reader would know what to do with them; the mark is named."""
    with pytest.raises(ValueError, match="not finite"):
        write_pdf([page_of(mark(bad))])


def test_pages_without_a_size_and_documents_without_pages_are_refused() -> None:
    """Neither can be printed."""
    with pytest.raises(ValueError, match="page's size"):
        write_pdf([page_of(width=0.0)])
    with pytest.raises(ValueError, match="no pages"):
        write_pdf([])


def some_pages() -> Iterator[Page]:
    for part in ("B1-1", "B1-1", "Łódź"):
        yield Page(width=198, height=267, entry=part, marks=(Text(x=9, y=9, text="½ щ ☃ Ω"),))


def test_what_the_document_says_of_itself() -> None:
    """Title, outline with one line an entry, print at actual size, one side, PDF 1.7."""
    data = write_pdf(some_pages(), title="Ferry-house galley: sheets")
    assert data.startswith(b"%PDF-1.7")
    with pdfplumber.open(io.BytesIO(data)) as pdf:
        assert pdf.metadata["Title"] == "Ferry-house galley: sheets"
        assert len(pdf.pages) == 3
        assert [title for _, title, *_ in pdf.doc.get_outlines()] == ["B1-1", "Łódź"]
        wishes = pdf.doc.catalog["ViewerPreferences"].resolve()
        assert (wishes["PrintScaling"].name, wishes["Duplex"].name) == ("None", "Simplex")
        assert float(pdf.pages[0].width) == pytest.approx(198 * POINT, abs=0.001)
        assert float(pdf.pages[0].height) == pytest.approx(267 * POINT, abs=0.001)


def test_every_font_is_embedded() -> None:
    """No page leans on a font of the reader's."""
    with pdfplumber.open(io.BytesIO(write_pdf(some_pages()))) as pdf:
        for page in pdf.pages:
            fonts: Any = page.page_obj.resources["Font"]
            fonts = fonts.resolve() if hasattr(fonts, "resolve") else fonts
            for font in fonts.values():
                descriptor = font.resolve()["FontDescriptor"].resolve()
                assert "FontFile2" in descriptor


PROCESS = """
import hashlib
from tests.templates.writers.test_pdf import some_pages
from templates.writers.pdf import write_pdf
print(hashlib.sha256(write_pdf(some_pages(), title="x")).hexdigest())
"""


def test_the_same_pages_give_the_same_bytes_in_any_process(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """Not even the library's own settings in the environment change a byte."""
    monkeypatch.delenv("SOURCE_DATE_EPOCH", raising=False)
    here = hashlib.sha256(write_pdf(some_pages(), title="x")).hexdigest()
    assert here == hashlib.sha256(write_pdf(some_pages(), title="x")).hexdigest()
    settings = {
        "RL_useA85": "1",
        "RL_pageCompression": "0",
        "RL_pdfComments": "1",
        "RL_ttfAsciiReadable": "0",
        "RL_documentLang": "de",
        "PYTHONHASHSEED": "7",
    }
    there = subprocess.run(
        [sys.executable, "-c", PROCESS],
        env={**os.environ, **settings},
        capture_output=True,
        check=True,
        text=True,
    )
    assert there.stdout.strip() == here
