"""What cannot stand where it was put, and what is written for another job: each its own message."""

from pathlib import Path

import pytest

from tests.cli.conftest import SMALL, Run

SECOND = """\
[[box]]
id = "B2"
wall = "north"
kind = "base"
width = "18"
height = "30 1/2"
depth = "23"
x = "12"
  [[box.front]]
  kind = "door"
  hinged = "right"
"""
COMMANDS = ("check", "holes", "sheets", "labels", "parts", "order", "pack")


@pytest.mark.parametrize("command", COMMANDS)
def test_two_boxes_in_one_place(command: str, run: Run, small: Path) -> None:
    """Exit code 1: the box that was put there is held back by every command, with its reason."""
    small.write_text(SMALL + SECOND, encoding="utf-8")
    result = run(command, small)
    assert result.exit_code == 1
    said = " ".join((result.stdout + result.stderr).split())
    assert "B2-1: B2 and B1 stand in the same place: they overlap 6 in (152.4 mm) along" in said
    assert "Move one: correct its x or above_floor" in said
    assert "error: B1" not in said


def test_the_label_and_the_cut_list_of_a_box_that_is_held(run: Run, small: Path) -> None:
    """Its fronts are told as held in the order; moved, all is ready."""
    small.write_text(SMALL + SECOND, encoding="utf-8")
    told = run("order", small).stdout
    assert "Held back, not ordered, and in no sum here" in told
    assert "B2-1 HELD BACK: same place" in " ".join(told.split())
    small.write_text(SMALL + SECOND.replace('x = "12"', 'x = "18"'), encoding="utf-8")
    assert run("check", small).exit_code == 0


@pytest.mark.parametrize(("length", "code"), [("17", 1), ("18 1/2", 0), ("20", 0)])
def test_a_wall_shorter_than_its_boxes(length: str, code: int, run: Run, small: Path) -> None:
    """An error where no filler helps, though no part is held; else the fillers are to be cut."""
    wall = f"""
[[wall]]
name = "north"
left = "wall"
left_filler = "1"
right = "wall"
right_filler = "1"
length = "{length}"
"""
    small.write_text(SMALL + wall, encoding="utf-8")
    result = run("check", small)
    assert result.exit_code == code
    said = " ".join(result.stdout.split())
    assert ("1 in (25.4 mm) without any filler; the boxes find no room" in said) is (code == 1)
    assert ("too short" in said) is (length != "20")
    closing = "No part is held back, but it cannot be built so."
    assert (closing in said) is (code == 1)
    assert run("sheets", small).exit_code == code
    assert Path("sheets.pdf").exists()


def test_a_delivered_list_of_another_job(run: Run, small: Path) -> None:
    """No ID known, of three or more: nothing is made, and the list is doubted, not the IDs."""
    rows = "".join(f"X{n}-1,17 7/8,6\n" for n in range(1, 4))
    Path("other.csv").write_text(f"id,width,height\n{rows}", encoding="utf-8")
    for command in ("check", "parts", "order"):
        result = run(command, small, "--delivered", "other.csv")
        assert result.exit_code == 1
        assert "none of the 3 IDs in this list is a front of the job" in result.stderr
        assert "is it the list of another job?" in result.stderr
        assert result.stdout == ""
