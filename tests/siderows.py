"""The table of a box's sides read as a person reads it at the bench: a row names the line, and of
each board the card, its crosses, the edge, and whether it lies turned; the card is then found on
paper by its letter, and laid so.

Of the stations nothing is taken but what stands outside the job's paper: how far a bare front edge
lies inside the finished one, and how thick the panel is on which heights stand.
"""

import json
import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from jigs.bench.benchpart import BenchPart, Board
from jigs.bench.station import Station
from jigs.box.parts import Layout
from templates.lists.holelist import holes_json
from tests.pinreading import black_left, crosses_in, numbered
from tests.readback import PrintedCard, PrintedPage, Run

BORED_HERE = ("slide", "plate", "shelf")
WITHIN = 0.065
"""Two figures to a tenth, and the paper; mm."""
_STATION = re.compile(r"(SIDES(?: [A-Z]+)?) code")
_CARD = re.compile(r"(SIDES(?: [A-Z]+)?): ([A-Z]+)\b")
_TITLE = re.compile(r"BOX (\S+?)(?:, COLUMN (\d+))?(?:, GOES ON|, page .*)?")
_PART = re.compile(r"(\S+-(?:SIDE-[LR]|PARTITION-\d+)) (\w{4})")
_EACH_PIN = re.compile(r"Each N: (.*)\.")
_WAY = re.compile(
    r"(?P<card>[A-Z]+)"
    r"(?: on a line (?P<line>\d+\.\d) from the (?P<beside>FRONT|REAR) edge)?"
    r"(?:, crosses (?P<crosses>0|[-+]\d[-+\d, to]*?))?"
    r"(?:, (?P<edge>front|rear) edge)?"
    r"(?:, (?P<turn>TURNED on L, not on R|not TURNED|TURNED))?"
    r"(?:, (?:spacer -?\d+\.\d|slide on the bottom panel))?"
    r"(?:, (?:\S+ )?hinge [^,;]+)*"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Bore:
    """A hole in a face of a board: from its finished front edge and from its lower end; mm."""

    part: str
    column: int
    x: float
    y: float
    diameter: float


@dataclass(slots=True, kw_only=True)
class PrintedRow:
    """A line of a table as it is printed."""

    station: str
    mark: str
    ticks: Sequence[tuple[str, float]]
    """The boxes to tick of its page: the board, and how high on paper."""
    figures: list[tuple[str, float]] = field(default_factory=list)
    """Heights and the boards that they are of, each with how high it stands on paper."""
    words: str = ""


@dataclass(slots=True, kw_only=True)
class PrintedTable:
    """The table of a column of a box."""

    box: str
    column: int
    parts: list[str] = field(default_factory=list)
    widths: list[float] = field(default_factory=list)
    pins: str = ""
    """How the cards lie on each line of pins that names its crosses alone, said in it or above all
    tables."""
    rows: list[PrintedRow] = field(default_factory=list)


def tables_on(pages: Iterable[PrintedPage]) -> list[PrintedTable]:
    """Read the tables of all stations for sides."""
    tables: list[PrintedTable] = []
    station, pins = "", ""
    for page in pages:
        found = _STATION.search(page.text)
        station = found[1] if found else station
        pins = "" if found else pins
        starts = [run.box[0] for run in page.runs if run.text == "line, for"]
        if not starts:
            continue
        ticks = [
            (hand, box[1]) for box, _, _ in page.frames
            for hand, at in (("left", 90.0), ("right", 99.0))
            if abs(box[0] - starts[0] - at) < 1.0
        ]  # fmt: skip
        row: PrintedRow | None = None
        for run in page.runs:
            x = run.box[0] - starts[0]
            title = _TITLE.fullmatch(run.text)
            if abs(x) < 0.5 and (said := _EACH_PIN.fullmatch(run.text)):
                row, pins = None, said[1]
            elif title and run.bold and abs(x) < 0.5:
                row = None
                box, column = title[1], int(title[2] or 1)
                goes_on = tables and (tables[-1].box, tables[-1].column) == (box, column)
                if not (goes_on and "GOES ON" in run.text):
                    tables.append(PrintedTable(box=box, column=column, pins=pins))
            elif tables and abs(x) < 0.5 and run.text in ("S", "P", "N") and run.bold:
                row = PrintedRow(station=station, mark=run.text, ticks=ticks)
                tables[-1].rows.append(row)
            elif row is not None:
                row = row if _add(row, run, x) else None
            elif tables and not tables[-1].rows:
                _head(tables[-1], run)
    return tables


def _add(row: PrintedRow, run: Run, x: float) -> bool:
    """Add what stands in a row; False where it is over."""
    if abs(x - 2.0) < 0.3 or x < -0.5:
        return False
    if 37.5 < x < 90.0 and (run.bold or run.text in ("LEFT", "RIGHT")):
        row.figures.append((run.text, run.base))
    elif x > 109.5:
        row.words = f"{row.words} {run.text}".strip()
    return True


def _head(table: PrintedTable, run: Run) -> None:
    if found := _PART.fullmatch(run.text):
        table.parts.append(found[1])
    elif found := re.fullmatch(r"(\d+\.\d) × \d+\.\d", run.text):
        table.widths.append(float(found[1]))
    elif found := _EACH_PIN.fullmatch(run.text):
        table.pins = found[1]


def _each_pin(table: PrintedTable, words: str) -> str:
    """Say of a line of pins that names its crosses alone how the cards lie."""
    if not words.startswith("crosses "):
        return words
    assert table.pins, words
    return "; ".join(
        re.sub(r"^([A-Z]+(?: on a line \S+ from the \w+ edge)?)", rf"\1, {words}", way)
        for way in table.pins.split("; ")
    )


def hand_of(part: str, column: int) -> str:
    """Tell on which side of a column a board stands: a partition is on the right of the column
    that has its number."""
    if "-PARTITION-" in part:
        return "right" if int(part.rpartition("-")[2]) == column else "left"
    return {"L": "left", "R": "right"}[part[-1]]


def cards_on(pages: Iterable[PrintedPage]) -> dict[tuple[str, str], PrintedCard]:
    """Find the cards of stations for sides, one copy each."""
    return {
        (found[1], found[2]): card
        for page in pages
        for card in page.cards
        for run in card.runs
        if (found := _CARD.match(run.text)) and not run.flipped
    }


def bored_from(
    pages: Sequence[PrintedPage], stations: Iterable[Station], faults: list[str]
) -> Iterator[Bore]:
    """Give every hole that the rows of all tables come to; `faults`: what cannot be done so."""
    boards = {
        (row.part.id, row.part.board.column): row.part.board
        for station in stations
        for row in station.rows
        if row.part.board is not None
    }
    cards = cards_on(pages)
    for table in tables_on(pages):
        hands = [hand_of(part, table.column) for part in table.parts]
        for row in table.rows:
            same = len(table.widths) == 1  # the size of a pair that is alike is said once
            widths = table.widths * len(table.parts) if same else table.widths
            for part, hand, width in zip(table.parts, hands, widths, strict=True):
                up = _height(row, hand)
                words = _words(row, hand)
                if up is None or not words or "bored once, through" in words:
                    continue
                board = boards[part, table.column]
                for way in _each_pin(table, words).split("; "):
                    found = _WAY.fullmatch(way)
                    assert found is not None, way
                    card = cards[row.station, found["card"]]
                    where = f"{row.station} {part} {row.mark} {up}: {way}"
                    for x, y, diameter in _laid(card, found, hand, width, board, where, faults):
                        yield Bore(
                            part=part, column=table.column, x=x, diameter=diameter,
                            y=up + y + (board.panel if board.assembled else 0.0),
                        )  # fmt: skip


def _height(row: PrintedRow, hand: str) -> float | None:
    """Read the height of a line on a board: behind its name, or the one of both. Of a board that
    has no box to tick there is none."""
    texts = [text for text, _ in row.figures]
    at = 0
    if texts[0] in ("LEFT", "RIGHT"):
        if hand.upper() not in texts:
            return None
        at = texts.index(hand.upper()) + 1
    height, base = row.figures[at]
    ticked = any(of == hand and abs(low - base) < 1.5 for of, low in row.ticks)
    assert height.startswith("↑ "), "it says which way it counts"
    return float(height.removeprefix("↑ ")) if ticked else None


def _words(row: PrintedRow, hand: str) -> str:
    """Read what is done on a board: behind its name, or the same on both."""
    words = re.sub(r"NEXT CARD: (?:[A-Z]+ (?=[A-Z]))?", "", row.words)
    pieces = re.split(r"\b(LEFT|RIGHT): ", words)
    if len(pieces) == 1:
        return words
    said = dict(zip(pieces[1::2], pieces[2::2], strict=True))
    return said.get(hand.upper(), "").strip()


def _turned(turn: str | None, hand: str) -> bool:
    """The captions say: turned on the right, unless the row says otherwise."""
    if turn is None:
        return hand == "right"
    return hand == "left" if turn == "TURNED on L, not on R" else turn == "TURNED"


def _laid(
    card: PrintedCard,
    said: re.Match[str],
    hand: str,
    width: float,
    board: Board,
    where: str,
    faults: list[str],
) -> Iterator[tuple[float, float, float]]:
    """Lay a card on a board, and give its holes: from the front edge, up from the line."""
    turned = _turned(said["turn"], hand)
    way = -1.0 if turned else 1.0
    at_x, at_y = _origin(card)
    from_front = 1.0 if hand == "left" else -1.0
    if card.bands:
        lies_left = black_left(card) is not turned
        edge = "front" if lies_left is (hand == "left") else "rear"
        if said["edge"] not in (None, edge):
            faults.append(f"{where}: lies on the {edge} edge")
        if f"{edge.upper()} EDGE" not in card.text and "FOLD" in card.text:
            faults.append(f"{where}: the card is for another edge than the {edge} one")
        inside = board.band if board.raw and edge == "front" else 0.0
        start = inside if edge == "front" else width
    else:
        assert said["line"], where
        start = float(said["line"])
        start = start if said["beside"] == "FRONT" else width - start
    numbers = {ring: number for number, ring in numbered(card, turned=turned)} if (
        said["crosses"]) else {}  # fmt: skip
    wanted = crosses_in(said["crosses"]) if said["crosses"] else ()
    if said["crosses"] is None and any(run.text == "+1" for run in card.runs):
        faults.append(f"{where}: which crosses?")
    for ring in card.rings:
        if numbers and numbers[ring] not in wanted:
            continue
        yield start + from_front * way * (ring.x - at_x), way * (ring.y - at_y), ring.diameter


def _origin(card: PrintedCard) -> tuple[float, float]:
    """Where white meets black, half way up the window in the black; or, on a card that has no
    black or too little of it to tell, on its longest lines down and across."""
    solid = [stroke for stroke in card.strokes if not stroke.dashed]
    lows = sorted((band[1], band[3]) for band in card.bands)
    if len(lows) == 2:
        y = (lows[0][1] + lows[1][0]) / 2
    else:
        y = max((s for s in solid if abs(s.y1 - s.y2) < 0.005), key=lambda s: s.length).y1
    if card.bands:
        black = min(card.bands)
        return black[2] if black_left(card) else black[0], y
    return max((s for s in solid if abs(s.x1 - s.x2) < 0.005), key=lambda s: s.length).x1, y


_ENTRY = re.compile(
    r"(?P<station>SIDES(?: [A-Z]+)?)(?:, (?P<face>left|right) face of partition (?P<number>\d+))?"
    r"(?: for \S+)?: (?P<said>.*)"
)


def bored_on_page(
    entries: Iterable[str],
    part: BenchPart,
    cards: Mapping[tuple[str, str], PrintedCard],
    faults: list[str],
) -> Iterator[Bore]:
    """Give every hole that a part's own page comes to, on the face of a board that `part` is:
    `entries` are those of its stations."""
    board = part.board
    assert board is not None
    for entry in entries:
        found = _ENTRY.fullmatch(entry)
        if found is None or "bored already" in entry:
            continue
        if found["face"]:
            column = int(found["number"]) + (found["face"] == "right")
            if column != board.column:
                continue
        lines: list[str] = []
        said: list[str] = []
        for piece in found["said"].split("; "):
            set_on = re.fullmatch(
                r"(lines? .* up|lines? .* over the bottom panel)(?:: (.*))?", piece
            )
            if set_on:
                lines.append(set_on[1])
                said += [set_on[2]] if set_on[2] else []
            elif piece.startswith("card "):
                said.append(piece)
        for where, cards_said in zip(lines, said, strict=True):
            for height in re.findall(r"\d+\.\d", where):
                for each in re.split(r" and (?=card )", cards_said):
                    named = re.fullmatch(r"card ([A-Z]+)( TURNED)?(.*)", each)
                    assert named is not None, entry
                    way = _WAY.fullmatch(
                        f"{named[1]}{named[3]}, {'TURNED' if named[2] else 'not TURNED'}"
                    )
                    assert way is not None, entry
                    card = cards[found["station"], named[1]]
                    for x, y, diameter in _laid(
                        card, way, board.side, part.width, board, entry, faults
                    ):
                        yield Bore(
                            part=part.id, column=board.column, x=x, diameter=diameter,
                            y=float(height) + y + (board.panel if board.assembled else 0.0),
                        )  # fmt: skip


def faults_of_rows(
    pages: Sequence[PrintedPage], stations: Sequence[Station], layout: Layout
) -> list[str]:
    """Bore what the rows say, and compare with the list of holes."""
    faults: list[str] = []
    bores = list(bored_from(pages, stations, faults))
    return faults + unlike(bores, layout)


def unlike(bores: Iterable[Bore], layout: Layout) -> list[str]:
    """Compare with the list of holes: each once, none besides; a partition's hole that goes right
    through from the other face is bored with it."""
    faults: list[str] = []
    left = list(bores)
    through: list[Bore] = []
    missing: list[tuple[str, int, dict[str, float]]] = []
    for part, column, hole in _listed(layout):
        match = next((each for each in left if _is(each, part, column, hole)), None)
        if match is None:
            missing.append((part, column, hole))
            continue
        left.remove(match)
        through += [match] if hole["depth_mm"] is None else []
    for part, column, hole in missing:
        if not any(_is(each, part, each.column, hole) for each in through):
            faults.append(f"{part}, column {column}: none at {hole['x_mm']}, {hole['y_mm']}")
    return faults + [f"{each.part}: one too much at {each.x:.2f}, {each.y:.2f}" for each in left]


def _listed(layout: Layout) -> Iterator[tuple[str, int, dict[str, float]]]:
    for side in json.loads(holes_json(layout))["sides"]:
        for hole in side["holes"]:
            if hole["purpose"] in BORED_HERE:
                yield side["board"], side["column"], hole


def _is(bore: Bore, part: str, column: int, hole: dict[str, float]) -> bool:
    return (
        (bore.part, bore.column) == (part, column)
        and abs(bore.x - hole["x_mm"]) < WITHIN
        and abs(bore.y - hole["y_mm"]) < WITHIN
        and abs(bore.diameter - hole["diameter_mm"]) < 0.02
    )
