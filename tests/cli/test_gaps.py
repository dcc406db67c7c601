"""`jigsheet gaps`: the same gaps for people, for a spreadsheet and as data."""

import csv
import json
from math import hypot
from pathlib import Path
from xml.etree import ElementTree

import pdfplumber
import pytest

from tests.cli.conftest import SMALL, Run
from tests.jigs.cases.kitchen import box, job

DAMP = """\
[wood]
species = "sugar maple"
[room]
dampest = 65
[paint]
method = "brushed"
sizes = "before"
[gaps]
box = "0.5 mm"
joint = 0
square = "0.4 mm"
[fronts]
tolerance = "0.8 mm"
"""


def test_a_small_job_in_words(run: Run, small: Path) -> None:
    """What was assumed and what was left out stands above the gaps."""
    told = run("gaps", small).stdout
    assert "ASSUMED, common practice: boxes true to +-0.8 ([gaps] box)" in told
    assert "NOT IN THE SUM, because nothing says it: the film of paint" in told
    assert "B1-2 / B1-1" in told
    assert "B1-1 / counter" in told


def test_a_bare_list_assumes_all(run: Run, tmp_path: Path) -> None:
    """Nobody has said how true anything is."""
    listed = tmp_path / "fronts.csv"
    listed.write_text("id,width,height,kind,hinged\nA1,400,700,door,left\n", encoding="utf-8")
    told = " ".join(run("gaps", listed).stdout.split())
    assert "ASSUMED, common practice: boxes true to +-0.8 ([gaps] box), joints" in told
    assert "fronts true to +-1.6 ([fronts] tolerance)" in told


def test_what_is_said_is_not_assumed(run: Run, small: Path) -> None:
    """Each key takes its words away; a slab of maple that grows is seen to rub, with its cure."""
    solid = SMALL.replace('front = "3/4"\n', 'front = "3/4"\nfront_kind = "hardwood"\n')
    second = SMALL[SMALL.index("[[box]]") :].replace('"B1"', '"B2"')
    small.write_text(solid + second + DAMP, encoding="utf-8")
    told = run("gaps", small).stdout
    assert "ASSUMED" not in told
    assert "NOT IN THE SUM" not in told
    assert "B1-2 | B2-2" in told
    assert "X  rubs" in told
    assert "Order one-piece fronts of MDF: they move less than wood." in told


def test_as_data_and_for_a_spreadsheet(run: Run, demo_job: Path) -> None:
    """Both hold the same gaps; one name alone stands beside a counter, a wall, a panel."""
    data = json.loads(run("gaps", demo_job, "--format", "json").stdout)
    listed = csv.DictReader(run("gaps", demo_job, "--format", "csv").stdout.splitlines())
    rows = [row for row in listed if row["axis"] != "depth"]
    assert data["schema"] == 1
    assert len(data["gaps"]) == len(rows) > 40
    for gap, row in zip(data["gaps"], rows, strict=True):
        alone = gap["beside"] in ("counter", "wall", "casing", "panel", "filler", "board")
        assert len(gap["between"]) == (1 if alone else 2)
        assert [row["front"], row["other"]] == [*gap["between"], ""][:2]
        assert gap["worst_mm"] <= gap["low_mm"] <= gap["high_mm"] <= gap["widest_mm"]
        assert float(row["low_mm"]) == gap["low_mm"]
        assert row["verdict"] == gap["verdict"]
        assert (gap["cure"] is None) == (gap["verdict"] == "holds")
        assert {cause["name"] for cause in gap["causes"]} >= {row["takes_most"]}


def test_the_chance_of_the_whole_kitchen(run: Run, demo_job: Path) -> None:
    """It stands with its seed below the walls, and as data with its curve from 4 to 1 mm."""
    data = json.loads(run("gaps", demo_job, "--format", "json").stdout)["chance"]
    assert (data["trials"], data["seed"]) == (100_000, 14)
    curve = {row["gap_mm"]: row["chance"] for row in data["curve"]}
    assert (max(curve), min(curve)) == (4.0, 1.0)
    assert curve[3.0] < data["planned"] < curve[3.25]
    told = run("gaps", demo_job).stdout
    assert (
        f"All {data['gaps']} gaps, counters apart, stay open in {data['planned']:.0%}"[:-1] in told
    )


def test_gaps_that_are_not_known_are_left_out_by_name(run: Run, small: Path) -> None:
    """Beside a front thicker than any table's the chance says how many it does not count, and
    why; in the list and on the page they do not stand before those that are marginal."""
    thick = SMALL.replace('front = "3/4"\n', 'front = "30 mm"\n')
    second = SMALL[SMALL.index("[[box]]") :].replace('"B1"', '"B2"')
    small.write_text(thick + second, encoding="utf-8")
    data = json.loads(run("gaps", small, "--format", "json").stdout)
    unknown = sum(gap["verdict"] == "unknown" for gap in data["gaps"])
    assert data["chance"]["not_known"] == unknown > 0
    told = " ".join(run("gaps", small).stdout.split())
    counters = sum(gap["beside"] == "counter" for gap in data["gaps"])
    known = len(data["gaps"]) - unknown - counters
    assert f"The {known} gaps whose least is known, counters apart, all stay open in" in told
    assert f"LEFT OUT: {unknown} not known" in told
    assert told.index("marginal how true") < told.index("not known how true")


def test_only_what_is_asked_for(run: Run, demo_job: Path) -> None:
    """A box by its name."""
    data = json.loads(run("gaps", demo_job, "--format", "json", "--only", "w1").stdout)
    assert {name for gap in data["gaps"] for name in gap["between"]} == {"W1-1", "T1", "W2-1L"}


