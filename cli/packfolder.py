"""A pack's folder: its files appear together, and nothing in it is replaced or removed but what a
pack wrote, byte for byte.

`contents.json` keeps the digest of each file. A run that is killed while it puts the files in
their places leaves digests of both packs there, so that the next one still knows them all.
"""

import json
from collections.abc import Callable, Iterable, Mapping
from contextlib import ExitStack
from hashlib import sha256
from pathlib import Path

from msgspec import Struct

from cli.failures import Failure
from cli.output import alone_in, make_folder, set_aside, told

CONTENTS = "contents.json"
FORMER = "former_files"
"""The key of the digests of the pack before, while files are being put in their places."""


class Packed(Struct, frozen=True):
    """The files that were written, in their order, and what was in the way of some: it stays, and
    the new file has the other name."""

    files: tuple[str, ...]
    kept: tuple[tuple[str, str], ...]


def write_pack(
    folder: Path,
    files: Mapping[str, bytes],
    describe: Callable[[Mapping[str, str]], dict[str, object]],
    sources: Iterable[Path],
) -> Packed:
    """Write the files of a pack, all at once at the end. `describe` gives what `contents.json`
    says, from the digest of each file; `sources` are what the job was read from."""
    make_folder(folder)
    with told(f"'{folder}'"), alone_in(folder):
        former = _former(folder)
        known = {digest for digests in former.values() for digest in digests}
        names = {
            name: _free_name(folder, name, known | {_digest(data)}, sources)
            for name, data in files.items()
        }
        digests = {names[name]: _digest(data) for name, data in files.items()}
        contents = {key: _lines(value, 1) for key, value in describe(digests).items()}
        stale = [
            folder / name
            for name, own in former.items()
            if name not in digests and _is_own(folder / name, set(own), sources)
        ]
        with ExitStack() as undo:

            def aside(name: str, data: bytes) -> Callable[[], None]:
                written = set_aside(folder / name, data)
                undo.callback(written.drop)
                return written.put

            puts = [
                aside(CONTENTS, _json({**contents, FORMER: _lines(former, 1)})),
                *(aside(names[name], data) for name, data in files.items()),
            ]
            last = aside(CONTENTS, _json(contents))
            for put in puts:
                put()
            for path in stale:
                path.unlink()
            last()
    kept = tuple((name, new) for name, new in names.items() if name != new)
    return Packed((*names.values(), CONTENTS), kept)


def _former(folder: Path) -> dict[str, list[str]]:
    """Give the digests that each file of the pack may have that lies there, none where none lies.
    Whatever else is called contents.json is not overwritten: Failure."""
    path = folder / CONTENTS
    if not path.exists():
        return {}
    try:
        data = {FORMER: {}, **json.loads(path.read_bytes())}
        former = {str(name): [str(each) for each in own] for name, own in data[FORMER].items()}
        for name, digest in data["files"].items():
            former.setdefault(str(name), []).append(str(digest))
    except (OSError, ValueError, LookupError, TypeError, AttributeError) as error:
        raise Failure(
            f"'{path}' is not what a pack wrote, so that nothing in its folder is known: move it "
            "away, or name another folder with -o."
        ) from error
    return former


def _free_name(folder: Path, name: str, known: set[str], sources: Iterable[Path]) -> str:
    """Give the name under which a file can be written: its own, unless something else has it."""
    stem, ending = Path(name).stem, Path(name).suffix
    tried, count = name, 1
    while not _is_free(folder / tried, known, sources):
        count += 1
        tried = f"{stem}-new{'' if count == 2 else f'-{count - 1}'}{ending}"
    return tried


def _is_free(path: Path, known: set[str], sources: Iterable[Path]) -> bool:
    return not (path.exists() or path.is_symlink()) or _is_own(path, known, sources)


def _is_own(path: Path, known: set[str], sources: Iterable[Path]) -> bool:
    """Tell whether a file has the bytes that a pack wrote, and is nothing the job is read from."""
    try:
        if not path.is_file() or _digest(path.read_bytes()) not in known:
            return False
        return not any(source.exists() and path.samefile(source) for source in sources)
    except OSError:
        return False


def _digest(data: bytes) -> str:
    return sha256(data).hexdigest()


DEEP = 3
"""So deep `contents.json` has a line for each value; what lies deeper stands on one line."""


def _json(values: Mapping[str, str]) -> bytes:
    """Give a table of values, each as its own text."""
    return f"{_braced('{}', _named(values), 0)}\n".encode(errors="replace")


def _lines(value: object, depth: int) -> str:
    if depth == DEEP or not value or not isinstance(value, dict | list):
        return json.dumps(value, ensure_ascii=False)
    if isinstance(value, list):
        return _braced("[]", [_lines(each, depth + 1) for each in value], depth)
    inner = {key: _lines(each, depth + 1) for key, each in value.items()}
    return _braced("{}", _named(inner), depth)


def _named(values: Mapping[str, str]) -> list[str]:
    return [f"{json.dumps(key, ensure_ascii=False)}: {value}" for key, value in values.items()]


def _braced(braces: str, inner: Iterable[str], depth: int) -> str:
    margin = "\n" + " " * depth
    return f"{braces[0]}{margin} {f',{margin} '.join(inner)}{margin}{braces[1]}"
