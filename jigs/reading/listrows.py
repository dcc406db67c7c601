"""The rows of a list below its header, read cell by cell; every fault is noted on the way.

Sizes are in the unit that the person or the header names (`width (in)`), else in the one that
the kind of list has. A row whose sizes fit only another unit is a fault; where all do, it is the
list's, and said once.
"""

from collections import defaultdict
from collections.abc import Sequence
from pathlib import Path

from msgspec import Struct

from jigs.given.listspec import ListSpec
from jigs.ground.believable import MM_PER, Doubt, Range, measure, word_unit
from jigs.ground.errors import AskedBack, Fault, LengthError, refusal
from jigs.ground.lengths import BareUnit, Unit, ends_with_unit, is_bare, show_value
from jigs.ground.nearest import suggest
from jigs.reading.headings import HeadUnit, fold
from jigs.reading.jobboxes import MOST_ALIKE, USUAL_ALIKE
from jigs.reading.listcells import read_whole_number
from jigs.reading.listcolumns import (
    ColumnNames,
    Header,
    rows_below,
    shorten,
    strange_headings,
)
from jigs.reading.listtable import ListRow, ListTable
from jigs.reading.statedcolumns import head_list

LEAST_FRONT = 100.0
"""No front measures less than this both ways; mm (common practice, no source)."""
INCH_SIGNS = frozenset(('"', "″", "”", "''", "in", "inch", "inches"))
"""What stands behind a size in inches."""
LONGEST_TEXT = 200
"""Characters of a note, a finish, a pull's name."""


class _Misfit(Struct, frozen=True, kw_only=True):
    """A bare size that fits only another unit than it is read in."""

    row: int
    column: str
    text: str
    unit: BareUnit
    within: Range
    meant: tuple[BareUnit, ...]


def choose_table(
    path: Path,
    tables: Sequence[ListTable],
    names: ColumnNames,
    *,
    called: str,
    needs: str,
    must: Sequence[str] = ("width", "height"),
    spec: ListSpec | None = None,
    remedy: str = "",
) -> tuple[ListTable, Header]:
    """Find the one table that has a header of this kind; `needs` says what one names at least.

    Of several the one whose header has the columns that it `must` have: a row of another list
    may happen to hold two words that are columns of this one; or the one that `spec` names, what
    is stated of a list that can be told about; `remedy`: how. Raises ReadingError.
    """
    said = spec or ListSpec()
    if said.sheet:
        named = [table for table in tables if fold(table.sheet) == fold(said.sheet)]
        if not named:
            near = suggest(said.sheet, [table.sheet for table in tables if table.sheet])
            raise refusal(path, f"no such sheet ({show_value(said.sheet)} given); {near}")
        tables = named
    heads = ((table, head_list(table.rows, names, said.columns)) for table in tables)
    found = [(table, h) for table, h in heads if h]
    if not found:
        hint = f"; or say where its columns are: {remedy}" if remedy else ""
        raise refusal(path, f"no header row found; it names at least {needs}{hint}")
    whole = [
        (table, h) for table, h in found if all(h.find(one) or one in said.columns for one in must)
    ]
    if len(whole) == 1:
        return whole[0]
    if len(found) > 1:
        sheets = ", ".join(f"'{shorten(table.sheet)}'" for table, _ in whole or found)
        keep = "keep one" if spec is None else f"which? sheet='{found[0][0].sheet}'"
        raise refusal(path, f"more than one sheet holds a {called} ({sheets}); {keep}")
    return found[0]


