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
import sys
from collections.abc import Sequence
from typing import TextIO

import click

_OBEYED = re.compile(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ud800-\udfff]"
    "|\r(?!\n)"
)
"""Control characters but for tab and line end, marks of direction, halves of a character."""

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
    """Say something on standard error. Where nobody can hear it, the work goes on."""
    try:
        click.echo(plain(text), err=True, nl=nl)
    except OSError:
        abandon(sys.stderr)


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
