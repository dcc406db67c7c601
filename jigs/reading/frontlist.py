"""A front list: one row a front, as a shop orders them or a supplier offers them.

Rows of one box stand from top to bottom; its fronts share one width, and a pair's row gives the
width of one leaf. Sizes are in the unit that the person or the header names (`width (in)`), else in
mm. A bare list must give every front's width and height; a list that joins a job file's boxes may
leave them to be computed. All faults of a list are reported together, each with its row and column.

What a list does not say and nobody may guess is a question among its faults (`listquestions`); the
answer is a column or a setting of `ListSpec`. What was taken for what is told with either.
"""

from collections.abc import Sequence
from pathlib import Path

from msgspec import Struct

from jigs.given.ids import find_clashes, name_fronts, name_parts
from jigs.given.job import Reveal
from jigs.given.listspec import SAME_WIDTH, ListSpec, clear_width, shares_width
from jigs.ground.errors import Fault, ReadingError
from jigs.ground.lengths import Unit, format_length
from jigs.reading.frontboxes import ListedFront
from jigs.reading.frontrows import FrontRows
from jigs.reading.listahead import MOST_ROWS_TRIED, ahead, find_later
from jigs.reading.listcolumns import FRONT_LIST
from jigs.reading.listquestions import answer
from jigs.reading.listrows import choose_table
from jigs.reading.listtable import ListTable
from jigs.reading.listtold import tell_list
from jigs.reading.tables import read_tables


class FrontList(Struct, frozen=True, kw_only=True):
    """The rows of a front list, its file, the unit that its bare numbers are in, and in words what
    its columns were taken for."""

    file: str
    unit: Unit
    rows: tuple[ListedFront, ...]
    told: str = ""
    from_bottom: frozenset[str] = frozenset()
    """The boxes whose rows stand from the bottom up in the file; here they are turned."""


def _check_widths(rows: Sequence[ListedFront], between: float) -> list[Fault]:
    """Find the fronts whose width differs from that of the first front of their box."""
    first: dict[str, ListedFront] = {}
    faults = []
    for row in rows:
        width = clear_width(row.spec, between)
        if not row.box or width is None:
            continue
        above = first.setdefault(row.box, row)
        wanted = clear_width(above.spec, between) or width
        if not shares_width(row.spec, above.spec, between):
            turned = row.spec.height is not None and abs(row.spec.height - wanted) <= SAME_WIDTH
            faults.append(
                Fault(
                    row.where,
                    ("width and height exchanged? " if turned else "")
                    + f"different widths in box {row.box} ({format_length(width, 'mm')} given, "
                    f"{format_length(wanted, 'mm')} at {above.where}); the fronts of a box share "
                    "one width, and a pair's row gives the width of one leaf",
                )
            )
    return faults


def read_front_list(
    path: Path,
    units: Unit | None = None,
    *,
    listed: ListSpec | None = None,
    bare: bool = True,
    between: float = Reveal().between,
    unstated: Unit = "mm",
) -> FrontList:
    """Read a front list; `units` overrules what its header says, `unstated` holds if it is silent.

    `listed`: what is stated of its columns and cells. `bare`: the list stands alone, so that width
    and height are needed and the widths in one box are compared, with the gap `between` the leaves
    of a pair (mm). Raises ReadingError.
    """
    said, tables = listed or ListSpec(), read_tables(path)

    def read(spec: ListSpec) -> FrontList:
        return _read(path, tables, spec, units, bare, unstated, between)

    def faults_by(spec: ListSpec) -> Sequence[Fault]:
        try:
            read(spec)
        except ReadingError as error:
            return error.faults
        return ()

    try:
        return read(said)
    except ReadingError as error:
        faults = error.faults

        def say_ahead() -> str:
            trying = sum(len(table.rows) for table in tables) <= MOST_ROWS_TRIED
            later = find_later(faults_by, said, faults, trying=trying)
            return ahead(faults, later, said, bare=bare)

        error.ahead = say_ahead
        raise


def _read(
    path: Path,
    tables: Sequence[ListTable],
    spec: ListSpec,
    units: Unit | None,
    bare: bool,
    unstated: Unit,
    between: float,
) -> FrontList:
    """Read the tables of a file as a person says. Raises ReadingError."""
    table, header = choose_table(
        path,
        tables,
        FRONT_LIST,
        called="front list",
        needs="kind, width and height",
        spec=spec,
        remedy=answer(("width", "C"), ("height", "D"), bare=bare),
    )
    reader = FrontRows(str(path), table, header, spec, units, bare, unstated, between)
    rows = reader.read_rows()
    faults = [*reader.faults, *_check_names(rows)]
    if bare:
        faults += _check_widths(rows, between)
    told = tell_list(reader, rows, faults=bool(faults))
    if faults:
        raise ReadingError(faults, told)
    return FrontList(
        file=str(path),
        unit=reader.unit,
        rows=tuple(rows),
        told=told,
        from_bottom=frozenset(reader.from_bottom),
    )


def _check_names(rows: Sequence[ListedFront]) -> tuple[Fault, ...]:
    """Find the clashes among the IDs that were given."""
    return find_clashes(
        (part, row.where)
        for row in rows
        if row.spec.id
        for front in name_fronts(row.spec.id, box="", place=0, count=row.count)
        for part in name_parts(front, row.spec.kind)
    )
