"""`jigsheet check`: what is wrong or doubtful, each with its remedy."""

import click

from cli.jobs import Asked
from cli.options import output_option, with_job
from cli.output import write_text


@click.command()
@with_job
@output_option("-")
def check(
    asked: Asked,
    output: str,
) -> None:
    """Say what is wrong or doubtful about JOB, each with its remedy."""
    from jigs.checks.rubbing import before_order
    from templates.words.findings import check_text

    layout = before_order(asked.lay_out(output, echo=False))
    write_text(output, check_text(layout), sources=layout.job.sources)
    asked.end(layout, told=True)
