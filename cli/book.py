"""`jigsheet book`: the scan pages of all parts as one file."""

import click

from cli.jobs import Asked
from cli.options import output_option, with_job
from cli.output import write_text
from cli.terminal import tell


@click.command()
@with_job
@output_option("book.html")
def book(asked: Asked, output: str) -> None:
    """Write the pages of all parts of JOB as one HTML file, for a phone without a network.

    Each part: where it goes, which way up, its steps, its holes with their distances.
    """
    from jigs.bench.stations import plan_stations
    from jigs.cutlist.cutlist import cut_list
    from jigs.layout.layout import as_printed
    from jigs.progress.course import plan_courses
    from templates.binding.jobstations import reach_on
    from templates.page.paper import PAPERS
    from templates.scan.book import book as make_book
    from templates.scan.scan import Scan
    from templates.words.textlines import counted

    layout = asked.lay_out(output)
    printed = as_printed(layout)
    pieces = cut_list(layout)
    stations = plan_stations(printed, reach=reach_on(PAPERS["common"]))
    scan = Scan(printed, pieces, stations)
    text = make_book(scan, plan_courses(printed, scan.tracked, stations))
    write_text(output, text, sources=layout.job.sources)
    if output != "-":
        size = len(text.encode()) / 1e6
        tell(f"{output}: {counted(len(scan.tracked), 'part')}, {size:.1f} MB. It needs no network.")
    asked.end(layout)
