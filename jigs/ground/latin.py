"""Latin letters without their accents, for names that have A-Z alone.

>>> plain_capitals("Łódź"), plain_capitals("Øst é"), plain_capitals("Süd")
('LODZ', 'OST E', 'SUD')
"""

import unicodedata

_WHOLE = str.maketrans({"Ł": "L", "Ø": "O", "Đ": "D", "Æ": "AE", "Œ": "OE", "Þ": "TH"})
"""Capitals that do not come apart into a letter and an accent."""


def plain_capitals(text: str) -> str:
    """Write a text in capitals without accents; letters of other scripts stay."""
    apart = unicodedata.normalize("NFKD", text.upper().translate(_WHOLE))
    return "".join(letter for letter in apart if not unicodedata.combining(letter))
