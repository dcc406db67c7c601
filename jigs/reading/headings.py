"""What a heading means: a word of `headings.toml`, matched exact, in plain letters, word by word
and by its ending, never by likeness.

A heading is understood only where every word in it is: `Gap width` is no width, and of a
`Gesamtbreite` nobody knows what of. Its last word may be a unit. Sizes in one cell say their order:
`B x H (mm)`. A word that is only like one that is known is asked about.

>>> read_heading("Fertigbreite (mm)"), read_heading("Gesamtbreite"), read_heading("Weight")
(Heading(column='width', unit='mm', order=()), None, Heading(column='other', unit=None, order=()))
>>> read_heading("H x B").order, like_heading("Heigth")
(('height', 'width'), 'height')
"""

import csv
import re
from collections.abc import Iterator, Mapping
from functools import cache
from pathlib import Path
from typing import Literal

from msgspec import Struct

from jigs.ground.latin import plain_capitals
from jigs.ground.lengths import BareUnit

ListColumn = Literal[
    "id", "box", "kind", "width", "height", "count", "hinged", "thickness", "stile", "pull",
    "finish", "note", "rail", "groove", "panel", "glass", "edge radius", "profile", "bored",
    "hinges at", "bored tab", "size", "description", "left", "right", "pull side",
]  # fmt: skip
LIST_COLUMNS: tuple[ListColumn, ...] = (
    "id", "box", "kind", "width", "height", "size", "count", "hinged", "thickness", "stile",
    "pull", "finish", "note", "description", "rail", "groove", "panel", "glass", "edge radius",
    "profile", "bored", "hinges at", "bored tab", "left", "right", "pull side",
)  # fmt: skip
OTHER = "other"
"""Columns that a list may have and that nobody reads; any number of them."""
POSITION = "position"
LENGTH = "length"
"""A column of lengths: along the grain or up, nobody knows."""

HeadUnit = Literal["mm", "cm", "in", "m"]
"""The unit that a heading names."""
HEAD_UNITS: tuple[HeadUnit, ...] = ("mm", "cm", "in", "m")

SIZE_COLUMNS = ("width", "height", "thickness")
"""What sizes in one cell may be."""
LIKE = 0.8
"""How like a word has to be to one that is known, to be asked about (tried)."""
SHORTEST_LIKE = 4
"""Letters below which words are too like each other."""
_SHORTEST_END = 4
"""Letters that an ending or a word with a plural has at least."""
_PLURALS = ("s", "n", "en", "r", "er", "e", "es")
_LETTERS: Mapping[str, str] = {
    "d": "thickness", "s": "thickness", "e": "thickness", "th": "thickness", "l": LENGTH,
}  # fmt: skip
"""What letters mean between two signs of multiplication alone."""
_NO_UNITS = ("in", "ins", "po")
"""Words of a sentence that are units behind a number alone."""
_SIGN = re.compile(r"[^a-z0-9#]+")
_INCH_SIGNS = re.compile("[\"″”]|''")
_TIMES = re.compile("[×*]")


class Heading(Struct, frozen=True):
    """What a heading means: its column, its unit, and the order of the sizes in its cells, empty
    where it does not say one."""

    column: str
    unit: HeadUnit | None = None
    order: tuple[str, ...] = ()


def fold(text: str) -> str:
    """Write a text in plain small letters, its words parted by one space."""
    marked = _TIMES.sub(" x ", _INCH_SIGNS.sub(" inch ", text[:200]))
    return _SIGN.sub(" ", plain_capitals(marked).lower()).strip()


def read_words(file: str) -> Mapping[str, Mapping[str, str]]:
    """Read a file of words as they are looked up: by their group, what each spelling means. It is
    written from the words of the languages (`tests/listwords.py`): to fold those takes longer than
    to read a list."""
    read: dict[str, dict[str, str]] = {}
    with Path(__file__).with_name(file).open(encoding="ascii", newline="") as rows:
        for group, spelling, meaning in csv.reader(rows):
            read.setdefault(group, {})[spelling] = meaning
    return read


@cache
def _words() -> Mapping[str, Mapping[str, str]]:
    return read_words("headings.csv")


@cache
def read_heading(text: str) -> Heading | None:
    """Give what a heading means; None where not every word of it is understood."""
    words, folded = _words()["column"], fold(text)
    if folded in words and (column := words[folded]) != OTHER:
        return Heading(column)
    before, unit = read_unit(folded)
    tokens = before.split()
    if order := _read_order(tokens):
        return Heading("size", unit, order if LENGTH not in order else ())
    if folded in words:
        return Heading(OTHER)
    found = set(_read_tokens(tokens))
    if len(found) != 1:
        return None
    [column] = found
    return Heading(column, unit) if column else None


