"""Where the boxes of a wall stand, x along the wall, from the left, seen from the room; and what
room they take.

A box without an x of its own follows the one before it. Wall boxes hang in a row of their own
above the others. The first of a row begins where the filler at the left ends; end panels take
their thickness along the wall, and appliances stand after a box. A place that is given is kept.

At an inside corner the x of a base box counts from the front line of the other run's base boxes,
that of a wall box from its wall boxes, which are less deep, or from the room's wall where it has
none. All places come out counted from the line of the base boxes.

>>> from jigs.given.job import BoxSpec
>>> boxes = [BoxSpec(id=name, kind="base", width=600, height=720, depth=560, above_floor=100)
...          for name in ("B1", "B2")]
>>> place_boxes(boxes)
{'B1': 0.0, 'B2': 600.0}

A run reaches from the filler at its left to the filler at its right. Boxes, panels, appliances and
gaps between them add up to it; so a wall is too short, or a gap is left, by the difference between
its length and its run.

>>> Taken(id="B1", wall="north", left=41, right=641, bottom=100, top=820).overlaps(
...     Taken(id="B2", wall="north", left=641, right=1241, bottom=100, top=820))
False
"""

from bisect import bisect_left, bisect_right
from collections.abc import Callable, Iterable, Mapping, Sequence
from types import MappingProxyType

from msgspec import Struct

from jigs.given.job import BoxSpec, Job
from jigs.given.wallspec import Appliance, WallSpec
from jigs.ground.geometry import SLACK, Hand
from jigs.ground.grouped import grouped

TOUCHING = 1.0
"""Boxes this near to each other along a wall stand side by side; mm."""
CORNERS: tuple[tuple[Hand, Hand], ...] = (("left", "right"), ("right", "left"))
"""An end of a wall at an inside corner, and the end of the other wall that it meets."""
HIGHEST = 300.0
"""A box whose bottom is higher above the floor than this hangs, or stands on another; mm."""
SAME = 0.5
"""Less than this is no overlap, and no gap to fill; mm (common practice, no source)."""


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
    boxes, walls = tuple(boxes), tuple(walls)
    lines = corner_lines(boxes, walls, panel)
    return _place(boxes, walls, panel, lines)


class CornerLine(Struct, frozen=True):
    """Where a wall's places count from at an inside corner, off the room's wall there: its base
    boxes, and its wall boxes; mm."""

    base: float
    hung: float

    @property
    def beyond(self) -> float:
        """How far beyond the line of the base boxes that of the wall boxes lies, mm."""
        return self.base - self.hung


NO_CORNER = CornerLine(0.0, 0.0)
"""At an end that is no corner all places count from one line."""


def corner_lines(
    boxes: Sequence[BoxSpec], walls: Sequence[WallSpec], panel: float
) -> Mapping[tuple[str, Hand], CornerLine]:
    """Give the lines at the inside corners by wall and end: as deep as the other run's base boxes
    and as its wall boxes. A tall box that stands there is as deep for both. Beside a blind box,
    which goes on behind the other run, the base boxes' line is the room's wall. A wall without wall
    boxes has one line."""
    lines: dict[tuple[str, Hand], CornerLine] = {}
    corners: list[tuple[WallSpec, Hand, Hand]] = [
        (wall, hand, there)
        for wall in walls
        for hand, there in CORNERS
        if wall.end(hand).stands == "corner" and wall.end(hand).meets is not None
    ]
    if not corners:
        return lines
    flat = _place(boxes, walls, panel, {})
    appliances = {wall.name: wall.appliances for wall in walls}
    for wall, hand, there in corners:
        hung = [box for box in boxes if box.wall == wall.name and box.kind == "wall"]
        meets = wall.end(hand).meets or ""
        near = end_boxes(boxes, meets, there, flat, appliances.get(meets, ()), panel)
        other = [box for box, _ in near]
        low = [box.depth for box in other if box.kind != "wall"]
        high = [box.depth for box in other if box.kind == "wall"] or [
            box.depth for box in other if any(_overlap(box, one) for one in hung)
        ]
        own = end_boxes(boxes, wall.name, hand, flat, wall.appliances, panel)
        if any(box.blind is not None and box.blind.hand == hand for box, _ in own):
            low = [0.0]
        if low:
            base = max(low)
            lines[wall.name, hand] = CornerLine(base, max(high, default=0.0) if hung else base)
    return lines


