"""`jigsheet sheets`: the drilling sheets, to be printed at 100 %."""

from pathlib import Path
from typing import TYPE_CHECKING, Literal

import click

from cli.jobs import end, lay_out_job, tell_problems
from cli.options import (
    delivered_option,
    job_argument,
    only_option,
    paper_option,
    printer_option,
    units_option,
)
from cli.output import write_bytes, write_text
from cli.printers import find_paper
from cli.selection import narrow, nothing_drawn, select, select_first

if TYPE_CHECKING:
    from jigs.parts import Layout
    from templates.paper import Paper


@click.command()
@job_argument
@units_option
@delivered_option
@only_option
@click.option(
    "--first",
    is_flag=True,
    help="Only what it takes to try one door and one drawer of each hardware on scrap.",
)
@click.option(
    "--stick",
    is_flag=True,
    help="The story stick of each family of equal sides instead, and its spacer boards.",
)
@paper_option
@printer_option
@click.option(
    "--format",
    "form",
    type=click.Choice(["pdf", "json"]),
    default="pdf",
    show_default=True,
    help="A file to print, or the cards as data.",
)
@click.option(
    "-o",
    "--output",
    metavar="FILE",
    help="Where to write; - for standard output.  "
    "[default: sheets.pdf, stick.pdf; json: standard output]",
)
@click.pass_context
def sheets(
    ctx: click.Context,
    job: Path,
    units: Literal["mm", "in"] | None,
    delivered: Path | None,
    only: tuple[str, ...],
    first: bool,
    stick: bool,
    paper: str,
    printer: str | None,
    form: Literal["pdf", "json"],
    output: str | None,
) -> None:
    """Draw the drilling sheets of JOB at full scale."""
    from jigs.layout import as_printed
    from templates.sheets import make_sheets

    if first and only:
        raise click.UsageError("--first chooses the parts itself; give it without --only.")
    if stick and (first or form == "json"):
        raise click.UsageError("--stick is drawn by itself, as a PDF.")
    target = output or ("stick.pdf" if stick else {"pdf": "sheets.pdf", "json": "-"}[form])
    layout = lay_out_job(job, units, delivered=delivered, targets=(target,))
    sheet = find_paper(paper, printer, layout.job)
    chosen = select_first(layout) if first else select(layout, only)
    concerned = narrow(layout, chosen)
    if stick:
        _draw_stick(concerned, sheet, target)
    elif chosen and not make_sheets(concerned, sheet, only=chosen).any_part:
        click.echo(nothing_drawn(concerned), err=True)
    elif form == "json":
        from templates.sheetdata import sheets_json

        text = sheets_json(make_sheets(as_printed(layout), sheet, only=chosen, first=first))
        write_text(target, text, sources=layout.job.sources)
    else:
        from cli.drawing import draw_sheets, tell_unprintable

        data, pages = draw_sheets(layout, sheet, chosen, first=first)
        write_bytes(target, data, sources=layout.job.sources)
        if target != "-":
            noun = "page" if pages == 1 else "pages"
            click.echo(
                f"{target}: {pages} {noun}. Print at 100 %; measure the bars on page 1 first.",
                err=True,
            )
        tell_unprintable(concerned)
    tell_problems(job, concerned)
    end(ctx, concerned)


def _draw_stick(layout: "Layout", paper: "Paper", target: str) -> None:
    from cli.drawing import draw_sticks

    data, pages = draw_sticks(layout, paper)
    if not pages:
        click.echo("No side among these has a hole: there is nothing for a stick.", err=True)
        return
    write_bytes(target, data, sources=layout.job.sources)
    if target != "-":
        noun = "page" if pages == 1 else "pages"
        click.echo(
            f"{target}: {pages} {noun}. Print at 100 %; measure the joined stick with a steel "
            "tape.",
            err=True,
        )
