"""`jigsheet gaps`: whether each gap of the kitchen stays open."""

from typing import Literal

import click

from cli.jobs import Asked
from cli.options import format_option, only_option, output_option, with_job
from cli.output import write_text
from cli.selection import narrow, select


@click.command()
@with_job
@only_option
@format_option(
    ("text", "csv", "json"), "For people, one gap a line for a spreadsheet, or all as data."
)
@output_option("-")
def gaps(
    asked: Asked, only: tuple[str, ...], form: Literal["text", "csv", "json"], output: str
) -> None:
    """Reckon whether the gaps between the fronts of JOB stay open.

    What boxes, joints, fronts, paint and the damp season may take from each; what it needs to
    open; what would help. What was measured, and what --delivered lists, stands in place of its
    tolerance.
    """
    from jigs.gaps.chance import chance_of
    from jigs.gaps.reckoning import choose_gaps, reckon_gaps
    from templates.lists.gaplist import gaps_csv, gaps_json, gaps_text

    layout = asked.lay_out(output)
    names = select(layout, only)
    found = choose_gaps(reckon_gaps(layout), names)
    chance = chance_of(found.budgets, layout.job.reveal.between) if form != "csv" else None
    write = {"text": gaps_text, "csv": gaps_csv, "json": gaps_json}[form]
    write_text(output, write(found, layout.job, chance), sources=layout.job.sources)
    asked.end(narrow(layout, names))
