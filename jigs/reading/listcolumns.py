"""The columns of a list: which heading is which, and where the header stands.

Columns stand in any order. The header is looked for under title rows; it may have two rows, of
which the second may name units alone.

>>> FRONT_LIST.read("Width (in)")
Heading(column='width', unit='in', order=())
>>> FRONT_LIST.read("Qty.").column, column_letter(27)
('count', 'AB')
"""

from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from msgspec import Struct

from jigs.given.stated import FivePieceSpec
from jigs.ground.believable import EDGE_RADIUS, FRONT_BOARD, IN_BOX, TAB, Range
from jigs.ground.keys import keys_of
from jigs.ground.nearest import suggest
from jigs.reading.fieldkeys import ANY_FRONT
from jigs.reading.headings import (
    LENGTH,
    LIST_COLUMNS,
    OTHER,
    POSITION,
    Heading,
    HeadUnit,
    fold,
    like_heading,
    read_heading,
    read_unit,
)
from jigs.reading.listtable import ListRow

_FRAME = keys_of(FivePieceSpec)
SIZES: Mapping[str, Range] = {
    "width": ANY_FRONT.width, "height": ANY_FRONT.height, "thickness": FRONT_BOARD,
    "stile": _FRAME["stile"].within, "rail": _FRAME["rail"].within,
    "groove": _FRAME["groove"].within, "panel": _FRAME["panel"].within,
    "edge radius": EDGE_RADIUS, "hinges at": IN_BOX, "bored tab": TAB,
}  # fmt: skip
"""The columns of lengths, whose headings may name a unit; where each is believed."""

MOST_TITLE_ROWS = 50
"""Rows above the header that are looked through for it."""
LEAST_HEADER = 3
"""Headings of a row that is taken for a header further down."""
LONGEST_HEADING = 40
"""Characters of a cell that may be a heading."""


class ColumnNames:
    """The columns that one kind of list may have: `sizes` are lengths, each with the range in which
    it is believed, `synonyms` its own words; `shared`: those of `headings.toml` that it takes, all
    others there are columns that it leaves alone."""

    def __init__(
        self,
        synonyms: Mapping[str, tuple[str, ...]],
        sizes: Mapping[Any, Range],
        shared: Iterable[str] = (),
    ) -> None:
        self.shared = frozenset(shared)
        self.known = tuple(dict.fromkeys(name for name in (*synonyms, *shared) if name != OTHER))
        self.sizes: Mapping[str, Range] = dict(sizes)
        self._columns = {
            fold(name): column for column, others in synonyms.items() for name in (column, *others)
        }

    def read(self, text: str) -> Heading | None:
        """Give what a heading means, None where it is not understood."""
        folded = fold(text)
        if column := self._columns.get(folded):
            return Heading(column)
        before, unit = read_unit(folded)
        if unit and (sized := self._columns.get(before)) in self.sizes and sized:
            return Heading(sized, unit)
        found = read_heading(text) if self.shared else None
        if found is None:
            return None
        if found.column not in self.shared:
            return None if found.column in (LENGTH, "size") else Heading(OTHER)
        if found.unit and found.column not in self.sizes and found.column != "size":
            return None
        return found


FRONT_LIST = ColumnNames({}, SIZES, (*LIST_COLUMNS, POSITION, LENGTH))


class ListHeading(Struct, frozen=True, kw_only=True):
    """One column: what it holds, what it is called in the file, its place (0-based), its unit, the
    order of the sizes in its cells; whether a person stated it."""

    column: str
    text: str
    place: int
    unit: HeadUnit | None = None
    order: tuple[str, ...] = ()
    stated: bool = False

    @property
    def name(self) -> str:
        """What it is called in a message."""
        return self.text or column_letter(self.place)


class Unread(Struct, frozen=True, kw_only=True):
    """A heading from which nothing is read: `twice`, the column that an earlier one is too; `like`,
    the one whose word it is like."""

    text: str
    place: int
    twice: str = ""
    like: str = ""


class Header(Struct, frozen=True, kw_only=True):
    """The header: its row, 0 for none, and the last row that belongs to it; its cells, its columns,
    and the headings from which nothing is read."""

    row: int
    last: int
    cells: tuple[str, ...]
    headings: tuple[ListHeading, ...]
    unread: tuple[Unread, ...] = ()

    def find(self, column: str) -> ListHeading | None:
        """Give the heading of a column, None where the list has no such column."""
        return next((h for h in self.headings if h.column == column), None)


def column_letter(place: int) -> str:
    """Give a column's letter as a spreadsheet has it; `place` from 0."""
    more, rest = divmod(place, 26)
    return (column_letter(more - 1) if more else "") + chr(ord("A") + rest)


def find_header(rows: Sequence[ListRow], names: ColumnNames = FRONT_LIST) -> Header | None:
    """Find the row with the most known headings, two or more; None where there is none."""
    best, most = None, 1
    for at, row in enumerate(rows[:MOST_TITLE_ROWS]):
        known = _count_known(row, names)
        if known > most:
            best, most = at, known
    return None if best is None else _join_header(rows, best, names)