def test_delivered_fronts_replace_their_tolerance(run: Run, demo_job: Path, tmp_path: Path) -> None:
    """The gap beside a measured front is known better."""
    listed = tmp_path / "came.csv"
    listed.write_text("id,width,height\nB1-2,454.0 mm,613.0 mm\n", encoding="utf-8")

    def spread(*more: str) -> float:
        told = run("gaps", demo_job, "--format", "json", *more).stdout
        [gap] = [g for g in json.loads(told)["gaps"] if g["between"] == ["B1-2", "B2-4"]]
        return float(gap["high_mm"] - gap["low_mm"])

    assert spread("--delivered", str(listed)) < spread()


def test_drawn_on_paper_and_one_by_one(run: Run, demo_job: Path, tmp_path: Path) -> None:
    """A page a wall, and one of the worst; the same as drawings."""
    assert run("gaps", demo_job, "--format", "pdf", "-o", str(tmp_path / "g.pdf")).exit_code == 0
    with pdfplumber.open(tmp_path / "g.pdf") as pdf:
        said = [page.extract_text() for page in pdf.pages]
    assert ["NORTH WALL: GAPS" in said[0], "SOUTH WALL: GAPS" in said[1]] == [True, True]
    assert "THE WORST GAPS" in said[2]
    result = run("gaps", demo_job, "--format", "svg", "-o", str(tmp_path / "drawn"))
    assert result.exit_code == 0, result.output
    drawn = sorted(path.name for path in (tmp_path / "drawn").iterdir())
    assert drawn == ["gaps-north.svg", "gaps-south.svg", "gaps-worst.svg"]
    for name in drawn:
        assert ElementTree.parse(tmp_path / "drawn" / name).getroot().tag.endswith("svg")


def test_a_job_without_gaps_draws_nothing(run: Run, small: Path) -> None:
    """An open shelf has no front."""
    text = SMALL[: SMALL.index("  [[box.front]]")].replace('"base"', '"open"')
    small.write_text(text, encoding="utf-8")
    result = run("gaps", small, "--format", "pdf")
    assert result.exit_code == 1
    assert "Nothing to draw" in result.stderr
    assert not (small.parent / "gaps.pdf").exists()
    assert run("gaps", small).stdout.startswith("No gaps.")


def test_paper_is_for_drawings(run: Run, small: Path) -> None:
    """A list for the terminal is on none."""
    assert run("gaps", small, "--paper", "a4").exit_code == 2


def test_measured_fronts_are_set_for_even_gaps(run: Run, small: Path) -> None:
    """A door that came 1.2 too wide gives half of it back to its hinge edge; as planned there is
    nothing to set."""
    wall = '[[wall]]\nname = "north"\nleft = "wall"\nright = "wall"\n'
    small.write_text(SMALL + wall, encoding="utf-8")
    assert "even gaps" not in run("gaps", small).stdout
    wide = SMALL + '  measured_width = ["455.2 mm", "455.2 mm"]\n' + wall
    small.write_text(wide, encoding="utf-8")
    told = run("gaps", small).stdout
    assert "Where each front sits for even gaps, mm" in told
    [row] = [
        row
        for row in json.loads(run("gaps", small, "--format", "json").stdout)["rows"]
        if row["moves"][0]["front"] == "B1-2"
    ]
    assert row["then_mm"] > row["before_mm"]
    # Left 1.5875 and 1.5875 - 1.175 at the right; they need 0.91 and 0.904 (derived).
    [move] = row["moves"]
    width = 455.2
    edge = 0.5 + hypot(width - 5, 19.05) - (width - 5)
    excess = width - (457.2 - 2 * 1.5875)
    assert move["right_mm"] == pytest.approx(
        -((1.5875 - 0.91) - (1.5875 - excess - edge)) / 2, abs=1e-3
    )


def test_a_room_is_drier_when_it_is_driest(run: Run, small: Path) -> None:
    """Exchanged seasons are a fault of the file; a temperature may be in its own unit."""
    small.write_text(SMALL + "[room]\ndriest = 60\ndampest = 40\n", encoding="utf-8")
    assert "room.driest: damper than dampest (60 given)" in run("gaps", small).stderr
    air = '[room]\ndriest = 30\ndampest = 60\ntemperature = "70 F"\n'
    small.write_text(SMALL + air, encoding="utf-8")
    assert "In the driest season the widest" in run("gaps", small).stdout


SLABS = (
    box('kind = "door"\nhinged = "left"'),
    box('kind = "door"\nhinged = "left"', name="B2"),
)


@pytest.mark.parametrize("here", [False, True])
def test_what_speaks_before_the_order_ends_with_1(run: Run, tmp_path: Path, here: bool) -> None:
    """Where slabs rub; what is drilled by ends with 0, and with the fronts in hand all does."""
    text = job(*SLABS) + '\n[wood]\nspecies = "sugar maple"\n[room]\ndampest = 65\n'
    if here:
        text = text.replace("[reveal]", "[fronts]\nin_hand = true\n[reveal]")
    path = tmp_path / "job.toml"
    path.write_text(text, encoding="utf-8")
    for command in ("check", "order", "gaps"):
        assert run(command, path).exit_code == (0 if here else 1), command
    assert run("sheets", path, "-o", tmp_path / "sheets.pdf").exit_code == 0
    order = json.loads(run("order", path, "--format", "json").stdout)
    assert [front["rubs"] for front in order["fronts"]] == ([] if here else [True, True])
    assert order["delivered"] == (["B1-1", "B2-1"] if here else [])
    gaps = json.loads(run("gaps", path, "--format", "json").stdout)["gaps"]
    cures = [gap["cure"] or "" for gap in gaps]
    assert any("MDF" in cure for cure in cures) is not here