def lines_of(job: Job) -> Mapping[tuple[str, Hand], CornerLine]:
    """Give the lines at the inside corners of a job, as `corner_lines` does."""
    return corner_lines(job.boxes, job.walls, job.material.front)


def floor_zero(walls: Sequence[WallSpec], name: str) -> tuple[float, tuple[str, ...]]:
    """Give how high the floor comes along a wall and those that it meets at corners, and so on, and
    the names of them all: one level line serves them, or their counters would not meet; mm."""
    joined = {name}
    met = True
    while met:
        met = False
        for wall in walls:
            ends = {wall.name, wall.left.meets, wall.right.meets} - {None}
            if ends & joined and not ends <= joined:
                joined |= {str(end) for end in ends}
                met = True
    own = [wall for wall in walls if wall.name in joined]
    return max((wall.floor_high for wall in own), default=0.0), tuple(wall.name for wall in own)


def _place(
    boxes: Iterable[BoxSpec],
    walls: Iterable[WallSpec],
    panel: float,
    lines: Mapping[tuple[str, Hand], CornerLine],
) -> dict[str, float]:
    specs = {wall.name: wall for wall in walls}
    waiting = grouped(
        (appliance.after, appliance)
        for wall in specs.values()
        for appliance in wall.appliances
        if appliance.after is not None
    )
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
        line = lines.get((box.wall, "left"), NO_CORNER).beyond if box.kind == "wall" else 0.0
        x = None if box.x is None else box.x - line
        if x is None:
            start = specs[box.wall].left.filler if box.wall in specs else 0.0
            x = ends.get(row, start - line) + (panel if box.panels.left else 0.0)
        places[box.id] = x
        ends[row] = stand_after(box.id, x + box.width + (panel if box.panels.right else 0.0))
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
    walls = grouped((box.wall, box) for box in boxes if not box.inferred)
    pairs = []
    for wall in walls.values():
        row = sorted(wall, key=lambda box: places[box.id])
        starts = [places[box.id] for box in row]
        for left in row:
            end = places[left.id] + left.width
            first, last = bisect_left(starts, end - TOUCHING), bisect_right(starts, end + TOUCHING)
            pairs += [(left, right) for right in row[first:last] if _overlap(left, right)]
    return tuple(pairs)


def join_runs(
    boxes: Iterable[BoxSpec],
    places: Mapping[str, float],
    joins: Callable[[Sequence[BoxSpec], BoxSpec], bool],
) -> tuple[tuple[BoxSpec, ...], ...]:
    """Put boxes that stand side by side into runs, wall by wall, each from left to right: the next
    one touches the last, and `joins` the run so far."""
    runs: list[list[BoxSpec]] = []
    for row in grouped((box.wall, box) for box in boxes).values():
        run: list[BoxSpec] = []
        for box in sorted(row, key=lambda box: places[box.id]):
            near = run and abs(places[run[-1].id] + run[-1].width - places[box.id]) <= TOUCHING
            if near and joins(run, box):
                run.append(box)
            else:
                run = [box]
                runs.append(run)
    return tuple(map(tuple, runs))


def _overlap(one: BoxSpec, other: BoxSpec | Appliance) -> bool:
    """Tell whether a box and another, or an appliance, stand at the same height, be it in part."""
    low = max(one.above_floor, other.above_floor)
    high = min(one.above_floor + one.height, other.above_floor + other.height)
    return one is not other and high - low > SLACK


def boxes_at_end(job: Job, wall: str, hand: Hand) -> tuple[BoxSpec, ...]:
    """Give the boxes that stand at one end of a wall's run, with or without an end panel there:
    the filler stands beside them."""
    appliances = next((spec.appliances for spec in job.walls if spec.name == wall), ())
    panel = job.material.front
    near = end_boxes(job.boxes, wall, hand, place_job(job), appliances, panel, lines_of(job))
    return tuple(
        box
        for box, distance in near
        if distance - (panel if box.panels.at(hand) else 0.0) <= TOUCHING
    )


