"""What is kept beside a job: marks, notes, photos, with their history, the key of its links.

It is an SQLite database, `job.toml.marks.sqlite` beside `job.toml`. What was marked is on the disk
before anybody is told so. A write-ahead log stands beside it while it is open (`-wal`, `-shm`) and
is folded in when it is closed; whoever copies the file alone from a running server, or after a
crash, may copy an empty one: export it, or close it first.
"""

import os
import secrets
import sqlite3
import threading
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING, Literal

from msgspec import Struct
from msgspec.structs import replace

from cli.failures import Failure
from cli.output import MARKS
from cli.terminal import why

if TYPE_CHECKING:
    from jigs.bench.kept import Kept

StoredDeed = Literal["done", "undone", "note", "photo", "no-photo", "recoded"]
Marked = tuple[str, str, str]
"""A part, the key of its step, and the part's code."""

APPLICATION = 0x6A69_6773
"""How SQLite's file header says whose it is: `jigs`."""
VERSION = 1
"""Of the tables."""
TABLES = """
create table facts (name text primary key, value text not null);
create table marks (
    id integer primary key, part text not null, step text not null, code text not null,
    at text not null, unique (part, step)
);
create table codes (
    id integer primary key, part text not null, code text not null, at text not null,
    unique (part, code)
);
create table notes (part text primary key, note text not null, at text not null);
create table photos (
    part text primary key, name text not null, jpeg blob not null, at text not null
);
create table history (
    id integer primary key, part text not null, deed text not null, said text not null,
    code text not null, at text not null
);
create index history_of on history (part);
"""
PRAGMAS = {"journal_mode": "wal", "synchronous": 2, "busy_timeout": 10_000, "trusted_schema": 0}
"""`synchronous` 2 is FULL: a mark is on the disk, not only on its way there. Without a time to be
busy another program that reads the file would make a mark fail."""


class Entry(Struct, frozen=True, kw_only=True):
    """A line of the history."""

    at: str
    """UTC (ISO 8601, to the second)."""
    part: str
    deed: StoredDeed
    said: str
    """The key of the step, the note, or the code that it had before."""
    code: str
    """Of the part at that time, "" where nobody knew it."""


def read_store(job: Path) -> "tuple[Mapping[str, Kept], tuple[Entry, ...]]":
    """Give what is kept of a job, and its history; where nothing is, nothing is begun."""
    if not store_file(job).exists():
        return {}, ()
    with open_store(job) as store:
        return store.kept(), store.history()


def store_file(job: Path) -> Path:
    """Name the file beside a job.

    >>> store_file(Path("kitchen/job.toml")).name
    'job.toml.marks.sqlite'
    """
    return job.with_name(f"{job.name}{MARKS}")


def _new_key() -> str:
    return secrets.token_urlsafe(9)


def now() -> str:
    """Say what time it is, UTC."""
    return datetime.now(UTC).strftime("%Y-%m-%dT%H:%M:%SZ")


@contextmanager
def open_store(job: Path) -> Iterator["Store"]:
    """Open what is kept beside a job, making it where there is nothing yet; it is closed in the
    end, and then in one file. Raises Failure."""
    file = store_file(job)
    try:
        store = Store(file)
    except (OSError, sqlite3.Error) as error:
        raise Failure(_unreadable(file, error)) from error
    try:
        yield store
    except sqlite3.Error as error:
        raise Failure(_unreadable(file, error)) from error
    finally:
        store.close()


def _unreadable(file: Path, error: OSError | sqlite3.Error) -> str:
    said = why(error) if isinstance(error, OSError) else str(error)
    if getattr(error, "sqlite_errorcode", None) == sqlite3.SQLITE_BUSY:
        return (
            f"'{file}', which keeps what was marked, is in use by another program ({said}). "
            "Nothing was changed. Let that end, then run the same command again."
        )
    return (
        f"'{file}', which keeps what was marked, cannot be used: {said}. Nothing was changed. "
        "Move it away to begin anew, or put a copy back in its place."
    )


