"""Every gap about the fronts, as they stand on the wall: what is beside each edge, and how far off.

Fronts are neighbours where their faces are level with each other and nothing stands between, in one
box or in two. A box that stands out beyond a front's face is beside it itself, as an end panel, a
filler, an appliance or the wall is; above stands the counter. An inset front has the boards of its
own box about it.
"""

from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Iterator, Sequence
from math import floor
from typing import Literal

from msgspec import Struct

from jigs.box.frontgaps import BESIDE, stands_under_counter
from jigs.box.parts import Front, Layout
from jigs.given.walls import SAME, taken_by
from jigs.given.wallspec import WallSpec
from jigs.ground.geometry import OPPOSITE, SLACK, Axis, FaceEdge
from jigs.room.elevation import Elevation, see_walls
from jigs.room.seen import Seen, SeenFront, SeenStrip

NextTo = Literal[
    "front", "box", "panel", "filler", "wall", "casing", "appliance", "board", "counter"
]
AXES: dict[Axis, tuple[FaceEdge, FaceEdge]] = {"x": ("right", "left"), "y": ("top", "bottom")}
"""Along each axis, the edges of what is before a gap and of what is behind it."""
EDGES: dict[FaceEdge, Axis] = {"left": "x", "right": "x", "bottom": "y", "top": "y"}
OVERLAP = 5.0
"""Two fronts that reach into each other by up to this still have a gap, below 0; mm."""
LEVEL = 20.0
"""Faces that differ by more than this are not beside each other; mm (common practice)."""
LANE = 1000.0
"""Neighbours are looked for in lanes so wide, not along the whole wall; mm."""
FAR = 1e5
"""Thicker than anything that stands in a kitchen; mm."""


class Meeting(Struct, frozen=True, kw_only=True):
    """A gap between a front and what is beside it."""

    one: Front
    """The front; of two the left or the lower one."""
    edge: FaceEdge
    """Its edge at the gap."""
    beside: NextTo
    """What is on the other side."""
    other: Front | None = None
    """The other front, if it is one."""
    name: str = ""
    """The ID of an appliance, or of a box."""
    nominal: float
    """How wide the gap is as planned, or as the fronts in hand make it; mm."""
    wall: str = ""
    x: float
    """Of the gap's middle along its wall; mm."""
    y: float
    """Of the gap's middle above the floor; mm."""
    length: float
    """How far it runs; mm."""

    @property
    def axis(self) -> Axis:
        """The direction in which the gap is measured."""
        return EDGES[self.edge]

    @property
    def facing(self) -> FaceEdge:
        """The edge of the other front at the gap."""
        return OPPOSITE[self.edge]

    @property
    def sides(self) -> tuple[tuple[Front, FaceEdge], ...]:
        """The fronts at the gap, each with its edge there."""
        own = ((self.one, self.edge),)
        return own if self.other is None else (*own, (self.other, self.facing))

    @property
    def in_one_box(self) -> bool:
        """Whether it is between two fronts of one box."""
        return self.other is not None and self.other.box == self.one.box

    @property
    def names(self) -> tuple[str, ...]:
        """The names of the parts at the gap."""
        other = self.other.id if self.other else self.name
        return (self.one.id, other) if other else (self.one.id,)


class _Thing(Struct, frozen=True, kw_only=True):
    """What stands on a wall: where it is, and how far its face is from the wall; mm."""

    left: float
    bottom: float
    right: float
    top: float
    beside: NextTo
    face: float
    front: Front | None = None
    name: str = ""

    def span(self, axis: Axis) -> tuple[float, float]:
        return (self.left, self.right) if axis == "x" else (self.bottom, self.top)

    def across(self, axis: Axis) -> tuple[float, float]:
        return self.span("y" if axis == "x" else "x")


def find_gaps(layout: Layout) -> tuple[Meeting, ...]:
    """List the gaps of a job, wall by wall, from the left and from below."""
    found: list[Meeting] = []
    for elevation in see_walls(layout):
        things = [*_things(layout, elevation)]
        own = [*_across(things, elevation.wall, "x"), *_across(things, elevation.wall, "y")]
        for seen in elevation.boxes:
            own += _boards(seen, elevation.wall)
            own += _under_counter(seen, elevation)
        found += sorted(own, key=lambda gap: (round(gap.x, 1), round(gap.y, 1)))
    return tuple(found)


