"""`jigsheet elevations`: each wall as it is seen from the room, to scale."""

from typing import Literal

from cli.jobs import Asked
from cli.manners import command
from cli.options import format_option, only_option, output_by_form, paper_option, with_job
from cli.output import write_bytes
from cli.selection import select
from cli.terminal import mention

LARGEST = ("tabloid", "a3")


@command(
    ("Each wall, to hold against the room", "elevations kitchen.toml"),
    ("One wall on large paper", "elevations kitchen.toml --only north --paper a3"),
)
@with_job
@only_option
@paper_option
@format_option(
    ("pdf", "svg"),
    "One file to print, or a drawing for each wall.",
)
@output_by_form(
    "elevations.pdf; svg: the folder elevations", " svg: a folder, or FILE.svg for a single wall."
)
def elevations(
    asked: Asked,
    only: tuple[str, ...],
    paper: str,
    form: Literal["pdf", "svg"],
    output: str | None,
) -> None:
    """Draw each wall of JOB as it is seen from the room.

    To scale, to check the job against, not to drill by. With --only, the walls on which these parts
    stand.
    """
    from cli.drawing import (
        bind_walls,
        draw_walls,
        is_single,
        tell_unprintable,
        write_drawings,
    )
    from templates.elevations.scale import ROOMY
    from templates.words.textlines import counted

    target = output or {"pdf": "elevations.pdf", "svg": "elevations"}[form]
    single = form == "pdf" or is_single(target)
    layout = asked.lay_out(*((target,) if single else ()))
    sheets, concerned = draw_walls(layout, paper, select(layout, only))
    sources = layout.job.sources
    if form == "pdf":
        write_bytes(target, bind_walls(layout, sheets), sources=sources)
    else:
        write_drawings(target, [(sheet.name, sheet.page) for sheet in sheets], sources)
    if target != "-":
        mention(f"{target}: {counted(len(sheets), 'sheet')}. To check by, not to drill by.")
        small = [sheet.page.entry for sheet in sheets if sheet.reduction > ROOMY]
        if small and paper not in LARGEST:
            mention(
                f"Drawn small, without all sizes: {', '.join(dict.fromkeys(small)).lower()}. "
                "On larger paper (--paper tabloid or a3) there is more room.",
            )
    tell_unprintable(concerned)
    asked.end(concerned)
