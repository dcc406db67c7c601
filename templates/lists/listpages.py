"""A list laid out on pages: its tables break over them, their heads said again.

Upright, unless a table wants the width of a page that lies; then the whole list lies.
"""

from collections.abc import Iterable, Iterator

from templates.lists.listcells import (
    BEFORE,
    BETWEEN,
    LARGE,
    SMALL,
    fitted_widths,
    natural_widths,
    needed_width,
    row_marks,
)
from templates.lists.listing import Column, Group, Listing, Section, Table, TableRow, Words
from templates.page.border import EDGE
from templates.page.flowing import FlowedBlock, flow_pages, stacked
from templates.page.marks import MEDIUM, THIN, Line, Page, Text
from templates.page.paper import Paper
from templates.page.pieces import MarkBlock, moved, paragraph
from templates.page.typeface import PITCH, shorten, wrap
from templates.words.listwords import going_on, numbered

TITLE_SIZE = 5.0
"""Lettering of a list's title, mm."""
APART = 3.0
"""Before a section, mm."""
INDENT = 4.0
"""Of sentences that a screen indents, mm."""
FOOT = 5.0
"""Room for the page's number, mm."""

PlacedCells = list[tuple[Column, int, float, float]]
"""The columns of a table: each with its place in a row, where it begins, and its width; mm."""


def list_pages(listing: Listing, paper: Paper) -> list[Page]:
    """Lay a list out on a paper, its pages numbered."""
    width, height = paper.width, paper.height
    if widest(listing.sections) > width - 2 * EDGE:
        width, height = height, width
    inner = width - 2 * EDGE

    def head(number: int) -> MarkBlock:
        name = f"{listing.title}: {listing.job}" if listing.job else listing.title
        size = TITLE_SIZE if number == 1 else LARGE
        title = shorten(name.upper() if not listing.job else name, size, True, inner)
        return MarkBlock(
            height=size * 1.6 + 1.0,
            marks=(Text(x=0.0, y=-size * 1.15, text=title, size=size, bold=True),),
        )

    flowed = flow_pages(_blocks(listing, inner), height - 2 * EDGE - FOOT, head)
    return [
        paper.scaled(
            Page(
                width=width,
                height=height,
                marks=(
                    *moved(tuple(each.marks), EDGE, height - EDGE),
                    Text(
                        x=width - EDGE,
                        y=EDGE + 0.8,
                        text=numbered(listing.title, number, len(flowed)),
                        anchor="end",
                    ),
                ),
                entry=f"{listing.title}: {each.entry}" if each.entry else listing.title,
            )
        )
        for number, each in enumerate(flowed, start=1)
    ]


def widest(sections: Iterable[Section]) -> float:
    """Give the width that the widest table wants, mm."""
    tables = [each for section in sections for each in section.blocks]
    wanted = [0.0]
    for table in tables:
        if isinstance(table, Table) and table.rows:
            shown = table.filled(paper=True)
            wanted.append(needed_width(table, shown, natural_widths(table, shown)))
    return max(wanted)


def _blocks(listing: Listing, width: float) -> Iterator[FlowedBlock]:
    for section in listing.sections:
        yield from section_blocks(section, width)


def section_blocks(section: Section, width: float) -> Iterator[FlowedBlock]:
    """Give a section's blocks; its title stays with the first."""
    lead: MarkBlock | None = None
    if section.title:
        lead = _title(section.title, width)
    elif section.blocks:
        yield FlowedBlock(block=MarkBlock(height=APART, marks=()))
    entry = section.title
    for each in section.blocks:
        blocks = _words(each, width) if isinstance(each, Words) else _table(each, section, width)
        for block in blocks:
            if lead is not None:
                block = FlowedBlock(block=stacked(lead, block.block), entry=entry)
                lead = None
            yield block


def _title(text: str, width: float) -> MarkBlock:
    lines = wrap(text, LARGE, True, width)
    return MarkBlock(
        height=APART + len(lines) * 5.4,
        marks=tuple(
            Text(x=0.0, y=-APART - 4.0 - row * 5.4, text=line, size=LARGE, bold=True)
            for row, line in enumerate(lines)
        ),
    )


