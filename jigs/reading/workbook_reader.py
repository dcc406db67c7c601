"""Read a workbook's cells; run as a process of its own by `jigs.reading.tables`, never imported.

A workbook of a few hundred bytes can ask its reader for more memory than the machine has (one
cell at the far corner of a sheet, one cell repeated a million times), and the library that
reads it then takes its whole process down. Here that costs a child with a limit on its memory.

Reads the workbook from standard input and writes JSON to standard output: `{"sheets": [{"name",
"rows", "hidden", "hidden_columns", "merged", "struck", "remarked"}]}`, with every cell as text and
blank rows kept, or `{"error": "..."}`. `hidden` are the numbers, from 1, of the rows that its owner
does not see: hidden, or filtered away; `hidden_columns` those of columns. The library reads them as
any other and does not tell; what is in an .xlsx or .ods file does. `struck` are the rows that are
crossed out, `remarked` the cells with a comment: it tells neither. `merged` are the cells, row and
column from 1, that a cell merged over several rows covers: its text stands in each.
"""

import contextlib
import datetime
import json
import posixpath
import sys
import zipfile
from collections.abc import Iterator
from io import BytesIO

MEMORY = 1_000_000_000
"""Bytes of address space this process may take."""

MOST_CHARACTERS = 20_000_000
"""Characters in all cells together: one long text may stand in every cell of a sheet."""


def limit_memory() -> None:
    """Keep this process within MEMORY, where the operating system knows how."""
    try:
        import resource
    except ImportError:  # Windows: the parent's time limit has to do.
        return
    with contextlib.suppress(OSError, ValueError):
        resource.setrlimit(resource.RLIMIT_AS, (MEMORY, MEMORY))


def write_cell(value: object) -> str:
    """Give a cell as the text that its owner sees, or nearly."""
    if isinstance(value, bool):
        return "TRUE" if value else "FALSE"
    if isinstance(value, float):
        # 12 figures: a sheet's 18.3 may be stored as 18.300000000000001.
        return format(value, ".12g")
    if isinstance(value, datetime.date | datetime.time | datetime.timedelta):
        # A sheet turns a typed 3/4 into the fourth of March: nobody can tell that back.
        return f"a date or time ({value})"
    return str(value)


CellPlace = tuple[int, int]
"""A cell by its row and column, from 1."""
CellSigns = tuple[set[CellPlace], list[CellPlace]]
"""The cells of a sheet whose text is crossed out, and those with a comment."""
Merged = tuple[int, int, int]
"""The first row of a merged cell, its column and its last row, from 0."""
Hidden = tuple[list[int], list[int]]
"""Rows and columns of a sheet that its owner does not see, from 1."""


def find_hidden(data: bytes, most_rows: int, most_columns: int) -> dict[str, Hidden]:
    """Give the rows and columns of each sheet that its owner does not see, by the sheet's name;
    nothing for an .xls file, which is no archive."""
    if not data.startswith(b"PK"):
        return {}
    with zipfile.ZipFile(BytesIO(data)) as archive:
        if "content.xml" in archive.namelist():
            return _hidden_in_ods(archive, most_rows, most_columns)
        hidden = {}
        for sheet, path in _sheets_in_xlsx(archive):
            number = 0
            rows: list[int] = []
            columns: list[int] = []
            for name, found in _named(archive, path, "row", "col"):
                unseen = found.get("hidden") in ("1", "true")
                if name == "col":
                    first, last = int(found["min"]), min(int(found["max"]), most_columns)
                    columns += range(first, last + 1) if unseen else ()
                    continue
                number = int(found.get("r", number + 1))
                rows += [number] if unseen else []
            hidden[sheet] = rows, columns
        return hidden


def _sheets_in_xlsx(archive: zipfile.ZipFile) -> Iterator[tuple[str, str]]:
    """Yield the name of each sheet with the file that holds it."""
    targets = {
        element["Id"]: element["Target"]
        for element in _elements(archive, "xl/_rels/workbook.xml.rels", "Relationship")
    }
    for sheet in _elements(archive, "xl/workbook.xml", "sheet"):
        yield sheet["name"], _target(targets[sheet["id"]], "xl")


def _target(target: str, folder: str) -> str:
    """Give a file of the archive that one in a folder names."""
    return target[1:] if target.startswith("/") else posixpath.normpath(f"{folder}/{target}")


