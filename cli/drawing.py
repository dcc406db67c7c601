"""Drawing pages and making a PDF of them, with a progress bar where a person watches."""

import sys
from collections import Counter
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from pathlib import Path
from typing import IO, TYPE_CHECKING, TypeVar

import click

from cli.jobs import on_terminal
from cli.output import make_folder, write_text
from cli.selection import boxes_with, narrow
from cli.terminal import mention, tell

if TYPE_CHECKING:
    from jigs.box.parts import Layout
    from jigs.given.labelstock import Stock
    from templates.binding.jobsheets import Sheets
    from templates.elevations.elevation import Drawn
    from templates.labels.labelwords import LabelWords
    from templates.lists.listing import Listing
    from templates.page.marks import Page
    from templates.page.paper import Paper
    from templates.page.raster import Raster


Thing = TypeVar("Thing")
UNIT_FROM = 200 * 25.4
"""The longest page that counts in points, mm (ISO 32000-1:2008, annex C, from memory)."""


class Pages:
    """Pages passed on one by one and counted; the bar moves on with each part."""

    def __init__(self, pages: Iterable["Page"], parts: int) -> None:
        self.pages = pages
        self.parts = parts
        self.counts: Counter[str] = Counter()
        self.longest = 0.0

    def __iter__(self) -> Iterator["Page"]:
        """Pass the pages on."""
        entry = ""
        with click.progressbar(
            length=self.parts, label="Drawing", file=sys.stderr, hidden=not on_terminal()
        ) as bar:
            for page in self.pages:
                self.counts[page.entry] += 1
                self.longest = max(self.longest, page.width, page.height)
                yield page
                if page.entry != entry:
                    entry = page.entry
                    bar.update(1)
            bar.finish()


def watched(things: Sequence[Thing]) -> Iterator[Thing]:
    """Pass things on one by one; the bar moves on with each."""
    with click.progressbar(
        things, label="Drawing", file=sys.stderr, hidden=not on_terminal()
    ) as bar:
        yield from bar


def draw_sheets(sheets: "Sheets", file: IO[bytes]) -> None:
    """Draw sheets as a PDF into an open file."""
    from templates.writers.pdf import write_pdf_into

    layout = sheets.layout
    pages = Pages(sheets.pages, sheets.cost.pages)
    write_pdf_into(file, pages, title=_title(layout, "drilling sheets"))
    if sheets.strip:
        pieces = {
            placed.card.view.part: placed.card.pieces
            for _, placed in sheets.cards
            if placed.card.pieces
        }
        tell(_say_strips(pieces))
    if pages.longest > UNIT_FROM:
        tell(
            "Pages over 200 in (5080 mm) count in a unit of their own; a program that does not "
            "know it prints them at half their size or less: measure the bars.",
        )


NAMED = 8
"""The most parts that are named in a closing line."""


def _say_strips(pieces: Mapping[str, int]) -> str:
    """Say which parts have a strip, by ID with the number of its pieces, and what of strips is
    not to be trusted."""
    if not pieces:
        return (
            "No strip: it wants two fittings near the hinge edge or the front edge, and room for "
            "its joins between the holes. Cards serve as well."
        )
    named = ", ".join(pieces) if len(pieces) <= NAMED else f"{len(pieces)} parts"
    if max(pieces.values()) == 1:
        how = "In one piece: check every hole by its written distance before drilling."
    else:
        how = (
            "Each join may add 0.3 mm: check every hole by its written distance from the end "
            "before drilling."
        )
    return f"Strips for {named}; all else is on cards.\n{how}"


