"""Which way the doors of a list hang: said in two columns, in a kind, in a note, or twice."""

from pathlib import Path

import pytest

from jigs.ground.errors import ReadingError
from jigs.reading.frontlist import FrontList, read_front_list
from jigs.reading.listgiven import parse_columns

LEFT_AND_RIGHT = "id,kind,w,h,L,R\n"
SIDES = "left=E,right=F"


def read(folder: Path, text: str, columns: str = "") -> FrontList:
    """Write a list and read it."""
    path = folder / "fronts.csv"
    path.write_text(text, encoding="utf-8")
    return read_front_list(path, listed=parse_columns(columns))


def refuse(folder: Path, text: str, columns: str = "") -> str:
    """Give the faults of a list."""
    with pytest.raises(ReadingError) as caught:
        read(folder, text, columns)
    return str(caught.value)


@pytest.mark.parametrize("heads", ["L,R", "Left,Right", "links,rechts", "Gauche,Droite"])
def test_a_column_for_each_hand_is_asked_about(tmp_path: Path, heads: str) -> None:
    """Left alone, one of two doors would not be made; the columns may also be of edge bands."""
    faults = refuse(tmp_path, f"id,kind,w,h,{heads}\nA,door,450,720,1,1\n")
    assert '--columns "left=E,right=F", or --columns "nothing=E,nothing=F"' in faults
    assert len(read(tmp_path, f"id,kind,w,h,{heads}\nA,door,450,720,,\n").rows) == 1


@pytest.mark.parametrize(
    ("row", "wanted"),
    [
        ("A,door,450,720,1,2", [("A-L", "left", 1), ("A-R", "right", 2)]),
        ("A,door,450,720,3,", [("A", "left", 3)]),
        ("A,door,450,720,0,1", [("A", "right", 1)]),
        ("A,door,450,720,,x", [("A", "right", 1)]),
        ("A,drawer,450,140,,", [("A", None, 1)]),
    ],
)
def test_columns_of_hands(
    tmp_path: Path, row: str, wanted: list[tuple[str, str | None, int]]
) -> None:
    """They say how many doors there are, and which way each hangs."""
    rows = read(tmp_path, f"{LEFT_AND_RIGHT}{row}\n", SIDES).rows
    assert [(one.spec.id, one.spec.hinged, one.count) for one in rows] == wanted


@pytest.mark.parametrize(
    ("row", "words"),
    [
        ("A,door,450,720,1,1,3", "2 hands for 3 doors"),
        ("A,door,450,720,x,x,3", "left and right for 3 doors: how many are each?"),
        ("A,door,450,720,maybe,,1", "not a count, nor a mark ('maybe' given)"),
    ],
)
def test_columns_of_hands_that_say_too_little(tmp_path: Path, row: str, words: str) -> None:
    """What does not add up is a fault of the row."""
    assert words in refuse(tmp_path, f"id,kind,w,h,L,R,qty\n{row}\n", SIDES)


def test_ticks_for_two_doors(tmp_path: Path) -> None:
    """Of two doors ticked both ways each hangs one way."""
    rows = read(tmp_path, "id,kind,w,h,L,R,qty\nA,door,450,720,x,x,2\n", SIDES).rows
    assert [(one.spec.hinged, one.count) for one in rows] == [("left", 1), ("right", 1)]


@pytest.mark.parametrize(
    ("row", "words"),
    [
        ("door left,right,", "it hangs right by 'right' and left by its kind: keep one"),
        ("door,left,hinge right", "it hangs left by 'left' and right by 'hinge right': keep one"),
        ("door left,,rh", "it hangs left by its kind and right by 'rh': keep one"),
    ],
)
def test_two_hands_in_a_row_are_a_fault(tmp_path: Path, row: str, words: str) -> None:
    """The wrong one bores the wrong edge."""
    assert words in refuse(tmp_path, f"w,h,kind,hinged,note\n450,720,{row}\n")


@pytest.mark.parametrize(
    ("note", "hand"),
    [("hinge right", "right"), ("RH", "right"), ("left of the range", None), ("r", None)],
)
def test_a_note_that_is_a_hand(tmp_path: Path, note: str, hand: str | None) -> None:
    """A note that says a hand and nothing else says it of the door."""
    (row,) = read(tmp_path, f"w,h,kind,note\n450,720,door,{note}\n").rows
    assert row.spec.hinged == hand
