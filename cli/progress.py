"""`jigsheet progress`: how far a job is, by what was marked on the scan pages."""

from typing import TYPE_CHECKING, Literal

import click

from cli.jobs import Asked
from cli.manners import command
from cli.options import format_option, only_option, output_option, with_job
from cli.output import write_text
from cli.selection import narrow, select

if TYPE_CHECKING:
    from collections.abc import Collection, Mapping

    from jigs.bench.tracked import Tracked


@command(
    ("What is next, and what waits", "progress kitchen.toml"),
    (
        "All that was marked, for a spreadsheet",
        "progress kitchen.toml --history --format csv -o marks.csv",
    ),
)
@with_job
@only_option
@click.option(
    "--history", is_flag=True, help="All that was ever marked, undone or noted, the oldest first."
)
@format_option(("text", "csv"), "For people, or for a spreadsheet.")
@output_option("-")
def progress(
    asked: Asked, only: tuple[str, ...], history: bool, form: Literal["text", "csv"], output: str
) -> None:
    """Say how far JOB is, and what is next.

    What is next for which parts, what waits, what was noted. It is what was marked on the pages of
    'serve', also while they are served.
    """
    from cli.serving.store import read_store
    from templates.lists.progresslist import (
        history_csv,
        history_text,
        progress_csv,
        progress_text,
    )
    from templates.scan.scan import Scan

    layout = asked.lay_out(output)
    scan = Scan(layout)
    kept, entries = read_store(asked.path)
    chosen = select(layout, only, more=(*scan.parts, *kept))
    if history:
        happened = [
            (entry.at, entry.part, entry.deed, entry.said, entry.code)
            for entry in entries
            if _is_chosen(entry.part, scan.parts, chosen)
        ]
        text = {"text": history_text, "csv": history_csv}[form](happened)
    else:
        standings = [
            standing
            for standing in scan.standings(kept).values()
            if _is_chosen(standing.part, scan.parts, chosen)
        ]
        text = progress_text(standings) if form == "text" else progress_csv(standings, scan.parts)
    write_text(output, text, sources=layout.job.sources)
    asked.end(narrow(layout, chosen))


def _is_chosen(name: str, parts: "Mapping[str, Tracked]", chosen: "Collection[str] | None") -> bool:
    part = parts.get(name)
    names = {name, *(part.boxes if part else ()), *([part.wall.upper()] if part else [])}
    return chosen is None or bool(names & set(chosen))
