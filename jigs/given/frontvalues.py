"""What a front states of its own: its gaps, its frame where it is a five-piece front, how it hangs,
how it is bored for that, and what it is opened by."""

from dataclasses import dataclass
from typing import Annotated

from jigs.ground.keys import Key
from jigs.ground.ranges import GROOVE, STILE, TAB, THIN_BOARD


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


@dataclass(frozen=True, slots=True, kw_only=True)
class Boring:
    """Where a front's cups are bored, as far as that is stated."""

    bored: Annotated[bool, Key()] = False
    """Whether the supplier has bored its cups."""
    bored_tab: Annotated[float | None, Key(TAB)] = None
    """From the hinge edge to the rim of a cup that the supplier has bored."""
    tab: Annotated[float | None, Key(TAB)] = None
    """From the hinge edge to the rim of a cup."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Hung:
    """How a front hangs: on which hinges, at which heights, how far it opens."""

    hinge: str | None = None
    """The name of its hinge."""
    other_hinges: tuple[str, ...] = ()
    """Hinges of other kinds: one leaf of a pair may hang on a side, the other on a partition."""
    hinges_at: tuple[float, ...] | None = None
    """The cup centres above its own bottom edge, mm."""
    restrictor: bool = False
    """Whether it is kept from opening to 90 degrees."""

    @property
    def hinge_names(self) -> tuple[str, ...]:
        """The names of all hinges, one for each way that a door hangs."""
        return () if self.hinge is None else (self.hinge, *self.other_hinges)


@dataclass(frozen=True, slots=True, kw_only=True)
class OpenedBy:
    """What a front is opened by, and which front's pull its own is in line with."""

    pull: str | None = None
    """The name of its pull, or `none`."""
    pull_over: str | None = None
    """The front whose pull it takes the place along the wall from."""
    pull_level: str | None = None
    """The front whose pull it takes the height from."""
    push_latch: Annotated[bool, Key()] = False
    """Whether it is pushed to open, and has no pull."""
