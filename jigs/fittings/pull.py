"""Pulls and knobs: where a hand reaches for a front.

On drawers a pull lies level on the front's middle; on doors it stands near the free edge, at
the corner that is nearest the hand: the top one below a counter, the bottom one above it. All
holes are drilled from the face, a backing block behind.

The golden door, 454 x 771.5 in a base box, hinged left, pull 160:

>>> from jigs.given.hardware import PullRecord
>>> front = PulledFront(id="B3-2", kind="door", box_kind="base", hinged="left",
...                     width=454.0, height=771.5, floor=101.6)
>>> [(hole.x, hole.y) for hole in place_pulls(PullRecord(name="bar"), front).fittings[0].holes]
[(404.0, 547.5), (404.0, 707.5)]
"""

import math
from typing import Literal

from msgspec import Struct

from jigs.given.hardware import PullRecord
from jigs.given.job import BoxKind, FrontKind
from jigs.ground.geometry import SLACK, Fitting, Hand, Hole, Polygon, rectangle
from jigs.ground.lengths import MM_PER_INCH, Unit

Flag = Literal["one-pull-for-two", "pull-upright"]
"""What the person should know: two pulls were wanted and one fits; a pull stands upright."""

LEAST_END = 38.0
"""Two pulls need this much from a front's end, or its middle, to the near screw; mm.
Common practice, no source."""

USUAL_CENTERS = (
    *(64.0, 96.0, 128.0, 160.0, 192.0, 224.0, 256.0, 288.0, 320.0, 352.0, 384.0, 448.0, 480.0),
    *(inches * MM_PER_INCH for inches in (3, 4, 5, 6, 8, 12, 18)),
)
"""Hole centres that pulls are sold with; mm (common practice, no source)."""
NEARLY = 2.0
"""Centres this near to usual ones, and not on them, were perhaps meant to be these; mm (common
practice, no source)."""
ON = 0.05
"""Two centres this near are the same; mm: half of what a rule shows."""
UPRIGHT_BELOW = 50.0
"""A pullout narrower than the hole centres plus this takes its pull upright; mm.
Common practice, no source."""

SCREW_BITE = (6.0, 7.0, 9.0)
"""Least, best and most that a pull's screw is longer than what it clamps; mm. Common practice."""

COUNTERBORE_DIAMETER, COUNTERBORE_DEPTH = 12.0, 4.0
"""Where a screw's head is sunk into the back of a front that lies against a drawer box; mm.
Common practice, no source."""

SCREW_STOCK: dict[Unit, tuple[float, ...]] = {
    "mm": (20.0, 22.0, 25.0, 28.0, 30.0, 35.0, 40.0, 41.0, 45.0),
    "in": tuple(MM_PER_INCH * eighths / 8 for eighths in range(6, 17)),
}
"""Usual lengths of pull screws: M4 in mm, 8-32 from 3/4 to 2 in by eighths; mm.
Common practice, no source."""


class PulledFront(Struct, frozen=True, kw_only=True):
    """What the place of a pull depends on; mm. `floor`: the front's bottom edge above the
    finished floor. `stile`: width of a five-piece front's stile, None for a slab."""

    id: str
    kind: FrontKind
    box_kind: BoxKind
    hinged: Hand | None
    width: float
    height: float
    floor: float
    stile: float | None = None


class PullPlan(Struct, frozen=True, kw_only=True):
    """The pulls of one front, from the left as seen from the room, and what is to be said."""

    fittings: tuple[Fitting, ...]
    flags: tuple[Flag, ...] = ()


def usual_near(centers: float) -> float | None:
    """Give the usual hole centres that a pull's nearly are; None where they are such, or none
    is near.

    >>> usual_near(95.25), usual_near(127.0), usual_near(150.0)
    (96.0, None, None)
    """
    nearest = min(USUAL_CENTERS, key=lambda usual: abs(usual - centers))
    return nearest if ON < abs(nearest - centers) <= NEARLY + SLACK else None


