"""The parts of one box, found without going through the whole job each time."""

from dataclasses import dataclass

from jigs.parts import Front, Layout, Side


@dataclass(frozen=True, slots=True, kw_only=True)
class BoxParts:
    """The fronts and sides of one box, in the layout's order."""

    fronts: tuple[Front, ...] = ()
    sides: tuple[Side, ...] = ()


_sorted: list[tuple[Layout, dict[str, BoxParts]]] = []
"""The layout last asked about, and its parts by box. A layout is too large to be hashed for
every part of it, so it is recognised by identity."""


def parts_of_box(layout: Layout, box: str) -> BoxParts:
    """Give the parts of a box by its ID; none for an unknown box."""
    if not _sorted or _sorted[0][0] is not layout:
        fronts: dict[str, list[Front]] = {}
        sides: dict[str, list[Side]] = {}
        for front in layout.fronts:
            fronts.setdefault(front.box, []).append(front)
        for side in layout.sides:
            sides.setdefault(side.box, []).append(side)
        by_box = {
            name: BoxParts(fronts=tuple(fronts.get(name, ())), sides=tuple(sides.get(name, ())))
            for name in fronts.keys() | sides.keys()
        }
        _sorted[:] = [(layout, by_box)]
    return _sorted[0][1].get(box, BoxParts())


def hung_under(layout: Layout, front: Front) -> Front | None:
    """Give the front of its box that hangs right above a front; None at the top."""
    return _in_row(layout, front, front.row - 1)


def hung_over(layout: Layout, front: Front) -> Front | None:
    """Give the front of its box that hangs right below a front; None at the bottom."""
    return _in_row(layout, front, front.row + 1)


def _in_row(layout: Layout, front: Front, row: int) -> Front | None:
    found = [other for other in parts_of_box(layout, front.box).fronts if other.row == row]
    # Of the leaves of a pair, the one that stands over or under this front.
    return min(found, key=lambda other: abs(other.x - front.x), default=None)
