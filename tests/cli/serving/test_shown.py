"""The symbol on the terminal: black on white whatever its colours, as another library reads it."""

import io
import sys

import numpy
import pytest
import zxingcpp

from cli.serving.shown import BLACK_ON_WHITE, HALVES, PLAIN, may_show, symbol_lines

LINK = "http://192.168.7.20:8032/?k=kuJ5kuJ5kuJ5kuJ5"


def test_the_symbol_is_read_as_it_stands_on_the_terminal() -> None:
    """Two rows of modules to a line, in half blocks, on a white ground with its quiet zone."""
    parts = {sign: pair for pair, sign in HALVES.items()}
    rows: list[list[bool]] = []
    for line in symbol_lines(LINK):
        assert line.startswith(BLACK_ON_WHITE)
        assert line.endswith(PLAIN)
        signs = line.removeprefix(BLACK_ON_WHITE).removesuffix(PLAIN)
        assert len(signs) < 80
        rows += [[parts[sign][half] for sign in signs] for half in (0, 1)]
    dots = numpy.where(numpy.array(rows), 0, 255).astype(numpy.uint8).repeat(6, 0).repeat(6, 1)
    read = zxingcpp.read_barcodes(dots, try_invert=False)
    assert [each.text for each in read] == [LINK]


class Terminal(io.TextIOWrapper):
    """A terminal of some code."""

    def __init__(self, code: str) -> None:
        super().__init__(io.BytesIO(), encoding=code)

    def isatty(self) -> bool:
        return True


def test_it_is_drawn_where_it_can_be_read(monkeypatch: pytest.MonkeyPatch) -> None:
    """Not into a file, nor where blocks or colours are not to be had: there is the address."""
    monkeypatch.setenv("TERM", "xterm")
    monkeypatch.delenv("NO_COLOR", raising=False)
    monkeypatch.setattr(sys, "stdout", Terminal("utf-8"))
    assert may_show()
    monkeypatch.setenv("NO_COLOR", "1")
    assert not may_show()
    monkeypatch.delenv("NO_COLOR")
    monkeypatch.setenv("TERM", "dumb")
    assert not may_show()
    monkeypatch.setenv("TERM", "xterm")
    monkeypatch.setattr(sys, "stdout", Terminal("latin-1"))
    assert not may_show()
    monkeypatch.setattr(sys, "stdout", io.StringIO())
    assert not may_show()
