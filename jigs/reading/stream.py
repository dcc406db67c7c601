"""A stream as an input: a pipe, standard input (`/dev/stdin`), what a shell names `/dev/fd/63`.

It is read once and has no name of its own: what is in it says what it is, and what it names lies
in the folder the run was started in.
"""

import re
from functools import cache
from pathlib import Path

MOST = 10_000_000
"""Bytes that are read of it: a device may have no end."""
PEEPED = 10_000
"""Bytes at its beginning that are looked at."""

_DEVICES = Path("/dev")
_JOB_LINE = re.compile(rb"^[ \t]*(?:schema[ \t]*=|\[\[box(?:\.front)?\]\])", re.MULTILINE)


def is_stream(path: Path) -> bool:
    """Tell whether a path leads to a stream, not to a file with a name of its own."""
    try:
        if not path.exists() or path.is_dir():
            return False
        return _DEVICES in path.absolute().parents or not path.is_file()
    except OSError:
        return False


@cache
def read_stream(path: Path) -> bytes:
    """Give what comes through a stream, at most one byte over `MOST`. Raises OSError."""
    with path.open("rb") as stream:
        return stream.read(MOST + 1)


def read_whole(path: Path, most: int) -> bytes:
    """Give what is in a file, or comes through a stream: at most one byte over `most`, or over
    `MOST`. Raises OSError."""
    if is_stream(path):
        return read_stream(path)
    with path.open("rb") as file:
        return file.read(most + 1)


def looks_like_job(path: Path) -> bool:
    """Tell whether what is in a file or stream begins like a job file."""
    try:
        beginning = read_whole(path, PEEPED)[:PEEPED]
    except OSError:  # its reader says what is wrong with it
        return False
    return _JOB_LINE.search(beginning) is not None


def folder_of(path: Path) -> Path:
    """Give the folder in which lies what an input names."""
    return Path() if is_stream(path) else path.parent


def name_of(path: Path) -> str:
    """Give the name of a job that does not state one, "" for a stream."""
    return "" if is_stream(path) else path.stem
