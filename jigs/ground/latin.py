"""Names in Latin letters without their accents, where there are A-Z alone.

Greek, Cyrillic, Armenian and Georgian letters are written as maps and road signs write them abroad,
letter for letter (BGN/PCGN, ELOT 743 and the like, as the library has them). What is no alphabet
of that kind is not guessed at: its signs stay.

>>> plain_capitals("Łódź"), plain_capitals("Øst é"), plain_capitals("Süd"), plain_capitals("Fuß")
('LODZ', 'OST E', 'SUD', 'FUSS')
>>> plain_capitals("Кухня"), plain_capitals("Νότου"), plain_capitals("北")
('KUKHNYA', 'NOTOU', '北')
"""

import re
import unicodedata
from functools import lru_cache

_SCRIPTS = ("LATIN ", "GREEK ", "CYRILLIC ", "ARMENIAN ", "GEORGIAN ")
_OU = "Ο[ΥΎ]"
"""One vowel, which no letter for itself tells."""


def plain_capitals(text: str) -> str:
    """Write a text in capitals of A-Z without accents; letters of other scripts stay."""
    capitals = text.upper()
    if capitals.isascii():
        return capitals
    return "".join(map(_plain, re.sub(_OU, "OU", unicodedata.normalize("NFC", capitals))))


@lru_cache(maxsize=1024)
def _plain(sign: str) -> str:
    if sign.isascii():
        return sign
    if not unicodedata.name(sign, "").startswith(_SCRIPTS):
        apart = unicodedata.normalize("NFKD", sign)
        return "".join(part for part in apart if not unicodedata.combining(part)).upper()
    from anyascii import anyascii

    # A soft sign is an apostrophe: it would part a word in two.
    return "".join(letter for letter in anyascii(sign).upper() if letter.isalnum())
