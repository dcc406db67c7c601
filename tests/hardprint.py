"""A label as a bad day prints it and a telephone sees it.

One bit a dot; each black edge 0.06 mm further out, as ink and heat spread; 0.15 mm of blur, as a
lens that is a little off; turned by some degrees; 6 pixels a mm, grey on grey, with noise. Derived
from what offices and label printers were measured to do; nothing of it is a standard.
"""

from collections.abc import Iterator, Sequence
from typing import Any

import numpy as np
import pypdfium2
import zxingcpp
from PIL import Image, ImageFilter

from templates.page.marks import Page, Qr
from templates.writers.pdf import write_pdf
from templates.writers.qr import QUIET, qr_side

GAIN, BLUR, TURN = 0.06, 0.15, 8.0
"""mm, mm, degrees to either side."""
CAMERA = 6.0
"""Pixels a mm."""
_FINE = 4


def read_hard(pages: Sequence[Page], dots: int, seed: int = 32) -> list[tuple[str, str]]:
    """Print pages hard, at so many dots an inch; give what each symbol says with what an
    independent reader makes of it, "" where it reads nothing."""
    random = np.random.default_rng(seed)
    only = zxingcpp.BarcodeFormats(zxingcpp.BarcodeFormat.QRCode)
    found = []
    for said, bits in _symbols(pages, dots):
        seen = zxingcpp.read_barcodes(_photographed(bits, dots, random), formats=only)
        found.append((said, seen[0].text if seen else ""))
    return found


def _symbols(pages: Sequence[Page], dots: int) -> Iterator[tuple[str, Any]]:
    """Give each symbol's text and what stands on it and round about it, a pixel a dot."""
    for page, drawn in zip(pages, pypdfium2.PdfDocument(write_pdf(pages)), strict=True):
        pixels = drawn.render(scale=dots / 72, grayscale=True).to_numpy().squeeze()
        per = dots / 25.4
        for mark in (mark for mark in page.marks if isinstance(mark, Qr)):
            side = qr_side(mark.text, max(mark.module, mark.rise or 0.0)) + 2.0
            x, y = (at - QUIET * mark.module - 1.0 for at in (mark.x, mark.y))
            low, high = (round(pixels.shape[0] - at * per) for at in (y, y + side))
            left, right = round(x * per), round((x + side) * per)
            cut = pixels[max(0, high) : max(0, low), max(0, left) : right]
            yield mark.text, np.where(np.pad(cut, 12, constant_values=255) < 128, 0, 255)


def _photographed(bits: Any, dots: int, random: np.random.Generator) -> Any:
    image = Image.fromarray(bits.astype(np.uint8))
    image = image.resize((image.width * _FINE, image.height * _FINE), Image.Resampling.NEAREST)
    pixel = 25.4 / dots / _FINE
    for _ in range(round(GAIN / pixel)):
        image = image.filter(ImageFilter.MinFilter(3))
    image = image.filter(ImageFilter.GaussianBlur(BLUR / pixel))
    turn = random.uniform(-TURN, TURN)
    image = image.rotate(turn, Image.Resampling.BILINEAR, expand=True, fillcolor=255)
    size = (round(side * pixel * CAMERA) for side in image.size)
    small = image.resize((next(size), next(size)), Image.Resampling.BOX)
    grey: Any = np.asarray(small, dtype=float)
    noisy = grey * 0.75 + 30 + random.normal(0, 10, grey.shape)
    return np.clip(noisy, 0, 255).astype(np.uint8)
