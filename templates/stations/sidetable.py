"""The table of a box's sides: every line that is struck across both, from below, lettered."""

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import replace

from jigs.bench.benchpart import BenchPart
from jigs.bench.boxtable import BoxTable, HeightLine, box_tables
from jigs.bench.station import Row, Setting, Station
from jigs.bench.storystick import SAME
from jigs.box.parts import Layout, Side
from jigs.ground.geometry import Hand
from jigs.ground.lengths import format_mm
from templates.cards.ticks import tick_box
from templates.page.marks import MEDIUM, THIN, Line, Mark, Text
from templates.page.pieces import MarkBlock, moved, paragraph
from templates.page.typeface import PITCH, text_width, wrap
from templates.stations.rowfacts import said_in_row
from templates.stations.stationrows import NextCard, open_at
from templates.stations.stationview import Shop
from templates.stations.tablepieces import (
    Stretch,
    TableBlock,
    figure_stretches,
    joined,
    set_stretches,
    size_and_blanks,
    stretches_width,
)
from templates.words.boardfacts import plate_facts, shelf_facts
from templates.words.heightwords import held_lines
from templates.words.hingenames import hinge_words
from templates.words.rowwords import NEXT, open_names
from templates.words.sidewords import (
    BORED,
    beside_table,
    column_title,
    distance_words,
    level_words,
    line_words,
    punch_words,
    sums_of_board,
    turn_words,
    used_words,
)

ROW = 5.4
"""Pitch of the lines of a table, mm."""
COLUMNS = (0.0, 44.0, 90.0, 99.0, 110.0)
"""Where mark and part, the line's height, the two boards to tick, and what is said begin, mm."""


SERVED = 5.5
"""Where the part begins behind the mark, mm."""


def side_blocks(shop: Shop, station: Station, width: float) -> list[TableBlock]:
    """Give the tables of a station's boxes as blocks: a heading each, line after line, sums."""
    blocks: list[TableBlock] = []
    taken = NextCard()
    for table in box_tables((station,)):
        blocks += _table(shop, station, table, taken, width)
    distances = " ".join(distance_words(station, station.rows))
    if distances and blocks:
        told = paragraph(distances, width, bold=True)
        first, *rest = blocks
        blocks = [replace(first, head=joined(told, first.head)), *rest]
    return blocks


def _table(
    shop: Shop, station: Station, table: BoxTable, taken: NextCard, width: float
) -> list[TableBlock]:
    sides = shop.layout.sides
    key = (table.box, table.column)
    head = _heading(table, column_title(table, sides), _told(shop, station, table), width)
    hinges = _hinges(shop.layout, table)
    lines = [_line(hinges, station, table, line, taken, width) for line in table.lines]
    if lines:  # a heading is not left alone at a page's foot
        head = joined(head, lines.pop(0))
    captions = _captions()
    again = joined(captions, _goes_on(column_title(table, sides), width))
    return [
        TableBlock(block=head, head=captions, begins=key),
        *(
            TableBlock(block=each, head=again)
            for each in (*lines, _notes(shop, station, table, width))
        ),
    ]


def _hinges(layout: Layout, table: BoxTable) -> dict[HeightLine, str]:
    """Name the hinge of each line of plates where the doors of a table do not all hang on the same:
    of one alone it is said below the lines."""
    doors = {part for line in table.lines if line.purpose == "plate" for part in line.serves}
    if len({hinge_words(layout, [door]) for door in doors}) < 2:
        return {}
    return {
        line: hinge_words(layout, line.serves) for line in table.lines if line.purpose == "plate"
    }


def _captions() -> MarkBlock:
    """Say once a page what the lines of a table have."""
    y = -3.2
    marks: list[Mark] = []
    captions = ("line, for", "up from the end, struck", "L", "R", "bored; card, on R TURNED")
    for x, text in zip(COLUMNS, captions, strict=True):
        marks.append(Text(x=x, y=y, text=text))
    return MarkBlock(height=-y + 1.2, marks=tuple(marks))


def _told(shop: Shop, station: Station, table: BoxTable) -> list[str]:
    """Say from where heights count, and where the other board's lines stand."""
    key = (table.box, table.column)
    whole = shop.parted.get(key)
    if whole is None or station.name not in whole.stations:
        return [level_words(table)]
    others = (where for name, where in shop.pages.get(key, {}).items() if name != station.name)
    return [level_words(whole), beside_table(table, whole, " and ".join(others))]


