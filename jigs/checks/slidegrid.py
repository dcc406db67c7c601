"""Slides that stay beside the 32 mm row where the grid is wanted for them, and what brings them
onto it.

Nothing is wrong with such a slide: its holes are drilled by their own distances. It is output,
and no finding. A slide stands with its front's bottom edge: that edge lowered by what the holes
lie above the row puts them on it, and the front below gives the height. The lowest drawer stands
on the bottom panel, so the row has to come to it.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from jigs.box.drawers import off_grid
from jigs.box.facework import first_hole
from jigs.box.parts import Front, Layout
from jigs.ground.geometry import SLACK
from jigs.ground.grid import COINCIDE, LEAST_START, PITCH


@dataclass(frozen=True, slots=True, kw_only=True)
class OffRow:
    """The slides of a box that stay beside the row.

    `off`: each front, and how far its slide's holes lie above (below: negative) the nearest hole
    of the row; mm. `start`: the row's first hole that brings the lowest of them onto it, None
    where none of them stands on the bottom panel. `heights`: the fronts' heights that bring the
    others onto it, where `start` need not change.
    """

    box: str
    off: tuple[tuple[str, float], ...]
    start: float | None
    heights: tuple[tuple[str, float], ...]


def slides_off_row(layout: Layout) -> tuple[OffRow, ...]:
    """List the boxes whose slides stay beside the row, where `slides = true` asks for it."""
    if not layout.job.grid.slides:
        return ()
    lines = {
        (side.box, fitting.part): fitting.holes[0].y + side.ends.base
        for side in layout.sides
        for fitting in side.fittings
        if fitting.kind == "slide" and fitting.holes
    }
    by_box: dict[str, list[Front]] = {box.id: [] for box in layout.boxes}
    for front in layout.fronts:
        by_box[front.box].append(front)
    found = []
    for box in layout.boxes:
        fronts = by_box[box.id]
        start = first_hole(layout.job, box)
        off = {
            front.id: miss
            for front in fronts
            if (line := lines.get((box.id, front.id))) is not None
            and abs(miss := off_grid(line, start)) > COINCIDE + SLACK
        }
        if off:
            lowest = next((f for f in fronts if f.id in off and f.place.row == f.place.rows), None)
            found.append(
                OffRow(
                    box=box.id,
                    off=tuple(off.items()),
                    start=_start(start + off[lowest.id]) if lowest else None,
                    heights=() if lowest else _heights(fronts, off),
                )
            )
    return tuple(found)


def _start(height: float) -> float:
    """Give the lowest first hole of the row that has one at this height; mm."""
    return (height - LEAST_START) % PITCH + LEAST_START


def _heights(fronts: Sequence[Front], off: dict[str, float]) -> tuple[tuple[str, float], ...]:
    """Give the heights with which each bottom edge is lowered by what its slide is off; mm."""
    heights = {front.id: front.height for front in fronts}
    for front in fronts:
        miss = off.get(front.id, 0.0)
        heights[front.id] += miss
        for other in fronts:
            if other.place.row == front.place.row + 1 and _meet(front, other):
                heights[other.id] -= miss
    return tuple(
        (front.id, heights[front.id])
        for front in fronts
        if abs(heights[front.id] - front.height) > SLACK
    )


def _meet(front: Front, other: Front) -> bool:
    """Tell whether two fronts share a column."""
    return (
        other.place.column < front.place.column + front.place.span
        and front.place.column < other.place.column + other.place.span
    )
