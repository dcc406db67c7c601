"""The glossary: each of its words stands on the paper, and each table goes by the alphabet."""

import re
from collections.abc import Iterator
from functools import cache
from itertools import pairwise

import pytest

from tests.pages import GLOSSARY, ROOT

ROW = re.compile(r"^\| ([^|]+) \| ([^|]+) \|$", re.MULTILINE)
TABLES = [
    ROW.findall(block)[1:]
    for block in GLOSSARY.read_text(encoding="utf-8").split("\n## ")[1:]
]  # fmt: skip
STRING = re.compile(r'"""(?s:.*?)"""|"(?:[^"\\\n]|\\.)*"|#.*')
"""A docstring, a string or a comment of a program: a quote within another of them begins none."""
NAME = re.compile(r"\{[\w.]+[^'{}]*\}")
"""A value that is set into a string: its name is printed nowhere."""
WORDS = [word for table in TABLES[:-1] for word, _ in table]


@cache
def said() -> str:
    """Give all that the programs may print as one text."""
    return "\n".join(texts())


def texts() -> Iterator[str]:
    """Give every text of the programs that print, without their docstrings, and their sentences.
    A search for quotes does: to read the programs as such takes twenty times as long."""
    for file in (ROOT / "templates").rglob("*.py"):
        text = file.read_text(encoding="utf-8")
        strings = (each for each in STRING.findall(text) if each[0] != "#" and each[:3] != '"""')
        yield from (NAME.sub("", each) for each in strings)
    for file in (ROOT / "templates" / "words").glob("*.toml"):
        yield file.read_text(encoding="utf-8")


@pytest.mark.slow
def test_each_word_is_on_the_paper() -> None:
    """A word that nothing prints needs no line; a made-up one is missed."""
    text = said()
    missing = [
        word for word in (*WORDS, "thingumbob")
        if not re.search(rf"\b{re.escape(word)}s?\b", text, re.IGNORECASE)
    ]  # fmt: skip
    assert missing == ["thingumbob"]


def test_each_sign_is_on_the_paper() -> None:
    """As it is printed; the first is a length on a tape."""
    text = said()
    assert [sign for sign, _ in TABLES[-1][1:] if sign not in text] == []


@pytest.mark.parametrize("table", TABLES[:-1], ids=lambda table: table[0][0])
def test_words_go_by_the_alphabet(table: list[tuple[str, str]]) -> None:
    """A reader with a sheet in the hand finds one at once."""
    assert all(one.lower() < other.lower() for (one, _), (other, _) in pairwise(table))
