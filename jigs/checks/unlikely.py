"""Which numbers are unusual, or were perhaps exchanged, and what depends on them? Nothing is held
for being unusual.

Rows and columns that a workbook hides are told as well: perhaps nobody meant them. Two fronts 1/16
apart, each with the other's label, are both within the 1.6 that is accepted, and both wrong; so is
a front nearly as wide as high that was made the other way round: it is asked where all would fit
better so.
"""

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from itertools import product
from math import floor

from jigs.box.drawerbox import Rollout
from jigs.box.parts import Front, Side
from jigs.fittings.pull import usual_near
from jigs.given.confirming import RecordKind
from jigs.given.hardware import HingeRecord, PullRecord, SlideRecord
from jigs.given.ids import name_leaves
from jigs.given.job import BoxSpec, FrontKind, FrontSpec, Job
from jigs.given.kinds import kind_of
from jigs.ground.believable import Doubt, KeyPath, write_path
from jigs.ground.problems import Problem, warning


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
        yield _find_doubt(None, doubt, everything if used is None else used)
    for pull in job.pulls.values():
        if pull.centers is not None and (near := usual_near(pull.centers)) is not None:
            at = tuple(front.id for front in fronts if front.pull == pull.name)
            if at:
                key = write_path(("pull", pull.name, "centers"))
                yield warning(
                    "unlikely-number",
                    None,
                    case="centres",
                    key=key,
                    centers=pull.centers,
                    near=near,
                    also=at,
                )
    inside: dict[str, dict[str, None]] = {}
    for of, part in (*((f.box, f.id) for f in fronts), *((s.box, s.board) for s in sides)):
        inside.setdefault(of, {})[part] = None
    for front in fronts:
        arrival = job.delivery.arrivals.get(front.id) if job.delivery else None
        for what in arrival.piece.hidden if arrival else ():
            yield warning("hidden-in-list", front.id, what=what, delivered=True)
    for box in job.boxes:
        for doubt in box.read.doubts:
            yield _find_doubt(box.id, doubt, inside.get(box.id, ()))
        for spec in box.fronts:
            for what in spec.row.hidden:
                for part in _parts_of(spec, box.id):
                    yield warning("hidden-in-list", part, what=what, delivered=False)
            for doubt in spec.row.doubts:
                for part in _parts_of(spec, box.id):
                    yield _find_doubt(part, doubt, ())


def _parts_of(spec: FrontSpec, box: str) -> tuple[str, ...]:
    """Name what a front's numbers are told at: an opening is no part, its box is."""
    if spec.kind == "opening":
        return (box,)
    return name_leaves(spec.id) if spec.kind == "pair" else (spec.id,)


def _find_doubt(part: str | None, doubt: Doubt, also: Iterable[str]) -> Problem:
    name, within, also = _name(doubt.path), doubt.within, tuple(also)
    if doubt.nominal:
        return warning(
            "unlikely-number", part, case="nominal", also=also,
            name=name, nominal=doubt.nominal, low=within.low, high=within.high,
        )  # fmt: skip
    length = within.unit == "mm"
    return warning(
        "unlikely-number", part, case="range", also=also, name=name,
        value=doubt.value if length else f"{doubt.value:g} {within.unit}".rstrip(),
        usual=str(within),
    )  # fmt: skip


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


FITS = 0.8
"""Two fronts fit each other's orders if all their sizes together are no further off; mm (derived:
two fronts of two sizes, each within a tape's 0.2)."""
BETTER = 1.2
"""By so much less they are off in all, crosswise; mm (derived: of two fronts 1/16 apart that are
exchanged it is 3.2, of one nearly square 1.6 apart as well)."""
HIGHEST: dict[FrontKind, float] = {"drawer": 1.5, "false-front": 1.5}
"""A front of these kinds is at most so many times as high as wide (common practice, no source)."""
WIDEST: dict[FrontKind, float] = {"door": 2.0, "pair": 2.0, "pullout": 1.5}
"""A front, or leaf, of these kinds is at most so many times as wide as high (the same)."""


