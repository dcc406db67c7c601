"""What every command does with JOB: read it, lay it out, tell what was understood and held."""

import os
import sys
from collections.abc import Iterable
from pathlib import Path
from typing import TYPE_CHECKING, Literal

import click

if TYPE_CHECKING:
    from jigs.parts import Layout


def lay_out_job(job: Path, units: Literal["mm", "in"] | None, *, echo: bool = True) -> "Layout":
    """Read a job and lay it out; its echo line goes to standard error.

    Raises ReadingError with all faults of the job.
    """
    from jigs.layout import lay_out
    from jigs.reading import read_job

    layout = lay_out(read_job(job, units))
    if echo and layout.echo:
        click.echo(layout.echo, err=True)
    return layout


def tell_problems(job: Path, layout: "Layout") -> None:
    """Tell on standard error what is held back, and how much else the check would say."""
    from templates.findings import held_text

    click.echo(held_text(layout), err=True, nl=False)
    warnings = sum(problem.level == "warning" for problem in layout.problems)
    if warnings:
        noun = "warning" if warnings == 1 else "warnings"
        click.echo(f"{warnings} {noun}: see 'jigsheet check {job}'.", err=True)


def end(ctx: click.Context, layout: "Layout") -> None:
    """End the command: 1 if anything is held back, else 0."""
    from templates.findings import has_errors

    ctx.exit(1 if has_errors(layout) else 0)


def select(layout: "Layout", names: Iterable[str]) -> frozenset[str] | None:
    """Give the names of --only as the job writes them, None for no choice at all.

    An unknown one is wrong usage; the message lists the nearest.
    """
    known: dict[str, None] = {}
    for box in layout.boxes:
        known |= dict.fromkeys([box.id, *([box.wall.upper()] if box.wall else [])])
    for front in layout.fronts:
        known[front.id] = None
        if front.drawer is not None:
            known[front.drawer.id] = None
    known |= dict.fromkeys(side.board for side in layout.sides)
    wanted = [name.strip().upper() for name in names]
    for name in wanted:
        if name not in known:
            raise click.BadParameter(_unknown(name, tuple(known)), param_hint="'--only'")
    return frozenset(wanted) or None


def sources_of(job: Path) -> tuple[Path, ...]:
    """Give the files that a job is read from: the job file and its front list."""
    import tomllib

    if job.suffix.lower() != ".toml":
        return (job,)
    try:
        fronts = tomllib.loads(job.read_text(encoding="utf-8-sig")).get("fronts_file")
    except (OSError, ValueError):  # its reader says what is wrong with it
        fronts = None
    return (job, job.parent / fronts) if isinstance(fronts, str) else (job,)


def on_terminal() -> bool:
    """Tell whether a person watches standard error, so that a progress bar is of use."""
    return sys.stderr.isatty() and os.environ.get("TERM") != "dumb"


def _unknown(name: str, known: tuple[str, ...]) -> str:
    from difflib import get_close_matches

    near = get_close_matches(name, known, n=4, cutoff=0.5)
    if near:
        return f"no part, box or wall is called {name!r}; the nearest: {', '.join(near)}."
    boxes = ", ".join(known[:12])
    return f"no part, box or wall is called {name!r}; there are {boxes} ..."
