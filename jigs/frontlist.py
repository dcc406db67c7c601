"""A front list: one row a front, as a shop orders them.

Rows of one box stand from top to bottom. Sizes are in the unit that the person or the header
names (`width (in)`), else in mm. A bare list must give every front's width and height; a list
that joins a job file's boxes may leave them to be computed. All faults of a list are reported
together, each with its row and column.
"""

import re
from collections.abc import Sequence
from pathlib import Path

from jigs.errors import Fault, JigsheetError, LengthError, ReadingError
from jigs.ids import check_id, find_clashes, name_fronts, name_parts
from jigs.job import FRONT_KINDS, FrontKind, FrontSpec, Hand, Reveal, Unit
from jigs.jobboxes import HANDS, MOST_ALIKE
from jigs.lengths import BareUnit, parse_length, show_value
from jigs.listcolumns import SIZES, Column, Header, find_header, shorten
from jigs.listedfront import FrontList, ListedFront, check_widths
from jigs.nearest import suggest
from jigs.tables import MOST_ROWS, Row, Table, read_tables

INCHES_BELOW = 100.0
"""A list whose sizes in mm are all below this was written in inches (common practice)."""

_KINDS = {kind.replace("-", ""): kind for kind in FRONT_KINDS}


def read_front_list(
    path: Path,
    units: Unit | None = None,
    *,
    bare: bool = True,
    between: float = Reveal().between,
    unstated: Unit = "mm",
) -> FrontList:
    """Read a front list; `units` overrules what its header says, `unstated` holds if it is silent.

    `bare`: the list stands alone, so that width and height are needed and the widths in one box
    are compared, with the gap `between` the leaves of a pair (mm). Raises ReadingError.
    """
    table, header = _choose_table(path, read_tables(path))
    reader = _Reader(str(path), table, header, units, bare, unstated)
    rows = reader.read_rows()
    faults = [*reader.faults, *_check_names(rows)]
    if bare:
        faults += check_widths(rows, between)
    if faults:
        raise ReadingError(faults)
    return FrontList(file=str(path), unit=reader.unit, rows=tuple(rows))


def _choose_table(path: Path, tables: Sequence[Table]) -> tuple[Table, Header]:
    found = [(table, h) for table in tables if (h := find_header(table.rows))]
    if not found:
        raise ReadingError(
            [Fault(str(path), "no header row found; it names at least kind, width and height")]
        )
    if len(found) > 1:
        names = ", ".join(f"'{shorten(table.sheet)}'" for table, _ in found)
        raise ReadingError(
            [Fault(str(path), f"more than one sheet holds a front list ({names}); keep one")]
        )
    return found[0]


def _check_names(rows: Sequence[ListedFront]) -> tuple[Fault, ...]:
    """Find the clashes among the IDs that were given."""
    return find_clashes(
        (part, row.where)
        for row in rows
        if row.spec.id
        for front in name_fronts(row.spec.id, box="", place=0, count=row.count)
        for part in name_parts(front, row.spec.kind)
    )


