"""Tables: encodings, delimiters, workbooks, and everything that is not a table."""

import io
import time
import zipfile
from datetime import datetime
from pathlib import Path

import pytest
import xlsxwriter
from hypothesis import example, given, settings
from hypothesis import strategies as st

from jigs.ground.errors import ReadingError
from jigs.reading.listtable import MOST_CELLS, MOST_ROWS
from jigs.reading.tables import read_tables

LIST = "id,kind,width,height\nF1,door,396.9,714.4\nF2,drawer,396.9,140\n"
CELLS = [
    ("id", "kind", "width", "height"),
    ("F1", "door", "396.9", "714.4"),
    ("F2", "drawer", "396.9", "140"),
]


def read(folder: Path, data: bytes | str, name: str = "fronts.csv") -> list[tuple[str, ...]]:
    """Write a file and give the cells of its only table."""
    path = folder / name
    path.write_bytes(data.encode() if isinstance(data, str) else data)
    (table,) = read_tables(path)
    return [row.cells for row in table.rows]


def refuse(folder: Path, data: bytes | str, name: str = "fronts.csv") -> str:
    """Write a file that is refused, and give the reason; it must come within seconds."""
    began = time.monotonic()
    with pytest.raises(ReadingError) as caught:
        read(folder, data, name)
    assert time.monotonic() - began < 5
    assert name in str(caught.value)
    assert "\n" not in str(caught.value)
    return str(caught.value)


def write_workbook(rows: list[list[object]], sheets: int = 1) -> bytes:
    """Give a workbook with the same rows on each sheet."""
    stream = io.BytesIO()
    book = xlsxwriter.Workbook(stream, {"in_memory": True})
    for _ in range(sheets):
        sheet = book.add_worksheet()
        for number, row in enumerate(rows):
            sheet.write_row(number, 0, row)
    book.close()
    return stream.getvalue()


def replace_in_sheet(workbook: bytes, old: bytes, new: bytes) -> bytes:
    """Give a workbook whose first sheet's text is changed."""
    stream = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(workbook)) as source, zipfile.ZipFile(stream, "w") as target:
        for name in source.namelist():
            data = source.read(name)
            target.writestr(name, data.replace(old, new) if name.endswith("sheet1.xml") else data)
    return stream.getvalue()


