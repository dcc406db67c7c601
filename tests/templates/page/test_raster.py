"""Rolls and whole dots: pages as large as their labels, modules that are whole pixels."""

import math
from collections.abc import Iterator, Sequence
from typing import Any

import numpy as np
import pypdfium2
import pytest
import zxingcpp

from jigs.given.labelstock import Stock
from jigs.given.printer import Printer
from jigs.ground.sheetsizes import SheetSize
from templates.labels.stocks import STOCKS
from templates.page.marks import Page, Qr
from templates.page.raster import Raster, raster_of
from templates.writers.pdf import POINT, write_pdf
from templates.writers.qr import QUIET, qr_matrix
from tests.letters import drawn_on, letters_of
from tests.readback import read_pages
from tests.templates.kitchens import galley, one_of_each, workshop, workshop_looks
from tests.templates.labelpages import label_pages
from tests.templates.labels.test_labels import LABELS

DOTS = (203, 300, 600)
SOME = one_of_each(galley())
CROOKED = Printer(name="x", across=180 * 0.997, along=200 * 1.004)


def drawn_at(pages: Sequence[Page], dots: int) -> Iterator[Any]:
    """Render pages, written to one file, as a printer of so many dots does: a pixel a dot."""
    for page in pypdfium2.PdfDocument(write_pdf(pages)):
        pixels = page.render(scale=dots / 72, grayscale=True).to_numpy().squeeze()
        yield np.ascontiguousarray(pixels)


@pytest.mark.parametrize(
    ("dots", "count", "module"),
    # 25.4 / 203 x 4, 25.4 / 300 x 6, 25.4 / 600 x 12 mm: the least over 0.5 mm.
    [(203, 4, 0.5005), (300, 6, 0.5080), (600, 12, 0.5080)],
)
def test_a_module_is_whole_dots(dots: int, count: int, module: float) -> None:
    """As many as make 0.5 mm at least."""
    across, up = Raster(dots=dots).module()
    assert across == up == pytest.approx(25.4 / dots * count)
    assert round(across, 4) == module


@pytest.mark.parametrize("scale", [(1.0, 1.08), (1.08, 1.0), (0.92, 1.0), (1.0, 0.92)])
def test_unequal_scales_make_no_module_smaller_than_the_least(scale: tuple[float, float]) -> None:
    """Drawn, a module is 0.5 or more both ways, less a twentieth of a dot; as many dots wide as
    high, counted times the scale (derived)."""
    for dots in (203, 300, 600):
        pitch = 25.4 / dots
        module = Raster(dots=dots, scale=scale).module()
        assert min(module) >= 0.5 - 0.05 * pitch / min(scale)
        counted = [side * factor / pitch for side, factor in zip(module, scale, strict=True)]
        assert counted == pytest.approx([round(counted[0])] * 2)


@pytest.mark.parametrize("printer", [None, CROOKED], ids=["true", "crooked"])
@pytest.mark.parametrize("dots", DOTS)
@pytest.mark.parametrize(
    "name", ["roll-50x25", "roll-62x29", pytest.param("a4-3x7", marks=pytest.mark.slow)]
)
def test_every_module_is_whole_pixels(name: str, dots: int, printer: Printer | None) -> None:
    """Rendered at the printer's own dots each module is a block of pixels of one colour, where
    the matrix says; also where the page is drawn larger across than along."""
    raster = raster_of(printer, dots)
    pages = label_pages(galley(), SOME, STOCKS[name], raster=raster)[:2]
    for page, pixels in zip(pages, drawn_at(pages, dots), strict=True):
        for mark in (mark for mark in page.marks if isinstance(mark, Qr)):
            across, up = mark.module, mark.rise or mark.module
            matrix = np.array(qr_matrix(mark.text))
            count = round(across * page.scale[0] / (25.4 / dots))
            assert up * page.scale[1] == pytest.approx(across * page.scale[0])
            size = len(matrix) * count
            left = mark.x * page.scale[0] / (25.4 / dots)
            foot = pixels.shape[0] - mark.y * page.scale[1] / (25.4 / dots)
            assert left == pytest.approx(round(left), abs=0.02)
            assert foot == pytest.approx(round(foot), abs=0.02)
            x, y = round(left), round(foot) - size
            seen = pixels[y : y + size, x : x + size]
            dark = np.kron(matrix, np.ones((count, count), dtype=bool))
            assert seen[dark].max() < 40
            assert seen[~dark].min() > 215


