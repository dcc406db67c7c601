"""Cells of a list that hold more than one value, or a value with words: sizes with a sign between,
a count with its unit.

>>> split_sizes("597 x 713 mm"), split_sizes("H 713 x B 597")
((Part(size='597 mm', column=''), Part(size='713 mm', column='')), \
(Part(size='713', column='height'), Part(size='597', column='width')))
>>> find_sizes("Door 597x713, white"), read_whole_number("2 Stk."), read_whole_number("1.5")
('597x713', 2, None)
"""

import re

from msgspec import Struct

from jigs.ground.lengths import ends_with_unit, is_bare
from jigs.reading.headings import SIZE_COLUMNS, fold, read_heading

_NUMBER = r"[0-9]+(?:[ -][0-9]+/[0-9]+|/[0-9]+|[.,][0-9]+)? ?[¼-¾⅐-⅞]?"
_LENGTH = rf"{_NUMBER}\s*(?:mm|cm|in|\"|″|”)?"
_SIZES = rf"(?i)(?<![0-9.,/]){_LENGTH}(?:\s*[x×*]\s*{_LENGTH}){{1,2}}"
_BETWEEN = r"(?i)\s*[x×*]\s*"
_LISTED = r"\s*[,;/]\s+|\s*;\s*"
"""Signs between sizes that say which they are: `H 713, W 597`."""
_BEFORE = r"(?P<letter>[^\W\d_]{1,12})[.:=]?\s*(?P<text>[0-9¼-¾⅐-⅞].*)"
_BEHIND = (r"(?P<text>.*[^\W_])\s*\(?(?P<letter>[^\W\d_]{1,12})\.?\)?|"
           r"(?P<text2>.*[\"″”'′])\s*\(?(?P<letter2>[^\W\d_]{1,12})\.?\)?")  # fmt: skip
_COUNT = r"[x×]?\s*0*(?P<number>[0-9]{1,3})(?:[.,]0{1,2})?\s*(?P<unit>[^\W\d_].*|[x×])?"
MOST_SIZES = 3


class Part(Struct, frozen=True):
    """One of several sizes in a cell: its text, and which it says that it is, "" where it does
    not."""

    size: str
    column: str = ""


def split_sizes(text: str) -> tuple[Part, ...]:
    """Part a cell of two or three sizes; empty for any other. A unit behind the last is that of
    all, if no other has one."""
    pieces = re.split(_BETWEEN, text.strip())
    named = [_read_part(piece.strip()) for piece in re.split(_LISTED, text.strip())]
    if len(pieces) == 1 and all(part.column for part in named):
        parts = named
    else:
        parts = [_read_part(piece.strip()) for piece in pieces]
    if not 2 <= len(parts) <= MOST_SIZES:
        return ()
    if not all(part.size[:1].isnumeric() for part in parts):
        return ()
    *first, last = parts
    unit = ends_with_unit(last.size)
    if unit and all(is_bare(part.size) for part in first):
        parts = [Part(f"{part.size} {unit}", part.column) for part in first] + [last]
    return tuple(parts)


def part_sizes(text: str) -> tuple[str, ...]:
    """Part a cell at its signs of multiplication.

    >>> part_sizes("796,5 x 140 / 284")
    ('796,5', '140 / 284')
    """
    return tuple(re.split(_BETWEEN, text.strip()))


def _read_part(piece: str) -> Part:
    """Part a letter, before or behind, from its size: `B 597`, `28"H`."""
    if found := re.fullmatch(_BEFORE, piece):
        if column := _size_column(found["letter"]):
            return Part(found["text"], column)
    elif not ends_with_unit(piece) and (found := re.fullmatch(_BEHIND, piece)):
        letter = found["letter"] or found["letter2"]
        if column := _size_column(letter):
            return Part((found["text"] or found["text2"]).strip(" ("), column)
    return Part(piece)


def _size_column(letter: str) -> str:
    found = read_heading(letter)
    return found.column if found and found.column in SIZE_COLUMNS else ""


def find_sizes(text: str) -> str:
    """Give the one group of sizes that stands among words, "" where there is none or are two."""
    found = re.findall(_SIZES, text)
    return found[0].strip() if len(found) == 1 else ""


def read_whole_number(text: str) -> int | None:
    """Give a count, with the word for pieces behind it or without."""
    found = re.fullmatch(_COUNT, text.strip())
    if not found:
        return None
    unit = fold(found["unit"] or "").removesuffix(" x")
    return int(found["number"]) if not unit or is_count_word(unit) else None


def is_count_word(word: str) -> bool:
    """Tell whether a word counts pieces; a heading names many where a cell may have one.

    >>> is_count_word("stuk"), is_count_word("pcs"), is_count_word("mm")
    (True, True, False)
    """
    folded = fold(word)
    if folded in ("x", "st", "ea", "each", "off"):
        return True
    found = (read_heading(folded + ending) for ending in ("", "s", "es"))
    return any(meant is not None and meant.column == "count" for meant in found)
