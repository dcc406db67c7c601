"""`jigsheet parts`: the cut list, for people, on paper, for a spreadsheet, or as data."""

from pathlib import Path
from typing import TYPE_CHECKING, Literal

import click

from cli.jobs import end, lay_out_job, tell_problems
from cli.options import (
    delivered_option,
    job_argument,
    only_option,
    paper_for_pdf,
    paper_option,
    units_option,
)
from cli.output import write_bytes, write_text

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
    type=click.Choice(["text", "pdf", "csv", "json"]),
    default="text",
    show_default=True,
    help="Tables for people, the same on paper with boxes to tick, one piece a line for a "
    "spreadsheet, or everything as data.",
)
@paper_option
@click.option(
    "-o",
    "--output",
    metavar="FILE",
    help="Where to write; - for standard output.  [default: standard output; pdf: parts.pdf]",
)
@click.pass_context
def parts(
    ctx: click.Context,
    job: Path,
    units: Literal["mm", "in"] | None,
    delivered: Path | None,
    only: tuple[str, ...],
    form: Literal["text", "pdf", "csv", "json"],
    paper: str,
    output: str | None,
) -> None:
    """List every piece of JOB to be cut: true sizes, edge band, screws, grooves."""
    from templates.lists.partslist import parts_csv, parts_json
    from templates.lists.partstables import parts_listing, parts_text

    paper_for_pdf(ctx, form)
    target = output or ("parts.pdf" if form == "pdf" else "-")
    chosen = list_parts(job, units, only, target, delivered)
    sources = chosen.layout.job.sources
    if form == "pdf":
        from cli.drawing import draw_lists, tell_lists

        data, pages = draw_lists(chosen.layout, [parts_listing(chosen)], paper)
        write_bytes(target, data, sources=sources)
        tell_lists(target, pages)
    else:
        text = {"text": parts_text, "csv": parts_csv, "json": parts_json}[form](chosen)
        write_text(target, text, sources=sources)
    tell_problems(job, chosen.layout)
    end(ctx, chosen.layout)


def list_parts(
    job: Path,
    units: Literal["mm", "in"] | None,
    only: tuple[str, ...],
    target: str,
    delivered: Path | None = None,
) -> "PartsList":
    """Cut JOB into its pieces, and choose those that --only names."""
    from cli.selection import narrow, select
    from jigs.checks.cutting import with_cutting
    from jigs.order.partslist import choose_parts

    layout, cut = with_cutting(lay_out_job(job, units, delivered=delivered, targets=(target,)))
    names = select(layout, only, more=(piece.id for piece in cut.pieces))
    return choose_parts(narrow(layout, names), cut, names)
