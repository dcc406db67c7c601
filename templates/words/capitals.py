"""Names in capitals, as titles and labels have them.

Greek letters lose their accents there, but a diaeresis stays, and one comes to the second vowel
of a pair whose first loses its accent, so that the two are not read as one; the word "or", an eta
by itself, keeps its accent (CSS Text Module Level 3, 2.1, `text-transform` in Greek).

>>> capitals("north"), capitals("βόρεια"), capitals("été")
('NORTH', 'ΒΟΡΕΙΑ', 'ÉTÉ')
"""

import re
import unicodedata

_ACCENTS = frozenset("\u0300\u0301\u0342\u0313\u0314")
"""Grave, acute, circumflex, and the two breathings."""
_DIAERESIS = "\u0308"
_WORD = re.compile(r"[^\W\d_]+")


def capitals(name: str) -> str:
    """Write a name in capitals; Greek without its accents."""
    return _WORD.sub(lambda word: _word(word.group()), unicodedata.normalize("NFC", name)).upper()


def _word(word: str) -> str:
    """Take the accents from the Greek letters of a word."""
    if word in "ήΉ":
        return word
    bare: list[str] = []
    parts = False
    for letter in word:
        base, *marks = list(unicodedata.normalize("NFD", letter))
        if not unicodedata.name(base, "").startswith("GREEK"):
            bare.append(letter)
            parts = False
            continue
        kept = [mark for mark in marks if mark not in _ACCENTS]
        if parts and not marks and base in "ιυΙΥ":
            kept = [_DIAERESIS]
        accented = len(kept) < len(marks)
        parts = accented and _DIAERESIS not in kept and base.lower() in "αεοηυ"
        bare.append(unicodedata.normalize("NFC", "".join((base, *kept))))
    return "".join(bare)
