"""An appliance's own sheet: what its leaflet allows the panel on its door to be.

The leaflet always wins. Its numbers are stated at the panel, `leaflet = { width_min, width_max,
height_min, height_max, gap_left, gap_right, gap_top, gap_bottom, weight_max, pull }`; a panel
outside them is held back. `leaflet = "noted"` says instead that the person has compared them.
"""

from dataclasses import dataclass
from typing import Annotated, Literal

from jigs.ground.believable import Range
from jigs.ground.keys import Key
from jigs.ground.ranges import PANEL_GAP, PANEL_HEIGHT, PANEL_WIDTH

PanelPull = Literal["allowed", "none"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Leaflet:
    """What an appliance's leaflet allows its panel: None where it was not stated; mm."""

    width_min: Annotated[float | None, Key(PANEL_WIDTH)] = None
    """The panel's least width."""
    width_max: Annotated[float | None, Key(PANEL_WIDTH)] = None
    """Its greatest width."""
    height_min: Annotated[float | None, Key(PANEL_HEIGHT)] = None
    """Its least height."""
    height_max: Annotated[float | None, Key(PANEL_HEIGHT)] = None
    """Its greatest height."""
    gap_left: Annotated[float | None, Key(PANEL_GAP)] = None
    """The least gap at its left."""
    gap_right: Annotated[float | None, Key(PANEL_GAP)] = None
    """The least gap at its right."""
    gap_top: Annotated[float | None, Key(PANEL_GAP)] = None
    """The least gap above it."""
    gap_bottom: Annotated[float | None, Key(PANEL_GAP)] = None
    """The least gap below it."""
    weight_max: Annotated[float | None, Key(Range(1, 60, unit="kg"), most=100.0)] = None
    """What it may weigh, kg."""
    pull: Annotated[PanelPull | None, Key()] = None
    """Whether it may have a pull."""

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