class RowReader:
    """Reads cells below a header; what is wrong in one is noted in `faults` and left open.

    `units` overrules what the header says, `unstated` holds where it is silent.
    """

    def __init__(
        self,
        file: str,
        table: ListTable,
        header: Header,
        names: ColumnNames,
        units: BareUnit | None,
        unstated: BareUnit,
    ) -> None:
        self.faults: list[Fault] = []
        self.faulty: set[int] = set()
        self.header = header
        self._file = file
        self._table = table
        stated = [h.unit for h in header.headings if h.unit and h.column in (*names.sizes, "size")]
        bare_unit: HeadUnit = units or (stated[0] if stated else unstated)
        self.unit: Unit = "in" if bare_unit == "in" else "mm"
        self._bare_unit = bare_unit
        self._units: dict[str, HeadUnit] = {
            h.column: (h.unit if h.stated else None) or units or h.unit or bare_unit
            for h in header.headings
        }
        self._names = names
        self._ranges = names.sizes
        self._doubts: list[Doubt] = []
        self._misfits: list[_Misfit] = []
        self._bare_in: defaultdict[str, set[int]] = defaultdict(set)
        self._signs: set[str] = set()
        """The units that stand behind widths and heights."""
        self._body, other = rows_below(table.rows, header, names)
        if other:
            self.note(
                other, None,
                "a second header, whose columns or units are others than those above; put its rows "
                "in the same columns and units, or into a list of their own",
            )  # fmt: skip

    def note_strange(self) -> None:
        """Note the headings that are not understood."""
        for text, what in strange_headings(self.header, self._names):
            self.note(self.header.row, text, what)

    def rows(self) -> tuple[ListRow, ...]:
        """Give the rows below the header, which may be repeated on each page, down to a header
        whose columns stand otherwise."""
        return self._body

    def hidden_of(self, row: ListRow) -> tuple[str, ...]:
        """Give what of a row is hidden in its workbook, and read as any other: the row, and the
        columns in which it says something."""
        columns = tuple(
            f"column '{shorten(heading.text)}'"
            for heading in self.header.headings
            if heading.place + 1 in self._table.hidden_columns and self.cell(row, heading.column)
        )
        return ("its row", *columns) if row.number in self._table.hidden else columns

    def check_headings(self, row: ListRow) -> None:
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

    def check_units(self) -> None:
        """Note each row whose sizes fit only another unit; where all do, of the fronts or in a
        column, say it once."""
        sizes = [misfit for misfit in self._misfits if _is_size(misfit.column)]
        whole = {misfit.row for misfit in sizes} == self._bare_in["width"] | self._bare_in["height"]
        told = {"width", "height"} if sizes and whole else set()
        if told:
            remedy = self.scale_remedy(sizes[0].meant)
            meant = sizes[0].meant
            asked = AskedBack(
                f"No unit is said: what are sizes such as {sizes[0].text} in?",
                tuple((unit, f"units={unit}") for unit in meant),
            )
            self._note_all(sizes[0], "all sizes fit", "width", remedy, asked)
        for column in dict.fromkeys(misfit.column for misfit in self._misfits):
            found = [misfit for misfit in self._misfits if misfit.column == column]
            if not _is_size(column) and len(found) > 1 and len(found) == len(self._bare_in[column]):
                heading = self._heading(column)
                remedy = self.column_remedy(column, found[0].meant)
                self._note_all(found[0], f"all of column {heading} fits", heading, remedy)
                told.add(column)
        for misfit in self._misfits:
            if misfit.column.removesuffix(" 2") not in told:
                words = word_unit(misfit.text, misfit.unit, misfit.within, misfit.meant)
                self.note(misfit.row, self._heading(misfit.column), words)

    def _note_all(
        self, first: _Misfit, what: str, heading: str, remedy: str = "",
        asked: AskedBack | None = None,
    ) -> None:  # fmt: skip
        """Note that the header does not name the unit of all that stands below it."""
        others = " or ".join(f"'{heading} ({unit})'" for unit in first.meant)
        self.note(
            self.header.row,
            None,
            f"{what} only another unit ({first.text} {first.unit} given first, and {first.within} "
            f"is usual): {' or '.join(first.meant)}? Say so in the header with {others}{remedy}",
            asked,
        )

    def check_both(self, row: ListRow, first: str = "width", second: str = "height") -> None:
        """Find a row whose width and height are both too small for one front in its unit."""
        texts = {column: self.cell(row, column) for column in (first, second)}
        if any(misfit.row == row.number for misfit in self._misfits) or not all(texts.values()):
            return
        for column, text in texts.items():
            if self.in_metres(column):
                return
            unit = self._unit_of(column)
            try:
                mm = measure(text, unit, self._ranges[column]).mm
            except LengthError:
                return
            if not is_bare(text) or mm >= LEAST_FRONT:
                return
        meant: tuple[BareUnit, ...] = tuple(u for u in MM_PER if MM_PER[u] > MM_PER[unit])
        if meant:
            within = Range(LEAST_FRONT, self._ranges[first].high)
            self._misfits.append(
                _Misfit(
                    row=row.number,
                    column=first,
                    text=texts[first],
                    unit=unit,
                    within=within,
                    meant=meant,
                )
            )

    def refused(self, row: int, column: str) -> str:
        """Give the size of a row that is in another unit, as it stands; "" where it is not."""
        return next((m.text for m in self._misfits if (m.row, m.column) == (row, column)), "")

    def take_doubts(self) -> tuple[Doubt, ...]:
        """Take what has been doubted since the last time."""
        doubts, self._doubts = tuple(self._doubts), []
        return doubts

    def scale_remedy(self, meant: Sequence[BareUnit]) -> str:
        """Say what else helps a list that was written in another unit."""
        return ""

    def column_remedy(self, column: str, meant: Sequence[BareUnit]) -> str:
        """Say what else helps a column that was written in another unit."""
        return ""

    def all_in_inches(self) -> bool:
        """Tell whether every width and height that was read says that it is in inches."""
        bare = self._bare_in["width"] | self._bare_in["height"]
        return not bare and bool(self._signs) and self._signs <= INCH_SIGNS

    def is_merged(self, row: ListRow, column: str) -> bool:
        """Tell whether a row's cell is one that its workbook has merged over several rows."""
        heading = self.header.find(column)
        return heading is not None and (row.number, heading.place + 1) in self._table.merged

    def read_text(self, row: ListRow, column: str) -> str:
        """Read a line of text; breaks in it are spaces."""
        text = " ".join(self.cell(row, column).split())
        if len(text) > LONGEST_TEXT or not text.isprintable():
            self.note_at(
                row,
                column,
                f"not one short line ({show_value(text)} given); at most {LONGEST_TEXT} printable "
                "characters are allowed",
            )
            return ""
        return text

    def read_count(self, row: ListRow) -> int | None:
        """Read how many alike; None where it is not said."""
        text = self.cell(row, "count")
        if not text:
            return None
        count = read_whole_number(text)
        if count is not None and 1 <= count <= MOST_ALIKE:
            if count > USUAL_ALIKE:
                within = Range(1, USUAL_ALIKE, unit="")
                self._doubts.append(Doubt(path=("count",), value=count, within=within))
            return count
        self.note_at(
            row, "count", f"not a count ({show_value(text)} given); allowed: 1 to {MOST_ALIKE}"
        )
        return None

    def read_size(
        self, row: ListRow, column: str, *, needed: str = "", within: Range | None = None
    ) -> float | None:
        """Read a length in mm; `needed` says why a missing one is a fault, `within` where it is
        believed, if not as in any such column."""
        text = self.cell(row, column)
        if text:
            return self.measure(row, column, text, within)
        if needed and self.header.find(column):
            self.note_at(row, column, f"missing; {needed}{self._empty_formula()}")
        return None

    def measure(
        self, row: ListRow, column: str, text: str, within: Range | None = None
    ) -> float | None:
        """Read a text that stands in a column as a length in mm."""
        unit, within = self._unit_of(column), within or self._ranges[column]
        if is_bare(text) and self.in_metres(column):
            text = f"{text.strip()} m"
        try:
            found = measure(text, unit, within)
        except LengthError as error:
            hint = "; format the cell as text" if text.startswith("a date or time") else ""
            self.note_at(row, column, f"{error}{hint}")
            return None
        # A size that carries its own sign says nothing about the list's unit.
        if is_bare(text):
            self._bare_in[column.split()[0] if _is_size(column) else column].add(row.number)
        elif _is_size(column):
            self._signs.add(ends_with_unit(text).lower())
        if found.meant:
            self._misfits.append(
                _Misfit(
                    row=row.number,
                    column=column,
                    text=text.strip(),
                    unit=unit,
                    within=within,
                    meant=found.meant,
                )
            )
        elif not found.usual:
            self._doubts.append(Doubt(path=(column,), value=found.mm, within=within))
        return found.mm

    def _unit_of(self, column: str) -> BareUnit:
        """Give the unit that a bare number of a column is read in, but for metres, which are
        written behind it."""
        unit = self._units.get(column) or self._units.get("size") or self._bare_unit
        return "mm" if unit == "m" else unit

    def in_metres(self, column: str) -> bool:
        """Tell whether the bare numbers of a column are metres."""
        return (self._units.get(column) or self._units.get("size")) == "m"

    def _empty_formula(self) -> str:
        if not self._table.workbook:
            return ""
        return (
            "; a formula that was never calculated reads as empty: "
            "open the file in its own program and save it there"
        )

    def cell(self, row: ListRow, column: str) -> str:
        """Give the text of a row's cell in a column, "" where there is none."""
        heading = self.header.find(column)
        if heading is None or heading.place >= len(row.cells):
            return ""
        return row.cells[heading.place]

    def note_at(self, row: ListRow, column: str, what: str) -> None:
        """Note a fault in a row, under the column's name in the file."""
        self.note(row.number, self._heading(column), what)

    def _heading(self, column: str) -> str:
        """Give a column's name in the file."""
        heading = self.header.find(column) or self.header.find("size")
        return heading.name if heading else column

    def note(self, row: int, column: str | None, what: str, asked: AskedBack | None = None) -> None:
        """Note a fault in a row, or in a column of it, with what it asks."""
        place = self.place(row) if column is None else f"{self.place(row)}, column {column}"
        self.faults.append(Fault(place, what, asked))
        self.faulty.add(row)

    def place(self, row: int) -> str:
        """Write where a row stands: `fronts.csv: row 4`."""
        return f"{self._file}: {self.row_words(row)}"

    def row_words(self, row: int) -> str:
        """Write where a row stands in its file: `row 4`, `sheet Fronts, row 4`."""
        sheet = f"sheet {shorten(self._table.sheet)}, " if self._table.sheet else ""
        return f"{sheet}row {row}"


def _is_size(column: str) -> bool:
    """Tell whether a column holds a front's own width or height."""
    return column.startswith(("width", "height"))
