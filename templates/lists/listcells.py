"""The cells of a table on paper: how wide each column is, and what stands in each of its lines.

What is measured is lettered large, 3.5 mm (ISO 3098), to be read at arm's length. Columns are as
wide as what they hold; where that is too much, those of plain words are broken in lines first.
"""

from collections.abc import Iterable, Sequence

from templates.lists.listing import Column, Shown, Table, TableRow
from templates.page.marks import Mark, Text
from templates.page.tickbox import BOX, tick_box
from templates.page.typeface import PITCH, text_width, wrap

LARGE, SMALL = 3.5, 2.5
"""Lettering, mm."""
LARGE_PITCH = 5.4
"""Line pitch of large lettering, mm."""
BETWEEN = 2.2
"""Between two columns, mm."""
BEFORE = BOX + 1.2
"""What a box to tick takes before what is beside it, mm."""
FIRST = 4.6
"""From a row's rule down to its base line, mm."""
_OTHER = 1.2
"""Between a figure and the same in the other unit, mm."""
_RUN = 45.0
"""What runs on is content with so much of a line, mm."""

CellLine = list[tuple[str, float]]
"""Texts of a line, each with the height of its capitals, mm."""


def natural_widths(table: Table, shown: Sequence[int]) -> list[float]:
    """Give the width of each column that breaks no cell, mm."""
    return [
        max(
            text_width(table.columns[at].head, SMALL, True),
            *(_natural(row.cells[at], table.columns[at]) for row in table.rows),
        )
        for at in shown
    ]


def needed_width(table: Table, shown: Sequence[int], widths: Sequence[float]) -> float:
    """Give the width that a table is content with, mm: what runs on may be broken."""
    wanted = [
        min(width, _RUN) if table.columns[at].runs_on else width
        for at, width in zip(shown, widths, strict=True)
    ]
    return sum(wanted) + BETWEEN * (len(wanted) - 1)


def fitted_widths(
    table: Table, shown: Sequence[int], widths: Sequence[float], room: float
) -> list[float]:
    """Narrow the columns of plain words, the widest first, until a table fits a width, mm."""
    room -= BETWEEN * (len(widths) - 1)
    plain = [not table.columns[at].measured or table.columns[at].runs_on for at in shown]
    room -= sum(width for width, soft in zip(widths, plain, strict=True) if not soft)
    soft = sorted(width for width, is_soft in zip(widths, plain, strict=True) if is_soft)
    most = 0.0
    for number, width in enumerate(soft):
        share = room / (len(soft) - number)
        most = max(most, share)
        if width > share:
            break
        room -= width
        most = max(most, width)
    return [
        min(width, most) if is_soft else width for width, is_soft in zip(widths, plain, strict=True)
    ]


def row_marks(
    row: TableRow, columns: Iterable[tuple[Column, int, float, float]]
) -> tuple[list[Mark], float]:
    """Set a row's cells below its rule at y = 0; give their marks, and how far down they reach.
    `columns`: each with its place in the row, where it begins, and its width; mm."""
    marks: list[Mark] = []
    lowest = -FIRST
    for column, at, x, width in columns:
        cell = row.cells[at]
        y = -FIRST
        if column.ticks == "each" or (column.ticks and cell.text):
            marks.append(tick_box(x, y - 0.2))
            x, width = x + BEFORE, width - BEFORE
        size = LARGE if column.measured else SMALL
        for number, line in enumerate(_lines(cell, column, size, width)):
            y = -FIRST - number * (PITCH if size == SMALL else LARGE_PITCH)
            start = x
            for text, height in line:
                wide = text_width(text, height)
                at_x = x + width - wide if column.right else start
                marks.append(Text(x=at_x, y=y, text=text, size=height))
                start += wide + _OTHER
            lowest = min(lowest, y)
    return marks, lowest - 1.4


def _natural(cell: Shown, column: Column) -> float:
    """Give the width of a cell in one line, its box to tick included, mm."""
    return _beside(cell, column) + (BEFORE if column.ticks else 0.0)


def _beside(cell: Shown, column: Column) -> float:
    """Give the width of what a cell says, both units in one line, mm."""
    width = text_width(cell.text, LARGE if column.measured else SMALL)
    return width + (_OTHER + text_width(f"({cell.other})", SMALL) if cell.other else 0.0)


def _lines(cell: Shown, column: Column, size: float, width: float) -> list[CellLine]:
    """Break a cell in lines; the other unit goes below where there is no room beside."""
    lines: list[CellLine] = [[(text, size)] for text in wrap(cell.text, size, False, width + 0.01)]
    if cell.other:
        other = (f"({cell.other})", SMALL)
        if len(lines) == 1 and _beside(cell, column) <= width + 0.01:
            lines[0].append(other)
        else:
            lines.append([other])
    return lines
