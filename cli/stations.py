"""`jigsheet stations`: a page for each setting of the drill, to be printed at 100 %."""

from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Literal

import click

from cli.changedsince import changes_since, nothing_stale
from cli.jobs import Asked
from cli.manners import command
from cli.options import (
    changed_option,
    format_option,
    only_of,
    output_by_form,
    paper_option,
    printer_option,
    with_job,
)
from cli.output import write_text
from cli.printers import find_paper
from cli.printing import find_target, refuse_printer, write_folder, write_pdf_file
from cli.selection import narrow, nothing_drawn, select
from cli.terminal import tell

if TYPE_CHECKING:
    from jigs.bench.station import Station
    from jigs.box.parts import Layout


@command(
    ("All pages of the drill, each setting once", "stations kitchen.toml"),
    ("What is bored on scrap first, and measured", "stations kitchen.toml --first -o first.pdf"),
    ("Plates to cut from hardboard", "stations kitchen.toml --format dxf -o plates"),
)
@with_job
@only_of("part, box, wall or station")
@changed_option
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
@format_option(
    ("pdf", "svg", "dxf", "json"),
    "A file to print, or the same as data; svg, dxf: each card as a plate to cut from "
    "hardboard, a folder of files at true size.",
)
@output_by_form(
    "stations.pdf; json: standard output; stations-svg, stations-dxf", " svg, dxf: a folder."
)
def stations(
    asked: Asked,
    only: tuple[str, ...],
    since: Path | None,
    first: bool,
    pilots: bool,
    paper: str,
    printer: str | None,
    form: Literal["pdf", "svg", "dxf", "json"],
    output: str | None,
) -> None:
    """Draw a page for each setting of the drill.

    It has all parts of JOB that share bit, stop and pattern. With --changed-since a station is
    drawn whole, since its page takes the place of the old one.
    """
    from cli.drawing import bind, tell_unprintable, watched
    from jigs.bench.firstarticle import first_articles
    from jigs.bench.rows import choose_rows, first_rows, tried_together
    from jigs.bench.stations import plan_stations
    from jigs.layout.layout import as_printed
    from templates.binding.jobstations import bind_stations, reach_on
    from templates.stations.stationset import stations_json
    from templates.words.costwords import cost_words

    target, folder = find_target(form, output, "stations.pdf")
    if folder:
        refuse_printer(form, printer)
        if first:
            raise click.UsageError(
                f"--first is printed; --format {form} has a plate for each card."
            )
    if since is not None and pilots:
        raise click.UsageError(
            "a pack's stations are drawn without --pilots: give one or the other."
        )
    layout = asked.lay_out(*(() if folder else (target,)))
    sheet = find_paper(paper, printer, layout.job)
    printed = as_printed(layout)
    planned = plan_stations(printed, pilots=pilots, reach=reach_on(sheet))
    names = (name.upper() for each in planned for name in (each.name, each.stem))
    chosen = select(layout, only, names, what="station")
    concerned = layout
    if chosen is not None:
        planned = choose_rows(printed, planned, chosen)
        parts = {row.part.id for station in planned for row in station.rows}
        concerned = narrow(layout, chosen | parts)
    if since is not None:
        pages = changes_since(since, layout, reach_on(sheet)).pages
        planned = tuple(station for station in planned if station.name in pages)
        if not planned:
            tell(nothing_stale(since, chosen))
            asked.end(narrow(layout, frozenset()))
    articles = None
    if first:
        articles = tried_together(planned, first_articles(printed))
        planned = first_rows(planned, articles)
    if not planned:
        tell(nothing_drawn(concerned))
    elif folder:
        write_folder(target, _plates(printed, planned, form), _said, layout.job.sources)
    else:
        file = bind_stations(printed, watched(planned), sheet, articles=articles)
        if form == "json":
            write_text(target, stations_json(file.laid), sources=layout.job.sources)
        else:
            data = bind(printed, file.pages, "stations")
            write_pdf_file(target, data, cost_words(file.cost), layout.job.sources)
            tell_unprintable(concerned)
    asked.end(concerned)


def _plates(
    layout: "Layout", stations: Iterable["Station"], form: str
) -> Iterator[tuple[str, bytes]]:
    """Give name and content of each card's plate."""
    from templates.stations.plate import draw_plate
    from templates.stations.platefiles import plate_dxf, plate_svg
    from templates.stations.stationview import shop_of

    shop = shop_of(layout)
    for station in stations:
        for card in station.cards:
            plate = draw_plate(shop, station, card)
            data = plate_dxf(plate) if form == "dxf" else plate_svg(plate).encode()
            yield f"{plate.name}.{form}", data


def _said(count: int) -> str:
    from templates.words.textlines import counted

    return f"{counted(count, 'plate')}. 1 unit is 1 mm; each as it lies on the face."
