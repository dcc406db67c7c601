"""An appliance's own sheet: what its leaflet allows the panel on its door to be.

The leaflet always wins. Its numbers are stated at the panel, `leaflet = { width_min, width_max,
height_min, height_max, gap_left, gap_right, gap_top, gap_bottom, weight_max, pull }`; a panel
outside them is held back. `leaflet = "noted"` says instead that the person has compared them.
"""

from dataclasses import dataclass
from typing import Literal

PanelPull = Literal["allowed", "none"]
PANEL_PULLS: tuple[PanelPull, ...] = ("allowed", "none")


@dataclass(frozen=True, slots=True, kw_only=True)
class Leaflet:
    """What an appliance's leaflet allows its panel: None where it was not stated.

    Sizes and least gaps in mm, `weight_max` in kg. `pull`: whether it may have one.
    """

    width_min: float | None = None
    width_max: float | None = None
    height_min: float | None = None
    height_max: float | None = None
    gap_left: float | None = None
    gap_right: float | None = None
    gap_top: float | None = None
    gap_bottom: float | None = None
    weight_max: float | None = None
    pull: PanelPull | None = None

    @property
    def unstated(self) -> tuple[str, ...]:
        """What of it nobody stated, in words."""
        gaps = (self.gap_left, self.gap_right, self.gap_top, self.gap_bottom)
        return tuple(
            name
            for name, said in (
                ("gaps", any(gap is not None for gap in gaps)),
                ("weight", self.weight_max is not None),
                ("pull", self.pull is not None),
            )
            if not said
        )
