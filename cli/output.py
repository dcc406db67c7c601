"""Writing: a file appears whole or not at all, and never over something the job is read from, nor
over what was marked."""

import contextlib
import errno
import os
import stat
import sys
import time
from collections.abc import Callable, Iterable, Iterator
from pathlib import Path
from typing import IO

from msgspec import Struct

from cli.failures import Failure
from cli.terminal import abandon, fitted, plain, why

MARKS = ".marks.sqlite"
"""How the name of the file ends, beside a job, that keeps what was marked: nobody can make it
anew."""
LONGEST_SAID = 200
"""Letters of a name that are said."""
_ASIDE = ".jigsheet-"
"""How the name of a file begins that is not yet in its place."""
_PATIENCE = 10.0
"""How long another run is waited for, s: files are written in a moment, all drawing is done."""


class Unwritable(Failure):
    """A place that cannot be written."""


def write_text(target: str, text: str, *, sources: Iterable[Path]) -> None:
    """Write text as UTF-8 to a file, or to standard output (`-`); to a terminal in its own code,
    and nothing that it would obey."""
    if target != "-":
        write_bytes(target, text.encode(errors="replace"), sources=sources)
    elif sys.stdout.isatty():
        _answer(fitted(plain(text), sys.stdout).encode(sys.stdout.encoding, errors="replace"))
    else:
        _answer(text.encode(errors="replace"))


def write_bytes(target: str, data: bytes | IO[bytes], *, sources: Iterable[Path]) -> None:
    """Write an output, its bytes or an open file of them: to a file's name, or `-` for standard
    output.

    `sources` are the files the job was read from; writing over one of them is refused, under
    whatever name it goes. Fails with a plain message, and then an older file is left as it was.
    """
    if target != "-":
        with told(f"'{_short(target)}'"):
            _write_file(Path(target), data, sources)
    elif sys.stdout.isatty():
        raise Failure(
            "standard output is a terminal, which would obey what is in this file; give its name "
            "with -o, or send it on with > or |."
        )
    else:
        _answer(data)


def _answer(data: bytes | IO[bytes]) -> None:
    with told("standard output"):
        try:
            _copy(data, sys.stdout.buffer)
            sys.stdout.buffer.flush()
        except OSError:
            abandon(sys.stdout)
            raise


@contextlib.contextmanager
def told(what: str) -> Iterator[None]:
    """Say in one line what could not be written, and why. Who reads no further is no fault."""
    try:
        yield
    except BrokenPipeError:
        raise
    except OSError as error:
        raise Unwritable(f"{what} could not be written: {why(error)}.") from error


def change_file(path: Path, change: Callable[[bytes], bytes]) -> None:
    """Write a file anew from what is in it, b"" where there is none; no other run of the tool
    writes it in between."""
    with told(f"'{path}'"), alone_in(path.parent):
        _replace(path, change(path.read_bytes() if path.exists() else b""))


def write_new(path: Path, data: bytes) -> None:
    """Write a file that is not there yet. Raises Unwritable for one that is."""
    with told(f"'{path}'"), alone_in(path.parent):
        aside = set_aside(path, data)
        if os.path.lexists(path):
            aside.drop()
            raise Unwritable(f"'{path}' is there already; it is left alone.")
        aside.put()


def drop_file(path: Path) -> None:
    """Take a file away that is of no use any more, if it is there."""
    with told(f"'{path}'"):
        path.unlink(missing_ok=True)


@contextlib.contextmanager
def alone_in(folder: Path) -> Iterator[None]:
    """Keep other runs out of a folder while its files are replaced, and clear away what killed
    ones left there. Not every system can lock a folder; there nobody waits."""
    handle = None
    try:
        if sys.platform != "win32":
            with contextlib.suppress(OSError):
                handle = os.open(folder, os.O_RDONLY)
        if handle is not None and _wait_for(handle, folder):
            for left in folder.glob(f"{_ASIDE}*.part"):
                with contextlib.suppress(OSError):
                    left.unlink()
        yield
    finally:
        if handle is not None:
            os.close(handle)


