"""The rows of a list below its header, read cell by cell; every fault is noted on the way.

Sizes are in the unit that the person or the header names (`width (in)`), else in the one that
the kind of list has. A list whose sizes could only be those of toys was written in another unit.
"""

import re
from collections.abc import Sequence
from pathlib import Path

from jigs.errors import Fault, LengthError, ReadingError
from jigs.lengths import BareUnit, Unit, parse_length, show_value
from jigs.reading.jobboxes import MOST_ALIKE
from jigs.reading.listcolumns import ColumnNames, Header, find_header, shorten
from jigs.reading.tables import Row, Table

INCHES_BELOW = 100.0
"""A list whose sizes in mm are all below this was written in inches (common practice)."""


def choose_table(
    path: Path,
    tables: Sequence[Table],
    names: ColumnNames,
    *,
    called: str,
    needs: str,
    must: Sequence[str] = ("width", "height"),
) -> tuple[Table, Header]:
    """Find the one table that has a header of this kind; `needs` says what one names at least.

    Of several the one whose header has the columns that it `must` have: a row of another list
    may happen to hold two words that are columns of this one. Raises ReadingError.
    """
    found = [(table, h) for table in tables if (h := find_header(table.rows, names))]
    if not found:
        raise ReadingError([Fault(str(path), f"no header row found; it names at least {needs}")])
    whole = [(table, h) for table, h in found if all(h.find(column) for column in must)]
    if len(whole) == 1:
        return whole[0]
    if len(found) > 1:
        sheets = ", ".join(f"'{shorten(table.sheet)}'" for table, _ in found)
        raise ReadingError(
            [Fault(str(path), f"more than one sheet holds a {called} ({sheets}); keep one")]
        )
    return found[0]


class RowReader:
    """Reads cells below a header; what is wrong in one is noted in `faults` and left open.

    `units` overrules what the header says, `unstated` holds where it is silent.
    """

    def __init__(
        self,
        file: str,
        table: Table,
        header: Header,
        names: ColumnNames,
        units: Unit | None,
        unstated: Unit,
    ) -> None:
        self.faults: list[Fault] = []
        self.header = header
        self._file = file
        self._table = table
        stated = [h.unit for column in names.sizes if (h := header.find(column)) and h.unit]
        bare_unit: BareUnit = units or (stated[0] if stated else unstated)
        self.unit: Unit = "in" if bare_unit == "in" else "mm"
        self._units = {h.column: units or h.unit or bare_unit for h in header.headings}
        self._bare_numbers: list[float] = []

    def unit_of(self, column: str) -> BareUnit:
        """Give the unit that a bare number in a column is read in."""
        return self._units[column]

    def note_strange(self) -> None:
        """Note the headings that are not understood."""
        for text, what in self.header.strange:
            self.note(self.header.row, text, what)

    def rows(self) -> tuple[Row, ...]:
        """Give the rows below the header, which may be repeated on each page."""
        below = (row for row in self._table.rows if row.number > self.header.row)
        return tuple(row for row in below if row.cells != self.header.cells)

    def check_headings(self, row: Row) -> None:
        """Note the first cell that stands under no heading: the row is shifted, or too long."""
        headed = self.header.cells
        for place, cell in enumerate(row.cells):
            if cell and (place >= len(headed) or not headed[place]):
                self.note(
                    row.number,
                    str(place + 1),
                    f"a cell without a heading ('{shorten(cell)}' given); where commas part the "
                    "cells, a decimal needs a point",
                )
                return

    def check_scale(self) -> None:
        """Note that all sizes are too small for millimetres."""
        if self._bare_numbers and max(self._bare_numbers) < INCHES_BELOW:
            self.note(
                self.header.row,
                None,
                f"all sizes are under {INCHES_BELOW:.0f} mm "
                f"({self._bare_numbers[0]:g} given first): inches or centimetres? Say so with "
                f"'width (in)' or 'width (cm)' in the header{self.scale_remedy()}",
            )

    def scale_remedy(self) -> str:
        """Say what else helps a list that was written in inches."""
        return ""

    def read_count(self, row: Row) -> int | None:
        """Read how many alike; None where it is not said."""
        text = self.cell(row, "count")
        if not text:
            return None
        if re.fullmatch(r"0*[0-9]{1,3}", text) and 1 <= int(text[-9:]) <= MOST_ALIKE:
            return int(text[-9:])
        self.note_at(
            row, "count", f"not a count ({show_value(text)} given); allowed: 1 to {MOST_ALIKE}"
        )
        return None

    def read_size(self, row: Row, column: str, *, needed: str = "") -> float | None:
        """Read a length in mm; `needed` says why a missing one is a fault."""
        text = self.cell(row, column)
        if text:
            return self.measure(row, column, text)
        if needed and self.header.find(column):
            self.note_at(row, column, f"missing; {needed}{self._empty_formula()}")
        return None

    def measure(self, row: Row, column: str, text: str) -> float | None:
        """Read a text that stands in a column as a length in mm."""
        try:
            mm = parse_length(text, self._units[column])
        except LengthError as error:
            hint = "; format the cell as text" if text.startswith("a date or time") else ""
            self.note_at(row, column, f"{error}{hint}")
            return None
        # A size that carries its own sign says nothing about the list's unit.
        bare_number = text[-1].isnumeric() and self._units[column] == "mm"
        if bare_number and column.startswith(("width", "height")):
            self._bare_numbers.append(mm)
        return mm

    def _empty_formula(self) -> str:
        if not self._table.workbook:
            return ""
        return (
            "; a formula that was never calculated reads as empty: "
            "open the file in its own program and save it there"
        )

    def cell(self, row: Row, column: str) -> str:
        """Give the text of a row's cell in a column, "" where there is none."""
        heading = self.header.find(column)
        if heading is None or heading.place >= len(row.cells):
            return ""
        return row.cells[heading.place]

    def note_at(self, row: Row, column: str, what: str) -> None:
        """Note a fault in a row, under the column's name in the file."""
        heading = self.header.find(column)
        self.note(row.number, heading.text if heading else column, what)

    def note(self, row: int, column: str | None, what: str) -> None:
        """Note a fault in a row, or in a column of it."""
        place = self.place(row) if column is None else f"{self.place(row)}, column {column}"
        self.faults.append(Fault(place, what))

    def place(self, row: int) -> str:
        """Write where a row stands: `fronts.csv: row 4`."""
        return f"{self._file}: {self.row_words(row)}"

    def row_words(self, row: int) -> str:
        """Write where a row stands in its file: `row 4`, `sheet Fronts, row 4`."""
        sheet = f"sheet {shorten(self._table.sheet)}, " if self._table.sheet else ""
        return f"{sheet}row {row}"
