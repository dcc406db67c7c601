"""The hand of a front, and what an unknown kind leaves unjudged."""

from pathlib import Path

import pytest

from jigs.ground.errors import ReadingError
from jigs.reading.frontlist import read_front_list
from tests.jigs.jobtext import JOB, SMALL, faults_of, read


@pytest.mark.parametrize("hand", ["left", "Left", "LEFT", "L", "lh"])
def test_a_hand_is_read_however_it_is_written(tmp_path: Path, hand: str) -> None:
    """In capitals too, and shortened as on an order, as in a list of fronts."""
    job = read(tmp_path, SMALL.replace('hinged = "left"', f'hinged = "{hand}"'))
    assert [front.hinged for box in job.boxes for front in box.fronts] == ["left"]


def test_a_pair_has_its_hands_already(tmp_path: Path) -> None:
    """What is said of one hand of it would be taken in silence."""
    text = SMALL.replace('kind = "door"', 'kind = "pair"')
    assert "hinged" in text
    (fault,) = faults_of(tmp_path, text)
    assert "of a pair the left leaf hangs left, the right one right ('left' given)" in str(fault)


def test_of_an_unknown_kind_no_size_is_judged(tmp_path: Path) -> None:
    """A height that a drawer may have and a door not is no second fault."""
    text = JOB.replace('kind = "drawer"\n  height = "6"', 'kind = "drawers"\n  height = "2 1/2"')
    (fault,) = faults_of(tmp_path, text)
    assert "did you mean 'drawer'?" in fault


def test_a_list_is_told_the_same(tmp_path: Path) -> None:
    """At its row and column."""
    path = tmp_path / "fronts.csv"
    path.write_text("kind,w,h,hand\npair,300,713,L\n", encoding="utf-8")
    with pytest.raises(ReadingError, match="row 2, column hand: is for a single door: of a pair"):
        read_front_list(path, "mm", bare=True)
