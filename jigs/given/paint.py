"""Paint for the fronts: both faces and all edges, coat by coat.

>>> round(painted_area(454.0, 613.0, 19.05), 4)
0.5973
"""

from dataclasses import dataclass
from typing import Annotated

from jigs.ground.believable import Range
from jigs.ground.keys import Key


@dataclass(frozen=True, slots=True, kw_only=True)
class Paint:
    """How the fronts are painted."""

    coats: Annotated[int, Key(Range(1, 8, unit=""), most=20)] = 2
    """How many coats."""
    spread: Annotated[float, Key(Range(3, 20, unit="m2 a litre"), most=100.0)] = 10.0
    """What one litre covers in one coat, m2; the tin says it; 10 is common practice, no source."""


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
