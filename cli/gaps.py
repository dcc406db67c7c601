"""`jigsheet gaps`: whether each gap of the kitchen stays open."""

from pathlib import Path
from typing import TYPE_CHECKING, Literal

import click

from cli.jobs import Asked
from cli.manners import command
from cli.options import (
    format_option,
    only_option,
    output_by_form,
    paper_for_drawings,
    paper_option,
    with_job,
)
from cli.output import guard, write_bytes, write_text
from cli.selection import narrow, select
from cli.terminal import mention, typed

if TYPE_CHECKING:
    from collections.abc import Set

    from jigs.box.parts import Layout
    from jigs.room.chance import Chance
    from jigs.room.reckoning import GapBudgets

GapsFormat = Literal["text", "csv", "json", "pdf", "svg"]


@command(
    ("Before the fronts are ordered", "gaps kitchen.toml"),
    ("A list to write the measured gaps into", "gaps kitchen.toml --format csv -o gaps.csv"),
    ("Which screws to turn, once they are in it", "gaps kitchen.toml --measured gaps.csv"),
)
@with_job
@only_option
@format_option(
    ("text", "csv", "json", "pdf", "svg"),
    "For people, one gap a line for a spreadsheet, all as data; or each wall drawn with its gaps, "
    "to print, or a drawing each.",
)
@paper_option
@click.option(
    "--measured",
    metavar="LIST",
    type=click.Path(path_type=Path),
    help="The gaps as they are now, in the file of --format csv: say which screws to turn.",
)
@output_by_form("standard output; pdf: gaps.pdf; svg: the folder gaps")
def gaps(
    asked: Asked,
    only: tuple[str, ...],
    form: GapsFormat,
    paper: str,
    measured: Path | None,
    output: str | None,
) -> None:
    """Reckon whether the gaps between the fronts of JOB stay open.

    What boxes, joints, fronts, paint and the damp season may take from each; what it needs to
    open; what would help. What was measured, and what --delivered lists, stands in place of its
    tolerance. With --measured: which screw of which front to turn, which way and how far.
    """
    from cli.drawing import is_single
    from jigs.checks.rubbing import before_order
    from jigs.room.chance import chance_of
    from jigs.room.even import even_rows
    from jigs.room.reckoning import choose_gaps
    from templates.lists.gaplist import gaps_csv, gaps_json, gaps_text

    paper_for_drawings(form)
    if measured is not None and form == "svg":
        raise click.UsageError(
            "--measured makes lists (svg given): --format text, csv, json or pdf."
        )
    target = output or {"pdf": "gaps.pdf" if measured is None else "screws.pdf", "svg": "gaps"}.get(
        form, "-"
    )
    layout, reckoned = asked.reckon(*((target,) if form != "svg" or is_single(target) else ()))
    names = select(layout, only)
    if measured is not None:
        _adjust(asked, layout, reckoned, names, measured, paper, target, form)
        asked.end(narrow(layout, names))
    found = choose_gaps(reckoned, names)
    chance = chance_of(found.budgets, layout.job.reveal.between) if form != "csv" else None
    if form in ("pdf", "svg"):
        _draw(layout, found, chance, paper, target, form)
    else:
        write = {"text": gaps_text, "csv": gaps_csv, "json": gaps_json}[form]
        write_text(
            target,
            write(found, layout.job, chance, even_rows(found.budgets)),
            sources=layout.job.sources,
        )
    asked.end(before_order(narrow(layout, names)))


def _adjust(
    asked: Asked,
    layout: "Layout",
    found: "GapBudgets",
    names: "Set[str] | None",
    measured: Path,
    paper: str,
    target: str,
    form: GapsFormat,
) -> None:
    """Say which screws to turn."""
    from cli.drawing import bind, tell_lists
    from jigs.reading.measuredlist import read_measured
    from jigs.room.screws import choose_turns, plan_turns
    from templates.elevations.screwpage import screw_pages
    from templates.lists.screwlist import screws_csv, screws_json, screws_listings, screws_text
    from templates.page.ownpaper import named_paper

    guard(target, (measured,))
    sources = (*layout.job.sources, measured)
    plan = plan_turns(layout, found, read_measured(measured, layout.job.shown))
    plan = choose_turns(plan, names)
    if form == "pdf":
        listings = screws_listings(plan, layout.job, typed(asked.path))
        pages = list(screw_pages(listings, named_paper(paper).for_drawings))
        write_bytes(target, bind(layout, pages, "screws to turn"), sources=sources)
        tell_lists(target, len(pages))
    else:
        write = {"text": screws_text, "csv": screws_csv, "json": screws_json}[form]
        write_text(target, write(plan, layout.job, typed(asked.path)), sources=sources)


def _draw(
    layout: "Layout",
    found: "GapBudgets",
    chance: "Chance | None",
    paper: str,
    target: str,
    form: GapsFormat,
) -> None:
    """Draw the walls, then the worst gaps and the chance of the whole."""
    from cli.drawing import bind, write_drawings
    from cli.failures import Failure
    from templates.elevations.gapchart import draw_chart
    from templates.elevations.wallgaps import draw_gap_walls
    from templates.page.ownpaper import named_paper
    from templates.words.textlines import counted

    if not found.budgets:
        raise Failure("Nothing to draw: no front has a gap to anything. No file is written.")
    sheet = named_paper(paper).for_drawings
    drawn = [
        *draw_gap_walls(layout, found, sheet),
        draw_chart(found, chance, layout.job.name, sheet),
    ]
    sources = layout.job.sources
    if form == "pdf":
        write_bytes(target, bind(layout, (each.page for each in drawn), "gaps"), sources=sources)
    else:
        write_drawings(target, [(each.name, each.page) for each in drawn], sources)
    if target != "-":
        mention(f"{target}: {counted(len(drawn), 'sheet')}. To check by, not to drill by.")
