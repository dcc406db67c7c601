"""Boxes as built, in the job file."""

from pathlib import Path

import pytest

from tests.jigs.jobtext import JOB, SMALL, faults_of, read

BOX = 'above_floor = "4"\n'


def built(lines: str) -> str:
    """Give the full job with these lines in its box."""
    return JOB.replace(BOX, BOX + lines)


def test_a_box_as_built(tmp_path: Path) -> None:
    """What was measured of a built box is read in the job's units; a box is not built unsaid."""
    lines = (
        'built = true\nmeasured_width = ["18", "457.6 mm"]\nmeasured_height = ["30 1/2", "30 1/2"]'
        '\nmeasured_depth = "23"\ndiagonals = ["899 mm", "900 mm"]\n'
    )
    (box,) = read(tmp_path, built(lines)).boxes
    assert box.built
    assert box.measured.width == (457.2, 457.6)
    assert box.measured.height == (774.7, 774.7)
    assert (box.measured.depth, box.measured.diagonals) == (584.2, (899.0, 900.0))
    (plain,) = read(tmp_path, JOB).boxes
    assert (plain.built, plain.measured.width, plain.measured.diagonals) == (False, None, None)
    (bare,) = read(tmp_path, built("built = true\n")).boxes
    assert (bare.built, bare.measured.depth) == (True, None)


@pytest.mark.parametrize(
    ("lines", "place", "words"),
    [
        ('built = "yes"\n', "box[1].built: ", "neither true nor false"),
        ('measured_width = ["18", "18"]\n', "box[1].measured_width: ", "stands without built"),
        ('built = false\ndiagonals = ["35", "35"]\n', "box[1].diagonals: ", "without built"),
        ('built = true\nmeasured_width = ["18"]\n', "box[1].measured_width: ", "top, bottom"),
        ('built = true\nmeasured_width = "18"\n', "box[1].measured_width: ", "not a list"),
        ("built = true\nmeasured_width = '18\"'\n", "measured_width", "= ['18\"', '18\"']"),
        ('built = true\nmeasured_height = ["30", "31", "32"]\n', "box[1].measured_height: ",
         "left, right"),
        ('built = true\nmeasured_width = ["18", "16"]\n', "box[1].measured_width: ",
         "far from the width"),
        ('built = true\nmeasured_depth = "33"\n', "box[1].measured_depth: ", "far from the depth"),
        ('built = true\ndiagonals = ["31", "31"]\n', "box[1].diagonals: ", "diagonal"),
        ('built = true\nmeasured_depth = ["23"]\n', "box[1].measured_depth: ", "not a length"),
    ],
)  # fmt: skip
def test_nonsense_is_a_fault(tmp_path: Path, lines: str, place: str, words: str) -> None:
    """A measure that cannot be meant is told at its line."""
    (fault,) = faults_of(tmp_path, built(lines))
    assert place in fault
    assert words in fault


def test_a_box_without_its_sizes_breeds_no_other_faults(tmp_path: Path) -> None:
    """Where the box's own width is missing, its measures are held against nothing."""
    text = SMALL.replace("width = 457.2\n", "built = true\nmeasured_width = [457, 458]\n", 1)
    (fault,) = faults_of(tmp_path, text)
    assert "width is missing" in fault
