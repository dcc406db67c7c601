"""`new --fronts`: what a list asks out of a pipe, boxes that are called W1, a corner that nobody
measured."""

from pathlib import Path

import pytest

from tests.cli.conftest import Run
from tests.cli.test_new import talk

APART = (
    "Box,Kind,Width,Height,Hinged\nB1,drawer,450,140,\n,door,450,600,left\n"
    "W1,door,400,700,left\nW2,drawer,400,700,\n"
)
"""A row without a box: does it hang on the box above?"""
WHOLE = APART.replace("\n,door", "\nB1,door")


@pytest.fixture
def offer(tmp_path: Path) -> Path:
    path = tmp_path / "offer.csv"
    path.write_text(APART, encoding="utf-8")
    return path


def test_the_next_lines_of_a_pipe_answer_a_list(run: Run, offer: Path) -> None:
    """The first its question, the others those of every job; nothing is told twice."""
    job = offer.with_name("k.toml")
    result = talk(job, "--fronts", offer, said=("1", *[""] * 80))
    assert result.exit_code == 0, result.output
    assert 'empty_box = "above"' in job.read_text("utf-8")
    told = result.stderr.splitlines()
    assert sum(line.startswith("Columns read") for line in told) == 1
    assert sum(line.startswith("As read, row 2") for line in told) == 1


@pytest.mark.parametrize("words", [(), ("--usual",)])
def test_without_a_line_the_option_is_named(run: Run, offer: Path, words: tuple[str, ...]) -> None:
    """As the list's fault, once."""
    job = offer.with_name("k.toml")
    result = talk(job, "--fronts", offer, *words)
    assert result.exit_code == 1
    assert "--columns empty_box=above" in result.stderr
    assert result.stderr.count("Columns read") == 1
    assert not job.exists()


def test_a_wrong_line_of_a_pipe_is_a_fault(run: Run, offer: Path) -> None:
    """Whatever follows may be meant for another question."""
    result = talk(offer.with_name("k.toml"), "--fronts", offer, said=("7", "1"))
    assert result.exit_code == 1
    assert "Not one of them ('7' given); 1 to " in result.stderr


def test_a_box_called_w1_is_proposed_as_a_wall_box(run: Run, offer: Path) -> None:
    """Behind doors alone; shown before Enter is pressed, and marked where nobody looks."""
    offer.write_text(WHOLE, encoding="utf-8")
    job = offer.with_name("k.toml")
    result = talk(job, "--fronts", offer, said=[""] * 80)
    assert result.exit_code == 0, result.output
    assert "   W1  wall " in result.stderr
    kinds = [line for line in job.read_text("utf-8").splitlines() if line.startswith("kind")]
    assert [line.split('"')[1] for line in kinds] == ["base", "wall", "drawer"]
    other = offer.with_name("other.toml")
    run("new", other, "--fronts", offer, "--usual")
    assert 'kind = "wall"                    # WORKED OUT, NOT LOOKED AT' in other.read_text(
        "utf-8"
    )


def test_a_corner_that_nobody_measured_stays_open(run: Run, offer: Path) -> None:
    """35 is a usual pull (common practice, no source); an oven's handle is another."""
    offer.write_text(WHOLE, encoding="utf-8")
    job = offer.with_name("k.toml")
    words = ("--usual", "--walls", "north: B1 W1 W2", "--answer", "wall.north.left=corner")
    result = run("new", job, "--fronts", offer, *words)
    assert result.exit_code == 0, result.output
    assert "[wall] left_reach" in " ".join(result.stderr.split())
    assert "NOT MEASURED" in next(
        line for line in job.read_text("utf-8").splitlines() if line.startswith("left_reach")
    )
    said = offer.with_name("said.toml")
    result = run("new", said, "--fronts", offer, *words, "--answer", "wall.north.left_reach=50")
    assert result.exit_code == 0, result.output
    assert "left_reach" not in result.stderr


def test_a_size_that_is_refused_is_shown_as_it_stands(run: Run, offer: Path) -> None:
    """70 is no 700 mm before anybody said so."""
    offer.write_text(WHOLE.replace("B1,drawer,450,140", "B1,door,450,70"), encoding="utf-8")
    result = run("check", offer)
    assert result.exit_code == 1
    assert "As read, row 2: door, 450.0 mm (17 23/32 in) wide, '70' high, which is refused" in (
        result.stderr
    )
    assert "700.0" not in result.stderr.split("As read, row 3")[0]
