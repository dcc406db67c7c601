"""What belongs to one part of a laid out job: the other parts of its box, its findings, and the
open numbers that it rests on.

A number is put to a part where a hole or a cut in it, or what is mounted on it, depends on the
number: never to a part that is held back, which has none yet.
"""

from collections.abc import Iterable

from msgspec import Struct
from msgspec.structs import replace

from jigs.box.boards import FaceKey
from jigs.box.drawerbox import DrawerBox
from jigs.box.parts import Front, Layout, Side
from jigs.given.confirming import OpenNumber, Record, RecordKind, open_numbers, resting
from jigs.given.job import Job
from jigs.given.kinds import kind_of
from jigs.ground.geometry import Fitting
from jigs.ground.grouped import grouped
from jigs.ground.keys import Rests
from jigs.ground.problems import OPEN_CODES, Problem


class BoxParts(Struct, frozen=True, kw_only=True):
    """The fronts and sides of one box, in the layout's order."""

    fronts: tuple[Front, ...] = ()
    sides: tuple[Side, ...] = ()


class _Sorted(Struct, frozen=True, kw_only=True):
    layout: Layout
    boxes: dict[str, BoxParts]
    findings: dict[str, list[Problem]]


_last: list[_Sorted] = []
"""The layout last asked about, sorted. A layout is too large to be hashed for every part of it,
so it is recognised by identity."""


def _sort(layout: Layout) -> _Sorted:
    if not _last or _last[0].layout is not layout:
        fronts = grouped((front.box, front) for front in layout.fronts)
        sides = grouped((side.box, side) for side in layout.sides)
        findings = grouped(
            (part, problem)
            for problem in layout.problems
            for part in dict.fromkeys((problem.part, *problem.also))
            if part is not None
        )
        boxes = {
            name: BoxParts(fronts=tuple(fronts.get(name, ())), sides=tuple(sides.get(name, ())))
            for name in fronts.keys() | sides.keys()
        }
        _last[:] = [_Sorted(layout=layout, boxes=boxes, findings=findings)]
    return _last[0]


def parts_of_box(layout: Layout, box: str) -> BoxParts:
    """Give the parts of a box by its ID; none for an unknown box."""
    return _sort(layout).boxes.get(box, BoxParts())


def findings_at(layout: Layout, part: str) -> tuple[Problem, ...]:
    """Give the findings that are printed on a part's sheets, in the check's order."""
    return tuple(_sort(layout).findings.get(part, ()))


def findings_in_face(layout: Layout, box: str, board: str, face: FaceKey) -> tuple[Problem, ...]:
    """Give the findings that are printed with one face of a box's board: those of a front that has
    holes in a partition's other face alone stand there."""
    served = {
        (side.column, side.side): {fitting.part for fitting in side.fittings}
        for side in parts_of_box(layout, box).sides
        if side.board == board
    }
    here = served.pop(face, set())
    there = {part for parts in served.values() for part in parts} - here
    return tuple(each for each in findings_at(layout, board) if each.part not in there)


def hung_under(layout: Layout, front: Front) -> Front | None:
    """Give the front of its box that hangs right above a front; None at the top."""
    return _in_row(layout, front, front.place.row - 1)


def hung_over(layout: Layout, front: Front) -> Front | None:
    """Give the front of its box that hangs right below a front; None at the bottom."""
    return _in_row(layout, front, front.place.row + 1)


def _in_row(layout: Layout, front: Front, row: int) -> Front | None:
    found = [
        other
        for other in parts_of_box(layout, front.box).fronts
        if other.place.row == row and other.place.shares_column(front.place)
    ]
    # Of the leaves of a pair, the one that stands over or under this front.
    return min(found, key=lambda other: abs(other.place.x - front.place.x), default=None)


RecordKey = tuple[RecordKind, str]
"""A record's kind and its name."""
OpenNumbers = tuple[OpenNumber, ...]
OF_FRONT: tuple[Rests, ...] = ("front", "back")
OF_DRAWER: tuple[Rests, ...] = ("box-front", "box-back", "cut")