def _things(layout: Layout, elevation: Elevation) -> Iterator[_Thing]:
    job = layout.job
    for seen in elevation.boxes:
        yield _Thing(
            left=seen.x, bottom=seen.bottom, right=seen.right, top=seen.top,
            beside="box", face=seen.box.depth, name=seen.box.id,
        )  # fmt: skip
        yield from (_front(seen, each) for each in seen.fronts)
        yield from (_strip(seen, strip) for strip in seen.strips if not strip.covered)
    for appliance in elevation.appliances:
        spec = elevation.spec
        depths = {each.id: each.depth for each in (spec.appliances if spec else ())}
        depth = depths.get(appliance.id)
        yield _Thing(
            left=appliance.x, bottom=appliance.y, right=appliance.x + appliance.width,
            top=appliance.y + appliance.height, beside="appliance", name=appliance.id,
            face=FAR if depth is None else depth,
        )  # fmt: skip
    if elevation.placed and elevation.spec is not None:
        own = [each for each in taken_by(job) if each.wall == elevation.wall]
        yield from _ends(elevation.spec, min(t.left for t in own), max(t.right for t in own))


def _ends(spec: WallSpec, left: float, right: float) -> Iterator[_Thing]:
    """Give what stands at the ends of a wall whose run reaches from `left` to `right`; mm."""
    for hand, start in (("left", left - FAR), ("right", right)):
        end = spec.left if hand == "left" else spec.right
        if end.stands not in ("wall", "casing", "panel"):
            continue
        at = start + (end.filler if hand == "right" else -end.filler)
        yield _Thing(
            left=at, bottom=-FAR, right=at + FAR, top=FAR, beside=end.stands, face=FAR
        )  # fmt: skip


def _front(seen: Seen, each: SeenFront) -> _Thing:
    front = each.front
    return _Thing(
        left=each.x, bottom=each.y, right=each.x + front.width, top=each.y + front.height,
        beside="front", face=seen.box.depth, front=front,
    )  # fmt: skip


def _strip(seen: Seen, strip: SeenStrip) -> _Thing:
    return _Thing(
        left=strip.x, bottom=strip.y, right=strip.x + strip.width, top=strip.y + strip.height,
        beside="panel" if strip.kind == "panel" else "filler", face=seen.box.depth,
    )  # fmt: skip


def _across(things: Sequence[_Thing], wall: str, axis: Axis) -> Iterator[Meeting]:
    """Give the gaps along one axis: of each thing to the next behind it."""
    row = sorted(things, key=lambda thing: thing.span(axis)[0])
    lanes: dict[int, list[int]] = {}
    for place, thing in enumerate(row):
        for lane in _lanes(thing, axis):
            lanes.setdefault(lane, []).append(place)
    starts = {lane: [row[n].span(axis)[0] for n in own] for lane, own in lanes.items()}
    for one in row:
        end = one.span(axis)[1]
        places: set[int] = set()
        for lane in _lanes(one, axis):
            first = bisect_left(starts[lane], end - OVERLAP)
            last = bisect_right(starts[lane], end + BESIDE)
            places.update(lanes[lane][first:last])
        near = [
            other
            for other in (row[place] for place in sorted(places))
            if other is not one and _common(one, other, axis) > SAME
        ]
        for other in near:
            if _meet(one, other) and not any(_parts(third, other, axis) for third in near):
                yield _meeting(one, other, wall, axis)


def _lanes(thing: _Thing, axis: Axis) -> range:
    """Number the lanes along an axis in which a thing stands: only what shares one is near."""
    low, high = thing.across(axis)
    return range(floor(low / LANE), floor(high / LANE) + 1)


def _common(one: _Thing, other: _Thing, axis: Axis) -> float:
    """Give how far two things stand beside each other; mm."""
    (low, high), (start, end) = one.across(axis), other.across(axis)
    return min(high, end) - max(low, start)


