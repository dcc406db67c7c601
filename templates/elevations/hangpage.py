"""The pages of `hang`: one for each wall, its drawing above, with it what is to be known;
then how it is done, once for all.

The scale is the largest at which all of a wall finds room on one page, the words below the drawing
or beside it too, and no table goes on where its words are broken; where none does, the words go on
on the next. A wall too long for 1:50 is drawn in stretches, one below the other.
"""

from collections.abc import Iterator, Sequence

from msgspec import Struct

from jigs.box.parts import Layout
from jigs.room.elevation import part_wall
from jigs.room.hanging import Hanging
from templates.elevations.elevation import LONG, with_and_without
from templates.elevations.hangdraw import BESIDE, DrawnWall, draw_wall
from templates.elevations.hanglist import (
    floor_words,
    how_listing,
    wall_listing,
    wall_name,
    wall_sections,
)
from templates.lists.listing import Section
from templates.lists.listpages import list_pages, section_blocks, widest
from templates.lists.listtext import listing_text
from templates.page.border import EDGE
from templates.page.marks import Mark, Page, Text
from templates.page.paper import Paper
from templates.page.pieces import GAP, moved
from templates.page.typeface import shorten, text_width
from templates.words.findings import before_cutting
from templates.words.hangwords import SCALE, SIGNS, TITLE
from templates.words.listwords import numbered

SCALES = (10, 15, 20, 25, 30, 40, LONG)
"""Reductions, the largest drawing first: nothing is measured off it, so that steps between those of
ISO 5455 are taken too."""
HEAD, FOOT = 13.0, 5.0
"""Room for the title and for the page's number, mm."""
BETWEEN = 6.0
"""Between two columns of words, mm."""
LEAST = 85.0
"""Width of a column beside the drawing, mm."""
_BELOW = 3.0
"""Between drawing and words, mm."""
_LETTERS = 5.0
_BY_IT = 40.0
"""Of a stretch's length on paper, what stands beside it; mm."""


class _Column(Struct, frozen=True):
    """A column of words: its left edge, and where it begins below the top; mm."""

    x: float
    top: float
    width: float


class _Words(Struct, frozen=True):
    """What is set: the marks of each page, and whether a table goes on in a column that is narrower
    than it wants."""

    pages: list[list[Mark]]
    narrow: bool


def hang_pages(layout: Layout, hangings: Sequence[Hanging], paper: Paper) -> Iterator[Page]:
    """Give the pages of these walls, and at last how it is done."""
    for hanging in hangings:
        yield from _wall_pages(layout, hanging, paper)
    yield from list_pages(how_listing(layout, hangings), paper)


def hang_text(layout: Layout, hangings: Sequence[Hanging]) -> str:
    """Say the same for a terminal."""
    listings = [wall_listing(each, layout, _first(layout, each)) for each in hangings]
    return "\n".join(map(listing_text, (*listings, how_listing(layout, hangings))))


def _first(layout: Layout, hanging: Hanging) -> tuple[str, ...]:
    """Give what of a wall must be settled before its boards are cut."""
    return before_cutting(layout, {hanging.elevation.wall, wall_name(hanging), *hanging.box_ids})


def _wall_pages(layout: Layout, hanging: Hanging, paper: Paper) -> Iterator[Page]:
    width, height = paper.height, paper.width
    wide, high = width - 2 * EDGE, height - 2 * EDGE - HEAD - FOOT
    sections = (
        Section(blocks=(floor_words(hanging, "mm"),)),
        *wall_sections(hanging, "mm", _first(layout, hanging)),
    )
    drawn = [
        (reduction, _set(walls, columns, sections, wide, high))
        for reduction in SCALES
        for walls in [_draw(hanging, reduction, wide, high)]
        if walls is not None
        for columns in _columns(walls, wide)
    ]
    reduction, words = min(drawn, key=lambda each: (len(each[1].pages), each[1].narrow))
    pages = words.pages
    name = f"{wall_name(hanging)}: {TITLE}"
    for number, marks in enumerate(pages, start=1):
        page = Page(
            width=width,
            height=height,
            marks=(
                *_head(name, layout.job.name, reduction, width, height),
                *moved(tuple(marks), EDGE, height - EDGE - HEAD),
                Text(
                    x=width - EDGE, y=EDGE + 0.8, text=numbered(name, number, len(pages)),
                    anchor="end",
                ),
            ),
            entry=name,
        )  # fmt: skip
        yield paper.scaled(page)