def read_unit(folded: str) -> tuple[str, HeadUnit | None]:
    """Part the unit behind a folded heading from what stands before it."""
    before, _, last = folded.rpartition(" ")
    unit = _unit(last) if before else None
    return (before, unit) if unit else (folded, None)


def title_unit(text: str) -> BareUnit | None:
    """Give the one unit that a title names by a word of its own, no number before it; the word `in`
    says nothing there.

    >>> title_unit("Alle maten in cm"), title_unit("Thickness 19 mm"), title_unit("2 in stock")
    ('cm', None, None)
    """
    tokens = fold(text).split()
    found: set[BareUnit] = set()
    for before, token in zip(["", *tokens], tokens, strict=False):
        unit = _unit(token) or _unit(token.removesuffix("s"))
        if unit and unit != "m" and token not in _NO_UNITS and not before[-1:].isdigit():
            found.add(unit)
    return found.pop() if len(found) == 1 else None


def _unit(token: str) -> HeadUnit | None:
    name = _words()["unit"].get(token)
    return next((unit for unit in HEAD_UNITS if unit == name), None)


def _read_order(tokens: list[str]) -> tuple[str, ...]:
    """Give the order of the sizes that a heading parts by signs of multiplication."""
    text = " ".join(tokens)
    parts = [part.split() for part in re.split(r"\s*x\s*", text)]
    if not 2 <= len(parts) <= 3:
        return ()
    order = tuple(_read_letter(part) for part in parts)
    if not all(order) or not {"width", "height", LENGTH} & set(order):
        return ()
    # Beside a height the other size lies across, whatever it is called.
    if "height" in order and "width" not in order:
        order = tuple("width" if size == LENGTH else size for size in order)
    return order if len(set(order)) == len(order) else (LENGTH,)


def _read_letter(tokens: list[str]) -> str:
    """Give which size a part between two signs of multiplication is, "" for none."""
    found = {
        _LETTERS.get(token, column)
        for token in tokens
        for column in _read_tokens([token])
        if token in _LETTERS or column != "size"
    }
    [size] = found if len(found) == 1 else [""]
    return size if size in (*SIZE_COLUMNS, LENGTH) else ""


def _read_tokens(tokens: list[str]) -> Iterator[str]:
    """Yield what the words of a heading mean, "" for one that is not known; of several words that
    belong together, what they mean together."""
    words = _words()["column"]
    start = 0
    while start < len(tokens):
        for end in range(len(tokens), start, -1):
            phrase = " ".join(tokens[start:end])
            column = words.get(phrase, "")
            if end == start + 1 and (len(tokens) == 1 or not _is_beside(phrase)):
                yield column or _ending(phrase)
            elif column and end > start + 1:
                yield column
            elif end > start + 1:
                continue
            break
        start = end


def _is_beside(token: str) -> bool:
    beside = _words()["beside"]
    return any(token.removesuffix(end) in beside for end in ("", "s"))


def _ending(token: str) -> str:
    """Give what a word means by its plural, or by its ending behind a word that changes nothing."""
    words = _words()["column"]
    stems = {token, *(token.removesuffix(end) for end in _PLURALS)}
    for stem in sorted(stems, key=len, reverse=True):
        if len(stem) < _SHORTEST_END - 1:
            continue
        if stem in words:
            return words[stem]
        for cut in range(3, len(stem) - _SHORTEST_END + 1):
            if _is_beside(stem[:cut]) and stem[cut:] in words:
                return words[stem[cut:]]
    return ""


def is_measure(text: str) -> bool:
    """Tell whether a cell names what something is counted or measured in.

    >>> is_measure("pcs."), is_measure("Stk"), is_measure("mm"), is_measure("B1")
    (True, True, True, False)
    """
    found = read_heading(text)
    return _unit(fold(text)) is not None or (found is not None and found.column == "count")


def like_heading(text: str) -> str:
    """Give the column whose word a heading is like, "" where it is like none, or understood."""
    if read_heading(text):
        return ""
    # Only an unknown heading needs it: other lists do not wait for the import.
    from difflib import get_close_matches

    words = {
        word: column
        for word, column in _words()["column"].items()
        if column in LIST_COLUMNS and len(word) >= SHORTEST_LIKE
    }
    for token in (fold(text), *fold(text).split()):
        if len(token) >= SHORTEST_LIKE:
            for near in get_close_matches(token, words, n=1, cutoff=LIKE):
                return words[near]
    return ""