def _words(words: Words, width: float) -> Iterator[FlowedBlock]:
    indent = INDENT if words.indent else 0.0
    block = paragraph(words.text, width - indent, bold=words.stamp)
    yield FlowedBlock(
        block=MarkBlock(height=block.height + 0.6, marks=tuple(moved(block.marks, indent, 0.0)))
    )


def _table(table: Table, section: Section, width: float) -> Iterator[FlowedBlock]:
    """Give the lines of a table, its heads and the title of a group with the first below them."""
    if not table.rows and not any(group.notes for group in table.groups):
        yield from _words(Words(text="none", indent=2), width)
        return
    placed = _placed(table, width) if table.rows else []
    heads = _heads(placed, width)
    goes_on = stacked(_title(going_on(section.title), width), heads)
    above: tuple[MarkBlock, ...] = (heads,)
    again = None
    for group in table.groups:
        title = _group_title(group, width)
        above = (*above, *title)
        for block in _group_lines(group, placed, width):
            yield FlowedBlock(block=stacked(*above, block), again=again)
            above, again = (), stacked(goes_on, *title)
        again = goes_on
    yield FlowedBlock(block=MarkBlock(height=1.2, marks=()))


def _group_lines(group: Group, placed: PlacedCells, width: float) -> Iterator[MarkBlock]:
    for row in group.rows:
        yield _line(row, placed, width)
    for number, note in enumerate(group.notes):
        yield _note(note, width, ruled=number == 0 or note.stamp)


def _placed(table: Table, width: float) -> PlacedCells:
    shown = table.filled(paper=True)
    widths = fitted_widths(table, shown, natural_widths(table, shown), width)
    placed: PlacedCells = []
    x = 0.0
    for at, wide in zip(shown, widths, strict=True):
        column = table.columns[at]
        if column.runs_on:
            wide = width - x
        placed.append((column, at, x, wide))
        x += wide + BETWEEN
    return placed


def _heads(placed: PlacedCells, width: float) -> MarkBlock:
    return MarkBlock(
        height=5.6,
        marks=(
            *(
                Text(
                    x=x + wide if column.right else x,
                    y=-PITCH,
                    text=shorten(column.head, SMALL, True, wide + BETWEEN),
                    bold=True,
                    anchor="end" if column.right else "start",
                )
                for column, _, x, wide in placed
                if column.head
            ),
            Line(x1=0.0, y1=-5.4, x2=width, y2=-5.4, width=MEDIUM),
        ),
    )


def _group_title(group: Group, width: float) -> tuple[MarkBlock, ...]:
    if not group.title:
        return ()
    block = paragraph(group.title, width, bold=True)
    return (MarkBlock(height=block.height + 1.6, marks=tuple(moved(block.marks, 0.0, -1.4))),)


def _line(row: TableRow, placed: PlacedCells, width: float) -> MarkBlock:
    marks, low = row_marks(row, placed)
    under = (_under(row.note, width),) if row.note else ()
    rule = Line(x1=0.0, y1=0.0, x2=width, y2=0.0, width=THIN)
    return stacked(MarkBlock(height=-low, marks=(rule, *marks)), *under)


def _note(words: Words, width: float, *, ruled: bool) -> MarkBlock:
    """Set what is to be said of a group below its rows."""
    block = paragraph(words.text, width - BEFORE, bold=words.stamp)
    down = 1.4 if ruled else 0.0
    rule = (Line(x1=0.0, y1=0.0, x2=width, y2=0.0, width=THIN),) if ruled else ()
    return MarkBlock(
        height=block.height + down + 0.4, marks=(*rule, *moved(block.marks, BEFORE, -down))
    )


def _under(text: str, width: float) -> MarkBlock:
    block = paragraph(text, width - 2 * INDENT)
    return MarkBlock(height=block.height, marks=tuple(moved(block.marks, 2 * INDENT, 0.0)))
