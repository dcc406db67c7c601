"""`jigsheet stocks`: the label stocks there are, and the test page of one."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

from cli.completing import offer_stocks
from cli.labelstock import find_stock, known_stocks, raster_for
from cli.manners import command
from cli.options import dots_option, printer_option
from cli.output import write_bytes, write_text
from cli.printers import find_printer
from cli.terminal import mention

if TYPE_CHECKING:
    from jigs.given.job import Job


@command(
    ("Which labels there are", "stocks"),
    ("A test page, to hold against the light", "stocks letter-2x5"),
)
@click.argument("name", metavar="[NAME]", required=False, shell_complete=offer_stocks)
@click.option(
    "--job", metavar="JOB", type=click.Path(path_type=Path), help="Take the stocks of JOB as well."
)
@printer_option
@dots_option
@click.option(
    "-o",
    "--output",
    metavar="FILE",
    help="Where to write; - for standard output.  [default: standard output, NAME.pdf]",
)
def stocks(
    name: str | None, job: Path | None, printer: str | None, dots: int | None, output: str | None
) -> None:
    """List the stocks of labels, or draw the test page of one.

    Sheets, rolls and tags with their geometry. With NAME it draws that stock's test page, to lay
    over the labels against the light.
    """
    read = None
    if job is not None:
        from jigs.reading.inputs import read_job

        read = read_job(job, None)
    if name is not None:
        _draw(name, read, printer, dots, output)
        return
    if printer or dots:
        raise click.UsageError("--printer and --dots are for a stock's test page; give its NAME.")
    from templates.labels.stocks import list_text

    text = list_text(known_stocks(read).values())
    write_text(output or "-", text, sources=read.sources if read else ())


def _draw(
    name: str, job: "Job | None", printer: str | None, dots: int | None, output: str | None
) -> None:
    from templates.labels.fitpage import fit_page, tell_fit
    from templates.writers.pdf import write_pdf

    stock = find_stock(name, job, "'NAME'")
    if stock.bore is not None:
        raise click.UsageError(
            f"{stock.name} is cut out of plain paper: there is no stock to lay its page over."
        )
    press = find_printer(printer, job)
    page = fit_page(stock, raster_for(stock, press, dots), press.name if press else "")
    target = output or f"{stock.name}.pdf"
    data = write_pdf([page], title=f"Test page of {stock.name}")
    write_bytes(target, data, sources=job.sources if job else ())
    if target != "-":
        mention(f"{target}: {tell_fit(stock)}")
