"""`gaps --measured`: the file of `--format csv` filled in, and which screws it asks to turn."""

import csv
import json
from pathlib import Path

import pdfplumber
import pytest

from tests.cli.conftest import SMALL, Run

WALL = '[[wall]]\nname = "north"\nleft = "wall"\nright = "wall"\n'
PLANNED = 25.4 / 16
"""Beside the door of the small job; mm."""


@pytest.fixture
def filled(run: Run, small: Path) -> Path:
    """Give the list of a job whose door is 1 too far left: 1 at the left, 1 more at the right."""
    small.write_text(SMALL + WALL, encoding="utf-8")
    rows = list(csv.DictReader(run("gaps", small, "--format", "csv").stdout.splitlines()))
    for row in rows:
        off = {"left": -1.0, "right": 1.0}.get(row["edge"])
        if row["front"] == "B1-2" and off and row["axis"] == "x":
            row["top_or_left_mm"] = f"{PLANNED + off}"
    path = small.parent / "now.csv"
    with path.open("w", encoding="utf-8", newline="") as file:
        writer = csv.DictWriter(file, rows[0])
        writer.writeheader()
        writer.writerows(rows)
    return path


def test_the_file_of_gaps_filled_in(run: Run, small: Path, filled: Path) -> None:
    """What was left empty was not measured; the door goes back to the right, off its side."""
    result = run("gaps", small, "--measured", filled, "--format", "json")
    assert result.exit_code == 0, result.output
    data = json.loads(result.stdout)
    [turn] = data["turns"]
    assert turn["mm"] == pytest.approx(1.0, abs=1e-3)
    assert (turn["front"], turn["screw"], turn["at"], turn["move"]) == (
        "B1-2", "side", "all", "right",
    )  # fmt: skip
    assert turn["overlay_mm"] == pytest.approx(-1.0, abs=1e-3)
    assert [gap["then_mm"] for gap in data["gaps"]] == [
        pytest.approx([PLANNED, PLANNED], abs=1e-3)
    ] * 2
    rows = csv.DictReader(
        run("gaps", small, "--measured", filled, "--format", "csv").stdout.split()
    )
    assert [(row["front"], row["move"]) for row in rows] == [("B1-2", "right")]


def test_gaps_as_planned_ask_for_no_turn(run: Run, demo_job: Path, tmp_path: Path) -> None:
    """Every gap of the demo finds its row again, as the file names it."""
    rows = list(csv.DictReader(run("gaps", demo_job, "--format", "csv").stdout.splitlines()))
    listed = tmp_path / "now.csv"
    with listed.open("w", encoding="utf-8", newline="") as file:
        writer = csv.DictWriter(file, rows[0])
        writer.writeheader()
        writer.writerows({**row, "top_or_left_mm": row["nominal_mm"]} for row in rows)
    told = run("gaps", demo_job, "--measured", listed, "--format", "json")
    data = json.loads(told.stdout)
    assert (data["turns"], data["beyond"]) == ([], [])
    gaps = [row["front"] for row in rows if row["axis"] != "depth"]
    assert [gap["between"][0] for gap in data["gaps"]] == gaps
    depths = [row["front"] for row in rows if row["axis"] == "depth"]
    assert [depth["front"] for depth in data["depths"]] == depths != []


def test_in_words_and_on_a_page_for_the_ladder(run: Run, small: Path, filled: Path) -> None:
    """Both say the same; symptoms and plugs come after the walls."""
    told = run("gaps", small, "--measured", filled).stdout
    assert "B1-2   side screw, all hinges  RIGHT  1.0  less overlay" in told
    assert "lower edges to one line by eye" in told
    assert f"jigsheet sheets {small} --only ID" in " ".join(told.split())
    target = small.parent / "s.pdf"
    result = run(
        "gaps", small, "--measured", filled, "--format", "pdf", "-o", target, "--paper", "a4"
    )
    assert result.exit_code == 0, result.output
    with pdfplumber.open(target) as pdf:
        wall, rest = pdf.pages
        first = wall.crop((0, 0, wall.width / 2, wall.height)).extract_text()
        last = rest.extract_text()
    assert {"RIGHT", "1.0", "less", "overlay"} <= {*first.split()}
    assert "sits 2 mm low" in last


