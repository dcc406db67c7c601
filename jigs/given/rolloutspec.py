"""Rollouts: drawer boxes without fronts of their own, that roll out from behind a door.

A rollout is named by its box and its place in the job file, `B1-ROLLOUT-1`. It runs on slides as
a drawer does; on the side where the door hangs they stand on a spacer, so that the rollout
passes the open door and its hinges.

>>> name_rollout("B1", 2)
'B1-ROLLOUT-2'
"""

from dataclasses import dataclass
from typing import Annotated

from jigs.given.confirming import OpenNumber
from jigs.ground.believable import DRAWER_HEIGHT, IN_BOX, Range
from jigs.ground.geometry import Fitting
from jigs.ground.keys import Key
from jigs.ground.problems import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class RolloutSpec:
    """A rollout as asked for; mm."""

    at: Annotated[float, Key(IN_BOX)]
    """Its underside above the side's bottom end."""
    height: Annotated[float, Key(DRAWER_HEIGHT)]
    """The height of its box."""
    slide: str | None = None
    """Its slide; None: the job's."""
    column: int = 1
    """Its column, from the left."""
    spacer_left: Annotated[float | None, Key(Range(3, 60, zero=True))] = None
    """The spacer under its left slide; None: as usual."""
    spacer_right: Annotated[float | None, Key(Range(3, 60, zero=True))] = None
    """The spacer under its right slide; None: as usual."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Rollout:
    """A rollout laid out: outside width, height, length and side thickness of its box, mm.

    `x`, `y`, `z`: its lower left front corner in its box, from the room, `z` back from the
    finished front edge. `behind`: the fronts it stands behind. `slide_length`, `recess`, `notch`,
    `rear` as of any drawer box. `held`: the errors that withhold it, in words.
    """

    id: str
    box: str
    wall: str
    column: int
    slide: str
    width: float
    height: float
    length: float
    side: float
    x: float
    y: float
    z: float
    spacer_left: float
    spacer_right: float
    code: str
    behind: tuple[str, ...] = ()
    recess: float = 0.0
    notch: tuple[float, float] | None = None
    slide_length: float = 0.0
    rear: tuple[Fitting, ...] = ()
    held: tuple[Problem, ...] = ()
    open: tuple[OpenNumber, ...] = ()
    """The open numbers of its slide that its cuts and holes rest on."""

    @property
    def withheld(self) -> bool:
        """Whether an error keeps its slides' holes from being drilled."""
        return bool(self.held)

    @property
    def bored(self) -> tuple[Fitting, ...]:
        """All that is drilled into its box; nothing while it is held back."""
        return () if self.held else self.rear

    @property
    def top(self) -> float:
        """Its upper edge above the side's bottom end, mm."""
        return self.y + self.height


def name_rollout(box: str, number: int) -> str:
    """Give the ID of a box's rollout by its place in the job file, 1-based."""
    return f"{box}-ROLLOUT-{number}"