class _Reader:
    """Reads the rows below the header, noting every fault on the way."""

    def __init__(
        self,
        file: str,
        table: Table,
        header: Header,
        units: Unit | None,
        bare: bool,
        unstated: Unit,
    ) -> None:
        self.faults: list[Fault] = []
        self._file = file
        self._table = table
        self._header = header
        self._bare = bare
        stated = [h.unit for column in SIZES if (h := header.find(column)) and h.unit]
        bare_unit: BareUnit = units or (stated[0] if stated else unstated)
        self.unit: Unit = "in" if bare_unit == "in" else "mm"
        self._units = {h.column: units or h.unit or bare_unit for h in header.headings}
        self._bare_numbers: list[float] = []

    def read_rows(self) -> list[ListedFront]:
        """Read every row; what is wrong in one is noted and left open in it."""
        for text, what in self._header.strange:
            self._note(self._header.row, text, what)
        needed: tuple[Column, ...] = ("kind", "width", "height") if self._bare else ("kind", "box")
        for column in needed:
            if self._header.find(column) is None:
                self._note(self._header.row, None, f"no column '{column}'; {_ALLOWED[column]}")
        below = [row for row in self._table.rows if row.number > self._header.row]
        rows = [self._read_row(row) for row in below if row.cells != self._header.cells]
        if not rows:
            self._note(self._header.row, None, "a list without rows; one row a front is needed")
        if sum(row.count for row in rows) > MOST_ROWS:
            self._note(self._header.row, None, f"over {MOST_ROWS} fronts, which are allowed")
        if self._bare_numbers and max(self._bare_numbers) < INCHES_BELOW:
            self._note(
                self._header.row,
                None,
                f"all sizes are under {INCHES_BELOW:.0f} mm "
                f"({self._bare_numbers[0]:g} given first): inches or centimetres? Say so with "
                "'width (in)' or 'width (cm)' in the header; --units in does for inches",
            )
        return rows

    def _read_row(self, row: Row) -> ListedFront:
        self._check_headings(row)
        kind = self._read_kind(row)
        opening = kind == "opening"
        count = self._read_count(row)
        width = self._read_size(row, "width", needed=self._bare and not opening)
        front = FrontSpec(
            id=self._read_id(row, "id"),
            kind=kind or "door",
            # Of an unknown kind nobody can say how wide it hangs.
            width=width if kind else None,
            height=self._read_size(row, "height", needed=self._bare),
            hinged=self._read_hand(row),
            thickness=self._read_size(row, "thickness"),
            stile=self._read_size(row, "stile"),
            pull=self._cell(row, "pull") or None,
            finish=self._cell(row, "finish"),
            note=self._cell(row, "note"),
        )
        box = self._read_id(row, "box")
        if not self._bare and not box and self._header.find("box"):
            self._note(row.number, "box", "missing; it names the job's box the front hangs on")
        where = f"{self._place()}row {row.number}"
        return ListedFront(spec=front, box=box, count=count, where=where)

    def _check_headings(self, row: Row) -> None:
        """Note the first cell that stands under no heading: the row is shifted, or too long."""
        headed = self._header.cells
        for place, cell in enumerate(row.cells):
            if cell and (place >= len(headed) or not headed[place]):
                self._note(
                    row.number,
                    str(place + 1),
                    f"a cell without a heading ('{shorten(cell)}' given); where commas part the "
                    "cells, a decimal needs a point",
                )
                return

    def _read_kind(self, row: Row) -> FrontKind | None:
        text = self._cell(row, "kind")
        if self._header.find("kind") is None:
            return None
        kind = _KINDS.get(re.sub(r"[\s_-]", "", text.lower()))
        if kind is None and text:
            near = suggest(text, FRONT_KINDS)
            self._note_at(
                row, "kind", f"unknown kind ('{shorten(text)}' given); {near}; {_ALLOWED['kind']}"
            )
        elif kind is None:
            self._note_at(row, "kind", f"missing; {_ALLOWED['kind']}")
        return kind

    def _read_count(self, row: Row) -> int:
        text = self._cell(row, "count")
        if not text:
            return 1
        if re.fullmatch(r"0*[0-9]{1,3}", text) and 1 <= int(text[-9:]) <= MOST_ALIKE:
            return int(text[-9:])
        self._note_at(
            row, "count", f"not a count ({show_value(text)} given); allowed: 1 to {MOST_ALIKE}"
        )
        return 1

    def _read_id(self, row: Row, column: Column) -> str:
        text = self._cell(row, column)
        try:
            return check_id(text) if text else ""
        except JigsheetError as error:
            self._note_at(row, column, str(error))
            return ""

    def _read_hand(self, row: Row) -> Hand | None:
        text = self._cell(row, "hinged")
        hand = HANDS.get(text.lower())
        if text and hand is None:
            self._note_at(
                row, "hinged", f"not a hand ('{shorten(text)}' given); allowed: left, right"
            )
        return hand

    def _read_size(self, row: Row, column: Column, *, needed: bool = False) -> float | None:
        text = self._cell(row, column)
        if not text:
            if needed and self._header.find(column):
                self._note_at(row, column, f"missing; {_ALLOWED[column]}{self._empty_formula()}")
            return None
        try:
            mm = parse_length(text, self._units[column])
        except LengthError as error:
            hint = "; format the cell as text" if text.startswith("a date or time") else ""
            self._note_at(row, column, f"{error}{hint}")
            return None
        # A size that carries its own sign says nothing about the list's unit.
        bare_number = text[-1].isnumeric() and self._units[column] == "mm"
        if bare_number and column in ("width", "height"):
            self._bare_numbers.append(mm)
        return mm

    def _empty_formula(self) -> str:
        if not self._table.workbook:
            return ""
        return (
            "; a formula that was never calculated reads as empty: "
            "open the file in its own program and save it there"
        )

    def _cell(self, row: Row, column: Column) -> str:
        heading = self._header.find(column)
        if heading is None or heading.place >= len(row.cells):
            return ""
        return row.cells[heading.place]

    def _note_at(self, row: Row, column: Column, what: str) -> None:
        heading = self._header.find(column)
        self._note(row.number, heading.text if heading else column, what)

    def _note(self, row: int, column: str | None, what: str) -> None:
        place = f"row {row}" if column is None else f"row {row}, column {column}"
        self.faults.append(Fault(f"{self._place()}{place}", what))

    def _place(self) -> str:
        sheet = f"sheet {shorten(self._table.sheet)}, " if self._table.sheet else ""
        return f"{self._file}: {sheet}"


_ALLOWED: dict[str, str] = {
    "kind": f"allowed: {', '.join(FRONT_KINDS)}",
    "width": "a list without a job file gives every front's width (of a pair: of one leaf)",
    "height": "a list without a job file gives every front's height",
    "box": "it names the job's box that the front hangs on",
}
