"""How far a job is, as text and for a spreadsheet; and all that was ever marked or noted."""

from collections.abc import Iterable, Mapping, Sequence

from jigs.bench.agenda import due
from jigs.bench.standing import Standing
from jigs.bench.tracked import Tracked
from templates.lists.cells import csv_text
from templates.words.stepwords import list_title
from templates.words.textlines import columned, counted, wrapped

Happened = tuple[str, str, str, str, str]
"""When (UTC, ISO 8601), to which part, what, with which step or words, under which code."""
HAPPENED = ("at", "part", "what", "said", "code")
COLUMNS = (
    "part", "wall", "box", "code", "done", "next", "waits_for", "note", "photo", "code_before",
    "done_to_another_code", "in_the_job",
)  # fmt: skip


def progress_text(standings: Iterable[Standing]) -> str:
    """Say how many steps are done, and list the parts by their next step; `(waits)` stands behind
    those that cannot go on yet."""
    standings = tuple(standings)
    known = [each for each in standings if not each.vanished]
    steps = sum(len(each.steps) for each in known)
    done = sum(step.key in each.done for each in known for step in each.steps)
    lines = [f"{done} of {counted(steps, 'step')} done."]
    for each in due(standings):
        names = [*each.ready, *(f"{part} (waits)" for part in each.waiting)]
        lines += wrapped(f"{list_title(each.step)} ({len(names)}): {', '.join(names)}", "", "  ")
    for title, parts in (
        ("Its code changed, its printed paper is stale", [s.part for s in known if s.stale]),
        (
            "Cut, banded or bored to another code, to be looked at",
            [s.part for s in known if s.outdated],
        ),
        ("No longer in the job", [s.part for s in standings if s.vanished]),
    ):
        if parts:
            lines += wrapped(f"{title}: {', '.join(parts)}", "", "  ")
    return "".join(f"{line}\n" for line in lines)


def progress_csv(standings: Iterable[Standing], parts: Mapping[str, Tracked]) -> str:
    """Give a row for each part; steps by their keys, several apart by blanks."""
    return csv_text(COLUMNS, (_row(each, parts.get(each.part)) for each in standings))


def _row(standing: Standing, part: Tracked | None) -> Sequence[object]:
    known = {step.key for step in standing.steps}
    done = [step.key for step in standing.steps if step.key in standing.done]
    waits = [f"{w.part}:{w.step.key if w.step else 'hold'}" for w in standing.waits]
    return (
        standing.part,
        part.wall if part else "",
        " ".join(part.boxes) if part else "",
        part.code if part else "",
        " ".join([*done, *sorted(standing.done - known)]),
        standing.next.key if standing.next else "",
        " ".join(waits),
        standing.note,
        "yes" if standing.photo else "",
        standing.stale,
        " ".join(sorted(standing.outdated)),
        "no" if standing.vanished else "yes",
    )


def history_text(entries: Iterable[Happened]) -> str:
    """Give all that happened, a line each, the oldest first."""
    rows = [
        (at, part, what, " ".join(said.split()), code) for at, part, what, said, code in entries
    ]
    return "".join(f"{line}\n" for line in columned([HAPPENED, *rows], indent=""))


def history_csv(entries: Iterable[Happened]) -> str:
    """Give the same for a spreadsheet."""
    return csv_text(HAPPENED, entries)
