"""Where the boxes of a wall stand: x along the wall, from the left, seen from the room.

A box without an x of its own follows the one before it. Wall boxes hang in a row of their own
above the others. The first of a row begins where the filler at the left ends; end panels take
their thickness along the wall, and appliances stand after a box. A place that is given is kept.

>>> from jigs.job import BoxSpec
>>> boxes = [BoxSpec(id=name, kind="base", width=600, height=720, depth=560, above_floor=100)
...          for name in ("B1", "B2")]
>>> place_boxes(boxes)
{'B1': 0.0, 'B2': 600.0}
"""

from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Mapping, Sequence

from jigs.geometry import SLACK
from jigs.job import BoxSpec, Hand, Job, PanelKind
from jigs.wallspec import Appliance, WallSpec

TOUCHING = 1.0
"""Boxes this near to each other along a wall stand side by side; mm."""
HIGHEST = 300.0
"""A box whose bottom is higher above the floor than this hangs, or stands on another; mm."""


def row_of(box: BoxSpec) -> tuple[str, bool]:
    """Give the row a box belongs to: its wall, and whether it hangs."""
    return box.wall, box.kind == "wall"


def place_job(job: Job) -> dict[str, float]:
    """Give the left end of each box and appliance of a job along its wall, mm, by its ID."""
    return place_boxes(job.boxes, job.walls, job.material.front)


def place_boxes(
    boxes: Iterable[BoxSpec], walls: Iterable[WallSpec] = (), panel: float = 0.0
) -> dict[str, float]:
    """Give the left end of each box, and of each appliance of `walls`, along its wall, mm, by ID.

    `panel`: the thickness of end panels.
    """
    specs = {wall.name: wall for wall in walls}
    waiting: dict[str, list[Appliance]] = {}
    for wall in specs.values():
        for appliance in wall.appliances:
            if appliance.after is not None:
                waiting.setdefault(appliance.after, []).append(appliance)
    ends: dict[tuple[str, bool], float] = {}
    places: dict[str, float] = {
        appliance.id: appliance.x
        for wall in specs.values()
        for appliance in wall.appliances
        if appliance.x is not None
    }

    def stand_after(name: str, x: float) -> float:
        """Place what stands after a box or an appliance that ends at x; give where it ends."""
        for appliance in waiting.get(name, ()):
            places[appliance.id] = x
            x = stand_after(appliance.id, x + appliance.width)
        return x

    for box in boxes:
        row = row_of(box)
        x = box.x
        if x is None:
            start = specs[box.wall].left.filler if box.wall in specs else 0.0
            x = ends.get(row, start) + (panel if box.panel_left else 0.0)
        places[box.id] = x
        ends[row] = stand_after(box.id, x + box.width + (panel if box.panel_right else 0.0))
    for wall in specs.values():
        for appliance in wall.appliances:
            if appliance.x is not None:
                stand_after(appliance.id, appliance.x + appliance.width)
    return places


def neighbours(
    boxes: Sequence[BoxSpec], places: Mapping[str, float] | None = None
) -> tuple[tuple[BoxSpec, BoxSpec], ...]:
    """Give the pairs of boxes that stand side by side, the left one first. `places`: where they
    stand, as if nothing but boxes stood there if not given.

    Their ends touch and their heights overlap, whatever row each was placed in: a tall box has
    base boxes and wall boxes beside it. Boxes inferred from a bare list stand nowhere, and have
    no neighbours.
    """
    places = place_boxes(boxes) if places is None else places
    walls: dict[str, list[BoxSpec]] = {}
    for box in boxes:
        if not box.inferred:
            walls.setdefault(box.wall, []).append(box)
    pairs = []
    for wall in walls.values():
        row = sorted(wall, key=lambda box: places[box.id])
        starts = [places[box.id] for box in row]
        for left in row:
            end = places[left.id] + left.width
            first, last = bisect_left(starts, end - TOUCHING), bisect_right(starts, end + TOUCHING)
            pairs += [(left, right) for right in row[first:last] if _overlap(left, right)]
    return tuple(pairs)


def _overlap(one: BoxSpec, other: BoxSpec | Appliance) -> bool:
    """Tell whether a box and another, or an appliance, stand at the same height, be it in part."""
    low = max(one.above_floor, other.above_floor)
    high = min(one.above_floor + one.height, other.above_floor + other.height)
    return one is not other and high - low > SLACK


def panel_at(box: BoxSpec, hand: Hand) -> PanelKind | None:
    """Give the end panel at one side of a box, None without."""
    return box.panel_left if hand == "left" else box.panel_right


def boxes_at_end(job: Job, wall: str, hand: Hand) -> tuple[BoxSpec, ...]:
    """Give the boxes that stand at one end of a wall's run, with or without an end panel there:
    the filler stands beside them."""
    appliances = next((spec.appliances for spec in job.walls if spec.name == wall), ())
    panel = job.material.front
    near = end_boxes(job.boxes, wall, hand, place_job(job), appliances, panel)
    return tuple(
        box
        for box, distance in near
        if distance - (panel if panel_at(box, hand) else 0.0) <= TOUCHING
    )


def end_boxes(
    boxes: Sequence[BoxSpec],
    wall: str,
    hand: Hand,
    places: Mapping[str, float] | None = None,
    appliances: Iterable[Appliance] = (),
    panel: float = 0.0,
) -> tuple[tuple[BoxSpec, float], ...]:
    """Give the boxes that nothing parts from one end of their wall, each with its distance, mm.

    The distance counts from where the outermost box, its end panel (`panel` thick) or one of the
    wall's `appliances` ends: a wall box may keep further off than the base boxes below it.
    """
    places = place_boxes(boxes) if places is None else places
    standing = [box for box in boxes if box.wall == wall and not box.inferred]
    all_there: list[BoxSpec | Appliance] = [
        *standing,
        *(appliance for appliance in appliances if appliance.id in places),
    ]
    if not standing:
        return ()
    # Along the wall from the end that is meant, so that both ends are the same sum.
    near = {
        each.id: places[each.id] if hand == "left" else -places[each.id] - each.width
        for each in all_there
    }
    outermost = min(
        at - (panel if isinstance(each, BoxSpec) and panel_at(each, hand) else 0.0)
        for each in all_there
        for at in [near[each.id]]
    )
    return tuple(
        (box, near[box.id] - outermost)
        for box in standing
        if not any(
            near[other.id] < near[box.id] - SLACK and _overlap(box, other) for other in all_there
        )
    )
