"""`jigsheet gaps`: whether each gap of the kitchen stays open."""

from typing import TYPE_CHECKING, Literal

import click

from cli.jobs import Asked
from cli.options import (
    format_option,
    only_option,
    output_by_form,
    paper_for_drawings,
    paper_option,
    with_job,
)
from cli.output import write_bytes, write_text
from cli.selection import narrow, select

if TYPE_CHECKING:
    from jigs.box.parts import Layout
    from jigs.gaps.chance import Chance
    from jigs.gaps.reckoning import GapBudgets

Form = Literal["text", "csv", "json", "pdf", "svg"]


@click.command()
@with_job
@only_option
@format_option(
    ("text", "csv", "json", "pdf", "svg"),
    "For people, one gap a line for a spreadsheet, all as data; or each wall drawn with its gaps, "
    "to print, or a drawing each.",
)
@paper_option
@output_by_form("standard output; pdf: gaps.pdf; svg: the folder gaps")
def gaps(asked: Asked, only: tuple[str, ...], form: Form, paper: str, output: str | None) -> None:
    """Reckon whether the gaps between the fronts of JOB stay open.

    What boxes, joints, fronts, paint and the damp season may take from each; what it needs to
    open; what would help. What was measured, and what --delivered lists, stands in place of its
    tolerance.
    """
    from cli.drawing import is_single
    from jigs.checks.rubbing import before_order
    from jigs.gaps.chance import chance_of
    from jigs.gaps.even import even_rows
    from jigs.gaps.reckoning import choose_gaps
    from templates.lists.gaplist import gaps_csv, gaps_json, gaps_text

    paper_for_drawings(form)
    target = output or {"pdf": "gaps.pdf", "svg": "gaps"}.get(form, "-")
    layout, reckoned = asked.reckon(*((target,) if form != "svg" or is_single(target) else ()))
    names = select(layout, only)
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


def _draw(
    layout: "Layout",
    found: "GapBudgets",
    chance: "Chance | None",
    paper: str,
    target: str,
    form: Form,
) -> None:
    """Draw the walls, then the worst gaps and the chance of the whole."""
    from cli.drawing import bind, write_drawings
    from cli.failures import Failure
    from cli.terminal import tell
    from templates.gaps.gapchart import draw_chart
    from templates.gaps.wallgaps import draw_gap_walls
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
        tell(f"{target}: {counted(len(drawn), 'sheet')}. To check by, not to drill by.")
