"""What a printing system makes of a PDF before it goes to a printer: its filter, run alone.

The printers are described here, as such a system wants it (a PPD file, version 4.3: the printer
description format of the PostScript language): two papers, white margins, nothing else.
"""

import math
import os
import tempfile
from itertools import pairwise
from pathlib import Path
from typing import Literal

from tests.readback import PrintedPage, read_pages
from tests.tools import run

PrinterPaper = Literal["Letter", "A4"]

POINT = 72 / 25.4

PAPERS: dict[PrinterPaper, tuple[float, float]] = {
    # In points: ASME Y14.1 size A; ISO 216 A4, 210 x 297 mm.
    "Letter": (612.0, 792.0),
    "A4": (210 * POINT, 297 * POINT),
}

_HEAD = """\
*PPD-Adobe: "4.3"
*FormatVersion: "4.3"
*FileVersion: "1.0"
*LanguageVersion: English
*LanguageEncoding: ISOLatin1
*PCFileName: "TEST.PPD"
*Manufacturer: "Test"
*Product: "(Test Printer)"
*ModelName: "Test Printer"
*ShortNickName: "Test Printer"
*NickName: "Test Printer"
*PSVersion: "(3010.000) 0"
*LanguageLevel: "3"
*ColorDevice: False
*DefaultColorSpace: Gray
*cupsFilter: "application/vnd.cups-pdf 0 -"
"""


def printer_description(paper: PrinterPaper, margin: float) -> str:
    """Describe a printer with a paper in its tray, and a margin (mm) that it leaves white."""
    lines = [_HEAD]
    for group, head in (("PageSize", "/Media Size"), ("PageRegion", "")):
        lines.append(f"*OpenUI *{group}{head}: PickOne\n*OrderDependency: 10 AnySetup *{group}\n")
        lines.append(f"*Default{group}: {paper}\n")
        for name, (width, height) in PAPERS.items():
            size = f"<</PageSize[{width:.0f} {height:.0f}]>>setpagedevice"
            lines.append(f'*{group} {name}/{name}: "{size}"\n')
        lines.append(f"*CloseUI: *{group}\n")
    white = margin * POINT
    lines.append(f"*DefaultImageableArea: {paper}\n*DefaultPaperDimension: {paper}\n")
    for name, (width, height) in PAPERS.items():
        area = f"{white:.3f} {white:.3f} {width - white:.3f} {height - white:.3f}"
        lines.append(f'*ImageableArea {name}/{name}: "{area}"\n')
        lines.append(f'*PaperDimension {name}/{name}: "{width:.3f} {height:.3f}"\n')
    return "".join(lines)


def filtered(pdf: bytes, paper: PrinterPaper, margin: float, options: str = "") -> bytes:
    """Give a PDF as the filter passes it on to such a printer; no options are the default."""
    with tempfile.TemporaryDirectory() as folder:
        description, page = Path(folder) / "printer.ppd", Path(folder) / "in.pdf"
        description.write_text(printer_description(paper, margin), encoding="ascii")
        page.write_bytes(pdf)
        return run(
            "pdftopdf", "1", "user", "title", "1", options, page,
            environment={**os.environ, "PPD": str(description)},
        )  # fmt: skip


def lengths(page: PrintedPage) -> list[float]:
    """Measure a page, however it lies on its paper: every stroke, every circle, and how far each
    circle and each stroke is from the one drawn before it; mm."""
    found = [stroke.length for stroke in page.strokes]
    found += [ring.diameter for ring in page.rings]
    found += [math.dist((a.x, a.y), (b.x, b.y)) for a, b in pairwise(page.rings)]
    found += [math.dist((a.x1, a.y1), (b.x1, b.y1)) for a, b in pairwise(page.strokes)]
    return found


def letters(page: PrintedPage) -> int:
    """Count the letters on a page: one that was cut off is missed."""
    return sum(len(run.text.replace(" ", "")) for run in page.runs)


def worst(before: bytes, after: bytes) -> float:
    """Give the greatest difference of any length before and after, mm. Raises AssertionError
    where a page, a stroke, a circle or a letter is missing."""
    pages = (read_pages(before), read_pages(after))
    assert len(pages[0]) == len(pages[1])
    most = 0.0
    for old, new in zip(*pages, strict=True):
        assert letters(old) == letters(new), f"page {old.number}"
        both = list(zip(lengths(old), lengths(new), strict=True))
        assert both, f"page {old.number} has nothing to measure"
        most = max([most, *(abs(a - b) for a, b in both)])
    return most
