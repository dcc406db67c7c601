"""Tables: a file of rows and cells, however it was saved, as rows of text.

Text files (.csv, .tsv) come in UTF-8, in UTF-16 with its mark or in Windows-1252, parted by
comma, semicolon, tab or bar; workbooks as .xlsx, .xls or .ods. What the bytes are decides, not
the file's name. Whatever is wrong with a file is a ReadingError within seconds.
"""

import csv
import io
import re
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

from jigs.ground.errors import refusal
from jigs.reading.listtable import MOST_CELLS, MOST_ROWS, ListRow, ListTable, trim_row
from jigs.reading.stream import is_stream, read_whole

TEXT_FILES = (".csv", ".tsv", ".txt")
WORKBOOKS = (".xlsx", ".xls", ".ods")
TABLE_FILES = TEXT_FILES + WORKBOOKS
"""Endings of the files that hold a table."""

MOST_BYTES = 10_000_000
LONGEST_LINE = 100_000
"""Characters; a spreadsheet's longest cell has 32,767."""

DELIMITERS = ";\t|,"
"""In the order in which a tie is decided: a comma may be a decimal comma."""

_CONTROL = re.compile(r"[\x00-\x08\x0e-\x1f]")
_LINE = re.compile(r"\r\n|\r|\n")


def _ending(path: Path) -> str:
    """Say how a name ends: `it ends in '.pdf'`."""
    return f"it ends in '{path.suffix[:12]}'" if path.suffix else "it has no ending"


def read_tables(path: Path) -> tuple[ListTable, ...]:
    """Read the file's table, or each visible sheet of a workbook. Raises ReadingError."""
    data = read_bytes(path)
    if path.suffix.lower() not in TABLE_FILES and not is_stream(path):
        raise refusal(
            path, f"not a list, by its name ({_ending(path)}); allowed: {', '.join(TABLE_FILES)}"
        )
    if not data.strip():
        raise refusal(path, "the file is empty")
    if data.startswith((b"PK\x03\x04", b"PK\x05\x06", b"\xd0\xcf\x11\xe0")):
        from jigs.reading.workbooks import read_workbook  # with all that unpacks and runs

        tables = tuple(read_workbook(path, data))
    elif path.suffix.lower() in WORKBOOKS:
        raise refusal(path, "not a workbook inside, whatever its name; save it again, or as .csv")
    else:
        tables = (_read_text(path, data),)
    if not any(table.rows for table in tables):
        raise refusal(path, "no rows in it")
    return tables


def check_there(path: Path) -> None:
    """Refuse a name that nothing has, or can have. Raises ReadingError."""
    try:
        there = path.exists()
    except OSError as error:
        raise refusal(path, f"cannot be read ({error.strerror})") from error
    if not there:
        raise refusal(path, "no such file")


def read_bytes(path: Path, most: int = MOST_BYTES) -> bytes:
    """Read a file of at most `most` bytes whole. Raises ReadingError."""
    check_there(path)
    try:
        if path.is_dir():
            raise refusal(path, "not a file but a folder")
        data = read_whole(path, most)
    except (OSError, ValueError) as error:
        reason = error.strerror if isinstance(error, OSError) and error.strerror else str(error)
        raise refusal(path, f"cannot be read ({reason})") from error
    if len(data) > most:
        raise refusal(path, f"too large; {most // 1_000_000} MB are allowed")
    return data


def _read_text(path: Path, data: bytes) -> ListTable:
    text = _decode(path, data)
    if control := _CONTROL.search(text):
        raise refusal(
            path,
            f"not a table but a binary file (a character of code {ord(control[0])} in it); "
            "allowed: text in UTF-8, UTF-16 with its mark, or Windows-1252",
        )
    # Counted before they are parted: millions of lines take seconds.
    many = max(text.count("\n"), text.count("\r")) > 2 * MOST_ROWS
    lines = [] if many else _LINE.split(text)
    if many or max(map(len, lines)) > LONGEST_LINE:
        raise refusal(
            path,
            f"too long; {MOST_ROWS} rows of at most {LONGEST_LINE} characters are allowed",
        )
    named = re.fullmatch(r'"?sep=(.)"?', lines[0].strip(" "), re.IGNORECASE)
    delimiter = named[1] if named and named[1] not in '" ' else _guess_delimiter(lines)
    try:
        rows = tuple(_split(path, text, delimiter, skip=1 if named else 0))
    except csv.Error as error:
        raise refusal(path, f"cannot be read as a table ({error})") from error
    return ListTable(rows=rows)


def _decode(path: Path, data: bytes) -> str:
    """Decode by the byte-order mark, else as UTF-8, else as Windows-1252."""
    marked = data.startswith((b"\xff\xfe", b"\xfe\xff"))
    for encoding in ("utf-16",) if marked else ("utf-8-sig", "cp1252"):
        try:
            return data.decode(encoding)
        except UnicodeDecodeError:
            continue
    raise refusal(
        path, "neither UTF-8, nor UTF-16 with its mark, nor Windows-1252; save it again as UTF-8"
    )


def _guess_delimiter(lines: list[str]) -> str:
    """Give the delimiter that parts the most rows into the same number of cells."""
    sample = [line for line in lines[:400] if line.strip()]
    best, most = ",", (0, 0)
    for delimiter in DELIMITERS:
        try:
            widths = Counter(len(cells) for cells in csv.reader(sample, delimiter=delimiter))
        except csv.Error:
            continue
        score = max(((n, width) for width, n in widths.items() if width > 1), default=(0, 0))
        if score > most:
            best, most = delimiter, score
    return best


def _split(path: Path, text: str, delimiter: str, skip: int) -> Iterator[ListRow]:
    # A last row of our own: it is swallowed by a quotation mark that is never closed.
    end = "\x00end"
    reader = csv.reader(
        io.StringIO(f"{text}\n{end}\n", newline=""), delimiter=delimiter, skipinitialspace=True
    )
    common = 0
    for number, cells in enumerate(reader, 1):
        if cells == [end]:
            return
        if number > MOST_ROWS or len(cells) > MOST_CELLS:
            raise refusal(
                f"{path}: row {number}",
                f"too long; {MOST_ROWS} rows, {MOST_CELLS} columns are allowed",
            )
        common = max(common, len(cells))
        for cell in cells:
            if _LINE.search(cell) and (
                end in cell or _swallows_rows(cell, delimiter, max(2, common - 2))
            ):
                raise refusal(
                    f"{path}: row {number}",
                    "a cell begins with a quotation mark and runs over the rows below it; "
                    "write 15 3/4 in for inches, and no ditto marks",
                )
        if number > skip and (row := trim_row(number, cells)).cells:
            yield row


def _swallows_rows(cell: str, delimiter: str, least: int) -> bool:
    return any(line.count(delimiter) >= least for line in _LINE.split(cell))
