"""What a shell offers where TAB is pressed: the job's own parts, papers, stocks, printers, records.

A job that cannot be read offers nothing: what is wrong with it, its command says.
"""

import os
from collections.abc import Callable, Iterable
from pathlib import Path
from typing import TYPE_CHECKING

import click

from cli.jobs import Asked

if TYPE_CHECKING:
    from jigs.given.job import Job

Offer = Callable[[click.Context, click.Parameter, str], list[str]]


def _offering(known: Callable[[click.Context], Iterable[str]]) -> Offer:
    def offer(ctx: click.Context, _: click.Parameter, begun: str) -> list[str]:
        """Give those that go on as it was begun, in capitals or not."""
        try:
            names = tuple(known(ctx))
        except Exception:  # what is wrong with the job, its command says
            return []
        return [name for name in names if name.lower().startswith(begun.lower())]

    return offer


def _parts(ctx: click.Context) -> Iterable[str]:
    from cli.selection import known_names

    path = _path(ctx)
    return known_names(Asked(path=path).lay_out(echo=False)) if path else ()


def _ticks(ctx: click.Context, begun: str) -> Iterable[str]:
    """Give the parts of a job, its boxes and walls; behind one of them, the steps of its parts."""
    from cli.ticking import names_of_parts
    from jigs.bench.course import plan_courses
    from jigs.bench.stations import plan_stations
    from jigs.bench.tracked import track

    path = _path(ctx)
    if path is None:
        return ()
    layout, cut = Asked(path=path).cut(echo=False)
    parts = track(layout, cut.pieces)
    names = names_of_parts(parts)
    name = _first_of_two(begun)
    if not name:
        return names
    courses = plan_courses(layout, parts, plan_stations(layout))
    steps = [step.key for part in names[name.upper()] for step in courses[part].steps]
    return dict.fromkeys(steps)


def _first_of_two(begun: str) -> str:
    """Give the first value of an option that takes two, if the second is being typed. What click
    has parsed does not tell; the line does, which every shell's script leaves here."""
    from click.shell_completion import split_arg_string

    words = split_arg_string(os.environ.get("COMP_WORDS", ""))
    if begun and words[-1:] == [begun]:
        words.pop()
    return "" if not words or words[-1].startswith("--") else words[-1]


def _job(ctx: click.Context) -> "Job | None":
    from jigs.reading.inputs import read_job

    path = _path(ctx)
    return read_job(path, None) if path else None


def _path(ctx: click.Context) -> Path | None:
    """Give the job of the line that is being typed, as far as it is typed; an option that still
    lacks its value leaves it among what is not yet told apart."""
    given = ctx.params.get("job") or next(iter(ctx.args), None)
    return Path(given) if given else None


def _papers(_: click.Context) -> Iterable[str]:
    from templates.page.paper import PAPERS

    return PAPERS


def _stocks(ctx: click.Context) -> Iterable[str]:
    from cli.labelstock import known_stocks

    return known_stocks(_job(ctx))


def _printers(ctx: click.Context) -> Iterable[str]:
    from cli.printers import stored_printers

    job = _job(ctx)
    return sorted({*stored_printers(), *(job.printers if job else ())})


def _records(ctx: click.Context) -> Iterable[str]:
    from cli.hardware import find_records

    return find_records(_job(ctx))


offer_parts = _offering(_parts)


def offer_ticks(ctx: click.Context, option: click.Parameter, begun: str) -> list[str]:
    """Offer what `plan` is told is done: a name, then a step."""
    return _offering(lambda ctx: _ticks(ctx, begun))(ctx, option, begun)


offer_papers = _offering(_papers)
offer_stocks = _offering(_stocks)
offer_printers = _offering(_printers)
offer_records = _offering(_records)
