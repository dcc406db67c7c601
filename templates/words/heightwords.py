"""What a person reads in the list of a job's heights, besides the tables at the stations."""

from collections.abc import Iterable, Iterator, Sequence

from jigs.bench.benchpart import BenchPart
from jigs.bench.boxtable import BoxTable
from jigs.bench.sides import MARKS
from jigs.bench.station import Station
from jigs.box.parts import Side
from jigs.ground.lengths import Unit, format_mm
from templates.words.openwords import open_line
from templates.words.saying import facts_of
from templates.words.stationwords import station_title

TABLE = "Lines of each box, from below"
HOW = (
    "Lay the two boards of a column like an open book, inside up, tops away from you, bottoms to "
    "one stop, FRONT edges touching: the RIGHT side lies on your LEFT. Strike each line across "
    "both at once, mark all, then bore all with one stop.",
    "A height counts from the board's own end; over panel: from the bottom panel's upper "
    "face, where a spacer stands. The last figure of a sum is the board's height: if your board "
    "differs, measure from its bottom end.",
)
LETTERS = "S: slide. P: hinge plate. N: shelf pins. Tick a height when its line is struck."


def board_line(part: BenchPart) -> str:
    """Name a board with its code and its size: `LEFT: B1-SIDE-L, code M2QX, 584.2 deep by ...`."""
    assert part.board is not None, "a table is of boards alone"
    size = f"{format_mm(part.width)} deep by {format_mm(part.height)} high"
    return f"{part.board.side.upper()}: {part.id}, code {part.code}, {size}"


def pins_words(crosses: Sequence[int]) -> str:
    """Say which holes of a row of pins are bored, counted up from its line.

    >>> pins_words((-1, 0, 1, 2)), pins_words((-3, 0))
    ('holes -1 to +2, 32 apart', 'holes -3, 0, 32 apart')
    """
    if not crosses:
        return ""
    names = [f"{each:+d}" if each else "0" for each in crosses]
    if len(names) > 2 and crosses[-1] - crosses[0] == len(names) - 1:
        names = [f"{names[0]} to {names[-1]}"]
    return f"holes {', '.join(names)}, 32 apart"


def across_words(sides: Iterable[Side]) -> Iterator[str]:
    """Say how far from the finished front edge the holes on the lines stand: those of all that
    stand alike together."""
    found: dict[tuple[str, str], set[float]] = {}
    for side in sides:
        for fitting in side.fittings:
            for hole in fitting.holes:
                if hole.purpose in MARKS:
                    key = MARKS[hole.purpose], fitting.part or ""
                    found.setdefault(key, set()).add(round(hole.x, 4))
    alike: dict[tuple[str, tuple[float, ...]], list[str]] = {}
    for (mark, part), xs in found.items():
        alike.setdefault((mark, tuple(sorted(xs))), []).append(part)
    several = {mark for mark, _ in alike if sum(mark == other for other, _ in alike) > 1}
    said = [
        f"{_of(mark, parts if mark in several else ())} {' and '.join(map(format_mm, xs))}"
        for (mark, xs), parts in alike.items()
    ]
    if said:
        yield f"From the finished FRONT edge: {'; '.join(said)}."


def _of(mark: str, parts: Sequence[str]) -> str:
    return f"{mark} ({', '.join(parts)})" if parts else mark


def open_lines(sides: Iterable[Side]) -> Iterator[str]:
    """Say on which open numbers the holes of a column's boards rest."""
    numbers = tuple(dict.fromkeys(number for side in sides for number in side.open))
    if numbers:
        yield f"{open_line(numbers)}."


def held_lines(table: BoxTable, unit: Unit) -> Iterator[str]:
    """Say whose lines are to come, and why."""
    yield from dict.fromkeys(f"HOLD {row.serves}: {facts_of(row.held, unit)}" for row in table.held)


def by_hand_lines(stations: Iterable[Station]) -> Iterator[str]:
    """Say which boards have holes by hand, that stand in no table, and at which stations."""
    for station in stations:
        boards = dict.fromkeys(
            row.part.id for row in station.rows if row.part.board and not row.held
        )
        if station.work == "by-hand" and boards:
            yield f"{', '.join(boards)}: holes BY HAND, at station {station_title(station)}."
