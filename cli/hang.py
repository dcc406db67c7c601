"""`jigsheet hang`: how the boxes of each wall are set, and how the fronts are hung."""

from typing import Literal

from cli.jobs import Asked
from cli.manners import command
from cli.options import (
    format_option,
    only_of,
    output_by_form,
    paper_for_pdf,
    paper_option,
    printer_option,
    with_job,
)
from cli.output import write_bytes, write_text
from cli.printers import find_paper
from cli.printing import refuse_printer
from cli.selection import boxes_with, narrow, select
from cli.terminal import mention, tell


@command(
    ("Lines to strike, and the order of setting and hanging", "hang kitchen.toml"),
    ("One wall, read on the screen", "hang kitchen.toml --only north --format text"),
)
@with_job
@only_of("wall, or the wall of this part or box")
@paper_option
@printer_option
@format_option(("pdf", "text"), "A page for each wall and how it is done, or the same as text.")
@output_by_form("hang.pdf; text: standard output")
def hang(
    asked: Asked,
    only: tuple[str, ...],
    paper: str,
    printer: str | None,
    form: Literal["pdf", "text"],
    output: str | None,
) -> None:
    """Say what to strike on the walls, and in which order to hang.

    A page for each wall of JOB: its lines, its boxes in their order, then its fronts.
    """
    from cli.drawing import bind, tell_unprintable
    from jigs.layout.layout import as_printed
    from jigs.room.hanging import plan_hanging
    from templates.elevations.hangpage import hang_pages, hang_text
    from templates.words.hangwords import NOTHING
    from templates.words.textlines import counted

    paper_for_pdf(form)
    if form != "pdf":
        refuse_printer(form, printer)
    target = output or ("hang.pdf" if form == "pdf" else "-")
    layout = concerned = asked.lay_out(target)
    sheet = find_paper(paper, printer, layout.job)
    chosen = select(layout, only)
    walls = plan_hanging(layout)
    if chosen is not None:
        boxes = boxes_with(layout, narrow(layout, chosen), chosen)
        walls = tuple(wall for wall in walls if boxes & wall.box_ids)
        concerned = narrow(layout, frozenset().union(*(wall.box_ids for wall in walls)))
    if not walls:
        tell(NOTHING)
    elif form == "text":
        write_text(target, hang_text(concerned, walls), sources=layout.job.sources)
    else:
        printed = as_printed(concerned)
        pages = tuple(hang_pages(printed, walls, sheet.for_drawings))
        write_bytes(target, bind(printed, pages, "hanging"), sources=layout.job.sources)
        if target != "-":
            mention(f"{target}: {counted(len(pages), 'page')}, {counted(len(walls), 'wall')}.")
        tell_unprintable(concerned)
    asked.end(concerned)
