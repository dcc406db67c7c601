"""Sound kitchens: invented ones whose numbers are all written and fit, and in which the check finds
nothing; with one number off, it does."""

import re
from functools import cache
from pathlib import Path

import pytest

from jigs.box.parts import Layout
from jigs.checks.cutting import with_cutting
from jigs.layout.layout import lay_out
from jigs.reading.inputs import read_job
from templates.words.assumedwords import assumed_lines
from templates.words.findings import check_text

FOLDER = Path(__file__).parent / "sound"
NAMES = ("ropewalk", "weighhouse", "mill-loft", "signal-box")


@cache
def laid_out(name: str) -> Layout:
    """Lay out one of them, its cut list checked too."""
    return with_cutting(lay_out(read_job(FOLDER / f"{name}.toml")))[0]


def found(layout: Layout) -> list[str]:
    """Give the codes of what the check finds."""
    return [problem.code for problem in layout.problems]


@pytest.mark.parametrize("name", NAMES)
def test_a_sound_kitchen_has_no_finding(name: str) -> None:
    """Nothing found, nothing held back, nothing assumed."""
    layout = laid_out(name)
    assert found(layout) == []
    assert not any(part.withheld for part in layout.units)
    assert assumed_lines(layout.job) == ()
    assert "Nothing found: every front can be drilled." in check_text(layout)


def test_they_hold_what_a_kitchen_holds() -> None:
    """Both units; each kind of box and front that is usual; walls, corners, appliances."""
    layouts = [laid_out(name) for name in NAMES]
    assert sorted(layout.job.units for layout in layouts) == ["in", "in", "mm", "mm"]
    boxes = [box for layout in layouts for box in layout.boxes]
    assert {box.kind for box in boxes} >= {"base", "drawer", "sink", "wall", "tall", "open"}
    fronts = {spec.kind for box in boxes for spec in box.fronts}
    assert fronts >= {"door", "pair", "drawer", "false-front", "panel", "opening"}
    assert any(box.kind == "tall" and box.shelves for box in boxes)
    assert any(len(box.columns) > 1 for box in boxes)
    assert any(box.rollouts for box in boxes)
    walls = [wall for layout in layouts for wall in layout.job.walls]
    assert {end.stands for wall in walls for end in (wall.left, wall.right)} == {
        "wall",
        "casing",
        "corner",
        "panel",
        "open",
    }
    assert any(wall.appliances for wall in walls)


@pytest.mark.parametrize(
    ("name", "was", "slip", "code"),
    [
        ("ropewalk", "constant = 14.5", "constant = 17.5", "overlay"),
        ("ropewalk", "left_filler = 45\nright", "left_filler = 30\nright", "wall-filler"),
        ("ropewalk", 'confirmed = "measured"\n\n[slide', "\n[slide", "unconfirmed-hinge"),
        ("weighhouse", 'counter = "36"', 'counter = "35 1/2"', "counter-height"),
        ("weighhouse", 'top = "1/8"', 'top = "1/16"', "counter-reveal"),
        ("mill-loft", "right_filler = 60", "right_filler = 40", "corner-filler"),
        ("mill-loft", "length = 500", "length = 550", "slide-too-long"),
        ("signal-box", 'ceiling = "97"', 'ceiling = "87"', "cannot-be-tilted-up"),
        ("signal-box", "load = 45", "load = 30", "slide-load"),
    ],
)
def test_a_slip_in_a_sound_kitchen_is_found(
    name: str, was: str, slip: str, code: str, tmp_path: Path
) -> None:
    """The silence is not deafness."""
    text = (FOLDER / f"{name}.toml").read_text(encoding="utf-8")
    assert was in text
    path = tmp_path / "job.toml"
    path.write_text(text.replace(was, slip), encoding="utf-8")
    codes = found(with_cutting(lay_out(read_job(path)))[0])
    assert code in codes


def test_the_readmes_first_job_shows_only_what_is_open(tmp_path: Path) -> None:
    """It says nothing of its hardware, and nothing else is doubtful about it."""
    readme = (Path(__file__).parents[1] / "README.md").read_text(encoding="utf-8")
    first = re.search(r"```toml\n(.*?)```", readme, re.DOTALL)
    assert first is not None
    path = tmp_path / "job.toml"
    path.write_text(first[1], encoding="utf-8")
    codes = set(found(with_cutting(lay_out(read_job(path)))[0]))
    assert codes == {"unconfirmed-hinge", "unconfirmed-slide", "unconfirmed-pull"}


@pytest.mark.parametrize(("units", "between"), [("in", 25.4 / 8), ("mm", 3.2)])
def test_an_unstated_gap_is_what_a_tape_of_the_jobs_units_shows(
    units: str, between: float, tmp_path: Path
) -> None:
    """1/8 in an inch job; under a counter 1/8 at the top, or 3 (common practice, no source)."""
    path = tmp_path / "job.toml"
    path.write_text(
        f'schema = 1\nunits = "{units}"\n[[box]]\nid = "B1"\nkind = "base"\nwidth = "600 mm"\n'
        'height = "720 mm"\ndepth = "560 mm"\n[[box.front]]\nkind = "pair"\n',
        encoding="utf-8",
    )
    layout = lay_out(read_job(path))
    left, right = layout.fronts
    assert right.place.x - left.place.x - left.width == pytest.approx(between)
    assert left.gaps.top == pytest.approx({"in": 25.4 / 8, "mm": 3.0}[units])
    assert left.gaps.left == pytest.approx({"in": 25.4 / 16, "mm": 1.6}[units])
    assert "counter-reveal" not in found(layout)
