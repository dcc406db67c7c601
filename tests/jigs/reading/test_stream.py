"""A pipe as a job, a list of fronts or a delivered list: what is in it says what it is."""

import os
import threading
from pathlib import Path

import pytest

from cli.jobs import read_in_hand
from jigs.ground.errors import ReadingError
from tests.cli.conftest import SMALL

pytestmark = pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="named pipes are a Unix thing")

LIST = "id,width,height,kind\nB1-1,450,140,drawer\nB1-2,450,570,door\n"


def pipe(path: Path, text: str) -> Path:
    """Make a named pipe through which a text comes, once."""
    os.mkfifo(path)
    threading.Thread(target=path.write_text, args=(text,), daemon=True).start()
    return path


def test_a_job_comes_through_a_pipe(tmp_path: Path) -> None:
    """It reads as from a file, whatever the pipe is called; it has the name it states."""
    file = tmp_path / "job.toml"
    file.write_text(SMALL)
    for name in ("63", "fronts.csv"):
        read = read_in_hand(pipe(tmp_path / name, SMALL))
        assert read.boxes == read_in_hand(file).boxes
        assert read.name == "Lock-keeper's scullery"


def test_a_list_comes_through_a_pipe(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """By itself, or named by a job that comes through another; the latter's folder is the one
    the run was started in."""
    read = read_in_hand(pipe(tmp_path / "63", LIST))
    assert [front.id for box in read.boxes for front in box.fronts] == ["B1-1", "B1-2"]
    assert read.name == ""
    monkeypatch.chdir(tmp_path)
    pipe(tmp_path / "64", "box,width (mm),height (mm),kind\nB1,450,140,drawer\n")
    text = SMALL[: SMALL.index("  [[box.front]]")]
    job = read_in_hand(
        pipe(tmp_path / "65", text.replace("schema = 1", 'schema = 1\nfronts_file = "64"'))
    )
    assert [front.id for box in job.boxes for front in box.fronts] == ["B1-1"]


def test_what_is_delivered_comes_through_a_pipe(tmp_path: Path) -> None:
    """Its pieces are held against the order."""
    file = tmp_path / "fronts.csv"
    file.write_text(LIST)
    job = read_in_hand(file, None, pipe(tmp_path / "63", LIST.replace("570", "569.5")))
    assert job.delivery is not None
    assert set(job.delivery.arrivals) == {"B1-1", "B1-2"}


def test_an_empty_pipe_and_one_without_end_are_faults(tmp_path: Path) -> None:
    """Neither hangs."""
    with pytest.raises(ReadingError, match="empty"):
        read_in_hand(pipe(tmp_path / "63", ""))
    if Path("/dev/zero").exists():
        with pytest.raises(ReadingError, match="too large"):
            read_in_hand(Path("/dev/zero"))
