"""The order of work for a spreadsheet, a row for each step of each part, and as data."""

import json
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from jigs.bench.jobplan import JobPlan
from jigs.bench.workplan import Stage, Task
from templates.lists.cells import csv_text
from templates.lists.workview import Paged, WorkView
from templates.words.openwords import open_cell, open_data
from templates.words.planwords import stop_words
from templates.words.settlewords import settle_words
from templates.words.worknotes import RECKONED

COLUMNS = (
    "day", "stage", "step", "station", "pages", "part", "boxes", "in_hand", "waits_for", "held_by",
    "open", "done",
)  # fmt: skip


def plan_csv(view: WorkView) -> str:
    """Give a row for each step of each part, in the order of the work; a stage without parts has
    a row of its own."""
    plan, paged = view.plan, view.paged
    rows: list[tuple[object, ...]] = []
    for day in plan.days:
        for stage in day.stages:
            pages = " ".join(map(str, _pages(stage, paged)))
            name = stage.station.name if stage.station is not None else ""
            opened = open_cell(plan.open_at(stage))
            for task in stage.tasks or (None,):
                step = stage.step.key if stage.step is not None else ""
                head = (day.number, stage.kind, step, name, pages)
                if task is None:
                    rows.append((*head, "", "", 0, "", "", opened, ""))
                    continue
                rows.append(
                    (
                        *head, task.part, " ".join(task.boxes), task.amount,
                        " ".join(_waits(plan, task)), " ".join(task.held), opened,
                        "yes" if plan.done.is_done(task) else "",
                    )
                )  # fmt: skip
    return csv_text(COLUMNS, rows)


def plan_json(view: WorkView) -> str:
    """Give the work as JSON text: days, their stages, the parts of each."""
    plan, paged = view.plan, view.paged
    data = {
        "schema": 1,
        "job": plan.layout.job.name,
        "units": plan.layout.job.units,
        "a_day": plan.most,
        "a_day_is": RECKONED.format(plan.most),
        "today": plan.today,
        "before": list(settle_words(plan)),
        "days": [
            {"day": day.number, "stages": [_stage(plan, stage, paged) for stage in day.stages]}
            for day in plan.days
        ],
    }
    return json.dumps(data, indent=1, ensure_ascii=False) + "\n"


def _stage(plan: JobPlan, stage: Stage, paged: Paged) -> Mapping[str, Any]:
    station = stage.station
    data: dict[str, Any] = {
        "stage": stage.kind,
        "step": stage.step.key if stage.step is not None else None,
        "until": list(stop_words(plan, stage)),
        "parts": [
            {
                "part": task.part,
                "boxes": list(task.boxes),
                "in_hand": task.amount,
                "waits_for": list(_waits(plan, task)),
                "held_by": list(task.held),
                "done": plan.done.is_done(task),
            }
            for task in stage.tasks
        ],
    }
    if numbers := plan.open_at(stage):
        data["open"] = open_data(numbers)
    if station is not None:
        data["station"] = station.name
        data["pages"] = list(_pages(stage, paged))
        data["bits"] = [
            {"diameter_mm": round(bit.diameter, 4), "depth_mm": bit.depth and round(bit.depth, 4)}
            for bit in station.bits
        ]
    return data


def _pages(stage: Stage, paged: Paged) -> Sequence[int]:
    return paged.pages.get(stage.station.name, ()) if stage.station is not None else ()


def _waits(plan: JobPlan, task: Task) -> Iterator[str]:
    """Name the steps of other parts that a task waits for: `B1-SIDE-L:mounted`."""
    if task.step is None:
        return
    for wait in plan.courses[task.part].waits.get(task.step.key, ()):
        if wait.step is not None:
            yield f"{wait.part}:{wait.step.key}"
