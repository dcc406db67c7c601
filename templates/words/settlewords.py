"""What stops the work, in words: before which stage it has to be settled, and what waits for it."""

from collections.abc import Iterator

from jigs.bench.jobplan import JobPlan
from jigs.bench.workplan import Stage
from jigs.given.confirming import OpenNumber, by_record
from templates.words.findings import before_cutting, held_words
from templates.words.openwords import STAMP
from templates.words.planwords import stage_title
from templates.words.stationwords import station_title
from templates.words.textlines import counted

SETTLE_TITLE = "What stops the work"
NOTHING = "Nothing stops the work: no part is held back, no number is open."
MOST_NAMES = 8
"""More parts than these are counted, not named."""


def settle_words(plan: JobPlan) -> Iterator[str]:
    """Say what must be settled before the work goes on, what is held first."""
    yield from held_lines(plan)
    layout = plan.layout
    parts = {
        *(front.id for front in layout.fronts), *(box.id for box in layout.boxes),
        *(box.wall for box in layout.boxes),
    }  # fmt: skip
    yield from before_cutting(layout, parts)
    yield from open_lines(plan)


def held_lines(plan: JobPlan) -> Iterator[str]:
    """Say of each part that is held back why, and what waits for it."""
    unit = plan.layout.job.shown
    for part in plan.layout.units:
        if part.withheld:
            waiting = plan.stopped_by(part.id)
            also = f" Waiting for it: {names_words(waiting)}." if waiting else ""
            yield f"HOLD {part.id}: {held_words(part, unit)}.{also}"


def open_lines(plan: JobPlan) -> Iterator[str]:
    """Say of each piece of hardware with open numbers which, and before what they are settled."""
    found: dict[tuple[str, str], list[tuple[int, Stage, OpenNumber]]] = {}
    for day in plan.days:
        for stage in day.stages:
            if stage.kind == "before":
                continue
            for number in plan.open_at(stage):
                found.setdefault((number.kind, number.record), []).append(
                    (day.number, stage, number)
                )
    for (kind, name), each in sorted(found.items()):
        keys = dict.fromkeys(number.key for _, _, number in each)
        stages = dict.fromkeys(_short(stage) for _, stage, _ in each)
        first = min(day for day, _, _ in each)
        served = dict.fromkeys(
            part for _, stage, _ in each for part in _resting(plan, stage, kind, name)
        )
        yield (
            f"{STAMP} {kind} '{name}' ({', '.join(keys)}): settle it before day {first}. On it "
            f"{'rests' if len(served) == 1 else 'rest'} {counted(len(served), 'part')}: "
            f"{', '.join(stages)}."
        )


def _short(stage: Stage) -> str:
    return station_title(stage.station) if stage.station is not None else stage_title(stage)


def _resting(plan: JobPlan, stage: Stage, kind: str, name: str) -> Iterator[str]:
    """Name the parts of a stage that rest on the open numbers of a record."""
    if stage.kind == "try":
        for article in plan.articles:
            if (article.kind, article.record.name) == (kind, name):
                yield article.front.id
        return
    if stage.station is None:
        yield from (task.part for task in stage.tasks)
        return
    for row in stage.station.rows:
        if (kind, name) in by_record(row.open):
            yield row.part.id


def stopped_words(stage: Stage, stopped: tuple[str, ...], held: tuple[str, ...]) -> str:
    """Say which parts of a stage wait until others are released. A board's station has its other
    lines all the same: they are bored, and it is not finished."""
    parts, others = names_words(stopped), names_words(held)
    if stage.station is not None and stage.station.face == "inside":
        return f"NOT FINISHED {parts}: bore their other rows; the rest when {others} is released."
    return f"HOLD {parts}: until {others} is released."


def names_words(names: tuple[str, ...]) -> str:
    """Name parts, or count them where they are many."""
    if len(names) > MOST_NAMES:
        more = len(names) - MOST_NAMES
        return f"{', '.join(names[:MOST_NAMES])} and {more} more"
    return ", ".join(names)
