"""The table of a box's sides: every line that is struck across both, from below, lettered; what
most of a station's tables say alike stands once, above them."""

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence

from msgspec import Struct
from msgspec.structs import replace

from jigs.bench.boxtable import BoxTable, HeightLine, box_tables
from jigs.bench.station import Station
from jigs.bench.storystick import SAME_LINE
from jigs.box.parts import Side
from jigs.ground.lengths import format_mm
from templates.page.marks import MEDIUM, THIN, Line, Mark, Text
from templates.page.pieces import MarkBlock, moved, paragraph
from templates.page.tickbox import tick_box
from templates.page.typeface import PITCH, text_width, wrap
from templates.stations.rowfacts import SEVERAL, open_line_of, said_in_row
from templates.stations.sidelines import boards_at, crosses_at, lying, rows_on, usual_pins
from templates.stations.stationrows import NextCard
from templates.stations.stationview import Shop
from templates.stations.tablepieces import (
    Span,
    TableBlock,
    figure_spans,
    joined,
    set_spans,
    size_and_blanks,
    spans_width,
)
from templates.words.boardfacts import plate_facts, shelf_facts, spacer_facts
from templates.words.heightwords import held_lines
from templates.words.hingenames import hinges_of_lines
from templates.words.rowwords import NEXT, UP
from templates.words.sidewords import (
    beside_table,
    column_title,
    each_pin_words,
    level_words,
    punch_words,
    spacer_words,
    spacers_stand,
    sums_of_board,
    unless_said,
)

ROW = 5.4
"""Pitch of the lines of a table, mm."""
COLUMNS = (0.0, 38.0, 90.0, 99.0, 110.0)
"""Where mark and part, the line's height, the two boards to tick, and what is said begin, mm."""


UP_FROM, END = f"{UP} UP FROM", "BOTTOM END"
"""Over the heights of lines, and the end that they count from."""
SERVED = 5.5
"""Where the part begins behind the mark, mm."""


class _Once(Struct, frozen=True, kw_only=True):
    """What is said once for all tables of a station, and then in none; "" where they differ."""

    panels: bool
    """Whether some boxes stand already: each table then says from where its heights count."""

    pins: str
    """How the cards lie on lines of pins: on each page."""
    plates: str
    """How high the plates are, where a box does not say it: above the first table."""


def side_blocks(shop: Shop, station: Station, width: float) -> Iterator[TableBlock]:
    """Give the tables of a station's boxes as blocks: a heading each, line after line, sums."""
    taken = NextCard()
    tables = box_tables((station,))
    once = _told_once(shop, station, tables)
    above = [spacers_stand(station.rows), unless_said(once.plates) if once.plates else ""]
    words = " ".join(filter(None, above))
    for table in tables:
        for block in _table(shop, station, table, once, taken, width):
            if words:  # before the first one alone
                told = paragraph(words, width, bold=True)
                block = replace(block, head=joined(told, block.head))
                words = ""
            yield block


def _told_once(shop: Shop, station: Station, tables: Sequence[BoxTable]) -> _Once:
    """Find what stands once for all tables: how pins lie where all boxes with pins have it so, how
    high plates are where several boxes have nothing else."""
    pins = [
        usual_pins(station, table)
        for table in tables
        if any(line.purpose == "shelf" for line in table.lines)
    ]
    boards = (row.part.board for row in station.rows)
    plates = Counter(texts[0] for table in tables if len(texts := [*_plates(shop, table)]) == 1)
    text, count = next(iter(plates.most_common(1)), ("", 0))
    return _Once(
        panels=any(board is not None and board.assembled for board in boards),
        pins=pins[0] if len(pins) > 1 and len({*pins}) == 1 else "",
        plates=text if count >= SEVERAL else "",
    )


