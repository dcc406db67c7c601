"""Axes, faces and holes, stated once for the whole tool.

- **Front**: x from the left edge, y from the bottom edge, as seen from the room, whichever
  face a hole is drilled from.
- **Box side**: x back from the finished front edge (edge band included), y up from the side's
  bottom end. Lying inside face up with its top end away from you, a left side has its front
  edge on your left, a right side on your right.
- **Drawer box's front and back** (`box-front`, `box-back`): x from the left end as seen from the
  room, y from its underside, whichever face a hole is drilled from.

A sheet draws the drilled face *as the driller sees it*; `mirror_x` is the one place where a
face is mirrored, `turned_over` a fitting with it.

>>> mirror_x(22.5, 454.0)
431.5
"""

import math
from collections.abc import Iterable
from functools import lru_cache
from typing import Literal

from msgspec import Struct
from msgspec.structs import replace

Hand = Literal["left", "right"]
"""A side as seen from the room."""
HANDS: tuple[Hand, Hand] = ("left", "right")
Face = Literal["front", "back", "inside", "box-front", "box-back"]
"""The face a hole is drilled from."""
FaceEdge = Literal["left", "right", "bottom", "top"]
"""An edge of a face as seen by the driller."""
OPPOSITE: dict[FaceEdge, FaceEdge] = {
    "left": "right", "right": "left", "bottom": "top", "top": "bottom",
}  # fmt: skip
"""The edge on the other side."""
Axis = Literal["x", "y"]
"""Of a face as seen: x to the right, y up."""

Purpose = Literal[
    "cup",
    "cup-fixing",
    "front-fixing",
    "pull",
    "plate",
    "slide",
    "shelf",
    "clearance",
    "hook",
    "manual",
]
"""What a hole is for."""

FittingKind = Literal[
    "hinge", "plate", "pull", "slide", "shelf", "front-fixing", "clearance", "hook", "manual"
]
"""The kinds of fittings; `jigs.given.kinds` has an entry for each."""

End = Literal["bottom", "top"]
"""The end of a part that heights are stated from."""

Polygon = tuple[tuple[float, float], ...]
"""A closed outline: corners in mm, the last joined to the first."""

SLACK = 1e-6
"""Slack in mm with which every limit is compared."""


def other_hand(hand: Hand) -> Hand:
    """Give the side across from this one."""
    return "right" if hand == "left" else "left"


def mirror_x(x: float, width: float) -> float:
    """Give the same place as seen from the other face of a part `width` mm wide (mm)."""
    return width - x


class Hole(Struct, frozen=True, kw_only=True):
    """One hole, in the axes of its part; mm. `depth` None means right through."""

    purpose: Purpose
    face: Face
    x: float
    y: float
    diameter: float
    depth: float | None


class Fitting(Struct, frozen=True, kw_only=True):
    """The holes that belong to one piece of hardware and are never drilled apart.

    `kind` says which: `hinge` (a cup with its fixings), `plate`, `pull`, `slide`, `shelf` (pins
    in a row), `front-fixing` (one column of screws), `clearance` (its counterpart in the drawer
    box), `hook` (one end of a drawer box's back), `manual`. `index` of `count` numbers the fittings
    of a kind on their part, from the bottom or, where they stand side by side, from the left as
    seen from the room; 1-based. `part` is
    the ID of the front it serves (None for a shelf), `record` the name of its hardware record.
    `outline` holds the closed outlines of the hardware lying on the part, in the part's axes.
    `carry` holds further x places on the fitting's line that are not on paper: carried back
    with a square, or marked through the slide itself; mm. `stated_from`: the end of the part that
    the heights of holes by hand were stated from, None where nobody said so. `stands`: the lower
    corner of a drawer box that stands here, in place of holes that are marked through it; mm.
    `note`: what the job says its holes by hand are for. `spacer`: how thick the one is that it sits
    on, 0 without; mm.
    """

    kind: FittingKind
    index: int
    count: int
    part: str | None
    record: str | None
    holes: tuple[Hole, ...]
    outline: tuple[Polygon, ...] = ()
    carry: tuple[float, ...] = ()
    note: str = ""
    spacer: float = 0.0
    stated_from: End | None = None
    stands: tuple[float, float] | None = None

    @property
    def places(self) -> tuple[tuple[float, float], ...]:
        """What its card is set out for: its holes' centres, or the corner that stands there; mm."""
        if self.stands is not None:
            return (self.stands,)
        return tuple((hole.x, hole.y) for hole in self.holes)


def round_down(length: float, step: float | None) -> float:
    """Round a length down to a whole number of steps, if there is a step; mm."""
    if step is None:
        return length
    return math.floor((length + SLACK) / step) * step


def rectangle(x0: float, y0: float, x1: float, y1: float) -> Polygon:
    """Give the rectangle between two opposite corners as a polygon; mm."""
    return ((x0, y0), (x1, y0), (x1, y1), (x0, y1))


def collect_holes(fittings: Iterable[Fitting]) -> tuple[Hole, ...]:
    """Give all holes of some fittings, in order."""
    return tuple(hole for fitting in fittings for hole in fitting.holes)


def moved(fitting: Fitting, across: float = 0.0, up: float = 0.0) -> Fitting:
    """Give a fitting that stands so much further to the right, and so much higher; mm. One that
    stays is given itself: a long job has many."""
    if not (across or up):
        return fitting
    return replace(
        fitting,
        holes=tuple(replace(hole, x=hole.x + across, y=hole.y + up) for hole in fitting.holes),
        outline=tuple(
            tuple((x + across, y + up) for x, y in polygon) for polygon in fitting.outline
        ),
        carry=tuple(x + across for x in fitting.carry),
    )


def turned_over(fitting: Fitting, width: float) -> Fitting:
    """Give a fitting as seen from the other face of a part `width` mm wide."""
    return replace(
        fitting,
        holes=_holes_turned_over(fitting.holes, width),
        outline=_outline_turned_over(fitting.outline, width),
        carry=tuple(mirror_x(x, width) for x in fitting.carry),
    )


# A long job has thousands of parts with the same holes: they are one value turned over, too.
@lru_cache(maxsize=1024)
def _holes_turned_over(holes: tuple[Hole, ...], width: float) -> tuple[Hole, ...]:
    return tuple(replace(hole, x=mirror_x(hole.x, width)) for hole in holes)


@lru_cache(maxsize=1024)
def _outline_turned_over(outline: tuple[Polygon, ...], width: float) -> tuple[Polygon, ...]:
    return tuple(tuple((mirror_x(x, width), y) for x, y in polygon) for polygon in outline)
