"""Text for a terminal: lines no wider than it, rows set in columns, counts with their nouns.

>>> columned([("part", "n"), ("B1-SIDE-L", "12")], right=(1,))
['  part        n', '  B1-SIDE-L  12']
>>> counted(1, "front"), counted(3, "front")
('1 front', '3 fronts')
"""

import textwrap
from collections.abc import Collection, Iterator, Sequence
from contextlib import contextmanager
from contextvars import ContextVar

WIDTH = 96
"""Widest line of a list, characters."""
_width = ContextVar("width", default=WIDTH)


def line_width() -> int:
    """Give how wide lines are set now, characters."""
    return _width.get()


@contextmanager
def as_wide(width: int | None) -> Iterator[None]:
    """Set lines for a terminal of so many characters, if it is narrower than a list."""
    before = _width.set(min(width or WIDTH, WIDTH))
    try:
        yield
    finally:
        _width.reset(before)


def wrapped(text: str, first: str, rest: str) -> list[str]:
    """Break a text into lines, the first and the others each indented."""
    return textwrap.wrap(
        text, line_width(), initial_indent=first, subsequent_indent=rest,
        break_on_hyphens=False, break_long_words=False,
    )  # fmt: skip


def columned(
    rows: Sequence[Sequence[str]], *, right: Collection[int] = (), indent: str = "  "
) -> list[str]:
    """Set rows in columns, two blanks apart, each cell to the left of its column or, in the
    columns `right` (counted from 0), to the right."""
    widths = [max(map(len, column)) for column in zip(*rows, strict=True)]
    lines = []
    for row in rows:
        cells = [
            cell.rjust(width) if at in right else cell.ljust(width)
            for at, (cell, width) in enumerate(zip(row, widths, strict=True))
        ]
        lines.append(f"{indent}{'  '.join(cells)}".rstrip())
    return lines


def counted(count: int, noun: str) -> str:
    """Give a number with its noun, which takes an s for more than one, and for none."""
    return f"{count} {noun}" if count == 1 else f"{count} {noun}s"
