"""A wall as it is seen from the room: its boxes, and all fronts at their places.

x runs along the wall from the left, y up from the finished floor; mm. A front stands at its box's
place plus its own in the box. Boxes that were inferred from a bare front list have no place: they
are shown apart from each other, in a row.
"""

from collections.abc import Iterator, Mapping, Sequence

from msgspec import Struct
from msgspec.structs import replace

from jigs.box.carcass import Carcass
from jigs.box.columns import place_columns
from jigs.box.parts import Front, Layout
from jigs.cutlist.trimmings import LETTERS, filler_height, panel_height
from jigs.given.job import BoxKind, BoxSpec, Job
from jigs.given.walls import (
    TOUCHING,
    CornerLine,
    boxes_at_end,
    floor_zero,
    lines_of,
    place_job,
)
from jigs.given.wallspec import EndKind, WallEnd, WallSpec
from jigs.ground.geometry import HANDS, SLACK, Hand
from jigs.ground.grouped import grouped
from jigs.room.seen import (
    Seen,
    SeenAppliance,
    SeenFront,
    SeenOpening,
    SeenShelf,
    SeenStrip,
    Swing,
)

APART = 300.0
"""Between boxes that stand nowhere; mm."""
UNDER_COUNTERS: tuple[BoxKind, ...] = ("base", "drawer", "sink", "open")
"""Kinds of boxes that a counter lies over, where they stand on the floor."""
SAME_LEVEL = 0.5
"""Heights this near to each other are one level; mm."""


class Elevation(Struct, frozen=True, kw_only=True):
    """One wall, its boxes from left to right. `placed`: they stand as they will on the wall.
    `left`, `right`: what stands at its ends, None where it is not said. `spec`: the wall as given,
    None where it is not. `corners`: where the lines of each inside corner lie. `blind`: the corners
    into which a blind box goes on, where figures reach to the room's wall."""

    wall: str
    boxes: tuple[Seen, ...]
    placed: bool = True
    left: EndKind | None = None
    right: EndKind | None = None
    appliances: tuple[SeenAppliance, ...] = ()
    spec: WallSpec | None = None
    corners: tuple[tuple[Hand, CornerLine], ...] = ()
    blind: tuple[Hand, ...] = ()
    zero: float = 0.0
    """The floor's highest point along it and all walls that it meets at corners, above the line
    that the job's heights count from: lines to strike count up from there; mm."""
    joined: tuple[str, ...] = ()
    """It and these walls."""

    def ends_at(self, hand: Hand) -> EndKind | None:
        """Give what its figures reach to at one end: in a blind corner the room's wall."""
        if hand in self.blind:
            return "wall"
        return self.left if hand == "left" else self.right

    @property
    def standing(self) -> tuple[Seen, ...]:
        """The boxes that stand on the floor."""
        return tuple(box for box in self.boxes if not box.hangs)

    @property
    def hanging(self) -> tuple[Seen, ...]:
        """The boxes that hang on the wall."""
        return tuple(box for box in self.boxes if box.hangs)

    @property
    def extent(self) -> tuple[float, float, float, float]:
        """Left, bottom, right and top of all that is seen, the floor taken in; mm."""
        parts = [box.extent for box in self.boxes]
        parts += [(a.x, a.y, a.x + a.width, a.y + a.height) for a in self.appliances]
        left, bottom, right, top = zip(*parts, strict=True)
        return min(left), min(0.0, *bottom), max(right), max(*top, self.high)

    @property
    def high(self) -> float:
        """What is seen of the wall itself: up to its ceiling, or its counter; mm."""
        spec = self.spec
        return max(spec.ceiling or 0.0, spec.counter or 0.0) if spec else 0.0

    @property
    def floor_high(self) -> float:
        """The floor's high point above the line that heights count from, mm."""
        return self.spec.floor_high if self.spec else 0.0

    def row_ends(self, hangs: bool) -> tuple[float, ...]:
        """Give the ends along the wall of all that hangs, or stands on the floor; mm."""
        boxes = [end for box in self.boxes if box.hangs == hangs for end in box.ends]
        own = [a for a in self.appliances if a.hangs == hangs]
        return (*boxes, *(end for a in own for end in (a.x, a.x + a.width)))

    def counters(self) -> tuple[tuple[float, float], ...]:
        """Give from where to where counters lie: over base boxes, appliances as low as these, end
        panels and fillers that touch each other; mm."""
        if self.spec is None or self.spec.counter is None:
            return ()
        high = self.spec.counter + SAME_LEVEL
        under = high if self.spec.underside is None else self.spec.underside + SAME_LEVEL
        ends = [
            (min(box.ends), max(box.ends))
            for box in self.standing
            if box.box.kind in UNDER_COUNTERS and box.top <= high
        ]
        ends += [(a.x, a.x + a.width) for a in self.appliances if a.y + a.height <= under]
        spans: list[tuple[float, float]] = []
        for start, end in sorted(ends):
            if spans and start - spans[-1][1] <= TOUCHING:
                spans[-1] = (spans[-1][0], max(end, spans[-1][1]))
            else:
                spans.append((start, end))
        return tuple(spans)

    def clear_of_each_other(self) -> tuple[tuple[Seen, ...], ...]:
        """Give the boxes in groups of which none reaches into another: as a rule, each by itself.
        Boxes meet in one only where a job has them overlap."""
        groups: list[list[Seen]] = []
        for box in self.boxes:
            met = [group for group in groups if any(_overlap(box, other) for other in group)]
            groups = [group for group in groups if group not in met]
            groups.append([other for group in met for other in group] + [box])
        return tuple(tuple(group) for group in groups)


