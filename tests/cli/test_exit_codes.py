"""Every command's exit code and streams: 0 done, 1 faults or errors, 2 wrong usage."""

import re
from pathlib import Path

import pytest

from cli.main import COMMANDS
from templates.page.paper import Paper
from tests.cli.conftest import Run

ON_A_JOB = tuple(
    name
    for name in COMMANDS
    if name not in ("demo", "new", "hardware", "stocks", "calibrate", "serve", "changes")
)

WRITTEN = {
    "check": set(),
    "holes": set(),
    "stations": {"work/stations.pdf"},
    "sheets": {"work/sheets.pdf"},
    "labels": {"work/labels.pdf"},
    "parts": set(),
    "gaps": set(),
    "progress": set(),
    "order": set(),
    "elevations": {"work/elevations.pdf"},
    "hang": {"work/hang.pdf"},
    "plan": set(),
    "book": {"work/book.html"},
    "pack": {
        f"pack/{name}"
        for name in (
            "plan.pdf",
            "stations.pdf",
            "sheets.pdf",
            "labels.pdf",
            "heights.pdf",
            "elevations.pdf",
            "lists.pdf",
            "holes.csv",
            "parts.csv",
            "order.csv",
            "fronts.csv",
            "contents.json",
        )
    },
}
"""What each command writes without -o, below the folder of the job."""


def files_below(folder: Path) -> set[str]:
    return {
        path.relative_to(folder).as_posix()
        for path in folder.rglob("*")
        if path.is_file() and path.suffix != ".toml"
    }


@pytest.mark.parametrize("command", ON_A_JOB)
def test_a_good_job_ends_with_0(command: str, run: Run, small: Path) -> None:
    """A job with warnings alone is done, says what was read, and each command writes just its own
    files."""
    result = run(command, small)
    assert result.exit_code == 0, result.output
    assert "2 fronts: 1 door, 1 drawer" in result.output
    assert files_below(small.parent) == WRITTEN[command]


def test_every_command_counts_the_warnings_that_check_says(run: Run, small: Path) -> None:
    """Those of the cut list too, such as a shelf that sags."""
    box = '[[box]]\nid = "O1"\nkind = "open"\nwidth = "48"\nheight = "30"\ndepth = "12"\n'
    small.write_text(f"{small.read_text('utf-8')}{box}[[box.shelf]]\nadjustable = true\n", "utf-8")
    checked = run("check", small).stdout
    assert "[shelf-sag]" in checked
    [said] = re.findall(r"^\d+ warnings?(?=\.)", checked, re.MULTILINE)
    for command in ("holes", "parts", "progress", "order"):
        assert f"{said}: see " in run(command, small).stderr


@pytest.mark.parametrize("command", ON_A_JOB)
def test_a_held_part_ends_with_1_and_the_rest_is_made(command: str, run: Run, held: Path) -> None:
    """A trade error withholds its part alone: the files are made, the part is named."""
    result = run(command, held)
    assert result.exit_code == 1, result.output
    assert files_below(held.parent) == WRITTEN[command]
    told = result.stdout if command == "check" else result.stderr
    assert "B1-2" in told
    assert "hand-not-stated" in told


@pytest.mark.parametrize("command", ON_A_JOB)
def test_reading_faults_end_with_1_and_leave_nothing_behind(
    command: str, run: Run, faulty: Path
) -> None:
    """All faults are told at once, each with its line; no file and no word on stdout."""
    result = run(command, faulty)
    assert result.exit_code == 1
    assert result.stdout == ""
    assert "faulty.toml:" in result.stderr
    assert "hieght" in result.stderr
    assert "twenty" in result.stderr
    assert "nothing was made" in result.stderr
    assert files_below(faulty.parent) == set()
    assert not (faulty.parent / "pack").exists()