def faces_out(job: Job, box: BoxSpec) -> float:
    """Give how far the faces of a box's fronts stand out before its front edges: not at all where
    all lie between its sides; mm."""
    overlays = {front.overlay or box.overlay for front in box.fronts if front.kind != "opening"}
    inset = (overlays or {box.overlay}) == {"inset"}
    return 0.0 if inset else job.build.bumper + job.material.front


def end_boxes(
    boxes: Sequence[BoxSpec],
    wall: str,
    hand: Hand,
    places: Mapping[str, float] | None = None,
    appliances: Iterable[Appliance] = (),
    panel: float = 0.0,
    lines: Mapping[tuple[str, Hand], CornerLine] = MappingProxyType({}),
) -> tuple[tuple[BoxSpec, float], ...]:
    """Give the boxes that nothing parts from one end of their wall, each with its distance, mm.

    The distance counts from where the outermost box, its end panel (`panel` thick) or one of the
    wall's `appliances` ends: a wall box may keep further off than the base boxes below it. Each
    row counts from its own of the `lines`.
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
    line = lines.get((wall, hand), NO_CORNER).beyond
    own = {
        each.id: near[each.id]
        + (line if isinstance(each, BoxSpec) and each.kind == "wall" else 0.0)
        for each in all_there
    }
    outermost = min(
        at - (panel if isinstance(each, BoxSpec) and each.panels.at(hand) else 0.0)
        for each in all_there
        for at in [own[each.id]]
    )
    return tuple(
        (box, own[box.id] - outermost)
        for box in standing
        if not any(
            near[other.id] < near[box.id] - SLACK and _overlap(box, other) for other in all_there
        )
    )


class Taken(Struct, frozen=True, kw_only=True):
    """The room that a box with its panels, or an appliance, takes on a wall; mm.

    `line_left`, `line_right`: how far beyond the wall's ends the line is from which it counts: of
    a wall box at an inside corner.
    """

    id: str
    wall: str
    left: float
    right: float
    bottom: float
    top: float
    appliance: bool = False
    line_left: float = 0.0
    line_right: float = 0.0

    @property
    def begins(self) -> float:
        """Its left end from its own line at the left; mm."""
        return self.left + self.line_left

    @property
    def ends(self) -> float:
        """Its right end, as its own line at the right leaves it room; mm."""
        return self.right - self.line_right

    def overlaps(self, other: "Taken") -> bool:
        """Tell whether two stand in the same place, by more than a trifle."""
        return (
            self.wall == other.wall
            and min(self.right, other.right) - max(self.left, other.left) > SAME + SLACK
            and min(self.top, other.top) - max(self.bottom, other.bottom) > SAME + SLACK
        )


def taken_by(job: Job) -> tuple[Taken, ...]:
    """Give the room that each box and each appliance of a job takes, in the job's order."""
    places, panel, lines = place_job(job), job.material.front, lines_of(job)

    def line(box: BoxSpec, hand: Hand) -> float:
        return lines.get((box.wall, hand), NO_CORNER).beyond if box.kind == "wall" else 0.0

    boxes = [
        Taken(
            id=box.id, wall=box.wall,
            left=places[box.id] - (panel if box.panels.left else 0.0),
            right=places[box.id] + box.width + (panel if box.panels.right else 0.0),
            bottom=box.above_floor, top=box.above_floor + box.height,
            line_left=line(box, "left"), line_right=line(box, "right"),
        )
        for box in job.boxes
        if not box.inferred
    ]  # fmt: skip
    appliances = [
        Taken(
            id=appliance.id, wall=wall.name, left=places[appliance.id],
            right=places[appliance.id] + appliance.width, bottom=appliance.above_floor,
            top=appliance.above_floor + appliance.height, appliance=True,
        )
        for wall in job.walls
        for appliance in wall.appliances
        if appliance.id in places
    ]  # fmt: skip
    return (*boxes, *appliances)


def run_of(wall: WallSpec, taken: Sequence[Taken]) -> float:
    """Give how much of a wall its boxes, panels, appliances, fillers and the gaps between them
    take, from end to end; 0 where nothing stands; mm."""
    own = [each for each in taken if each.wall == wall.name]
    if not own:
        return 0.0
    wide = max(each.ends for each in own) - min(each.begins for each in own)
    return wall.left.filler + wide + wall.right.filler
