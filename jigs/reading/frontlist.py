"""A front list: one row a front, as a shop orders them or a supplier offers them.

Rows of one box stand from top to bottom; its fronts share one width, and a pair's row gives the
width of one leaf. Sizes are in the unit that the person or the header names (`width (in)`), else in
mm. A bare list must give every front's width and height; a list that joins a job file's boxes may
leave them to be computed. All faults of a list are reported together, each with its row and column.

What a list does not say and nobody may guess is a question among its faults (`listquestions`); the
answer is a column or a setting of `ListSpec`. What was taken for what is told with either: each
column, the first rows as they were read, what was left alone. It stands before the list's faults
too, so that both are told: what is understood, and what is not.
"""

from collections.abc import Container, Sequence
from pathlib import Path

from msgspec import Struct

from jigs.given.ids import find_clashes, name_fronts, name_parts
from jigs.given.job import Reveal
from jigs.given.listspec import SAME_WIDTH, ListSpec, clear_width, shares_width
from jigs.ground.errors import Fault, ReadingError
from jigs.ground.lengths import Unit, format_length, format_sizes
from jigs.reading.frontboxes import ListedFront
from jigs.reading.frontrows import FrontRows
from jigs.reading.frontsaid import ListAsGiven
from jigs.reading.listahead import MOST_ROWS_TRIED, ahead, find_later
from jigs.reading.listcolumns import FRONT_LIST, column_letter, shorten
from jigs.reading.listquestions import MOST_NAMED, answer, name_rows
from jigs.reading.listrows import choose_table
from jigs.reading.listtable import ListTable
from jigs.reading.tables import read_tables

END_PANELS = (
    'panel_left or panel_right = "flush" or "covered" at its box, where the job file does not say '
    "it yet, makes it a piece with a label, its place on the elevation, and its size in 'jigsheet "
    "parts', against which what came is measured"
)
STILE = (
    "how wide the frame is goes in a column 'stile', and where there is no pane, no in a column "
    "'glass'"
)
FIRST = 2
"""Rows that are shown as they were read."""


class FrontList(Struct, frozen=True, kw_only=True):
    """The rows of a front list, its file, the unit that its bare numbers are in, and in words what
    its columns were taken for."""

    file: str
    unit: Unit
    rows: tuple[ListedFront, ...]
    told: str = ""
    from_bottom: frozenset[str] = frozenset()
    """The boxes whose rows stand from the bottom up in the file; here they are turned."""


def _check_widths(
    rows: Sequence[ListedFront], between: float, unsettled: Container[str]
) -> list[Fault]:
    """Find the fronts whose width differs from that of the first front of their box; `unsettled`:
    boxes of which it is asked first what stands beside what."""
    first: dict[str, ListedFront] = {}
    faults = []
    for row in rows:
        width = clear_width(row.spec, between)
        if not row.box or row.box in unsettled or width is None:
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
    given = ListAsGiven(
        file=str(path), table=table, header=header, spec=spec,
        units=units, unstated=unstated, bare=bare,
    )  # fmt: skip
    reader = FrontRows(given, between)
    rows = reader.read_rows()
    faults = [*reader.faults, *_check_names(rows)]
    if bare:
        faults += _check_widths(rows, between, reader.unsettled)
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


def tell_list(reader: FrontRows, rows: Sequence[ListedFront], *, faults: bool) -> str:
    """Say what a list's columns were taken for, and its first rows as they were read."""
    header = f" (header: {reader.row_words(reader.header.row)})" if reader.header.row else ""
    read = ", ".join(
        f"{column_letter(heading.place)} '{heading.text}' {heading.column}"
        + (f" ({unit})" if (unit := reader.units_of(heading)) else "")
        for heading in reader.read_headings()
    )
    lines = [f"Columns read{header}: {read or 'none'}."]
    if left := reader.left_headings():
        words = [f"{at} '{text}'" if text else f"{at} (no heading)" for at, text in left]
        lines.append(f"Left alone: {', '.join(words)}.")
    if reader.left:
        lines.append(f"No fronts: {_rows(reader)}.")
    if panels := [row.number for row in reader.left if reader.is_end_panel(row)]:
        are = "is an end panel" if len(panels) == 1 else "are end panels"
        rows_words = name_rows(panels)
        lines.append(f"{rows_words[:1].upper()}{rows_words[1:]} {are}: {END_PANELS}.")
    if words := [
        f"'{text}' {kind}{f' hinged {hand}' if (hand := reader.word_of(text).hand) else ''}"
        for text, kind in reader.kinds.items()
        if text.lower() != kind
    ]:
        lines.append(f"Kinds: {_some(words)}.")
    if reader.glazed:
        rows_words = name_rows([*reader.glazed])
        some = "" if all(reader.glazed.values()) else f"; {STILE}"
        lines.append(f"{rows_words[:1].upper()}{rows_words[1:]}: with a pane of glass{some}.")
    if words := [f"'{shorten(text)}' is {name}" for text, name in reader.names.items()]:
        lines.append(f"IDs: {_some(words)}.")
    lines += [f"{remark[:1].upper()}{remark[1:]}." for remark in reader.remarks]
    numbers = {reader.place(row.number): row.number for row in reader.read}
    for row in rows[:FIRST]:
        kind, *sizes = reader.sizes_read[row.where]
        called = "kind not known" if kind is None else row.spec.kind
        if any(sizes):
            number = numbers[row.where]
            cells = [reader.refused(number, column) for column in ("width", "height")]
            shown = _front(row, called, sizes, cells, reader.unit)
            lines.append(f"As read, {reader.row_words(number)}: {shown}.")
    total = len(reader.read)
    wrong = len(reader.faulty & {row.number for row in reader.read})
    if faults:
        rest = f"; {wrong} not, and to be answered" if wrong else "; to be answered"
        lines.append(f"{total - wrong} of {total} rows understood{rest}:")
    return "\n".join(lines)


def _rows(reader: FrontRows) -> str:
    first = [
        f"{reader.row_words(row.number)} '{shorten(reader.called(row))}'" for row in reader.left[:3]
    ]
    more = [row.number for row in reader.left[3:]]
    return ", ".join([*first, *([name_rows(more)] if more else [])])


def _some(words: Sequence[str]) -> str:
    more = f" and {len(words) - MOST_NAMED} more" if len(words) > MOST_NAMED else ""
    return f"{', '.join(words[:MOST_NAMED])}{more}"


def _front(
    row: ListedFront,
    kind: str,
    sizes: Sequence[float | None],
    refused: Sequence[str],
    unit: Unit,
) -> str:
    """Say a front; a size that is refused stands as in its cell."""
    spec = row.spec
    said = [
        spec.id,
        kind,
        *(
            f"'{text}' {word}, which is refused" if text else f"{format_sizes([mm], unit)} {word}"
            for word, mm, text in zip(("wide", "high"), sizes, refused, strict=True)
            if mm is not None
        ),
        f"{row.count} alike" if row.count > 1 else "",
        f"hinged {spec.hinged}" if spec.hinged else "",
        f"box {row.box}" if row.box else "",
    ]
    return ", ".join(filter(None, said))
