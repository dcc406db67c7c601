"""`jigsheet holes`: every hole, in words, for a spreadsheet, or as data."""

from pathlib import Path
from typing import Literal

import click

from cli.jobs import end, lay_out_job, tell_problems
from cli.options import delivered_option, job_argument, only_option, output_option, units_option
from cli.output import write_text
from cli.selection import narrow, select


@click.command()
@job_argument
@units_option
@delivered_option
@only_option
@click.option(
    "--format",
    "form",
    type=click.Choice(["text", "csv", "json"]),
    default="text",
    show_default=True,
    help="Tables for people, one hole a line for a spreadsheet, or everything as data.",
)
@output_option("-")
@click.pass_context
def holes(
    ctx: click.Context,
    job: Path,
    units: Literal["mm", "in"] | None,
    delivered: Path | None,
    only: tuple[str, ...],
    form: Literal["text", "csv", "json"],
    output: str,
) -> None:
    """List every hole of JOB with its place, diameter and depth."""
    from templates.lists.holelist import holes_csv, holes_json, holes_text

    whole = lay_out_job(job, units, delivered=delivered, targets=(output,))
    layout = narrow(whole, select(whole, only))
    text = {"text": holes_text, "csv": holes_csv, "json": holes_json}[form](layout)
    write_text(output, text, sources=layout.job.sources)
    tell_problems(job, layout)
    end(ctx, layout)
