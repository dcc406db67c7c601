"""The key plan: the wall in small, seen from the room, with one part black.

The boxes of the part's wall stand as they do along the wall, its appliances between them; only the
part's own box shows its fronts. Of a long wall the boxes round about are shown, of what belongs to
no wall its own box alone. A part that would be too thin to be seen is drawn thicker, never into
the boxes beside it.
"""

from collections.abc import Iterable, Sequence

from msgspec import Struct

from jigs.box.bypart import parts_of_box
from jigs.box.drawerbox import Rollout
from jigs.box.parts import Front, Layout, Side
from jigs.cutlist.piece import Block, Piece
from jigs.given.job import BoxSpec
from jigs.given.walls import place_job
from jigs.given.wallspec import Appliance
from jigs.ground.geometry import SLACK, rectangle
from templates.page.marks import MEDIUM, THIN, Area, Line, Mark, Outline

WINDOW = 3600.0
"""So much of a wall is shown round a part, mm: on 20 mm of paper a box 450 wide takes 2.5."""

LEAST_PART = 0.9
"""Least width and height of a black part on paper, mm."""

Filled = tuple[float, float, float, float]
"""What a part fills as it is seen from the room: left, bottom, right, top; mm."""


class Black(Struct, frozen=True, kw_only=True):
    """The part that a plan shows black: where it is seen, from the left edge and the bottom of
    `box`, or else along its wall. `beside`: the boxes that a wall's part belongs to."""

    rooms: tuple[Filled, ...]
    box: str | None = None
    beside: tuple[str, ...] = ()

    @property
    def own(self) -> tuple[str, ...]:
        """The boxes that the plan is about."""
        return self.beside if self.box is None else (self.box,)


def black_front(front: Front) -> Black:
    """Give where a front is seen."""
    room = (front.place.x, front.place.y, front.place.x + front.width, front.place.y + front.height)
    return Black(box=front.box, rooms=(room,))


def black_side(side: Side) -> Black:
    """Give where a box side or a partition is seen."""
    room = (side.x, side.ends.base, side.x + side.thickness, side.ends.base + side.height)
    return Black(box=side.box, rooms=(room,))


def black_rollout(rollout: Rollout) -> Black:
    """Give where a rollout's box is seen behind its doors."""
    room = (rollout.x, rollout.y, rollout.x + rollout.width, rollout.y + rollout.height)
    return Black(box=rollout.box, rooms=(room,))


def black_piece(piece: Piece, number: int = 1) -> Black:
    """Give where a piece is seen, of several alike the one with this number; a shelf that can be
    moved somewhere in its column."""
    blocks = piece.on_wall if piece.box is None else piece.blocks or piece.spread
    if len(blocks) == piece.count:
        blocks = blocks[number - 1 : number]
    return Black(box=piece.box, rooms=tuple(map(_seen, blocks)), beside=piece.beside)


def _seen(block: Block) -> Filled:
    return (block.x, block.y, block.x + block.dx, block.y + block.dy)


class _Frame(Struct, frozen=True, kw_only=True):
    """From a wall to paper: `scale`, and where the wall's corner lies on paper, mm."""

    scale: float
    x: float
    y: float

    def corners(self, room: Filled) -> tuple[tuple[float, float], ...]:
        left, bottom, right, top = room
        return rectangle(
            self.x + left * self.scale, self.y + bottom * self.scale,
            self.x + right * self.scale, self.y + top * self.scale,
        )  # fmt: skip


