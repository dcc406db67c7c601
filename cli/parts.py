"""`jigsheet parts`: the cut list, for people, for a spreadsheet, or as data."""

from pathlib import Path
from typing import TYPE_CHECKING, Literal

import click

from cli.jobs import end, lay_out_job, tell_problems
from cli.options import (
    delivered_option,
    job_argument,
    only_option,
    output_option,
    units_option,
)
from cli.output import write_text

if TYPE_CHECKING:
    from jigs.order.partslist import PartsList


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
    help="Tables for people, one piece a line for a spreadsheet, or everything as data.",
)
@output_option("-")
@click.pass_context
def parts(
    ctx: click.Context,
    job: Path,
    units: Literal["mm", "in"] | None,
    delivered: Path | None,
    only: tuple[str, ...],
    form: Literal["text", "csv", "json"],
    output: str,
) -> None:
    """List every piece of JOB to be cut: true sizes, edge band, screws, grooves."""
    from templates.lists.partslist import parts_csv, parts_json
    from templates.lists.partstables import parts_text

    chosen = list_parts(job, units, only, output, delivered)
    text = {"text": parts_text, "csv": parts_csv, "json": parts_json}[form](chosen)
    write_text(output, text, sources=chosen.layout.job.sources)
    tell_problems(job, chosen.layout)
    end(ctx, chosen.layout)


def list_parts(
    job: Path,
    units: Literal["mm", "in"] | None,
    only: tuple[str, ...],
    output: str,
    delivered: Path | None = None,
) -> "PartsList":
    """Cut JOB into its pieces, and choose those that --only names."""
    from cli.selection import narrow, select
    from jigs.checks.cutting import with_cutting
    from jigs.order.partslist import choose_parts

    layout, cut = with_cutting(lay_out_job(job, units, delivered=delivered, targets=(output,)))
    names = select(layout, only, more=(piece.id for piece in cut.pieces))
    return choose_parts(narrow(layout, names), cut, names)
