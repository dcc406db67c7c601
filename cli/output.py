"""Writing: a file appears whole or not at all, and never over something the job is read from."""

import contextlib
import errno
import os
import secrets
import stat
import sys
from collections.abc import Iterable
from pathlib import Path

from cli.failures import Failure

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
}


def write_text(target: str, text: str, *, sources: Iterable[Path]) -> None:
    """Write text as UTF-8 to a file, or to standard output (`-`) in the terminal's own code."""
    encoding = sys.stdout.encoding if target == "-" and sys.stdout.isatty() else "utf-8"
    write_bytes(target, text.encode(encoding, errors="replace"), sources=sources)


def write_bytes(target: str, data: bytes, *, sources: Iterable[Path]) -> None:
    """Write an output: a file's name, or `-` for standard output.

    `sources` are the files the job was read from; writing over one of them is refused, under
    whatever name it goes. Fails with a plain message, and then an older file is left as it was.
    """
    try:
        if target == "-":
            sys.stdout.buffer.write(data)
            sys.stdout.buffer.flush()
        else:
            _write_file(Path(target), data, sources)
    except OSError as error:
        if error.errno == errno.EPIPE:
            raise
        shown = "standard output" if target == "-" else f"'{target}'"
        raise Failure(f"{shown} could not be written: {_reason(error)}.") from error


def make_folder(path: Path) -> None:
    """Make a folder and those above it, if it is not there yet."""
    if path.exists() and not path.is_dir():
        raise Failure(f"'{path}' is a file; a folder is wanted there.")
    try:
        path.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise Failure(f"The folder '{path}' could not be made: {_reason(error)}.") from error


def guard(target: str, sources: Iterable[Path]) -> None:
    """Refuse a target that cannot be one, before any work is done for it."""
    if target == "-":
        return
    path = Path(target)
    if path.is_dir():
        raise Failure(f"'{target}' is a folder; give the name of a file in it.")
    for source in sources:
        if path.exists() and source.exists() and path.samefile(source):
            raise Failure(
                f"'{target}' is what the job is read from ('{source}'); it is not overwritten. "
                "Give another name with -o."
            )


def _write_file(path: Path, data: bytes, sources: Iterable[Path]) -> None:
    guard(str(path), sources)
    # A link stays a link: what it points at is replaced.
    real = Path(os.path.realpath(path))
    if real.exists():
        mode = real.stat().st_mode
        if not stat.S_ISREG(mode):  # a device or a pipe cannot be replaced
            real.write_bytes(data)
            return
        if not os.access(real, os.W_OK):
            raise PermissionError(errno.EACCES, os.strerror(errno.EACCES), str(real))
    else:
        mode = None
    # Its name is short, so that a name that is allowed for the file is allowed for it too.
    part = real.with_name(f".jigsheet-{secrets.token_hex(6)}.part")
    handle = os.open(part, os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0), 0o666)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        if mode is not None:
            part.chmod(stat.S_IMODE(mode))
        part.replace(real)
    except BaseException:
        with contextlib.suppress(OSError):
            part.unlink()
        raise


def _reason(error: OSError) -> str:
    known = _REASONS.get(error.errno or 0)
    return known or (error.strerror or str(error)).lower()
