"""What stands on which page: the contents of the first page, part by part or in the order of the
stations, in columns."""

from collections.abc import Iterable, Sequence

from msgspec import Struct
from msgspec.structs import replace

from templates.page.marks import Mark
from templates.page.pieces import MarkBlock, flow, least_height, moved, paragraph
from templates.stations.stationset import StationSet
from templates.words.stationwords import station_title

NARROW, WIDE, STATIONS = 5, 3, 4
"""How many columns: of single parts or boxes, of boxes with all their parts, of stations."""
GUTTER = 5.0
"""Between two columns of a list, mm."""
MOST_BOXES = 60
"""Of more boxes there is no list: it would find no room."""


HOW = "HOW A CARD IS USED"
"""What stands on the page before the first station."""


class ContentsEntry(Struct, frozen=True):
    """A part's sheets: its box, its ID, its pages in order."""

    box: str
    part: str
    pages: tuple[int, ...]


def contents(entries: Sequence[ContentsEntry], width: float, room: float) -> MarkBlock | None:
    """Set the list: a line for each part where `room` (mm) allows, else parts in a run, else
    boxes alone; None: no room."""
    ways = (
        (NARROW, [_entry(entry) for entry in _joined(entries)]),
        (WIDE, _by_part(entries)),
        (NARROW, _by_box(entries)),
    )
    found = (
        in_columns("CONTENTS: PART AND PAGE", [("", line) for line in lines], columns, width, room)
        for columns, lines in ways
    )
    return next((block for block in found if block is not None), None)


def station_contents(
    stations: StationSet, width: float, room: float, guide: int
) -> MarkBlock | None:
    """Set the list of stations in the order of the work: page and name; before them, on page
    `guide`, how a card is used; in a run where `room` (mm) does not hold it in columns, None where
    it does not hold that."""
    lines = [(str(guide), HOW)] if stations.stations else []
    for station in stations.stations:
        lines.append((str(stations.numbered(station)[0][0]), station_title(station)))
    heading = "ORDER OF WORK: PAGE AND STATION"
    run = f"{'; '.join(f'{page} {line}' for page, line in lines)}."
    return in_columns(heading, lines, STATIONS, width, room) or in_columns(
        heading, [("", run)] if lines else [], 1, width, room
    )


def in_columns(
    words: str, lines: Sequence[tuple[str, str]], columns: int, width: float, room: float
) -> MarkBlock | None:
    """Set lines, each with what hangs before it, below a heading; None where they find no room."""
    if not lines:
        return None
    heading = paragraph(words, width, size=3.5, bold=True)
    column = (width - (columns - 1) * GUTTER) / columns
    pieces = [paragraph(line, column, hang=hang) for hang, line in lines]
    heights = [piece.height for piece in pieces]
    height = least_height(heights, columns, room - heading.height - 1.0)
    if height is None:
        return None
    marks: list[Mark] = list(heading.marks)
    places = flow(heights, columns, height) or []
    for piece, (place, down) in zip(pieces, places, strict=True):
        x = place * (column + GUTTER)
        marks += moved(piece.marks, x, -heading.height - 1.0 - down)
    return MarkBlock(height=heading.height + 1.0 + height, marks=tuple(marks))


def _entry(entry: ContentsEntry) -> str:
    return f"{entry.part} {_runs(entry.pages)}"


def _by_part(entries: Iterable[ContentsEntry]) -> list[str]:
    boxes: dict[str, list[str]] = {}
    for entry in _joined(entries):
        boxes.setdefault(entry.box, []).append(_entry(entry))
    return [f"{', '.join(parts)}." for parts in boxes.values()]


def _joined(entries: Iterable[ContentsEntry]) -> list[ContentsEntry]:
    """Join the two faces of a partition."""
    joined: list[ContentsEntry] = []
    for entry in entries:
        if joined and joined[-1].part == entry.part:
            joined[-1] = replace(joined[-1], pages=joined[-1].pages + entry.pages)
        else:
            joined.append(entry)
    return joined


def _by_box(entries: Iterable[ContentsEntry]) -> list[str]:
    boxes: dict[str, set[int]] = {}
    for entry in entries:
        boxes.setdefault(entry.box, set()).update(entry.pages)
    return [f"{box} {_runs(sorted(pages))}" for box, pages in boxes.items()]


def _runs(pages: Iterable[int]) -> str:
    """Write page numbers in order: `5-8, 11`."""
    runs: list[list[int]] = []
    for page in pages:
        if runs and page == runs[-1][1] + 1:
            runs[-1][1] = page
        else:
            runs.append([page, page])
    return ", ".join(str(low) if low == high else f"{low}-{high}" for low, high in runs)
