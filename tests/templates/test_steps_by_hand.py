"""The steps of faces whose holes are given by hand: there is no hardware to lay on."""

from pathlib import Path

from jigs.layout.layout import lay_out
from jigs.reading.inputs import read_job
from templates.faces.views import view_of_side
from templates.sheets.steps import steps_for

JOB = """
schema = 1
units = "mm"
[[box]]
id = "B1"
kind = "base"
width = 400
height = 731
depth = 571
  [[box.hole]]
  side = "both"
  x = 37
  y = 90
  diameter = 5
  depth = 12
  purpose = "frame slide"
  [[box.front]]
  kind = "pullout"
  fixing = "kit"
    [[box.front.hole]]
    x = 55
    y = 120
    diameter = 3
    depth = 12
    face = "back"
    purpose = "bracket"
"""


def test_a_side_with_holes_by_hand_is_checked_against_the_leaflet(tmp_path: Path) -> None:
    """Nobody is told to lay a leaflet on a drawing."""
    path = tmp_path / "job.toml"
    path.write_text(JOB, encoding="utf-8")
    for side in lay_out(read_job(path)).sides:
        view = view_of_side(side, "mm")
        assert view is not None
        steps = steps_for(view)
        assert "Check each place against the leaflet." in steps
        assert not any("Lay leaflet" in step for step in steps)
