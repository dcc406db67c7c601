"""What closes the ends of a box: end panels beside it, and the blind panel of a corner box."""

from dataclasses import dataclass
from typing import Literal

from jigs.ground.geometry import Hand

PanelKind = Literal["flush", "covered"]
PANEL_KINDS: tuple[PanelKind, ...] = ("flush", "covered")


@dataclass(frozen=True, slots=True, kw_only=True)
class EndPanels:
    """The panels beside and behind a box: flush with the faces of the fronts, or covered by them;
    None without."""

    left: PanelKind | None = None
    """At its left side."""
    right: PanelKind | None = None
    """At its right side."""
    back: bool = False
    """Whether one closes its back: on an island."""

    def at(self, hand: Hand) -> PanelKind | None:
        """Give the panel at one side."""
        return self.left if hand == "left" else self.right


@dataclass(frozen=True, slots=True, kw_only=True)
class BlindEnd:
    """The end of a corner box whose front is closed by a fixed panel."""

    hand: Hand
    """The end."""
    reach: float
    """How far along its box the panel reaches from that end, mm."""