def draw_labels(
    layout: "Layout",
    labels: "Sequence[LabelWords]",
    stock: "Stock",
    raster: "Raster",
    *,
    start: int = 1,
    copies: int = 1,
) -> tuple[bytes, int]:
    """Draw labels as a PDF for a printer's raster; give it and the number of its pages."""
    from templates.labels.labels import each_label_page
    from templates.writers.pdf import write_pdf

    drawn = each_label_page(layout, labels, stock, start=start, copies=copies, raster=raster)
    pages = Pages(drawn, -(-(start - 1 + len(labels) * copies) // stock.places))
    return write_pdf(pages, title=_title(layout, "labels")), pages.counts.total()


def draw_tags(
    layout: "Layout",
    stock: "Stock",
    raster: "Raster",
    *,
    start: int = 1,
    copies: int = 1,
    only: Collection[str] | None = None,
) -> tuple[bytes, int, list[str]]:
    """Draw cup tags as a PDF; give it, the number of doors that have one, and what is to be said
    of them and of the others. No door with a cup: no PDF, b""."""
    from jigs.layout.layout import as_printed
    from templates.labels.cuptag import find_tagged, tag_pages, tell_tags
    from templates.writers.pdf import write_pdf

    layout = as_printed(layout)
    tagged, without = find_tagged(layout, stock, only)
    words = tell_tags(tagged, without, stock)
    if not tagged:
        return b"", 0, words
    pages = tag_pages(layout, tagged, stock, raster, start=start, copies=copies)
    return write_pdf(pages, title=_title(layout, "cup tags")), len(tagged), words


def draw_walls(
    layout: "Layout", paper: str, only: Collection[str] | None = None
) -> tuple[list["Drawn"], "Layout"]:
    """Draw the elevations of the walls on which the chosen parts stand; give their sheets, and
    the layout narrowed to these walls."""
    from jigs.layout.layout import as_printed
    from templates.elevations.elevation import draw_elevations
    from templates.page.ownpaper import named_paper

    drawn = draw_elevations(as_printed(layout), named_paper(paper).for_drawings)
    if only is None:
        return list(drawn), layout
    chosen = narrow(layout, only)
    boxes = boxes_with(layout, chosen, only)
    sheets = [sheet for sheet in drawn if boxes & sheet.box_ids]
    return sheets, narrow(layout, frozenset().union(*(sheet.box_ids for sheet in sheets)))


def bind_walls(layout: "Layout", sheets: Iterable["Drawn"]) -> bytes:
    """Put elevations into one PDF."""
    return bind(layout, (sheet.page for sheet in sheets), "elevations")


def bind(layout: "Layout", pages: Iterable["Page"], what: str) -> bytes:
    """Put pages into one PDF, titled by the job and what they are."""
    from templates.writers.pdf import write_pdf

    return write_pdf(pages, title=_title(layout, what))


def is_single(target: str) -> bool:
    """Tell whether drawings go into one file there, and not into a folder."""
    return target == "-" or target.lower().endswith(".svg")


def write_drawings(
    target: str, drawings: Sequence[tuple[str, "Page"]], sources: Iterable[Path]
) -> None:
    """Write drawings as SVG, each by its name into a folder, or a single one into its file."""
    from templates.writers.svg import write_svg

    single = is_single(target)
    if single and len(drawings) > 1:
        raise click.BadParameter(
            f"{len(drawings)} drawings do not go into one file; choose a wall with --only, or "
            "give a folder.",
            param_hint="'-o'",
        )
    if not single:
        make_folder(Path(target))
    for name, page in drawings:
        file = target if single else str(Path(target) / f"{name}.svg")
        write_text(file, write_svg(page), sources=sources)


def draw_lists(layout: "Layout", listings: Iterable["Listing"], paper: str) -> tuple[bytes, int]:
    """Put lists into one PDF, each numbered by itself; give it and the number of its pages."""
    from templates.lists.listpages import list_pages
    from templates.page.ownpaper import named_paper
    from templates.writers.pdf import write_pdf

    sheet = named_paper(paper).for_drawings
    listings = list(listings)
    pages = [page for listing in listings for page in list_pages(listing, sheet)]
    what = " and ".join(listing.title.lower() for listing in listings)
    return write_pdf(pages, title=_title(layout, what)), len(pages)


def tell_lists(target: str, pages: int) -> None:
    """Tell how many pages a list has, unless it is the output itself."""
    from templates.words.textlines import counted

    if target != "-":
        mention(f"{target}: {counted(pages, 'page')}.")


def draw_sticks(
    layout: "Layout", paper: "Paper", boards: Collection[str] | None = None
) -> tuple[bytes, int]:
    """Draw the story sticks of a job's boards as a PDF; give it and its pages, b"" where there
    are none."""
    from jigs.bench.storystick import find_sticks
    from jigs.layout.layout import as_printed
    from templates.strips.storystick import stick_pages
    from templates.writers.pdf import write_pdf

    sticks = find_sticks(as_printed(layout), boards)
    pages = [paper.scaled(page) for page in stick_pages(sticks, layout.job.name, paper)]
    return write_pdf(pages, title=_title(layout, "story sticks")) if pages else b"", len(pages)


def tell_unprintable(layout: "Layout") -> None:
    """Tell on standard error which of the job's texts the printed face, or a symbol, cannot
    show."""
    from templates.page.unprintable import unprintable
    from templates.words.scanwords import tell_walls

    for line in (*unprintable(layout), *tell_walls(layout)):
        tell(line)


def _title(layout: "Layout", what: str) -> str:
    return f"{layout.job.name}: {what}" if layout.job.name else what.capitalize()