class KeyPlan:
    """The walls of a job, ready to be drawn in small."""

    def __init__(self, layout: Layout) -> None:
        self._layout = layout
        self._left = place_job(layout.job)
        self._walls: dict[str, list[BoxSpec]] = {}
        self._boxes = {box.id: box for box in layout.boxes}
        self._appliances: dict[str, list[Appliance]] = {
            wall.name: [each for each in wall.appliances if each.id in self._left]
            for wall in layout.job.walls
        }
        for box in layout.boxes:
            if box.wall and not box.inferred:
                self._walls.setdefault(box.wall, []).append(box)
        for wall in self._walls.values():
            wall.sort(key=lambda box: self._left[box.id])
        self._ends = {
            name: (
                min(self._left[box.id] for box in wall),
                max(self._left[box.id] + box.width for box in wall),
            )
            for name, wall in self._walls.items()
        }
        self._rank = {box.id: at for wall in self._walls.values() for at, box in enumerate(wall)}

    def marks(
        self, black: Black, x: float, y: float, width: float, height: float
    ) -> tuple[Mark, ...]:
        """Draw the plan within a rectangle whose lower left corner is (x, y), mm."""
        own = [self._boxes[name] for name in black.own if name in self._boxes]
        if not own or not black.rooms:
            return ()  # a plan with nothing black would tell nothing
        rooms = black.rooms
        fronts: list[Filled] = []
        if black.box is not None:
            start, foot = self._left[own[0].id], own[0].above_floor
            rooms = tuple(_moved(room, start, foot) for room in rooms)
            fronts = [
                _moved(black_front(front).rooms[0], start, foot)
                for front in parts_of_box(self._layout, own[0].id).fronts
            ]
        body = _around([self._room(box) for box in own])
        shown, others = self._beside(own, body)
        standing = any(box.kind != "wall" for box in shown) and not own[0].inferred
        # Fronts may hang below their box; those that do not fit it may stand out anywhere.
        left, bottom, right, top = _around([*map(self._room, shown), *others, *fronts, *rooms])
        bottom = min(0.0, bottom) if standing else bottom
        # What stands out of its box is drawn thicker on paper: that wants room beside it.
        spare = 0.0 if all(_inside(room, body) for room in rooms) else LEAST_PART
        scale = min(
            max(width - 2 * spare, width / 2) / (right - left),
            max(height - 2 * spare, height / 2) / (top - bottom),
        )
        frame = _Frame(
            scale=scale,
            x=x + (width - (right - left) * scale) / 2 - left * scale,
            y=y + (height - (top - bottom) * scale) / 2 - bottom * scale,
        )
        marks: list[Mark] = []
        if standing:
            at = frame.y
            marks.append(
                Line(x1=frame.x + left * scale, y1=at, x2=frame.x + right * scale, y2=at,
                     width=MEDIUM)
            )  # fmt: skip
        for room in others:
            marks.append(Outline(points=frame.corners(room), dash="dashed"))
        for box in shown:
            outline = frame.corners(self._room(box))
            marks.append(Outline(points=outline, width=MEDIUM if box in own else THIN))
        for room in fronts:
            marks.append(Outline(points=frame.corners(room)))
        marks += [Area(points=frame.corners(_thickened(room, body, scale))) for room in rooms]
        return tuple(marks)

    def _room(self, box: BoxSpec) -> Filled:
        left = self._left[box.id]
        return (left, box.above_floor, left + box.width, box.above_floor + box.height)

    def _beside(self, own: Sequence[BoxSpec], body: Filled) -> tuple[list[BoxSpec], list[Filled]]:
        """Give the boxes that are shown, and the room of each appliance between them."""
        wall = self._walls.get(own[0].wall, [])
        if own[0].inferred or not wall:
            return list(own), []
        if len(wall) > 40:  # a job of thousands: look no further than needed
            first, last = self._rank[own[0].id], self._rank[own[-1].id]
            wall = wall[max(0, first - 20) : last + 21]
        # The window stands round the part, but not beyond the ends of the wall.
        left, right = self._ends[own[0].wall]
        low = (body[0] + body[2] - WINDOW) / 2
        low = max(min(low, right - WINDOW, body[0]), left)
        high = max(low + WINDOW, body[2])
        boxes = [b for b in wall if self._left[b.id] + b.width > low and self._left[b.id] < high]
        appliances = [
            (left, each.above_floor, left + each.width, each.above_floor + each.height)
            for each in self._appliances.get(own[0].wall, ())
            for left in [self._left[each.id]]
            if left + each.width > low and left < high
        ]
        return boxes, appliances


def _moved(room: Filled, x: float, y: float) -> Filled:
    return (room[0] + x, room[1] + y, room[2] + x, room[3] + y)


def _around(rooms: Iterable[Filled]) -> Filled:
    left, bottom, right, top = zip(*rooms, strict=True)
    return min(left), min(bottom), max(right), max(top)


def _inside(room: Filled, body: Filled) -> bool:
    return (
        room[0] >= body[0] - SLACK and room[1] >= body[1] - SLACK
        and room[2] <= body[2] + SLACK and room[3] <= body[3] + SLACK
    )  # fmt: skip


def _thickened(room: Filled, body: Filled, scale: float) -> Filled:
    """Give a room at least as wide and high as is seen on paper: it grows away from the boxes that
    it stands beside, and within the box that it stands in."""
    left, right = _stretched(room[0], room[2], body[0], body[2], LEAST_PART / scale)
    bottom, top = _stretched(room[1], room[3], body[1], body[3], LEAST_PART / scale)
    return (left, bottom, right, top)


def _stretched(
    start: float, end: float, low: float, high: float, least: float
) -> tuple[float, float]:
    if end - start >= least:
        return start, end
    if end <= low + SLACK:
        return end - least, end
    if start >= high - SLACK:
        return start, start + least
    middle = (start + end) / 2
    from_low = max(low, min(middle - least / 2, high - least))
    return from_low, from_low + least
