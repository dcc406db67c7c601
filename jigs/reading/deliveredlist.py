"""The delivered list: one row a piece, or some alike, as a supplier packs or a person measures.

Columns in any order: `id`, `width`, `width 2`, `height`, `height 2`, `diagonal 1`, `diagonal 2`,
`thickness`, `count`, `note`, and `bored`, `hinges at`, `bored tab` of a door that
came with its cups. A size taken in two places stands in two columns, or in one cell
with a semicolon between (`17 7/8; 17 29/32`). A row without an ID gives width and height. All
faults of a list are reported together, each with its row and column.
"""

from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path

from msgspec.structs import replace

from jigs.given.measured import DeliveredList, DeliveredPiece, LeftColumn, find_twice
from jigs.given.stated import Both
from jigs.ground.believable import DIAGONAL, FRONT_BOARD, IN_BOX, TAB
from jigs.ground.errors import Fault, ReadingError
from jigs.ground.lengths import Unit
from jigs.reading.fieldkeys import ANY_FRONT
from jigs.reading.frontdoubts import find_title_unit
from jigs.reading.frontmaking import FrontMaking
from jigs.reading.frontwords import is_sum
from jigs.reading.headings import OTHER
from jigs.reading.listcolumns import (
    ColumnNames,
    Unread,
    column_letter,
    shorten,
    strange_headings,
)
from jigs.reading.listrows import choose_table
from jigs.reading.listtable import MOST_ROWS, ListRow
from jigs.reading.tables import read_tables

MOST_ID = 40
"""Characters of an ID in a delivered list; a longer text is none."""

SYNONYMS: Mapping[str, tuple[str, ...]] = {
    "width": (
        "measured width", "width 1", "width1", "w1", "width top", "top width",
    ),
    "width 2": ("width2", "w2", "width bottom", "bottom width"),
    "height": ("measured height", "height 1", "height1", "h1", "height left", "left height"),
    "height 2": ("height2", "h2", "height right", "right height"),
    "diagonal 1": (
        "diagonal", "diagonals", "diagonal1", "diagonal a", "d1", "diag", "diag 1", "diag1",
    ),
    "diagonal 2": ("diagonal2", "d2", "diag 2", "diag2", "diagonal b"),
}  # fmt: skip
"""Words for what a person measures; all others are those of `headings.toml`."""

SIZES = {
    "width": ANY_FRONT.width, "width 2": ANY_FRONT.width,
    "height": ANY_FRONT.height, "height 2": ANY_FRONT.height,
    "diagonal 1": DIAGONAL, "diagonal 2": DIAGONAL, "thickness": FRONT_BOARD,
    "hinges at": IN_BOX, "bored tab": TAB,
}  # fmt: skip

DELIVERED = ColumnNames(
    SYNONYMS,
    SIZES,
    ("id", "width", "height", "thickness", "count", "note", "bored", "hinges at", "bored tab"),
)
"""A supplier's own words serve here too; an order's other columns may stay: nothing is taken from
them, and each is named."""

NEEDED = "a row without an ID gives width and height, by which it is matched"


def read_delivered(path: Path, unit: Unit) -> DeliveredList:
    """Read a delivered list; bare numbers are in `unit` where its header does not say otherwise.

    Its faults come with it, so that they can be told with those of the job.
    """
    try:
        table, header = choose_table(
            path,
            read_tables(path),
            DELIVERED,
            called="delivered list",
            needs="id and width, or width and height",
        )
    except ReadingError as error:
        return DeliveredList(file=path, faults=error.faults)
    titled = None if any(h.unit for h in header.headings) else find_title_unit(table, header)
    usual = titled[0] if titled else unit
    reader = _DeliveredRows(str(path), table, header, DELIVERED, None, usual)
    pieces = reader.read_pieces()
    return DeliveredList(
        file=path,
        pieces=pieces,
        faults=tuple(reader.faults),
        rows_left=tuple(reader.left_rows()),
        also=(f"Sizes in {titled[0]}, as '{shorten(titled[1])}' says above them.",)
        if titled
        else (),
        unsized=tuple(reader.unsized),
        left=tuple(reader.left_columns()),
    )


