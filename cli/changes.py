"""`jigsheet changes`: what an edit makes stale, to be printed, cut, bored or ordered anew."""

from pathlib import Path
from typing import TYPE_CHECKING, Literal

import click

from cli.jobs import Asked
from cli.madefrom import Compared, check_same_job, read_compared
from cli.manners import Choice, command
from cli.options import format_option, output_option
from cli.output import write_text

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from jigs.changes.deeds import Deeds
    from jigs.ground.lengths import Unit
    from jigs.ground.problems import Problem


@command(
    ("What the edits since the pack make stale", "changes pack kitchen.toml"),
    ("What one idea more would cost", "changes kitchen.toml idea.toml"),
    ("What to print again after an upgrade", "changes pack kitchen.toml -o stale.txt"),
)
@click.argument("old", metavar="OLD", type=click.Path(path_type=Path))
@click.argument("new", metavar="NEW", type=click.Path(path_type=Path))
@click.option(
    "--units",
    type=Choice(["mm", "in"]),
    help="Unit of a bare number where a job file does not say; the unit shown first.",
)
@click.option(
    "--delivered",
    metavar="LIST",
    type=click.Path(path_type=Path),
    help="The fronts that have arrived, with their measured sizes, of NEW (.csv, .xlsx, ...).",
)
@format_option(
    ("text", "json", "csv"),
    "For people, everything as data, or one thing a line for a spreadsheet.",
)
@output_option("-")
def changes(
    old: Path,
    new: Path,
    units: Literal["mm", "in"] | None,
    delivered: Path | None,
    form: Literal["text", "json", "csv"],
    output: str,
) -> None:
    """Say what an edit makes stale, or has spoilt.

    It is what is printed, cut, bored or ordered anew, and how wood that is worked on is saved. OLD
    and NEW are a job, or the folder of its pack. What is marked as done on the pages of 'serve' is
    told for sure. It is a report: exit 0, whatever is stale.
    """
    from jigs.changes.comparing import compare, without_measures
    from jigs.changes.cups import keep_cups
    from templates.lists.changelist import changes_csv, changes_json, changes_text
    from templates.lists.changetasks import Report
    from templates.words.changewords import uneven_words

    first = read_compared(Asked(path=old, units=units), output)
    second = read_compared(Asked(path=new, units=units, delivered=delivered), output)
    reach = next((each.pack.made.reach for each in (first, second) if each.pack), 0.0)
    was, now = first.make(reach), second.make(reach)
    if first.pack or second.pack:
        check_same_job(was, now, str(old if first.pack else new))
    lists = first.delivered, second.delivered
    uneven = None not in lists and bool(lists[0]) != bool(lists[1])
    found = compare(was, now)
    if uneven:
        found = without_measures(found)
    job = second.layout.job if second.layout else None
    report = Report(
        changes=found,
        deeds=_deeds(first, second),
        cups=keep_cups(job, found.parts) if job else {},
        unit=_unit(first, second, units),
        names=(str(old), str(new)),
        held=_held(second),
        uneven=uneven_words(*lists, packs=(bool(first.pack), bool(second.pack))) if uneven else "",
    )
    write = {"text": changes_text, "json": changes_json, "csv": changes_csv}[form]
    sources = [each.layout.job.sources for each in (first, second) if each.layout]
    write_text(output, write(report), sources=[path for each in sources for path in each])


def _held(now: Compared) -> "Mapping[str, Sequence[Problem]]":
    """Give what holds the parts of a job back; a pack keeps that they are, not why."""
    layout = now.layout
    if layout is None:
        return {}
    found = {front.id: front.held for front in layout.fronts}
    found |= {rollout.id: rollout.held for rollout in layout.rollouts}
    boxes = ((front.drawer, front.held) for front in layout.fronts)
    return found | {drawer.id: held for drawer, held in boxes if drawer is not None}


def _deeds(first: Compared, second: Compared) -> "Deeds":
    """Give what was marked beside the job of now; else, beside that of before."""
    from cli.serving.store import read_store, store_file
    from jigs.changes.deeds import Deeds

    for job in (*second.jobs, *first.jobs):
        if store_file(job).exists():
            kept, entries = read_store(job)
            times = {(each.part, each.said): each.at for each in entries if each.deed == "done"}
            return Deeds(kept=kept, times=times)
    return Deeds()


def _unit(first: Compared, second: Compared, units: "Unit | None") -> "Unit":
    layout = second.layout or first.layout
    return layout.job.shown if layout else units or "mm"
