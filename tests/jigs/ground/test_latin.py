"""Names in A-Z: held against how maps and signs write towns, and against all letters there are."""

import re
import unicodedata

import pytest

from jigs.ground.latin import plain_capitals


@pytest.mark.parametrize(
    ("name", "plain"),
    [
        # BGN/PCGN 1947 romanization of Russian, names of towns as atlases have them; soft and hard
        # signs go (from memory).
        ("Москва", "MOSKVA"),
        ("Нижний Новгород", "NIZHNIY NOVGOROD"),
        ("Хабаровск", "KHABAROVSK"),
        ("Южно-Сахалинск", "YUZHNO-SAKHALINSK"),
        ("Щёлково", "SHCHELKOVO"),
        ("Казань", "KAZAN"),
        ("Чебоксары", "CHEBOKSARY"),
        ("Подъячево", "PODYACHEVO"),
        # Ukrainian, Belarusian, Serbian letters of their own.
        ("Ґалаґан", "GALAGAN"),
        ("Ђаково", "DJAKOVO"),
        # ELOT 743 (ISO 843), road signs (from memory).
        ("Θεσσαλονίκη", "THESSALONIKI"),
        ("Χανιά", "CHANIA"),
        ("Ψυχικό", "PSYCHIKO"),
        ("Ηράκλειο", "IRAKLEIO"),
        ("Βόλος", "VOLOS"),
        ("Ξάνθη", "XANTHI"),
        ("Λουτράκι", "LOUTRAKI"),
        ("Ούζο", "OUZO"),
        # Latin letters that do not come apart into a letter and an accent.
        ("Łódź Ørsted Æbelø Œuvre", "LODZ ORSTED AEBELO OEUVRE"),
        ("Straße Þór Đorđe ħ ı ŋ", "STRASSE THOR DORDE H I NG"),
        ("e\u0301te\u0301", "ETE"),
        # No alphabets of that kind: nothing is guessed.
        ("北の壁", "北の壁"),
        ("wall 2²", "WALL 22"),
    ],
)
def test_names_of_towns_are_written_as_on_maps(name: str, plain: str) -> None:
    """Letter for letter, in capitals."""
    assert plain_capitals(name) == plain


LIVING = "".join(map(chr, (*range(0xA0, 0x180), *range(0x386, 0x3CF), *range(0x400, 0x460))))
"""The blocks for Latin, Greek and Cyrillic as they are written today."""


def test_no_letter_of_a_living_alphabet_vanishes() -> None:
    """Each leaves one from A-Z at least, but for the signs that soften or harden another; nothing
    else comes."""
    silent = {"ь", "ъ", "Ь", "Ъ", "ŉ"}  # the last is an apostrophe and an N
    for letter in LIVING:
        if unicodedata.category(letter) in ("Lu", "Ll") and letter not in silent:
            said = plain_capitals(letter)
            assert re.fullmatch(r"[A-Z0-9]+", said), (letter, said)


def test_what_is_plain_already_stays() -> None:
    """ASCII in capitals; the same a second time."""
    plain = "".join(map(chr, range(32, 127)))
    assert plain_capitals(plain) == plain.upper()
    assert plain_capitals(plain_capitals(LIVING)) == plain_capitals(LIVING)
    assert plain_capitals("\U0001f41f") == "\U0001f41f"
