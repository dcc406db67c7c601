"""`plan`: as text, on paper, for a spreadsheet and as data; what was marked is done."""

import csv
import io
import json
from pathlib import Path

import pytest

from cli.serving.store import open_store, store_file
from tests.cli.conftest import Run
from tests.readback import read_pages


def rows(text: str) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(text)))


def test_every_step_of_every_part_has_a_row(run: Run, small: Path) -> None:
    """Those that 'progress' says of it, in their order, each on a day that is not before."""
    result = run("plan", small, "--format", "csv")
    assert result.exit_code == 0, result.output
    found: dict[str, list[tuple[int, str]]] = {}
    for row in rows(result.stdout):
        if row["step"]:
            found.setdefault(row["part"], []).append((int(row["day"]), row["step"]))
    door = [step for _, step in found["B1-2"]]
    assert door == [
        "arrived", "bored-cups", "bored-pulls", "back-1", "back-2", "front-1", "front-2", "hung",
        "adjusted",
    ]  # fmt: skip
    for steps in found.values():
        assert [day for day, _ in steps] == sorted(day for day, _ in steps)
    progress = {row["part"] for row in rows(run("progress", small, "--format", "csv").stdout)}
    assert found.keys() == progress
    assert not store_file(small).exists()


def test_what_was_marked_is_done_and_the_rest_begins_today(run: Run, small: Path) -> None:
    """One board cut: what is settled and bought is behind, the day of the saw is today's."""
    parts = [
        row["part"] for row in rows(run("plan", small, "--format", "csv").stdout)
        if row["stage"] == "cut" and not row["part"].startswith("B1-1-")
    ]  # fmt: skip
    with open_store(small) as store:
        store.mark(parts[0], "cut", "")
    result = run("plan", small)
    assert "TODAY: Day 2: Cut" in result.stdout
    assert f"1 of {len(parts)} done" in result.stdout
    data = json.loads(run("plan", small, "--format", "json").stdout)
    assert data["today"] == 2
    done = [part["part"] for day in data["days"] for stage in day["stages"]
            for part in stage["parts"] if part["done"] and stage["step"]]  # fmt: skip
    assert done == [parts[0]]


def test_a_shorter_day_makes_more_days(run: Run, small: Path) -> None:
    """The measure is said where it stands."""
    usual, short = (
        json.loads(run("plan", small, "--format", "json", *more).stdout)
        for more in ((), ("--a-day", "5"))
    )
    assert (usual["a_day"], short["a_day"]) == (60, 5)
    assert len(short["days"]) > len(usual["days"])
    assert "taken in hand 5 times" in run("plan", small, "--a-day", "5").stdout


@pytest.mark.parametrize("given", ["0", "-3", "six", "1.5"])
def test_a_day_of_nothing_is_wrong_usage(given: str, run: Run, small: Path) -> None:
    """A day has at least one thing in hand."""
    result = run("plan", small, "--a-day", given)
    assert result.exit_code == 2
    assert "--a-day" in result.stderr


def test_on_paper_the_days_stand_in_its_outline(run: Run, small: Path) -> None:
    """Another paper has the stations on its own pages: both are asked for by one name."""
    assert run("plan", small, "--format", "pdf").exit_code == 0
    pages = read_pages(Path("plan.pdf").read_bytes())
    assert "Day 1: Settle, buy, print" in pages[0].text
    assert "DO NOT GO ON until" in pages[0].text


def test_a_held_part_ends_with_1_and_is_told_where_it_stops(run: Run, held: Path) -> None:
    """The plan is written all the same."""
    result = run("plan", held)
    assert result.exit_code == 1
    assert "HOLD B1-2" in result.stdout
    found = {row["part"]: row for row in rows(run("plan", held, "--format", "csv").stdout)
             if row["step"] == "hung"}  # fmt: skip
    assert found["B1-1"]["held_by"] == "B1-2"


def test_the_pack_begins_with_the_plan_and_names_its_files(run: Run, small: Path) -> None:
    """Each that lies in the folder, once."""
    assert run("pack", small).exit_code == 0
    folder = small.parent / "pack"
    text = read_pages((folder / "plan.pdf").read_bytes())[0].text
    for path in folder.iterdir():
        assert path.name in text


def test_fronts_in_hand_are_not_ordered(run: Run, small: Path) -> None:
    """Said of all, or row for row in a delivered list; what is missing there is ordered, by count,
    and drawer boxes that are bought are."""
    usual = run("plan", small).stdout
    assert "Not yet: 2 fronts: ordered on day" in usual
    assert "Fronts are ordered from finished boxes" in usual
    came = small.with_name("came.csv")
    came.write_text("id,width,height\nB1-1,17 7/8,6\nB1-2,17 7/8,24 1/8\n")
    text = small.read_text("utf-8")
    said = small.with_name("said.toml")
    said.write_text(text.replace("[material]", "[fronts]\nin_hand = true\n[material]"), "utf-8")
    for words in ((said,), (small, "--delivered", came)):
        result = run("plan", *words)
        assert "In hand already, not ordered: 2 fronts." in result.stdout
        assert "Not yet: " not in result.stdout
        assert "order from them" not in result.stdout
        assert "Fronts are ordered" not in result.stdout
    came.write_text("id,width,height\nB1-1,17 7/8,6\n")
    result = run("plan", small, "--delivered", came)
    assert "Not yet: 1 front: ordered on day" in result.stdout
    assert "In hand already, not ordered: 1 front." in result.stdout
    said.write_text(f'{said.read_text("utf-8")}[build]\ndrawer_boxes = "ordered"\n', "utf-8")
    result = run("plan", said)
    assert "Not yet: drawer boxes: ordered on day" in result.stdout
    assert "Drawer boxes are ordered from finished boxes" in result.stdout
    assert "Fronts are ordered" not in result.stdout
