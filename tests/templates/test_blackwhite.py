"""Labels as a label printer burns them: in black and white alone, by two renderers that paint
every dot a shape touches, as the language of a page asks for."""

from pathlib import Path

import numpy as np
import pytest
import zxingcpp
from PIL import Image

from jigs.given.labelstock import Stock
from jigs.given.printer import Printer
from templates.labels.cuptag import find_tagged, tag_pages
from templates.labels.stocks import STOCKS
from templates.page.marks import Page, Qr
from templates.page.raster import Raster, raster_of
from templates.writers.pdf import write_pdf
from templates.writers.qr import qr_matrix
from tests.templates.kitchens import galley, one_of_each
from tests.templates.labelpages import label_pages
from tests.tools import run

pytestmark = pytest.mark.slow

CROOKED = Printer(name="x", across=180 * 0.997, along=200 * 1.004)
RENDERERS = {
    "poppler": ("pdftoppm", "-mono", "-r", "{dots}", "{pdf}", "{folder}/page"),
    "ghostscript": (
        "gs", "-q", "-dSAFER", "-dBATCH", "-dNOPAUSE", "-sDEVICE=pbmraw", "-r{dots}",
        "-sOutputFile={folder}/page-%03d.pbm", "{pdf}",
    ),
}  # fmt: skip


def pages_of(stock: Stock, raster: Raster) -> tuple[Page, ...]:
    """Draw labels, or tags, of a small kitchen."""
    layout = galley()
    if stock.bore is not None:
        return tag_pages(layout, find_tagged(layout, stock)[0], stock, raster)
    return label_pages(layout, one_of_each(layout), stock, raster=raster)


NAMES = ("roll-50x25", "letter-3x10", "roll-62x29", "a4-3x7", "cup-tag")
EACH = [
    (name, dots, (None, CROOKED)[(one + other) % 2], (*RENDERERS,)[one % 2])
    for one, name in enumerate(NAMES)
    for other, dots in enumerate((203, 300, 600))
]
"""Each label at each printer's dots; the printer true or crooked and the renderer in turn, each
with each and at all dots."""


@pytest.mark.parametrize(("name", "dots", "printer", "renderer"), EACH)
def test_every_module_is_burnt_whole(
    name: str, dots: int, printer: Printer | None, renderer: str, tmp_path: Path
) -> None:
    """Dot for dot what the matrix says, each module as many dots as the others; and read."""
    pages = pages_of(STOCKS[name], raster_of(printer, dots))
    pdf = tmp_path / "labels.pdf"
    pdf.write_bytes(write_pdf(pages))
    words = [word.format(dots=dots, pdf=pdf, folder=tmp_path) for word in RENDERERS[renderer]]
    run(*words)
    shown = sorted(tmp_path.glob("page*"))
    assert len(shown) == len(pages)
    for path, page in zip(shown, pages, strict=True):
        black = np.array(Image.open(path).convert("L")) < 128
        symbols = [mark for mark in page.marks if isinstance(mark, Qr)]
        for mark in symbols:
            matrix = np.array(qr_matrix(mark.text))
            count = round(mark.module * page.scale[0] / (25.4 / dots))
            size = len(matrix) * count
            x = round(mark.x * page.scale[0] / (25.4 / dots))
            foot = len(black) - round(mark.y * page.scale[1] / (25.4 / dots))
            burnt = black[foot - size : foot, x : x + size]
            assert (burnt == np.kron(matrix, np.ones((count, count), dtype=bool))).all()
        read = zxingcpp.read_barcodes(np.where(black, 0, 255).astype(np.uint8))
        assert sorted(symbol.text for symbol in read) == sorted(mark.text for mark in symbols)
