"""A front of a list that the job file names again."""

from pathlib import Path

import pytest

from jigs.reading.jobfile import read_job_file
from tests.jigs.jobtext import faults_of, line_of, read

BOX = """\
schema = 1
fronts_file = "offer.csv"
[[box]]
id = "B2"
kind = "base"
width = 457.2
height = 774.7
depth = 584.2
"""
LIST = "Box,Kind,Width,Height,Hinged\nB2,drawer,454,149,\nB2,door,454,616,left\n"
"""By itself it names B2-1 and B2-2."""


def wrong(folder: Path, front: str, rows: str = LIST) -> str:
    """Give the one fault of a job whose box has this table of a front beside its list."""
    (folder / "offer.csv").write_text(rows)
    text = f"{BOX}[[box.front]]\n{front}"
    (said,) = faults_of(folder, text)
    line = line_of(text, "[[box.front]]") + front.startswith("id")
    assert said.startswith(f"job.toml:{line}: box[1].front[1]")
    return said.replace(f"{folder}/", "")


def test_what_has_a_column_is_sent_there(tmp_path: Path) -> None:
    """File and row of the front, and the columns for what the table states; nothing is missing."""
    said = wrong(tmp_path, 'id = "b2-2"\nbored = true\nhinges_at = ["97 mm"]\nbored_tab = 5\n')
    assert "B2-2 is a front of the list already (offer.csv: row 3)" in said
    assert "in the columns 'Bored', 'Hinges at', 'Bored tab'" in said
    assert "missing" not in said


def test_the_columns_that_are_named_are_read(tmp_path: Path) -> None:
    """Whoever does as the message says has the front with its bores."""
    (tmp_path / "offer.csv").write_text(
        "Box,Kind,Width,Height,Hinged,Bored,Hinges at,Bored tab\n"
        "B2,drawer,454,149,,,,\nB2,door,454,616,left,yes,97 mm; 503 mm,5\n"
    )
    (box,) = read(tmp_path, BOX).boxes
    assert box.fronts[1].hung.hinges_at == (97.0, 503.0)
    assert box.fronts[1].boring.bored
    assert box.fronts[1].boring.bored_tab == 5.0


def test_what_has_no_column_wants_the_whole_box(tmp_path: Path) -> None:
    """The job's fronts stand above those of a list: all of the box are written in the job."""
    said = wrong(tmp_path, 'id = "B2-2"\nreveal_left = 3\nbored = true\n')
    assert "A list has no column for reveal_left: take the rows of box B2 out of it" in said
    (tmp_path / "offer.csv").write_text("Box,Kind,Width,Height\nB3,drawer,454,149\n")
    drawer = '[[box.front]]\nkind = "drawer"\nheight = 149\n'
    door = '[[box.front]]\nid = "B2-2"\nkind = "door"\nreveal_left = 3\n'
    third = BOX[BOX.index("[[box]]") :].replace("B2", "B3")
    first, _ = read(tmp_path, f"{BOX}{drawer}{door}{third}").boxes
    assert [front.id for front in first.fronts] == ["B2-1", "B2-2"]


def test_one_of_several_in_a_row(tmp_path: Path) -> None:
    """What is said of one of them would be said of all: it gets a row of its own."""
    rows = "Id,Box,Kind,Width,Height,Count\nD,B2,drawer,454,149,2\n"
    said = wrong(tmp_path, 'id = "D-2"\nbored = true\n', rows)
    assert "D-2 is a front of the list already (offer.csv: row 2)" in said
    assert "Its row stands for 2 fronts: give this one a row of its own." in said


def test_without_an_id_the_fronts_of_the_box_are_named(tmp_path: Path) -> None:
    """A table that names no kind may mean one of them."""
    said = wrong(tmp_path, "bored = true\n")
    assert "kind is missing" in said
    assert "one of the list's, B2-1 (offer.csv: row 2), B2-2 (offer.csv: row 3)?" in said


@pytest.mark.parametrize("front", ['kind = "door"\n', 'id = "B2-1"\nkind = "false-front"\n'])
def test_one_more_front_stands_above_those_of_the_list(tmp_path: Path, front: str) -> None:
    """A front of its own kind is no front of the list."""
    (tmp_path / "offer.csv").write_text(LIST)
    (box,) = read(tmp_path, f"{BOX}[[box.front]]\n{front}").boxes
    assert len(box.fronts) == 3


def test_an_id_of_the_list_is_no_other_fronts(tmp_path: Path) -> None:
    """One that a row gives stands twice, whatever kind the table says."""
    rows = "Id,Box,Kind,Width,Height\nD,B2,drawer,454,149\n"
    said = wrong(tmp_path, 'id = "D"\nkind = "false-front"\n', rows)
    assert "One more front has another id" in said


def test_a_hole_may_serve_a_front_of_the_list_beside_others(tmp_path: Path) -> None:
    """Which fronts a box has is known when the list hangs on it."""
    (tmp_path / "offer.csv").write_text(LIST)
    path = tmp_path / "job.toml"
    path.write_text(
        f'{BOX}[[box.front]]\nkind = "false-front"\n[[box.hole]]\nside = "left"\nfront = "B2-3"\n'
        "x = 37\ny = 200\ndiameter = 5\ndepth = 12\n"
    )
    (box,) = read_job_file(path).boxes
    assert [hole.front for hole in box.holes] == ["B2-3"]
