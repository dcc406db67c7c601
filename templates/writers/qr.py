"""QR symbols: the square code that a telephone reads from a label (ISO/IEC 18004).

Always error correction level M: some 15 % of the symbol may be lost to dust and paint. The
quiet zone is 4 modules of white on every side. A text in capitals, digits and ` $%*+-./:` alone
is packed in the dense alphanumeric mode; 61 such characters make version 3, 90 version 4.

>>> len(qr_matrix("B3-2 DOOR"))
21
>>> qr_side("B3-2 DOOR", 0.5)
14.5
"""

from collections.abc import Sequence
from functools import lru_cache
from itertools import zip_longest
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from qrcode.main import QRCode
    from qrcode.util import QRData

QUIET = 4
"""Modules of white on every side (ISO/IEC 18004:2015, 6.3.8, from memory)."""

_MASK = 3
"""The mask of every symbol. The standard's encoder tries all eight and keeps the most even one,
which is five sixths of the work (6.6 ms against 0.8 ms for 74 characters); a reader learns the
mask from the symbol and takes any. Of the eight, the diagonals of (row + column) mod 3 lie
across both the rows and the columns of repeated bytes."""

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
    """Give the modules for so many characters of a mode: which they are does not matter."""
    from qrcode.util import QRData

    return 4 * int(_symbol(QRData(b"0" * count, mode=mode)).best_fit()) + 17


def _symbol(data: "str | QRData", version: int | None = None) -> "QRCode":
    from qrcode.constants import ERROR_CORRECT_M

    symbol = _encoder()(
        version=version, error_correction=ERROR_CORRECT_M, border=0, mask_pattern=_MASK
    )
    # optimize=0: one segment, so that the length in modules follows from the text's length.
    symbol.add_data(data, optimize=0)
    return symbol


@lru_cache(maxsize=1)
def _encoder() -> "type[QRCode]":
    """Make the class of the standard's encoder whose code words are reckoned by tables, and that
    finds once for each size where their bits go: both by the library are five sixths of the work
    of a symbol."""
    from qrcode.main import QRCode

    known: dict[int, list[tuple[int, int, bool]]] = {}

    class Encoder(QRCode):  # type: ignore[misc]
        """An encoder that sets bits in places that it knows."""

        def makeImpl(self, test: bool, mask_pattern: int) -> None:
            """Make the symbol, of code words that it need not reckon."""
            [data] = self.data_list
            self.data_cache = _code_words(data, self.version)
            super().makeImpl(test, mask_pattern)

        def map_data(self, data: Sequence[int], mask_pattern: int) -> None:
            """Set the bits of the data, masked; the last modules have none, which is a 0."""
            if self.version not in known:
                known[self.version] = _find_places(self.modules)
            places = known[self.version]
            bits = "".join([f"{byte:08b}" for byte in data]).ljust(len(places), "0")
            for (row, column, turned), bit in zip(places, bits, strict=True):
                self.modules[row][column] = (bit == "1") is not turned

    return Encoder


class _Bits:
    """What the library writes the bits of a text into."""

    def __init__(self) -> None:
        self.written: list[str] = []

    def put(self, number: int, length: int) -> None:
        """Write a number in so many bits."""
        self.written.append(f"{number:0{length}b}")


def _code_words(data: "QRData", version: int) -> list[int]:
    """Give the code words of a symbol: those of each block's data in turn, then those of its
    correction (ISO/IEC 18004:2015, 7.4 to 7.6, from memory)."""
    from qrcode.base import rs_blocks
    from qrcode.constants import ERROR_CORRECT_M
    from qrcode.util import PAD0, PAD1, length_in_bits

    bits = _Bits()
    bits.put(data.mode, 4)
    bits.put(len(data), length_in_bits(data.mode, version))
    data.write(bits)
    blocks = rs_blocks(version, ERROR_CORRECT_M)
    count = sum(block.data_count for block in blocks)
    ended = f"{''.join(bits.written)}0000"[: 8 * count]
    filled = -(-len(ended) // 8)
    words = int(ended.ljust(8 * filled, "0"), 2).to_bytes(filled, "big")
    words += (bytes((PAD0, PAD1)) * count)[: count - filled]
    parts, checks, start = [], [], 0
    for block in blocks:
        parts.append(words[start : start + block.data_count])
        checks.append(_check_words(parts[-1], block.total_count - block.data_count))
        start += block.data_count
    return [
        word for each in (parts, checks) for turn in zip_longest(*each) for word in turn
        if word is not None
    ]  # fmt: skip


def _check_words(words: Sequence[int], count: int) -> bytes:
    """Give the words of correction: what is left of the data, so many zeros behind it, in a long
    division by the generator."""
    products = _products(count)
    left = 0
    for word in (*words, *[0] * count):
        left = left << 8 | word
        left ^= products[left >> 8 * count]
    return left.to_bytes(count, "big")


@lru_cache(maxsize=16)  # as many counts as the standard has
def _products(count: int) -> list[int]:
    """Give each word times the generator of so many words of correction."""
    from qrcode.base import gexp, glog
    from qrcode.LUT import rsPoly_LUT

    powers = [glog(each) for each in rsPoly_LUT[count]]
    return [0] + [
        int.from_bytes([gexp(glog(word) + power) for power in powers], "big")
        for word in range(1, 256)
    ]


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
