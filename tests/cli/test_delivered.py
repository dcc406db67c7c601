"""A delivered list on the command line, and one that the job names."""

import csv
import io
import json
from pathlib import Path

import pytest

from tests.cli.conftest import FAULTY, SMALL, Run

COMMANDS = ("check", "holes", "sheets", "labels", "parts", "order", "pack")

GOOD = "id,width,height\nB1-1,17 7/8,6\nB1-2,17 29/32,24 1/4\n"
"""The small job's two fronts, ordered 17 7/8 x 6 and 24 1/4 in."""

BAD = "id,width,height\nB1-1,17 7/8,6\nB1-2,18,24 1/4\n"
"""A door 1/8 too wide."""

UNKNOWN = "id,width,height\nB1-1,17 7/8,6\nB1-22,18,24 5/16\n"


@pytest.fixture
def lists(small: Path) -> Path:
    """Give the folder of the small job, with three lists in it."""
    for name, text in (("good", GOOD), ("bad", BAD), ("unknown", UNKNOWN)):
        (small.parent / f"{name}.csv").write_text(text, encoding="utf-8")
    return small.parent


@pytest.mark.parametrize("command", COMMANDS)
@pytest.mark.parametrize(("name", "code"), [("good", 0), ("bad", 1), ("unknown", 1)])
def test_exit_codes(command: str, name: str, code: int, run: Run, small: Path, lists: Path) -> None:
    """0 if all is well, 1 if a front is held or an ID unknown; then nothing is made."""
    result = run(command, small, "--delivered", lists / f"{name}.csv")
    assert result.exit_code == code, result.output
    said = result.stdout + result.stderr
    if name == "bad":
        assert "B1-2: measured 18 in" in said
    if name == "unknown":
        assert "unknown.csv: row 3: unknown ID ('B1-22' given)" in result.stderr
        assert "did you mean 'B1-2'?" in result.stderr
        assert "nothing was made" in result.stderr
        assert result.stdout == ""
        assert not list(lists.rglob("*.pdf"))


def test_the_check_says_first_what_has_arrived(run: Run, small: Path, lists: Path) -> None:
    """How many, of how many, and which are held."""
    result = run("check", small, "--delivered", lists / "bad.csv")
    lines = result.stdout.splitlines()
    assert lines[1].startswith("Delivered: 2 of 2 fronts, 2 measured (bad.csv)")
    assert lines[2] == "  Held back because of what arrived: B1-2."


def test_measured_sizes_are_in_the_holes(run: Run, small: Path, lists: Path) -> None:
    """The holes are those of the door that came: 17 29/32 in wide."""
    result = run("holes", small, "--format", "json", "--delivered", lists / "good.csv")
    door = next(f for f in json.loads(result.stdout)["fronts"] if f["id"] == "B1-2")
    assert door["width_mm"] == pytest.approx(17.90625 * 25.4, abs=1e-4)


def test_a_job_may_name_its_list_and_the_option_goes_first(
    run: Run, small: Path, lists: Path
) -> None:
    """`delivered_file` stands beside the job; --delivered is read in its place."""
    job = lists / "named.toml"
    key = 'delivered_file = "unknown.csv"\n[fronts]\ntolerance = "1/8"\n[material]'
    job.write_text(SMALL.replace("[material]", key), encoding="utf-8")
    assert run("check", job).exit_code == 1
    assert run("check", job, "--delivered", lists / "good.csv").exit_code == 0
    # 3.2 too wide, 3.175 accepted.
    result = run("check", job, "--delivered", lists / "bad.csv")
    assert "1/8 in (3.2 mm) off the order is accepted" in result.stdout.replace("\n    ", " ")


def test_the_faults_of_job_and_list_are_told_together(run: Run, faulty: Path, lists: Path) -> None:
    """Two in the job, one in the list."""
    (lists / "faulty.csv").write_text("id,width,hieght\nB1-1,17,6\n", encoding="utf-8")
    faulty.write_text(FAULTY, encoding="utf-8")
    result = run("check", faulty, "--delivered", lists / "faulty.csv")
    assert "3 faults; nothing was made" in result.stderr
    assert "faulty.csv: row 1, column hieght" in result.stderr


