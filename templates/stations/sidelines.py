"""The lines of a box's sides: on which boards each is struck, and how cards lie on it there."""

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence

from msgspec import Struct

from jigs.bench.benchpart import BenchPart
from jigs.bench.boxtable import BoxTable, HeightLine
from jigs.bench.station import Row, Setting, Station
from jigs.bench.storystick import SAME_LINE
from jigs.ground.geometry import Hand
from templates.words.rowwords import cross_words
from templates.words.sidewords import BORED, turn_words, used_words


class LineBoard(Struct, frozen=True, kw_only=True):
    """A board of a table at one of its lines."""

    hand: Hand
    part: BenchPart
    height: float
    """Of the line above its end, mm."""
    settings: Sequence[Setting]
    bored: bool
    """Whether its holes there came through from its other face."""


def boards_at(station: Station, table: BoxTable, line: HeightLine) -> list[LineBoard]:
    """Give the boards that have a line, with what is set on it."""
    each_hand: tuple[tuple[Hand, BenchPart | None, float | None], ...] = (
        ("left", table.left, line.left),
        ("right", table.right, line.right),
    )
    boards: list[LineBoard] = []
    for hand, part, height in each_hand:
        if part is None or height is None:
            continue
        bored = part is table.left and line.left_bored
        settings = [] if bored else _settings(station, part, line, height)
        boards.append(
            LineBoard(hand=hand, part=part, height=height, settings=settings, bored=bored)
        )
    return boards


def crosses_at(boards: Iterable[LineBoard]) -> str:
    """Name the crosses that are used on a line; "" where they are not the same for all cards."""
    said = {
        "" if setting.holes is None else cross_words(setting.holes, setting.turned)
        for board in boards
        for setting in board.settings
    }
    return said.pop() if len(said) == 1 else ""


def lying(
    station: Station, boards: Iterable[LineBoard], *, crosses_told: bool = False
) -> list[str]:
    """Say how the cards of a line lie: once where that is the same on both boards."""
    said: dict[tuple[tuple[str, bool], ...], list[Hand]] = {}
    for board in boards:
        ways = [(BORED, True)] if board.bored else _ways(station, board, crosses_told)
        said.setdefault(tuple(ways), []).append(board.hand)
    return [
        ("" if len(said) == 1 else f"{hands[0].upper()}: ")
        + "; ".join(f"{words}{'' if usual else turn_words(hands)}" for words, usual in ways)
        for ways, hands in said.items()
    ]


def _ways(station: Station, board: LineBoard, crosses_told: bool) -> Iterator[tuple[str, bool]]:
    """Name cards with what is used of them and, of pins, the edge; and tell whether one lies as
    the captions say: turned on the right."""
    assert board.part.board is not None, "a table is of boards alone"
    front = board.part.board.side
    for setting in board.settings:
        card = station.card(setting.card)
        words = f"{setting.card}{used_words(card, setting, front, crosses_told=crosses_told)}"
        yield words, setting.turned == (front == "right")


def _settings(station: Station, part: BenchPart, line: HeightLine, height: float) -> list[Setting]:
    """Give the settings that stand on a line of a board."""
    return [
        setting
        for row in rows_on(station, part)
        if row.purpose == line.purpose and (row.serves in line.serves or not line.serves)
        for setting in row.settings
        if setting.y is not None
        and abs(setting.y.of(part.width, part.height) - height) <= SAME_LINE
    ]


def usual_pins(station: Station, table: BoxTable) -> str:
    """Say how the cards lie on most lines of pins, which then name their crosses alone; "" where
    that is said of one line at most, or differs between the boards."""
    said = Counter(
        ways[0]
        for line in table.lines
        if (ways := lying(station, boards_at(station, table, line), crosses_told=True))
        and len(ways) == 1
        and crosses_at(boards_at(station, table, line))
    )
    words, count = next(iter(said.most_common(1)), ("", 0))
    return words if count > 1 else ""


def rows_on(station: Station, part: BenchPart) -> list[Row]:
    """Give the rows of a station that are of one face of a board."""
    return [row for row in station.rows_of_part.get(part.id, ()) if row.part == part]
