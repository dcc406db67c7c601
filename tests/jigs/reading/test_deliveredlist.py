"""Delivered lists: which rows are pieces."""

from pathlib import Path

from jigs.reading.deliveredlist import read_delivered


def test_what_an_order_says_of_those_held_back_is_no_piece(tmp_path: Path) -> None:
    """The last row of the tool's own list for the supplier; a row of an ID alone is a piece."""
    path = tmp_path / "fronts.csv"
    path.write_text(
        "id,width (mm),height (mm)\nB1-1,450,140\nB1-2,,\n"
        '"HELD, not in this list of 2 of 3 fronts: B1-3 (hand not stated)",,\n',
        encoding="utf-8",
    )
    read = read_delivered(path, "mm")
    assert read.faults == ()
    assert [piece.id for piece in read.pieces] == ["B1-1", "B1-2"]
    assert "row 4 'HELD, not in this list" in read.told