class _OpenNumbers:
    """The open numbers of a job's records, the same for all parts that have the same hardware."""

    def __init__(self, job: Job) -> None:
        self._job = job
        self._found: dict[tuple[tuple[RecordKey, ...], tuple[Rests, ...]], OpenNumbers] = {}

    def of(self, keys: tuple[RecordKey, ...], *rests: Rests) -> OpenNumbers:
        """Give the open numbers of some records on which one of `rests` rests."""
        if (keys, rests) not in self._found:
            records = [record for key in keys if (record := _record_of(self._job, key))]
            self._found[keys, rests] = tuple(
                number for record in records for number in open_numbers(record, *rests)
            )
        return self._found[keys, rests]


def with_open(layout: Layout) -> Layout:
    """Give a layout whose parts have the open numbers that they rest on."""
    numbers = _OpenNumbers(layout.job)
    return replace(
        layout,
        fronts=tuple(_front(numbers, front) for front in layout.fronts),
        sides=tuple(
            replace(side, open=numbers.of(_records_of(side.fittings), "inside"))
            for side in layout.sides
        ),
        rollouts=tuple(
            replace(
                rollout,
                open=() if rollout.held else numbers.of((("slide", rollout.slide),), *OF_DRAWER),
            )
            for rollout in layout.rollouts
        ),
    )


def open_in(layout: Layout) -> OpenNumbers:
    """Give every open number that a part of a job, or what is bought for it, rests on."""
    found = [number for front in layout.fronts for number in front.open]
    found += [number for side in layout.sides for number in side.open]
    found += [number for drawer in layout.drawers for number in drawer.open]
    fittings = [fitting for front in layout.fronts for fitting in front.fittings]
    fittings += [fitting for side in layout.sides for fitting in side.fittings]
    found += _OpenNumbers(layout.job).of(_records_of(fittings), "order")
    return tuple(dict.fromkeys(found))


class OpenCuts:
    """The open numbers that the sizes of a job's pieces rest on: those of the slides, for the
    pieces of drawer boxes and rollouts."""

    def __init__(self, layout: Layout) -> None:
        self._drawers = {drawer.id: resting(drawer.open, "cut") for drawer in layout.drawers}

    def of(self, piece: str) -> tuple[OpenNumber, ...]:
        """Give those of a piece by its ID, which begins with its drawer box's."""
        while "-" in piece:
            piece = piece.rpartition("-")[0]
            if piece in self._drawers:
                return self._drawers[piece]
        return ()


def depending(layout: Layout) -> tuple[str, ...]:
    """Name the fronts and rollouts that rest on open numbers, those held back left out."""
    found = {problem.part for problem in layout.problems if problem.code in OPEN_CODES}
    return tuple(part.id for part in layout.units if part.id in found and not part.withheld)


def _front(numbers: _OpenNumbers, front: Front) -> Front:
    drawer = front.drawer
    if front.withheld:
        return replace(front, drawer=_without(drawer), open=())
    keys = _records_of(front.fittings)
    if drawer is not None:
        slide: RecordKey = ("slide", drawer.slide)
        fixed = any(fitting.kind == "front-fixing" for fitting in front.fittings)
        if fixed or drawer.maker_bored:
            keys = tuple(dict.fromkeys((*keys, slide)))
        drawer = replace(drawer, open=numbers.of((slide,), *OF_DRAWER))
    return replace(front, drawer=drawer, open=numbers.of(keys, *OF_FRONT))


def _without(drawer: DrawerBox | None) -> DrawerBox | None:
    return None if drawer is None else replace(drawer, open=())


def _records_of(fittings: Iterable[Fitting]) -> tuple[RecordKey, ...]:
    """Name the records of the hardware that some fittings are for, each once."""
    named = ((kind_of(fitting).record, fitting.record) for fitting in fittings)
    return tuple(dict.fromkeys((kind, name) for kind, name in named if kind and name))


def _record_of(job: Job, key: RecordKey) -> Record | None:
    kind, name = key
    return job.records[kind].get(name)
