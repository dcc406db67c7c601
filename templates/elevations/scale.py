"""How a wall lies on a page: its scale, and the unit whose figures stand first."""

from msgspec import Struct

from jigs.ground.geometry import Polygon, rectangle
from jigs.ground.lengths import Unit

ROOMY = 20
"""Up to this reduction there is room for large IDs."""


class Scale(Struct, frozen=True):
    """How a wall lies on a page: 1 to `reduction`, the wall's origin at (x, y) mm."""

    reduction: int
    x: float
    y: float

    def across(self, x: float) -> float:
        """Give the place on the page of a place along the wall, mm."""
        return self.x + x / self.reduction

    def up(self, y: float) -> float:
        """Give the place on the page of a height above the floor, mm."""
        return self.y + y / self.reduction

    def area(self, x: float, y: float, width: float, height: float) -> Polygon:
        """Give a rectangle of the wall on the page."""
        return rectangle(self.across(x), self.up(y), self.across(x + width), self.up(y + height))


class Style(Struct, frozen=True):
    """How boxes are drawn: their scale, and the unit whose figures stand first."""

    scale: Scale
    unit: Unit