class _DeliveredRows(FrontMaking):
    """Reads the rows of delivered pieces; `left` are those that are none, `alone` the columns from
    which nothing is taken, by their places, `unsized` as the list has it."""

    left: Sequence[ListRow]
    pieces: Sequence[ListRow]
    alone: Mapping[int, str]
    unsized: list[tuple[int, Fault]]

    def note_strange(self) -> None:
        """Note the headings that are not understood and may be of sizes or counts: a width that was
        ordered must not stand in for one that was measured. One of words is left alone."""
        words = [other for other in self.header.unread if not self._may_matter(other)]
        places = {other.place: other.text for other in words}
        places |= {one.place: one.text for one in self.header.headings if one.column == OTHER}
        self.alone = {
            place: f"{column_letter(place)} '{text}'"
            for place, text in sorted(places.items())
            if any(any(row.cells[place : place + 1]) for row in self.rows())
        }
        others = tuple(other for other in self.header.unread if other not in words)
        for text, what in strange_headings(replace(self.header, unread=others), DELIVERED):
            self.note(self.header.row, text, f"{what}; without it if it is no size of a piece")

    def _may_matter(self, other: Unread) -> bool:
        cells = (row.cells[other.place] for row in self.rows() if other.place < len(row.cells))
        known = other.twice or other.like in DELIVERED.known
        return bool(known) or any(cell[:1].isnumeric() for cell in cells)

    def _is_no_piece(self, row: ListRow) -> bool:
        """Tell whether a row is the sum of those above it, or says something by itself, as the last
        of an order's list does of what is held back: longer than a supplier's ID."""
        said = [cell for cell in row.cells if cell]
        if len(said) == 1 and len(said[0]) > MOST_ID:
            return True
        sizes = self.cell(row, "width") + self.cell(row, "height")
        return not any(map(str.isnumeric, sizes)) and is_sum(next(filter(None, row.cells), ""))

    def left_rows(self) -> Iterator[str]:
        """Name the rows that are no pieces."""
        for row in self.left:
            first = next(filter(None, row.cells))
            yield f"{self.row_words(row.number)} '{shorten(first)}'"

    def read_count(self, row: ListRow) -> int | None:
        """Read how many alike; of several rows in one merged cell nobody knows how many each is."""
        if self.is_merged(row, "count"):
            self.note_at(
                row,
                "count",
                f"one merged cell for several rows ('{self.cell(row, 'count')}' given); write each "
                "row's own count",
            )
            return None
        return super().read_count(row)

    def read_pieces(self) -> tuple[DeliveredPiece, ...]:
        """Read every row; what is wrong in one is noted and left open in it."""
        self.note_strange()
        self.left = [row for row in self.rows() if self._is_no_piece(row)]
        self.unsized = []
        if self.header.find("id") is None:
            for column in ("width", "height"):
                if self.header.find(column) is None:
                    what = f"no column '{column}'; {NEEDED}"
                    self.unsized.append((-1, Fault(self.place(self.header.row), what)))
        left = {row.number for row in self.left}
        self.pieces = [row for row in self.rows() if row.number not in left]
        pieces = tuple(self._read_piece(place, row) for place, row in enumerate(self.pieces))
        if not pieces:
            self.note(self.header.row, None, "a list without rows; one row a piece is needed")
        if sum(piece.count or 1 for piece in pieces) > MOST_ROWS:
            self.note(self.header.row, None, f"over {MOST_ROWS} pieces, which are allowed")
        self.faults += find_twice(pieces)
        self.check_units()
        return pieces

    def left_columns(self) -> Iterator[LeftColumn]:
        """Yield the columns from which nothing is read, with their cells of the pieces."""
        for place, called in self.alone.items():
            cells = ("".join(row.cells[place : place + 1]) for row in self.pieces)
            yield LeftColumn(called, tuple(" ".join(cell.split()) for cell in cells))

    def _read_piece(self, place: int, row: ListRow) -> DeliveredPiece:
        self.check_headings(row)
        if row.number in self._table.struck:
            what = "crossed out; take the row out if it did not come, or the line through it"
            self.note(row.number, None, what)
        name = self._read_id(row)
        boring, hung = self.read_boring(row)
        for column in () if self.cell(row, "id") else ("width", "height"):
            if self.cell(row, column):
                continue
            if self.header.find("id"):
                self.note_at(row, column, f"missing; {NEEDED}")
            elif self.header.find(column):
                where = f"{self.place(row.number)}, column {self._heading(column)}"
                self.unsized.append((place, Fault(where, f"missing; {NEEDED}")))
        piece = DeliveredPiece(
            where=self.place(row.number),
            row=self.row_words(row.number),
            id=name,
            width=self._read_places(row, "width", "width 2", "top and bottom"),
            height=self._read_places(row, "height", "height 2", "left and right"),
            diagonals=self._read_diagonals(row),
            thickness=self.read_size(row, "thickness"),
            count=self.read_count(row),
            note=self.read_text(row, "note"),
            boring=boring,
            hinges_at=hung.hinges_at,
            hidden=self.hidden_of(row),
        )
        self.check_both(row)
        self.take_doubts()  # what is unusual in a piece is held against its order
        return piece

    def _read_id(self, row: ListRow) -> str:
        text = " ".join(self.cell(row, "id").split())
        if len(text) > MOST_ID or not text.isprintable():
            self.note_at(
                row, "id", f"not an ID ({text[:MOST_ID]!r} given); at most {MOST_ID} characters"
            )
            return ""
        return text.upper()

    def _read_places(self, row: ListRow, first: str, second: str, places: str) -> tuple[float, ...]:
        """Read a size taken in one place or in two, from one cell or two."""
        texts = [text.strip() for text in self.cell(row, first).split(";")]
        more = self.cell(row, second)
        if more and not texts[0]:
            self.note_at(row, first, f"missing; {second} ({more!r} given) stands without it")
        if (len(texts) > 1 and more) or len(texts) > 2:
            self.note_at(
                row,
                first,
                f"more than two sizes ({self.cell(row, first)!r} given); allowed: one, or two, "
                f"at {places}",
            )
            return ()
        found = [self.measure(row, first, text) for text in texts if text or len(texts) > 1]
        found += [self.measure(row, second, more)] if more else []
        return tuple(mm for mm in found if mm is not None)

    def _read_diagonals(self, row: ListRow) -> Both | None:
        sizes = self._read_places(row, "diagonal 1", "diagonal 2", "the two diagonals")
        if len(sizes) == 1 and bool(self.cell(row, "diagonal 2")) is False:
            self.note_at(
                row,
                "diagonal 1",
                f"one diagonal alone ({self.cell(row, 'diagonal 1')!r} given); both are needed to "
                "tell whether it is square",
            )
        return (sizes[0], sizes[1]) if len(sizes) == 2 else None
