"""Jobs to run the commands on, and a runner that looks for tracebacks."""

from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from cli.main import main
from templates.demo import demo_files

Run = Callable[..., Result]

SMALL = """\
schema = 1
name = "Lock-keeper's scullery"
units = "in"
[material]
side = "18.3 mm"
front = "3/4"
[[box]]
id = "B1"
wall = "north"
kind = "base"
width = "18"
height = "30 1/2"
depth = "23"
  [[box.front]]
  kind = "drawer"
  height = "6"
  [[box.front]]
  kind = "door"
  hinged = "left"
"""
"""A box of our own, 18 x 30 1/2 x 23 in: a drawer over a left-hung door."""

HELD = SMALL.replace('  hinged = "left"\n', "")
"""The same, its door without a hand: a trade error that withholds it alone."""

FAULTY = SMALL.replace('height = "6"', 'hieght = "6"').replace('"23"', '"twenty"')
"""Two reading faults."""


@pytest.fixture
def small(tmp_path: Path) -> Path:
    """Give a job without errors."""
    path = tmp_path / "small.toml"
    path.write_text(SMALL, encoding="utf-8")
    return path


@pytest.fixture
def held(tmp_path: Path) -> Path:
    """Give a job of which one door is held back."""
    path = tmp_path / "held.toml"
    path.write_text(HELD, encoding="utf-8")
    return path


@pytest.fixture
def faulty(tmp_path: Path) -> Path:
    """Give a job that cannot be read."""
    path = tmp_path / "faulty.toml"
    path.write_text(FAULTY, encoding="utf-8")
    return path


@pytest.fixture
def demo_job(tmp_path: Path) -> Path:
    """Give the demo's job, written out with its front list."""
    folder = tmp_path / "demo"
    folder.mkdir()
    for name, data in demo_files().items():
        (folder / name).write_bytes(data)
    return folder / "job.toml"


@pytest.fixture
def run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Run:
    """Run a command in a folder of its own; nothing it says is ever a traceback."""
    work = tmp_path / "work"
    work.mkdir()
    monkeypatch.chdir(work)
    monkeypatch.delenv("JIGSHEET_TRACEBACK", raising=False)

    def run_command(*words: str | Path) -> Result:
        result = CliRunner().invoke(main, [str(word) for word in words], prog_name="jigsheet")
        assert "Traceback" not in result.output
        assert result.exception is None or isinstance(result.exception, SystemExit)
        return result

    return run_command
