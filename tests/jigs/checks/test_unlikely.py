"""Rows and columns that a workbook hides are read, and told at the fronts that come of them."""

import io
from pathlib import Path

import xlsxwriter

from cli.jobs import read_in_hand
from jigs.layout.layout import lay_out
from tests.said import fact_of

HOW = "in the workbook, and was read as any other"
ROWS = [
    ("id", "kind", "hinged", "width", "height"),
    ("F1", "door", "left", "396.9", "714.4"),
    ("F2", "pair", "", "396.9", "714.4"),
    ("F3", "door", "right", "396.9", "600"),
]


def workbook(path: Path, hidden: int, columns: str = "") -> Path:
    """Write a list as a workbook, one of its rows (from 1) hidden, and these columns."""
    stream = io.BytesIO()
    book = xlsxwriter.Workbook(stream, {"in_memory": True})
    sheet = book.add_worksheet()
    for number, row in enumerate(ROWS):
        sheet.write_row(number, 0, row)
    sheet.set_row(hidden - 1, None, None, {"hidden": True})
    if columns:
        sheet.set_column(columns, None, None, {"hidden": True})
    book.close()
    path.write_bytes(stream.getvalue())
    return path


def test_a_hidden_row_is_told_at_its_front(tmp_path: Path) -> None:
    """Of a front list and of a delivered one; of a pair at both leaves."""
    fronts = workbook(tmp_path / "fronts.xlsx", 3)
    arrived = workbook(tmp_path / "arrived.xlsx", 4)
    found = [
        p
        for p in lay_out(read_in_hand(fronts, None, arrived)).problems
        if p.code == "hidden-in-list"
    ]
    assert [(p.part, p.level, fact_of(p).partition(" is ")[0]) for p in found] == [
        ("F3", "warning", "its row in the delivered list"),
        ("F2L", "warning", "its row in the front list"),
        ("F2R", "warning", "its row in the front list"),
    ]


def test_a_hidden_column_is_told_where_it_says_something(tmp_path: Path) -> None:
    """The hands stand in a column that nobody sees; of a pair nothing stands there."""
    fronts = workbook(tmp_path / "fronts.xlsx", 9, "C:C")
    found = [p for p in lay_out(read_in_hand(fronts)).problems if p.code == "hidden-in-list"]
    assert {(p.part, p.level, fact_of(p)) for p in found} == {
        (part, "warning", f"column 'hinged' in the front list is hidden {HOW}")
        for part in ("F1", "F3")
    }
