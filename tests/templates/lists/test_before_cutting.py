"""What must be settled before any board is cut: said on the elevation and in the cut list."""

from pathlib import Path

import pytest

from jigs.box.parts import Layout
from jigs.cutlist.cutlist import choose_parts, cut_job
from jigs.layout.layout import lay_out
from jigs.reading.inputs import read_job
from templates.elevations.elevation import draw_elevations
from templates.lists.partstables import parts_text
from templates.page.marks import Text
from templates.page.paper import PAPERS

JOB = """
schema = 1
units = "mm"
[material]
side = 18.3
front = 19.05
[use]
slide = "undermount-533"
[[wall]]
name = "north"
ceiling = {ceiling}
counter = 914
counter_thickness = 38
right = "corner"
right_meets = "east"
right_filler = {filler}
[[wall]]
name = "east"
left = "corner"
left_meets = "north"
left_filler = 80
[[box]]
id = "T1"
wall = "north"
kind = "tall"
width = 600
height = 2150
depth = 584
  [[box.front]]
  kind = "false-front"
[[box]]
id = "B1"
wall = "north"
kind = "base"
width = 457
height = {height}
depth = 584
  [[box.front]]
  kind = "drawer"
[[box]]
id = "E1"
wall = "east"
kind = "base"
width = 457
height = 776
depth = 584
  [[box.front]]
  kind = "drawer"
"""


def laid(folder: Path, *, ceiling: int = 2400, filler: int = 80, height: int = 776) -> Layout:
    path = folder / "job.toml"
    path.write_text(JOB.format(ceiling=ceiling, filler=filler, height=height), encoding="utf-8")
    return lay_out(read_job(path))


def on_elevation(layout: Layout, wall: str) -> str:
    (page,) = [d.page for d in draw_elevations(layout, PAPERS["a3"]) if d.elevation.wall == wall]
    return " ".join(mark.text for mark in page.marks if isinstance(mark, Text))


@pytest.mark.parametrize(
    ("changed", "named"),
    [
        # sqrt(2150^2 + 584^2) = 2227.9 across, over 2230 - 10 (derived).
        ({"ceiling": 2230}, "T1"),
        ({"filler": 10}, "B1-1"),
        # 914 - 38 - 100 (the toe) = 776 is what the counter asks for.
        ({"height": 740}, "B1"),
    ],
    ids=["tilting", "corner filler", "counter height"],
)
def test_it_is_read_before_the_saw_runs(
    tmp_path: Path, changed: dict[str, int], named: str
) -> None:
    """On its own wall's elevation and over the cut list, with the remedy; nowhere without."""
    layout = laid(tmp_path, **changed)
    words = f"BEFORE YOU CUT: {named}"
    listed = parts_text(choose_parts(layout, cut_job(layout)))
    assert words in on_elevation(layout, "north")
    assert "BEFORE YOU CUT" not in on_elevation(layout, "east")
    assert listed.index(words) < listed.index("Board of")
    sound = laid(tmp_path)
    assert "BEFORE YOU CUT" not in on_elevation(sound, "north")
    assert "BEFORE YOU CUT" not in parts_text(choose_parts(sound, cut_job(sound)))


def test_many_findings_leave_room_to_draw(tmp_path: Path) -> None:
    """Ten low boxes under one counter: four are told in full on the sheet, the others counted."""
    text = JOB.format(ceiling=2400, filler=80, height=776)
    low = "".join(
        f"""
[[box]]
id = "L{number}"
wall = "north"
kind = "base"
width = {500 + number}
height = {600 + 10 * number}
depth = 584
  [[box.front]]
  kind = "drawer"
"""
        for number in range(10)
    )
    path = tmp_path / "job.toml"
    path.write_text(text + low, encoding="utf-8")
    layout = lay_out(read_job(path))
    found = {p.part for p in layout.problems if p.code == "counter-height"}
    assert len(found) == 10
    said = on_elevation(layout, "north")
    assert said.count("BEFORE YOU CUT") == 5
    assert "more: run 'jigsheet check'" in said
    listed = parts_text(choose_parts(layout, cut_job(layout)))
    assert listed.count("BEFORE YOU CUT") >= 10


@pytest.mark.parametrize(
    ("job", "words"),
    [
        (
            JOB.replace('id = "B1"\n', 'id = "B1"\nx = 500\n'),
            "B1 and T1 stand in the same place",
        ),
        (
            JOB.replace('name = "north"\n', 'name = "north"\nlength = 900\n', 1),
            "the run of wall north takes 1137.0 mm",
        ),
    ],
)
def test_a_run_that_cannot_be_built_is_told_before_its_boards_are_cut(
    tmp_path: Path, job: str, words: str
) -> None:
    """Two boxes in one place, and a wall too short for its run: 600 + 457 + 80 mm."""
    path = tmp_path / "job.toml"
    path.write_text(job.format(ceiling=2400, filler=80, height=776), encoding="utf-8")
    layout = lay_out(read_job(path))
    listed = " ".join(parts_text(choose_parts(layout, cut_job(layout))).split())
    for told in (listed, on_elevation(layout, "north")):
        assert "BEFORE YOU CUT" in told
        assert words in told
    assert words not in on_elevation(layout, "east")
