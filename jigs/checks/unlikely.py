"""Which numbers are unusual, and what depends on them? Nothing is held for being unusual. Rows
and columns that a workbook hides are told as well: perhaps nobody meant them."""

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence

from jigs.box.parts import Front, Side
from jigs.fittings.kinds import kind_of
from jigs.fittings.pull import usual_near
from jigs.given.confirming import RecordKind
from jigs.given.hardware import HingeRecord, PullRecord, SlideRecord
from jigs.given.ids import name_leaves
from jigs.given.job import FrontSpec, Job
from jigs.given.rolloutspec import Rollout
from jigs.ground.believable import Doubt
from jigs.ground.finding import warning
from jigs.ground.lengths import Unit, format_length
from jigs.ground.problems import Problem
from jigs.reading.tomlindex import KeyPath, write_path


def check_unlikely(
    job: Job, fronts: Sequence[Front], sides: Sequence[Side], rollouts: Sequence[Rollout]
) -> tuple[Problem, ...]:
    """List the numbers of a job that are not usual, each at what depends on it."""
    return tuple(_find(job, fronts, sides, rollouts))


def _find(
    job: Job, fronts: Sequence[Front], sides: Sequence[Side], rollouts: Sequence[Rollout]
) -> Iterator[Problem]:
    everything = (*(front.id for front in fronts), *dict.fromkeys(s.board for s in sides))
    for doubt in job.doubts:
        used = _used_by(job, doubt.path, fronts, sides, rollouts)
        yield _word(None, doubt, everything if used is None else used, job.shown)
    for pull in job.pulls.values():
        if pull.centers is not None and (near := usual_near(pull.centers)) is not None:
            at = tuple(front.id for front in fronts if front.pull == pull.name)
            yield from _centres(pull.name, pull.centers, near, at, job.shown)
    inside: dict[str, dict[str, None]] = {}
    for of, part in (*((f.box, f.id) for f in fronts), *((s.box, s.board) for s in sides)):
        inside.setdefault(of, {})[part] = None
    for front in fronts:
        arrival = job.delivery.arrivals.get(front.id) if job.delivery else None
        for what in arrival.piece.hidden if arrival else ():
            yield _hidden(front.id, f"{what} in the delivered list")
    for box in job.boxes:
        for doubt in box.doubts:
            yield _word(box.id, doubt, inside.get(box.id, ()), job.shown)
        for spec in box.fronts:
            for what in spec.hidden:
                for part in _parts_of(spec, box.id):
                    yield _hidden(part, f"{what} in the front list")
            for doubt in spec.doubts:
                for part in _parts_of(spec, box.id):
                    yield _word(part, doubt, (), job.shown)


def _hidden(part: str, what: str) -> Problem:
    return warning(
        "hidden-in-list",
        part,
        f"{what} is hidden in the workbook, and was read as any other",
        "show all of the sheet; delete there what is not wanted",
    )


def _centres(
    name: str, centers: float, near: float, at: tuple[str, ...], unit: Unit
) -> Iterator[Problem]:
    """Ask about a pull's hole centres beside usual ones, where the pull is used."""
    if at:
        yield warning(
            "unlikely-number",
            None,
            f"{write_path(('pull', name, 'centers'))}: {format_length(centers, unit)}, and pulls "
            f"are sold with {format_length(near, unit)}",
            "measure one, from hole to hole; if it is so, leave it",
            at,
        )


def _parts_of(spec: FrontSpec, box: str) -> tuple[str, ...]:
    """Name what a front's numbers are told at: an opening is no part, its box is."""
    if spec.kind == "opening":
        return (box,)
    return name_leaves(spec.id) if spec.kind == "pair" else (spec.id,)


def _word(part: str | None, doubt: Doubt, also: Iterable[str], unit: Unit) -> Problem:
    name, within = _name(doubt.path), doubt.within
    if doubt.nominal:
        return warning(
            "unlikely-number",
            part,
            f"{name} {doubt.nominal}: measured with a caliper? A board called so is usually "
            f"{within.low:.1f} to {within.high:.1f} mm",
            "measure it, and write what it is in mm or as a decimal",
            tuple(also),
        )
    plain = f"{doubt.value:g} {within.unit}".rstrip()
    said = format_length(doubt.value, unit) if within.unit == "mm" else plain
    return warning(
        "unlikely-number",
        part,
        f"{name}: {said}; {within} is usual",
        "see whether it is right, and in which unit it was meant; if it is, leave it",
        tuple(also),
    )


def _name(path: KeyPath) -> str:
    """Write a number's path; without what its box or front is, where it is told at that."""
    steps = path[2:] if path[0] == "box" else path
    return write_path(steps[2:] if path[0] == "box" and steps[0] == "front" else steps)


def _used_by(
    job: Job,
    path: KeyPath,
    fronts: Sequence[Front],
    sides: Sequence[Side],
    rollouts: Sequence[Rollout],
) -> tuple[str, ...] | None:
    """Name the parts that a hardware record, or one like it, is used at: fronts, drawer boxes,
    rollouts, and the boards that are drilled for them; None of a number that is no record's."""
    if len(path) < 3:
        return None
    name = str(path[1])
    match path[0]:
        case "hinge":
            names = _alike(name, job.hinges)
            hung = [f.id for f in fronts if f.hinge and f.hinge.record in names]
            return (*hung, *_boards(sides, "hinge", names))
        case "slide":
            names = _alike(name, job.slides)
            running = [f for f in fronts if f.drawer and f.drawer.slide in names]
            return (
                *(front.id for front in running),
                *(front.drawer.id for front in running if front.drawer),
                *(rollout.id for rollout in rollouts if rollout.slide in names),
                *_boards(sides, "slide", names),
            )
        case "pull":
            names = _alike(name, job.pulls)
            return tuple(f.id for f in fronts if f.pull in names)
        case "wall" | "printer" | "stock":
            return ()
        case _:
            return None


def _boards(sides: Sequence[Side], kind: RecordKind, records: Collection[str]) -> Iterable[str]:
    """Name the boards that are drilled for some records."""
    return dict.fromkeys(
        side.board
        for side in sides
        if any(kind_of(f).record == kind and f.record in records for f in side.fittings)
    )


def _alike(name: str, records: Mapping[str, HingeRecord | SlideRecord | PullRecord]) -> set[str]:
    """Name a record and those that are like it, however far down."""
    found = {name}
    while more := {r.name for r in records.values() if r.like in found} - found:
        found |= more
    return found
