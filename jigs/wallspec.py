"""What stands at both ends of a wall's run of boxes, as given.

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
class WallSpec:
    """A wall by its name, and what stands at its ends."""

    name: str
    left: WallEnd = field(default_factory=WallEnd)
    right: WallEnd = field(default_factory=WallEnd)

    def end(self, hand: Literal["left", "right"]) -> WallEnd:
        """Give one of its ends."""
        return self.left if hand == "left" else self.right