def _wait_for(handle: int, folder: Path) -> bool:
    """Wait until the folder is ours; False on a disk without locks."""
    import fcntl

    end = time.monotonic() + _PATIENCE
    while True:
        try:
            fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError as error:
            if time.monotonic() > end:
                raise Failure(
                    f"Another run has been writing into '{folder}' for {_PATIENCE:g} s: wait for "
                    "it, or end it; then run this one again."
                ) from error
            time.sleep(0.02)
        except OSError:
            return False
        else:
            return True


def make_folder(path: Path) -> None:
    """Make a folder and those above it, if it is not there yet."""
    try:
        if path.exists() and not path.is_dir():
            raise Unwritable(f"'{path}' is a file; a folder is wanted there.")
        path.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise Unwritable(
            f"The folder '{_short(str(path))}' could not be made: {why(error)}."
        ) from error


def guard(target: str, sources: Iterable[Path]) -> None:
    """Refuse a target that cannot be one, before any work is done for it."""
    if target == "-":
        return
    path = Path(target)
    with told(f"'{_short(target)}'"):
        _guard(target, path, sources)


def _short(target: str) -> str:
    """Give a name as it is said: one of any length in a line."""
    return target if len(target) <= LONGEST_SAID else f"{target[:LONGEST_SAID]}..."


def _guard(target: str, path: Path, sources: Iterable[Path]) -> None:
    if path.is_dir():
        raise Failure(f"'{target}' is a folder; give the name of a file in it.")
    if os.path.realpath(path).lower().removesuffix("-wal").removesuffix("-shm").endswith(MARKS):
        raise Failure(
            f"'{target}' is where what was marked is kept; it is not overwritten. Give another "
            "name with -o."
        )
    for source in sources:
        if path.exists() and source.exists() and path.samefile(source):
            raise Failure(
                f"'{target}' is what the job is read from ('{source}'); it is not overwritten. "
                "Give another name with -o."
            )


def _copy(data: bytes | IO[bytes], file: IO[bytes]) -> None:
    """Write bytes, or those of an open file from its beginning."""
    if isinstance(data, bytes):
        file.write(data)
        return
    from shutil import copyfileobj

    data.seek(0)
    copyfileobj(data, file)


def _write_file(path: Path, data: bytes | IO[bytes], sources: Iterable[Path]) -> None:
    guard(str(path), sources)
    if path.exists() and not path.is_file():  # a device or a pipe cannot be replaced
        with path.open("wb") as file:
            _copy(data, file)
        return
    with alone_in(path.parent):
        _replace(path, data)


def _replace(path: Path, data: bytes | IO[bytes]) -> None:
    set_aside(path, data).put()


class Aside(Struct, frozen=True):
    """A file that is written whole, beside the one it will replace."""

    part: Path
    real: Path

    def put(self) -> None:
        """Put it in its place."""
        try:
            self.part.replace(self.real)
        except BaseException:
            self.drop()
            raise

    def drop(self) -> None:
        """Take it away again."""
        with contextlib.suppress(OSError):
            self.part.unlink()


def set_aside(path: Path, data: bytes | IO[bytes]) -> Aside:
    """Write a file whole, beside the one it will replace. Raises OSError, and leaves nothing."""
    # A link stays a link: what it points at is replaced.
    real = Path(os.path.realpath(path))
    if real.exists():
        mode = real.stat().st_mode
        if not os.access(real, os.W_OK):
            raise PermissionError(errno.EACCES, os.strerror(errno.EACCES), str(real))
    else:
        mode = None
    # Its name is short, so that a name that is allowed for the file is allowed for it too.
    part = real.with_name(f"{_ASIDE}{os.urandom(6).hex()}.part")
    handle = os.open(part, os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0), 0o666)
    try:
        with os.fdopen(handle, "wb") as file:
            _copy(data, file)
            file.flush()
            os.fsync(file.fileno())
        if mode is not None:
            part.chmod(stat.S_IMODE(mode))
    except BaseException:
        with contextlib.suppress(OSError):
            part.unlink()
        raise
    return Aside(part, real)