def find_marks(data: bytes, most_rows: int, most_columns: int) -> dict[str, CellSigns]:
    """Give what is crossed out or has a comment in each sheet, by its name; nothing for an .xls
    file."""
    if not data.startswith(b"PK"):
        return {}
    with zipfile.ZipFile(BytesIO(data)) as archive:
        if "content.xml" in archive.namelist():
            return _marks_in_ods(archive, most_rows, most_columns)
        crossed = _crossed_styles(archive)
        marks: dict[str, CellSigns] = {}
        for sheet, path in _sheets_in_xlsx(archive):
            cells = _elements(archive, path, "c") if crossed else ()
            struck = {_at(c["r"]) for c in cells if "r" in c and int(c.get("s", 0)) in crossed}
            folder, _, name = path.rpartition("/")
            related = f"{folder}/_rels/{name}.rels"
            remarked: list[CellPlace] = []
            for link in _elements(archive, related, "Relationship") if (
                related in archive.namelist()
            ) else ():  # fmt: skip
                if link["Type"].endswith("/comments"):
                    comments = _elements(archive, _target(link["Target"], folder), "comment")
                    remarked += [_at(comment["ref"]) for comment in comments]
            marks[sheet] = struck, sorted(remarked)
        return marks


def _crossed_styles(archive: zipfile.ZipFile) -> set[int]:
    """Give the numbers of the cell styles of an .xlsx file whose font is crossed out (ECMA-376,
    18.8: `strike` of a `font`, which an `xf` of `cellXfs` names)."""
    if "xl/styles.xml" not in archive.namelist():
        return set()
    within = ""
    fonts: list[bool] = []
    styles: list[bool] = []
    names = ("fonts", "font", "strike", "cellStyleXfs", "cellXfs", "xf", "dxfs", "cellStyles")
    for name, element in _named(archive, "xl/styles.xml", *names):
        if name == "font" and within == "fonts":
            fonts.append(False)
        elif name == "strike" and within == "fonts" and fonts:
            fonts[-1] = element.get("val", "1") not in ("0", "false")
        elif name == "xf" and within == "cellXfs":
            font = int(element.get("fontId", 0))
            styles.append(font < len(fonts) and fonts[font])
        elif name not in ("font", "strike", "xf"):
            within = name
    return {number for number, crossed in enumerate(styles) if crossed}


def _at(reference: str) -> CellPlace:
    """Give a cell by what a spreadsheet calls it: D7."""
    letters = reference.rstrip("0123456789")
    column = 0
    for letter in letters:
        column = column * 26 + ord(letter) - ord("A") + 1
    return int(reference[len(letters) :]), column


def _marks_in_ods(
    archive: zipfile.ZipFile, most_rows: int, most_columns: int
) -> dict[str, CellSigns]:
    marks: dict[str, CellSigns] = {}
    crossed: set[str] = set()
    name = style = ""
    row = column = repeated = across = 0
    kinds = ("style", "text-properties", "table", "table-row", "table-cell",
             "covered-table-cell", "annotation")  # fmt: skip
    for kind, element in _named(archive, "content.xml", *kinds):
        if kind == "style":
            style = element.get("name", "")
        elif kind == "text-properties":
            if element.get("text-line-through-style", "none") != "none":
                crossed.add(style)
        elif kind == "table":
            name, row, repeated = element["name"], 0, 1
            marks[name] = set(), []
        elif kind == "table-row":
            row, column, across = row + repeated, 1, 0
            repeated = int(element.get("number-rows-repeated", 1))
        elif kind == "annotation":
            marks[name][1].append((row, column))
        else:
            column += across
            across = int(element.get("number-columns-repeated", 1))
            if element.get("style-name") in crossed and row <= most_rows:
                last = min(column + across, most_columns + 1)
                marks[name][0].update((row, at) for at in range(column, last))
    return marks


def _hidden_in_ods(
    archive: zipfile.ZipFile, most_rows: int, most_columns: int
) -> dict[str, Hidden]:
    hidden: dict[str, Hidden] = {}
    name, reached = "", [0, 0]
    most = (most_rows, most_columns)
    for kind, element in _named(archive, "content.xml", "table", "table-row", "table-column"):
        if kind == "table":
            name, reached = element["name"], [0, 0]
            hidden[name] = [], []
            continue
        which = 0 if kind == "table-row" else 1
        repeated = int(element.get(f"number-{('rows', 'columns')[which]}-repeated", 1))
        if element.get("visibility", "visible") != "visible":
            last = min(reached[which] + repeated, most[which])
            hidden[name][which].extend(range(reached[which] + 1, last + 1))
        reached[which] += repeated
    return hidden


def find_merged(data: bytes, most_rows: int, most_columns: int) -> dict[str, list[Merged]]:
    """Give the cells of each sheet of an .ods file that reach over rows below; the library knows
    those of the other kinds of workbook."""
    merged: dict[str, list[Merged]] = {}
    if not data.startswith(b"PK"):
        return merged
    with zipfile.ZipFile(BytesIO(data)) as archive:
        if "content.xml" not in archive.namelist():
            return merged
        name, row, column, repeated = "", 0, 0, 0
        kinds = ("table", "table-row", "table-cell", "covered-table-cell")
        for kind, element in _named(archive, "content.xml", *kinds):
            if kind == "table":
                name, row, repeated = element["name"], 0, 0
                merged[name] = []
            elif kind == "table-row":
                row, column = row + repeated, 0
                repeated = int(element.get("number-rows-repeated", 1))
            else:
                down = int(element.get("number-rows-spanned", 1))
                if down > 1 and row < most_rows and column < most_columns:
                    merged[name].append((row, column, min(row + down, most_rows) - 1))
                column += int(element.get("number-columns-repeated", 1))
    return merged