def see_walls(layout: Layout) -> tuple[Elevation, ...]:
    """Give the walls of a job in its order; boxes that stand nowhere come last, in one row."""
    places = place_job(layout.job)
    fronts = grouped((front.box, front) for front in layout.fronts)
    specs = {spec.name: spec for spec in layout.job.walls}
    fillers, lines = _find_fillers(layout), lines_of(layout.job)
    zeros = {box.wall: floor_zero(layout.job.walls, box.wall) for box in layout.boxes}
    walls: dict[str, list[Seen]] = {}
    row: list[Seen] = []
    for box in layout.boxes:
        if box.inferred:
            x = row[-1].right + APART if row else 0.0
            row.append(_see(layout, box, x, fronts, fillers))
        else:
            seen = _see(layout, box, places[box.id], fronts, fillers)
            walls.setdefault(box.wall, []).append(seen)
    seen_walls = [
        Elevation(
            wall=wall,
            boxes=tuple(sorted(boxes, key=lambda box: box.x)),
            left=specs[wall].left.stands if wall in specs else None,
            right=specs[wall].right.stands if wall in specs else None,
            appliances=_see_appliances(specs.get(wall), places),
            spec=specs.get(wall),
            corners=tuple((hand, lines[wall, hand]) for hand in HANDS if (wall, hand) in lines),
            blind=tuple(_blind_corners(layout.job, wall, specs)),
            zero=zeros[wall][0],
            joined=zeros[wall][1],
        )
        for wall, boxes in walls.items()
    ]
    if row:
        seen_walls.append(Elevation(wall="", boxes=tuple(row), placed=False))
    return tuple(seen_walls)


def _blind_corners(job: Job, wall: str, specs: Mapping[str, WallSpec]) -> Iterator[Hand]:
    """Give the inside corners of a wall into which a blind box goes on."""
    for hand in HANDS:
        if wall in specs and specs[wall].end(hand).stands == "corner":
            beside = boxes_at_end(job, wall, hand)
            if any(_is_blind(box, hand) for box in beside):
                yield hand


def _is_blind(box: BoxSpec, hand: Hand) -> bool:
    return box.blind is not None and box.blind.hand == hand


def part_wall(elevation: Elevation, longest: float) -> tuple[Elevation, ...]:
    """Part a wall that is longer than `longest` (mm) into stretches of whole boxes.

    A box belongs to the stretch in which it begins; one that is longer is a stretch by itself.
    """
    left, _, right, _ = elevation.extent
    if right - left <= longest + SLACK:
        return (elevation,)
    stretches: list[list[Seen]] = []
    start = left
    for box in elevation.boxes:
        if stretches and box.extent[2] - start <= longest + SLACK:
            stretches[-1].append(box)
        else:
            stretches.append([box])
            start = box.extent[0]
    last = len(stretches) - 1
    starts = [min(box.extent[0] for box in boxes) for boxes in stretches]

    def stretch_of(appliance: SeenAppliance) -> int:
        """Give the last stretch that begins before an appliance does."""
        return max((k for k, x in enumerate(starts) if x <= appliance.x + SLACK), default=0)

    return tuple(
        replace(
            elevation,
            boxes=tuple(boxes),
            left=elevation.left if number == 0 else None,
            right=elevation.right if number == last else None,
            corners=tuple(
                (hand, line)
                for hand, line in elevation.corners
                if number == (0 if hand == "left" else last)
            ),
            blind=tuple(
                hand for hand in elevation.blind if number == (0 if hand == "left" else last)
            ),
            appliances=tuple(a for a in elevation.appliances if stretch_of(a) == number),
        )
        for number, boxes in enumerate(stretches)
    )


