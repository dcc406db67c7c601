"""The rows and cells of a list as text, whatever file they came from."""

from msgspec import Struct

MOST_ROWS = 20_000
MOST_CELLS = 200


class ListRow(Struct, frozen=True):
    """One row: its number as a spreadsheet shows it (1-based), and its cells, trimmed."""

    number: int
    cells: tuple[str, ...]


class ListTable(Struct, frozen=True, kw_only=True):
    """The rows of one sheet that are not blank; `sheet` is its name, "" for a text file. `hidden`:
    the numbers of those that its owner does not see; `hidden_columns`: those of columns, from 1;
    `merged`: the cells, by both numbers, that one merged cell covers over several rows; `struck`:
    the numbers of rows that are crossed out; `remarked`: the cells with a comment, by both
    numbers."""

    rows: tuple[ListRow, ...]
    sheet: str = ""
    workbook: bool = False
    hidden: frozenset[int] = frozenset()
    hidden_columns: frozenset[int] = frozenset()
    merged: frozenset[tuple[int, int]] = frozenset()
    struck: frozenset[int] = frozenset()
    remarked: tuple[tuple[int, int], ...] = ()


def trim_row(number: int, cells: list[str]) -> ListRow:
    """Give a row, its cells trimmed, without the empty ones behind the last."""
    trimmed = [cell.strip() for cell in cells]
    while trimmed and not trimmed[-1]:
        trimmed.pop()
    return ListRow(number, tuple(trimmed))
