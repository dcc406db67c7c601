"""What nobody gave is said in every list that carries a number of it."""

import csv
import io
import json
from pathlib import Path

from jigs.box.parts import Layout
from jigs.cutlist.cutlist import choose_parts, cut_job
from jigs.layout.layout import lay_out
from jigs.reading.inputs import read_job
from templates.lists.holelist import holes_csv, holes_json, holes_text
from templates.lists.partslist import parts_csv, parts_json

JOB = """
schema = 1
units = "mm"
[material]
{front}
[[box]]
id = "B1"
kind = "base"
width = 457
height = 776
depth = 584
  [[box.front]]
  kind = "door"
  hinged = "right"
"""


def laid(folder: Path, front: str = "") -> Layout:
    path = folder / "job.toml"
    path.write_text(JOB.format(front=front), encoding="utf-8")
    return lay_out(read_job(path))


def test_lists_of_holes_say_what_is_assumed(tmp_path: Path) -> None:
    """A column, a list on the part, a line under its head; what is stated is not among it."""
    layout = laid(tmp_path)
    rows = list(csv.DictReader(io.StringIO(holes_csv(layout))))
    assert rows
    for row in rows:
        assert "side thickness 18.0 mm" in row["assumed"]
        assert ("front thickness 19.0 mm" in row["assumed"]) is (row["part"] == "B1-1")
    data = json.loads(holes_json(layout))
    (door,) = data["fronts"]
    assert "front thickness 19.0 mm (3/4 in)" in door["assumed"]
    assert all("side thickness 18.0 mm (23/32- in)" in side["assumed"] for side in data["sides"])
    assert "  ASSUMED: " in holes_text(layout)
    stated = laid(tmp_path, 'front = "19.05 mm"')
    rows = list(csv.DictReader(io.StringIO(holes_csv(stated))))
    assert not [row for row in rows if "front thickness" in row["assumed"]]


def test_data_say_what_is_assumed_of_a_drawer_box(tmp_path: Path) -> None:
    """In the words of its front."""
    path = tmp_path / "job.toml"
    drawer = JOB.format(front="").replace('"door"', '"drawer"').replace('hinged = "right"', "")
    path.write_text(drawer, encoding="utf-8")
    (box,) = json.loads(holes_json(lay_out(read_job(path))))["boxes"]
    assert "drawer side thickness 15.9 mm (5/8 in)" in box["assumed"]


def test_the_cut_list_says_what_is_assumed_of_each_piece(tmp_path: Path) -> None:
    """A side's board, not the back's."""
    layout = laid(tmp_path)
    parts = choose_parts(layout, cut_job(layout))
    rows = {row["part"]: row["assumed"] for row in csv.DictReader(io.StringIO(parts_csv(parts)))}
    assert "side thickness 18.0 mm" in rows["B1-SIDE-L"]
    assert "back thickness 6.0 mm" in rows["B1-BACK"]
    assert "side thickness 18.0 mm" not in rows["B1-BACK"]
    data = {piece["id"]: piece["assumed"] for piece in json.loads(parts_json(parts))["parts"]}
    assert {name: "; ".join(words) for name, words in data.items()} == rows
