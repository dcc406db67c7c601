"""`jigsheet pack`: everything that goes to the bench, in one folder."""

from functools import partial
from io import BytesIO
from pathlib import Path

import click
from msgspec.structs import replace

from cli.jobs import Asked
from cli.labelstock import find_stock, raster_for
from cli.manners import command
from cli.options import (
    each_option,
    paper_option,
    printer_option,
    stock_option,
    with_job,
)
from cli.output import write_text
from cli.packfolder import CONTENTS, write_pack
from cli.printers import find_paper, find_printer
from cli.terminal import is_quiet, mention, tell, typed


@command(
    ("Everything for the bench, in the folder 'pack'", "pack kitchen.toml"),
    ("For a printer that was measured", "pack kitchen.toml --printer garage"),
    ("On letter paper, into a folder of its own", "pack kitchen.toml --paper letter -o bench"),
)
@with_job
@paper_option
@printer_option
@each_option
@stock_option
@click.option(
    "-o",
    "--output",
    metavar="DIR",
    type=click.Path(path_type=Path),
    help="The folder to write into.  [default: 'pack' beside JOB]",
)
def pack(
    asked: Asked,
    paper: str,
    printer: str | None,
    each: bool,
    stock: str | None,
    output: Path | None,
) -> None:
    """Write everything for the bench into one folder.

    Stations, sheets, labels, heights, walls and lists of JOB. A file in it that is not as a pack
    wrote it stays, and the new one is written beside it.
    """
    from jigs.reading.stream import folder_of

    folder = output or folder_of(asked.path) / "pack"
    make_pack(asked, paper, stock, folder, printer, each=each)


def make_pack(
    asked: Asked,
    paper: str,
    stock: str | None,
    folder: Path,
    printer: str | None = None,
    *,
    each: bool = False,
) -> None:
    """Make the whole pack, then write it; the closing summary goes to standard output."""
    from cli.drawing import (
        bind,
        bind_walls,
        draw_labels,
        draw_lists,
        draw_sheets,
        draw_walls,
        tell_unprintable,
    )
    from jigs.bench.boxtable import box_tables
    from jigs.bench.stations import plan_stations
    from jigs.changes.making import make
    from jigs.checks.rubbing import before_order
    from jigs.cutlist.cutlist import choose_parts
    from jigs.layout.layout import as_printed
    from jigs.order.buying import make_order
    from templates.binding.jobsheets import make_sheets
    from templates.binding.jobstations import bind_stations, reach_on
    from templates.binding.packlist import contents_data
    from templates.labels.labellist import list_labels
    from templates.lists.digests import list_digests
    from templates.lists.heighttables import heights_listing
    from templates.lists.holelist import holes_csv
    from templates.lists.orderlist import order_csv
    from templates.lists.ordertables import order_listing
    from templates.lists.partslist import parts_csv
    from templates.lists.partstables import parts_listing
    from templates.lists.supplierlist import fronts_csv
    from templates.lists.worklist import plan_listing
    from templates.lists.workview import Paged, view_work
    from templates.words.costwords import cost_words, no_room_words
    from templates.words.findings import closing_text
    from templates.words.orderwords import listed_words

    layout, cut = asked.cut()
    labels_of = find_stock(stock, layout.job)
    if labels_of.bore is not None:
        raise click.UsageError(
            f"the pack wants labels, and {labels_of.name} is a tag for the bores of doors; print "
            f"it by itself: {typed('jigsheet', 'labels', asked.path, '--stock', labels_of.name)}"
        )
    raster = raster_for(labels_of, find_printer(printer, layout.job), None)
    sheet = find_paper(paper, printer, layout.job)
    printed = as_printed(layout)
    parts = choose_parts(layout, cut)
    order = make_order(printed, cut)
    files: dict[str, bytes] = {}
    costs: dict[str, str] = {}
    paged = Paged()
    # What nothing is drilled at, or no side has lines of, makes no file.
    planned = plan_stations(printed, reach=reach_on(sheet))
    work = view_work(printed, cut, planned, paged)
    lists = list_digests(printed, cut, order, work)
    made = make(printed, cut, order, planned, reach=reach_on(sheet), lists=lists)
    words = list_labels(printed, cut.pieces, planned)
    if planned:
        stations = bind_stations(printed, planned, sheet)
        files["stations.pdf"] = bind(printed, stations.pages, "stations")
        costs["stations.pdf"] = cost_words(stations.cost)
        paged = stations.paged
    sheets = make_sheets(printed, sheet, each=each)
    drawn = BytesIO()
    draw_sheets(sheets, drawn)
    files["sheets.pdf"], costs["sheets.pdf"] = drawn.getvalue(), cost_words(sheets.cost)
    files["labels.pdf"], _ = draw_labels(printed, words, labels_of, raster)
    if tables := box_tables(planned):
        files["heights.pdf"], _ = draw_lists(
            layout, [heights_listing(tables, printed, planned)], paper
        )
    files["elevations.pdf"] = bind_walls(layout, draw_walls(layout, paper)[0])
    listings = [parts_listing(parts), order_listing(order, printed.job)]
    files["lists.pdf"], _ = draw_lists(layout, listings, paper)
    data = {
        "holes.csv": holes_csv(layout),
        "parts.csv": parts_csv(parts),
        "order.csv": order_csv(order, printed.job),
        "fronts.csv": fronts_csv(order, printed.job),
    }
    files |= {name: text.encode(errors="replace") for name, text in data.items()}
    left_out = listed_words(order)
    said = {**costs, "fronts.csv": f"HAS {left_out}"} if left_out else costs
    paged = replace(paged, files=("plan.pdf", *files, CONTENTS), costs=said)
    steps = plan_listing(replace(work, paged=paged))
    files = {"plan.pdf": draw_lists(layout, [steps], paper)[0], **files}
    packed = write_pack(
        folder,
        files,
        partial(contents_data, layout, {label.part: label.code for label in words}, made),
        layout.job.sources,
    )
    tell_unprintable(layout)
    mention(f"{folder}: {', '.join(packed.files)}.")
    for name, new in packed.kept:
        tell(f"'{folder / name}' is not as a pack wrote it: it stays, and the new one is {new}.")
    if left_out:
        tell(f"fronts.csv has {left_out}; its last row names those that are held back.")
    closing = closing_text(layout, costs, len(words), labels_of.name, written=not is_quiet())
    write_text("-", closing, sources=())
    asked.end(before_order(layout), *no_room_words(sheets.no_room, sheet.name))
