"""The list of gaps as they are: the file of `gaps --format csv`, filled in, or one of one's own.

Columns in any order: `front`, `beside`, `other`, `axis`, `edge` name a gap, as far as is needed to
tell it from others; `top or left` and `bottom or right` say how wide it is, at one end or at both.
A row without a width was not measured. A row whose axis is `depth` is no gap: it says how far a
front stands out from those beside it at its top and at its bottom, below 0 behind them. All faults
are reported together.
"""

from collections.abc import Iterator, Mapping
from pathlib import Path

from jigs.given.measured import DEPTH, MeasuredGap, MeasuredGaps
from jigs.ground.believable import Range
from jigs.ground.errors import ReadingError
from jigs.ground.lengths import Unit
from jigs.reading.headings import OTHER
from jigs.reading.listcolumns import ColumnNames
from jigs.reading.listrows import RowReader, choose_table
from jigs.reading.listtable import ListRow
from jigs.reading.tables import read_tables

FIRST, SECOND = "top or left", "bottom or right"
GAP = Range(0, 30)
"""How wide a gap about a front is believed to be; mm (common practice, no source)."""
SYNONYMS: Mapping[str, tuple[str, ...]] = {
    # The rest of the file that `gaps` writes; nothing is taken from it. It stands first: the word
    # 'other' is a column of its own here.
    OTHER: (
        "wall", "nominal mm", "least mm", "open", "low mm", "high mm", "worst mm", "verdict",
        "takes most", "takes mm", "adjust mm", "cure", "note", "notes",
    ),
    "front": ("id", "front id"),
    "beside": (),
    "neighbour": ("other", "other front", "neighbor"),
    "axis": ("direction",),
    "edge": (),
    FIRST: ("measured", "measured 1", "top", "left"),
    SECOND: ("measured 2", "bottom", "right"),
}  # fmt: skip
MEASURED = ColumnNames(SYNONYMS, {FIRST: GAP, SECOND: GAP})
PROUD = Range(-8, 8)
"""How far a front is believed to stand out or behind; mm (common practice, no source)."""
AXES = ("x", "y", DEPTH)
EDGES = ("left", "right", "bottom", "top")


def read_measured(path: Path, unit: Unit) -> MeasuredGaps:
    """Read a list of gaps; bare numbers are in `unit` where its header does not say otherwise."""
    try:
        table, header = choose_table(
            path, read_tables(path), MEASURED,
            called="list of gaps", needs=f"front and '{FIRST}'", must=("front", FIRST),
        )  # fmt: skip
    except ReadingError as error:
        return MeasuredGaps(faults=error.faults)
    reader = _GapRows(str(path), table, header, MEASURED, None, unit)
    rows = tuple(reader.read_gaps())
    return MeasuredGaps(rows=rows, faults=tuple(reader.faults))


class _GapRows(RowReader):
    """Reads the rows of gaps."""

    def read_gaps(self) -> Iterator[MeasuredGap]:
        """Read every row that says how wide its gap is."""
        self.note_strange()
        for row in self.rows():
            self.check_headings(row)
            axis = self._one_of(row, "axis", AXES)
            within = PROUD if axis == DEPTH else GAP
            first, second = (
                self.read_size(row, column, within=within) for column in (FIRST, SECOND)
            )
            if not self.cell(row, FIRST) and self.cell(row, SECOND):
                self.note_at(
                    row, FIRST, "missing; what was measured at one end alone stands in this column"
                )
            if not self.cell(row, "front") and (self.cell(row, FIRST) or self.cell(row, SECOND)):
                self.note_at(row, "front", "missing; give the ID of a front at the gap")
            elif first is not None:
                yield MeasuredGap(
                    where=self.place(row.number),
                    front=self.read_text(row, "front").upper(),
                    beside=self.read_text(row, "beside").lower(),
                    other=self.read_text(row, "neighbour").upper(),
                    axis=axis,
                    edge=self._one_of(row, "edge", EDGES),
                    first=first,
                    second=second,
                )
        self.check_units()
        self.take_doubts()

    def _one_of(self, row: ListRow, column: str, allowed: tuple[str, ...]) -> str:
        text = self.read_text(row, column).lower()
        if text and text not in allowed:
            self.note_at(row, column, f"{text!r} given; allowed: {', '.join(allowed)}")
            return ""
        return text
