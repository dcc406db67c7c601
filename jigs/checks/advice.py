"""What is no finding: published ranges that kitchens are made to, and slides that stay beside the
32 mm row.

Advice is no rule for anybody's own kitchen: nothing is held back, counted or stamped. A job in
millimetres is held against EN 1116, one in inches against KCMA A161.1, both second hand: put down
from what others say of them, not from the standards themselves.

Nothing is wrong with a slide beside the row, where the grid is wanted for them: its holes are
drilled by their own distances. It stands with its front's bottom edge: that edge lowered by what
the holes lie above the row puts them on it, and the front below gives the height. The lowest drawer
stands on the bottom panel, so the row has to come to it.
"""

from collections.abc import Iterable, Iterator, Sequence
from typing import Literal

from msgspec import Struct

from jigs.box.drawers import off_grid
from jigs.box.facework import first_hole
from jigs.box.parts import Front, Layout
from jigs.given.job import BoxKind, BoxSpec
from jigs.ground.geometry import SLACK
from jigs.ground.grid import COINCIDE, LEAST_START, PITCH
from jigs.ground.lengths import MM_PER_INCH

EN_1116 = "EN 1116, second hand"
KCMA = "KCMA A161.1, second hand"

BASE_HEIGHTS = (820.0, 870.0, 920.0)
"""Heights of base units above the floor; mm (EN 1116, second hand)."""
PLINTH = 100.0
"""Least height of a plinth; mm (EN 1116, second hand)."""
WORKTOP = 600.0
"""Least depth of a worktop; mm (EN 1116, second hand)."""
WALL_DEPTH = 400.0
"""Greatest depth of a wall unit; mm (EN 1116, second hand)."""
TOE_HIGH = 3 * MM_PER_INCH
TOE_DEEP = 2 * MM_PER_INCH
"""Least height and depth of the toe space; mm (KCMA A161.1, second hand)."""
OVERHANG = 40.0
"""A worktop stands out before the fronts by no more than this; mm (common practice, no source)."""

BASES: tuple[BoxKind, ...] = ("base", "drawer", "sink")
ON_FLOOR: tuple[BoxKind, ...] = (*BASES, "tall")


AdviceOn = Literal["height", "plinth", "toe", "toe-depth", "worktop", "wall-depth"]
"""What is held against a range: a base unit's height above the floor, height of a plinth or toe,
how far a toe stands back, a worktop's depth and a wall unit's."""


class Advice(Struct, frozen=True, kw_only=True):
    """What stands outside a published range: the box, what it measures, the range, its source."""

    box: str
    what: AdviceOn
    figures: tuple[float, ...]
    """What it measures, mm; of a worktop how far it would stand out, and the box's depth."""
    published: tuple[float, ...]
    """The least or most of the range, or all that are usual; mm."""
    source: str
    high_point: bool = False
    """Whether it is measured at the floor's high point."""


def advise(layout: Layout) -> tuple[Advice, ...]:
    """List what of a job stands outside the published ranges of its own system of units."""
    job = layout.job
    boxes = [box for box in layout.boxes if not box.inferred]
    stated = [box for box in boxes if f"box.{box.id}.above_floor" not in job.assumed]
    floors = {wall.name: wall.floor_high for wall in job.walls}
    standing = [(box, floors.get(box.wall, 0.0)) for box in _of(stated, ON_FLOOR)]
    if job.units == "mm":
        return (
            *_heights(_of(stated, BASES)),
            *_toes(standing, "plinth", PLINTH, EN_1116),
            *_worktops(_of(boxes, BASES), job.material.front),
            *(
                Advice(
                    box=box.id, what="wall-depth", figures=(box.depth,), published=(WALL_DEPTH,),
                    source=EN_1116,
                )
                for box in _of(boxes, ("wall",))
                if box.depth > WALL_DEPTH + SLACK
            ),
        )  # fmt: skip
    back = job.build.toe_back
    return (
        *_toes(standing, "toe", TOE_HIGH, KCMA),
        *(
            Advice(
                box=box.id, what="toe-depth", figures=(back,), published=(TOE_DEEP,), source=KCMA
            )
            for box in _of(boxes, ON_FLOOR)
            if not box.legs and back < TOE_DEEP - SLACK
        ),
    )


def _of(boxes: list[BoxSpec], kinds: tuple[BoxKind, ...]) -> list[BoxSpec]:
    return [box for box in boxes if box.kind in kinds]


def _heights(boxes: Iterable[BoxSpec]) -> Iterator[Advice]:
    for box in boxes:
        high = box.above_floor + box.height
        if not any(abs(high - usual) <= 1.0 for usual in BASE_HEIGHTS):
            yield Advice(
                box=box.id, what="height", figures=(high,), published=BASE_HEIGHTS, source=EN_1116
            )


def _toes(
    standing: Iterable[tuple[BoxSpec, float]], kind: AdviceOn, least: float, source: str
) -> Iterator[Advice]:
    for box, floor in standing:
        high = box.above_floor + box.legs - floor
        # Where the floor leaves none it is a finding.
        if high < least - SLACK and not high <= SLACK < floor:
            yield Advice(
                box=box.id, what=kind, figures=(high,), published=(least,), source=source,
                high_point=floor > SLACK,
            )  # fmt: skip


def _worktops(boxes: Iterable[BoxSpec], front: float) -> Iterator[Advice]:
    for box in boxes:
        out = WORKTOP - box.depth - (0.0 if box.overlay == "inset" else front)
        if out > OVERHANG:
            yield Advice(
                box=box.id, what="worktop", figures=(out, box.depth), published=(WORKTOP,),
                source=EN_1116,
            )  # fmt: skip


class OffRow(Struct, frozen=True, kw_only=True):
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
                    heights=() if lowest else _onto_row(fronts, off),
                )
            )
    return tuple(found)


def _start(height: float) -> float:
    """Give the lowest first hole of the row that has one at this height; mm."""
    return (height - LEAST_START) % PITCH + LEAST_START


def _onto_row(fronts: Sequence[Front], off: dict[str, float]) -> tuple[tuple[str, float], ...]:
    """Give the heights with which each bottom edge is lowered by what its slide is off; mm."""
    heights = {front.id: front.height for front in fronts}
    for front in fronts:
        miss = off.get(front.id, 0.0)
        heights[front.id] += miss
        for other in fronts:
            if other.place.row == front.place.row + 1 and other.place.shares_column(front.place):
                heights[other.id] -= miss
    return tuple(
        (front.id, heights[front.id])
        for front in fronts
        if abs(heights[front.id] - front.height) > SLACK
    )
