"""Fronts as they hang: where their middle and their hinges are, how far their screws reach."""

from msgspec import Struct

from jigs.box.parts import Front, Layout
from jigs.room.elevation import see_walls
from jigs.room.reckoning import ADJUSTS, SHIFTS


class HungFront(Struct, frozen=True, kw_only=True):
    """A front as it hangs: its middle on the wall, the height of each of its hinges from there,
    from the top, or of its upper and lower edge, and how far its hinge edge is to the right; mm."""

    front: Front
    x: float
    y: float
    points: tuple[float, ...]
    edge: float = 0.0

    @property
    def top(self) -> float:
        """How high its upper edge stands, mm."""
        return self.y + self.front.height / 2

    @property
    def bottom(self) -> float:
        """How high its lower edge stands, mm."""
        return self.y - self.front.height / 2

    @property
    def reach(self) -> float:
        """How far its screws move it either way; a front on screws as far as its holes let it."""
        if self.front.swings:
            return ADJUSTS
        return SHIFTS if self.front.kind in ("drawer", "pullout", "false-front") else 0.0

    @property
    def leans(self) -> float:
        """How far it can lean, mm on a mm, if it is not moved besides."""
        across = abs(self.edge) if self.front.swings else self.front.width / 2
        return self.reach / max(*map(abs, self.points), across)


def hung_fronts(layout: Layout) -> dict[str, HungFront]:
    """Give the fronts of a job by their IDs, as they hang on their walls."""
    return {
        seen.front.id: _hung(seen.front, seen.x, seen.y)
        for elevation in see_walls(layout)
        for box in elevation.boxes
        for seen in box.fronts
    }


def _hung(front: Front, x: float, y: float) -> HungFront:
    half = front.height / 2
    cups = sorted((hole.y - half for hole in front.holes if hole.purpose == "cup"), reverse=True)
    away = {"left": -front.width / 2, "right": front.width / 2}
    return HungFront(
        front=front,
        x=x + front.width / 2,
        y=y + half,
        points=tuple(cups) if front.swings and len(cups) > 1 else (half, -half),
        edge=away[front.hinged] if front.swings and front.hinged else 0.0,
    )
