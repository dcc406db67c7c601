"""Where a front stands in its box, the gaps it leaves to what is beside it, and how the ends of
an upright board stand against those of the others."""

from dataclasses import dataclass

from jigs.given.job import Overlay


@dataclass(frozen=True, slots=True, kw_only=True)
class Gaps:
    """The gaps about a front, mm: to the neighbour, to the box's outside edge or, inset, to the
    board's inner face."""

    left: float
    right: float
    top: float
    bottom: float


@dataclass(frozen=True, slots=True, kw_only=True)
class FrontPlace:
    """Where a front stands in its box, as seen from the room."""

    x: float
    """Its left edge from the box's left edge; mm."""
    y: float
    """Its bottom edge above the box's bottom end; mm."""
    row: int
    """Its row, counted from the top, from 1; the leaves of a pair share one."""
    rows: int
    """How many rows stand before its columns."""
    column: int
    """The column it stands in, the first of several; from 1 at the left."""
    span: int
    """How many columns it stands before."""
    overlay: Overlay
    """Whether it lies on the box's edges or within them."""

    @property
    def last_column(self) -> int:
        """The last column it stands in."""
        return self.column + self.span - 1


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardEnds:
    """How the ends of a side or partition stand against those of the boards beside it; mm."""

    base: float = 0.0
    """How far its bottom end stands above the sides'."""
    below: float = 0.0
    """How far its top end stands below theirs."""
    across: int = 0
    """The partition on the other side of the column, 0 for a side of the box."""
    raised: float = 0.0
    """How far that board's bottom end stands above its own."""


LEVEL = BoardEnds()
"""Those of a side between sides."""
