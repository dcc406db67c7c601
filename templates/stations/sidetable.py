"""The table of a box's sides: every line that is struck across both, from below, lettered."""

from jigs.bench.benchpart import BenchPart
from jigs.bench.boxtable import BoxTable, HeightLine, box_tables
from jigs.bench.station import Row, Station
from jigs.bench.storystick import SAME
from jigs.ground.lengths import format_mm
from templates.page.marks import MEDIUM, THIN, Line, Mark, Text
from templates.page.pieces import MarkBlock, moved
from templates.page.typeface import PITCH, wrap
from templates.stations.stationrows import (
    Stretch,
    TableBlock,
    figure_stretches,
    open_at,
    set_stretches,
    stretches_width,
)
from templates.stations.stationview import Shop
from templates.words.openwords import open_line
from templates.words.rowwords import YOURS, setting_name, warning_words
from templates.words.sidewords import (
    beside_words,
    column_title,
    level_words,
    line_words,
    punch_words,
    sums_of_board,
)

ROW = 5.4
"""Pitch of the lines of a table, mm."""
COLUMNS = (0.0, 46.0, 90.0, 134.0)
"""Where mark and part, the left board, the right board, and what is said begin, mm."""
CAPTIONS = ("line, for", "LEFT, up: line, bored", "RIGHT, up: line, bored", "card")
"""What the columns are called."""


def side_blocks(shop: Shop, station: Station, width: float) -> list[TableBlock]:
    """Give the tables of a station's boxes as blocks: a heading each, line after line, sums."""
    blocks: list[TableBlock] = []
    for table in box_tables((station,)):
        blocks += _table(station, table, width)
    return blocks


def _table(station: Station, table: BoxTable, width: float) -> list[TableBlock]:
    head = _heading(table, width)
    lines = [_line(station, table, line, width) for line in table.lines]
    if lines:  # a heading is not left alone at a page's foot
        head = _joined(head, lines.pop(0))
    again = _captions(f"{column_title(table)}, GOES ON", width)
    return [
        TableBlock(block=head),
        *(TableBlock(block=each, again=again) for each in (*lines, _notes(station, table, width))),
    ]


def _captions(title: str, width: float) -> MarkBlock:
    """Head what goes on from the page before."""
    y = -10.1
    return MarkBlock(
        height=-y + 1.2,
        marks=(
            Line(x1=0.0, y1=-0.6, x2=width, y2=-0.6, width=MEDIUM),
            Text(x=0.0, y=-5.5, text=title, size=3.5, bold=True),
            *(Text(x=x, y=y, text=text) for x, text in zip(COLUMNS, CAPTIONS, strict=True)),
        ),
    )


def _heading(table: BoxTable, width: float) -> MarkBlock:
    marks: list[Mark] = [Line(x1=0.0, y1=-0.6, x2=width, y2=-0.6, width=MEDIUM)]
    y = -5.5
    marks.append(Text(x=0.0, y=y, text=column_title(table), size=3.5, bold=True))
    for part in (table.left, table.right):
        if part is None:
            continue
        assert part.board is not None, "a table is of boards alone"
        words = f"{part.board.side.upper()}: {part.id}, code {part.code}, {_size(part)}{YOURS}"
        y -= PITCH
        marks.append(Text(x=2.0, y=y, text=words, bold=False))
    for text in wrap(level_words(table), 2.5, True, width - 2.0):
        y -= PITCH
        marks.append(Text(x=2.0, y=y, text=text, bold=True))
    y -= PITCH + 0.6
    for x, text in zip(COLUMNS, CAPTIONS, strict=True):
        marks.append(Text(x=x, y=y, text=text))
    return MarkBlock(height=-y + 1.2, marks=tuple(marks))


def _size(part: BenchPart) -> str:
    return f"{format_mm(part.width)} deep x {format_mm(part.height)} high"


def _line(station: Station, table: BoxTable, line: HeightLine, width: float) -> MarkBlock:
    marks: list[Mark] = [Line(x1=0.0, y1=0.0, x2=width, y2=0.0, width=THIN)]
    y = -4.3
    marks += set_stretches(
        [Stretch(line.mark, 3.5, True), Stretch(line.serves or "pins")], COLUMNS[0], y
    )
    words: list[str] = []
    for x, hand, part, height in (
        (COLUMNS[1], "LEFT", table.left, line.left),
        (COLUMNS[2], "RIGHT", table.right, line.right),
    ):
        if part is None or height is None:
            continue
        value = line.above_panel if table.assembled else height
        pieces = [*figure_stretches(value), Stretch("", tick=True), Stretch("", tick=True)]
        assert stretches_width(pieces) < 44.0, "the columns hold every figure"
        marks += set_stretches(pieces, x, y, 1.0)
        cards = dict.fromkeys(_cards(station, part, line, height))
        words.append(f"{hand}: {'; '.join(cards)}")
    words += filter(None, [line_words(line)])
    wrapped = [text for each in words for text in wrap(each, 2.5, False, width - COLUMNS[3])]
    for row, text in enumerate(wrapped):
        y = -4.3 - row * PITCH
        marks.append(Text(x=COLUMNS[3], y=y, text=text))
    return MarkBlock(height=max(ROW, -y + 1.2), marks=tuple(marks))


def _cards(station: Station, part: BenchPart, line: HeightLine, height: float) -> list[str]:
    """Name the settings that stand on a line of a board."""
    return [
        setting_name(setting) + beside_words(setting)
        for row in _rows(station, part)
        if (row.purpose, row.serves) == (line.purpose, line.serves)
        for setting in row.settings
        if setting.y is not None and abs(setting.y.of(part.width, part.height) - height) <= SAME
    ]


def _rows(station: Station, part: BenchPart) -> list[Row]:
    return [row for row in station.rows if row.part == part]


def _notes(station: Station, table: BoxTable, width: float) -> MarkBlock:
    """The sums that close, punch to punch, what is open, held, or to be known of the boards."""
    rows = [row for part in (table.left, table.right) if part for row in _rows(station, part)]
    numbers = tuple(dict.fromkeys(number for row in rows for number in row.open))
    notes = [
        *sums_of_board(table),
        *punch_words(rows),
        *([open_line(numbers)] if numbers and set(numbers) != set(open_at(station)) else []),
        *dict.fromkeys(text for row in rows for text in warning_words(row.warnings)),
    ]
    held = [
        f"HOLD {row.serves}: {' '.join(problem.text for problem in row.held)}" for row in table.held
    ]
    marks: list[Mark] = [Line(x1=0.0, y1=0.0, x2=width, y2=0.0, width=THIN)]
    y = 0.0
    for text, bold in (*((n, False) for n in notes), *((h, True) for h in dict.fromkeys(held))):
        for line in wrap(text, 2.5, bold, width - 2.0):
            y -= PITCH
            marks.append(Text(x=2.0, y=y - 0.2, text=line, bold=bold))
    return MarkBlock(height=-y + 3.0, marks=tuple(marks))


def _joined(first: MarkBlock, second: MarkBlock) -> MarkBlock:
    """Set one block right below another, never parted."""
    return MarkBlock(
        height=first.height + second.height,
        marks=(*first.marks, *moved(second.marks, 0.0, -first.height)),
    )
