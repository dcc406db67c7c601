"""Holes that are given by hand, in a front or in the board beside it."""

from dataclasses import dataclass

from jigs.ground.geometry import End, Face, FittingKind, Hand


@dataclass(frozen=True, slots=True, kw_only=True)
class HandHole:
    """A hole given by hand, in the axes of its part (mm); `depth` None means through.

    `y` is as it was stated: up from the part's bottom end, or down from its top end where
    `stated_from` says so; `up` gives it from the bottom end in either case. `mirrored`: another
    one stands as far from a front's right edge. `leaf`: in this leaf of a pair alone. `kind`: the
    one that its purpose names, if it names one.
    """

    x: float
    y: float
    diameter: float
    depth: float | None
    face: Face
    purpose: str
    mirrored: bool = False
    leaf: Hand | None = None
    stated_from: End | None = None
    kind: FittingKind = "manual"

    def up(self, height: float) -> float:
        """Give its height above the bottom end of a part `height` mm high, mm."""
        return height - self.y if self.stated_from == "top" else self.y


@dataclass(frozen=True, slots=True)
class BoardHole:
    """A hole given by hand in the board on one side of a front: x from the finished front edge,
    y from the box side's bottom or top end. `front`: the ID of the front that it serves."""

    hand: Hand
    front: str
    hole: HandHole
