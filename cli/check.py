"""`jigsheet check`: what is wrong or doubtful, each with its remedy."""

from pathlib import Path
from typing import Literal

import click

from cli.jobs import end, lay_out_job
from cli.options import delivered_option, job_argument, output_option, units_option
from cli.output import write_text


@click.command()
@job_argument
@units_option
@delivered_option
@output_option("-")
@click.pass_context
def check(
    ctx: click.Context,
    job: Path,
    units: Literal["mm", "in"] | None,
    delivered: Path | None,
    output: str,
) -> None:
    """Say what is wrong or doubtful about JOB, each with its remedy."""
    from jigs.checks.cutting import with_cutting
    from templates.words.findings import check_text

    read = lay_out_job(job, units, delivered=delivered, targets=(output,), echo=False)
    layout = with_cutting(read)[0]
    write_text(output, check_text(layout), sources=layout.job.sources)
    end(ctx, layout)
