"""`jigsheet stations`: a page for each setting of the drill, to be printed at 100 %."""

from pathlib import Path
from typing import Literal

import click

from cli.jobs import end, lay_out_job, tell_problems
from cli.options import (
    delivered_option,
    job_argument,
    only_of,
    paper_option,
    printer_option,
    units_option,
)
from cli.output import write_text
from cli.printers import find_paper
from cli.printing import find_target, write_pdf_file
from cli.selection import narrow, nothing_drawn, select
from cli.terminal import tell


@click.command()
@job_argument
@units_option
@delivered_option
@only_of("part, box, wall or station")
@click.option(
    "--first",
    is_flag=True,
    help="Only what is made first at each station, on scrap, and what must then be true.",
)
@click.option(
    "--pilots",
    is_flag=True,
    help="Set the pilots of drawer fronts from paper too, in place of marking them through their "
    "drawer boxes.",
)
@paper_option
@printer_option
@click.option(
    "--format",
    "form",
    type=click.Choice(["pdf", "json"]),
    default="pdf",
    show_default=True,
    help="A file to print, or the same as data.",
)
@click.option(
    "-o",
    "--output",
    metavar="FILE",
    help="Where to write; - for standard output.  [default: stations.pdf; json: standard output]",
)
@click.pass_context
def stations(
    ctx: click.Context,
    job: Path,
    units: Literal["mm", "in"] | None,
    delivered: Path | None,
    only: tuple[str, ...],
    first: bool,
    pilots: bool,
    paper: str,
    printer: str | None,
    form: Literal["pdf", "json"],
    output: str | None,
) -> None:
    """Draw the stations of JOB: all parts that share bit, stop and pattern on one page."""
    from cli.drawing import bind, tell_unprintable
    from jigs.bench.chosenrows import choose_rows, first_rows, tried_together
    from jigs.bench.firstarticle import first_articles
    from jigs.bench.stations import plan_stations
    from jigs.layout.layout import as_printed
    from templates.binding.jobstations import bind_stations, reach_on
    from templates.stations.stationset import stations_json
    from templates.words.costwords import cost_words

    target, _ = find_target(form, output, "stations.pdf")
    layout = lay_out_job(job, units, delivered=delivered, targets=(target,))
    sheet = find_paper(paper, printer, layout.job)
    printed = as_printed(layout)
    planned = plan_stations(printed, pilots=pilots, reach=reach_on(sheet))
    names = (station.name.upper() for station in planned)
    chosen = select(layout, only, names, what="station")
    concerned = layout
    if chosen is not None:
        planned = choose_rows(printed, planned, chosen)
        parts = {row.part.id for station in planned for row in station.rows}
        concerned = narrow(layout, chosen | parts)
    articles = None
    if first:
        articles = tried_together(planned, first_articles(printed))
        planned = first_rows(planned, articles)
    if not planned:
        tell(nothing_drawn(concerned))
    else:
        file = bind_stations(printed, planned, sheet, articles=articles)
        if form == "json":
            write_text(target, stations_json(file.laid), sources=layout.job.sources)
        else:
            data = bind(printed, file.pages, "stations")
            write_pdf_file(target, data, cost_words(file.cost), layout.job.sources)
            tell_unprintable(concerned)
    tell_problems(job, concerned)
    end(ctx, concerned)
