"""Rollouts in the commands: lists, labels, the cut list, and the choice of one by its ID."""

import csv
import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from pdfplumber import open as open_pdf

from cli.main import main
from jigs.cutlist.cutlist import cut_job
from tests.jigs.cases.kitchen import TS, WB, box, job, lay

DOOR = 'kind = "door"\nhinged = "left"'
TWO = "[[box.rollout]]\nat = 120\nheight = 100\n[[box.rollout]]\nat = 400\nheight = 120\n"


@pytest.fixture
def path(tmp_path: Path) -> Path:
    """A box with two rollouts behind its door."""
    file = tmp_path / "job.toml"
    file.write_text(job(box(DOOR, more=TWO)), encoding="utf-8")
    return file


def run(*words: str | Path) -> Result:
    return CliRunner().invoke(main, [str(word) for word in words], prog_name="jigsheet")


def test_holes_carry_its_id(path: Path) -> None:
    """The holes of its slides name it in both lists: a - b = 19 above 120; it is listed itself."""
    data = json.loads(run("holes", path, "--format", "json").stdout)
    for side in data["sides"]:
        mine = [hole for hole in side["holes"] if hole["part"] == "B1-ROLLOUT-1"]
        assert {hole["y_mm"] for hole in mine} == {120 + 33 - 14}
    assert [each["id"] for each in data["rollouts"]] == ["B1-ROLLOUT-1", "B1-ROLLOUT-2"]
    assert data["rollouts"][0]["behind"] == ["B1-1"]
    rows = list(csv.DictReader(run("holes", path, "--format", "csv").stdout.splitlines()))
    assert {row["serves"] for row in rows} >= {"B1-ROLLOUT-1", "B1-ROLLOUT-2"}


def test_its_label(path: Path, tmp_path: Path) -> None:
    """One label by its ID: what it is, behind which door, its size, and how high it stands."""
    out = tmp_path / "labels.pdf"
    result = run("labels", path, "--only", "b1-rollout-1", "-o", out)
    assert result.exit_code == 0, result.output
    with open_pdf(out) as pages:
        words = " ".join(word["text"] for word in pages.pages[0].extract_words())
    assert "B1-ROLLOUT-1" in words
    assert "B1-ROLLOUT-2" not in words
    assert "BEHIND B1-1" in words
    assert "390.0 × 100.0 × 533.0" in words
    assert "UNDERSIDE 120.0 UP" in words


def test_its_sheets_are_those_of_the_sides(path: Path, tmp_path: Path) -> None:
    """A rollout has no holes of its own; the message says where its slides' are."""
    result = run("sheets", path, "--only", "B1-ROLLOUT-1", "-o", tmp_path / "sheets.pdf")
    assert "on the sheets of their box's sides" in " ".join(result.output.split())
    assert not (tmp_path / "sheets.pdf").exists()


def test_its_pieces(path: Path, tmp_path: Path) -> None:
    """Its spacer, and sides, front, back and bottom of its box, which stand between the spacer
    and the other side; no screws of a front are kept clear of."""
    data = json.loads(run("parts", path, "--only", "B1-ROLLOUT-1", "--format", "json").stdout)
    assert [piece["id"] for piece in data["parts"]] == [
        f"B1-ROLLOUT-1-{name}" for name in ("SPACER-L", "SIDE", "FRONT", "BACK", "BOTTOM")
    ]
    pieces = cut_job(lay(tmp_path, box(DOOR, more=TWO))).pieces
    (spacer,) = [b for p in pieces if p.id == "B1-ROLLOUT-1-SPACER-L" for b in p.blocks]
    assert (spacer.x, spacer.dx) == pytest.approx((TS, 20))
    # 60 high, the slide's hole along its middle: a - b = 19 above 120.
    assert spacer.y == pytest.approx(120 + 33 - 14 - 30)
    wood = [p for p in pieces if p.kind != "spacer" and p.id.startswith("B1-ROLLOUT-1-")]
    blocks = [b for p in wood for b in p.blocks]
    assert min(b.x for b in blocks) > TS + 20
    assert max(b.x + b.dx for b in blocks) < WB - TS
    assert min(b.y for b in blocks) == pytest.approx(120)
    assert max(b.y + b.dy for b in blocks) == pytest.approx(120 + 100)


def test_one_that_is_held(tmp_path: Path) -> None:
    """Held back alone: exit 1, HOLD on its label, left out of the cut list, named in the pack."""
    path = tmp_path / "job.toml"
    path.write_text(job(box(DOOR, more=TWO.replace("at = 120", "at = 25"))), encoding="utf-8")
    packed = run("pack", path, "-o", tmp_path / "pack")
    assert packed.exit_code == 1
    assert "B1-ROLLOUT-1 rollout into panel" in " ".join(packed.output.split())
    data = json.loads(run("parts", path, "--format", "json").stdout)
    assert data["left_out"] == ["B1-ROLLOUT-1"]
    out = tmp_path / "labels.pdf"
    assert run("labels", path, "--only", "B1-ROLLOUT-1", "-o", out).exit_code == 1
    with open_pdf(out) as pages:
        assert "HOLD" in pages.pages[0].extract_text()
    assert run("sheets", path, "--only", "B1-1", "-o", tmp_path / "door.pdf").exit_code == 0
