"""How the boxes are built and their fronts painted: what cut list and order need beyond true
thicknesses.

The usual frameless box: sides run from end to end, bottom, top and stretchers stand between
them, the back slides into grooves in both sides and covers the rear edges of bottom and top, and
nailers stand behind it. All numbers are common practice, no source; a job may state each.

>>> round(painted_area(454.0, 613.0, 19.05), 4)
0.5973
"""

from dataclasses import dataclass
from typing import Annotated, Literal

from jigs.ground.believable import BOARD, RAIL, SPARE, THIN_BOARD, Range
from jigs.ground.keys import Key

Making = Literal["made", "ordered"]
Method = Literal["sprayed", "brushed"]
SizesAre = Literal["before", "after"]
MOST_NAILERS = 4


@dataclass(frozen=True, slots=True, kw_only=True)
class Build:
    """The build of all boxes of a job; mm."""

    sold_as: Annotated[float | None, Key(BOARD)] = None
    """What the sides' board is called in the shop; else the nearest trade size."""
    groove: Annotated[float, Key(Range(3, 20))] = 8.0
    """Depth of the back's groove in each side."""
    back_play: Annotated[float, Key(Range(0.3, 6, zero=True))] = 1.0
    """How much the back is narrower than its grooves."""
    stretcher: Annotated[float, Key(RAIL)] = 100.0
    """Width of a stretcher."""
    nailer: Annotated[float, Key(RAIL)] = 100.0
    """Width of a nailer."""
    nailers: Annotated[int | None, Key(Range(1, MOST_NAILERS, unit=""), most=MOST_NAILERS)] = None
    """How many nailers a box has; else 1, wall and tall boxes 2."""
    shelf_play: Annotated[float, Key(Range(0.5, 10, zero=True))] = 3.0
    """How much an adjustable shelf is shorter than the opening."""
    shelf_back: Annotated[float, Key(SPARE)] = 25.0
    """How far it stands behind the front edge."""
    toe_back: Annotated[float, Key(Range(20, 150, zero=True))] = 75.0
    """How far the toe platform stands behind the boxes' front edges."""
    sleepers: Annotated[float, Key(Range(200, 1200))] = 600.0
    """The greatest distance of its sleepers."""
    scribe: Annotated[float, Key(SPARE)] = 12.0
    """Spare width of a filler."""
    panel_scribe: Annotated[float, Key(SPARE)] = 15.0
    """Spare width of an end panel at a wall."""
    bumper: Annotated[float, Key(Range(0.5, 6, zero=True))] = 2.0
    """Thickness of what holds fronts off the boxes."""
    drawer_bottom: Annotated[float, Key(THIN_BOARD)] = 6.0
    """Thickness of a drawer's bottom."""
    drawer_groove: Annotated[float, Key(Range(2, 15))] = 6.0
    """Depth of its grooves."""
    drawer_boxes: Annotated[Making | None, Key()] = None
    """Whether drawer boxes are made from the cut list, or ordered."""
    drawer_bored: Annotated[bool, Key()] = False
    """Whether drawer boxes come with the holes for their fronts' screws: none are bored in their
    fronts here, and none set out on the back of a front, which is marked through them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Paint:
    """How the fronts are painted."""

    coats: Annotated[int, Key(Range(1, 8, unit=""), most=20)] = 2
    """How many coats."""
    spread: Annotated[float, Key(Range(3, 20, unit="m2 a litre"), most=100.0)] = 10.0
    """What one litre covers in one coat, m2; the tin says it; 10 is common practice, no source."""
    method: Annotated[Method | None, Key()] = None
    """How it is laid on: brushed, a film is thicker."""
    sizes: Annotated[SizesAre | None, Key()] = None
    """Whether the fronts have their sizes before they are painted, or after."""


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
