"""Writing: whole or not at all, over an older output, never over an input."""

import errno
import os
from collections.abc import Callable
from pathlib import Path

import pytest

from cli.failures import Failure
from cli.output import make_folder, write_bytes, write_text
from cli.serving.store import store_file


def names(folder: Path) -> set[str]:
    return {path.name for path in folder.iterdir()}


def test_an_older_output_is_replaced(tmp_path: Path) -> None:
    """The new text stands alone, and nothing else is left in the folder."""
    target = tmp_path / "holes.csv"
    target.write_text("old and longer than the new one", encoding="utf-8")
    write_text(str(target), "new", sources=())
    assert target.read_text(encoding="utf-8") == "new"
    assert names(tmp_path) == {"holes.csv"}


def test_permissions_of_an_older_output_stay(tmp_path: Path) -> None:
    """Replacing a file does not open or close it to others."""
    target = tmp_path / "holes.csv"
    target.touch(mode=0o640)
    write_text(str(target), "new", sources=())
    assert target.stat().st_mode & 0o777 == 0o640


def test_a_new_output_takes_the_permissions_of_the_house(tmp_path: Path) -> None:
    """A new file is made as any other program would make it."""
    old = os.umask(0o027)
    try:
        write_text(str(tmp_path / "new"), "text", sources=())
    finally:
        os.umask(old)
    assert (tmp_path / "new").stat().st_mode & 0o777 == 0o666 & ~0o027


@pytest.mark.parametrize("more", ["", "-wal"])
@pytest.mark.parametrize("linked", [False, True])
def test_what_was_marked_is_never_written_over(more: str, linked: bool, tmp_path: Path) -> None:
    """By no command, whether or not it knows the job; nor the log that belongs to it."""
    kept = Path(f"{store_file(tmp_path / 'job.toml')}{more}")
    kept.write_bytes(b"marks")
    target = tmp_path / "holes.csv" if linked else kept
    if linked:
        target.symlink_to(kept)
    with pytest.raises(Failure, match="marked"):
        write_bytes(str(target), b"holes", sources=())
    assert kept.read_bytes() == b"marks"


@pytest.mark.parametrize("link", [os.symlink, os.link, None], ids=["symlink", "hard link", "same"])
def test_an_input_is_never_written_over(
    link: Callable[[Path, Path], None] | None, tmp_path: Path
) -> None:
    """Under whatever name it goes, what the job is read from stays as it is."""
    source = tmp_path / "job.toml"
    source.write_text("schema = 1", encoding="utf-8")
    target = source
    if link is not None:
        target = tmp_path / "sheets.pdf"
        link(source, target)
    with pytest.raises(Failure, match="not overwritten"):
        write_bytes(str(target), b"pdf", sources=(tmp_path / "." / "job.toml",))
    assert source.read_text(encoding="utf-8") == "schema = 1"


def test_a_link_stays_a_link(tmp_path: Path) -> None:
    """What an output's link points at is replaced, not the link."""
    (tmp_path / "real.pdf").write_bytes(b"old")
    (tmp_path / "link.pdf").symlink_to("real.pdf")
    write_bytes(str(tmp_path / "link.pdf"), b"new", sources=())
    assert (tmp_path / "link.pdf").is_symlink()
    assert (tmp_path / "real.pdf").read_bytes() == b"new"


def test_a_device_is_written_into_and_not_replaced() -> None:
    """The null device is still a device afterwards."""
    write_bytes(os.devnull, b"pdf", sources=())
    assert not Path(os.devnull).is_file()


@pytest.mark.parametrize("code", [errno.ENOSPC, errno.EIO, errno.EDQUOT])
def test_a_disk_that_fails_leaves_the_older_file(
    code: int, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Where the new file cannot be finished, the older one stays whole, and no part is left."""
    target = tmp_path / "sheets.pdf"
    target.write_bytes(b"old")

    def fail(_: int) -> None:
        raise OSError(code, os.strerror(code))

    monkeypatch.setattr(os, "fsync", fail)
    with pytest.raises(Failure, match="could not be written"):
        write_bytes(str(target), b"new", sources=())
    assert target.read_bytes() == b"old"
    assert names(tmp_path) == {"sheets.pdf"}


def test_an_interrupted_write_leaves_the_older_file(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Ctrl-C in the middle leaves what was there."""
    target = tmp_path / "sheets.pdf"
    target.write_bytes(b"old")

    def interrupt(_: int) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(os, "fsync", interrupt)
    with pytest.raises(KeyboardInterrupt):
        write_bytes(str(target), b"new", sources=())
    assert target.read_bytes() == b"old"
    assert names(tmp_path) == {"sheets.pdf"}


@pytest.mark.parametrize(
    ("target", "reason"),
    [
        ("nowhere/sheets.pdf", "there is no such folder"),
        ("file/sheets.pdf", "a part of the path is a file"),
        ("x" * 300, "the name is too long"),
        (".", "is a folder"),
    ],
)
def test_a_place_that_cannot_be_written_is_told(
    target: str, reason: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The message names the place and the reason."""
    monkeypatch.chdir(tmp_path)
    (tmp_path / "file").touch()
    with pytest.raises(Failure, match=reason):
        write_bytes(target, b"pdf", sources=())


def test_a_file_where_a_folder_is_wanted(tmp_path: Path) -> None:
    """A pack cannot be written into a file."""
    (tmp_path / "pack").touch()
    with pytest.raises(Failure, match="is a file; a folder is wanted"):
        make_folder(tmp_path / "pack")


def test_standard_output_takes_bytes_as_they_are(
    capfdbinary: pytest.CaptureFixture[bytes],
) -> None:
    """A dash stands for standard output."""
    write_bytes("-", b"%PDF-1.7\r\n\x00\xff", sources=())
    assert capfdbinary.readouterr().out == b"%PDF-1.7\r\n\x00\xff"
