"""`jigsheet parts`: what is chosen, what is told, and that the pack has the same list."""

import csv
import io
import json
from pathlib import Path

import pytest

from tests.cli.conftest import Run


def test_golden_box_as_data(run: Run, small: Path) -> None:
    """The bottom of the golden box: 457.2 - 2 x 18.3 = 420.6 long."""
    result = run("parts", small, "--format", "json")
    assert result.exit_code == 0
    parts = {part["id"]: part for part in json.loads(result.stdout)["parts"]}
    assert parts["B1-BOTTOM"]["length_mm"] == pytest.approx(420.6)
    assert parts["NORTH-TOE-1-FRONT"]["box"] is None


@pytest.mark.parametrize("name", ["b1-bottom", "B1", "north", "NORTH-TOE-1-FRONT", "B1-1"])
def test_only_takes_parts_boxes_fronts_and_walls(run: Run, small: Path, name: str) -> None:
    """In small letters too."""
    result = run("parts", small, "--only", name, "--format", "csv")
    assert result.exit_code == 0
    rows = list(csv.DictReader(io.StringIO(result.stdout)))
    assert rows
    for row in rows:
        assert name.upper() in (row["part"], row["box"], row["front"], row["wall"].upper())


def test_drawer_box_of_a_front_held_back_is_named(run: Run, small: Path) -> None:
    """Exit code 1; what can be cut is listed."""
    text = small.read_text(encoding="utf-8")
    wide = text.replace('height = "6"', 'height = "6"\n  drawer_width = "16 1/2"')
    small.write_text(wide, encoding="utf-8")
    result = run("parts", small)
    assert result.exit_code == 1
    assert "Left out, because their fronts are held back: B1-1-BOX." in result.stdout
    assert "B1-SIDE-L" in result.stdout
    assert "drawer" in result.stderr


def test_the_check_tells_what_is_doubtful_about_the_cut_list(run: Run, small: Path) -> None:
    """A groove that leaves nothing of its board."""
    build = '[build]\ngroove = "17 mm"\n[[box]]'
    text = small.read_text(encoding="utf-8").replace("[[box]]", build, 1)
    small.write_text(text, encoding="utf-8")
    result = run("check", small)
    assert result.exit_code == 0
    assert "[groove-too-deep]" in " ".join(result.stdout.split())


def test_the_pack_has_the_same_list(run: Run, small: Path) -> None:
    """parts.csv is what parts --format csv prints."""
    assert run("pack", small).exit_code == 0
    packed = (small.parent / "pack" / "parts.csv").read_text(encoding="utf-8")
    assert run("parts", small, "--format", "csv").stdout == packed


def test_end_panels_and_island_backs_are_cut_from_the_fronts_board(run: Run, small: Path) -> None:
    """panel_left, panel_right and island_back of a box."""
    keys = 'depth = "23"\npanel_left = "flush"\npanel_right = "covered"\nisland_back = true'
    text = small.read_text(encoding="utf-8").replace('depth = "23"', keys)
    small.write_text(text, encoding="utf-8")
    result = run("parts", small, "--format", "json")
    assert result.exit_code == 0
    parts = {part["id"]: part for part in json.loads(result.stdout)["parts"]}
    assert parts["B1-PANEL-L"]["width_mm"] == pytest.approx(584.2 + 2 + 19.05)
    assert parts["B1-PANEL-R"]["width_mm"] == pytest.approx(584.2)
    assert parts["NORTH-BACK-1"]["box"] is None
    small.write_text(text.replace('"flush"', '"level"'), encoding="utf-8")
    wrong = run("parts", small)
    assert wrong.exit_code == 1
    assert "panel_left" in wrong.stderr


def test_a_built_box_is_not_cut_again(run: Run, small: Path) -> None:
    """Its pieces are in no list and no sum, which is said; its labels and its drawer box stay."""
    text = small.read_text(encoding="utf-8")
    small.write_text(text.replace('depth = "23"', 'depth = "23"\nbuilt = true'), encoding="utf-8")
    told = run("parts", small).stdout
    assert "Built already, its own pieces in no table and no sum here: B1." in told
    assert "Drawer boxes stay in the list" in told
    assert "B1-SIDE-L" not in told
    assert "B1-1-BOX-SIDE" in told
    data = json.loads(run("parts", small, "--format", "json").stdout)
    assert data["built"] == ["B1"]
    assert not [part for part in data["parts"] if part["kind"] in ("side", "bottom", "back")]
    assert not [board for board in data["boards"] if board["board"] == "back"]
    rows = list(csv.DictReader(io.StringIO(run("parts", small, "--format", "csv").stdout)))
    (row,) = [row for row in rows if row["part"] == "B1"]
    assert (row["kind"], row["count"], row["length_mm"]) == ("built", "0", "")
    assert run("parts", small, "--only", "B1-BOTTOM").stdout.startswith("Nothing to cut.")
    assert run("labels", small, "--only", "B1-SIDE-L").exit_code == 0


def test_each_drawer_box_names_its_slide(run: Run, small: Path) -> None:
    """With its nominal length, which the box's depth has chosen where the job names none."""
    data = json.loads(run("parts", small, "--format", "json").stdout)
    (drawer,) = data["drawer_boxes"]
    assert (drawer["id"], drawer["slide_length_mm"]) == ("B1-1-BOX", 533.0)
    assert "533 mm (21 in) long" in run("parts", small).stdout