def _draw(hanging: Hanging, reduction: int, wide: float, high: float) -> list[DrawnWall] | None:
    """Draw a wall at a scale, in stretches where it is too long for all; None where it is too
    large. A ceiling for which there is no room is said in words alone."""
    turns = {setting.seen.box.id: setting.number for setting in hanging.order}
    longest = (wide - BESIDE - _BY_IT) * LONG
    stretches = part_wall(hanging.elevation, longest)
    for number in range(len(with_and_without(hanging.elevation))):
        walls = [
            draw_wall(with_and_without(stretch)[number], turns, reduction, wide)
            for stretch in stretches
        ]
        found = [wall for wall in walls if wall is not None and wall.block.height <= high]
        if len(found) == len(stretches) or reduction == SCALES[-1]:
            return found
    return None


def _columns(walls: Sequence[DrawnWall], wide: float) -> Iterator[tuple[_Column, _Column]]:
    """Give the columns of words on a drawing's page: both below it; or one below it and the other
    beside, where there is room."""
    below = sum(wall.block.height + _BELOW for wall in walls)
    half = (wide - BETWEEN) / 2
    yield _Column(0.0, below, half), _Column(half + BETWEEN, below, half)
    if len(walls) == 1:
        left = max(walls[0].width, half)
        if wide - left - BETWEEN >= LEAST:
            yield _Column(0.0, below, left), _Column(left + BETWEEN, 0.0, wide - left - BETWEEN)


def _set(
    walls: Sequence[DrawnWall],
    columns: Sequence[_Column],
    sections: Sequence[Section],
    wide: float,
    high: float,
) -> _Words:
    """Set drawings below each other, then words in columns; the marks count from the upper left
    corner of a page's room down."""
    pages: list[list[Mark]] = [[]]
    top = 0.0
    for wall in walls:
        if pages[-1] and top + wall.block.height > high:
            pages.append([])
            top = 0.0
        pages[-1] += moved(wall.block.marks, 0.0, -top)
        top += wall.block.height + _BELOW
    half = (wide - BETWEEN) / 2
    if len(pages) > 1:
        columns = _Column(0.0, top, half), _Column(half + BETWEEN, top, half)
    after = _Column(0.0, 0.0, half), _Column(half + BETWEEN, 0.0, half)
    # A section has the same blocks at each width: only their heights differ.
    blocks = {
        column.width: [b for each in sections for b in section_blocks(each, column.width)]
        for column in (*columns, *after)
    }
    at, used, narrow = 0, columns[0].top, False
    for number in range(len(blocks[half])):
        each = blocks[columns[at].width][number]
        at_start = at, len(pages)
        while used + each.block.height > high and used > 0.0:
            at += 1
            if at == len(columns):
                pages.append([])
                at, columns = 0, after
            used = columns[at].top
            each = blocks[columns[at].width][number]
        if (at, len(pages)) != at_start and number and each.again is not None:
            pages[-1] += moved(each.again.marks, columns[at].x, -used)
            used += each.again.height + GAP
            narrow = narrow or columns[at].width < widest(sections)
        pages[-1] += moved(each.block.marks, columns[at].x, -used)
        used += each.block.height + GAP
    return _Words(pages, narrow)


def _head(name: str, job: str, reduction: int, width: float, height: float) -> Iterator[Mark]:
    """Write what a page is, whose, and at which scale it is drawn."""
    y = height - EDGE - _LETTERS * 1.15
    room = width - 2 * EDGE
    title = shorten(name, _LETTERS, True, room)
    yield Text(x=EDGE, y=y, text=title, size=_LETTERS, bold=True)
    free = room - text_width(title, _LETTERS, True) - 5.0
    if whose := shorten(job, 3.5, False, free):
        yield Text(x=width - EDGE, y=y, text=whose, size=3.5, anchor="end")
    yield Text(x=EDGE, y=y - 5.2, text=SCALE.format(reduction, SIGNS))