def _goes_on(title: str, width: float) -> MarkBlock:
    """Head what goes on from the page before."""
    return MarkBlock(
        height=7.0,
        marks=(
            Line(x1=0.0, y1=-0.6, x2=width, y2=-0.6, width=MEDIUM),
            Text(x=0.0, y=-5.5, text=f"{title}, GOES ON", size=3.5, bold=True),
        ),
    )


def _heading(table: BoxTable, title: str, told: Sequence[str], width: float) -> MarkBlock:
    marks: list[Mark] = [Line(x1=0.0, y1=-0.6, x2=width, y2=-0.6, width=MEDIUM)]
    y = -5.5
    marks.append(Text(x=0.0, y=y, text=title, size=3.5, bold=True))
    x = max(COLUMNS[1], text_width(title, 3.5, True) + 4.0)
    boards = [part for part in (table.left, table.right) if part is not None]
    alike = len({(format_mm(part.width), format_mm(part.height)) for part in boards}) == 1
    for number, part in enumerate(boards):
        y -= PITCH if number else 0.0
        words = f"{part.id} {part.code}"
        marks.append(Text(x=x, y=y, text=words))
        after = max(COLUMNS[4], x + text_width(words, 2.5) + 2.0)
        size = size_and_blanks(part, y, told=alike and number > 0)
        marks += moved(size.marks, after, 0.0)
    y -= 0.8
    for text in wrap(" ".join(filter(None, told)), 2.5, True, width - 2.0):
        y -= PITCH
        marks.append(Text(x=2.0, y=y, text=text, bold=True))
    return MarkBlock(height=-y + 1.2, marks=tuple(marks))


def _line(
    hinges: Mapping[HeightLine, str],
    station: Station,
    table: BoxTable,
    line: HeightLine,
    taken: NextCard,
    width: float,
) -> MarkBlock:
    """Lay out a line: its height once where both boards have it alike, and a box for each board."""
    marks: list[Mark] = [Line(x1=0.0, y1=0.0, x2=width, y2=0.0, width=THIN)]
    y = -4.3
    marks += set_stretches([Stretch(line.mark, 3.5, True)], COLUMNS[0], y)
    served = wrap(", ".join(line.serves) or "pins", 2.5, False, COLUMNS[1] - SERVED - 1.0)
    for number, text in enumerate(served):
        marks.append(Text(x=SERVED, y=y - number * PITCH, text=text))
    each_hand: tuple[tuple[Hand, float, BenchPart | None, float | None], ...] = (
        ("left", COLUMNS[2], table.left, line.left),
        ("right", COLUMNS[3], table.right, line.right),
    )
    boards = [
        (hand, x, part, height)
        for hand, x, part, height in each_hand
        if part is not None and height is not None
    ]
    heights = [line.above_panel if table.assembled else height for _, _, _, height in boards]
    alike = not table.assembled and max(heights) - min(heights) <= SAME
    fresh: list[str] = []
    said: dict[tuple[tuple[str, bool], ...], list[Hand]] = {}
    for row, ((hand, x, part, height), up) in enumerate(zip(boards, heights, strict=True)):
        low = y if alike else y - row * ROW
        bored = part is table.left and line.left_bored
        settings = [] if bored else _settings(station, part, line, height)
        fresh += [f"{NEXT} {each.card}" for each in settings if taken.is_next(each)]
        ways = ((BORED, True),) if bored else tuple(_ways(station, settings, part))
        said.setdefault(ways, []).append(hand)
        marks += [] if bored else [tick_box(x, low - 0.3)]
        if alike and row:
            continue
        named = [] if alike else [Stretch(hand.upper())]
        pieces = [*named, *figure_stretches(up), Stretch("", tick=True)]
        assert stretches_width(pieces, 1.0) < COLUMNS[2] - COLUMNS[1], (
            "the column holds every figure"
        )
        marks += set_stretches(pieces, COLUMNS[1], low, 1.0)
    words = [(text, True) for text in dict.fromkeys(fresh)]
    words += [
        (("" if len(said) == 1 else f"{hands[0].upper()}: ") + _said(ways, hands), False)
        for ways, hands in said.items()
    ]
    if extra := line_words(line, brief=True) or hinges.get(line, ""):
        last = words.pop()[0]
        words.append((f"{last}, {extra}", False))
    deepest = y if alike else y - (len(boards) - 1) * ROW
    deepest = min(deepest, y - (len(served) - 1) * PITCH)
    at = y
    for text, bold in words:
        for part_of in wrap(text, 2.5, bold, width - COLUMNS[4]):
            marks.append(Text(x=COLUMNS[4], y=at, text=part_of, bold=bold))
            deepest, at = min(deepest, at), at - PITCH
    return MarkBlock(height=max(ROW, -deepest + 1.2), marks=tuple(marks))


