"""A wall as given: how long and high it is, its counter and floor, the appliances that stand
between its boxes, and what stands at both ends of their run.

Left and right are seen from the room, and so is the run: its right end at an inside corner meets
the left end of the next wall. What stands at an end decides what opens beside it: a door strikes
a wall with its pull, a drawer the pulls round a corner.
"""

from typing import Annotated, Literal

from msgspec import Struct, field

from jigs.ground.believable import Range
from jigs.ground.keys import Key
from jigs.ground.lengths import LONGEST

EndKind = Literal["wall", "corner", "casing", "panel", "open"]
END_KINDS: tuple[EndKind, ...] = ("wall", "corner", "casing", "panel", "open")


class WallEnd(Struct, frozen=True, kw_only=True):
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


class Appliance(Struct, frozen=True, kw_only=True):
    """What stands or hangs between the boxes of a wall and is none of them: a range, a fridge; mm.

    Its left end is at `x` along the wall, or else where what it stands `after` ends.
    """

    id: str
    """What it is called, as a box is."""
    name: Annotated[str, Key()] = ""
    """What stands on the drawing."""
    width: Annotated[float, Key(Range(100, 1600))]
    """From its left end to its right."""
    height: Annotated[float, Key(Range(40, 2600))]
    """From its lower end up."""
    depth: Annotated[float | None, Key(Range(50, 1200))] = None
    """From the line of the boxes' backs to its face; a door hinged beside one that stands proud is
    told."""
    above_floor: Annotated[float, Key(Range(10, 2600, zero=True))] = 0.0
    """Its lower end above the floor."""
    x: Annotated[float | None, Key(Range(0, LONGEST))] = None
    """Its left end along the wall."""
    after: str | None = None
    """The box, or an appliance above it in the file, that it follows."""


class WallSpec(Struct, frozen=True, kw_only=True):
    """A wall as given; mm, None where not said."""

    name: str
    """Its name, by which boxes name it."""
    id: str = ""
    """How the names of its pieces begin; "": made from its name."""
    left: WallEnd = field(default_factory=WallEnd)
    """What stands at its left end."""
    right: WallEnd = field(default_factory=WallEnd)
    """What stands at its right end."""
    length: Annotated[float | None, Key(Range(300, LONGEST))] = None
    """From end to end."""
    ceiling: Annotated[float | None, Key(Range(1500, 6000))] = None
    """The ceiling where it is lowest, above the level line that `above_floor` counts from."""
    counter: Annotated[float | None, Key(Range(500, 1400))] = None
    """The counter's top above that line."""
    counter_thickness: Annotated[float | None, Key(Range(5, 120))] = None
    """How thick the counter is."""
    floor_high: Annotated[float, Key(Range(1, 100, zero=True))] = 0.0
    """How far the floor's highest point stands above that line."""
    appliances: tuple[Appliance, ...] = ()
    """What stands by itself between its boxes."""

    @property
    def underside(self) -> float | None:
        """Height of the counter's underside, None where it is not known; mm."""
        if self.counter is None or self.counter_thickness is None:
            return None
        return self.counter - self.counter_thickness

    def end(self, hand: Literal["left", "right"]) -> WallEnd:
        """Give one of its ends."""
        return self.left if hand == "left" else self.right
