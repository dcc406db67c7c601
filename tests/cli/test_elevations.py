"""`jigsheet elevations`: one file to print, a drawing a wall, and what is refused."""

import re
from pathlib import Path

import pytest

from tests.cli.conftest import Run


def test_a_drawing_for_each_wall(run: Run, demo_job: Path) -> None:
    """They go into a folder, named after the walls."""
    result = run("elevations", demo_job, "--format", "svg")
    assert result.exit_code == 0, result.output
    files = {path.as_posix() for path in Path().rglob("*.svg")}
    assert files == {"elevations/elevation-north.svg", "elevations/elevation-south.svg"}
    assert "2 sheets" in result.stderr


@pytest.mark.slow
def test_only_chooses_walls_by_any_part_of_them(run: Run, demo_job: Path) -> None:
    """What is found then concerns these walls alone: less than in the whole job."""

    def warnings(told: str) -> int:
        return int(re.findall(r"(\d+) warnings?:", told)[0])

    whole = warnings(run("elevations", demo_job, "--format", "svg").stderr)
    for name in ("south", "S1", "S1-1", "S1-SIDE-L"):
        words = ("--format", "svg", "-o", "one.svg")
        result = run("elevations", demo_job, "--only", name, *words)
        assert result.exit_code == 0, result.output
        assert 'id="S4-1"' in Path("one.svg").read_text("utf-8")
        assert 0 < warnings(result.stderr) < whole


def test_one_drawing_may_go_to_standard_output(run: Run, small: Path) -> None:
    """Several may not."""
    result = run("elevations", small, "--format", "svg", "-o", "-")
    assert result.stdout.startswith("<?xml")
    assert result.stdout.rstrip().endswith("</svg>")


@pytest.mark.parametrize("target", ["-", "both.svg"])
def test_two_walls_do_not_go_into_one_drawing(run: Run, demo_job: Path, target: str) -> None:
    """It is wrong usage, and says what to do."""
    result = run("elevations", demo_job, "--format", "svg", "-o", target)
    assert result.exit_code == 2
    assert "--only" in result.stderr
    assert not Path(target).exists()


def test_the_unit_of_the_terminal_changes_no_byte(run: Run, small: Path) -> None:
    """A drawing goes by the job's own unit."""
    for name, units in (("a.pdf", "mm"), ("b.pdf", "in")):
        assert run("elevations", small, "--units", units, "-o", name).exit_code == 0
    assert Path("a.pdf").read_bytes() == Path("b.pdf").read_bytes()


def test_a_long_wall_is_told_of_larger_paper(run: Run, small: Path) -> None:
    """At 1:50 there is no room for all sizes."""
    text = small.read_text("utf-8")
    head, _, body = text.partition("[[box]]")
    boxes = ["[[box]]" + body.replace('"B1"', f'"B{k}"') for k in range(12)]
    small.write_text(head + "".join(boxes), encoding="utf-8")
    assert "--paper" in run("elevations", small).stderr
    assert "--paper" not in run("elevations", small, "--paper", "a3").stderr