def _settings(station: Station, part: BenchPart, line: HeightLine, height: float) -> list[Setting]:
    """Give the settings that stand on a line of a board."""
    return [
        setting
        for row in _rows(station, part)
        if row.purpose == line.purpose and (row.serves in line.serves or not line.serves)
        for setting in row.settings
        if setting.y is not None and abs(setting.y.of(part.width, part.height) - height) <= SAME
    ]


def _ways(
    station: Station, settings: Sequence[Setting], part: BenchPart
) -> Iterator[tuple[str, bool]]:
    """Name cards with what is used of them and, of pins, the edge; and tell whether one lies as
    the captions say: turned on the right."""
    assert part.board is not None, "a table is of boards alone"
    front = part.board.side
    for setting in settings:
        words = f"{setting.card}{used_words(station.card(setting.card), setting, front)}"
        yield words, setting.turned == (front == "right")


def _said(ways: Iterable[tuple[str, bool]], hands: Collection[Hand]) -> str:
    """Say how the cards of a line lie on some boards, each where it is not as the captions say."""
    return "; ".join(f"{words}{'' if usual else turn_words(hands)}" for words, usual in ways)


def _sides(shop: Shop, table: BoxTable) -> list[Side]:
    """Give the boards of a table as they are laid out, without what is held back."""
    boards = [(part.id, part.board) for part in (table.left, table.right) if part is not None]
    faces = [(name, board.column, board.side) for name, board in boards if board is not None]
    return [side for side in shop.layout.sides if (side.board, side.column, side.side) in faces]


def _plates(shop: Shop, table: BoxTable) -> Iterator[str]:
    """Say how high the plates are, and for which doors unless they are the same for all."""
    facts = [*plate_facts(shop.layout, *_sides(shop, table))]
    alike = [*plate_facts(shop.layout, *_sides(shop, table), named=False)]
    yield from (fact.text for fact in (alike if len(alike) == 1 else facts))


def _both(shop: Shop, table: BoxTable) -> list[Side]:
    """Give both boards of a table's column, also where nothing is bored in one."""
    column = (table.box, table.column)
    return [side for side in shop.layout.sides if (side.box, side.column) == column]


def _rows(station: Station, part: BenchPart) -> list[Row]:
    return [row for row in station.rows if row.part == part]


def _notes(shop: Shop, station: Station, table: BoxTable, width: float) -> MarkBlock:
    """The sums that close, punch to punch, what is open, to be known of the boards, or held, and
    where fixed shelves stand."""
    rows = [row for part in (table.left, table.right) if part for row in _rows(station, part)]
    numbers = tuple(dict.fromkeys(number for row in rows for number in row.open))
    notes = [
        *sums_of_board(table),
        *punch_words(table, rows),
        *([open_names(numbers)] if numbers and set(numbers) != set(open_at(station)) else []),
        *_plates(shop, table),
        *dict.fromkeys(text for row in rows for text in said_in_row(shop, row)),
    ]
    held = held_lines(table, shop.layout.job.shown)
    marks: list[Mark] = [Line(x1=0.0, y1=0.0, x2=width, y2=0.0, width=THIN)]
    y = 0.0
    shelves = shelf_facts(*_both(shop, table))
    loud = ((text, True) for text in (*shelves, *held))
    for text, bold in (*((text, False) for text in notes), *loud):
        for line in wrap(text, 2.5, bold, width - 2.0):
            y -= PITCH
            marks.append(Text(x=2.0, y=y - 0.2, text=line, bold=bold))
    return MarkBlock(height=-y + 3.0, marks=tuple(marks))
