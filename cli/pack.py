"""`jigsheet pack`: everything that goes to the bench, in one folder."""

from functools import partial
from pathlib import Path
from typing import Literal

import click

from cli.jobs import end, lay_out_job, tell_problems
from cli.labelstock import find_stock, raster_for
from cli.options import (
    delivered_option,
    job_argument,
    paper_option,
    printer_option,
    same_holes_option,
    stock_option,
    tight_option,
    units_option,
)
from cli.output import write_text
from cli.packfolder import write_pack
from cli.printers import find_paper, find_printer
from cli.terminal import tell


@click.command()
@job_argument
@units_option
@delivered_option
@paper_option
@printer_option
@same_holes_option
@tight_option
@stock_option
@click.option(
    "-o",
    "--output",
    metavar="DIR",
    type=click.Path(path_type=Path),
    help="The folder to write into.  [default: 'pack' beside JOB]",
)
@click.pass_context
def pack(
    ctx: click.Context,
    job: Path,
    units: Literal["mm", "in"] | None,
    delivered: Path | None,
    paper: str,
    printer: str | None,
    same_holes: bool,
    tight: bool,
    stock: str | None,
    output: Path | None,
) -> None:
    """Write everything for the bench to a folder: sheets, labels, sticks, walls, lists."""
    from jigs.reading.stream import folder_of

    folder = output or folder_of(job) / "pack"
    make_pack(
        ctx, job, units, delivered, paper, stock, folder, printer, same=same_holes, tight=tight
    )


def make_pack(
    ctx: click.Context,
    job: Path,
    units: Literal["mm", "in"] | None,
    delivered: Path | None,
    paper: str,
    stock: str | None,
    folder: Path,
    printer: str | None = None,
    *,
    same: bool = False,
    tight: bool = False,
) -> None:
    """Make the whole pack, then write it; the closing summary goes to standard output."""
    from cli.drawing import (
        bind_walls,
        draw_labels,
        draw_sheets,
        draw_sticks,
        draw_walls,
        tell_unprintable,
    )
    from jigs.cutlist.cutlist import cut_job
    from jigs.layout.layout import as_printed
    from jigs.order.buying import make_order
    from jigs.order.partslist import choose_parts
    from templates.binding.jobsheets import make_sheets
    from templates.binding.packlist import contents_data
    from templates.labels.labellist import list_labels
    from templates.lists.holelist import holes_csv
    from templates.lists.orderlist import order_csv
    from templates.lists.partslist import parts_csv
    from templates.lists.supplierlist import fronts_csv
    from templates.words.findings import closing_text

    layout = lay_out_job(job, units, delivered=delivered)
    labels_of = find_stock(stock, layout.job)
    if labels_of.bore is not None:
        raise click.UsageError(
            f"the pack wants labels, and {labels_of.name} is a tag for the bores of doors; print "
            f"it by itself: jigsheet labels {job} --stock {labels_of.name}"
        )
    raster = raster_for(labels_of, find_printer(printer, layout.job), None)
    sheet = find_paper(paper, printer, layout.job)
    printed = as_printed(layout)
    sheets, pages = draw_sheets(make_sheets(printed, sheet, same=same, tight=tight))
    cut = cut_job(layout)
    words = list_labels(printed, cut.pieces)
    labels, _ = draw_labels(printed, words, labels_of, raster)
    sticks, _ = draw_sticks(layout, sheet)
    order = make_order(printed, cut)
    lists = {
        "holes.csv": holes_csv(layout),
        "parts.csv": parts_csv(choose_parts(layout, cut)),
        "order.csv": order_csv(order, printed.job),
        "fronts.csv": fronts_csv(order, printed.job),
    }
    packed = write_pack(
        folder,
        {
            "sheets.pdf": sheets,
            "labels.pdf": labels,
            **({"stick.pdf": sticks} if sticks else {}),  # no side of the job has a hole
            "elevations.pdf": bind_walls(layout, draw_walls(layout, paper)[0]),
            **{name: text.encode(errors="replace") for name, text in lists.items()},
        },
        partial(contents_data, layout, words),
        layout.job.sources,
    )
    tell_unprintable(layout)
    tell_problems(job, layout)
    tell(f"{folder}: {', '.join(packed.files)}.")
    for name, new in packed.kept:
        tell(f"'{folder / name}' is not as a pack wrote it: it stays, and the new one is {new}.")
    write_text("-", closing_text(layout, pages, len(words), labels_of.name), sources=())
    end(ctx, layout)
