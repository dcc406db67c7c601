"""The columns of a front list: names, synonyms, units, and finding the header."""

import pytest

from jigs.reading.listcolumns import FRONT_LIST, find_header, strange_headings
from jigs.reading.listtable import ListRow


@pytest.mark.parametrize(
    ("text", "column", "unit"),
    [
        ("Width", "width", None),
        ("W", "width", None),
        ("Width (in)", "width", "in"),
        ("width [mm]", "width", "mm"),
        ("Width, inches", "width", "in"),
        ("width_mm", "width", "mm"),
        ('W "', "width", "in"),
        ("H (in.)", "height", "in"),
        ("Thickness mm", "thickness", "mm"),
        ("Qty.", "count", None),
        ("QTY", "count", None),
        ("Hinge  side", "hinged", None),
        ("Cabinet", "box", None),
        ("Colour", "finish", None),
        ("Remarks:", "note", None),
        ("Count (in)", None, None),
        ("price", "other", None),
        ("", None, None),
        ("in", None, None),
    ],
)
def test_a_heading_is_understood(text: str, column: str | None, unit: str | None) -> None:
    """Columns are matched without case, by the usual synonyms, with or without a unit."""
    found = FRONT_LIST.read(text)
    assert (found.column if found else None, found.unit if found else None) == (column, unit)


def test_the_header_is_found_under_title_rows() -> None:
    """The row with the most known headings is the header, whatever stands above it."""
    rows = [
        ListRow(1, ("Ferry-house galley", "Finish", "white")),
        ListRow(3, ("id", "kind", "w", "h")),
        ListRow(4, ("F1", "door", "396.9", "714.4")),
    ]
    header = find_header(rows)
    assert header is not None
    assert header.row == 3
    assert [h.column for h in header.headings] == ["id", "kind", "width", "height"]
    assert find_header(rows[2:]) is None


def test_strange_headings_are_kept_for_the_report() -> None:
    """Unknown and doubled columns are noted, with the nearest known name."""
    header = find_header([ListRow(1, ("kind", "widht", "width", "w", "", "height"))])
    assert header is not None
    strange = strange_headings(header, FRONT_LIST)
    assert [text for text, _ in strange] == ["widht", "w"]
    assert "did you mean 'width'?" in strange[0][1]
    assert "second column for width" in strange[1][1]
