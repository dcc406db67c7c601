"""The list of open numbers on the first page: value, where it is drawn, and the line to write;
where several of one piece of hardware are drawn stands once, beside a rule along their lines."""

from collections.abc import Iterator, Sequence

from jigs.box.bypart import open_in
from jigs.box.parts import Layout
from jigs.given.confirming import OpenNumber, RecordKind, by_record, heading_of, rests_on
from jigs.given.kinds import kind_of
from jigs.ground.keys import Rests
from templates.binding.contents import GUTTER
from templates.page.marks import Line, Mark
from templates.page.pieces import GAP, MarkBlock, flow, least_height, moved, paragraph
from templates.words.openwords import line_to_write

COLUMNS = (2, 3)
LINE = 0.57
"""How much of a column's width the line to write has; the rest says where the number is drawn."""
MOST_NAMES = 6
WHERE: dict[Rests, str] = {
    "back": "backs", "front": "faces", "inside": "sides", "box-front": "boxes",
    "box-back": "boxes", "cut": "cuts", "order": "order",
}  # fmt: skip
"""Where a number is drawn or written, by what rests on it."""
HEADING = "OPEN NUMBERS: NOBODY HAS LOOKED THEM UP YET"
HOW = (
    "Try it on scrap. Write each as your leaflet has it below its [heading] in the job, then "
    'confirmed = "leaflet" (or "measured").'
)


def open_list(layout: Layout, width: float, room: float) -> MarkBlock | None:
    """Set the list in columns; None where `room` (mm) does not hold it or nothing is open."""
    blocks = list(_blocks(layout))
    if not blocks:
        return None
    head = [
        paragraph(HEADING, width, size=3.5, bold=True),
        paragraph(HOW, width),
    ]
    top = sum(piece.height + GAP for piece in head) + 1.0
    ways: list[MarkBlock] = []
    for columns in COLUMNS:
        column = (width - (columns - 1) * GUTTER) / columns
        pieces = [piece for block in blocks for piece in _pieces(*block, column)]
        height = least_height([piece.height for piece in pieces], columns, room - top)
        if height is not None:
            marks = (*_stacked(head), *_set(pieces, columns, column, height, top))
            ways.append(MarkBlock(height=top + height, marks=marks))
    # The contents below want the room.
    return min(ways, key=lambda way: way.height, default=None)


def open_columns(layout: Layout, width: float, height: float) -> Iterator[MarkBlock]:
    """Set the list on pages of its own, `height` mm of each, in columns."""
    column = (width - GUTTER) / 2
    pieces = [piece for block in _blocks(layout) for piece in _pieces(*block, column)]
    head = paragraph(HEADING, width, size=3.5, bold=True)
    how = paragraph(HOW, width)
    top = head.height + how.height + 2 * GAP + 1.0
    while pieces:
        count = len(pieces)
        while flow([piece.height for piece in pieces[:count]], 2, height - top) is None:
            count -= 1
        marks = (*_stacked([head, how]), *_set(pieces[:count], 2, column, height - top, top))
        yield MarkBlock(height=height, marks=marks)
        pieces = pieces[count:]


def _blocks(layout: Layout) -> Iterator[tuple[str, str, list[OpenNumber]]]:
    """Give each record with open numbers: the heading to write below, what rests on it, and
    the numbers."""
    for (kind, name), numbers in sorted(by_record(open_in(layout)).items()):
        heading = heading_of(kind, name)
        if layout.job.records[kind][name].like is None:
            heading = f'[{kind}.NAME], your own, like = "{name}"'
        parts = list(dict.fromkeys(_parts(layout, kind, name)))
        few = len(parts) <= MOST_NAMES
        yield heading, ", ".join(parts) if few else f"{parts[0]} and {len(parts) - 1} more", numbers


def _parts(layout: Layout, kind: RecordKind, name: str) -> list[str]:
    """Name the fronts and rollouts that a record serves."""
    fittings = [fitting for front in layout.fronts for fitting in front.fittings]
    fittings += [fitting for side in layout.sides for fitting in side.fittings]
    return [f.part for f in fittings if f.part and f.record == name and kind_of(f).record == kind]


def _pieces(
    heading: str, parts: str, numbers: Sequence[OpenNumber], width: float
) -> Iterator[MarkBlock]:
    head: MarkBlock | None = paragraph(f"{heading}: {parts}", width, bold=True)
    drawn: dict[str, list[OpenNumber]] = {}
    for number in numbers:
        where = dict.fromkeys(words for rests, words in WHERE.items() if rests_on(number, rests))
        drawn.setdefault(", ".join(where), []).append(number)
    for said, alike in drawn.items():
        lines = _stack([paragraph(line_to_write(number), width * LINE) for number in alike])
        beside = paragraph(said, width * (1 - LINE) - 2.0)
        at = width * LINE
        row = MarkBlock(
            height=max(lines.height, beside.height),
            marks=(
                *lines.marks,
                *([Line(x1=at, y1=-0.6, x2=at, y2=0.4 - lines.height)] if len(alike) > 1 else []),
                *moved(beside.marks, at + 2.0, 0.0),
            ),
        )
        # A heading stands in one column with its first line.
        yield row if head is None else _stack([head, row])
        head = None


def _stack(pieces: Sequence[MarkBlock]) -> MarkBlock:
    height = sum(piece.height + GAP for piece in pieces) - GAP
    return MarkBlock(height=height, marks=tuple(_stacked(pieces)))


def _stacked(pieces: Sequence[MarkBlock]) -> Iterator[Mark]:
    down = 0.0
    for piece in pieces:
        yield from moved(piece.marks, 0.0, -down)
        down += piece.height + GAP


def _set(
    pieces: list[MarkBlock], columns: int, column: float, height: float, top: float
) -> Iterator[Mark]:
    places = flow([piece.height for piece in pieces], columns, height)
    assert places is not None, "the pieces were counted for this height"
    for piece, (place, down) in zip(pieces, places, strict=True):
        yield from moved(piece.marks, place * (column + GUTTER), -top - down)