def _named(
    archive: zipfile.ZipFile, path: str, *names: str
) -> Iterator[tuple[str, dict[str, str]]]:
    """Yield each element of these names: its name and its attributes, without namespaces."""
    from xml.etree.ElementTree import iterparse  # few lists are workbooks with XML inside

    with archive.open(path) as stream:
        for event, element in iterparse(stream, events=("start", "end")):
            name = element.tag.rpartition("}")[2]
            if event == "end":
                element.clear()
            elif name in names:
                yield name, {key.rpartition("}")[2]: value for key, value in element.attrib.items()}


def _elements(archive: zipfile.ZipFile, path: str, *names: str) -> Iterator[dict[str, str]]:
    """Yield the attributes alone of each element of these names."""
    return (attributes for _, attributes in _named(archive, path, *names))


def read_sheets(data: bytes, most_rows: int, most_columns: int) -> list[dict[str, object]]:
    """Read each visible sheet, a merged cell's text standing in every row it covers."""
    from python_calamine import CalamineWorkbook, SheetTypeEnum, SheetVisibleEnum

    sheets: list[dict[str, object]] = []
    left_over = MOST_CHARACTERS
    workbook = CalamineWorkbook.from_filelike(BytesIO(data))
    hidden: dict[str, Hidden] = {}
    merged: dict[str, list[Merged]] = {}
    marks: dict[str, CellSigns] = {}
    # Where a file that the library reads is made otherwise, nothing is known of what is hidden.
    with contextlib.suppress(KeyError, ValueError, SyntaxError, zipfile.BadZipFile):
        hidden = find_hidden(data, most_rows, most_columns)
        merged = find_merged(data, most_rows, most_columns)
        marks = find_marks(data, most_rows, most_columns)
    for index, about in enumerate(workbook.sheets_metadata):
        if about.visible != SheetVisibleEnum.Visible or about.typ != SheetTypeEnum.WorkSheet:
            continue
        sheet = workbook.get_sheet_by_index(index)
        if sheet.start is None or sheet.end is None:
            continue
        if sheet.end[0] >= most_rows or sheet.end[1] >= most_columns:
            raise ValueError(
                f"sheet '{about.name}' reaches to row {sheet.end[0] + 1}, column "
                f"{sheet.end[1] + 1}; {most_rows} rows and {most_columns} columns are allowed"
            )
        rows = [[write_cell(v) for v in row] for row in sheet.to_python(skip_empty_area=False)]
        ranges = [(top, left, end) for (top, left), (end, _) in sheet.merged_cell_ranges or ()]
        filled: list[tuple[int, int]] = []
        for top, left, bottom in ranges or merged.get(about.name, []):
            if top >= len(rows) or left >= len(rows[top]):
                continue
            for number, row in enumerate(rows[top : bottom + 1], start=top + 1):
                if left < len(row) and rows[top][left] and not (row[left] and number > top + 1):
                    row[left] = rows[top][left]
                    filled += [(number, left + 1)] if bottom > top else []
        left_over -= sum(len(cell) for row in rows for cell in row)
        if left_over < 0:
            raise ValueError(f"more than {MOST_CHARACTERS} characters in its cells")
        unseen, unseen_columns = hidden.get(about.name, ([], []))
        struck, remarked = marks.get(about.name, (set(), []))
        sheets.append(
            {
                "name": about.name,
                "rows": rows,
                "hidden": unseen,
                "hidden_columns": unseen_columns,
                "merged": filled,
                "struck": _crossed_rows(rows, struck),
                "remarked": remarked,
            }
        )
    return sheets


def _crossed_rows(rows: list[list[str]], struck: set[CellPlace]) -> list[int]:
    """Give the numbers of the rows of which most of what they say is crossed out."""
    if not struck:
        return []
    said = (
        (number, [at for at, cell in enumerate(row, start=1) if cell.strip()])
        for number, row in enumerate(rows, start=1)
    )
    return [n for n, ats in said if sum((n, at) in struck for at in ats) > len(ats) / 2]


def main() -> None:
    """Answer standard input on standard output; the limits stand on the command line."""
    most_rows, most_columns = (int(text) for text in sys.argv[1:3])
    limit_memory()
    answer: dict[str, object]
    try:
        answer = {"sheets": read_sheets(sys.stdin.buffer.read(), most_rows, most_columns)}
    except MemoryError:
        answer = {"error": "it is too large for a front list"}
    except BaseException as error:  # a panic in the library is not an Exception
        words = " ".join(str(error).split())
        locked = type(error).__name__ == "PasswordError"
        answer = {"error": "it is locked with a password" if locked else words[:200]}
    sys.stdout.buffer.write(json.dumps(answer).encode())


if __name__ == "__main__":
    main()
