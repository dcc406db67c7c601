"""`jigsheet labels`: a label for every part, on sheets of labels."""

from pathlib import Path
from typing import Literal

import click

from cli.jobs import end, lay_out_job, tell_problems
from cli.labelstock import check_start, find_stock, raster_for
from cli.options import (
    delivered_option,
    dots_option,
    job_argument,
    only_option,
    output_option,
    printer_option,
    stock_option,
    units_option,
)
from cli.output import write_bytes
from cli.printers import find_printer
from cli.selection import narrow, select


@click.command()
@job_argument
@units_option
@delivered_option
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
    "--pieces",
    type=click.Choice(["box", "cut"]),
    help="Labels for bottoms, backs, shelves and all other pieces too, box by box or in the "
    "order of cutting: by thickness, then length.",
)
@output_option("labels.pdf")
@click.pass_context
def labels(
    ctx: click.Context,
    job: Path,
    units: Literal["mm", "in"] | None,
    delivered: Path | None,
    only: tuple[str, ...],
    stock: str,
    printer: str | None,
    dots: int | None,
    start: int,
    copies: int,
    pieces: str | None,
    output: str,
) -> None:
    """Print a label with a QR code for every part of JOB; a part held back says HOLD.

    With a stock of cup tags it prints one for every door that has a cup.
    """
    from cli.drawing import draw_labels, draw_tags, tell_unprintable

    layout = lay_out_job(job, units, delivered=delivered, targets=(output,))
    labels_of = find_stock(stock, layout.job)
    check_start(labels_of, start)
    raster = raster_for(labels_of, find_printer(printer, layout.job), dots)
    more: list[str] = []
    if pieces:
        from jigs.cutlist.cutlist import cut_list

        if labels_of.bore is not None:
            raise click.UsageError("--pieces is for labels; tags go into the cups of doors.")
        more = [piece.id for piece in cut_list(layout)]
    chosen = select(layout, only, more)
    if labels_of.bore is not None:
        data, count, words = draw_tags(
            layout, labels_of, raster, start=start, copies=copies, only=chosen
        )
        told = f"{output}: tags for {count} door{'s' * (count != 1)}. Print at 100 %, cut out."
    else:
        words = []
        data = draw_labels(
            layout, labels_of, raster, start=start, copies=copies, only=chosen, pieces=pieces
        )
        told = f"{output}: print at 100 % on {labels_of.name} labels."
    if data:
        write_bytes(output, data, sources=layout.job.sources)
    else:
        told = "No door has a cup for such a tag. No file is written."
    if output != "-" or not data:
        click.echo(told, err=True)
    for line in words:
        click.echo(line, err=True)
    concerned = narrow(layout, chosen)
    tell_unprintable(concerned)
    tell_problems(job, concerned)
    end(ctx, concerned)
