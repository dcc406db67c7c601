"""Sheets as they are bought, by the names of the open standards.

>>> SHEET_SIZES["a4"].width, SHEET_SIZES["a4"].height
(210.0, 297.0)
"""

from msgspec import Struct

from jigs.ground.lengths import MM_PER_INCH


class SheetSize(Struct, frozen=True, kw_only=True):
    """A sheet as it is bought, upright; mm."""

    name: str
    width: float
    height: float


SHEET_SIZES: dict[str, SheetSize] = {
    # ISO 216:2007, table 1: the A series.
    "a4": SheetSize(name="a4", width=210.0, height=297.0),
    "a3": SheetSize(name="a3", width=297.0, height=420.0),
    # ASME Y14.1, sizes A and B: 8.5 x 11 and 11 x 17 in.
    "letter": SheetSize(name="letter", width=8.5 * MM_PER_INCH, height=11 * MM_PER_INCH),
    "tabloid": SheetSize(name="tabloid", width=11 * MM_PER_INCH, height=17 * MM_PER_INCH),
    # Common practice, no source: 8.5 x 14 in.
    "legal": SheetSize(name="legal", width=8.5 * MM_PER_INCH, height=14 * MM_PER_INCH),
}

COMMON = SheetSize(name="common", width=198.0, height=267.0)
"""The page that lies inside the printable area of both A4 and letter, and prints true on both."""
