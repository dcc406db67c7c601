"""Fixing a drawer front: screws from inside the drawer box into the back of its front.

The screws stand in columns beside the drawer sides and in rows up its height. In the front each
has a pilot hole in the back; at the same place the drawer box's own front has a clearance hole.
Both are given as seen from the room, x from the left: a sheet for the back mirrors them.

The golden drawer, front 454 x 152.4, box 409.6 x 88.9 of 15.9 sides, 30.7 up:

>>> box = Backing(x=(454.0 - 409.6) / 2, y=30.7, width=409.6, height=88.9, side=15.9)
>>> plan = place_fixings(box, part="B3-1", width=454.0, height=152.4, thickness=19.05)
>>> [(round(hole.x, 4), round(hole.y, 4)) for hole in plan.front[0].holes]
[(70.1, 55.7), (70.1, 94.6)]
"""

import math
from collections.abc import Iterable, Sequence
from typing import Literal, Protocol

from msgspec import Struct

from jigs.ground.geometry import SLACK, Fitting, Hole

COLUMN_INSET = 32.0
"""A column's distance inside the drawer side's inner face; mm. Common practice, no source."""

ROW_INSET, ROW_INSET_LOW = 32.0, 25.0
"""A row's distance from the drawer box's underside and top; the second below `LOW_BOX`; mm.
Common practice, no source."""

LOW_BOX = 96.0
"""A drawer box below this height has its rows at `ROW_INSET_LOW`; mm. Common practice."""

ONE_ROW_BELOW = 82.0
"""A drawer box below this height has one row at half height; mm. Common practice."""

OFF_RAIL_EDGE = 15.0
"""A screw keeps this from the edges of the rail it goes through; mm. Common practice, no
source."""

LEAST_RAIL = 4 * OFF_RAIL_EDGE
"""Behind a false front a rail of this height takes both rows, a quarter of it from its edges; mm
(derived)."""

WIDE_FRONT = 600.0
"""A front wider than this has a third column at its middle; mm. Common practice."""

HIGH_FRONT = 250.0
"""A front higher than this, and not wide, has a third row; mm. Common practice."""

CLEAR_OF_PULL = 25.0
"""A fixing screw stands at least this far from a pull's screw; mm. Common practice."""

STEP = 8.0
"""A screw in a pull's way moves by steps of this towards the front's middle; mm. Derived."""

PILOT_DIAMETER = 3.0
PILOT_DEPTH = 12.0
"""Pilot in the back of the front, never nearer than `SKIN` to its face; mm. Common practice."""

CLEARANCE_DIAMETER = 5.0
"""Clearance hole through the drawer box's front; mm. Common practice."""

SKIN = 3.0
"""What stays between a pilot or a screw's point and the face; mm. Common practice."""

HEAD = 6.0
"""From a fixing screw to the drawer box's bottom panel, side or top edge: room for its washer
head; mm. Common practice, no source."""

PAN_HEAD = 4.0
"""The same where only a pan head, 8 across, passes the drawer side; mm. Common practice, no
source."""

ANY_PLACE = 2.0
"""A clearance hole may stand this much off its row; mm. Where the lowest row is raised by no more,
the highest one comes down as far: a card for the one, turned, then serves the other. Common
practice, no source."""

SEAM = 2.0
"""Wood between a hole and the groove or the inner edge of a stile or rail; mm (common practice)."""

SCREW_STOCK = (16.0, 20.0, 25.0, 28.0, 32.0, 35.0, 38.0, 45.0)
"""Usual lengths of pan- and washer-head wood screws; mm. Common practice, no source."""

LEAST_BITE = 6.0
"""A screw reaching less far into the front than this does not hold it; mm. Common practice."""