def test_what_no_screw_reaches_is_said_once(run: Run, small: Path) -> None:
    """A cause with all its gaps, and the front whose part is wrong with the sheet to bore anew."""
    small.write_text(SMALL + WALL, encoding="utf-8")
    listed = small.parent / "now.csv"
    listed.write_text(
        "front,axis,edge,measured (mm)\nB1-2,x,left,0.4\nB1-2,x,right,0.4\nB1-1,y,top,5.2\n",
        encoding="utf-8",
    )
    told = " ".join(run("gaps", small, "--measured", listed).stdout.split())
    assert told.count("The fronts are together too wide") == 1
    assert "wall | B1-2 -1.2, B1-2 | wall -1.2" in told
    # 3.2 planned, 5.2 measured, 0.5 of it in the holes.
    assert "The screws are at their end. Still off their plan, mm: B1-1 / counter +1.5" in told
    assert "B1-1: its slides stand at another height" in told
    assert "sheets --only B1-1, its side: --only B1." in told


def test_what_is_wrong_in_the_list_is_said_at_once(run: Run, small: Path) -> None:
    """By row and column; nothing is written over the list itself."""
    small.write_text(SMALL + WALL, encoding="utf-8")
    listed = small.parent / "now.csv"
    listed.write_text(
        "front,edge,measured (mm),measured 2 (mm)\nB1-2,up,1.0,\nB1-2,left,1..0,\n,left,1.0,\n"
        "B1-2,right,,2.0\nB7-1,left,1.0,\n",
        encoding="utf-8",
    )
    result = run("gaps", small, "--measured", listed)
    assert result.exit_code == 1
    for words in (
        "row 2, column edge: 'up' given; allowed: left, right, bottom, top",
        "row 3, column measured (mm)", "row 4, column front: missing",
        "row 5, column measured (mm): missing", "row 6: no such gap ('B7-1 left' given)",
    ):  # fmt: skip
        assert words in result.stderr
    over = run("gaps", small, "--measured", listed, "-o", listed)
    assert "is what the job is read from" in over.stderr
    assert run("gaps", small, "--measured", listed, "--format", "svg").exit_code == 2


def test_a_list_without_a_width_asks_for_one(run: Run, small: Path) -> None:
    """As `gaps` wrote it."""
    empty = small.parent / "now.csv"
    empty.write_text(run("gaps", small, "--format", "csv").stdout, encoding="utf-8")
    result = run("gaps", small, "--measured", empty)
    assert result.exit_code == 1
    assert "no gap in it was measured" in result.stderr


def test_inches_are_told_from_millimetres(run: Run, small: Path) -> None:
    """A bare number is in the job's unit; one that fits another alone is asked about."""
    small.write_text(SMALL + WALL, encoding="utf-8")
    listed = small.parent / "now.csv"
    listed.write_text("front,edge,measured\nB1-2,left,1/32\n", encoding="utf-8")
    data = json.loads(run("gaps", small, "--measured", listed, "--format", "json").stdout)
    assert data["gaps"][0]["measured_mm"] == [pytest.approx(25.4 / 32, abs=1e-4)]
    listed.write_text("front,edge,measured\nB1-2,left,2.4\n", encoding="utf-8")
    assert "2.4 mm or 2.4 cm? write the unit" in run("gaps", small, "--measured", listed).stderr


def test_one_end_is_told_and_the_second_asked_for(run: Run, small: Path) -> None:
    """Over the screws, with the gap's name, beside its figures and in the data."""
    small.write_text(SMALL + WALL, encoding="utf-8")
    listed = small.parent / "now.csv"
    rows = "front,axis,edge,measured (mm),measured 2 (mm)\nB1-2,x,left,0.6,{}\nB1-2,x,right,2.6,2\n"
    listed.write_text(rows.format(""), encoding="utf-8")
    told = " ".join(run("gaps", small, "--measured", listed).stdout.split())
    assert "ONE END MEASURED" in told
    assert "Measure that too before a screw is turned for it: wall | B1-2." in told
    data = json.loads(run("gaps", small, "--measured", listed, "--format", "json").stdout)
    assert [gap["both_ends"] for gap in data["gaps"]] == [False, True]
    listed.write_text(rows.format("0.6"), encoding="utf-8")
    assert "ONE END MEASURED" not in run("gaps", small, "--measured", listed).stdout


