"""Shelves: fixed ones, which hinges keep clear of, and rows of pin holes for adjustable ones.

Pin holes are 5 x 12 at the grid's heights, in a front row on the system line and a rear row, in
both boards of a column at once, so that the four corners of a shelf lie in one plane. The rear
row stands 37 from the rear edge where that is 12 or more in front of the back, so that one card
serves all four rows; else at 37 + 32 n from the front edge. Both are under the shelf: an adjustable
shelf reaches the back and stands 25 behind the front edge (all common practice, no source). A
height at which one of the four holes would meet another hole is left out in all four.

>>> [round(rear_row(depth=584.2, inside=inside), 1) for inside in (559.2, 559.1)]
[547.2, 517.0]
"""

import math
from collections.abc import Mapping, Sequence

from jigs.box.boards import BoardFace, FaceKey, across, coincide, reach_each_other
from jigs.box.columns import Columns
from jigs.box.fronts import PlacedFront
from jigs.box.waiting import Prospect
from jigs.given.job import ShelfSpec
from jigs.ground.geometry import SLACK, Fitting, Hole
from jigs.ground.grid import APART, FRONT_LINE, PITCH, SYSTEM_HOLE, centres_agree

PIN_DEPTH = 12.0
"""Depth of a pin hole, less where the board is thin; mm (common practice)."""
SKIN = 3.0
"""What stays of the board under a pin hole; mm (common practice)."""
UNDER_SHELF = 12.0
"""A pin stands at least this far inside the shelf's rear edge; mm (common practice)."""
BAND_END = 100.0
"""How far pin rows stay from the ends of what they serve, where the job does not say; mm
(common practice)."""
USEFUL = 64.0
"""Nearer than this to a panel or a fixed shelf no pin is of use; mm, where the job does not say
between which heights pins are wanted (common practice)."""
FROM_PANEL = 10.0
"""A pin hole keeps this from the faces of panels and the ends of its board; mm (common
practice)."""
GROUP = 5
"""Pin holes on one card: 128 mm, which paper holds to a hair."""


def rear_row(*, depth: float, inside: float, set_back: float = 0.0) -> float:
    """Give the rear row's x in a side `depth` deep, `inside` from front edge to back; mm.

    `set_back`: how far inset fronts push the front row back.
    """
    start, line = FRONT_LINE + set_back, depth - FRONT_LINE
    if start + PITCH - SLACK <= line <= inside - UNDER_SHELF + SLACK:
        return line
    return start + PITCH * math.floor((inside - UNDER_SHELF - start) / PITCH + SLACK)


def set_pins(
    columns: Columns,
    faces: Sequence[BoardFace],
    work: dict[FaceKey, list[Fitting]],
    prospect: Prospect,
    *,
    start: float,
    set_back: float,
) -> None:
    """Add the pin rows of all adjustable shelves to what is drilled into the faces.

    `start` is the first grid hole above the box's bottom end, mm. No pin stands where a front
    that is held back may yet have its holes (`prospect`): those that stay free come then.
    """
    taken = {face.key: [*work[face.key], *prospect.plates.get(face.key, ())] for face in faces}
    by_key = {face.key: face for face in faces}
    for number, carcass in enumerate(columns.carcasses, start=1):
        left, right = by_key.get((number, "left")), by_key.get((number, "right"))
        for spec in carcass.box.shelves:
            if spec.at is not None or spec.column not in (None, number):
                continue
            if left is None or right is None:
                continue
            rows = (
                FRONT_LINE + set_back,
                rear_row(depth=carcass.box.depth, inside=carcass.inside_depth, set_back=set_back),
            )
            fronts = columns.stacks[number - 1].fronts
            low, high = _band(spec, fronts, carcass.floor, carcass.ceiling)
            keep = USEFUL if spec.low is None and spec.high is None else FROM_PANEL
            panels = [
                *((under - keep, over + keep) for under, over in carcass.panels),
                *prospect.spans((left.key, right.key)),
            ]
            heights = [
                y
                for y in _grid(start, low, high)
                if all(
                    _free(_pin(x, y, face), face, taken, panels)
                    for face in (left, right)
                    for x in rows
                )
            ]
            for face in (left, right):
                pins = [_row(x, group, face) for x in rows for group in _groups(heights)]
                work[face.key].extend(pins)
                taken[face.key].extend(pins)


def _band(
    spec: ShelfSpec, fronts: Sequence[PlacedFront], bottom: float, ceiling: float
) -> tuple[float, float]:
    """Give the band in which a shelf can be set: what is not behind drawers, less its ends.

    What is stated counts as far as it lies in the box: under a bottom panel on legs, or behind a
    rail, no shelf can be set.
    """
    low, high = bottom, ceiling
    open_to = [front for front in fronts if front.kind not in ("drawer", "pullout")]
    if open_to:
        low = max(low, min(front.place.y for front in open_to))
        high = min(high, max(front.top for front in open_to))
    return (
        low + BAND_END if spec.low is None else max(spec.low, bottom),
        high - BAND_END if spec.high is None else min(spec.high, ceiling),
    )


def _grid(start: float, low: float, high: float) -> list[float]:
    first = math.ceil((low - start) / PITCH - SLACK)
    last = math.floor((high - start) / PITCH + SLACK)
    return [start + PITCH * step for step in range(first, last + 1)]


def _pin(x: float, y: float, face: BoardFace) -> Hole:
    return Hole(
        purpose="shelf", face="inside", x=x, y=y, diameter=SYSTEM_HOLE,
        depth=min(PIN_DEPTH, face.thickness - SKIN),
    )  # fmt: skip


def _free(
    pin: Hole,
    face: BoardFace,
    work: Mapping[FaceKey, Sequence[Fitting]],
    panels: Sequence[tuple[float, float]],
) -> bool:
    """Tell whether a pin hole may stand here, for both faces of a partition."""
    if not face.base + FROM_PANEL <= pin.y <= face.base + face.height - FROM_PANEL:
        return False
    if not FROM_PANEL <= pin.x <= face.depth - FROM_PANEL:
        return False
    if any(low + SLACK < pin.y < high - SLACK for low, high in panels):
        return False
    for hole in (hole for fitting in work[face.key] for hole in fitting.holes):
        if math.hypot(hole.x - pin.x, hole.y - pin.y) < max(APART, hole.diameter / 2 + 10) - SLACK:
            return False
    behind = work.get(across(face.key), []) if face.partition else []
    for hole in (hole for fitting in behind for hole in fitting.holes):
        if not reach_each_other(pin, hole, face.thickness):
            continue
        shared = hole.purpose == "shelf" and coincide(pin, hole)
        if not shared and not _apart(pin, hole):
            return False
    return True


def _apart(pin: Hole, hole: Hole) -> bool:
    apart = math.hypot(hole.x - pin.x, hole.y - pin.y)
    return apart >= APART - SLACK and centres_agree(apart)


def _groups(heights: Sequence[float]) -> list[Sequence[float]]:
    return [heights[place : place + GROUP] for place in range(0, len(heights), GROUP)]


def _row(x: float, heights: Sequence[float], face: BoardFace) -> Fitting:
    return Fitting(
        kind="shelf",
        index=1,
        count=1,
        part=None,
        record=None,
        holes=tuple(_pin(x, y, face) for y in heights),
    )
