"""What an edit has made stale, as text, as data and for a spreadsheet.

All three list the same: what was edited, what is printed anew, and the tasks of the parts.
"""

import json
from collections.abc import Iterator, Sequence
from typing import Any

from msgspec.structs import replace

from jigs.changes.causing import Edit
from jigs.changes.comparing import Changes, NeedChange, StationChange
from jigs.changes.made import Made, MadeHole
from jigs.ground.grouped import grouped
from templates.lists.cells import csv_text
from templates.lists.changetasks import ChangeTask, Report, TaskGroup, list_tasks
from templates.words.changewords import (
    AS_IT_WAS,
    BORE,
    BORE_NO_MORE,
    CAME,
    CODES_ALONE,
    CUT,
    EDITED,
    FREE,
    HELD,
    HELD_NEEDS,
    HELD_NOW,
    LABEL,
    MOST_CAUSES,
    NOTHING,
    ORDER,
    PRINT,
    REPLACES,
    REWORK_CARE,
    SAME_CODES,
    SPOILT,
    SPOILT_IF,
    confirmed_words,
    edits_words,
    needs_words,
    parts_words,
    title_words,
)
from templates.words.stationwords import name_title
from templates.words.textlines import counted, wrapped

COLUMNS = ("do", "name", "what", "if_done", "marked_at", "cause")
"""The columns of the CSV list: `do` is first (what is said before all), print, throw away, label,
part, held, free, cut, bore, bore-no-more, order, spoilt or spoilt-if."""


def changes_text(report: Report) -> str:
    """Say for people what is stale, by what is to be done."""
    changes = report.changes
    lines = wrapped(title_words(changes, report.names), "", "  ")
    lines += wrapped(report.uneven, "", "") if report.uneven else []
    tasks = list_tasks(report)
    if len(changes.edits) == 1:  # it stands above, and is the cause of all
        tasks = tuple(replace(task, cause="") for task in tasks)
    stopped = _said(tasks, "held")
    lines += _titled(HELD, [*stopped, HELD_NOW] if stopped else [])
    lines += _titled(FREE, _said(tasks, "free"))
    lines += _titled(EDITED, edits_words(changes.edits))
    whole = changes.old.whole and changes.new.whole
    if changes.nothing:
        said = [NOTHING if whole else SAME_CODES, *confirmed_words(changes)]
        lines += [line for each in said for line in wrapped(each, "", "")]
        return "".join(f"{line}\n" for line in lines)
    if not whole:
        lines += wrapped(CODES_ALONE, "", "")
    lines += _titled(PRINT, [*_printed(changes), REPLACES])
    for group, title in (("label", LABEL), ("part", CAME)):
        if named := [task.words for task in tasks if task.group == group]:
            lines += _titled(title, ["; ".join(named)])
    lines += _titled(CUT, _said(tasks, "cut"))
    lines += _titled(BORE, _said(tasks, "bore"))
    lines += _titled(BORE_NO_MORE, _said(tasks, "bore-no-more"))
    needed = needs_words(changes.needs, report.unit)
    lines += _titled(ORDER, [*needed, *([HELD_NEEDS] if needed and changes.stopped else [])])
    lines += _titled(SPOILT, _said(tasks, "spoilt"))
    lines += _titled(SPOILT_IF, _said(tasks, "spoilt-if"))
    if any(task.holes for task in tasks):
        lines += [REWORK_CARE]
    elif whole and not tasks and not changes.needs:
        lines += [AS_IT_WAS]
    lines += [line for said in confirmed_words(changes) for line in wrapped(said, "", "")]
    return "".join(f"{line}\n" for line in lines)


def _titled(title: str, said: Sequence[str | tuple[str, ...]]) -> list[str]:
    """Give lines below a title; of several that belong together all but the first further in."""
    if not said:
        return []
    lines = [title]
    for each in said:
        first, *rest = (each,) if isinstance(each, str) else each
        lines += wrapped(first, "  ", "    ")
        lines += [line for one in rest for line in wrapped(one, "    ", "      ")]
    return lines


def _said(tasks: Sequence[ChangeTask], group: TaskGroup) -> list[str | tuple[str, ...]]:
    """Say the tasks of a group: what is done alike once, with its parts and, below it, their own
    figures where they differ; by which edits, where these are few."""
    alike = grouped(((task.how, task.done), task) for task in tasks if task.group == group)
    return [line for key, own in alike.items() for line in _alike(*key, own)]


def _alike(how: str, done: str, own: Sequence[ChangeTask]) -> Iterator[str | tuple[str, ...]]:
    few = len({task.cause for task in own}) <= MOST_CAUSES
    lots = grouped(((task.figures, task.cause if few else ""), task.part) for task in own)
    marked = f", {done}" if done else ""
    lines = [
        (parts_words(list(dict.fromkeys(parts))), figures, f" [{cause}]" if cause else "")
        for (figures, cause), parts in lots.items()
    ]
    if len(lines) > ONE_BY_ONE and all(figures for _, figures, _ in lines):
        head = f"{how}{marked}:"
        yield (head, *(f"{names}: {figures}{cause}" for names, figures, cause in lines))
        return
    for names, figures, cause in lines:
        yield f"{names}{marked}: {f'{figures}: ' if figures else ''}{how}{cause}"


ONE_BY_ONE = 2
"""So many parts of other sizes with which the same is done are said each by itself."""


