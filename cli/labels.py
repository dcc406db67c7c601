"""`jigsheet labels`: a label for every part, on sheets of labels."""

from pathlib import Path
from typing import Literal

import click

from cli.jobs import end, lay_out_job, tell_problems
from cli.options import (
    delivered_option,
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
@click.option(
    "--start",
    type=click.IntRange(min=1),
    default=1,
    show_default=True,
    metavar="N",
    help="First free place on a sheet that was begun, counted row by row from the top left.",
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
    start: int,
    pieces: str | None,
    output: str,
) -> None:
    """Print a label with a QR code for every part of JOB; a part held back says HOLD."""
    from cli.drawing import draw_labels, tell_unprintable
    from templates.stocks import STOCKS

    places = STOCKS[stock].places
    if start > places:
        raise click.BadParameter(
            f"{start} given; a sheet of {stock} has places 1 to {places}.", param_hint="'--start'"
        )
    layout = lay_out_job(job, units, delivered=delivered, targets=(output,))
    more: list[str] = []
    if pieces:
        from jigs.cutlist.cutlist import cut_list

        more = [piece.id for piece in cut_list(layout)]
    chosen = select(layout, only, more)
    data = draw_labels(layout, stock, start, chosen, find_printer(printer, layout.job), pieces)
    write_bytes(output, data, sources=layout.job.sources)
    if output != "-":
        click.echo(f"{output}: print at 100 % on {stock} labels.", err=True)
    concerned = narrow(layout, chosen)
    tell_unprintable(concerned)
    tell_problems(job, concerned)
    end(ctx, concerned)
