"""Which end of its box a list's first row is: as notes say, else from the top; what looks upside
down is asked. A wrong end is a box of painted fronts bored for the wrong place.
"""

from pathlib import Path

import pytest

from jigs.ground.errors import ReadingError
from jigs.reading.frontlist import read_front_list
from jigs.reading.listgiven import parse_columns

HEAD = "box,kind,w,h,hinged,note\n"


def heights(folder: Path, rows: str, columns: str = "") -> list[float | None]:
    """Read a list, or raise; give its heights from the top."""
    path = folder / "fronts.csv"
    path.write_text(HEAD + rows, encoding="utf-8")
    return [row.spec.height for row in read_front_list(path, listed=parse_columns(columns)).rows]


TALL = "H1,door,597,1396,left,{}\nH1,door,597,796,left,{}\n"
SINK = "S1,pair,397,570,,\nS1,false-front,797.2,140,,\n"


@pytest.mark.parametrize(
    ("below", "above"),
    [
        ("Hochschrank unten", "oben"), ("tall lower", "tall upper"), ("bas", "haut"),
        ("inferior", "superior"), ("onder", "boven"), ("von unten nach oben", ""),
    ],
)  # fmt: skip
def test_notes_turn_the_rows(tmp_path: Path, below: str, above: str) -> None:
    """The first row's door is the lower one."""
    assert heights(tmp_path, TALL.format(below, above)) == [796.0, 1396.0]


def test_notes_keep_the_rows(tmp_path: Path) -> None:
    """Said from the top, and a note of a handle says nothing of the door's place."""
    assert heights(tmp_path, TALL.format("oben", "unten")) == [1396.0, 796.0]
    drawers = "B1,drawer,597,140,,{}\nB1,drawer,597,284,,{}\n"
    assert heights(tmp_path, drawers.format("Griff unten", "")) == [140.0, 284.0]
    assert heights(tmp_path, drawers.format("von oben nach unten", "")) == [140.0, 284.0]
    bevelled = drawers.format("", "top edge bevelled for the fingers")
    assert heights(tmp_path, bevelled) == [140.0, 284.0]


@pytest.mark.parametrize(
    ("rows", "box", "words"),
    [
        (TALL.format("", ""), "H1", "row 2 above row 3 (the longer door above the shorter one)"),
        (SINK, "S1", "row 2 above row 3 (a false front below a door)"),
        ("B1,door,597,570,left,\nB1,drawer,597,140,,\n", "B1", "a drawer below a door"),
        (TALL.format("", "oben"), "H1", "'oben' is said in it, and its rows stand from-top"),
    ],
)
def test_what_looks_upside_down_is_asked(tmp_path: Path, rows: str, box: str, words: str) -> None:
    """Once, with the answer for the box and for the list; either answer works."""
    with pytest.raises(ReadingError) as caught:
        heights(tmp_path, rows)
    (fault,) = caught.value.faults
    assert words in str(fault)
    assert fault.asked is not None
    assert [said for _, said in fault.asked.choices] == [
        f"rows.{box}=from-bottom", f"rows.{box}=from-top",
    ]  # fmt: skip
    kept = heights(tmp_path, rows, f"rows.{box}=from-top")
    assert heights(tmp_path, rows, f"rows.{box}=from-bottom") == kept[::-1]


def test_one_answer_is_for_the_whole_list(tmp_path: Path) -> None:
    """But for the boxes whose notes say otherwise."""
    rows = SINK + TALL.format("oben", "unten")
    assert heights(tmp_path, rows, "rows=from-bottom") == [140.0, 570.0, 1396.0, 796.0]
    rows = SINK + TALL.format("", "")
    assert heights(tmp_path, rows, "rows=from-bottom") == [140.0, 570.0, 796.0, 1396.0]
    with pytest.raises(ReadingError, match=r"no such box"):
        heights(tmp_path, SINK, "rows=from-top,rows.X9=from-top")


def test_a_drawer_below_the_doors_of_a_tall_box_is_usual(tmp_path: Path) -> None:
    """A pantry's."""
    assert len(heights(tmp_path, "T1,pair,397,1400,,\nT1,drawer,797.2,284,,\n")) == 2
