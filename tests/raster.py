"""Printed pages as dots: rendered by a second library, measured as a rule would measure them.

Scale is taken as dots over the page's millimetres, never from the resolution asked for.
"""

from dataclasses import dataclass

import numpy as np
import pypdfium2
import zxingcpp
from numpy.typing import NDArray

Grey = NDArray[np.float64]
"""Places on a page in mm, or the darkness there, 0 white to 1 black."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Raster:
    """One page as dots, 0 black to 255 white, the uppermost row first; scales in dots a mm."""

    dots: NDArray[np.uint8]
    x_scale: float
    y_scale: float

    def at(self, x: Grey, y: Grey) -> Grey:
        """Give the darkness at places of the page (mm), between dots by linear interpolation."""
        height, width = self.dots.shape
        column = np.clip(x * self.x_scale - 0.5, 0, width - 1.001)
        row = np.clip(height - y * self.y_scale - 0.5, 0, height - 1.001)
        i, j = row.astype(int), column.astype(int)
        a, b = row - i, column - j
        white = (
            self.dots[i, j] * (1 - a) * (1 - b)
            + self.dots[i + 1, j] * a * (1 - b)
            + self.dots[i, j + 1] * (1 - a) * b
            + self.dots[i + 1, j + 1] * a * b
        )
        dark: Grey = 1.0 - white / 255.0
        return dark

    def ring(self, x: float, y: float, diameter: float) -> tuple[float, float, float] | None:
        """Measure the circle thought to be near (x, y): its centre and diameter, mm; None where
        there is none. Along rays off the cross, the line's middle; then the circle through them."""
        spans = [(10, 80), (100, 170), (190, 260), (280, 350)]
        angles = np.radians(np.concatenate([np.linspace(a, b, 15) for a, b in spans]))
        radii = np.linspace(diameter / 2 - 0.8, diameter / 2 + 0.8, 161)
        sine, cosine = np.sin(angles)[:, None], np.cos(angles)[:, None]
        dark = self.at(x + radii * cosine, y + radii * sine)
        inked = dark.sum(axis=1) * (radii[1] - radii[0])
        # A ray that met a letter or a dash carries more ink than one line's width.
        good = (inked > 0.2) & (inked < 0.5)
        if good.sum() < len(angles) // 3:
            return None
        means = (dark * radii).sum(axis=1)[good] / dark.sum(axis=1)[good]
        one = np.ones_like(means)
        terms = np.stack([one, np.cos(angles[good]), np.sin(angles[good])], axis=1)
        for _ in range(3):  # once more without the rays that lie off
            fit, *_ = np.linalg.lstsq(terms, means, rcond=None)
            rest = np.abs(terms @ fit - means)
            keep = rest <= max(0.02, 3 * float(np.median(rest)))
            terms, means = terms[keep], means[keep]
        return x + float(fit[1]), y + float(fit[2]), 2 * float(fit[0])

    def rise(self, x: float, y: float, dx: int, dy: int) -> float:
        """Measure how far from near (x, y) the paper turns black along (dx, dy), looked for
        within 1 mm either way; mm along that direction."""
        along = np.linspace(-1.0, 1.0, 401)
        dark = self.at(x + along * dx, y + along * dy)
        return float(along[0] + (1.0 - dark).sum() * (along[1] - along[0]))

    def is_black(self, x: float, y: float) -> bool:
        """Say whether a place is black."""
        return bool(self.at(np.array([x]), np.array([y]))[0] > 0.9)


def render(pdf: bytes, *pages: int, dpi: float = 300.0) -> list[Raster]:
    """Render pages of a PDF, counted from 1; all where none is named."""
    document = pypdfium2.PdfDocument(pdf)
    rasters: list[Raster] = []
    for number in pages or range(1, len(document) + 1):
        page = document[number - 1]
        shown = page.render(scale=dpi / 72, grayscale=True).to_numpy()
        grey = np.asarray(shown).reshape(shown.shape[0], shown.shape[1], -1)[:, :, 0]
        width, height = page.get_size()
        rasters.append(
            Raster(
                dots=np.ascontiguousarray(grey),
                x_scale=grey.shape[1] / (width * 25.4 / 72),
                y_scale=grey.shape[0] / (height * 25.4 / 72),
            )
        )
    document.close()
    return rasters


def qr_texts(raster: Raster) -> list[str]:
    """Read every QR symbol of a page."""
    found = zxingcpp.read_barcodes(raster.dots)
    return [symbol.text for symbol in found]
