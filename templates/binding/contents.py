"""Where each part's sheets are: the contents on the first page, box by box, in columns."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from templates.page.marks import Mark
from templates.page.pieces import MarkBlock, flow, least_height, moved, paragraph

NARROW, WIDE = 5, 3
"""How many columns: of single parts or boxes, and of boxes with all their parts."""
GUTTER = 5.0
"""Between two columns of a list, mm."""
MOST_BOXES = 60
"""Of more boxes there is no list: it would find no room, and the pages are drawn one by one."""


@dataclass(frozen=True, slots=True)
class ContentsEntry:
    """A part's sheets: its box, its ID, its pages in order."""

    box: str
    part: str
    pages: tuple[int, ...]


def contents(entries: Sequence[ContentsEntry], width: float, room: float) -> MarkBlock | None:
    """Set the list: a line for each part where `room` (mm) allows, else parts in a run, else
    boxes alone; None: no room."""
    if not entries:
        return None
    heading = paragraph("CONTENTS: PART AND PAGE", width, size=3.5, bold=True)
    for columns, lines in (
        (NARROW, [_entry(entry) for entry in _joined(entries)]),
        (WIDE, _by_part(entries)),
        (NARROW, _by_box(entries)),
    ):
        column = (width - (columns - 1) * GUTTER) / columns
        pieces = [paragraph(line, column) for line in lines]
        height = least_height(pieces, columns, room - heading.height - 1.0)
        if height is None:
            continue
        marks: list[Mark] = list(heading.marks)
        places = flow(pieces, columns, height) or []
        for piece, (place, down) in zip(pieces, places, strict=True):
            x = place * (column + GUTTER)
            marks += moved(piece.marks, x, -heading.height - 1.0 - down)
        return MarkBlock(height=heading.height + 1.0 + height, marks=tuple(marks))
    return None


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
