"""`progress`: what was marked, as text and for a spreadsheet."""

import csv
import io
from pathlib import Path

from cli.serving.store import open_store, store_file
from templates.words.stepwords import LISTED
from tests.cli.conftest import Run


def rows(text: str) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(text)))


def marked(job: Path) -> Path:
    """Mark and note a few things of the small job, one of a part that it has no more."""
    with open_store(job) as store:
        store.saw({"B1-2": "7K4F"})
        store.mark("B1-2", "arrived", "7K4F")
        store.mark("B1-2", "bored-cups", "7K4F")
        store.note("B1-2", "=dent, lower edge\nlook again", "7K4F")
        store.mark("B1-1", "arrived", "")
        store.undo("B1-1", "arrived", "")
        store.mark("B9-1", "hung", "Q8RD")
    return job


def test_a_job_of_which_nothing_is_marked_is_all_to_be_done(run: Run, small: Path) -> None:
    """Nothing is begun beside it either."""
    result = run("progress", small)
    assert result.exit_code == 0
    assert result.stdout.startswith("0 of ")
    assert f"{LISTED['arrived']} (2): B1-1, B1-2" in result.stdout
    assert not store_file(small).exists()


def test_parts_are_listed_by_their_next_step(run: Run, small: Path) -> None:
    """What is stale, doubtful or gone is said too."""
    result = run("progress", marked(small))
    assert result.stdout.startswith("2 of ")
    assert f"{LISTED['arrived']} (1): B1-1" in result.stdout
    assert f"{LISTED['bored']} (1): B1-2" in result.stdout
    assert "stale: B1-2" in result.stdout
    assert "Cut, banded or bored to another code, to be looked at: B1-2\n" in result.stdout
    assert "No longer in the job: B9-1" in result.stdout


def test_a_spreadsheet_has_a_row_for_each_part(run: Run, small: Path) -> None:
    """Steps by their keys; a note is never a formula."""
    found = {
        row["part"]: row for row in rows(run("progress", marked(small), "--format", "csv").stdout)
    }
    door = found["B1-2"]
    assert (door["wall"], door["box"], door["done"]) == ("north", "B1", "arrived bored-cups")
    assert (door["next"], door["code_before"]) == ("bored-pulls", "7K4F")
    assert door["done_to_another_code"] == "bored-cups"
    assert door["note"] == "'=dent, lower edge\nlook again"
    assert (found["B9-1"]["done"], found["B9-1"]["in_the_job"]) == ("hung", "no")
    assert found["B1-1-BOX"]["waits_for"].startswith("B1-1-BOX-SIDE:")


def test_the_history_has_all_that_ever_happened(run: Run, small: Path) -> None:
    """In its order; as text with a note on one line."""
    found = rows(run("progress", marked(small), "--history", "--format", "csv").stdout)
    assert [(row["part"], row["what"], row["said"]) for row in found] == [
        ("B1-2", "done", "arrived"),
        ("B1-2", "done", "bored-cups"),
        ("B1-2", "note", "'=dent, lower edge\nlook again"),
        ("B1-1", "done", "arrived"),
        ("B1-1", "undone", "arrived"),
        ("B9-1", "done", "hung"),
    ]
    text = run("progress", small, "--history").stdout
    assert len(text.splitlines()) == 1 + len(found)


def test_only_chosen_parts_are_listed(run: Run, small: Path) -> None:
    """A part, a box, or one that is gone."""
    marked(small)
    for name, parts in (("B1-2", {"B1-2"}), ("B9-1", {"B9-1"})):
        result = run("progress", small, "--only", name, "--format", "csv")
        assert {row["part"] for row in rows(result.stdout)} == parts
    box = rows(run("progress", small, "--only", "B1", "--format", "csv").stdout)
    assert {"B1-1", "B1-SIDE-L"} <= {row["part"] for row in box}
    assert "B9-1" not in {row["part"] for row in box}
    history = rows(run("progress", small, "--history", "--only", "B1-1", "--format", "csv").stdout)
    assert [row["what"] for row in history] == ["done", "undone"]
