"""A wall as given: how long and high it is, its counter and floor, the appliances that stand
between its boxes, and what stands at both ends of their run.

Left and right are seen from the room, and so is the run: its right end at an inside corner meets
the left end of the next wall. What stands at an end decides what opens beside it: a door strikes
a wall with its pull, a drawer the pulls round a corner.
"""

from dataclasses import dataclass, field
from typing import Literal

EndKind = Literal["wall", "corner", "casing", "panel", "open"]
END_KINDS: tuple[EndKind, ...] = ("wall", "corner", "casing", "panel", "open")


@dataclass(frozen=True, slots=True, kw_only=True)
class WallEnd:
    """One end of a run; mm.

    `stands` there: a `wall`, a `casing` on it, an inside `corner`, an end `panel`, or nothing
    (`open`); None where not said. `filler`: from there to the first box; at a corner from the
    line of the other run's boxes. `reach`: how far what stands there reaches out: of a casing
    from its wall, of a panel beyond the faces of the fronts, at a corner of a handle from the
    faces opposite. `meets`: at a corner, the other wall.
    """

    stands: EndKind | None = None
    filler: float = 0.0
    reach: float | None = None
    meets: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Appliance:
    """What stands or hangs between the boxes of a wall and is none of them: a range, a fridge; mm.
    `depth`: from the line of the boxes' backs to its face, None where nobody said.

    Its left end is at `x` along the wall, or else where what it stands `after` ends: a box, or
    another appliance, by its ID.
    """

    id: str
    width: float
    height: float
    depth: float | None = None
    above_floor: float = 0.0
    name: str = ""
    x: float | None = None
    after: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class WallSpec:
    """A wall by its name, and what stands at its ends; mm, None where not said.

    `length`: from end to end. `ceiling` and `counter`, the counter's top, are counted from the
    line that the boxes' `above_floor` counts from; the floor's highest point stands `floor_high`
    above that line. `id` begins the names of its pieces; "": made from its name.
    """

    name: str
    id: str = ""
    left: WallEnd = field(default_factory=WallEnd)
    right: WallEnd = field(default_factory=WallEnd)
    length: float | None = None
    ceiling: float | None = None
    counter: float | None = None
    counter_thickness: float | None = None
    floor_high: float = 0.0
    appliances: tuple[Appliance, ...] = ()

    @property
    def underside(self) -> float | None:
        """Height of the counter's underside, None where it is not known; mm."""
        if self.counter is None or self.counter_thickness is None:
            return None
        return self.counter - self.counter_thickness

    def end(self, hand: Literal["left", "right"]) -> WallEnd:
        """Give one of its ends."""
        return self.left if hand == "left" else self.right
