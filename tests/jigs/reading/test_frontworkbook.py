"""Front lists in workbooks: which sheet is read, and what a cell that is no text may have been."""

import re
import tomllib
from pathlib import Path

import pytest
import xlsxwriter

from jigs.ground.errors import ReadingError
from jigs.reading.frontlist import read_front_list


def test_a_workbook_explains_an_empty_size(tmp_path: Path) -> None:
    """An empty cell may be a formula, and a date may have been a fraction; both are said."""
    path = tmp_path / "fronts.xlsx"
    book = xlsxwriter.Workbook(path)
    sheet = book.add_worksheet("Fronts")
    sheet.write_row(0, 0, ["kind", "width", "height", "thickness"])
    sheet.write_row(1, 0, ["door", "", 713])
    sheet.write_number(1, 3, 45355, book.add_format({"num_format": "d-mmm"}))
    book.close()
    with pytest.raises(ReadingError) as caught:
        read_front_list(path)
    empty, date = (str(fault) for fault in caught.value.faults)
    assert "sheet Fronts, row 2, column width: missing" in empty
    assert "a formula that was never calculated reads as empty" in empty
    assert "format the cell as text" in date


def test_the_readers_oldest_version_reads_workbooks() -> None:
    """Before 0.4.0 it tells neither a sheet's kind nor where it begins, and every workbook would
    be refused (tried)."""
    project = tomllib.loads((Path(__file__).parents[3] / "pyproject.toml").read_text("utf-8"))
    (reader,) = (one for one in project["project"]["dependencies"] if "calamine" in one)
    found = re.fullmatch(r"python-calamine>=(\d+)\.(\d+).*", reader)
    assert found
    assert (int(found[1]), int(found[2])) >= (0, 4)


def test_a_workbook_holds_one_list(tmp_path: Path) -> None:
    """A second sheet of notes is passed over; a second list is refused."""
    header, row = ["kind", "width", "height"], ["door", 454, 713]
    path = tmp_path / "fronts.xlsx"
    for lists in (1, 2):
        book = xlsxwriter.Workbook(path)
        book.add_worksheet("Notes").write(0, 0, "Measured in May")
        for _ in range(lists):
            sheet = book.add_worksheet()
            sheet.write_row(0, 0, header)
            sheet.write_row(1, 0, row)
        book.close()
        if lists == 1:
            assert read_front_list(path).rows[0].spec.width == 454.0
        else:
            with pytest.raises(ReadingError, match="more than one sheet"):
                read_front_list(path)


def test_a_row_of_another_sheet_is_no_second_list(tmp_path: Path) -> None:
    """Hinges whose record is called H: two words that might head a list of fronts."""
    path = tmp_path / "fronts.xlsx"
    book = xlsxwriter.Workbook(path)
    fronts, hardware = book.add_worksheet("fronts"), book.add_worksheet("hardware")
    fronts.write_row(0, 0, ["kind", "width", "height"])
    fronts.write_row(1, 0, ["door", 454, 713])
    hardware.write_row(0, 0, ["what", "record", "needed"])
    hardware.write_row(1, 0, ["hinge", "h", 12])
    book.close()
    (row,) = read_front_list(path).rows
    assert (row.spec.width, row.spec.height) == (454.0, 713.0)
