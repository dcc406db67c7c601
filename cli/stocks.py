"""`jigsheet stocks`: the label stocks there are."""

from pathlib import Path

import click

from cli.labelstock import known_stocks
from cli.options import output_option
from cli.output import write_text


@click.command()
@click.option(
    "--job", metavar="JOB", type=click.Path(path_type=Path), help="List the stocks of JOB as well."
)
@output_option("-")
def stocks(job: Path | None, output: str) -> None:
    """List the sheets and rolls of labels, and the tags, with their geometry."""
    from templates.stocks import list_text

    read = None
    if job is not None:
        from jigs.reading import read_job

        read = read_job(job, None)
    text = list_text(known_stocks(read).values())
    write_text(output, text, sources=read.sources if read else ())
