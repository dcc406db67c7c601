"""What every command does with JOB: read it, lay it out, tell what was understood and held."""

import os
import sys
from collections.abc import Iterable
from pathlib import Path
from typing import TYPE_CHECKING, Literal

import click

from cli.output import guard
from cli.terminal import tell

if TYPE_CHECKING:
    from jigs.box.parts import Layout


def lay_out_job(
    job: Path,
    units: Literal["mm", "in"] | None,
    *,
    delivered: Path | None = None,
    targets: Iterable[str] = (),
    echo: bool = True,
) -> "Layout":
    """Read a job and lay it out; its echo line goes to standard error.

    `delivered` is a list of what has arrived, in place of one that the job names.
    `targets` are what will be written: none may be what the job is read from. Raises
    ReadingError with all faults of the job.
    """
    from jigs.layout.layout import lay_out
    from jigs.order.matching import read_in_hand

    read = read_in_hand(job, units, delivered)
    for target in targets:
        guard(target, read.sources)
    layout = lay_out(read)
    if echo and layout.echo:
        tell(layout.echo)
    return layout


def tell_problems(job: Path, layout: "Layout") -> None:
    """Tell on standard error what is held back, and how much else the check would say."""
    from templates.words.findings import count_warnings, held_text
    from templates.words.textlines import counted

    tell(held_text(layout), nl=False)
    if warnings := count_warnings(layout.problems):
        tell(f"{counted(warnings, 'warning')}: see 'jigsheet check {job}'.")


def end(ctx: click.Context, layout: "Layout") -> None:
    """End the command: 1 if anything is held back, else 0."""
    from templates.words.findings import has_errors

    ctx.exit(1 if has_errors(layout) else 0)


def on_terminal() -> bool:
    """Tell whether a person watches standard error, so that a progress bar is of use."""
    return sys.stderr.isatty() and os.environ.get("TERM") != "dumb"
