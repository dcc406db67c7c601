"""A front that reaches over the front edge of a covered end panel: derived, from a panel of 19.05
beside the golden box, a reveal of 1.6 to the panel's outside."""

from pathlib import Path

import pytest

from jigs.box.parts import Front, Layout
from jigs.cutlist.cutlist import cut_job
from jigs.layout.layout import lay_out
from jigs.room.elevation import see_walls
from tests.jigs.jobtext import SMALL, faults_of, read

PANEL = 19.05
OVER = PANEL - 1.6
MATERIAL = f"[material]\nside = 18.3\nfront = {PANEL}\n"
BOX = SMALL.replace("schema = 1\n", f"schema = 1\n{MATERIAL}").replace(
    "depth = 584.2\n", 'depth = 584.2\nwall = "north"\npanel_right = "covered"\n'
)
DRAWER = '[[box.front]]\nkind = "drawer"\nheight = 200\n'


def lay(folder: Path, over: str = "") -> Layout:
    text = BOX.replace('hinged = "left"\n', f'hinged = "left"\n{over}')
    return lay_out(read(folder, f"{text}{DRAWER}{over}"))


def front_of(layout: Layout, name: str) -> Front:
    return next(front for front in layout.fronts if front.id == name)


def test_it_is_wider_by_what_it_reaches_over(tmp_path: Path) -> None:
    """457.2 + 17.45 less the reveal at the left; nothing is held back, and its holes at the left
    stay where they were."""
    plain, over = lay(tmp_path), lay(tmp_path, f'reveal_right = "-{OVER} mm"\n')
    for name in ("B1-1", "B1-2"):
        before, after = front_of(plain, name), front_of(over, name)
        assert after.width == pytest.approx(457.2 - 1.6 + OVER, abs=0.05)
        assert not after.withheld
        was, now = (
            sorted(
                (round(hole.x, 4), round(hole.y, 4))
                for hole in front.holes
                if hole.purpose in ("cup", "front-fixing")
            )
            for front in (before, after)
        )
        assert was == now != []


def test_the_panels_edge_is_out_of_sight_where_they_reach_over(tmp_path: Path) -> None:
    """On the elevation and in the cut list; else its edge is seen."""
    for over, hidden, kind in (
        ("", False, "edge-seen"),
        (f'reveal_right = "-{OVER} mm"\n', True, "covered"),
    ):
        layout = lay(tmp_path, over)
        [seen] = [box for wall in see_walls(layout) for box in wall.boxes]
        [strip] = [strip for strip in seen.strips if strip.kind == "panel"]
        assert seen.is_behind(strip) is hidden
        [panel] = [piece for piece in cut_job(layout).pieces if piece.kind == "end-panel"]
        assert panel.notes[0].kind == kind


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        ('panel_right = "covered"', 'panel_right = "flush"', 'panel_right = "covered" at the box'),
        ('panel_right = "covered"\n', "", "only over an end panel"),
        ('hinged = "left"', 'hinged = "right"', "no hinge laps over an end panel"),
        ('kind = "door"\nhinged = "left"', 'kind = "pair"', "no hinge laps over an end panel"),
    ],
)
def test_where_it_cannot_reach_over_is_told(tmp_path: Path, old: str, new: str, told: str) -> None:
    """Without a covered panel there, and where it is hinged."""
    assert old in BOX
    text = f'{BOX.replace(old, new)}reveal_right = "-{OVER} mm"\n'
    [said] = faults_of(tmp_path, text)
    assert "reveal_right: below 0" in said
    assert told in said


def test_it_reaches_no_further_than_its_panel_is_thick(tmp_path: Path) -> None:
    """To its outer face, and not before the front of the box beside it."""
    lay(tmp_path, f'reveal_right = "-{PANEL} mm"\n')
    [said] = faults_of(tmp_path, f'{BOX}reveal_right = "-30 mm"\n')
    assert "'-30 mm' given) by more than its end panel is thick" in said


def test_what_reaches_past_the_panel_is_too_wide(tmp_path: Path) -> None:
    """A width that is given is held against what the reveals want."""
    layout = lay(tmp_path, f'reveal_right = "-{OVER} mm"\nwidth = "480 mm"\n')
    assert "reveals-do-not-close" in {problem.code for problem in layout.problems}
