"""The hole list: for people, for a spreadsheet, as data; all three tell the same holes."""

import csv
import io
import json
from dataclasses import replace

import pytest

from templates.lists.holelist import COLUMNS, holes_csv, holes_json, holes_text
from tests.templates.small_layout import small_layout

FRONT_KEYS = (
    "id", "box", "kind", "hinged", "code", "withheld", "width_mm", "height_mm", "thickness_mm",
    "x_mm", "y_mm", "hinge", "holes",
)  # fmt: skip
SIDE_KEYS = ("box", "column", "side", "board", "code", "height_mm", "depth_mm", "holes")


def rows() -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(holes_csv(small_layout()))))


def test_the_data_have_their_promised_keys() -> None:
    """Keys and their order are a promise to whoever reads the data."""
    data = json.loads(holes_json(small_layout()))
    assert tuple(data) == ("schema", "job", "units", "fronts", "sides", "problems")
    assert data["schema"] == 1
    for front in data["fronts"]:
        assert tuple(front) == FRONT_KEYS
        for hole in front["holes"]:
            assert tuple(hole) == ("purpose", "face", "x_mm", "y_mm", "diameter_mm", "depth_mm")
    for side in data["sides"]:
        assert tuple(side) == SIDE_KEYS
        for hole in side["holes"]:
            assert tuple(hole) == ("purpose", "part", "x_mm", "y_mm", "diameter_mm", "depth_mm")
    for problem in data["problems"]:
        assert tuple(problem) == ("level", "rank", "code", "part", "text", "remedy")


def test_the_golden_drawer_and_door() -> None:
    """Worked example of the project's trade notes: pull at 147 and 307, cup at 22.5."""
    drawer, door = json.loads(holes_json(small_layout()))["fronts"]
    pulls = [hole["x_mm"] for hole in drawer["holes"] if hole["purpose"] == "pull"]
    assert pulls == [454.0 / 2 - 160 / 2, 454.0 / 2 + 160 / 2]
    cups = [hole for hole in door["holes"] if hole["purpose"] == "cup"]
    assert [cup["x_mm"] for cup in cups] == [5 + 35 / 2, 5 + 35 / 2]
    assert cups[0]["y_mm"] == pytest.approx(99.35 - 1.6)
    assert door["hinge"] == {
        "record": "cup35-full",
        "tab_mm": 5.0,
        "plate_mm": 3.0,
        "overlay_error_mm": round(15 + 5 - 3 - (18.3 - 1.6), 4),
    }
    assert drawer["hinge"] is None


def test_numbers_are_written_to_a_ten_thousandth() -> None:
    """No digits that nobody can drill, and no negative zero."""
    text = holes_json(small_layout())
    numbers: list[float] = []
    json.loads(text, parse_float=lambda word: numbers.append(float(word)))
    assert numbers
    assert all(round(number, 4) == number for number in numbers)
    assert "-0.0" not in text.replace("-0.0\u0030", "")


def test_csv_and_data_tell_the_same_holes() -> None:
    """One row a hole, in the same order."""
    data = json.loads(holes_json(small_layout()))
    wanted = [
        (part.get("id") or part["board"], hole["purpose"], hole["x_mm"], hole["y_mm"])
        for part in (*data["fronts"], *data["sides"])
        for hole in part["holes"]
    ]
    listed = [(r["part"], r["purpose"], float(r["x_mm"]), float(r["y_mm"])) for r in rows()]
    assert listed == wanted
    assert tuple(rows()[0]) == COLUMNS


def test_no_cell_is_a_formula() -> None:
    """An ID that begins with a sign of arithmetic is only text to a spreadsheet."""
    layout = small_layout()
    front = replace(layout.fronts[0], id="-1+2", box="=B1")
    text = holes_csv(replace(layout, fronts=(front,), sides=()))
    for row in csv.reader(io.StringIO(text)):
        for cell in row:
            assert not cell.startswith(("=", "+", "@"))
            assert not cell.startswith("-") or float(cell) < 0
    assert "'-1+2,'=B1," in text


def test_the_text_gives_the_jobs_unit_first() -> None:
    """Inches before millimetres in a job in inches, the other way round in one in mm."""
    layout = small_layout()
    assert "5 25/32+ in (147.0)" in holes_text(layout)
    metric = replace(layout, job=replace(layout.job, units="mm"))
    assert "147.0 (5 25/32+ in)" in holes_text(metric)


def test_a_part_held_back_is_named_and_has_no_holes() -> None:
    """It is not forgotten, and nothing can be drilled from it."""
    layout = small_layout()
    held = replace(layout.fronts[1], fittings=(), held=("hand-not-stated: nobody said",))
    layout = replace(layout, fronts=(layout.fronts[0], held))
    [_, data] = json.loads(holes_json(layout))["fronts"]
    assert data["withheld"] is True
    assert data["holes"] == []
    assert "HELD: hand-not-stated: nobody said" in holes_text(layout)
