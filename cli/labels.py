"""`jigsheet labels`: a label for every part, on sheets of labels."""

from typing import Literal

import click

from cli.failures import Failure
from cli.jobs import Asked
from cli.labelstock import check_start, find_stock, raster_for
from cli.options import (
    dots_option,
    only_option,
    output_option,
    printer_option,
    stock_option,
    with_job,
)
from cli.output import write_bytes
from cli.printers import find_printer
from cli.selection import narrow, select
from cli.terminal import tell


@click.command()
@with_job
@only_option
@stock_option
@printer_option
@dots_option
@click.option(
    "--start",
    type=click.IntRange(min=1),
    default=1,
    show_default=True,
    metavar="N",
    help="First free place on a sheet that was begun, counted row by row from the top left.",
)
@click.option(
    "--copies",
    type=click.IntRange(1, 99),
    default=1,
    show_default=True,
    metavar="N",
    help="Labels for each part, one after the other.",
)
@click.option(
    "--for",
    "kinds",
    type=click.Choice(["all", "pieces", "fronts"]),
    default="all",
    show_default=True,
    help="Labels for every part, for what the boxes are built of (drawer boxes too), or for the "
    "fronts.",
)
@click.option(
    "--order",
    type=click.Choice(["box", "cut"]),
    default="box",
    show_default=True,
    help="Pieces in the order of assembly, wall by wall and box by box, or as they are cut: by "
    "thickness, then length.",
)
@output_option("labels.pdf")
def labels(
    asked: Asked,
    only: tuple[str, ...],
    stock: str | None,
    printer: str | None,
    dots: int | None,
    start: int,
    copies: int,
    kinds: Literal["all", "pieces", "fronts"],
    order: Literal["box", "cut"],
    output: str,
) -> None:
    """Print a label with a QR code for every part of JOB; a part held back says HOLD.

    With a stock of cup tags it prints one for every door that has a cup.
    """
    from cli.drawing import draw_labels, draw_tags, tell_unprintable
    from jigs.bench.stations import plan_stations
    from jigs.cutlist.cutlist import cut_list
    from jigs.layout.layout import as_printed
    from templates.binding.jobstations import reach_on
    from templates.labels.labellist import list_labels
    from templates.page.paper import PAPERS

    layout = asked.lay_out(output)
    labels_of = find_stock(stock, layout.job)
    check_start(labels_of, start)
    raster = raster_for(labels_of, find_printer(printer, layout.job), dots)
    if labels_of.bore is not None and (kinds, order) not in (("all", "box"), ("fronts", "box")):
        raise click.UsageError(
            "--for pieces and --order are for labels; tags go into the cups of doors."
        )
    pieces = cut_list(layout)
    chosen = select(layout, only, more=(piece.id for piece in pieces))
    if labels_of.bore is not None:
        data, count, words = draw_tags(
            layout, labels_of, raster, start=start, copies=copies, only=chosen
        )
        told = f"{output}: tags for {count} door{'s' * (count != 1)}. Print at 100 %, cut out."
    else:
        words = []
        printed = as_printed(layout)
        stations = plan_stations(printed, reach=reach_on(PAPERS["common"]))
        listed = list_labels(printed, pieces, stations, order=order, kinds=kinds, only=chosen)
        if not listed:
            raise Failure(f"No label: {_none_of(kinds)}. No file is written.")
        data, pages = draw_labels(printed, listed, labels_of, raster, start=start, copies=copies)
        count = len(listed) * copies
        many = f"{count} label{'s' * (count != 1)}"
        if not labels_of.roll:
            many += f" on {pages} sheet{'s' * (pages != 1)}"
        told = f"{output}: {many}. Print at 100 % on {labels_of.name} labels."
    if data:
        write_bytes(output, data, sources=layout.job.sources)
    else:
        told = "No door has a cup for such a tag. No file is written."
    if output != "-" or not data:
        tell(told)
    for line in words:
        tell(line)
    concerned = narrow(layout, chosen)
    tell_unprintable(concerned)
    asked.end(concerned)


def _none_of(kinds: Literal["all", "pieces", "fronts"]) -> str:
    """Say what the chosen parts have none of."""
    if kinds == "all":
        return "what was chosen has no part"
    return f"what was chosen has no {kinds}; --for all takes every part"