class Backing(Struct, frozen=True, kw_only=True):
    """What stands behind the front and is screwed to it, in the front's axes; mm.

    For a drawer the drawer box, `side` its side's thickness, `floor` the upper face of its bottom
    panel above its underside. For a false front, which no floor meets, the rail behind it, or the
    drawer box that would stand there: blocks behind it answer the same screws.
    """

    x: float
    y: float
    width: float
    height: float
    side: float
    floor: float = 0.0


class FixingPlan(Struct, frozen=True, kw_only=True):
    """The fixings of one front: one fitting a column, from the left as seen from the room.

    `head`: the widest screw head that passes the drawer's sides, mm.
    """

    front: tuple[Fitting, ...]
    box: tuple[Fitting, ...]
    left_out: tuple[tuple[float, float], ...] = ()
    pierced: tuple[tuple[float, float], ...] = ()
    spared: tuple[tuple[float, float], ...] = ()
    head: float = math.inf


ScrewPlace = tuple[float, float]
"""A place on a front: x, y; mm."""


class Ground(Protocol):
    """Where a front has wood to screw into, if it is not wood all over."""

    def places(self, backing: Backing, place: ScrewPlace, radius: float) -> Iterable[ScrewPlace]:
        """Give the places that may serve a screw meant for `place`, the best first."""

    def holds(self, place: ScrewPlace, radius: float) -> bool:
        """Tell whether a screw at this place has wood to bite."""


def place_fixings(
    backing: Backing,
    *,
    part: str,
    width: float,
    height: float,
    thickness: float,
    pulls: Iterable[Hole] = (),
    ground: Ground | None = None,
    at_rest: bool = False,
) -> FixingPlan:
    """Place the screws of a front of this size; `pulls` are the holes of its pulls; mm.

    `ground` says where a five-piece front has wood; without one it is wood all over. A front
    `at_rest`, a false one that nobody pulls at, is held at its corners alone: two rows of two.
    """
    screws = [(hole.x, hole.y) for hole in pulls]
    up: Sequence[float] = compute_rows(backing.height, width, height, floor=backing.floor)
    across: Sequence[float] = compute_columns(backing, width)
    if at_rest:
        up, across = _outer(up), _outer(across)
        if len(up) == 1:
            up = (backing.height / 4, 3 * backing.height / 4)
    rows = [backing.y + row for row in up]
    left_out: list[tuple[float, float]] = []
    pierced: list[tuple[float, float]] = []
    spared: list[tuple[float, float]] = []
    columns: list[list[tuple[float, float]]] = []
    for x in across:
        column: list[tuple[float, float]] = []
        for y in rows:
            starts = _starts(ground, backing, (x, y))
            if not starts:
                (spared if x in across[1:-1] or y in rows[1:-1] else pierced).append((x, y))
                continue
            clear = _first_clear(
                starts, width / 2, [*screws, *column] if ground else screws, ground
            )
            if clear is None:
                left_out.append((x, y))
                continue
            column.append(clear)
        if column:
            columns.append(column)
    _, depth = pilot(thickness)
    return FixingPlan(
        front=tuple(
            _fitting(
                "front-fixing", column, part=part, index=index, count=len(columns), depth=depth
            )
            for index, column in enumerate(columns, 1)
        ),
        box=tuple(
            _fitting(
                "clearance",
                [(x - backing.x, y - backing.y) for x, y in column],
                part=part,
                index=index,
                count=len(columns),
                depth=None,
            )
            for index, column in enumerate(columns, 1)
        ),
        left_out=tuple(left_out),
        pierced=tuple(pierced),
        spared=tuple(spared),
        head=math.inf
        if at_rest
        else _head_room(backing, (x for column in columns for x, _ in column)),
    )


def _head_room(backing: Backing, across: Iterable[float]) -> float:
    """Give the widest head, mm, that passes the drawer's sides at all of these x of its front."""
    left = backing.x + backing.side
    right = backing.x + backing.width - backing.side
    return 2 * min((min(x - left, right - x) for x in across), default=math.inf)


def _outer(places: Sequence[float]) -> list[float]:
    return [*places] if len(places) <= 2 else [places[0], places[-1]]


