"""Tables as they leave the tool: cells, numbers, CSV text; no cell is ever taken for a formula.

>>> safe_cell("=1+1"), safe_cell("B1-SIDE-L")
("'=1+1", 'B1-SIDE-L')
"""

import csv
import io
from collections.abc import Iterable, Sequence

Cell = str | float
"""What a cell of a list holds."""

_FORMULA = ("=", "+", "-", "@", "\t", "\r")
"""A cell that begins with one of these is run by a spreadsheet; it gets an apostrophe."""


def safe_cell(text: str) -> str:
    """Give a text as a cell that no spreadsheet takes for a formula."""
    return f"'{text}" if text.startswith(_FORMULA) else text


def number(value: float) -> float:
    """Round a number as all lists and data give it, to 0.0001; never -0."""
    return round(value, 4) + 0.0


def in_mm(**sizes: float | None) -> dict[str, float | None]:
    """Give sizes as data, each under its name with the unit; None stays.

    >>> in_mm(width=454.00001, depth=None)
    {'width_mm': 454.0, 'depth_mm': None}
    """
    return {f"{name}_mm": None if size is None else number(size) for name, size in sizes.items()}


def csv_text(columns: Sequence[str], rows: Iterable[Iterable[object]]) -> str:
    """Give a table as CSV text, its heads first; None is an empty cell."""
    file = io.StringIO(newline="")
    writer = csv.writer(file, lineterminator="\n")
    writer.writerow(columns)
    writer.writerows(
        [safe_cell(cell) if isinstance(cell, str) else cell for cell in row] for row in rows
    )
    return file.getvalue()
