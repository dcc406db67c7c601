"""The ground that an elevation's boxes stand on, and the walls at both ends of it.

The floor is a wide line, hatched below; so is a wall, hatched behind. Round an inside corner the
next run of boxes stands: its line is drawn, not hatched. Toe platforms lie back in their shade.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from jigs.given.wallspec import EndKind
from jigs.ground.geometry import SLACK
from jigs.room.elevation import Elevation
from jigs.room.seen import Seen
from templates.elevations.elevationbox import Scale
from templates.page.dimensions import hatching
from templates.page.marks import Line, Mark, Outline

GROUND = 2.6
"""Width of the hatch, mm."""
BUILT = ("wall", "casing")
"""What is hatched at the end of a run."""
OFF = 4.0
"""From what is drawn to the first line beside it, mm."""


def end_width(stands: EndKind | None) -> float:
    """Give what is drawn beyond an end of a wall; mm."""
    return GROUND if stands in BUILT else 0.0


def draw_ground(elevation: Elevation, scale: Scale) -> Iterator[Mark]:
    """Draw the floor, the walls at its ends, and the toe platforms, set back."""
    left, _, right, top = elevation.extent
    floor, roof = scale.up(0.0), scale.up(top)
    ends: list[float] = []
    for stands, x, out in (
        (elevation.left, scale.across(left), -1.0),
        (elevation.right, scale.across(right), 1.0),
    ):
        ends.append(x if stands in BUILT else x + out * OFF / 2)
        if stands in BUILT or stands == "corner":
            yield Line(x1=x, y1=floor, x2=x, y2=roof, width=0.5, layer="wall")
        if stands in BUILT:
            outer = x + out * GROUND
            yield from _hatch(min(x, outer), floor - GROUND, max(x, outer), roof)
    yield Line(x1=ends[0], y1=floor, x2=ends[1], y2=floor, width=0.5, layer="floor")
    yield from _hatch(ends[0], floor - GROUND, ends[1], floor)
    for run in _runs([box for box in elevation.boxes if box.on_platform]):
        wide = run[-1].right - run[0].x
        high = min(elevation.floor_high, run[0].bottom)
        toe = scale.area(run[0].x, high, wide, run[0].bottom - high)
        yield Outline(points=toe, layer="toe")
        y1 = scale.up(run[0].bottom)
        step = scale.up(high) + 0.8
        while step < y1 - 0.4:
            yield Line(
                x1=scale.across(run[0].x), y1=step, x2=scale.across(run[-1].right), y2=step,
                layer="toe",
            )  # fmt: skip
            step += 0.8


def _hatch(x0: float, y0: float, x1: float, y1: float) -> Iterator[Mark]:
    for mark in hatching(x0, y0, x1, y1, 2.5):
        yield replace(mark, layer="ground") if isinstance(mark, Line) else mark


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
