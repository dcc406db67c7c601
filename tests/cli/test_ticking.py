"""`plan` told what is done: the marks of the scan pages, in the same file."""

import csv
import io
import sqlite3
import subprocess
from pathlib import Path

import pytest

from cli.serving.store import PRAGMAS, open_store, read_store, store_file
from tests.cli.conftest import Run
from tests.cli.test_streams import JIGSHEET, environment


def marks(job: Path) -> dict[str, list[str]]:
    kept, _ = read_store(job)
    return {part: [*own.marks] for part, own in kept.items() if own.marks}


def test_a_step_is_marked_as_serve_does_it(run: Run, small: Path) -> None:
    """With the part's code, in the history; an ID in small letters; the plan shows it at once."""
    result = run("plan", small, "--done", "b1-2", "arrived", "--done", "B1-2", "bored-cups")
    assert result.exit_code == 0, result.output
    assert marks(small) == {"B1-2": ["arrived", "bored-cups"]}
    assert "Marked: cups bored: B1-2." in result.stderr
    kept, history = read_store(small)
    assert kept["B1-2"].marks["arrived"] == kept["B1-2"].codes[-1] != ""
    assert [(each.deed, each.said) for each in history] == [
        ("done", "arrived"), ("done", "bored-cups"),
    ]  # fmt: skip
    assert "TODAY" in result.stdout
    progress = run("progress", small, "--only", "B1-2", "--format", "csv").stdout
    assert next(csv.DictReader(io.StringIO(progress)))["next"] == "bored-pulls"


def test_a_box_is_marked_at_once_and_twice_is_once(run: Run, small: Path) -> None:
    """All of its parts that have the step; a second time there is nothing to mark."""
    run("plan", small, "--done", "B1", "cut")
    first = marks(small)
    assert {"B1-SIDE-L", "B1-BOTTOM"} <= first.keys()
    assert "B1-2" not in first
    result = run("plan", small, "--done", "north", "cut")
    assert "Nothing to mark" in result.stderr
    assert marks(small) == first


def test_a_day_is_marked(run: Run, small: Path) -> None:
    """Every step that stands on it alone, and the next day is today's."""
    rows = list(csv.DictReader(io.StringIO(run("plan", small, "--format", "csv").stdout)))
    wanted = {row["part"] for row in rows if row["day"] == "2" and row["step"]}
    result = run("plan", small, "--day-done", "1", "--day-done", "2")
    assert result.exit_code == 0, result.output
    assert marks(small).keys() == wanted
    assert "TODAY: Day 3" in result.stdout


def test_what_is_not_so_far_is_told_and_nothing_is_marked(run: Run, small: Path) -> None:
    """Not the good half of the line either; what comes before is named by what it is marked by."""
    result = run("plan", small, "--done", "B1-1", "arrived", "--done", "B1-2", "bored-cups")
    assert result.exit_code == 1
    assert "B1-2: not so far yet; mark first what comes before: arrived." in result.stderr
    assert "Nothing was marked." in result.stderr
    assert result.stdout == ""
    assert marks(small) == {}


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (["--done", "B1-2", "cups"], "its steps: arrived, bored-cups, bored-pulls"),
        (["--done", "B1", "cups"], "nothing of B1 has a step"),
        (["--done", "B12", "cut"], "'B12'; the nearest: B1"),
        (["--day-done", "99"], "there is no day 99; days 1 to "),
        (["--undone", "B1-2", "cups"], "its steps: arrived, bored-cups, bored-pulls"),
        (["--undone", "Z9", "cut"], "no part, box or wall is called 'Z9'"),
    ],
)
def test_what_there_is_not_is_told_with_what_there_is(
    words: list[str], told: str, run: Run, small: Path
) -> None:
    """Wrong usage: nothing is begun beside the job."""
    result = run("plan", small, *words)
    assert result.exit_code == 2
    assert told in result.stderr
    assert not store_file(small).exists()


def test_a_mark_is_taken_back(run: Run, small: Path) -> None:
    """Of a part that the job no longer has too; what was not marked is told."""
    with open_store(small) as store:
        store.mark("B9-1", "hung", "Q8RD")
    run("plan", small, "--done", "B1-2", "arrived")
    result = run("plan", small, "--undone", "B1-2", "arrived", "--undone", "B9-1", "hung")
    assert result.exit_code == 0, result.output
    assert "Taken back: arrived: B1-2." in result.stderr
    assert marks(small) == {}
    assert "B1-2: arrived was not marked." in run(
        "plan", small, "--undone", "B1-2", "arrived"
    ).stderr  # fmt: skip


def test_what_is_held_back_is_not_marked(run: Run, held: Path) -> None:
    """One part by its name is refused; of a box it is left out, and named."""
    run("plan", held, "--done", "B1-2", "arrived")
    result = run("plan", held, "--done", "B1-2", "back-1")
    assert result.exit_code == 1
    assert "B1-2: held back" in result.stderr
    assert "back-1" not in marks(held)["B1-2"]


def test_two_at_once_lose_nothing(small: Path) -> None:
    """Each a process of its own, while a third holds the file open as `serve` does."""
    with open_store(small):
        running = [
            subprocess.Popen(
                [*JIGSHEET, "plan", str(small), "--done", part, "cut"],
                env=environment(),
                stdout=subprocess.DEVNULL,
                stderr=subprocess.PIPE,
                text=True,
            )
            for part in ("B1-SIDE-L", "B1-SIDE-R")
        ]
        said = [process.communicate(timeout=60)[1] for process in running]
    assert marks(small).keys() == {"B1-SIDE-L", "B1-SIDE-R"}, said


def test_a_file_that_another_program_holds_is_told(
    run: Run, small: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Nothing is marked, and nothing is to be moved away."""
    run("plan", small, "--done", "B1-2", "arrived")
    monkeypatch.setitem(PRAGMAS, "busy_timeout", 20)
    other = sqlite3.connect(store_file(small), isolation_level=None)
    other.execute("begin immediate")
    result = run("plan", small, "--done", "B1-2", "bored-cups")
    other.close()
    assert result.exit_code == 1
    assert "is in use by another program (database is locked)" in result.stderr
    assert marks(small) == {"B1-2": ["arrived"]}


def test_a_step_that_no_part_of_a_box_has_is_told(run: Run, small: Path) -> None:
    """With those that there are; capitals are no other step."""
    result = run("plan", small, "--done", "b1", "sawn")
    assert result.exit_code == 2
    assert "--done: nothing of B1 has a step 'sawn'; its steps: " in result.stderr
    assert run("plan", small, "--done", "b1-2", "Arrived").exit_code == 0
    assert marks(small) == {"B1-2": ["arrived"]}


def test_marks_stay_where_the_plan_cannot_be_written(run: Run, small: Path) -> None:
    """Marking comes first; that it is kept is said behind why there is no plan."""
    no_folder = small.parent / "none" / "plan.txt"
    result = run("plan", small, "--done", "B1-2", "arrived", "-o", no_folder)
    assert result.exit_code == 1
    assert "there is no such folder" in result.stderr
    assert "The marks are kept all the same" in result.stderr
    assert marks(small) == {"B1-2": ["arrived"]}
    again = run("plan", small, "--done", "B1-2", "arrived", "-o", no_folder)
    assert "marks are kept" not in again.stderr
