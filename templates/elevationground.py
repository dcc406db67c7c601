"""The ground that an elevation's boxes stand on, and the walls at both ends of it.

The floor is a wide line, hatched below; so is a wall, hatched behind. Round an inside corner the
next run of boxes stands: its line is drawn, not hatched. Toe platforms lie back in their shade.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from jigs.elevation import Elevation, Seen
from jigs.geometry import SLACK
from templates.dimensions import hatching
from templates.elevationbox import Scale
from templates.marks import Line, Mark, Outline

GROUND = 2.6
"""Width of the hatch, mm."""
OFF = 4.0
"""From what is drawn to the first line beside it, mm."""


def draw_ground(elevation: Elevation, scale: Scale) -> Iterator[Mark]:
    """Draw the floor, the ground hatched below it, and the toe platforms, set back."""
    left, _, right, _ = elevation.extent
    x0, x1, y = scale.across(left) - OFF / 2, scale.across(right) + OFF / 2, scale.up(0.0)
    yield Line(x1=x0, y1=y, x2=x1, y2=y, width=0.5, layer="floor")
    for mark in hatching(x0, y - GROUND, x1, y, 2.5):
        yield replace(mark, layer="floor") if isinstance(mark, Line) else mark
    for run in _runs([box for box in elevation.boxes if box.on_platform]):
        wide = run[-1].right - run[0].x
        yield Outline(points=scale.area(run[0].x, 0.0, wide, run[0].bottom), layer="toe")
        y1 = scale.up(run[0].bottom)
        step = y + 0.8
        while step < y1 - 0.4:
            yield Line(
                x1=scale.across(run[0].x), y1=step, x2=scale.across(run[-1].right), y2=step,
                layer="toe",
            )  # fmt: skip
            step += 0.8


def _runs(boxes: Sequence[Seen]) -> list[list[Seen]]:
    """Give the boxes that stand end to end at one height, run by run."""
    runs: list[list[Seen]] = []
    for box in boxes:
        last = runs[-1][-1] if runs else None
        if last and abs(last.right - box.x) < 1.0 and abs(last.bottom - box.bottom) < SLACK:
            runs[-1].append(box)
        else:
            runs.append([box])
    return runs
