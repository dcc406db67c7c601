"""Gaps as they are once the fronts hang, as a person's list has them."""

from collections.abc import Sequence
from dataclasses import dataclass

from jigs.ground.errors import Fault


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasuredGap:
    """One row: what of it names the gap ("" where it says nothing), and its width at one end or at
    both; mm."""

    where: str
    """Where the row stands, with its file for a fault."""
    front: str
    beside: str = ""
    other: str = ""
    axis: str = ""
    edge: str = ""
    """The edge of `front` at the gap."""
    first: float
    """Of an upright gap at its top, of a level one at its left."""
    second: float | None = None
    """Of an upright gap at its bottom, of a level one at its right; None where it was measured in
    one place alone."""

    def words(self) -> str:
        """Give how the row names its gap, for a fault."""
        said = (self.front, self.beside, self.other, self.axis, self.edge)
        return " ".join(filter(None, said))


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasuredGaps:
    """A whole list, and what is wrong in it."""

    rows: tuple[MeasuredGap, ...] = ()
    faults: Sequence[Fault] = ()