class Store:
    """What is kept of one job: one connection, which all threads share by a lock, so that they
    write one after the other in the order in which they came."""

    def __init__(self, file: Path) -> None:
        self._lock = threading.Lock()
        if not file.exists():  # what it holds, the key above all, is nobody else's
            os.close(os.open(file, os.O_WRONLY | os.O_CREAT, 0o600))
        # Transactions are begun in so many words: the module's own would stay open, and locked,
        # after a forgotten commit.
        self._base = sqlite3.connect(file, isolation_level=None, check_same_thread=False)
        try:
            empty = self._is_empty()
            for name, value in PRAGMAS.items():
                self._base.execute(f"pragma {name} = {value}").fetchall()
            if empty:
                self._begin()
            self._kept = self._read_all()
        except BaseException:
            self._base.close()
            raise

    def close(self) -> None:
        """Fold the log into the file and let go of it."""
        with self._lock:
            self._base.close()

    def _is_empty(self) -> bool:
        """Tell whether the file is still to be begun; one that is not ours is not touched."""
        if not self._one("select count(*) from sqlite_master"):
            return True
        if self._one("pragma application_id") != APPLICATION:
            raise sqlite3.DatabaseError("it is some other program's file")
        if self._one("pragma user_version") != VERSION:
            raise sqlite3.DatabaseError("it was written by another version of jigsheet")
        return False

    def _begin(self) -> None:
        with self._change():
            if self._one("select count(*) from sqlite_master"):
                return  # another program was faster
            for table in TABLES.split(";"):
                self._base.execute(table)
            self._base.execute(f"pragma application_id = {APPLICATION}")
            self._base.execute(f"pragma user_version = {VERSION}")

    @contextmanager
    def _change(self) -> Iterator[None]:
        """All of a change, or nothing. It is begun as one that writes: one that reads first and
        then writes would fail at once where another program writes."""
        self._base.execute("begin immediate")
        try:
            yield
            self._base.execute("commit")
        except BaseException:
            if self._base.in_transaction:
                self._base.execute("rollback")
            raise

    def _one(self, question: str, *given: object) -> object:
        row = self._base.execute(question, given).fetchone()
        return None if row is None else row[0]

    # What stays the same

    def fact(self, name: str, make: Callable[[], str]) -> str:
        """Give what is kept under a name; where nothing is, it is made and kept."""
        with self._lock, self._change():
            self._base.execute("insert or ignore into facts values (?, ?)", (name, make()))
            return str(self._one("select value from facts where name = ?", name))

    def keep_fact(self, name: str, value: str) -> None:
        """Keep another value under a name."""
        with self._lock, self._change():
            self._base.execute("insert or replace into facts values (?, ?)", (name, value))

    def facts(self, begins: str) -> tuple[str, ...]:
        """Give all that is kept under names that begin so."""
        with self._lock:
            rows = self._base.execute(
                "select value from facts where substr(name, 1, ?) = ? order by name",
                (len(begins), begins),
            ).fetchall()
        return tuple(value for (value,) in rows)

    @property
    def key(self) -> str:
        """The key of the job's links, the same from one start to the next: 72 bits, which nobody
        guesses by asking, and which leave the symbols small."""
        return self.fact("key", _new_key)

    def renew_key(self) -> None:
        """Make another key: the links with the old one lead nowhere from now on."""
        self.keep_fact("key", _new_key())

    # What is known of the parts

    def kept(self) -> "Mapping[str, Kept]":
        """Give what is kept of all parts, by their IDs."""
        with self._lock:
            if self._one("pragma data_version") != self._seen:  # another program wrote
                self._kept = self._read_all()
            return dict(self._kept)

    def history(self, part: str | None = None) -> tuple[Entry, ...]:
        """Give the history of a part, or of all, the oldest first."""
        with self._lock:
            rows = self._base.execute(
                "select at, part, deed, said, code from history"
                " where ?1 is null or part = ?1 order by id",
                (part,),
            ).fetchall()
        return tuple(
            Entry(at=at, part=name, deed=deed, said=said, code=code)
            for at, name, deed, said, code in rows
        )

    def photo(self, part: str) -> bytes | None:
        """Give the photo of a part, JPEG; None where there is none."""
        with self._lock:
            found = self._one("select jpeg from photos where part = ?", part)
        return found if isinstance(found, bytes) else None

    # What people do

    def mark(self, part: str, step: str, code: str) -> None:
        """Mark a step as done; done twice it is done once."""
        self.mark_all([(part, step, code)])

    def undo(self, part: str, step: str, code: str) -> None:
        """Take a mark back; what is not marked stays so."""
        self.mark_all(back=[(part, step, code)])

    def mark_all(self, done: Sequence[Marked] = (), back: Sequence[Marked] = ()) -> None:
        """Take marks back and mark steps, all of them or none; what is as wanted stays as it is."""
        with self._lock:
            with self._change():
                at = now()
                for part, step, code in back:
                    gone = self._base.execute(
                        "delete from marks where part = ? and step = ?", (part, step)
                    )
                    if gone.rowcount:
                        self._happened(part, "undone", step, code, at)
                for part, step, code in done:
                    made = self._base.execute(
                        "insert or ignore into marks (part, step, code, at) values (?, ?, ?, ?)",
                        (part, step, code, at),
                    )
                    if made.rowcount:
                        self._happened(part, "done", step, code, at)
            for part in {each[0] for each in (*back, *done)}:
                self._read_again(part)

    def note(self, part: str, note: str, code: str) -> None:
        """Keep a note, in place of the one before; "" takes it away."""
        with self._lock:
            with self._change():
                if (self._one("select note from notes where part = ?", part) or "") != note:
                    at = now()
                    self._base.execute(
                        "insert or replace into notes values (?, ?, ?)", (part, note, at)
                    )
                    self._happened(part, "note", note, code, at)
            self._read_again(part)

    def keep_photo(self, part: str, jpeg: bytes | None, code: str) -> None:
        """Keep a photo, in place of the one before; None takes it away."""
        from hashlib import sha256

        with self._lock:
            with self._change():
                at = now()
                gone = self._base.execute("delete from photos where part = ?", (part,))
                if jpeg is not None:
                    name = sha256(jpeg).hexdigest()[:12]
                    self._base.execute(
                        "insert into photos values (?, ?, ?, ?)", (part, name, jpeg, at)
                    )
                if jpeg is not None or gone.rowcount:
                    self._happened(part, "no-photo" if jpeg is None else "photo", "", code, at)
            self._read_again(part)

    def saw(self, codes: Mapping[str, str]) -> None:
        """Keep the codes that parts have now, by their IDs; "" is none."""
        with self._lock:
            self._kept = self._read_all()
            before = {part: own.codes[-1] for part, own in self._kept.items() if own.codes}
            new = {part: code for part, code in codes.items() if code != before.get(part) and code}
            if not new:
                return
            with self._change():
                at = now()
                for part, code in new.items():
                    self._base.execute(
                        "insert or replace into codes (part, code, at) values (?, ?, ?)",
                        (part, code, at),
                    )
                    if part in before:
                        self._happened(part, "recoded", before[part], code, at)
            self._kept = self._read_all()

    def _happened(self, part: str, deed: StoredDeed, said: str, code: str, at: str) -> None:
        self._base.execute(
            "insert into history (part, deed, said, code, at) values (?, ?, ?, ?, ?)",
            (part, deed, said, code, at),
        )

    def _read_again(self, part: str) -> None:
        self._kept |= self._read(" where part = ?", (part,))

    def _read_all(self) -> "dict[str, Kept]":
        self._seen = self._one("pragma data_version")
        return self._read("", ())

    def _read(self, where: str, given: tuple[str, ...]) -> "dict[str, Kept]":
        from jigs.bench.kept import NOTHING_KEPT

        ask = self._base.execute
        found = dict.fromkeys(given, NOTHING_KEPT)
        for part, step, code in ask(
            f"select part, step, code from marks{where} order by id", given
        ):
            own = found.get(part, NOTHING_KEPT)
            found[part] = replace(own, marks={**own.marks, step: code})
        for part, code in ask(f"select part, code from codes{where} order by id", given):
            own = found.get(part, NOTHING_KEPT)
            found[part] = replace(own, codes=(*own.codes, code))
        for part, note in ask(f"select part, note from notes{where}", given):
            found[part] = replace(found.get(part, NOTHING_KEPT), note=note)
        for part, name in ask(f"select part, name from photos{where}", given):
            found[part] = replace(found.get(part, NOTHING_KEPT), photo=name)
        return found