def test_how_far_a_door_stands_out_turns_its_depth_screws(run: Run, small: Path) -> None:
    """Out 1 at its top and behind 1 at its bottom: hinge by hinge, by where they stand between;
    a drawer front and a free edge have no screw, and are told."""
    listed = small.parent / "now.csv"
    listed.write_text(
        "front,axis,edge,top (mm),bottom (mm)\nB1-2,depth,,1.0,-1.0\nB1-1,depth,,0.8,0.8\n",
        encoding="utf-8",
    )
    result = run("gaps", small, "--measured", listed, "--format", "json")
    assert result.exit_code == 0, result.output
    data = json.loads(result.stdout)
    cups = json.loads(run("holes", small, "--format", "json").stdout)["fronts"][1]
    heights = sorted((h["y_mm"] for h in cups["holes"] if h["purpose"] == "cup"), reverse=True)
    wanted = [2 * height / cups["height_mm"] - 1 for height in heights]
    turns = [(turn["at"], turn["screw"], turn["move"], turn["mm"]) for turn in data["turns"]]
    assert turns == [
        (1, "depth", "in", pytest.approx(wanted[0], abs=1e-3)),
        (2, "depth", "out", pytest.approx(-wanted[1], abs=1e-3)),
    ]
    assert [(each["front"], each["why"]) for each in data["depths"]] == [
        ("B1-2", None), ("B1-1", "no-screw"),
    ]  # fmt: skip
    told = " ".join(run("gaps", small, "--measured", listed).stdout.split())
    assert "B1-1 (0.8) has no depth screw" in told
    listed.write_text("front,axis,edge,top (mm)\nB1-2,depth,right,1.0\n", encoding="utf-8")
    free = " ".join(run("gaps", small, "--measured", listed).stdout.split())
    assert "B1-2 (1.0) was measured at its free edge" in free


def test_a_door_beyond_its_depth_screws_asks_for_no_turn(run: Run, small: Path) -> None:
    """They reach 2 mm, as the side screws do: of 7 its plates and cups are looked at."""
    small.write_text(SMALL + WALL, encoding="utf-8")
    listed = small.parent / "now.csv"
    listed.write_text("front,axis,top (mm),bottom (mm)\nB1-2,depth,7,7\n", encoding="utf-8")
    data = json.loads(run("gaps", small, "--measured", listed, "--format", "json").stdout)
    assert data["turns"] == []
    assert [each["why"] for each in data["depths"]] == ["too-far"]
    told = " ".join(run("gaps", small, "--measured", listed).stdout.split())
    assert "B1-2 (7.0) is beyond its depth screws, 2 mm either way" in told


def test_a_first_end_that_is_no_length_is_told_once(run: Run, small: Path) -> None:
    """It is not missing besides."""
    small.write_text(SMALL + WALL, encoding="utf-8")
    listed = small.parent / "now.csv"
    listed.write_text("front,axis,edge,top,bottom\nB1-2,x,left,abc,1\n", encoding="utf-8")
    told = run("gaps", small, "--measured", listed).stderr
    assert "not a length ('abc' given)" in told
    assert "1 fault; nothing was made." in told


def test_a_wrong_row_of_depth_is_told(run: Run, small: Path) -> None:
    """Another front, twice, beside something, at an edge that lies."""
    listed = small.parent / "now.csv"
    listed.write_text(
        "front,other,axis,edge,top (mm)\nB7-9,,depth,,1\nB1-2,,depth,,1\nB1-2,,depth,,1\n"
        "B1-1,B1-2,depth,,1\nB1-1,,depth,top,1\n",
        encoding="utf-8",
    )
    result = run("gaps", small, "--measured", listed)
    assert result.exit_code == 1
    for words in (
        "row 2: no such front ('B7-9' given)", "row 4: measured twice",
        "row 5: a depth is that of one front", "row 6: 'top' given",
    ):  # fmt: skip
        assert words in result.stderr


def test_edges_that_part_from_their_neighbours(run: Run, small: Path) -> None:
    """Drawers of 6 in and of 6 1/16 in side by side: both edges at that line, 1/16 in apart, though
    no gap is off; what to do about it; and as data."""
    other = SMALL[SMALL.index("[[box]]") :].replace('"B1"', '"B2"').replace('"6"', '"6 1/16"')
    assert "6 1/16" in other
    small.write_text(SMALL + other + WALL, encoding="utf-8")
    now = small.parent / "now.csv"
    now.write_text(
        "front,other,top_or_left_mm\n" + "".join(f"B1-{n},B2-{n},{2 * PLANNED}\n" for n in (1, 2)),
        encoding="utf-8",
    )
    told = run("gaps", small, "--measured", now).stdout
    assert "B2-1 | B1-1, lower edges    1.6  B2-1" in told
    assert "half the step each" in told
    data = json.loads(run("gaps", small, "--measured", now, "--format", "json").stdout)
    assert [(each["lower"], each["edge"], each["step_mm"]) for each in data["parted"]] == [
        ("B2-2", "top", pytest.approx(PLANNED, abs=1e-3)),
        ("B2-1", "bottom", pytest.approx(PLANNED, abs=1e-3)),
    ]