def check_crosswise(boxes: Iterable[BoxSpec], fronts: Sequence[Front]) -> tuple[Problem, ...]:
    """List the fronts whose labels, or whose width and height, were perhaps exchanged."""
    measured = [front for front in fronts if front.ordered and not front.withheld]
    return (
        *_exchanged_labels(measured),
        *_turned(measured),
        *(problem for box in boxes if box.inferred for problem in _odd_shapes(box)),
    )


def _off(front: Front, ordered: tuple[float, float]) -> float:
    """How far a front's sizes as measured are off an order, both together; mm."""
    return abs(front.width - ordered[0]) + abs(front.height - ordered[1])


def _exchanged_labels(measured: Sequence[Front]) -> Iterator[Problem]:
    orders = _Orders(measured)
    told: set[str] = set()
    for front in measured:
        if front.ordered is None or front.id in told or _off(front, front.ordered) < BETTER / 2:
            continue
        for other in orders.fitted_by(front):
            if other.ordered is None or other.id in told:
                continue
            crosswise = _off(front, other.ordered) + _off(other, front.ordered)
            straight = _off(front, front.ordered) + _off(other, other.ordered)
            if crosswise <= FITS and straight - crosswise >= BETTER:
                told |= {front.id, other.id}
                yield warning(
                    "exchanged-perhaps",
                    front.id,
                    case="labels",
                    front=front.id,
                    other=other.id,
                    width=front.width,
                    height=front.height,
                    other_width=other.width,
                    other_height=other.height,
                    also=(other.id,),
                )
                break


class _Orders:
    """The sizes that were ordered, each once, in squares of FITS by which those near are found."""

    def __init__(self, measured: Iterable[Front]) -> None:
        self._fronts: dict[tuple[float, float], list[Front]] = {}
        for front in measured:
            if front.ordered is not None:
                self._fronts.setdefault(front.ordered, []).append(front)
        self._near: dict[tuple[int, int], list[tuple[float, float]]] = {}
        for order in sorted(self._fronts):
            self._near.setdefault(_square(*order), []).append(order)

    def fitted_by(self, front: Front) -> Iterator[Front]:
        """Give the fronts of other sizes whose order one fits as it was measured."""
        across, up = _square(front.width, front.height)
        for square in product(range(across - 1, across + 2), range(up - 1, up + 2)):
            for order in self._near.get(square, ()):
                if order != front.ordered and _off(front, order) <= FITS:
                    yield from self._fronts[order]


def _square(width: float, height: float) -> tuple[int, int]:
    return floor(width / FITS), floor(height / FITS)


def _turned(measured: Sequence[Front]) -> Iterator[Problem]:
    for front in measured:
        assert front.ordered is not None, "only such are measured"
        turned = _off(front, front.ordered[::-1])
        if turned <= FITS / 2 and _off(front, front.ordered) - turned >= BETTER:
            yield warning(
                "exchanged-perhaps",
                front.id,
                case="measured",
                made_width=front.width,
                made_height=front.height,
                width=front.ordered[0],
                height=front.ordered[1],
            )


def _odd_shapes(box: BoxSpec) -> Iterator[Problem]:
    """Find fronts of an odd shape where nothing but their own sizes says how wide the box is."""
    for spec in box.fronts:
        if spec.width is None or spec.height is None:
            continue
        high = spec.kind in HIGHEST and spec.height > HIGHEST[spec.kind] * spec.width
        wide = spec.kind in WIDEST and spec.width > WIDEST[spec.kind] * spec.height
        if high or wide:
            yield warning(
                "exchanged-perhaps",
                spec.id if spec.kind != "pair" else box.id,
                case="shape",
                kind=spec.kind,
                width=spec.width,
                height=spec.height,
            )