def _table(
    shop: Shop, station: Station, table: BoxTable, once: _Once, taken: NextCard, width: float
) -> list[TableBlock]:
    title, key = column_title(shop.layout, table), (table.box, table.column)
    pins = usual_pins(station, table)
    told = [each_pin_words(pins)] if pins and not once.pins else []
    if once.panels and not table.assembled:
        told.insert(0, f"Heights {UP_FROM} {END}.")
    head = _heading(table, title, [*_told(shop, station, table), *told], width)
    hinges = hinges_of_lines(shop.layout, table)
    lines = [_line(hinges, pins, station, table, line, taken, width) for line in table.lines]
    if lines:  # a heading is not left alone at a page's foot
        head = joined(head, lines.pop(0))
    captions = _captions(panels=once.panels)
    if once.pins:
        captions = joined(paragraph(each_pin_words(once.pins), width, bold=True), captions)
    again = joined(captions, _goes_on(title, told, width))
    return [
        TableBlock(block=head, head=captions, begins=key),
        *(
            TableBlock(block=each, head=again)
            for each in (*lines, _notes(shop, station, table, once, width))
        ),
    ]


def _captions(*, panels: bool) -> MarkBlock:
    """Say once a page what the lines of a table have; `panels`: where some boxes are already
    together, each table says by itself from where its heights count."""
    y = -3.2
    marks: list[Mark] = []
    up = f"{UP} UP" if panels else f"{UP_FROM} {END}"
    captions = ("line, for", f"{up}; struck", "L", "R", "bored; card, on R TURNED")
    for place, (x, text) in enumerate(zip(COLUMNS, captions, strict=True)):
        marks.append(Text(x=x, y=y, text=text, bold=place == 1))
    return MarkBlock(height=-y + 1.2, marks=tuple(marks))


def _told(shop: Shop, station: Station, table: BoxTable) -> list[str]:
    """Say from where heights count, and where the other board's lines stand."""
    key = (table.box, table.column)
    whole = shop.parted.get(key)
    if whole is None or station.name not in whole.stations:
        return [level_words(table)]
    others = (where for name, where in shop.pages.get(key, {}).items() if name != station.name)
    return [level_words(whole), beside_table(table, whole, " and ".join(others))]


def _goes_on(title: str, told: Sequence[str], width: float) -> MarkBlock:
    """Head what goes on from the page before."""
    marks: list[Mark] = [
        Line(x1=0.0, y1=-0.6, x2=width, y2=-0.6, width=MEDIUM),
        Text(x=0.0, y=-5.5, text=f"{title}, GOES ON", size=3.5, bold=True),
    ]
    y = _set_told(marks, told, -5.5, width)
    return MarkBlock(height=1.5 - y, marks=tuple(marks))


def _set_told(marks: list[Mark], told: Iterable[str], y: float, width: float) -> float:
    """Set what a table says first below a base line, and give the last base line."""
    for text in filter(None, told):
        for line in wrap(text, 2.5, True, width - 2.0):
            y -= PITCH
            marks.append(Text(x=2.0, y=y, text=line, bold=True))
    return y


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
    y = _set_told(marks, told, y - 0.8, width)
    return MarkBlock(height=-y + 1.2, marks=tuple(marks))