def _printed(changes: Changes) -> Iterator[str]:
    """Say what is printed anew, file by file."""
    for kind, title in (("changed", ""), ("new", "new: "), ("gone", "no more, throw away: ")):
        if named := [_station(each) for each in changes.stations if each.kind == kind]:
            yield f"stations.pdf: {title}{'; '.join(named)}"
    for file, names in (("sheets.pdf", changes.sheets), ("labels.pdf", changes.labels)):
        if names:
            most = _all(changes, file)
            if len(names) == most:
                yield f"{file}: {'all ' if most > 1 else ''}{counted(most, 'part')}"
            else:
                yield f"{file}: {len(names)} of {counted(most, 'part')}: {', '.join(names)}"
    if changes.tables:
        yield f"heights.pdf: {', '.join(changes.tables)}"
    if changes.drawn:
        yield f"elevations.pdf: {_walls(changes.drawn)}"
    yield from changes.lists
    if changes.hung:
        yield f"hang.pdf: {_walls(changes.hung)}"


def _all(changes: Changes, file: str) -> int:
    """Count the parts that a file has."""
    parts = changes.new.parts.values()
    drawn = sum(bool(part.stations) for part in parts)
    return drawn if file == "sheets.pdf" else len(parts)


def _walls(names: Sequence[str]) -> str:
    return ", ".join(f"wall {name}" if name else "boxes at no wall" for name in names)


def _station(change: StationChange) -> str:
    station = change.station
    title = name_title(station.name, station.work, station.pattern)
    rows = dict.fromkeys(row.part for row in station.rows)
    if change.kind == "gone" or set(rows) <= set(change.parts):
        return title
    return f"{title} ({', '.join(change.parts)})"


def changes_json(report: Report) -> str:
    """Give all that is stale as JSON text; lengths in mm."""
    changes = report.changes
    data = {
        "schema": 1,
        "old": _made_data(changes.old, report.names[0]),
        "new": _made_data(changes.new, report.names[1]),
        "nothing": changes.nothing,
        "first": report.uneven or None,
        "edits": [_edit_data(edit) for edit in changes.edits],
        "print": {
            "stations": [
                {"name": each.name, "state": each.kind, "parts": list(each.parts)}
                for each in changes.stations
            ],
            "sheets": list(changes.sheets),
            "labels": list(changes.labels),
            "heights": list(changes.tables),
            "elevations": list(changes.drawn),
            "lists": list(changes.lists),
            "hang": list(changes.hung),
        },
        "parts": [
            {
                "id": each.id,
                "state": each.lot,
                "was": each.before.id if each.before else None,
                "codes": [each.before.code if each.before else None,
                          each.after.code if each.after else None],
            }
            for each in changes.parts
        ],
        "tasks": [_task_data(task) for task in list_tasks(report)],
        "order": [_need_data(need) for need in changes.needs],
        "no_longer_open": list(changes.confirmed),
    }  # fmt: skip
    return json.dumps(data, indent=1, ensure_ascii=False) + "\n"


def _made_data(made: Made, name: str) -> dict[str, Any]:
    return {"name": name, "job": made.job, "jigsheet": made.tool, "whole": made.whole}


def _edit_data(edit: Edit) -> dict[str, Any]:
    given = edit.given
    return {
        "of": given.kind,
        "name": given.name or None,
        "key": given.key or None,
        "was": edit.before,
        "now": edit.after,
    }


def _task_data(task: ChangeTask) -> dict[str, Any]:
    size, deed = task.size, task.deed
    return {
        "do": task.group,
        "part": task.part,
        "text": task.words,
        "cause": task.cause or None,
        "marked": None if deed is None else {"by": deed.by, "step": deed.key or None,
                                             "at": deed.at or None},
        "size": None if size is None else {
            "change": size.kind, "was_mm": list(size.before), "now_mm": list(size.after),
            "less_mm": list(size.less),
        },
        "holes": [
            {
                "change": hole.kind, "by_mm": hole.by, "remedy": hole.cure,
                "was": _hole_data(hole.before), "now": _hole_data(hole.after),
            }
            for hole in task.holes
        ],
    }  # fmt: skip


def _hole_data(hole: MadeHole | None) -> dict[str, Any] | None:
    if hole is None:
        return None
    return {
        "purpose": hole.purpose, "face": hole.face, "side": hole.side, "x_mm": hole.x,
        "y_mm": hole.y, "diameter_mm": hole.diameter, "depth_mm": hole.depth,
    }  # fmt: skip


def _need_data(change: NeedChange) -> dict[str, Any]:
    need = change.need
    return {
        "what": need.what, "name": need.name or None, "sizes_mm": list(need.sizes),
        "unit": need.unit, "was": change.before, "now": change.after,
        "was_sizes_mm": list(change.was) or None,
    }  # fmt: skip


def changes_csv(report: Report) -> str:
    """Give all that is stale for a spreadsheet, one thing a line."""
    changes = report.changes
    rows: list[tuple[str, ...]] = []
    if report.uneven:
        rows.append(("first", "", report.uneven, "", "", ""))
    for station in changes.stations:
        did = "throw away" if station.kind == "gone" else "print"
        rows.append((did, station.name, "station", "", "", ""))
    for what, names in (
        ("sheet", changes.sheets), ("label", changes.labels), ("heights", changes.tables),
        ("elevation", changes.drawn), ("list", changes.lists), ("hang", changes.hung),
    ):  # fmt: skip
        rows += [("print", name, what, "", "", "") for name in names]
    for task in list_tasks(report):
        at = task.deed.at if task.deed else ""
        rows.append((task.group, task.part, task.words, task.done, at, task.cause))
    rows += [
        ("order", need.need.name, *needs_words([need], report.unit), "", "", "")
        for need in changes.needs
    ]
    return csv_text(COLUMNS, rows)
