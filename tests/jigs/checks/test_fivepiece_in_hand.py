"""A five-piece front that came in another size: are its holes still in wood?"""

from pathlib import Path

import pytest

from jigs.layout.layout import lay_out
from jigs.reading.inputs import read_job

JOB = """
schema = 1
units = "mm"
[material]
side = 18
drawer_side = 15.9
[[box]]
id = "B1"
kind = "drawer"
width = 700
height = 720
depth = 560
  [[box.front]]
  kind = "drawer"
  height = 210
  stile = 80
  rail = 65
  panel = 6
  pull = "none"
  drawer_height = 150
  measured_height = [{height}, {height}]
  [[box.front]]
  kind = "drawer"
"""


@pytest.mark.parametrize(
    ("height", "held"), [(210, False), (207, False), (211.9, False), (212.2, True), (230, True)]
)
def test_a_screw_over_the_panel_holds_the_front(tmp_path: Path, height: float, held: bool) -> None:
    """The upper screws keep their height; a rail that stands higher no longer has them.

    The middle one is set 2 from the groove: at a front over 2 higher it opens into it.
    """
    path = tmp_path / "job.toml"
    path.write_text(JOB.replace("{height}", str(height)), encoding="utf-8")
    layout = lay_out(read_job(path))
    codes = {problem.code for problem in layout.problems if problem.part == "B1-1"}
    assert ("hole-in-panel-in-hand" in codes) is held
    assert layout.fronts[0].withheld is held