def _see_appliances(
    spec: WallSpec | None, places: Mapping[str, float]
) -> tuple[SeenAppliance, ...]:
    """Give a wall's appliances from left to right."""
    seen = (
        SeenAppliance(
            id=each.id, x=places[each.id], y=each.above_floor, width=each.width,
            height=each.height, words=each.name or "appliance",
        )
        for each in (spec.appliances if spec else ())
        if each.id in places
    )  # fmt: skip
    return tuple(sorted(seen, key=lambda each: each.x))


def swing_of(front: Front) -> Swing | None:
    """Give the edge that a front turns on, None where it turns on none or none is stated."""
    if front.kind == "lift":
        return "top"
    return front.hinged if front.kind in ("door", "pair") else None


def levels(values: Sequence[float]) -> tuple[float, ...]:
    """Give heights in ascending order, those that are one level once.

    >>> levels([820.0, 0.0, 100.0, 820.3])
    (0.0, 100.0, 820.0)
    """
    found: list[float] = []
    for value in sorted(values):
        if not found or value - found[-1] > SAME_LEVEL:
            found.append(value)
    return tuple(found)


def _overlap(one: Seen, other: Seen) -> bool:
    """Tell whether two boxes with their fronts reach into each other, by more than a trifle."""
    a, b = one.extent, other.extent
    return all(min(a[k + 2], b[k + 2]) - max(a[k], b[k]) > SAME_LEVEL for k in (0, 1))


def _find_fillers(layout: Layout) -> dict[tuple[str, Hand], WallEnd]:
    """Give the end with its filler at either hand of a box, by its ID: beside the boxes that stand
    at an end of their wall."""
    return {
        (box.id, hand): end
        for spec in layout.job.walls
        for hand, _ in LETTERS
        for end in [spec.end(hand)]
        if end.filler > SLACK
        for box in boxes_at_end(layout.job, spec.name, hand)
    }


def _see(
    layout: Layout,
    box: BoxSpec,
    x: float,
    fronts: Mapping[str, Sequence[Front]],
    fillers: Mapping[tuple[str, Hand], WallEnd],
) -> Seen:
    shelved = any(shelf.at is not None for shelf in box.shelves)
    y = box.above_floor
    openings: tuple[SeenOpening, ...] = ()
    shelves: tuple[SeenShelf, ...] = ()
    seen = tuple(
        SeenFront(front=front, x=x + front.place.x, y=y + front.place.y, swing=swing_of(front))
        for front in fronts.get(box.id, ())
    )
    if any(spec.kind == "opening" for spec in box.fronts) or shelved:
        columns = place_columns(layout.job, box)
        shelves = tuple(_shelves(columns.carcasses, x, y, seen))
        openings = tuple(
            SeenOpening(
                id=place.id,
                x=x + place.place.x,
                y=y + place.place.y,
                width=place.width,
                height=place.height,
                words=place.spec.words.note or "opening",
            )
            for place in columns.fronts
            if place.kind == "opening"
        )
    return Seen(
        box=box,
        x=x,
        fronts=seen,
        openings=openings,
        shelves=shelves,
        strips=tuple(_strips(box, x, layout.job.material.front, fillers)),
    )


def _shelves(
    carcasses: Sequence[Carcass], x: float, y: float, fronts: Sequence[SeenFront]
) -> Iterator[SeenShelf]:
    """Give the fixed shelves of a box at (x, y), column by column."""
    for carcass in carcasses:
        middle = x + carcass.middle
        for _, high in carcass.shelves:
            up = y + high
            yield SeenShelf(
                x=x + carcass.inner("left"), y=up, width=carcass.opening,
                hidden=any(
                    front.x < middle < front.x + front.front.width
                    and front.y < up < front.y + front.front.height
                    for front in fronts
                ),
            )  # fmt: skip


def _strips(
    box: BoxSpec, x: float, thickness: float, fillers: Mapping[tuple[str, Hand], WallEnd]
) -> Iterator[SeenStrip]:
    """Give the end panels of a box, and beyond them its fillers."""
    for hand, letter in LETTERS:
        end = x if hand == "left" else x + box.width
        kind, height = box.panels.at(hand), panel_height(box)
        if kind is not None:
            start = end - thickness if hand == "left" else end
            end = start if hand == "left" else end + thickness
            yield SeenStrip(
                kind="panel", x=start, y=box.above_floor + box.height - height,
                width=thickness, height=height, covered=kind == "covered",
                id=f"{box.id}-PANEL-{letter}",
            )  # fmt: skip
        filler = fillers.get((box.id, hand))
        if filler is not None:
            hidden = filler.stands == "corner" and _is_blind(box, hand)
            high = box.height if hidden else filler_height(box, hand)
            yield SeenStrip(
                kind="hidden" if hidden else "filler", covered=hidden,
                x=end - filler.filler if hand == "left" else end,
                y=box.above_floor + box.height - high, width=filler.filler, height=high,
            )  # fmt: skip
