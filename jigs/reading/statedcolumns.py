"""Columns that a person states, where no heading tells or where it tells wrong (`ListSpec`).

A column is where it is said to be, by a spreadsheet's letter, by its number or by its heading, with
a unit behind it or without. A list without a header is read by its columns alone.

>>> read_where("width", "C (in)", ())
Stated(column='width', place=2, heading='', unit='in')
>>> read_where("box", "Schrank", ()).heading
'Schrank'
"""

import re
from collections.abc import Mapping, Sequence

from msgspec import Struct
from msgspec.structs import replace

from jigs.given.listspec import NOTHING
from jigs.ground.lengths import show_value
from jigs.ground.nearest import suggest
from jigs.reading.headings import HEAD_UNITS, OTHER, HeadUnit, fold, read_unit
from jigs.reading.listcolumns import (
    MOST_TITLE_ROWS,
    ColumnNames,
    Header,
    ListHeading,
    column_letter,
    find_header,
    read_header,
    shorten,
)
from jigs.reading.listtable import ListRow

_LETTERS = "[A-Za-z]{1,2}"
_DIGITS = "[0-9]{1,3}"
_QUOTED = r"""(?s)(?P<mark>["'])(?P<text>.*)(?P=mark)"""
_WITH_UNIT = rf"(?P<where>.+?)\s*[(\[]\s*(?P<unit>{'|'.join(HEAD_UNITS)})\s*[)\]]"


class Stated(Struct, frozen=True):
    """Where a person says that a column stands: its `place` (0-based), or its heading; its unit."""

    column: str
    place: int | None
    heading: str
    unit: HeadUnit | None = None


def read_where(column: str, where: str, cells: Sequence[str]) -> Stated:
    """Read where a column stands; a heading that one of the cells has stands before its unit."""
    quoted = re.fullmatch(_QUOTED, where)
    if quoted or any(fold(cell) == fold(where) for cell in cells if len(fold(where)) > 2):
        return Stated(column, None, quoted["text"] if quoted else where)
    unit = None
    if found := re.fullmatch(_WITH_UNIT, where):
        unit = next(unit for unit in HEAD_UNITS if unit == found["unit"])
        where = found["where"]
    if re.fullmatch(_LETTERS, where):
        place = 0
        for letter in where.upper():
            place = place * 26 + ord(letter) - ord("A") + 1
        return Stated(column, place - 1, "", unit)
    if re.fullmatch(_DIGITS, where):
        return Stated(column, int(where) - 1, "", unit)
    quoted = re.fullmatch(_QUOTED, where)
    return Stated(column, None, quoted["text"] if quoted else where, unit)


def settle_columns(
    header: Header, names: ColumnNames, columns: Mapping[str, Sequence[str]], width: int
) -> tuple[Header, list[str]]:
    """Give a header with the columns that a person stated, and what is wrong with what was said;
    `width`: how many columns the list has."""
    wrong: list[str] = []
    headings = [h for h in header.headings if h.column not in columns]
    unread = [u for u in header.unread if u.twice not in columns]
    for column, places in columns.items():
        for where in places:
            stated = read_where(column, where, header.cells)
            place = _find_place(stated, header.cells, width)
            if place is None:
                known = [cell for cell in header.cells if cell]
                hint = (
                    f"the list's last column is {column_letter(width - 1)}; a heading "
                    "so short stands in quotes"
                    if stated.place is not None
                    else suggest(stated.heading, known)
                )
                wrong.append(f"{column}: no such column ({show_value(where)} given); {hint}")
                continue
            text = shorten(header.cells[place]) if place < len(header.cells) else ""
            read = next((h for h in header.headings if h.place == place), None)
            headings = [h for h in headings if h.place != place or h.stated]
            unread = [u for u in unread if u.place != place]
            if column == NOTHING:
                headings.append(ListHeading(column=OTHER, text=text, place=place, stated=True))
            else:
                own = read_unit(fold(text))[1]
                before = read or ListHeading(column=column, text=text, place=place, unit=own)
                named = replace(before, column=column, stated=True)
                headings.append(replace(named, unit=stated.unit or before.unit))
    taken = {h.column for h in headings}
    for other in [u for u in unread if u.twice and u.twice not in taken]:
        # Of two headings for one column the first was said to be another: this one stands in.
        unread.remove(other)
        meant = names.read(other.text)
        unit = meant.unit if meant else None
        headings.append(
            ListHeading(column=other.twice, text=other.text, place=other.place, unit=unit)
        )
    settled = replace(
        header, headings=tuple(sorted(headings, key=lambda h: h.place)), unread=tuple(unread)
    )
    return settled, wrong


def _find_place(stated: Stated, cells: Sequence[str], width: int) -> int | None:
    if stated.place is not None:
        return stated.place if 0 <= stated.place < width else None
    wanted = fold(stated.heading)
    return next((at for at, cell in enumerate(cells) if fold(cell) == wanted), None)


def head_list(
    rows: Sequence[ListRow], names: ColumnNames, columns: Mapping[str, Sequence[str]]
) -> Header | None:
    """Find a list's header, by what its columns are said to be where they have no known headings;
    None where it has neither."""
    if header := find_header(rows, names):
        return header
    if not columns:
        return None
    stated = [read_where(column, where, ()) for column, all_ in columns.items() for where in all_]
    called = {fold(one.heading) for one in stated if one.place is None}
    for row in rows[:MOST_TITLE_ROWS]:
        if called and called <= {fold(cell) for cell in row.cells}:
            return read_header(row.cells, names, row=row.number, last=row.number)
    sizes = [
        one.place
        for one in stated
        if one.place is not None and (one.column in names.sizes or one.column == "size")
    ]
    for at, row in enumerate(rows[:MOST_TITLE_ROWS]):
        if not called and sizes and all(_has_digit(row, place) for place in sizes):
            above = rows[at - 1] if at else None
            if above and above.number == row.number - 1 and len(above.cells) > max(sizes):
                return read_header(above.cells, names, row=above.number, last=above.number)
            cells = [""] * max(len(row.cells) for row in rows)
            return Header(row=0, last=row.number - 1, cells=tuple(cells), headings=())
    return None


def _has_digit(row: ListRow, place: int) -> bool:
    return place < len(row.cells) and any(letter.isdigit() for letter in row.cells[place])
