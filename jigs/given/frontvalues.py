"""What a front states of its own: its gaps, and its frame where it is a five-piece front."""

from dataclasses import dataclass
from typing import Annotated

from jigs.ground.keys import Key
from jigs.ground.ranges import GROOVE, STILE, THIN_BOARD


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnReveals:
    """A front's own gap on each side, mm; None where it is the job's."""

    left: float | None = None
    """From its left edge."""
    right: float | None = None
    """From its right edge."""
    top: float | None = None
    """From its top edge."""
    bottom: float | None = None
    """From its bottom edge; below 0 where the front hangs below its box."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FivePieceSpec:
    """The frame of a five-piece front as far as it is known; a slab states no stile."""

    stile: Annotated[float | None, Key(STILE)] = None
    """Width of the stiles."""
    rail: Annotated[float | None, Key(STILE)] = None
    """Width of the rails, if other than the stiles."""
    groove: Annotated[float | None, Key(GROOVE)] = None
    """Depth of the groove that holds the panel."""
    panel: Annotated[float | None, Key(THIN_BOARD)] = None
    """Thickness of the panel, or of the pane."""
    glass: Annotated[bool, Key()] = False
    """Whether the panel is a pane of glass."""
