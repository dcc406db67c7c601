"""How the boxes are built: what the cut list needs beyond true thicknesses, as one value.

The usual frameless box: sides run from end to end, bottom, top and stretchers stand between
them, the back slides into grooves in both sides and covers the rear edges of bottom and top, and
nailers stand behind it. All numbers are common practice, no source; a job may state each.
"""

from dataclasses import dataclass
from typing import Literal

Making = Literal["made", "ordered"]
MAKINGS: tuple[Making, ...] = ("made", "ordered")


@dataclass(frozen=True, slots=True, kw_only=True)
class Build:
    """The build of all boxes of a job; mm.

    `sold_as`: what the sides' board is called in the shop, None where not said. `groove`: depth
    of the back's groove in each side. `back_play`: how much the back is narrower than its grooves.
    `stretcher`, `nailer`: their widths. `nailers`: how many a box has, None as usual for its kind.
    `shelf_play`, `shelf_back`: how much an adjustable shelf is shorter than the opening, and how
    far it stands behind the front edge. `toe_back`: how far the toe platform stands behind the
    boxes' front edges; `sleepers`: their greatest distance. `scribe`: spare width of a filler,
    `panel_scribe` of an end panel at a wall. `bumper`: what holds fronts off the boxes.
    `drawer_bottom`: its board's thickness; `drawer_groove`: depth of its grooves. `drawer_boxes`:
    made from the cut list or ordered; None where not said.
    """

    sold_as: float | None = None
    groove: float = 8.0
    back_play: float = 1.0
    stretcher: float = 100.0
    nailer: float = 100.0
    nailers: int | None = None
    shelf_play: float = 3.0
    shelf_back: float = 25.0
    toe_back: float = 75.0
    sleepers: float = 600.0
    scribe: float = 12.0
    panel_scribe: float = 15.0
    bumper: float = 2.0
    drawer_bottom: float = 6.0
    drawer_groove: float = 6.0
    drawer_boxes: Making | None = None
