"""A list for people, as a value: sections of tables and sentences.

It is written once for a screen (`listtext`) and once for paper (`listpages`): both say the same
figures. What only paper needs, boxes to tick and codes to hold against a label, are columns that a
screen leaves out.
"""

from collections.abc import Iterable
from typing import Literal

from msgspec import Struct

from jigs.ground.lengths import Unit, format_inches, format_mm

TickedWhere = Literal["", "each", "filled"]
"""Which cells of a column have a box to tick on paper: none, all, or those that say something."""


class Shown(Struct, frozen=True):
    """What a cell says; `other`: the same in the other unit, in brackets on a screen and small on
    paper."""

    text: str
    other: str = ""

    def __str__(self) -> str:
        """Give both in one line."""
        return f"{self.text} ({self.other})" if self.other else self.text


NOTHING = Shown("")
"""An empty cell: a long list has more of these than of others."""


class Column(Struct, frozen=True, kw_only=True):
    """A column of a table."""

    head: str = ""
    right: bool = False
    """Whether its cells stand to the right."""
    measured: bool = False
    """Whether its figures are set on a saw or held against a tape: they are large on paper."""
    runs_on: bool = False
    """Of the last one: whether it goes on under itself where a line is full."""
    paper: bool = False
    """Whether it stands on paper alone."""
    ticks: TickedWhere = ""


class TableRow(Struct, frozen=True, kw_only=True):
    """A line of a table, a cell for each column, and what is to be said under it."""

    cells: tuple[Shown, ...]
    note: str = ""


class Words(Struct, frozen=True, kw_only=True):
    """A sentence or two; on a screen its lines are indented, those after the first by `hang`
    more."""

    text: str
    indent: int = 0
    hang: int = 2
    stamp: bool = False
    """Whether it must be seen before anything is done: bold on paper."""


class Group(Struct, frozen=True, kw_only=True):
    """Rows under one title, and sentences that stand under them."""

    rows: tuple[TableRow, ...]
    title: str = ""
    notes: tuple[Words, ...] = ()


class Table(Struct, frozen=True, kw_only=True):
    """Groups of rows in common columns; a column that says nothing in any row is left out."""

    columns: tuple[Column, ...]
    groups: tuple[Group, ...]
    heads: bool = True
    """Whether a screen shows the heads of the columns; paper always does."""

    @property
    def rows(self) -> tuple[TableRow, ...]:
        """All rows, in order."""
        return tuple(row for group in self.groups for row in group.rows)

    def filled(self, *, paper: bool) -> tuple[int, ...]:
        """Give the places of the columns that are shown."""
        return tuple(
            at
            for at, column in enumerate(self.columns)
            if (paper or not column.paper)
            and (column.ticks == "each" or any(row.cells[at].text for row in self.rows))
        )


class Section(Struct, frozen=True, kw_only=True):
    """A part of a list."""

    blocks: tuple[Table | Words, ...]
    title: str = ""


class Listing(Struct, frozen=True, kw_only=True):
    """A whole list: what it is called on paper, whose it is, and its sections."""

    title: str
    job: str
    sections: tuple[Section, ...]


def shown(*cells: str) -> tuple[Shown, ...]:
    """Give plain texts as cells."""
    return tuple(Shown(cell) if cell else NOTHING for cell in cells)


def sizes_shown(sizes: Iterable[float], unit: Unit, *, named: bool = True) -> Shown:
    """Show sizes (mm) in the job's unit, and in the other one beside.

    >>> sizes_shown((409.6, 88.9), "in")
    Shown(text='16 1/8 x 3 1/2 in', other='409.6 x 88.9 mm')
    """
    sizes = tuple(sizes)
    metric, inches = " x ".join(map(format_mm, sizes)), " x ".join(map(format_inches, sizes))
    if named:
        metric, inches = f"{metric} mm", f"{inches} in"
    return Shown(inches, metric) if unit == "in" else Shown(metric, inches)