def compute_columns(backing: Backing, width: float) -> tuple[float, ...]:
    """Give the columns' x in the axes of a front `width` mm wide, from the left; mm."""
    inset = backing.side + COLUMN_INSET
    left, right = backing.x + inset, backing.x + backing.width - inset
    if right - left < CLEAR_OF_PULL - SLACK:
        # A box this narrow has no room for two columns.
        return (backing.x + backing.width / 2,)
    if width > WIDE_FRONT + SLACK:
        return (left, width / 2, right)
    return (left, right)


def compute_rows(
    box_height: float, width: float, height: float, *, floor: float = 0.0
) -> tuple[float, ...]:
    """Give the rows above the underside of a drawer box, for a front of this size; mm.

    The screws' heads stay clear of its bottom panel, whose upper face is at `floor` (0: none);
    () where they would then not stay below its top edge.
    """
    least = floor + HEAD if floor else 0.0
    if least > box_height - HEAD + SLACK:
        return ()
    inset = ROW_INSET_LOW if box_height < LOW_BOX - SLACK else ROW_INSET
    if inset < least <= inset + ANY_PLACE:
        inset = least
    low, middle, high = max(inset, least), max(box_height / 2, least), box_height - inset
    if box_height < ONE_ROW_BELOW - SLACK or high - low < CLEAR_OF_PULL - SLACK:
        return (middle,)
    if height > HIGH_FRONT + SLACK and width <= WIDE_FRONT + SLACK:
        return (low, middle, high)
    return (low, high)


def _starts(ground: Ground | None, backing: Backing, place: ScrewPlace) -> tuple[ScrewPlace, ...]:
    if ground is None:
        return (place,)
    return tuple(ground.places(backing, place, PILOT_DIAMETER / 2))


def _first_clear(
    starts: Iterable[ScrewPlace], middle: float, screws: list[ScrewPlace], ground: Ground | None
) -> ScrewPlace | None:
    """Give the first place clear of other screws on the way to the front's middle, if any."""
    for x, y in starts:
        steps = math.floor((abs(middle - x) + SLACK) / STEP)
        towards = math.copysign(STEP, middle - x)
        for step in range(steps + 1):
            place = (x + step * towards, y)
            if ground is not None and not ground.holds(place, PILOT_DIAMETER / 2):
                break
            if all(math.dist(place, screw) >= CLEAR_OF_PULL - SLACK for screw in screws):
                return place
    return None


def _fitting(
    kind: Literal["front-fixing", "clearance"],
    places: list[tuple[float, float]],
    *,
    part: str,
    index: int,
    count: int,
    depth: float | None,
) -> Fitting:
    pilot = kind == "front-fixing"
    return Fitting(
        kind=kind,
        index=index,
        count=count,
        part=part,
        record=None,
        holes=tuple(
            Hole(
                purpose=kind,
                face="back" if pilot else "box-front",
                x=x,
                y=y,
                diameter=PILOT_DIAMETER if pilot else CLEARANCE_DIAMETER,
                depth=depth,
            )
            for x, y in places
        ),
    )


def pilot(thickness: float) -> tuple[float, float]:
    """Give the diameter and depth of a pilot in the back of a front of this thickness; mm."""
    return PILOT_DIAMETER, min(PILOT_DEPTH, thickness - SKIN)


def longest_screw(box_front: float, thickness: float) -> float:
    """Give the longest screw through a drawer box's front of `box_front` that leaves 3; mm."""
    return box_front + thickness - SKIN


def fixing_screw(box_front: float, thickness: float) -> float | None:
    """Give the longest stock screw that leaves 3 before the face; mm.

    None: no stock length both stays below the face and reaches 6 into the front.
    """
    most = longest_screw(box_front, thickness)
    suitable = [
        length for length in SCREW_STOCK if box_front + LEAST_BITE - SLACK <= length <= most + SLACK
    ]
    return max(suitable, default=None)
