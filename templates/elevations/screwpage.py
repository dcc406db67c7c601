"""The pages of `gaps --measured`: for each wall its screws and its gaps side by side, on one page
as long as they find room there; then what helps where no screw does."""

from collections.abc import Iterator, Sequence

from templates.lists.listing import Listing
from templates.lists.listpages import list_pages, section_blocks
from templates.page.border import EDGE
from templates.page.flowing import FlowedBlock
from templates.page.marks import Mark, Page, Text
from templates.page.paper import Paper
from templates.page.pieces import GAP, moved
from templates.page.typeface import shorten
from templates.words.listwords import numbered

BETWEEN = 6.0
"""Between two columns, mm."""
HEAD, FOOT = 9.0, 5.0
"""Room for the title and for the page's number, mm."""
_LETTERS = 5.0


def screw_pages(listings: Sequence[Listing], paper: Paper) -> Iterator[Page]:
    """Give the pages of each wall, and those of the last list, which is of all of them."""
    for listing in listings[:-1]:
        yield from _wall_pages(listing, paper)
    yield from list_pages(listings[-1], paper)


def _wall_pages(listing: Listing, paper: Paper) -> Iterator[Page]:
    width, height = paper.height, paper.width
    half = (width - 2 * EDGE - BETWEEN) / 2
    blocks = [block for section in listing.sections for block in section_blocks(section, half)]
    columns = _flow(blocks, height - 2 * EDGE - HEAD - FOOT)
    pages = [columns[at : at + 2] for at in range(0, len(columns), 2)]
    name = f"{listing.title}: {listing.job}" if listing.job else listing.title
    title = shorten(name, _LETTERS, True, width - 2 * EDGE)
    for number, each in enumerate(pages, start=1):
        marks: list[Mark] = [
            Text(x=EDGE, y=height - EDGE - _LETTERS * 1.15, text=title, size=_LETTERS, bold=True),
            Text(
                x=width - EDGE, y=EDGE + 0.8, text=numbered(listing.title, number, len(pages)),
                anchor="end",
            ),
        ]  # fmt: skip
        for at, column in enumerate(each):
            marks += moved(tuple(column), EDGE + at * (half + BETWEEN), height - EDGE - HEAD)
        page = Page(width=width, height=height, marks=tuple(marks), entry=listing.title)
        yield paper.scaled(page)


def _flow(blocks: Sequence[FlowedBlock], high: float) -> list[list[Mark]]:
    """Set blocks below each other in columns of such a height, the heads of a table said again."""
    columns: list[list[Mark]] = [[]]
    used = 0.0
    for number, each in enumerate(blocks):
        if used and used + each.block.height > high:
            columns.append([])
            used = 0.0
            if number and each.again is not None:
                columns[-1] += each.again.marks
                used = each.again.height + GAP
        columns[-1] += moved(each.block.marks, 0.0, -used)
        used += each.block.height + GAP
    return columns
