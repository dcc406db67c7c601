"""QR symbols against ISO/IEC 18004 and an independent reader."""

import numpy as np
import pytest
import zxingcpp
from hypothesis import given, settings
from hypothesis import strategies as st
from qrcode.constants import ERROR_CORRECT_M
from qrcode.exceptions import DataOverflowError
from qrcode.main import QRCode

from templates.writers.qr import QUIET, Matrix, qr_matrix, qr_side

DENSE = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:"


def read_back(matrix: Matrix) -> str:
    """Read a symbol with an independent reader, quiet zone added, 4 pixels a module."""
    dark = np.pad(np.array(matrix), QUIET)
    pixels = np.where(np.kron(dark, np.ones((4, 4), dtype=bool)), 0, 255).astype(np.uint8)
    [found] = zxingcpp.read_barcodes(pixels)
    return str(found.text)


def codewords(matrix: Matrix) -> bytes:
    """Take the codewords out of a version 1 symbol of mask 3 (ISO/IEC 18004:2015,
    7.7.3 and 7.8.2, from memory)."""
    bits = []
    upwards = True
    for right in (20, 18, 16, 14, 12, 10, 8, 5, 3, 1):
        for row in range(20, -1, -1) if upwards else range(21):
            for column in (right, right - 1):
                function = (
                    (row < 9 and (column < 9 or column > 12))
                    or (row > 12 and column < 9)
                    or row == 6
                )
                if not function:
                    bits.append(matrix[row][column] ^ ((row + column) % 3 == 0))
        upwards = not upwards
    return int("".join(str(int(bit)) for bit in bits), 2).to_bytes(26, "big")


def test_the_standards_own_example() -> None:
    """`01234567` as 1-M: data and error correction codewords of ISO/IEC 18004:2015,
    annex I (from memory; recomputed)."""
    data = bytes.fromhex("10200C566180EC11EC11EC11EC11EC11")
    correction = bytes.fromhex("A524D4C1ED36C7872C55")
    assert codewords(qr_matrix("01234567")) == data + correction


def test_level_and_mask_stand_in_the_format_information() -> None:
    """Level M with mask 3 is 101101101001011 (ISO/IEC 18004:2015, annex C, from memory)."""
    matrix = qr_matrix("B3-2")
    read = [matrix[8][column] for column in (0, 1, 2, 3, 4, 5, 7, 8)]
    read += [matrix[row][8] for row in (7, 5, 4, 3, 2, 1, 0)]
    assert "".join(str(int(bit)) for bit in read) == "101101101001011"


@pytest.mark.parametrize(
    ("version", "characters"),
    # ISO/IEC 18004:2015, table 7 (from memory): alphanumeric characters at level M.
    [(1, 20), (2, 38), (3, 61), (4, 90), (5, 122)],
)
def test_capacity_and_side(version: int, characters: int) -> None:
    """A version holds its characters and no more; its side is 4 V + 17 modules."""
    assert len(qr_matrix("A" * characters)) == 4 * version + 17
    assert len(qr_matrix("A" * (characters + 1))) == 4 * (version + 1) + 17
    assert qr_side("A" * characters, 0.5) == (4 * version + 17 + 8) * 0.5


@given(st.text(alphabet=DENSE, min_size=1, max_size=90))
@settings(max_examples=40)
def test_every_dense_text_is_read_back(text: str) -> None:
    """An independent reader gives back what was written."""
    assert read_back(qr_matrix(text)) == text


def test_small_letters_are_read_back_too() -> None:
    """A link is written in byte mode."""
    assert read_back(qr_matrix("http://galley.local:8000/p/B3-2")) == (
        "http://galley.local:8000/p/B3-2"
    )


@pytest.mark.parametrize("characters", [1, 20, 38, 61, 90, 122, 154, 180, 213, 600])
def test_the_encoder_itself_makes_the_same_symbol(characters: int) -> None:
    """Versions 1 to 9 and a large one, each twice: where its bits go is known the second time."""
    for text in ("A7 " * 200, "/9:" * 200):
        plain = QRCode(error_correction=ERROR_CORRECT_M, border=0, mask_pattern=3)
        plain.add_data(text[:characters], optimize=0)
        plain.make()
        assert qr_matrix(text[:characters]) == tuple(map(tuple, plain.modules))


@pytest.mark.parametrize("character", ["7", "A", "a"])
def test_how_large_a_symbol_is_follows_the_encoder(character: str) -> None:
    """Of digits, dense characters and bytes, at each length up to version 11 and near the end."""
    plain = QRCode(error_correction=ERROR_CORRECT_M, border=0)
    for count in (*range(1, 360, 1 if character == "a" else 2), 1100, 2331):
        plain.data_list.clear()
        plain.add_data(character * count, optimize=0)
        assert qr_side(character * count, 1.0) == 4 * plain.best_fit(start=1) + 17 + 2 * QUIET


def test_what_no_symbol_holds_is_refused() -> None:
    """Version 40 holds 2331 bytes at level M (ISO/IEC 18004:2015, table 7, from memory)."""
    with pytest.raises(DataOverflowError):
        qr_side("a" * 2332, 1.0)
