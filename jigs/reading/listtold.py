"""What a list was taken for, in words: each column, its first rows as they were read, what was left
alone. It stands before the list's faults too, so that both are told: what is understood, and what
is not.
"""

from collections.abc import Sequence

from jigs.ground.lengths import Unit, format_sizes
from jigs.reading.frontboxes import ListedFront
from jigs.reading.frontrows import FrontRows
from jigs.reading.listcolumns import column_letter, shorten
from jigs.reading.listquestions import MOST_NAMED, name_rows

END_PANELS = (
    'panel_left or panel_right = "flush" or "covered" at its box, where the job file does not say '
    "it yet, makes it a piece with a label, its place on the elevation, and its size in 'jigsheet "
    "parts', against which what came is measured"
)
FIRST = 2
"""Rows that are shown as they were read."""


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