def write_ods(cells: str) -> bytes:
    """Give an OpenDocument spreadsheet (ISO/IEC 26300) with one row of these cells."""
    urn = "urn:oasis:names:tc:opendocument:xmlns"
    content = (
        f'<office:document-content xmlns:office="{urn}:office:1.0" xmlns:table="{urn}:table:1.0" '
        f'xmlns:text="{urn}:text:1.0"><office:body><office:spreadsheet>'
        f'<table:table table:name="S">{cells}</table:table>'
        "</office:spreadsheet></office:body></office:document-content>"
    )
    stream = io.BytesIO()
    with zipfile.ZipFile(stream, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr("mimetype", "application/vnd.oasis.opendocument.spreadsheet")
        archive.writestr("content.xml", content)
        archive.writestr("META-INF/manifest.xml", "<manifest/>")
    return stream.getvalue()


@pytest.mark.parametrize(
    "data",
    [
        LIST.encode(),
        LIST.encode("utf-8-sig"),
        LIST.encode("utf-16"),
        b"\xfe\xff" + LIST.encode("utf-16-be"),
        LIST.replace("\n", "\r\n").encode(),
        LIST.replace("\n", "\r").encode(),
        LIST.replace(",", ";").encode(),
        LIST.replace(",", "\t").encode(),
        LIST.replace(",", "|").encode(),
        LIST.replace(",", ", ").encode(),
        LIST.rstrip("\n").encode(),
        ("sep=;\n" + LIST.replace(",", ";")).encode(),
        ('"sep=,"\r\n' + LIST).encode(),
    ],
)
def test_the_same_list_however_it_was_saved(tmp_path: Path, data: bytes) -> None:
    """Marks, encodings, line ends and delimiters make no difference."""
    assert read(tmp_path, data) == CELLS


def test_windows_1252_is_the_last_resort(tmp_path: Path) -> None:
    """Bytes that are no UTF-8 are read as Windows-1252."""
    rows = read(tmp_path, "id,note\nF1,weiß 15¾\nF2,x\n".encode("cp1252"))
    assert rows[1] == ("F1", "weiß 15¾")


@pytest.mark.parametrize(
    ("text", "cells"),
    [
        # A decimal comma in every row parts them into as many cells as the semicolon does.
        ("id;w;h\nF1;396,9;714,4\nF2;396,9;140,5\n", ("F1", "396,9", "714,4")),
        ("id\tw\th\nF1\t396,9\t714,4\n", ("F1", "396,9", "714,4")),
        ("F1;396,9;714,4\nF2;396,9;140,5\n", ("F2", "396,9", "140,5")),
        ("id,note\nF1,a; b\nF2,c\n", ("F1", "a; b")),
        ("sep=;\nid;note\nF1;a, b, c\n", ("F1", "a, b, c")),
        ('id,w,h\nF1,15 3/4",30 1/2"\n', ("F1", '15 3/4"', '30 1/2"')),
        ('id,w,h\nF1,"15 3/4""","30 1/2"""\n', ("F1", '15 3/4"', '30 1/2"')),
        ('id,note\nF1,"two\nlines"\n', ("F1", "two\nlines")),
    ],
)
def test_delimiters_and_quotes(tmp_path: Path, text: str, cells: tuple[str, ...]) -> None:
    """Decimal commas, notes and inch marks do not mislead the reader."""
    assert read(tmp_path, text)[1] == cells


def test_rows_keep_their_numbers(tmp_path: Path) -> None:
    """Blank rows are left out, and the others are numbered as a spreadsheet does."""
    path = tmp_path / "fronts.csv"
    path.write_text("Kitchen\n\n,,\nid,w\nF1,3\n")
    (table,) = read_tables(path)
    assert [row.number for row in table.rows] == [1, 4, 5]


@pytest.mark.parametrize(
    ("data", "reason"),
    [
        (b"", "empty"),
        (b" \n\n ", "empty"),
        (b",,\n,,\n", "no rows"),
        (b"\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR", "binary"),
        (LIST.encode("utf-16-le"), "binary"),
        (b"\xff\xfea", "neither UTF-8"),
        (b"a,b\n\x81\x8d,1\n", "neither UTF-8"),
        (b"1," * 25_000_000, "10 MB are allowed"),
        (b"1," * 4_000_000, "too long"),
        (b"1,2\n" * (MOST_ROWS + 1), "too long"),
        (b"\n" * 9_000_000 + b"1", "too long"),
        (b"1," * MOST_CELLS, "too long"),
        (b'id,w,h\nF1,"15,3\nF2,3,4\n', "begins with a quotation mark"),
        (b'id,w,h,note\nF1,3,4,"\nF2,3,4,"\n', "begins with a quotation mark"),
        (b"PK\x03\x04" + b"\x01" * 5000, "damaged workbook"),
        (b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + b"\x01" * 5000, "cannot be read as a workbook"),
    ],
)
def test_what_is_not_a_table_is_refused(tmp_path: Path, data: bytes, reason: str) -> None:
    """Each kind of wrong file is refused with its reason, at once."""
    assert reason in refuse(tmp_path, data)


def test_files_that_cannot_be_read(tmp_path: Path) -> None:
    """A missing file, a folder, a wrong ending and a false name are told apart."""
    for path, reason in [
        (tmp_path / "none.csv", "no such file"),
        (tmp_path / "fronts.pdf", "no such file"),
    ]:
        with pytest.raises(ReadingError, match=reason):
            read_tables(path)
    (tmp_path / "folder.csv").mkdir()
    with pytest.raises(ReadingError, match="not a file"):
        read_tables(tmp_path / "folder.csv")
    assert "not a workbook inside" in refuse(tmp_path, LIST, "fronts.xlsx")


def test_a_workbook_is_read_as_text(tmp_path: Path) -> None:
    """Numbers stand as they are seen, whole ones without a point; a date is called one."""
    data = write_workbook([["id", "w"], ["F1", 454], ["F2", 18.300000000000001], ["F3", True]])
    assert read(tmp_path, data, "fronts.xlsx") == [
        ("id", "w"), ("F1", "454"), ("F2", "18.3"), ("F3", "TRUE"),
    ]  # fmt: skip
    stream = io.BytesIO()
    book = xlsxwriter.Workbook(stream, {"in_memory": True})
    book.add_worksheet().write_datetime(
        "A1", datetime(2024, 3, 4), book.add_format({"num_format": "d-mmm"})
    )
    book.close()
    ((cell,),) = read(tmp_path, stream.getvalue(), "dates.xlsx")
    assert cell.startswith("a date or time (2024-03-04")


def test_a_workbook_is_known_by_its_bytes(tmp_path: Path) -> None:
    """A workbook is read as one whatever it is called."""
    assert read(tmp_path, write_workbook([["id", "w"], ["F1", 454]]), "fronts.csv")[1] == (
        "F1",
        "454",
    )


def test_sheets_rows_and_merged_cells(tmp_path: Path) -> None:
    """Every visible sheet is a table; a cell merged downwards stands in each of its rows."""
    stream = io.BytesIO()
    book = xlsxwriter.Workbook(stream, {"in_memory": True})
    first, hidden, empty = (book.add_worksheet() for _ in range(3))
    first.write_row(2, 0, ["box", "w"])
    first.merge_range("A4:A5", "B1")
    first.write_column("B4", [1, 2])
    hidden.write(0, 0, "x")
    hidden.hide()
    empty.write_blank(0, 0, None, book.add_format({"bold": True}))
    book.close()
    path = tmp_path / "fronts.xlsx"
    path.write_bytes(stream.getvalue())
    (table,) = read_tables(path)
    assert table.workbook
    assert [(row.number, row.cells) for row in table.rows] == [
        (3, ("box", "w")), (4, ("B1", "1")), (5, ("B1", "2")),
    ]  # fmt: skip
    assert table.merged == {(4, 1), (5, 1)}


def test_a_cell_merged_over_columns_alone_is_of_one_row(tmp_path: Path) -> None:
    """Its count is that of its row: nobody is asked about it."""
    path = tmp_path / "fronts.xlsx"
    book = xlsxwriter.Workbook(path)
    sheet = book.add_worksheet()
    sheet.write_row(0, 0, ["kind", "count"])
    sheet.merge_range("B2:C2", 4)
    book.close()
    (table,) = read_tables(path)
    assert table.rows[1].cells == ("", "4")
    assert table.merged == frozenset()


def test_a_formula_never_calculated_reads_empty(tmp_path: Path) -> None:
    """A formula without a stored value is an empty cell."""
    data = write_workbook([["id", "w", "h"], ["F1", 454, 7]])
    data = replace_in_sheet(data, b"<v>454</v>", b"<f>2+2</f>")
    assert read(tmp_path, data, "fronts.xlsx")[1] == ("F1", "", "7")


def test_an_open_document_spreadsheet_is_read(tmp_path: Path) -> None:
    """Sheets in the open document format are read too."""
    cell = '<table:table-cell office:value-type="string"><text:p>%s</text:p></table:table-cell>'
    row = f"<table:table-row>{cell % 'id'}{cell % 'w'}</table:table-row>"
    assert read(tmp_path, write_ods(row), "fronts.ods") == [("id", "w")]


def test_hidden_rows_of_a_workbook_are_told(tmp_path: Path) -> None:
    """Hidden one by one or by a filter: the owner does not see them, the library reads them. So
    with columns."""
    stream = io.BytesIO()
    book = xlsxwriter.Workbook(stream, {"in_memory": True})
    for name in ("Notes & more", "Fronts"):
        sheet = book.add_worksheet(name)
        for number, row in enumerate(CELLS):
            sheet.write_row(number, 0, row)
    sheet.set_row(2, None, None, {"hidden": True})
    sheet.set_column("B:B", None, None, {"hidden": True})
    sheet.set_column("D:XFD", None, None, {"hidden": True})
    book.close()
    path = tmp_path / "fronts.xlsx"
    path.write_bytes(stream.getvalue())
    assert [(t.sheet, t.hidden, len(t.rows)) for t in read_tables(path)] == [
        ("Notes & more", frozenset(), 3), ("Fronts", frozenset({3}), 3),
    ]  # fmt: skip
    notes, fronts = read_tables(path)
    assert notes.hidden_columns == frozenset()
    assert {1, 2, 3, 4} & fronts.hidden_columns == {2, 4}


def test_hidden_rows_of_an_open_document_spreadsheet_are_told(tmp_path: Path) -> None:
    """By hand (`collapse`) and by a filter; rows and columns that repeat count as many."""
    cell = '<table:table-cell office:value-type="string"><text:p>x</text:p></table:table-cell>'
    rows = "".join(
        f"<table:table-row {more}>{cell}</table:table-row>"
        for more in (
            "", 'table:number-rows-repeated="2"', 'table:visibility="collapse"', "",
            'table:visibility="filter" table:number-rows-repeated="2"',
        )
    )  # fmt: skip
    path = tmp_path / "fronts.ods"
    columns = (
        '<table:table-column table:number-columns-repeated="2"/>'
        '<table:table-column table:visibility="collapse" table:number-columns-repeated="2"/>'
    )
    path.write_bytes(write_ods(f"{columns}{rows}"))
    (table,) = read_tables(path)
    assert table.hidden == {4, 6, 7}
    assert table.hidden_columns == {3, 4}
    assert len(table.rows) == 7


def test_a_bomb_is_refused_before_it_is_unpacked(tmp_path: Path) -> None:
    """An archive that declares too much is refused by what it declares."""
    stream = io.BytesIO()
    with zipfile.ZipFile(stream, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr("xl/worksheets/sheet1.xml", b" " * 101_000_000)
    assert "unpacks to more than 100 MB" in refuse(tmp_path, stream.getvalue(), "fronts.xlsx")


@pytest.mark.parametrize("place", [("1048576", "XFD1048576"), ("100000", "ALL100000")])
def test_a_cell_at_the_far_corner_is_refused(tmp_path: Path, place: tuple[str, str]) -> None:
    """A small workbook that needs a huge table is refused, and takes nothing down."""
    cell = f'<row r="{place[0]}"><c r="{place[1]}"><v>1</v></c></row></sheetData>'.encode()
    data = replace_in_sheet(write_workbook([["id"]]), b"</sheetData>", cell)
    assert "save the list alone" in refuse(tmp_path, data, "fronts.xlsx")


def test_a_repeated_cell_is_refused(tmp_path: Path) -> None:
    """The same in the open document format, which can repeat a cell a million times."""
    row = (
        '<table:table-row table:number-rows-repeated="1048576"><table:table-cell '
        'table:number-columns-repeated="1024" office:value-type="string"><text:p>x</text:p>'
        "</table:table-cell></table:table-row>"
    )
    refuse(tmp_path, write_ods(row), "fronts.ods")


def test_a_long_text_in_many_cells_is_refused(tmp_path: Path) -> None:
    """One long shared text costs nothing in the file and much when read."""
    data = write_workbook([["x" * 32_000] * 100 for _ in range(20)])
    assert "characters in its cells" in refuse(tmp_path, data, "fronts.xlsx")


def test_too_many_rows_or_columns_in_a_sheet(tmp_path: Path) -> None:
    """A sheet beyond the limits is refused, with how far it reaches."""
    cell = f'<row r="{MOST_ROWS + 1}"><c r="A{MOST_ROWS + 1}"><v>1</v></c></row></sheetData>'
    data = replace_in_sheet(write_workbook([["id"]]), b"</sheetData>", cell.encode())
    assert f"reaches to row {MOST_ROWS + 1}" in refuse(tmp_path, data, "fronts.xlsx")
    assert f"column {MOST_CELLS + 1}" in refuse(
        tmp_path, write_workbook([["x"] * (MOST_CELLS + 1)]), "fronts.xlsx"
    )


@settings(max_examples=150)
@given(st.binary(max_size=400))
@example(b'"')
@example(b"sep=\n")
@example(b'sep="\n1"2\n')
@example(b"\xff\xfe\x00\xd8")
def test_no_bytes_raise_anything_else(tmp_path: Path, data: bytes) -> None:
    """Any bytes are a table or a ReadingError."""
    path = tmp_path / "fronts.csv"
    path.write_bytes(data)
    try:
        tables = read_tables(path)
    except ReadingError:
        return
    assert any(table.rows for table in tables)


@pytest.mark.slow
@settings(max_examples=15)
@given(st.integers(0, 5000), st.binary(min_size=1, max_size=40))
def test_no_damaged_workbook_raises_anything_else(tmp_path: Path, at: int, new: bytes) -> None:
    """A workbook with a wrong patch in it is read or refused."""
    data = write_workbook([["id", "w"], ["F1", 454]])
    at %= len(data)
    path = tmp_path / "fronts.xlsx"
    path.write_bytes(data[:at] + new + data[at + len(new) :])
    try:
        read_tables(path)
    except ReadingError:
        return
