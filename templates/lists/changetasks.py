"""What is to be done after an edit, one line a task: what is cut, bored and labelled anew, and what
is spoilt. Text, data and the list for a spreadsheet are made from these."""

from collections.abc import Iterator, Mapping, Sequence
from typing import Literal

from msgspec import Struct, field

from jigs.changes.boring import SPOILS, HoleChange
from jigs.changes.comparing import Changes
from jigs.changes.cups import KeptCups, serve_turned
from jigs.changes.deeds import Deed, Deeds
from jigs.changes.made import MadeHole
from jigs.changes.parting import PartChange
from jigs.changes.sizing import LOST, SizeChange, is_front
from jigs.ground.grouped import grouped
from jigs.ground.lengths import Unit
from jigs.ground.problems import Problem
from templates.words.changewords import FREE_NOW, HELD_WHY, cause_words, lot_words
from templates.words.savingwords import (
    all_holes_words,
    cups_words,
    cure_words,
    deed_words,
    holes_words,
    lost_words,
    size_words,
    turned_words,
)
from templates.words.saying import say
from templates.words.sentence import bare, closed

TaskGroup = Literal[
    "label", "part", "held", "free", "cut", "bore", "bore-no-more", "spoilt", "spoilt-if"
]
"""A part has another name; it came or went; it is held back now; it no longer is; the rest is what
is to be done with it."""


class ChangeTask(Struct, frozen=True, kw_only=True):
    """One thing to be done with a part, or that is spoilt in it."""

    group: TaskGroup
    part: str
    how: str
    """What is to be done."""
    figures: str = ""
    """The sizes with which it is, that are the part's own."""
    done: str = ""
    """What is known of whether the old work is done."""
    deed: Deed | None = None
    cause: str = ""
    """By which edits."""
    size: SizeChange | None = None
    holes: tuple[HoleChange, ...] = ()

    @property
    def words(self) -> str:
        """All of it."""
        return f"{self.figures}: {self.how}" if self.figures else self.how


class Report(Struct, frozen=True, kw_only=True):
    """What was compared, and what is known beside it."""

    changes: Changes
    deeds: Deeds
    cups: Mapping[str, KeptCups]
    unit: Unit
    names: tuple[str, str]
    """What the two were called on the command line."""
    held: Mapping[str, Sequence[Problem]] = field(default_factory=dict)
    """What holds parts of NEW back, by their IDs; nothing where it is a pack."""
    uneven: str = ""
    """What is said first where a delivered list is of one of them alone."""


def list_tasks(report: Report) -> tuple[ChangeTask, ...]:
    """List all tasks, part by part in the order of the job."""
    return tuple(task for change in report.changes.parts for task in _tasks(report, change))


def _tasks(report: Report, change: PartChange) -> Iterator[ChangeTask]:
    cause = cause_words(change.edits)
    if said := lot_words(change):
        group: TaskGroup = "label" if change.lot == "renamed" else "part"
        yield ChangeTask(group=group, part=change.id, how=said, cause=cause)
    if change.lot == "renamed":
        return
    if change.lot == "gone":
        deed = report.deeds.of_any(change)
        if deed.key:
            yield ChangeTask(
                group="spoilt", part=change.id, how="the job has it no more", deed=deed,
                done=deed_words(deed), cause=cause,
            )  # fmt: skip
        return
    if change.stopped:
        said = " ".join(_finding(each, report.unit) for each in report.held.get(change.id, ()))
        yield ChangeTask(group="held", part=change.id, how=said or HELD_WHY, cause=cause)
    if change.freed:
        yield ChangeTask(group="free", part=change.id, how=FREE_NOW, cause=cause)
    for size in change.sizes:
        yield from _of_size(report, change, size, cause)
    yield from _of_holes(report, change, cause)


def _finding(problem: Problem, unit: Unit) -> str:
    """Say what holds a part back, and what to do."""
    said = say(problem, unit)
    return f"{bare(said.fact)}. {closed(said.remedy)}"


def _of_size(
    report: Report, change: PartChange, size: SizeChange, cause: str
) -> Iterator[ChangeTask]:
    deed = report.deeds.of_size(change)
    if deed.by == "now":
        return
    lost = size.kind in LOST
    # What is ordered stands in the order; a drawer box is cut piece by piece.
    ordered = is_front(change.part) and (lost or size.kind == "new")
    if not ordered and size.kind != "box":
        figures, how = size_words(size, change, report.unit)
        yield ChangeTask(
            group="cut", part=change.id, how=how, figures=figures,
            done=deed_words(deed) if deed.key else "", deed=deed, cause=cause, size=size,
        )  # fmt: skip
    if lost:
        yield ChangeTask(
            group="spoilt" if deed.sure else "spoilt-if", part=change.id,
            how=lost_words(size, change), done=deed_words(deed), deed=deed, cause=cause,
            size=size,
        )  # fmt: skip


def _of_holes(report: Report, change: PartChange, cause: str) -> Iterator[ChangeTask]:
    """Give the holes that changed alike together; of a part that is new all are bored, and nothing
    more is said."""
    if change.lot == "new":
        return
    if any(size.kind in LOST for size in change.sizes):
        if count := len(change.part.holes):
            yield ChangeTask(group="bore", part=change.id, how=all_holes_words(count), cause=cause)
        return
    alike = grouped(
        ((hole.kind, hole.hole.purpose, hole.hole.face, hole.by, hole.cure), hole)
        for hole in change.holes
    )
    kept = report.cups.get(change.id)
    for holes in alike.values():
        first = holes[0]
        deed = report.deeds.of_hole(change, first)
        words = holes_words(holes)
        known = deed if deed.key else None
        if deed.by == "now":
            continue
        spoils = first.cure in SPOILS and first.before is not None
        if first.after is not None or not spoils:
            yield ChangeTask(
                group="bore-no-more" if first.after is None else "bore", part=change.id,
                how=words if spoils else f"{words}: {cure_words(holes, change)}",
                done=deed_words(deed) if known else "", deed=known, cause=cause, holes=tuple(holes),
            )  # fmt: skip
        if spoils:
            text = f"{words}: {cure_words(holes, change)}"
            if kept is not None and first.hole.purpose == "cup":
                text = f"{text}. {cups_words(kept)}"
            if first.hole.purpose == "cup" and _may_turn(report, change):
                text = f"{text}. {turned_words(pulls=bool(_pulls(change)))}"
            yield ChangeTask(
                group="spoilt" if deed.sure else "spoilt-if", part=change.id, how=text,
                done=deed_words(deed), deed=deed, cause=cause, holes=tuple(holes),
            )  # fmt: skip


def _may_turn(report: Report, change: PartChange) -> bool:
    """Tell whether a door may be turned half round: its cups serve, its pull is not known to be
    bored."""
    bored = any(
        report.deeds.of_hole(change, HoleChange(kind="gone", before=pull, cure="shows")).key
        for pull in _pulls(change)
    )
    return serve_turned(change) and not bored


def _pulls(change: PartChange) -> list[MadeHole]:
    """Give the holes of before for its pull."""
    holes = change.before.holes if change.before else ()
    return [hole for hole in holes if hole.purpose == "pull"]
