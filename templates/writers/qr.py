"""QR symbols: the square code that a telephone reads from a label (ISO/IEC 18004).

Always error correction level M: some 15 % of the symbol may be lost to dust and paint. The
quiet zone is 4 modules of white on every side. A text in capitals, digits and ` $%*+-./:` alone
is packed in the dense alphanumeric mode; 61 such characters make version 3, 90 version 4.

>>> len(qr_matrix("B3-2 DOOR"))
21
>>> qr_side("B3-2 DOOR", 0.5)
14.5
"""

from functools import lru_cache
from typing import Any

from zxingcpp import BarcodeFormat, create_barcode

QUIET = 4
"""Modules of white on every side (ISO/IEC 18004:2015, 6.3.8, from memory)."""

_MASK = 3
"""The mask of every symbol. The standard's encoder tries all eight and keeps the most even one,
which is three quarters of the work; a reader learns the mask from the symbol and takes any. Of the
eight, the diagonals of (row + column) mod 3 lie across both the rows and the columns of repeated
bytes."""

Matrix = tuple[tuple[bool, ...], ...]
"""Rows from the top, each from the left; True is dark."""


@lru_cache(maxsize=4096)  # of 1 kB each; a part's pages and label ask for the same
def _symbol(text: str) -> memoryview:
    """Encode a text as rows of modules, 0 where dark."""
    symbol = create_barcode(text, BarcodeFormat.QRCode, ec_level="M", data_mask=_MASK)
    image: Any = symbol.to_image(add_quiet_zones=False)  # a buffer, which its types leave out
    return memoryview(image)


def qr_matrix(text: str) -> Matrix:
    """Give the modules of the symbol of a text, without its quiet zone."""
    rows: Any = _symbol(text).tolist()
    return tuple([tuple([not light for light in row]) for row in rows])


def qr_side(text: str, module: float) -> float:
    """Give the side in mm of a symbol with its quiet zone, at `module` mm a module."""
    return (len(_symbol(text)) + 2 * QUIET) * module
