"""What a wall is called: the name that the person gave it, with the word behind it once; as titles
and labels have it in capitals, as sentences do without.

Who calls a wall "north wall" reads NORTH WALL, as who calls it "north". Greek letters lose their
accents in capitals, but a diaeresis stays, and one comes to the second vowel of a pair whose first
loses its accent, so that the two are not read as one; the word "or", an eta by itself, keeps its
accent (CSS Text Module Level 3, 2.1, `text-transform` in Greek).

>>> wall_title("north"), wall_title("North wall"), wall_title("")
('NORTH WALL', 'NORTH WALL', 'WALL')
>>> bare_wall("βόρεια"), bare_wall("été")
('ΒΟΡΕΙΑ', 'ÉTÉ')
>>> bare_wall("North wall"), wall_phrase("north"), wall_phrase("North Wall")
('NORTH', 'north wall', 'North Wall')
"""

import re
import unicodedata

WALL = "WALL"
_ACCENTS = frozenset("\u0300\u0301\u0342\u0313\u0314")
"""Grave, acute, circumflex, and the two breathings."""
_DIAERESIS = "\u0308"
_WORD = re.compile(r"[^\W\d_]+")


def wall_title(name: str) -> str:
    """Name a wall in capitals."""
    title = capitals(name)
    if not title:
        return WALL
    return title if title.endswith(WALL) else f"{title} {WALL}"


def bare_wall(name: str) -> str:
    """Give a wall's name in capitals without the word."""
    return without_wall(capitals(name))


def without_wall(title: str) -> str:
    """Take the word from the end of a name in capitals."""
    return title.removesuffix(WALL).strip()


def wall_phrase(name: str) -> str:
    """Name a wall within a sentence, as the person writes it."""
    return name if name.upper().endswith(WALL) else f"{name} {WALL.lower()}"


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
