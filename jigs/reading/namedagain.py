"""Fronts of a list that the job file names again in a `[[box.front]]` of its own.

A front of a list is written in its row alone: what else is to be said of it is a column there. A
table in the job file that has its ID would be a second front, and is refused with the row where it
stands and what may be said there.
"""

from collections.abc import Mapping, Sequence

from msgspec import Struct

from jigs.given.job import FrontKind
from jigs.reading.headings import LIST_COLUMNS
from jigs.reading.tomltables import TomlTable

_UNNAMED = ("id", "kind")
"""Keys of a front's table that need no column to be said in its row."""


class RowFront(Struct, frozen=True, kw_only=True):
    """A front as a list by itself would name it."""

    id: str
    box: str
    kind: FrontKind
    where: str
    """Its file and row."""
    own: bool
    """Whether its row gives the ID; else it is made of its box and place."""
    alike: int
    """How many fronts its row stands for."""


def refuse_named_again(row: TomlTable, box: str, listed: Mapping[str, RowFront]) -> bool:
    """Note the table of a front that the list has already. A front of another kind whose ID the
    list merely would have made is another front."""
    given = row.peek("id")
    front = listed.get(given.strip().upper()) if isinstance(given, str) else None
    if front is None:
        if "kind" in row:
            return False
        beside = [one for one in listed.values() if one.box == box]
        if not beside:
            return False
        row.book.note(
            row.path,
            f"kind is missing; it must be given for one more front. Is it one of the list's, "
            f"{_name_some(beside)}? {_remedy(row, box)}",
        )
        return True
    if "kind" in row and not front.own and row.peek("kind") != front.kind:
        return False
    row.note(
        "id",
        f"{front.id} is a front of the list already ({front.where}), and no front is written "
        f"twice. {_remedy(row, box, front.alike)} One more front has another id, and its kind",
    )
    return True


def _name_some(fronts: Sequence[RowFront]) -> str:
    """Name the fronts that a list hangs on a box, each with its place in the file."""
    most = 3
    shown = ", ".join(f"{front.id} ({front.where})" for front in fronts[:most])
    return f"{shown} and {len(fronts) - most} more" if len(fronts) > most else shown


def _remedy(row: TomlTable, box: str, alike: int = 1) -> str:
    """Say how what a table states is said of a front of a list, of which its row makes `alike`."""
    keys = [key for key in row.keys if key not in _UNNAMED]
    columns = {key: name for key in keys if (name := key.replace("_", " ")) in LIST_COLUMNS}
    if others := [key for key in keys if key not in columns]:
        return (
            f"A list has no column for {', '.join(others)}: take the rows of box {box} out of it, "
            "and write all fronts of the box here, from the top, each with its kind and sizes."
        )
    part = f" Its row stands for {alike} fronts: give this one a row of its own." * (alike > 1)
    if not columns:
        return f"Take this table out: what is to be said of the front stands in its row.{part}"
    named = ", ".join(f"'{name.capitalize()}'" for name in columns.values())
    many = "the columns" if len(columns) > 1 else "the column"
    return f"Take this table out, and say it in the list's row, in {many} {named}.{part}"
