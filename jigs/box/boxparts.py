"""What belongs to one box or one part, found without going through the whole job each time."""

from dataclasses import dataclass

from jigs.box.boards import FaceKey
from jigs.box.parts import Front, Layout, Side
from jigs.ground.grouped import grouped
from jigs.ground.problems import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class BoxParts:
    """The fronts and sides of one box, in the layout's order."""

    fronts: tuple[Front, ...] = ()
    sides: tuple[Side, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class _Sorted:
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
        if other.place.row == row
        and other.place.column < front.place.column + front.place.span
        and front.place.column < other.place.column + other.place.span
    ]
    # Of the leaves of a pair, the one that stands over or under this front.
    return min(found, key=lambda other: abs(other.place.x - front.place.x), default=None)