@pytest.mark.parametrize("printer", [None, CROOKED], ids=["true", "crooked"])
@pytest.mark.parametrize("dots", [203, 300, pytest.param(600, marks=pytest.mark.slow)])
def test_every_dot_that_is_touched_belongs_to_a_dark_module(
    dots: int, printer: Printer | None
) -> None:
    """Painted by the rule of the page's language, each module is as large as it should be:
    rectangles read back, and every dot taken that one of them touches."""
    raster = raster_of(printer, dots)
    page = label_pages(galley(), SOME, STOCKS["letter-3x10"], raster=raster)[0]
    (read,) = read_pages(write_pdf([page]))
    to_dots = dots / 25.4
    high, wide = (round(edge * to_dots, 3) for edge in (read.height, read.width))
    runs = [
        (x0 * to_dots, high - y1 * to_dots, x1 * to_dots, high - y0 * to_dots)
        for x0, y0, x1, y1 in read.blacks
    ]
    painted = np.zeros((math.ceil(high), math.ceil(wide)))
    for x0, y0, x1, y1 in runs:
        painted[math.floor(y0) : math.ceil(y1), math.floor(x0) : math.ceil(x1)] = 1
    symbols = [mark for mark in page.marks if isinstance(mark, Qr)]
    for mark in symbols:
        matrix = np.array(qr_matrix(mark.text))
        count = round(mark.module * page.scale[0] / (25.4 / dots))
        x = round(mark.x * page.scale[0] / (25.4 / dots))
        foot = painted.shape[0] - round(mark.y * page.scale[1] / (25.4 / dots))
        size = len(matrix) * count
        seen = painted[foot - size : foot, x : x + size]
        assert (seen == np.kron(matrix, np.ones((count, count)))).all()
    assert len(symbols) == len(SOME)


AT_ONCE = {("roll-50x25", 203), ("a4-2x7", 203)}
"""Small labels off a roll and large ones on a sheet; the others at length."""
FINE = {("a4-2x7", 300), ("roll-62x29", 600)}
"""Where modules have more than the four dots of 203 an inch, which are read on all labels."""


@pytest.mark.parametrize(
    ("stock", "dots"),
    [
        pytest.param(
            stock,
            dots,
            id=f"{name}-{dots}",
            marks=() if (name, dots) in AT_ONCE else pytest.mark.slow,
        )
        for name, stock in LABELS.items()
        for dots in DOTS
        if dots == 203 or (name, dots) in AT_ONCE | FINE
    ],
)
def test_every_symbol_reads_at_the_printers_own_dots(stock: Stock, dots: int) -> None:
    """In black and white alone, as a label printer burns them; none is missed."""
    layout = workshop()
    labels = workshop_looks()
    read = []
    pages = label_pages(layout, labels, stock, raster=Raster(dots=dots))
    for gray in drawn_at(pages, dots):
        pixels = np.where(gray < 128, 0, 255).astype(np.uint8)
        read += [symbol.text.split(" ")[0] for symbol in zxingcpp.read_barcodes(pixels)]
    assert sorted(read) == sorted(words.part for words in labels)


@pytest.mark.parametrize("dots", [None, *DOTS])
@pytest.mark.parametrize("name", [name for name, stock in STOCKS.items() if stock.roll])
def test_a_rolls_page_is_its_label(name: str, dots: int | None) -> None:
    """Exactly, or as many whole dots as the label holds; one label a page."""
    stock = STOCKS[name]
    layout = galley()
    pdf = write_pdf(label_pages(layout, SOME[:2], stock, raster=Raster(dots=dots)))
    sizes = [page.get_size() for page in pypdfium2.PdfDocument(pdf)]
    assert len(sizes) == 2
    lost = 0.001 if dots is None else 25.4 / dots + 0.001
    for size in sizes:
        for points, label in zip(size, (stock.width, stock.height), strict=True):
            assert label - lost <= points / POINT <= label + 0.001


