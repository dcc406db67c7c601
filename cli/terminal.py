"""What the person at the terminal is told: the one place where text goes there.

A name out of a job may hold characters that a terminal obeys instead of showing them, or that
turn the order of the letters round: each is written as its code.

>>> print(plain("B1\\x1b[2J\\u202e"))
B1\\x1b[2J\\u202e
"""

import contextlib
import errno
import os
import re
import shlex
import sys
from collections.abc import Sequence
from typing import TextIO

import click

_OBEYED = re.compile(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ud800-\udfff]"
    "|\r(?!\n)"
)
"""Control characters but for tab and line end, marks of direction, halves of a character."""

NARROWEST = 39
"""Lines are not broken shorter, characters: a terminal of 40 columns less its last."""
_QUIET = "jigsheet.quiet"
_GAP = re.compile(r"( {2,})")
"""What stands between two cells of a table."""
_HELD = "\x1f"
"""A blank inside a cell, while its line is broken: no text has it, it is written as its code."""

_REASONS = {
    errno.ENOSPC: "the disk is full",
    errno.EDQUOT: "your share of the disk is used up",
    errno.EACCES: "writing there is not allowed",
    errno.EPERM: "writing there is not allowed",
    errno.EROFS: "that disk can only be read",
    errno.ENOENT: "there is no such folder",
    errno.ENOTDIR: "a part of the path is a file, not a folder",
    errno.ENAMETOOLONG: "the name is too long",
    errno.EISDIR: "it is a folder",
    errno.EBADF: "it is closed",
}


def plain(text: str) -> str:
    """Write what a terminal would obey as its code."""
    return _OBEYED.sub(lambda found: found[0].encode("unicode_escape").decode(), text)


def tell(text: str, *, nl: bool = True) -> None:
    """Say something on standard error, on a terminal no wider than it is. Where nobody can hear
    it, the work goes on."""
    try:
        click.echo(fitted(plain(text), sys.stderr), err=True, nl=nl)
    except OSError:
        abandon(sys.stderr)


def mention(text: str, *, nl: bool = True) -> None:
    """Say what was read or written, unless --quiet was asked for."""
    if not is_quiet():
        tell(text, nl=nl)


def keep_quiet(ctx: click.Context) -> None:
    """Mention nothing more in this run."""
    ctx.meta[_QUIET] = True


def is_quiet() -> bool:
    """Tell whether --quiet was asked for."""
    ctx = click.get_current_context(silent=True)
    return ctx is not None and bool(ctx.meta.get(_QUIET))


def terminal_width(stream: TextIO) -> int | None:
    """Give the columns of the terminal that a stream is, None where it is none."""
    if not stream.isatty():
        return None
    said = os.environ.get("COLUMNS", "")
    try:
        columns = int(said) if said.isdecimal() else os.get_terminal_size(stream.fileno()).columns
    except OSError:
        columns = 0
    # Some terminals begin a new line once the last column is full.
    return max((columns or 80) - 1, NARROWEST)


def fitted(text: str, stream: TextIO) -> str:
    """Break the lines that a stream's terminal is too narrow for; what is no terminal takes
    lines of any length."""
    width = terminal_width(stream)
    return text if width is None else fit(text, width)


def fit(text: str, width: int) -> str:
    """Break lines that are wider than `width`, what goes on set in under its line; the columns of
    a table are parted between them.

    >>> print(fit("  B1-SIDE-L  1  774.7 x 584.2  band front", 28))
      B1-SIDE-L  1
          774.7 x 584.2
          band front
    """
    return "\n".join(part for line in text.split("\n") for part in _broken(line, width))


def _broken(line: str, width: int) -> list[str]:
    if len(line) <= width:
        return [line]
    import textwrap  # few lines are too wide

    indent = len(line) - len(line.lstrip())
    under = " " * min(indent + (4 if _GAP.search(line.strip()) else 2), width // 2)
    if _GAP.search(line.strip()):
        parts = _GAP.split(line.strip())
        line = " " * indent + "".join(
            part.replace(" ", _HELD) if part.strip() and len(part) <= width - len(under) else part
            for part in parts
        )
    lines = textwrap.wrap(
        line, width, subsequent_indent=under, break_long_words=False, break_on_hyphens=False
    )
    return [part.replace(_HELD, " ") for part in lines]


def typed(*words: object) -> str:
    """Give words as they are typed in this system's shell: one with a blank in quotes, and one with
    a comma or a semicolon too, which PowerShell would cut apart."""
    texts = [str(word) for word in words]
    if sys.platform == "win32":
        from subprocess import list2cmdline

        typed_words = [(text, list2cmdline([text])) for text in texts]
        return " ".join(
            f'"{word}"' if {",", ";"} & set(text) and word == text else word
            for text, word in typed_words
        )
    return shlex.join(texts)


def typed_line(*words: object) -> str:
    """Give the line that runs a command, as it stands in a sentence: set apart by quotes unless it
    has some itself.

    >>> print(typed_line("check", "galley.toml"), "or", typed_line("check", "my galley.toml"))
    'jigsheet check galley.toml' or jigsheet check 'my galley.toml'
    """
    line = typed("jigsheet", *words)
    return line if {"'", '"'} & set(line) else f"'{line}'"


def draw(lines: Sequence[str]) -> None:
    """Draw on standard output, a terminal, what is made of our own signs, with its colours."""
    click.echo("\n".join(lines), color=True)


def open_closed() -> None:
    """Put a stream in the place of one that was closed from the start: what is told is lost, and
    an answer fails as on any other file that is closed."""
    if sys.stderr is None:
        sys.stderr = open(os.devnull, "w", encoding="utf-8")  # noqa: SIM115 - open to the end
    if sys.stdout is None:
        sys.stdout = os.fdopen(os.open(os.devnull, os.O_RDONLY), "w", encoding="utf-8")


def abandon(stream: TextIO) -> None:
    """Let go of what a stream still holds: it would fail once more at the very end."""
    with contextlib.suppress(OSError, ValueError):
        nowhere = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nowhere, stream.fileno())
        os.close(nowhere)


def why(error: OSError) -> str:
    """Give the reason why something could not be written, in plain words."""
    known = _REASONS.get(error.errno or 0)
    return known or (error.strerror or str(error)).lower()
