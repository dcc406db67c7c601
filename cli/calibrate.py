"""`jigsheet calibrate`: the test page of a printer, and what was measured on it."""

from pathlib import Path
from typing import TYPE_CHECKING, Literal

import click

from cli.failures import Failure
from cli.options import paper_option
from cli.output import write_bytes, write_text
from cli.printers import settings_file, stored_printers

if TYPE_CHECKING:
    from jigs.printer import Printer

Bars = Literal["mm", "in"]


@click.command()
@click.argument("name", metavar="[NAME]", required=False)
@click.option("--across", metavar="LENGTH", help="The bar across the paper, as measured.")
@click.option("--along", metavar="LENGTH", help="The bar along the paper, as measured.")
@click.option(
    "--bars",
    type=click.Choice(["mm", "in"]),
    default="mm",
    show_default=True,
    help="Which bars these are: 180 and 200 mm, or 7 and 8 in; the unit of a bare number.",
)
@click.option(
    "--diagonals",
    nargs=2,
    metavar="LENGTH LENGTH",
    help="Both diagonals of the frame, as measured.",
)
@click.option("--tray", default="", metavar="TEXT", help="The tray the paper came from.")
@click.option("--job", type=click.Path(path_type=Path), metavar="JOB", help="Keep it in JOB.")
@click.option("--list", "listed", is_flag=True, help="List the printers of your settings.")
@paper_option
@click.option(
    "-o",
    "--output",
    metavar="FILE",
    help="Where to write the test page; - for standard output.  [default: calibrate.pdf]",
)
def calibrate(
    name: str | None,
    across: str | None,
    along: str | None,
    bars: Bars,
    diagonals: tuple[str, str] | None,
    tray: str,
    job: Path | None,
    listed: bool,
    paper: str,
    output: str | None,
) -> None:
    """Print a printer's test page; with NAME, --across and --along record what it measures.

    The lengths go into your own settings, or with --job into the job file.
    """
    if listed:
        _list()
        return
    if name is None:
        if across or along or job or diagonals or tray:
            raise click.UsageError("give the printer a NAME: jigsheet calibrate garage --across ..")
        _print_page(paper, output or "calibrate.pdf")
        return
    if across is None or along is None:
        raise click.UsageError(
            "both --across and --along are needed, as measured on the test page; "
            "without NAME it is printed."
        )
    if output is not None:
        raise click.UsageError("-o is for the test page; it goes without NAME.")
    _record(_measured(name, across, along, bars, diagonals, tray, paper), job)


def _print_page(paper: str, target: str) -> None:
    from templates.calibration import calibration_page
    from templates.paper import PAPERS
    from templates.pdf import write_pdf

    write_bytes(target, write_pdf([calibration_page(PAPERS[paper])], title="Test page"), sources=())
    if target != "-":
        click.echo(
            f"{target}: print at 100 % and measure its bars. Then\n"
            "  jigsheet calibrate NAME --across LENGTH --along LENGTH",
            err=True,
        )


def _measured(
    name: str,
    across: str,
    along: str,
    bars: Bars,
    diagonals: tuple[str, str] | None,
    tray: str,
    paper: str,
) -> "Printer":
    """Read the lengths; every fault at once."""
    from jigs.jobprinters import NAME, NAME_RULE
    from jigs.printer import Printer, find_faults, skew_of

    faults = [] if NAME.fullmatch(name) else [f"not a printer's name ({name!r} given); {NAME_RULE}"]
    wide, long = _length("--across", across, bars, faults), _length("--along", along, bars, faults)
    skew = 0.0
    if diagonals:
        both = [_length("--diagonals", text, bars, faults) for text in diagonals]
        if None not in both:
            skew = skew_of((both[0] or 0.0, both[1] or 0.0))
    if wide is None or long is None:
        raise Failure("\n".join([*faults, "Nothing was recorded."]))
    printer = Printer(name=name, across=wide, along=long, bars=bars, paper=paper, tray=tray)
    faults += find_faults(printer)
    if skew:
        faults.append(
            f"the diagonals differ by {skew:.1f} mm: the paper goes in askew, which nothing can "
            "correct; straighten its guides and print the test page again"
        )
    if faults:
        raise Failure("\n".join([*faults, "Nothing was recorded."]))
    return printer


def _length(option: str, text: str, bars: Bars, faults: list[str]) -> float | None:
    from jigs.errors import LengthError
    from jigs.lengths import parse_length

    try:
        return parse_length(text, bars)
    except LengthError as error:
        faults.append(f"{option}: {error}")
        return None


def _record(printer: "Printer", job: Path | None) -> None:
    from jigs.jobprinters import printer_toml, printers_toml

    if job is None:
        target = settings_file()
        target.parent.mkdir(parents=True, exist_ok=True)
        write_text(str(target), printers_toml({**stored_printers(), printer.name: printer}),
                   sources=())  # fmt: skip
    else:
        from jigs.reading import read_job

        if printer.name in read_job(job, None).printers:
            raise Failure(
                f"{job}: it has a [printer.{printer.name}] already; write into it:\n"
                f"{printer_toml(printer)}Nothing was recorded."
            )
        target = job
        added = f"\n{printer_toml(printer)}".encode()
        write_bytes(str(job), job.read_bytes() + added, sources=())
    click.echo(
        f"{printer.name}: x {printer.scale_across:.4f} across, x {printer.scale_along:.4f} along; "
        f"kept in {target}.\n"
        f"Print with --printer {printer.name}, and measure the sheets' own bars again."
    )
    if printer.uneven:
        click.echo("The two differ by over 2 %: measure once more before you trust it.")


def _list() -> None:
    printers = stored_printers()
    for name, printer in sorted(printers.items()):
        place = ", ".join(word for word in (printer.paper, printer.tray) if word)
        click.echo(
            f"{name}: x {printer.scale_across:.4f} across, x {printer.scale_along:.4f} along"
            f"{f' ({place})' if place else ''}"
        )
    if not printers:
        click.echo("No printer is calibrated yet. 'jigsheet calibrate' prints the test page.")
