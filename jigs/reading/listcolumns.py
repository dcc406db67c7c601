"""The columns of a list: their names and the usual synonyms, and the row they stand in.

Columns stand in any order and are matched without case. A size's column may name its unit:
`width (in)`. The header is looked for under title rows.

>>> FRONT_LIST.read("Width (in)")
('width', 'in')
>>> FRONT_LIST.read("Qty.")
('count', None)
"""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Literal

from jigs.given.stated import FivePieceSpec
from jigs.ground.believable import EDGE_RADIUS, FRONT_BOARD, IN_BOX, TAB, Range
from jigs.ground.keys import keys_of
from jigs.ground.lengths import BareUnit
from jigs.ground.nearest import suggest
from jigs.reading.fieldkeys import ANY_FRONT
from jigs.reading.tables import ListRow

ListColumn = Literal[
    "id", "box", "kind", "width", "height", "count", "hinged", "thickness", "stile", "pull",
    "finish", "note", "rail", "groove", "panel", "glass", "edge radius", "profile", "bored",
    "hinges at", "bored tab",
]  # fmt: skip

FOR_THE_SUPPLIER = (
    "pieces to make", "place", "grain", "increment (mm)", "tolerance (mm)", "state", "open",
    "description",
)  # fmt: skip
"""Columns of a supplier's list that are for people's eyes: nothing is read from them."""

SYNONYMS: Mapping[str, tuple[str, ...]] = {
    "id": ("front", "front id", "mark", "tag", "label", "part"),
    "box": ("box id", "cabinet", "cab", "carcase", "carcass"),
    "kind": ("type", "front type", "front kind"),
    "width": ("w", "wide", "front width", "finished width"),
    "height": ("h", "high", "front height", "finished height"),
    "count": ("qty", "quantity", "pcs", "pieces", "amount"),
    "hinged": ("hinge", "hinges", "hinge side", "hand", "handing", "hung", "swing"),
    "thickness": ("t", "thick", "thk"),
    "stile": ("stiles", "stile width"),
    "pull": ("pulls", "handle", "handles"),
    "finish": ("colour", "color", "paint"),
    "note": ("notes", "remark", "remarks", "comment", "comments"),
    "rail": ("rails", "rail width"),
    "groove": ("groove depth",),
    "panel": ("panel thickness",),
    "glass": ("glazed",),
    "edge radius": ("radius",),
    "profile": ("edge profile",),
    "bored": ("boring",),
    "hinges at": ("cups at",),
    "bored tab": (),
    "other": FOR_THE_SUPPLIER,
}

_FRAME = keys_of(FivePieceSpec)
SIZES: Mapping[ListColumn, Range] = {
    "width": ANY_FRONT.width, "height": ANY_FRONT.height, "thickness": FRONT_BOARD,
    "stile": _FRAME["stile"].within, "rail": _FRAME["rail"].within,
    "groove": _FRAME["groove"].within, "panel": _FRAME["panel"].within,
    "edge radius": EDGE_RADIUS, "hinges at": IN_BOX, "bored tab": TAB,
}  # fmt: skip
"""The columns of lengths, whose headings may name a unit; where each is believed."""

OTHER = "other"
"""Columns that a list may have and that nobody reads; any number of them."""

MOST_TITLE_ROWS = 50
"""Rows above the header that are looked through for it."""

_UNITS: Mapping[str, BareUnit] = {
    "mm": "mm", "millimetres": "mm", "millimeters": "mm",
    "cm": "cm", "centimetres": "cm", "centimeters": "cm",
    "in": "in", "inch": "in", "inches": "in", '"': "in", "″": "in", "”": "in",
}  # fmt: skip
_WITH_UNIT = re.compile(
    rf"(.+?)[ ,:/_]*[(\[]? *({'|'.join(sorted(_UNITS, key=len, reverse=True))}) *\.?[)\]]?"
)


class ColumnNames:
    """The columns that one kind of list may have, with their synonyms; `sizes` are lengths, each
    with the range in which it is believed."""

    def __init__(self, synonyms: Mapping[str, tuple[str, ...]], sizes: Mapping[Any, Range]) -> None:
        self.known = tuple(name for name in synonyms if name != OTHER)
        self.sizes: Mapping[str, Range] = dict(sizes)
        self._columns = {
            name: column for column, others in synonyms.items() for name in (column, *others)
        }

    def read(self, text: str) -> tuple[str | None, BareUnit | None]:
        """Give the column that a heading means, and the unit it names."""
        name = " ".join(text.lower().replace("_", " ").split()).rstrip(".: ")
        if name in self._columns:
            return self._columns[name], None
        if found := _WITH_UNIT.fullmatch(name):
            column = self._columns.get(found[1].rstrip(". "))
            if column in self.sizes:
                return column, _UNITS[found[2]]
        return None, None


FRONT_LIST = ColumnNames(SYNONYMS, SIZES)


@dataclass(frozen=True, slots=True, kw_only=True)
class ListHeading:
    """One column: what it holds, what it is called in the file, its place (0-based), its unit."""

    column: str
    text: str
    place: int
    unit: BareUnit | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Header:
    """The header's row: its number, its cells, its columns, and the headings not understood.

    `strange` pairs a heading that is unknown, or stood before, with what is wrong with it.
    """

    row: int
    cells: tuple[str, ...]
    headings: tuple[ListHeading, ...]
    strange: tuple[tuple[str, str], ...] = ()

    def find(self, column: str) -> ListHeading | None:
        """Give the heading of a column, None where the list has no such column."""
        return next((h for h in self.headings if h.column == column), None)


def find_header(rows: Sequence[ListRow], names: ColumnNames = FRONT_LIST) -> Header | None:
    """Find the row with the most known headings, two or more; None where there is none."""
    best, most = None, 1
    for row in rows[:MOST_TITLE_ROWS]:
        known = sum(names.read(cell)[0] is not None for cell in row.cells if len(cell) <= 40)
        if known > most:
            best, most = row, known
    return None if best is None else _read_header(best, names)


def _read_header(row: ListRow, names: ColumnNames) -> Header:
    headings: list[ListHeading] = []
    strange: list[tuple[str, str]] = []
    for place, cell in enumerate(row.cells):
        text = shorten(cell)
        column, unit = names.read(cell)
        if not cell:
            continue
        if column is None:
            strange.append((text, f"unknown column ('{text}' given); {suggest(cell, names.known)}"))
        elif column != OTHER and any(h.column == column for h in headings):
            strange.append((text, f"a second column for {column} ('{text}' given); keep one"))
        else:
            headings.append(ListHeading(column=column, text=text, place=place, unit=unit))
    return Header(row=row.number, cells=row.cells, headings=tuple(headings), strange=tuple(strange))


def shorten(text: str) -> str:
    """Give a cell's text on one line of at most 40 characters, for a message."""
    words = " ".join(text[:200].split())
    return words if len(words) <= 40 else words[:37] + "..."
