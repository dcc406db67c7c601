"""Job files that the tests start from, and how they are read."""

from pathlib import Path

import pytest

from jigs.given.job import Job
from jigs.ground.errors import ReadingError
from jigs.reading.jobfile import read_job_file

JOB = """\
schema = 1
name = "Ferry-house galley"
units = "in"

[material]
side = "18.3 mm"
front = "3/4"
front_kind = "mdf"
back = "6 mm"
band = "0.6 mm"
drawer_side = "15.9 mm"
front_density = 750

[reveal]
side = "1/16"
top = "1/8"
bottom = "1/16"
between = "1/8"

[fronts]
increment = "1/32"
tolerance = "1.6 mm"

[gaps]
box = "0.8 mm"
joint = "0.5 mm"
square = "0.4 mm"

[grid]
hinges = true
slides = false
start = "balanced"

[use]
hinge = "mine"
slide = "runner"
drawer_pull = "bar"
door_pull = "bar"

[hinge.mine]
like = "cup35-full"
constant = "15 mm"
plates = ["0 mm", "3 mm"]
tabs = ["5 mm"]

[slide.runner]
like = "undermount-533"
width_less = "42 mm"
depth_allowance = "16 mm"
drawer_shorter = "0 mm"
fixing_at = ["37 mm", "165 mm"]
carry_at = ["261 mm", "357 mm"]
fixing_height = "33 mm"
drawer_rise = "14 mm"
confirmed = "measured"

[pull.bar]
centers = "160 mm"
drawer = "center"
door_inset = "2"
door_corner = "2 1/2"
tall_height = "1000 mm"
two_from = "30"
screws = "front"
confirmed = "measured"

[[box]]
id = "B1"
wall = "north"
kind = "base"
width = "18"
height = "30 1/2"
depth = "23"
above_floor = "4"

  [[box.front]]
  kind = "drawer"
  height = "6"
  [[box.front]]
  kind = "door"
  hinged = "left"
"""

SMALL = """\
schema = 1
[[box]]
id = "B1"
kind = "base"
width = 457.2
height = 774.7
depth = 584.2
[[box.front]]
kind = "door"
hinged = "left"
"""


def read(tmp_path: Path, text: str) -> Job:
    """Read a job file of this text."""
    path = tmp_path / "job.toml"
    path.write_text(text, encoding="utf-8")
    return read_job_file(path)


def faults_of(tmp_path: Path, text: str | bytes) -> list[str]:
    """Read a job file that has faults; each fault without the folder."""
    path = tmp_path / "job.toml"
    path.write_bytes(text if isinstance(text, bytes) else text.encode())
    with pytest.raises(ReadingError) as caught:
        read_job_file(path)
    return [str(fault).replace(f"{tmp_path}/", "") for fault in caught.value.faults]


def line_of(text: str, part: str) -> int:
    """The line on which a part of the text first stands."""
    return text[: text.index(part)].count("\n") + 1
