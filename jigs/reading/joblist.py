"""A front list that belongs to a job file, and the pulls that any front list names."""

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

from jigs.given.hardware import NO_PULL, PullRecord
from jigs.given.job import BoxSpec
from jigs.ground.errors import Fault, ReadingError
from jigs.ground.lengths import Unit
from jigs.ground.nearest import suggest_record
from jigs.reading.frontlist import read_front_list
from jigs.reading.jobhardware import Shelf
from jigs.reading.listedboxes import join_fronts
from jigs.reading.listedfront import FrontList


def hang_list(
    path: Path, unit: Unit, boxes: Sequence[BoxSpec], pulls: Shelf[PullRecord]
) -> tuple[tuple[BoxSpec, ...], list[Fault]]:
    """Hang the fronts of a list on a job's boxes. Gives also the list's faults.

    Bare numbers are in `unit` where the list's header does not say otherwise.
    """
    try:
        front_list = read_front_list(path, bare=False, unstated=unit)
    except ReadingError as error:
        return tuple(boxes), list(error.faults)
    faults = check_pull_names(front_list, pulls)
    try:
        return settle_pull_names(join_fronts(front_list, boxes), pulls), faults
    except ReadingError as error:
        return tuple(boxes), [*faults, *error.faults]


def check_pull_names(front_list: FrontList, pulls: Shelf[PullRecord]) -> list[Fault]:
    """Find the rows whose pull is neither a record nor `none`."""
    known = (*pulls.names, NO_PULL)
    return [
        Fault(
            f"{row.where}, column pull",
            f"unknown pull ('{name[:40]}' given); {suggest_record(name, known)}",
        )
        for row in front_list.rows
        if (name := row.spec.opened_by.pull) and _find(name, pulls) is None
    ]


def settle_pull_names(boxes: Sequence[BoxSpec], pulls: Shelf[PullRecord]) -> tuple[BoxSpec, ...]:
    """Give the fronts the pulls' names as the records write them: a list may write `Knob`."""
    return tuple(
        replace(
            box,
            fronts=tuple(
                replace(
                    front,
                    opened_by=replace(front.opened_by, pull=_find(front.opened_by.pull, pulls)),
                )
                if front.opened_by.pull
                else front
                for front in box.fronts
            ),
        )
        for box in boxes
    )


def _find(name: str, pulls: Shelf[PullRecord]) -> str | None:
    known = (*pulls.names, *pulls.broken, NO_PULL)
    if name in known:
        return name
    return next((word for word in known if word.lower() == name.lower()), None)
