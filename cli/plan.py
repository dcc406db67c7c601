"""`jigsheet plan`: the order of work of a job, day by day, and what must measure before one goes
on."""

from typing import Literal

import click

from cli.completing import offer_ticks
from cli.failures import Failure
from cli.jobs import Asked
from cli.manners import Choice, command
from cli.options import output_by_form, paper_option, with_job
from cli.output import write_bytes, write_text


@command(
    ("What is done on which day", "plan kitchen.toml"),
    ("Shorter days", "plan kitchen.toml --a-day 30"),
    ("On paper, with boxes to tick", "plan kitchen.toml --format pdf"),
    ("Mark what is done", "plan kitchen.toml --day-done 2 --done B1-2 arrived"),
)
@with_job
@click.option(
    "--a-day",
    type=click.IntRange(1, 10_000),
    metavar="N",
    help="How often something is taken in hand in a day: a piece cut, a card set, a door hung.  "
    "[default: 60]",
)
@click.option(
    "--done",
    type=(str, str),
    multiple=True,
    metavar="ID STEP",
    shell_complete=offer_ticks,
    help="This step of a part, or of all parts of a box or a wall, is done; may be repeated. "
    "'--format csv' lists the steps of each part.",
)
@click.option(
    "--day-done",
    type=click.IntRange(min=1),
    multiple=True,
    metavar="N",
    help="All that is marked of this day is done; may be repeated.",
)
@click.option(
    "--undone",
    type=(str, str),
    multiple=True,
    metavar="ID STEP",
    shell_complete=offer_ticks,
    help="It is not: its mark is taken back.",
)
@paper_option
@click.option(
    "--format",
    "form",
    type=Choice(["text", "pdf", "csv", "json"]),
    default="text",
    show_default=True,
    help="For people, the same on paper with boxes to tick, a row for each step, or data.",
)
@output_by_form("standard output; pdf: plan.pdf")
def plan(
    asked: Asked,
    a_day: int | None,
    done: tuple[tuple[str, str], ...],
    day_done: tuple[int, ...],
    undone: tuple[tuple[str, str], ...],
    paper: str,
    form: Literal["text", "pdf", "csv", "json"],
    output: str | None,
) -> None:
    """Say in which order JOB is worked through, day by day.

    For each day: its stations with bit and stop, its parts, and what must measure before you go
    on. What was marked on the pages of 'serve', or here, is done; the rest begins today. Pages are
    those of stations.pdf on the same --paper.
    """
    from cli.drawing import draw_lists, tell_lists
    from cli.printers import find_paper
    from cli.serving.store import read_store
    from cli.ticking import Ticks, tick
    from jigs.bench.jobplan import MOST_A_DAY
    from jigs.bench.stations import plan_stations
    from jigs.layout.layout import as_printed
    from templates.binding.jobstations import bind_stations, reach_on
    from templates.lists.listtext import listing_text
    from templates.lists.workdata import plan_csv, plan_json
    from templates.lists.worklist import plan_listing
    from templates.lists.workview import Paged, view_work

    target = output or ("plan.pdf" if form == "pdf" else "-")
    layout, cut = asked.cut(target)
    printed = as_printed(layout)
    sheet = find_paper(paper, None, layout.job)
    stations = plan_stations(printed, reach=reach_on(sheet))
    kept, _ = read_store(asked.path)
    paged = bind_stations(printed, stations, sheet).paged if stations else Paged()
    made = view_work(printed, cut, stations, paged, kept, most=a_day or MOST_A_DAY)
    marked = False
    if ticks := Ticks(done=done, days=day_done, back=undone):
        marked = tick(ticks, asked, made.plan, kept)
        kept, _ = read_store(asked.path)
        made = view_work(printed, cut, stations, paged, kept, most=a_day or MOST_A_DAY)
    try:
        if form == "pdf":
            data, pages = draw_lists(layout, [plan_listing(made)], paper)
            write_bytes(target, data, sources=layout.job.sources)
            tell_lists(target, pages)
        else:
            text = {
                "text": lambda: listing_text(plan_listing(made)),
                "csv": lambda: plan_csv(made),
                "json": lambda: plan_json(made),
            }[form]()
            write_text(target, text, sources=layout.job.sources)
    except Failure as error:
        if not marked:
            raise
        kept_said = "The marks are kept all the same: give the plan another place with -o."
        raise Failure(f"{error.message}\n{kept_said}") from error
    asked.end(layout)