def test_a_front_list_alone_may_be_delivered(run: Run, tmp_path: Path) -> None:
    """Without a job file, in the list's own unit."""
    (tmp_path / "fronts.csv").write_text(
        "id,kind,width,height\nA1,drawer,454,150\nA2,drawer,454,200\n", encoding="utf-8"
    )
    (tmp_path / "came.csv").write_text("width,height\n454.4,200.4\n", encoding="utf-8")
    result = run("check", tmp_path / "fronts.csv", "--delivered", tmp_path / "came.csv")
    assert result.exit_code == 0, result.output
    assert "Delivered: 1 of 2 fronts" in result.stdout
    assert "Not yet: A1." in result.stdout
    assert "Found by size, without an ID: row 2: A2." in result.stdout


@pytest.mark.parametrize(
    "data", [b"", b"\x00\x01\x02", b"PK\x03\x04 damaged", b"id,width\n\xff\xfe,1\n", b"id\n" * 50]
)
@pytest.mark.parametrize("ending", [".csv", ".xlsx", ".pdf", ""])
def test_garbage_is_refused_plainly(
    data: bytes, ending: str, run: Run, small: Path, lists: Path
) -> None:
    """No traceback, exit 1, nothing on standard output."""
    path = lists / f"garbage{ending}"
    path.write_bytes(data)
    result = run("check", small, "--delivered", path)
    assert result.exit_code == 1
    assert result.stdout == ""
    assert "garbage" in result.stderr


@pytest.mark.parametrize("target", ["nothing.csv", "."])
def test_a_list_that_is_not_there_is_told(target: str, run: Run, small: Path, lists: Path) -> None:
    """A missing file, a folder."""
    result = run("holes", small, "--delivered", lists / target)
    assert result.exit_code == 1
    assert "nothing was made" in result.stderr


def test_the_list_is_never_written_over(run: Run, small: Path, lists: Path) -> None:
    """It is what the job is read from."""
    path = lists / "good.csv"
    result = run("holes", small, "--format", "csv", "--delivered", path, "-o", path)
    assert result.exit_code == 1
    assert path.read_text(encoding="utf-8") == GOOD


def test_the_pack_names_what_is_still_to_come(run: Run, small: Path, lists: Path) -> None:
    """At the end, with what was made."""
    (lists / "one.csv").write_text("id,width,height\nB1-1,17 7/8,6\n", encoding="utf-8")
    result = run("pack", small, "--delivered", lists / "one.csv")
    assert "Not delivered yet: B1-2." in result.stdout


def test_the_suppliers_list_given_back_says_what_is_taken_and_names_the_rest(
    run: Run, small: Path
) -> None:
    """A door that came bored is not bored again; no column is passed over in silence."""
    listed = small.parent / "fronts.csv"
    assert run("order", small, "--fronts", "-o", listed).exit_code == 0
    whole = run("holes", small, "--format", "json", "--delivered", listed).stdout
    assert '"cup"' in whole
    head, drawer, door = listed.read_text("utf-8").splitlines()[:3]
    columns = head.split(",")
    cells = next(csv.reader([door]))
    for column, text in (("bored", "yes"), ("hinges at (mm)", "97; 500"), ("bored tab (mm)", "5")):
        cells[columns.index(column)] = text
    row = io.StringIO()
    csv.writer(row).writerow(cells)
    listed.write_text(f"{head}\n{drawer}\n{row.getvalue()}", encoding="utf-8")
    assert '"cup"' not in run("holes", small, "--format", "json", "--delivered", listed).stdout
    said = " ".join(run("check", small, "--delivered", listed).stderr.split())
    left = said.partition("Left alone in")[2]
    for column, cell in zip(columns, cells, strict=True):
        read = column.partition(" (")[0] in (
            "id", "width", "height", "thickness", "count", "note", "bored", "hinges at",
            "bored tab",
        )  # fmt: skip
        if read or cell:
            assert (f"'{column}'" in left) is not read