def _meet(one: _Thing, other: _Thing) -> bool:
    """Tell whether two things have a gap that matters: one of them is a front, and the other
    stands in its plane."""
    if one.front is None and other.front is None:
        return False
    if one.front is not None and other.front is not None:
        inset = "inset" in (one.front.place.overlay, other.front.place.overlay)
        own = (one.front.box, one.front.place.column) == (
            other.front.box, other.front.place.column,
        )  # fmt: skip
        return abs(one.face - other.face) <= LEVEL and (own or not inset)
    thing, there = (other, one) if one.front is None else (one, other)
    assert thing.front is not None, "one of them is a front"
    if thing.front.place.overlay == "inset":
        return False
    if there.beside == "box":
        return there.name != thing.front.box and there.face > thing.face + LEVEL
    return there.face > thing.face - SAME


def _parts(third: _Thing, other: _Thing, axis: Axis) -> bool:
    """Tell whether a third thing stands before another, seen from where a gap begins."""
    if third is other or third.beside == "box" or _common(third, other, axis) <= SAME:
        return False
    return third.span(axis)[1] <= other.span(axis)[0] + OVERLAP and (
        third.span(axis)[0] < other.span(axis)[0] - SLACK
    )


def _meeting(one: _Thing, other: _Thing, wall: str, axis: Axis) -> Meeting:
    here, there = AXES[axis]
    before, behind = one.span(axis)[1], other.span(axis)[0]
    low = max(one.across(axis)[0], other.across(axis)[0])
    high = min(one.across(axis)[1], other.across(axis)[1])
    middle, along = (before + behind) / 2, (low + high) / 2
    first = one.front is not None
    front = one.front or other.front
    assert front is not None, "one of them is a front"
    beside = other if first else one
    return Meeting(
        one=front, edge=here if first else there, beside=beside.beside,
        other=other.front if first else None, name=beside.name, nominal=behind - before,
        wall=wall, x=middle if axis == "x" else along, y=along if axis == "x" else middle,
        length=high - low,
    )  # fmt: skip


def _boards(seen: Seen, wall: str) -> Iterator[Meeting]:
    """Give the gaps between inset fronts and the boards of their box."""
    inset = [each for each in seen.fronts if each.front.place.overlay == "inset"]
    for each in inset:
        front = each.front
        gaps: dict[FaceEdge, float] = {
            "left": front.gaps.left, "right": front.gaps.right,
            "bottom": front.gaps.bottom, "top": front.gaps.top,
        }  # fmt: skip
        for edge, gap in gaps.items():
            x, y = each.x + front.width / 2, each.y + front.height / 2
            if EDGES[edge] == "x":
                x = each.x - gap / 2 if edge == "left" else each.x + front.width + gap / 2
            else:
                y = each.y - gap / 2 if edge == "bottom" else each.y + front.height + gap / 2
            if any(_reaches(other, x, y, gap) for other in inset if other is not each):
                continue
            yield Meeting(
                one=front, edge=edge, beside="board", nominal=gap, wall=wall, x=x, y=y,
                length=front.height if EDGES[edge] == "x" else front.width,
            )  # fmt: skip


def _reaches(other: SeenFront, x: float, y: float, gap: float) -> bool:
    """Tell whether a front stands on the other side of a gap whose middle is here."""
    front = other.front
    return (
        other.x - gap <= x <= other.x + front.width + gap
        and other.y - gap <= y <= other.y + front.height + gap
    )


def _under_counter(seen: Seen, elevation: Elevation) -> Iterator[Meeting]:
    """Give the gaps between the top fronts of a box and the counter over them."""
    if seen.hangs or not stands_under_counter(seen.box):
        return
    underside = elevation.spec.underside if elevation.spec else None
    for each in _top_fronts(seen.fronts):
        front = each.front
        top = each.y + front.height
        gap = front.gaps.top if underside is None else underside - top
        if gap > BESIDE:
            continue
        yield Meeting(
            one=front, edge="top", beside="counter", nominal=gap, wall=elevation.wall,
            x=each.x + front.width / 2, y=top + gap / 2, length=front.width,
        )  # fmt: skip


def _top_fronts(fronts: Iterable[SeenFront]) -> Iterator[SeenFront]:
    return (
        each for each in fronts if each.front.place.row == 1 and each.front.place.overlay != "inset"
    )
