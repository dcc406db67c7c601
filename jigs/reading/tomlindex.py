"""The line of each key of a TOML document.

The standard reader names a line for a syntax error alone. Every other fault needs one too, so
this index walks a document that has already been read and notes where each key, each table and
each element of a list begins. Places in lists count from 1, as in `box[2].front[1].height`.

>>> index_lines('units = "in"\\n[[box]]\\nid = "B1"\\n')[("box", 1, "id")]
3
"""

import re
from collections.abc import Iterator, Mapping
from contextlib import suppress

from msgspec import Struct, field

from jigs.ground.believable import KeyPath

DEEPEST = 32
"""Keys of one dotted name that are noted: a job file has three."""

_TOKEN = re.compile(
    r'''
      (?P<skip>[ \t\r]+|\#[^\n]*)
    | (?P<newline>\n)
    | (?P<string>"""(?:[^\\]|\\.)*?"{3,5}|\'\'\'.*?'{3,5}|"(?:[^"\\\n]|\\.)*"|'[^'\n]*')
    | (?P<mark>\[\[|\]\]|[\[\]{}=,.])
    | (?P<bare>[^\s\[\]{}=,.\#"']+)
    ''',
    re.VERBOSE | re.DOTALL,
)


def index_lines(text: str) -> Mapping[KeyPath, int]:
    """Give the line, from 1, on which each key path of a valid document begins."""
    walk = _Walk(list(_tokens(text)))
    # Lists in lists without end: what lies so deep is found by the line of what is around it.
    with suppress(RecursionError):
        walk.walk_document()
    return walk.lines


def find_line(lines: Mapping[KeyPath, int], path: KeyPath) -> int:
    """Give the line of a path, or of the nearest thing around it."""
    while path and path not in lines:
        path = path[:-1]
    return lines.get(path, 1)


def _tokens(text: str) -> Iterator[tuple[str, str, int]]:
    line = 1
    for found in _TOKEN.finditer(text):
        kind, word = str(found.lastgroup), found.group()
        if kind != "skip":
            yield kind, word, line
        line += word.count("\n")


class _Walk(Struct):
    tokens: list[tuple[str, str, int]]
    at: int = 0
    lines: dict[KeyPath, int] = field(default_factory=dict)
    lengths: dict[KeyPath, int] = field(default_factory=dict)

    def walk_document(self) -> None:
        table: KeyPath = ()
        while self.at < len(self.tokens):
            kind, word, line = self.tokens[self.at]
            if kind == "newline":
                self.at += 1
            elif word == "[[" or word == "[":
                self.at += 1
                table = self._head(self._key(), line, listed=word == "[[")
            else:
                before = self.at
                self._pair(table)
                self.at = max(self.at, before + 1)

    def _head(self, keys: list[str], line: int, *, listed: bool) -> KeyPath:
        """Find the table a header opens: a list on the way stands for its last element."""
        path: KeyPath = ()
        for place, key in enumerate(keys[:DEEPEST]):
            path = (*path, key)
            self.lines.setdefault(path, line)
            if listed and place == len(keys) - 1:
                self.lengths[path] = self.lengths.get(path, 0) + 1
            if path in self.lengths:
                path = (*path, self.lengths[path])
                self.lines.setdefault(path, line)
        self._take_to_newline()
        return path

    def _key(self) -> list[str]:
        """Take a key, dotted or not."""
        keys = []
        while self.at < len(self.tokens):
            kind, word, _ = self.tokens[self.at]
            if kind == "string":
                keys.append(_unquote(word))
            elif kind == "bare":
                keys.append(word)
            elif word != ".":
                break
            self.at += 1
        return keys

    def _pair(self, table: KeyPath) -> None:
        line = self.tokens[self.at][2]
        path = table
        for key in self._key()[:DEEPEST]:
            path = (*path, key)
            self.lines.setdefault(path, line)
        if self._peek() == "=":
            self.at += 1
            self._value(path)

    def _value(self, path: KeyPath) -> None:
        word = self._peek()
        if word in ("[", "[["):
            self._list(path)
        elif word == "{":
            self.at += 1
            while self._peek() not in ("}", ""):
                before = self.at
                if self._peek() not in (",", "\n"):
                    self._pair(path)
                self.at = max(self.at, before + 1)
            self.at += 1
        else:
            while self._peek() not in (",", "}", "]", "]]", "\n", ""):
                self.at += 1

    def _list(self, path: KeyPath) -> None:
        self._split_bracket("[[")
        self.at += 1
        place = 0
        while self._peek() not in ("]", "]]", ""):
            if self._peek() in (",", "\n"):
                self.at += 1
                continue
            before = self.at
            place += 1
            element: KeyPath = (*path, place)
            self.lines.setdefault(element, self.tokens[self.at][2])
            self._value(element)
            # A value that takes nothing would hold the walk for ever.
            self.at = max(self.at, before + 1)
        self._split_bracket("]]")
        self.at += 1

    def _split_bracket(self, double: str) -> None:
        """A double bracket inside a value is two lists, one in the other."""
        if self._peek() == double:
            kind, _, line = self.tokens[self.at]
            self.tokens[self.at : self.at + 1] = [(kind, double[0], line)] * 2

    def _peek(self) -> str:
        return self.tokens[self.at][1] if self.at < len(self.tokens) else ""

    def _take_to_newline(self) -> None:
        while self._peek() not in ("\n", ""):
            self.at += 1


def _unquote(word: str) -> str:
    """Give a quoted key's text; an escape in a key is left as it is written."""
    return word[1:-1]
