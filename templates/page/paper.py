"""Paper: the sheets that go into a printer, and the pages that are drawn for them.

A page is the printable area itself, its margins left to the printer, so that no printing system
has a reason to shrink it. `common` lies inside the printable area of both A4 and letter; every
other page is its sheet less a margin on each side. Labels are drawn on the full sheet.

>>> PAPERS["common"].width, PAPERS["common"].height
(198.0, 267.0)
"""

import math

from msgspec import Struct
from msgspec.structs import replace

from jigs.given.printer import Printer
from jigs.ground.sheetsizes import COMMON, SHEET_SIZES, SheetSize
from templates.page.marks import Page

MARGIN = 6.0
"""What a printer is taken to leave white along each edge; mm (common practice, no source)."""


class Paper(Struct, frozen=True, kw_only=True):
    """A page as it is drawn, upright; mm. `sheet` says in words what to put into the printer.

    `scale` undoes a printer's error, across the paper and along the feed; `printer` names it.
    `width`, `height` are true lengths: times `scale` they fill the printable area.
    `longest`: of a roll, on which `height` is the least, a page's greatest length; None for a
    sheet. `large`: a face is drawn whole where it fits.
    """

    name: str
    width: float
    height: float
    sheet: str
    scale: tuple[float, float] = (1.0, 1.0)
    printer: str = ""
    longest: float | None = None
    large: bool = False

    def corrected(self, printer: Printer) -> "Paper":
        """Give this paper as a printer comes out true on it."""
        across, along = printer.scale_across, printer.scale_along
        return replace(
            self,
            width=self.width / across,
            height=self.height / along,
            longest=None if self.longest is None else self.longest / along,
            scale=(across, along),
            printer=printer.name if printer.corrected else "",
        )

    @property
    def for_drawings(self) -> "Paper":
        """This paper for drawings that lie: off a roll, as much longer than wide as an A sheet
        (ISO 216: the square root of 2)."""
        if self.longest is None:
            return self
        return replace(self, height=self.width * math.sqrt(2), longest=None)

    def scaled(self, page: Page) -> Page:
        """Give a page as this paper's printer is to draw it: lying, its axes change places. A
        page from a roll never lies: it is as wide as the roll."""
        across, along = self.scale
        upright = self.longest is not None or page.width <= page.height
        return replace(page, scale=(across, along) if upright else (along, across))

    def size_of(self, width: float, height: float) -> str:
        """Say how large a page is and what it is for; one from a roll has a length of its own."""
        if self.longest is None:
            width, height = self.width, self.height
        return f"Page {width:.5g} x {height:.5g} mm for {self.sheet}."

    @property
    def correction(self) -> str:
        """Say for which printer the page is corrected, and by how much."""
        if not self.printer:
            return "Printer not corrected."
        across, along = self.scale
        return f"For printer '{self.printer}': x {across:.4f}, x {along:.4f}."


def _page_of(sheet: SheetSize, words: str) -> Paper:
    return Paper(
        name=sheet.name,
        width=sheet.width - 2 * MARGIN,
        height=sheet.height - 2 * MARGIN,
        sheet=words,
    )


PAPERS: dict[str, Paper] = {
    "common": Paper(
        name="common",
        width=COMMON.width,  # A4 less the margins
        height=COMMON.height,  # letter less the margins is 267.4
        sheet="A4 or letter",
    ),
    "letter": _page_of(SHEET_SIZES["letter"], "letter, 8 1/2 x 11 in"),
    "a4": _page_of(SHEET_SIZES["a4"], "A4, 210 x 297 mm"),
    "legal": _page_of(SHEET_SIZES["legal"], "legal, 8 1/2 x 14 in"),
    "tabloid": _page_of(SHEET_SIZES["tabloid"], "tabloid, 11 x 17 in"),
    "a3": _page_of(SHEET_SIZES["a3"], "A3, 297 x 420 mm"),
}