def place_pulls(record: PullRecord, front: PulledFront) -> PullPlan:
    """Place the pulls of a front in its own axes; mm.

    A door without a stated hand has no free edge, and gets none; nor has an opening.
    """
    spread = record.centers or 0.0
    flags: tuple[Flag, ...] = ()
    middles: tuple[float, ...] = (front.width / 2,)
    match front.kind:
        case "drawer" | "false-front":
            y = _height_on_drawer(record, front.height)
            if front.width >= record.two_from - SLACK:
                if front.width / 4 - spread / 2 >= LEAST_END - SLACK:
                    middles = (front.width / 4, 3 * front.width / 4)
                else:
                    flags = ("one-pull-for-two",)
            spots = [_level(x, y, spread) for x in middles]
        case "pullout" | "panel":
            y = front.height - record.door_corner
            if record.centers is not None and front.width < spread + UPRIGHT_BELOW - SLACK:
                flags = ("pull-upright",)
                spots = [_upright(front.width / 2, y - spread / 2, spread)]
            else:
                spots = [_level(front.width / 2, y, spread)]
        case "lift":
            # The free edge is the bottom one; the pull lines up with the near screws of the
            # doors beside it.
            spots = [_level(front.width / 2, record.door_corner, spread)]
        case "door":
            if front.hinged is None:
                return PullPlan(fittings=())
            inset = record.door_inset if front.stile is None else front.stile / 2
            x = front.width - inset if front.hinged == "left" else inset
            spots = [_upright(x, _middle_on_door(record, front), spread)]
        case _:
            return PullPlan(fittings=())
    return PullPlan(
        fittings=tuple(
            _fitting(record, spot, part=front.id, index=index, count=len(spots))
            for index, spot in enumerate(spots, 1)
        ),
        flags=flags,
    )


ScrewPair = tuple[tuple[float, float], tuple[float, float]]
"""Both screws of a pull; for a knob they fall together."""


def _level(x: float, y: float, spread: float) -> ScrewPair:
    return ((x - spread / 2, y), (x + spread / 2, y))


def _upright(x: float, y: float, spread: float) -> ScrewPair:
    return ((x, y - spread / 2), (x, y + spread / 2))


def _height_on_drawer(record: PullRecord, height: float) -> float:
    if record.drawer == "center":
        return height / 2
    if record.drawer == "upper-third":
        return 2 * height / 3
    return height - record.drawer


def _middle_on_door(record: PullRecord, front: PulledFront) -> float:
    half = (record.centers or 0.0) / 2
    low = record.door_corner + half
    high = front.height - record.door_corner - half
    match front.box_kind:
        case "wall":
            return low
        case "tall":
            wanted = record.tall_height - front.floor
            if low - SLACK <= wanted <= high + SLACK:
                return wanted
            # Off the front, or too near its end: the corner on that side.
            return low if wanted < front.height / 2 else high
        case _:
            return high


def _fitting(record: PullRecord, spot: ScrewPair, *, part: str, index: int, count: int) -> Fitting:
    screws = spot[:1] if record.centers is None else spot
    return Fitting(
        kind="pull",
        index=index,
        count=count,
        part=part,
        record=record.name,
        holes=tuple(
            Hole(
                purpose="pull",
                face="front",
                x=x,
                y=y,
                diameter=record.hole_diameter,
                depth=None,
            )
            for x, y in screws
        ),
        outline=_knob(spot[0], record.foot) if record.centers is None else _bar(spot, record.foot),
    )


def _knob(centre: tuple[float, float], across: float) -> tuple[Polygon, ...]:
    """Give a knob as an octagon, `across` its flats: only holes are drawn as circles."""
    x, y = centre
    flat = across / 2
    cut = flat * math.tan(math.pi / 8)
    return (
        (
            (x + flat, y - cut), (x + flat, y + cut), (x + cut, y + flat), (x - cut, y + flat),
            (x - flat, y + cut), (x - flat, y - cut), (x - cut, y - flat), (x + cut, y - flat),
        ),
    )  # fmt: skip


def _bar(spot: ScrewPair, foot: float) -> tuple[Polygon, ...]:
    """Give both feet as squares, and the bar between them; how far it runs on is not known."""
    (x0, y0), (x1, y1) = spot
    half, thin = foot / 2, foot / 4
    feet = tuple(rectangle(x - half, y - half, x + half, y + half) for x, y in spot)
    if y0 == y1:
        return (*feet, rectangle(x0 + half, y0 - thin, x1 - half, y0 + thin))
    return (*feet, rectangle(x0 - thin, y0 + half, x0 + thin, y1 - half))


def pull_screw(clamped: float, units: Unit) -> float | None:
    """Give the stock length of a pull's screw for a clamped thickness, 6 to 9 longer; mm.

    The one nearest 7 longer is taken. None: no stock length suits, cut one that is too long.
    """
    least, best, most = SCREW_BITE
    suitable = [
        length
        for length in SCREW_STOCK[units]
        if clamped + least - SLACK <= length <= clamped + most + SLACK
    ]
    return min(suitable, key=lambda length: abs(length - clamped - best), default=None)
