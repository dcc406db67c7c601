"""One page as three renderers show it, and how far they are apart.

Each draws at 20 dots a mm, and four dots are one of 0.1 mm: letters, which two of them set on
whole dots of their own, are then off by half a dot. Every page of ours is a whole number of such
dots, so that none of the three stretches it. A dot is ink where it is more than half black, and
has a trace of ink where it is black by a sixth: each renderer's edges fade in their own way.
"""

import os
import tempfile
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from itertools import permutations
from pathlib import Path

import numpy as np
import pypdfium2
from numpy.typing import NDArray
from PIL import Image

from templates.page.typeface import font_path
from tests.tools import run

Dots = NDArray[np.bool_]
"""Some of a page's dots of 0.1 mm; the uppermost row first."""


@dataclass(frozen=True, slots=True)
class Ink:
    """A page as one renderer shows it: which dots are ink, and which have a trace of it."""

    black: Dots
    trace: Dots


_FINE = 508
"""20 dots a mm, in dots an inch."""
BLACK, TRACE = 128, 213
"""Below these shades, of 0 for black to 255 for white, a dot is ink or has a trace of it."""
_AT_A_TIME = 4
"""Pages rendered before they are compared: such a page takes 20 MB and more."""


def pdfium(pdf: Path, first: int, last: int) -> list[Ink]:
    """Render pages by the library of a browser."""
    document = pypdfium2.PdfDocument(pdf)
    shown = []
    for number in range(first, last + 1):
        # It rounds a page's dots up, and stretches: a hair less keeps whole numbers whole.
        page = document[number - 1].render(scale=_FINE / 72 * (1 - 1e-6), grayscale=True)
        dots = page.to_numpy()
        shown.append(_ink(dots.reshape(dots.shape[0], dots.shape[1], -1)[:, :, 0]))
    document.close()
    return shown


def poppler(pdf: Path, first: int, last: int) -> list[Ink]:
    """Render pages by the library of most readers on Linux."""
    with tempfile.TemporaryDirectory() as folder:
        pages = ("-f", str(first), "-l", str(last))
        run("pdftoppm", "-gray", "-r", str(_FINE), *pages, pdf, Path(folder) / "page")
        return _read(folder)


def ghostscript(pdf: Path, first: int, last: int) -> list[Ink]:
    """Render pages by what stands behind many a printer's driver."""
    with tempfile.TemporaryDirectory() as folder:
        run(
            "gs", "-q", "-dSAFER", "-dBATCH", "-dNOPAUSE", "-sDEVICE=pgmraw", f"-r{_FINE}",
            "-dGraphicsAlphaBits=4", "-dTextAlphaBits=4",
            f"-dFirstPage={first}", f"-dLastPage={last}",
            f"-sOutputFile={folder}/page-%06d.pgm", pdf,
        )  # fmt: skip
        return _read(folder)


RENDERERS: dict[str, Callable[[Path, int, int], list[Ink]]] = {
    "pdfium": pdfium,
    "poppler": poppler,
    "ghostscript": ghostscript,
}


def librsvg(svg: str) -> Ink:
    """Render a drawing by the library of most desktops on Linux, with the printed face at hand."""
    with tempfile.TemporaryDirectory() as folder:
        drawing, shown, fonts = (Path(folder) / name for name in ("a.svg", "a.png", "fonts.conf"))
        drawing.write_text(svg, encoding="utf-8")
        fonts.write_text(
            '<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "urn:fontconfig:fonts.dtd">'
            f"<fontconfig><dir>{font_path().parent}</dir><cachedir>{folder}</cachedir></fontconfig>",
            encoding="utf-8",
        )
        run(
            "rsvg-convert", f"--dpi-x={_FINE // 2}", f"--dpi-y={_FINE // 2}", "--format=png",
            f"--output={shown}", drawing,
            environment={**os.environ, "FONTCONFIG_FILE": str(fonts)},
        )  # fmt: skip
        with Image.open(shown) as image:
            dots = np.asarray(image.convert("L"))
        return Ink(dots < BLACK, dots < TRACE)


def _read(folder: str) -> list[Ink]:
    shown = []
    for path in sorted(Path(folder).iterdir()):
        with Image.open(path) as image:
            shown.append(_ink(np.asarray(image)))
    return shown


def _ink(dots: NDArray[np.uint8]) -> Ink:
    """Put four dots together."""
    height, width = (size // 2 * 2 for size in dots.shape)
    whole = dots[:height, :width].astype(np.uint16)
    four = whole[::2, ::2] + whole[1::2, ::2] + whole[::2, 1::2] + whole[1::2, 1::2]
    return Ink(four < 4 * BLACK, four < 4 * TRACE)


def grown(dots: Dots) -> Dots:
    """Give the dots and those all round them."""
    high = dots.copy()
    high[1:] |= dots[:-1]
    high[:-1] |= dots[1:]
    wide = high.copy()
    wide[:, 1:] |= high[:, :-1]
    wide[:, :-1] |= high[:, 1:]
    return wide


def stray(one: Ink, other: Ink) -> int:
    """Count the dots of ink of the one that lie more than a dot from any trace of the other's."""
    shapes = (one.black.shape, other.black.shape)
    assert shapes[0] == shapes[1], f"pages of {shapes[0]} and {shapes[1]} dots"
    return int(np.count_nonzero(one.black & ~grown(other.trace)))


def unlike(pdf: bytes, *names: str, every: int = 1) -> list[str]:
    """Say on which pages the renderers, all three where none is named, differ by more than a
    dot; a page on which one of them sees no ink is said too. `every`: of over four pages, which
    are taken."""
    found: list[str] = []
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "pages.pdf"
        path.write_bytes(pdf)
        for first, last in _parts(path, every):
            shown = {name: RENDERERS[name](path, first, last) for name in names or RENDERERS}
            for at, number in enumerate(range(first, last + 1)):
                found += _differences(number, {name: ink[at] for name, ink in shown.items()})
    return found


def _parts(pdf: Path, every: int) -> Iterator[tuple[int, int]]:
    """Give the first and the last page of each part that is rendered at a time."""
    document = pypdfium2.PdfDocument(pdf)
    count = len(document)
    document.close()
    assert count
    if every > 1 and count > _AT_A_TIME:
        yield from ((number, number) for number in range(1, count + 1, every))
        return
    for first in range(1, count + 1, _AT_A_TIME):
        yield first, min(count, first + _AT_A_TIME - 1)


def _differences(number: int, shown: dict[str, Ink]) -> Iterator[str]:
    for name, ink in shown.items():
        if not ink.black.any():
            yield f"page {number}: {name} shows nothing"
    for one, other in permutations(shown, 2):
        dots = stray(shown[one], shown[other])
        if dots:
            yield f"page {number}: {dots} dots of {one} are not near any of {other}"