def _count_known(row: ListRow, names: ColumnNames) -> int:
    return sum(names.read(cell) is not None for cell in row.cells if len(cell) <= LONGEST_HEADING)


def _all_known(row: ListRow, names: ColumnNames) -> bool:
    return all(names.read(cell) or not cell for cell in row.cells)


def _join_header(rows: Sequence[ListRow], best: int, names: ColumnNames) -> Header:
    """Read a header with the row above it or below it that belongs to it."""
    top = last = rows[best]
    cells, units = list(top.cells), [""] * len(top.cells)
    if best and rows[best - 1].number == top.number - 1:
        above = rows[best - 1]
        if _count_known(above, names) > 1 and _all_known(above, names):
            cells = _over(cells, above.cells)
    below = rows[best + 1] if best + 1 < len(rows) else None
    if below and below.number == last.number + 1 and any(below.cells):
        if all(_only_unit(cell) for cell in below.cells if cell):
            last, units = below, _over(list(below.cells), units)
        elif below.cells != top.cells and _all_known(below, names):
            last, cells = below, _over(list(below.cells), cells)
    return read_header(cells, names, row=top.number, last=last.number, units=units)


def _only_unit(cell: str) -> HeadUnit | None:
    before, unit = read_unit(f"x {fold(cell)}")
    return unit if before == "x" else None


def _over(cells: list[str], others: Sequence[str]) -> list[str]:
    """Give the cells of a row, and where it has none, those of another."""
    cells = cells + [""] * (len(others) - len(cells))
    return [cell or (others[i] if i < len(others) else "") for i, cell in enumerate(cells)]


def read_header(
    cells: Sequence[str], names: ColumnNames, *, row: int, last: int, units: Sequence[str] = ()
) -> Header:
    """Read the cells of a header; the first of two that mean one column is that column."""
    headings: list[ListHeading] = []
    unread: list[Unread] = []
    for place, cell in enumerate(cells):
        text = shorten(cell)
        if not cell:
            continue
        found = names.read(cell)
        unit = _only_unit(units[place]) if place < len(units) else None
        if found is None:
            like = like_heading(cell) if names.shared else ""
            unread.append(Unread(text=text, place=place, like=like))
        elif found.column not in (OTHER, POSITION) and any(
            h.column == found.column for h in headings
        ):
            unread.append(Unread(text=text, place=place, twice=found.column))
        else:
            heading = ListHeading(
                column=found.column, text=text, place=place, unit=found.unit or unit,
                order=found.order,
            )  # fmt: skip
            headings.append(heading)
    return Header(
        row=row, last=last, cells=tuple(cells), headings=tuple(headings), unread=tuple(unread)
    )


def rows_below(
    rows: Iterable[ListRow], header: Header, names: ColumnNames
) -> tuple[tuple[ListRow, ...], int]:
    """Give the rows below a header, which may be repeated on each page, down to one whose columns
    stand otherwise, and the number of that one's row; 0 where there is none."""
    own = _read_again(ListRow(header.row, header.cells), names)
    units = {heading.place: heading.unit for heading in header.headings}
    below: list[ListRow] = []
    for row in rows:
        if row.number <= header.last or row.cells == header.cells:
            continue
        again = _read_again(row, names)
        if not again:
            below.append(row)
        elif not all(
            place in own and _says_same(found, own[place], units.get(place))
            for place, found in again.items()
        ):
            return tuple(below), row.number
    return tuple(below), 0


def _says_same(again: Heading, own: Heading, unit: HeadUnit | None) -> bool:
    """Tell whether a heading further down says what its column's own does, or less; `unit`: the one
    that the column is read in."""
    return (
        again.column == own.column
        and again.unit in (None, own.unit, unit)
        and again.order in ((), own.order)
    )


def _read_again(row: ListRow, names: ColumnNames) -> dict[int, Heading]:
    """Give the columns of a row that is a header by itself; empty for any other."""
    if any(letter.isdigit() for cell in row.cells for letter in cell):
        return {}
    read = {place: names.read(cell) for place, cell in enumerate(row.cells) if cell}
    found = {place: heading for place, heading in read.items() if heading}
    sized = {"width", "height", "size"} & {heading.column for heading in found.values()}
    return found if len(found) == len(read) >= LEAST_HEADER and sized else {}


def strange_headings(header: Header, names: ColumnNames) -> list[tuple[str, str]]:
    """Give the headings that are not understood, each with what is wrong with it."""
    return [
        (
            heading.text,
            f"a second column for {heading.twice} ('{heading.text}' given); keep one"
            if heading.twice
            else f"unknown column ('{heading.text}' given); {suggest(heading.text, names.known)}",
        )
        for heading in header.unread
    ]


def shorten(text: str) -> str:
    """Give a cell's text on one line of at most 40 characters, for a message."""
    words = " ".join(text[:200].split())
    return words if len(words) <= 40 else words[:37] + "..."
