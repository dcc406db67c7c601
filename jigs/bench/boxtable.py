"""The table of a box: every line that is struck on the two boards of a column, from below.

All lines of a pair are struck across both at once, then all marked, then all bored with one stop.
Heights count from each board's own end, and from the bottom panel's upper face, on which a
partition stands.
"""

from collections.abc import Iterable, Sequence

from msgspec import Struct, field
from msgspec.structs import replace

from jigs.bench.benchpart import BenchPart, Board
from jigs.bench.sides import CROSSES, MARKS
from jigs.bench.station import Row, Setting, Station
from jigs.bench.storystick import SAME_LINE, Spacer
from jigs.ground.geometry import Purpose


class HeightLine(Struct, frozen=True, kw_only=True):
    """A line across the boards of a column."""

    mark: str
    """S, P or N: slide, plate, pin."""
    purpose: Purpose
    serves: tuple[str, ...]
    """The fronts or the rollout that it serves: of a pair's plates both doors; () for pins."""
    above_panel: float
    """Above the bottom panel's upper face, mm."""
    left: float | None = None
    """Above the end of the board on the left of the column, mm; None where it is not on it."""
    right: float | None = None
    left_bored: bool = False
    """Whether its holes in the board on the left came through from that partition's other face."""
    spacer: Spacer | None = None
    """The board that holds a drawer's slides level, standing on the bottom panel."""
    crosses: tuple[int, ...] = ()
    """Of a pin line: which pins are bored, counted up from the line (0 lies on it)."""


class BoxTable(Struct, frozen=True, kw_only=True):
    """The lines of one column of a box."""

    box: str
    column: int
    left: BenchPart | None
    """The board on the left of the column, None where nothing is bored in it."""
    right: BenchPart | None
    lines: tuple[HeightLine, ...]
    """From below."""
    held: tuple[Row, ...] = ()
    """What is held back, whose lines are to come."""
    stations: tuple[str, ...] = ()
    """At which stations its boards are bored; several where the stops differ."""

    @property
    def assembled(self) -> bool:
        """Whether the box is together: nothing is struck across both boards."""
        return any(_board(part).assembled for part in (self.left, self.right) if part)

    @property
    def strokes(self) -> int:
        """How many lines are struck: one for both boards, in a box that is together one on each."""
        boards = [
            (line.left is not None and not line.left_bored) + (line.right is not None)
            for line in self.lines
        ]
        return sum(boards) if self.assembled else sum(count > 0 for count in boards)


class _Column(Struct):
    parts: dict[str, BenchPart] = field(default_factory=dict)
    lines: list[HeightLine] = field(default_factory=list)
    held: list[Row] = field(default_factory=list)
    stations: dict[str, None] = field(default_factory=dict)


def box_tables(stations: Iterable[Station]) -> tuple[BoxTable, ...]:
    """Give the table of each column of each box, from the rows of the stations for sides, in their
    order."""
    columns: dict[tuple[str, int], _Column] = {}
    for station in stations:
        if station.work != "sides":
            continue
        for row in station.rows:
            board = _board(row.part)
            column = columns.setdefault((row.part.box, board.column), _Column())
            column.parts[board.side] = row.part
            column.stations[station.name] = None
            if row.held:
                column.held.append(row)
            for setting in row.settings:
                _add(column.lines, row, setting)
    return tuple(
        BoxTable(
            box=box,
            column=number,
            left=column.parts.get("left"),
            right=column.parts.get("right"),
            lines=tuple(sorted(column.lines, key=lambda line: line.above_panel)),
            held=tuple(column.held),
            stations=tuple(column.stations),
        )
        for (box, number), column in columns.items()
    )


def parted_tables(stations: Sequence[Station]) -> dict[tuple[str, int], BoxTable]:
    """Give by box and column the tables whose boards are bored at several stations: each line is
    struck across both at once all the same. A board that is bored through from its other face, or
    held back, has no lines of its own."""
    bare = [
        replace(station, rows=tuple(r for r in station.rows if r.settings and not r.bored))
        for station in stations
    ]
    return {
        (table.box, table.column): table
        for table in box_tables(bare)
        if len(table.stations) > 1 and table.left and table.right and not table.assembled
    }


def _board(part: BenchPart) -> Board:
    assert part.board is not None, "a table is of boards alone"
    return part.board


def _add(lines: list[HeightLine], row: Row, setting: Setting) -> None:
    """Add the line of a setting, or its height on the other board to the line that is there."""
    assert setting.y is not None, "on sides every card is set on a line"
    board = _board(row.part)
    height = setting.y.of(row.part.width, row.part.height)
    line = HeightLine(
        mark=MARKS[row.purpose],
        purpose=row.purpose,
        serves=(row.serves,) if row.serves else (),
        above_panel=height - board.panel,
        spacer=row.spacer,
        crosses=_crosses(setting),
    )
    there = next((other for other in lines if _is_one(other, line, board)), None)
    if there is not None:
        lines.remove(there)
        line = replace(
            there,
            serves=tuple(dict.fromkeys((*there.serves, *line.serves))),
            crosses=tuple(sorted({*there.crosses, *line.crosses})),
        )
    on_board = {board.side: height}
    lines.append(
        replace(
            line,
            left=on_board.get("left", line.left),
            right=on_board.get("right", line.right),
            left_bored=line.left_bored or row.bored,
        )
    )


def _is_one(there: HeightLine, line: HeightLine, board: Board) -> bool:
    """Tell whether a line of a board is one that is there: of what it serves, or of a pair's other
    door, whose plates the other board alone has at this height."""
    if there.purpose != line.purpose or abs(there.above_panel - line.above_panel) > SAME_LINE:
        return False
    free = (there.left if board.side == "left" else there.right) is None
    return there.serves == line.serves or (line.purpose == "plate" and free)


def _crosses(setting: Setting) -> tuple[int, ...]:
    """Which crosses of the pin card are bored, counted up from its line as it lies."""
    way = -1 if setting.turned else 1
    return tuple(sorted(way * (index - CROSSES) for index in setting.holes or ()))