def _line(
    hinges: Mapping[HeightLine, str],
    pins: str,
    station: Station,
    table: BoxTable,
    line: HeightLine,
    taken: NextCard,
    width: float,
) -> MarkBlock:
    """Lay out a line: its height once where both boards have it alike, and a box for each board."""
    marks: list[Mark] = [Line(x1=0.0, y1=0.0, x2=width, y2=0.0, width=THIN)]
    y = -4.3
    marks += set_spans([Span(line.mark, 3.5, True)], COLUMNS[0], y)
    served = wrap(", ".join(line.serves) or "pins", 2.5, False, COLUMNS[1] - SERVED - 1.0)
    for number, text in enumerate(served):
        marks.append(Text(x=SERVED, y=y - number * PITCH, text=text))
    boards = boards_at(station, table, line)
    heights = [line.above_panel if table.assembled else board.height for board in boards]
    alike = not table.assembled and max(heights) - min(heights) <= SAME_LINE
    cards = {each.card for board in boards for each in board.settings}
    fresh: list[str] = []
    for row, (board, up) in enumerate(zip(boards, heights, strict=True)):
        low = y if alike else y - row * ROW
        fresh += [
            NEXT if len(cards) == 1 else f"{NEXT} {each.card}"
            for each in board.settings
            if taken.is_next(each)
        ]
        x = COLUMNS[2] if board.hand == "left" else COLUMNS[3]
        marks += [] if board.bored else [tick_box(x, low - 0.3)]
        if alike and row:
            continue
        named = [] if alike else [Span(board.hand.upper())]
        pieces = [*named, *figure_spans(up, f"{UP} "), Span("", tick=True)]
        assert spans_width(pieces, 1.0) < COLUMNS[2] - COLUMNS[1], "the column holds every figure"
        marks += set_spans(pieces, COLUMNS[1], low, 1.0)
    words = [(text, True) for text in dict.fromkeys(fresh)]
    crosses = crosses_at(boards)
    as_told = crosses and lying(station, boards, crosses_told=True) == [pins]
    words += [(text, False) for text in ([crosses] if as_told else lying(station, boards))]
    hinge = hinges.get(line, "")
    ways = len(words) - (NEXT in fresh)  # those two words stand in one line with their card
    if hinge and ways > 1:  # behind one of two cards it would be read as of that one alone
        words.append((hinge, False))
    elif extra := spacer_words(line, brief=True) or hinge:
        last = words.pop()[0]
        words.append((f"{last}, {extra}", False))
    deepest = y if alike else y - (len(boards) - 1) * ROW
    deepest = min(deepest, y - (len(served) - 1) * PITCH)
    at, x = y, COLUMNS[4]
    for text, bold in words:
        for part_of in wrap(text, 2.5, bold, width - x):
            marks.append(Text(x=x, y=at, text=part_of, bold=bold))
            deepest, at = min(deepest, at), at - PITCH
        x = COLUMNS[4]
        if text == NEXT:  # its card stands behind it
            at, x = at + PITCH, x + text_width(text, 2.5, bold) + 1.4
    return MarkBlock(height=max(ROW, -deepest + 1.2), marks=tuple(marks))


def _sides(shop: Shop, table: BoxTable) -> list[Side]:
    """Give the boards of a table as they are laid out, without what is held back."""
    boards = [(part.id, part.board) for part in (table.left, table.right) if part is not None]
    faces = [(name, board.side) for name, board in boards if board is not None]
    return [side for side in _both(shop, table) if (side.board, side.side) in faces]


def _plates(shop: Shop, table: BoxTable) -> Iterator[str]:
    """Say how high the plates are, and for which doors unless they are the same for all."""
    facts = [*plate_facts(shop.layout, *_sides(shop, table))]
    alike = [*plate_facts(shop.layout, *_sides(shop, table), named=False)]
    yield from (fact.text for fact in (alike if len(alike) == 1 else facts))


def _both(shop: Shop, table: BoxTable) -> list[Side]:
    """Give both boards of a table's column, also where nothing is bored in one."""
    return shop.layout.sides_of.get((table.box, table.column), [])


def _notes(shop: Shop, station: Station, table: BoxTable, once: _Once, width: float) -> MarkBlock:
    """The sums that close, punch to punch, what is open, to be known of the boards, or held, and
    where fixed shelves and the spacers of rollouts stand."""
    rows = [row for part in (table.left, table.right) if part for row in rows_on(station, part)]
    numbers = tuple(dict.fromkeys(number for row in rows for number in row.open))
    notes = [
        *sums_of_board(table),
        *punch_words(table, rows),
        *filter(None, [open_line_of(station, numbers)]),
        *(text for text in _plates(shop, table) if text != once.plates),
        *dict.fromkeys(text for row in rows for text in said_in_row(shop, row)),
    ]
    held = held_lines(table, shop.layout.job.shown)
    marks: list[Mark] = [Line(x1=0.0, y1=0.0, x2=width, y2=0.0, width=THIN)]
    y = 0.0
    both, served = _both(shop, table), {name for line in table.lines for name in line.serves}
    loud = ((text, True) for text in (*shelf_facts(*both), *spacer_facts(served, *both), *held))
    for text, bold in (*((text, False) for text in notes), *loud):
        for line in wrap(text, 2.5, bold, width - 2.0):
            y -= PITCH
            marks.append(Text(x=2.0, y=y - 0.2, text=line, bold=bold))
    return MarkBlock(height=-y + 3.0, marks=tuple(marks))
