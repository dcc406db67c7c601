"""QR symbols: the square code that a telephone reads from a label (ISO/IEC 18004).

Always error correction level M: some 15 % of the symbol may be lost to dust and paint. The
quiet zone is 4 modules of white on every side. A text in capitals, digits and ` $%*+-./:` alone
is packed in the dense alphanumeric mode; 61 such characters make version 3, 90 version 4.

>>> len(qr_matrix("B3-2 DOOR"))
21
>>> qr_side("B3-2 DOOR", 0.5)
14.5
"""

import math
from collections.abc import Sequence
from functools import lru_cache
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from qrcode.main import QRCode

QUIET = 4
"""Modules of white on every side (ISO/IEC 18004:2015, 6.3.8, from memory)."""

_MASK = 3
"""The mask of every symbol. The standard's encoder tries all eight and keeps the most even one,
which is five sixths of the work (6.6 ms against 0.8 ms for 74 characters); a reader learns the
mask from the symbol and takes any. Of the eight, the diagonals of (row + column) mod 3 lie
across both the rows and the columns of repeated bytes."""

_BITS = {1: (10, 3), 2: (11, 2), 4: (8, 1)}
"""Of each mode, named as in a symbol: so many bits for so many characters, and for fewer as many
of them as begin (digits, the dense mode, bytes: ISO/IEC 18004:2015, 7.4.3 to 7.4.5, from memory).
"""

Matrix = tuple[tuple[bool, ...], ...]
"""Rows from the top, each from the left; True is dark."""


@lru_cache(maxsize=1024)  # of 10 kB each; a part's pages and label come near each other
def qr_matrix(text: str) -> Matrix:
    """Give the modules of the symbol of a text, without its quiet zone."""
    symbol = _symbol(text, version=(_modules(text) - 17) // 4)
    symbol.make(fit=False)
    return tuple(map(tuple, symbol.modules))


@lru_cache(maxsize=4096)
def _modules(text: str) -> int:
    """Give the modules along a side, without encoding: 4 V + 17 (ISO/IEC 18004:2015, 6.3.1, from
    memory)."""
    from qrcode.util import QRData

    data = QRData(text)
    return _modules_of(data.mode, len(data))


@lru_cache(maxsize=1024)
def _modules_of(mode: int, count: int) -> int:
    """Give the modules for so many characters of a mode: which they are does not matter. Before
    them stand four bits for the mode, and their count (ISO/IEC 18004:2015, 7.4.1, from memory)."""
    from qrcode.constants import ERROR_CORRECT_M
    from qrcode.exceptions import DataOverflowError
    from qrcode.util import BIT_LIMIT_TABLE, length_in_bits

    bits, characters = _BITS[mode]
    data = 4 + math.ceil(count * bits / characters)
    for version, limit in enumerate(BIT_LIMIT_TABLE[ERROR_CORRECT_M]):
        if version and data + length_in_bits(mode, version) <= limit:
            return 4 * version + 17
    raise DataOverflowError


def _symbol(text: str, version: int) -> "QRCode":
    from qrcode.constants import ERROR_CORRECT_M

    symbol = _encoder()(
        version=version, error_correction=ERROR_CORRECT_M, border=0, mask_pattern=_MASK
    )
    # optimize=0: one segment, so that the length in modules follows from the text's length.
    symbol.add_data(text, optimize=0)
    return symbol


@lru_cache(maxsize=1)
def _encoder() -> "type[QRCode]":
    """Make the class of the standard's encoder that finds once for each size where its bits go:
    looking for free modules is a fifth of the work of a symbol."""
    from qrcode.main import QRCode

    known: dict[int, list[tuple[int, int, bool]]] = {}

    class Encoder(QRCode):  # type: ignore[misc]
        """An encoder that sets bits in places that it knows."""

        def map_data(self, data: Sequence[int], mask_pattern: int) -> None:
            """Set the bits of the data, masked; the last modules have none, which is a 0."""
            if self.version not in known:
                known[self.version] = _find_places(self.modules)
            places = known[self.version]
            bits = "".join([f"{byte:08b}" for byte in data]).ljust(len(places), "0")
            for (row, column, turned), bit in zip(places, bits, strict=True):
                self.modules[row][column] = (bit == "1") is not turned

    return Encoder


def _find_places(modules: Sequence[Sequence[bool | None]]) -> list[tuple[int, int, bool]]:
    """Give row and column of each free module in the order of the bits, and whether the mask turns
    it: in columns of two from the right, up and down in turn, past the column of the timing
    pattern (ISO/IEC 18004:2015, 7.7.3 and table 10, from memory)."""
    side = len(modules)
    rows = range(side)
    places: list[tuple[int, int, bool]] = []
    for right in (*range(side - 1, 6, -2), 5, 3, 1):
        rows = rows[::-1]
        places += [
            (row, column, (row + column) % 3 == 0)
            for row in rows
            for column in (right, right - 1)
            if modules[row][column] is None
        ]
    return places


def qr_side(text: str, module: float) -> float:
    """Give the side in mm of a symbol with its quiet zone, at `module` mm a module."""
    return (_modules(text) + 2 * QUIET) * module
