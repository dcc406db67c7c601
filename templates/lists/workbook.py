"""The workbook writer: tables in, the bytes of one .xlsx file out; the same tables, the same bytes.

Texts are written as texts: no cell is ever a formula or a link.
"""

import io
from collections.abc import Mapping, Sequence
from datetime import datetime

from jigs import __version__
from templates.lists.cells import Cell, safe_cell

EPOCH = datetime(2000, 1, 1)
"""The date of every workbook: a job has none."""


def write_workbook(sheets: Mapping[str, tuple[Sequence[str], Sequence[Sequence[Cell]]]]) -> bytes:
    """Write sheets by name, each its heads and its rows."""
    from xlsxwriter import Workbook

    file = io.BytesIO()
    book = Workbook(
        file,
        {"in_memory": True, "strings_to_formulas": False, "strings_to_urls": False},
    )
    book.set_properties({"created": EPOCH, "comments": f"jigsheet {__version__}"})
    bold = book.add_format({"bold": True})
    for name, (heads, rows) in sheets.items():
        sheet = book.add_worksheet(name)
        sheet.freeze_panes(1, 0)
        for column, head in enumerate(heads):
            sheet.write_string(0, column, head, bold)
            sheet.set_column(column, column, max(10, len(head) + 2))
        for number, row in enumerate(rows, start=1):
            for column, cell in enumerate(row):
                if isinstance(cell, str):
                    sheet.write_string(number, column, safe_cell(cell))
                else:
                    sheet.write_number(number, column, cell)
    book.close()
    return file.getvalue()
