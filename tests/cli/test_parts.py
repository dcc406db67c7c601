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
