"""The heights of a job's boxes as a list: every line that is struck on the two boards of a column.

The same lines, letters and sums as the tables at the stations, for whoever drills without cards,
and to check a pair of boards by. Millimetres first, as all that is bored.
"""

from collections.abc import Iterable, Iterator

from jigs.bench.benchpart import BenchPart
from jigs.bench.boxtable import BoxTable, HeightLine
from jigs.bench.station import Station
from jigs.box.parts import Layout
from jigs.ground.lengths import format_mm
from templates.lists.listing import (
    Column,
    Group,
    Listing,
    Section,
    Shown,
    Table,
    TableRow,
    Words,
    shown,
    sizes_shown,
)
from templates.words.boardfacts import plate_facts, shelf_facts, spacer_facts
from templates.words.heightwords import (
    HOW,
    LETTERS,
    TABLE,
    across_words,
    board_line,
    by_hand_lines,
    held_lines,
    open_lines,
    pins_words,
)
from templates.words.hingenames import hinges_of_lines
from templates.words.sidewords import column_title, level_words, spacer_words, sums_of_board

COLUMNS = (
    Column(head="line"),
    Column(head="for"),
    Column(head="LEFT, up", measured=True, ticks="filled"),
    Column(head="RIGHT, up", measured=True, ticks="filled"),
    Column(head="over panel"),
    Column(head="", runs_on=True),
)


def heights_listing(
    tables: Iterable[BoxTable], layout: Layout, stations: Iterable[Station] = ()
) -> Listing:
    """List the lines of boxes; of boards with holes by hand, at which of the stations these are."""
    groups = tuple(_group(table, layout) for table in tables)
    words = tuple(Words(text=text) for text in (*HOW, LETTERS))
    table = Table(columns=COLUMNS, groups=groups)
    by_hand = tuple(Words(text=text, stamp=True) for text in by_hand_lines(stations))
    return Listing(
        title="Heights",
        job=layout.job.name,
        sections=(Section(blocks=words), Section(title=TABLE, blocks=(table, *by_hand))),
    )


def _group(table: BoxTable, layout: Layout) -> Group:
    boards = ", ".join(board_line(part) for part in (table.left, table.right) if part is not None)
    title = f"{column_title(layout, table)}. {boards}"
    level, hinges = level_words(table), hinges_of_lines(layout, table)
    return Group(
        title=f"{title}. {level}" if level else title,
        rows=tuple(_row(table, line, hinges.get(line, "")) for line in table.lines),
        notes=tuple(_notes(table, layout)),
    )


def _row(table: BoxTable, line: HeightLine, hinge: str) -> TableRow:
    def height(part: BenchPart | None, value: float | None) -> Shown:
        if part is None or value is None:
            return Shown("")
        return sizes_shown((line.above_panel if table.assembled else value,), "mm", named=False)

    said = filter(None, (spacer_words(line), pins_words(line.crosses), hinge))
    return TableRow(
        cells=(
            *shown(line.mark, ", ".join(line.serves) or "pins"),
            height(table.left, line.left),
            height(table.right, line.right),
            *shown("" if table.assembled else format_mm(line.above_panel), ", ".join(said)),
        )
    )


def _notes(table: BoxTable, layout: Layout) -> Iterator[Words]:
    sides = layout.sides_of.get((table.box, table.column), [])
    served = {name for line in table.lines for name in line.serves}
    for text in (*shelf_facts(*sides), *spacer_facts(served, *sides)):
        yield Words(text=text, stamp=True)
    for text in (*sums_of_board(table), *across_words(sides)):
        yield Words(text=text)
    if len(layout.hinges) > 1:
        for plates in plate_facts(layout, *sides):
            yield Words(text=plates.text)
    for text in (*open_lines(sides), *held_lines(table, layout.job.shown)):
        yield Words(text=text, stamp=True)