def test_a_label_moved_on_a_roll_stays_on_it() -> None:
    """The page ends where the label does: what is moved is made narrower."""
    stock = STOCKS["roll-62x29"]
    for shift in ((1.0, -0.8), (-1.0, 0.8)):
        pages = label_pages(galley(), SOME, stock, raster=Raster(dots=300, shift=shift))
        for page, read in zip(pages, read_pages(write_pdf(pages)), strict=True):
            for x0, y0, x1, y1 in (*letters_of(read), *drawn_on(read)):
                assert x0 >= max(0.0, shift[0]) - 0.01
                assert y0 >= max(0.0, shift[1]) - 0.01
                assert x1 <= page.width + min(0.0, shift[0]) + 0.01
                assert y1 <= page.height + min(0.0, shift[1]) + 0.01


def test_labels_on_a_sheet_are_moved_by_the_printers_offset() -> None:
    """All by the same, to the right and up."""
    stock = STOCKS["letter-3x10"]
    still = label_pages(galley(), SOME, stock)[0]
    moved = label_pages(galley(), SOME, stock, raster=Raster(shift=(0.6, -0.4)))[0]
    pairs = list(zip(still.marks, moved.marks, strict=True))
    for one, other in pairs:
        if isinstance(one, Qr) and isinstance(other, Qr):
            assert (other.x - one.x, other.y - one.y) == pytest.approx((0.6, -0.4))
    assert len(pairs) > 20


def test_a_corrected_sheet_keeps_its_size_and_comes_out_true() -> None:
    """Put through the printer's error a label's place is true, from the upper left corner."""
    stock = STOCKS["a4-3x7"]
    raster = raster_of(CROOKED, None)
    page = label_pages(galley(), SOME, stock, raster=raster)[0]
    assert (page.width * page.scale[0], page.height * page.scale[1]) == pytest.approx((210, 297))
    plain = label_pages(galley(), SOME, stock)[0]
    for one, other in zip(plain.marks, page.marks, strict=True):
        if isinstance(one, Qr) and isinstance(other, Qr):
            across = other.x * page.scale[0] / CROOKED.scale_across
            down = (page.height - other.y) * page.scale[1] / CROOKED.scale_along
            assert (across, down) == pytest.approx((one.x, plain.height - one.y))


def test_the_quiet_zone_is_kept_on_the_smallest_label() -> None:
    """A label of 49 x 19 holds the whole symbol, white and all."""
    stock = Stock(
        name="least", sheet=SheetSize(name="roll", width=49, height=19), roll=True,
        width=49, height=19, pitch_x=49, pitch_y=19,
    )  # fmt: skip
    for dots in DOTS:
        for page in label_pages(galley(), SOME, stock, raster=Raster(dots=dots)):
            [mark] = [mark for mark in page.marks if isinstance(mark, Qr)]
            side = len(qr_matrix(mark.text)) * mark.module
            zone = QUIET * mark.module
            assert zone - 0.001 <= mark.x <= page.width - side - zone + 0.001
            assert zone - 0.001 <= mark.y <= page.height - side - zone + 0.001


@pytest.mark.parametrize("scale", [(1.0, 1.08), (1.08, 1.0)])
def test_the_quiet_zone_is_kept_under_unequal_scales(scale: tuple[float, float]) -> None:
    """A symbol that is wider than high, or higher than wide, keeps its white on each side."""
    raster = Raster(dots=203, scale=scale)
    for page in label_pages(galley(), SOME[:4], STOCKS["roll-62x29"], raster=raster):
        [mark] = [mark for mark in page.marks if isinstance(mark, Qr)]
        modules = len(qr_matrix(mark.text)) + QUIET
        rise = mark.rise or mark.module
        assert QUIET * mark.module - 0.001 <= mark.x <= page.width - modules * mark.module + 0.001
        assert QUIET * rise - 0.001 <= mark.y <= page.height - modules * rise + 0.001