@pytest.mark.parametrize("command", ["sheets", "pack"])
def test_a_part_without_room_on_paper_ends_with_1(
    command: str, run: Run, small: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """It is named with the paper and the remedy; the others are printed."""
    paper = Paper(name="narrow", width=150.0, height=240.0, sheet="narrow paper")
    monkeypatch.setattr("templates.page.ownpaper.named_paper", lambda _: paper)
    result = run(command, small)
    assert result.exit_code == 1
    assert "B1-2: " in result.stderr
    assert "paper 'narrow'" in result.stderr
    assert "B1-1: " not in result.stderr
    assert files_below(small.parent) == WRITTEN[command]


@pytest.mark.parametrize("command", ON_A_JOB)
def test_a_job_that_is_not_there_ends_with_1(command: str, run: Run, tmp_path: Path) -> None:
    """An unreadable file is a reading fault, told in one line."""
    result = run(command, tmp_path / "nothing.toml")
    assert result.exit_code == 1
    assert "nothing.toml" in result.stderr


@pytest.mark.parametrize("command", ON_A_JOB)
def test_a_folder_in_place_of_a_job_ends_with_1(command: str, run: Run, tmp_path: Path) -> None:
    """A folder is no job."""
    assert run(command, tmp_path).exit_code == 1


@pytest.mark.parametrize(
    "words",
    [
        *([command] for command in ON_A_JOB),
        *([command, "JOB", "--colour"] for command in COMMANDS),
        *([command, "JOB", "--units", "ell"] for command in ON_A_JOB),
        ["nonsense"],
        ["holes", "JOB", "--format", "pdf"],
        ["stations", "JOB", "--format", "csv"],
        ["stations", "JOB", "--paper", "b5"],
        ["stations", "JOB", "--only", "cups"],
        ["stations", "JOB", "--format", "dxf", "--first"],
        ["stations", "JOB", "--format", "svg", "--printer", "garage"],
        ["stations", "JOB", "--format", "svg", "-o", "-"],
        ["stations", "JOB", "--printer", "nowhere"],
        ["sheets", "JOB", "--format", "csv"],
        ["sheets", "JOB", "--paper", "b5"],
        ["sheets", "JOB", "--paper", "roll-100"],
        ["sheets", "JOB", "--paper", "roll-20m"],
        ["sheets", "JOB", "--paper", "24x60"],
        ["pack", "JOB", "--paper", "610x0mm"],
        ["sheets", "JOB", "--only", "B1-22"],
        ["sheets", "JOB", "--same-holes"],
        ["sheets", "JOB", "--tight"],
        ["pack", "JOB", "--same-holes"],
        ["pack", "JOB", "--tight"],
        ["sheets", "JOB", "--each", "--stick"],
        ["sheets", "JOB", "--each", "--format", "dxf"],
        ["sheets", "JOB", "--each", "--format", "outlines"],
        ["labels", "JOB", "--each"],
        ["sheets", "JOB", "--strip", "--stick"],
        ["sheets", "JOB", "--strip", "--format", "dxf"],
        ["sheets", "JOB", "--strip", "--format", "outlines"],
        ["labels", "JOB", "--only", "B7"],
        ["parts", "JOB", "--format", "dxf"],
        ["parts", "JOB", "--paper", "a3"],
        ["order", "JOB", "--format", "csv", "--paper", "a4"],
        ["order", "JOB", "--fronts", "--format", "pdf"],
        ["parts", "JOB", "--only", "B1-SHELF-1"],
        ["labels", "JOB", "--start", "0"],
        ["labels", "JOB", "--start", "31", "--stock", "letter-3x10"],
        ["labels", "JOB", "--stock", "none"],
        ["labels", "JOB", "--stock", "roll-62x29", "--start", "2"],
        ["labels", "JOB", "--copies", "0"],
        ["labels", "JOB", "--for", "doors"],
        ["labels", "JOB", "--order", "size"],
        ["labels", "JOB", "--pieces", "cut"],
        ["labels", "JOB", "--stock", "cup-tag", "--order", "cut"],
        ["labels", "JOB", "--dots", "150"],
        ["pack", "JOB", "--stock", "none"],
        ["elevations", "JOB", "--format", "dxf"],
        ["elevations", "JOB", "--paper", "b5"],
        ["elevations", "JOB", "--only", "B7"],
        ["hang", "JOB", "--format", "svg"],
        ["hang", "JOB", "--paper", "b5"],
        ["hang", "JOB", "--only", "B7"],
        ["pack", "JOB", "--only", "B1"],
        ["plan", "JOB", "--a-day", "0"],
        ["plan", "JOB", "--format", "xlsx"],
        ["plan", "JOB", "--paper", "b5"],
        ["changes", "JOB"],
        ["changes", "JOB", "JOB", "JOB"],
        ["changes", "JOB", "JOB", "--format", "pdf"],
        ["sheets", "JOB", "--changed-since", "pack", "--first"],
        ["sheets", "JOB", "--changed-since", "pack", "--stick"],
        ["stations", "JOB", "--changed-since", "pack", "--pilots"],
    ],
    ids=" ".join,
)
def test_wrong_usage_ends_with_2(words: list[str], run: Run, small: Path) -> None:
    """What the command line does not know is wrong usage; nothing is written."""
    result = run(*(small if word == "JOB" else word for word in words))
    assert result.exit_code == 2, result.output
    assert result.stdout == ""
    assert "Usage: jigsheet" in result.stderr
    assert files_below(small.parent) == set()


def test_only_names_the_nearest_part(run: Run, small: Path) -> None:
    """A part that is not there is answered with those that come near."""
    result = run("sheets", small, "--only", "b1-22")
    assert "'b1-22'" in result.stderr
    assert "B1-2" in result.stderr


def test_only_names_every_unknown_name_at_once(run: Run, small: Path) -> None:
    """Each with what comes near: parts and stations."""
    result = run("stations", small, "--only", "cups-rihgt", "--only", "B1", "--only", "b1-22")
    assert result.exit_code == 2
    for name, near in (("cups-rihgt", "CUPS-RIGHT"), ("b1-22", "B1-2")):
        line = next(line for line in result.stderr.splitlines() if repr(name) in line)
        assert "part, box, wall or station" in line
        assert near in line


def test_help_is_on_standard_output_and_names_every_command(run: Run) -> None:
    """--help is no error."""
    result = run("--help")
    assert result.exit_code == 0
    assert result.stderr == ""
    for command in COMMANDS:
        assert f"  {command} " in result.stdout
        assert run(command, "--help").exit_code == 0


def test_the_version_is_the_one_of_the_package(run: Run) -> None:
    """--version names the command and the version."""
    from jigs import __version__

    assert run("--version").stdout == f"jigsheet {__version__}\n"
