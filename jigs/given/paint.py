"""Paint for the fronts: both faces and all edges, coat by coat.

>>> round(painted_area(454.0, 613.0, 19.05), 4)
0.5973
"""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Paint:
    """How the fronts are painted: number of `coats`, `spread` of one litre in m2 for one coat (the
    tin says it; 10 is common practice, no source)."""

    coats: int = 2
    spread: float = 10.0


@dataclass(frozen=True, slots=True, kw_only=True)
class PaintNeed:
    """Paint of one finish ("" where none is stated): its fronts, their area in m2, the litres."""

    finish: str
    fronts: int
    area: float
    litres: float


def painted_area(width: float, height: float, thickness: float) -> float:
    """Give the area of a front, both faces and four edges, sizes in mm; m2 (derived)."""
    return (2 * width * height + 2 * (width + height) * thickness) / 1e6


def litres_for(area: float, paint: Paint) -> float:
    """Give the litres that an area (m2) takes in all coats."""
    return area * paint.coats / paint.spread
