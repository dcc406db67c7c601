"""A pack's folder: all files at once, and nothing is lost that is not a pack's own."""

import json
from collections.abc import Mapping
from hashlib import sha256
from pathlib import Path

import pytest

from cli.failures import Failure
from cli.output import Aside
from cli.packfolder import Packed, write_pack
from tests.cli.conftest import Run

FIRST = {"sheets.pdf": b"%PDF first", "fronts.csv": b"id,width\n", "stick.pdf": b"%PDF stick"}
SECOND = {"sheets.pdf": b"%PDF second", "fronts.csv": b"id,width,height\n"}
TYPED = b"id,width\nB1-1,17 7/8\n"


def put(folder: Path, files: Mapping[str, bytes], *sources: Path) -> Packed:
    return write_pack(folder, files, lambda digests: {"files": dict(digests)}, sources)


def found(folder: Path) -> dict[str, bytes]:
    return {path.name: path.read_bytes() for path in folder.iterdir()}


def without_contents(folder: Path) -> dict[str, bytes]:
    files = found(folder)
    del files["contents.json"]
    return files


def test_a_second_pack_takes_the_place_of_the_first(tmp_path: Path) -> None:
    """What it no longer has goes; the contents are of the second."""
    assert put(tmp_path, FIRST).kept == ()
    assert without_contents(tmp_path) == FIRST
    packed = put(tmp_path, SECOND)
    assert packed == Packed((*SECOND, "contents.json"), ())
    assert without_contents(tmp_path) == SECOND
    contents = json.loads((tmp_path / "contents.json").read_text())
    assert contents == {"files": {name: sha256(data).hexdigest() for name, data in SECOND.items()}}


def test_what_was_typed_into_a_list_stays(tmp_path: Path) -> None:
    """The new one stands beside it, is replaced in its turn, and goes once it is not wanted."""
    put(tmp_path, FIRST)
    (tmp_path / "fronts.csv").write_bytes(TYPED)
    for files in (SECOND, {**SECOND, "fronts.csv": b"third\n"}):
        assert put(tmp_path, files).kept == (("fronts.csv", "fronts-new.csv"),)
        assert without_contents(tmp_path) == {
            "sheets.pdf": files["sheets.pdf"],
            "fronts.csv": TYPED,
            "fronts-new.csv": files["fronts.csv"],
        }
    (tmp_path / "fronts-new.csv").write_bytes(TYPED)
    assert put(tmp_path, SECOND).kept == (("fronts.csv", "fronts-new-2.csv"),)
    (tmp_path / "fronts.csv").unlink()
    assert put(tmp_path, SECOND).kept == ()
    assert without_contents(tmp_path) == {**SECOND, "fronts-new.csv": TYPED}


def test_what_a_pack_no_longer_has_stays_if_it_was_changed(tmp_path: Path) -> None:
    """Only its own bytes are removed."""
    put(tmp_path, FIRST)
    (tmp_path / "stick.pdf").write_bytes(b"mine")
    put(tmp_path, SECOND)
    assert without_contents(tmp_path) == {**SECOND, "stick.pdf": b"mine"}


def test_files_of_nobody_knows_whom_are_left_alone(tmp_path: Path) -> None:
    """Without contents nothing is known, unless it is what would be written."""
    (tmp_path / "sheets.pdf").write_bytes(b"mine")
    (tmp_path / "fronts.csv").write_bytes(SECOND["fronts.csv"])
    (tmp_path / "stick.pdf").mkdir()
    packed = put(tmp_path, {**SECOND, "stick.pdf": b"new"})
    assert packed.kept == (("sheets.pdf", "sheets-new.pdf"), ("stick.pdf", "stick-new.pdf"))
    assert (tmp_path / "sheets.pdf").read_bytes() == b"mine"
    assert (tmp_path / "stick.pdf").is_dir()


def test_what_the_job_is_read_from_is_left_alone(tmp_path: Path) -> None:
    """Even where it is a list that a pack wrote."""
    put(tmp_path, FIRST)
    packed = put(tmp_path, SECOND, tmp_path / "fronts.csv")
    assert packed.kept == (("fronts.csv", "fronts-new.csv"),)
    assert (tmp_path / "fronts.csv").read_bytes() == FIRST["fronts.csv"]


@pytest.mark.parametrize("text", ["", "[]", '{"files": 3}', '{"pages": {}}', "not data"])
def test_other_contents_are_not_overwritten(tmp_path: Path, text: str) -> None:
    """A file of that name that no pack wrote ends the run before anything is written."""
    (tmp_path / "contents.json").write_text(text)
    with pytest.raises(Failure, match="not what a pack wrote"):
        put(tmp_path, FIRST)
    assert found(tmp_path) == {"contents.json": text.encode()}


@pytest.mark.parametrize("step", range(6))
def test_killed_while_files_are_put_in_their_places(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, step: int
) -> None:
    """The next pack, of other bytes, knows all that lies there; no part is left."""
    put(tmp_path, FIRST)
    third = {name: data + b"3" for name, data in FIRST.items()}
    real, count = Aside.put, iter(range(10))

    def killed(self: Aside) -> None:
        if next(count) == step:
            raise KeyboardInterrupt
        real(self)

    with monkeypatch.context() as patched:
        patched.setattr(Aside, "put", killed)
        patched.setattr(Aside, "drop", lambda _: None)  # a killed run clears nothing away
        if step < 5:
            with pytest.raises(KeyboardInterrupt):
                put(tmp_path, third)
            assert list(tmp_path.glob(".jigsheet-*"))
        else:
            put(tmp_path, third)
    for name in FIRST:
        assert (tmp_path / name).read_bytes() in (FIRST[name], third[name])
    assert put(tmp_path, SECOND).kept == ()
    assert without_contents(tmp_path) == SECOND


def test_a_disk_that_fills_leaves_the_older_pack(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """All files are written aside before the first is put in its place."""
    put(tmp_path, FIRST)
    before = found(tmp_path)
    import errno
    import os

    left = iter((None, None, OSError(errno.ENOSPC, "No space left on device")))

    def fill(_: int) -> None:
        if (error := next(left)) is not None:
            raise error

    monkeypatch.setattr(os, "fsync", fill)
    with pytest.raises(Failure, match="the disk is full"):
        put(tmp_path, SECOND)
    assert found(tmp_path) == before


def test_the_pack_says_what_stays(run: Run, small: Path) -> None:
    """By name, with the name of the new one; the contents name job, version and codes."""
    from jigs import __version__

    run("pack", small, "-o", "pack")
    contents = json.loads(Path("pack/contents.json").read_text())
    assert contents["jigsheet"] == __version__
    assert contents["job"] == "Lock-keeper's scullery"
    assert contents["read_from"] == ["small.toml"]
    holes = Path("pack/holes.csv").read_text()
    for part in ("B1-1", "B1-2", "B1-SIDE-L"):
        assert f"{part},B1," in holes
        assert contents["parts"][part] in holes
    Path("pack/fronts.csv").write_bytes(TYPED)
    result = run("pack", small, "-o", "pack")
    assert result.exit_code == 0
    told = "'pack/fronts.csv' is not as a pack wrote it: it stays, and the new one is"
    assert f"{told} fronts-new.csv." in result.stderr
    assert Path("pack/fronts.csv").read_bytes() == TYPED
