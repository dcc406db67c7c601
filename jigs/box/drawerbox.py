"""A drawer box laid out, wherever it runs: behind its front, or as a rollout behind a door.

A rollout has no front of its own and rolls out from behind a door. It runs on slides as a drawer
does; on the side where the door hangs they stand on a spacer, so that the rollout passes the open
door and its hinges.
"""

from msgspec import Struct

from jigs.given.confirming import OpenNumber, StandIn
from jigs.ground.geometry import SLACK, Fitting, Hole, collect_holes
from jigs.ground.problems import Problem


class DrawerShape(Struct, frozen=True, kw_only=True):
    """What every drawer box is; mm."""

    id: str
    box: str
    """The box it runs in."""
    width: float
    """Outside."""
    height: float
    length: float
    side: float
    """Thickness of its sides."""
    x: float
    """Its left end: of a drawer from its front's left edge, of a rollout from its box's."""
    y: float
    """Its underside above its front's bottom edge, or its box's bottom end."""
    code: str
    recess: float = 0.0
    """How far its bottom panel stands up from its underside; 0 where its slides do not ask."""
    notch: tuple[float, float] | None = None
    """Width and height that are cut out of both lower corners of its back; None without."""
    slide: str = ""
    """The record it runs on."""
    slide_length: float = 0.0
    """That slide's nominal length."""
    rear: tuple[Fitting, ...] = ()
    """The holes in its back for the slides' hooks."""
    open: tuple[OpenNumber, ...] = ()
    """The open numbers of its slide that its cuts and holes rest on."""

    @property
    def size(self) -> tuple[float, float, float] | None:
        """Its outside width, height and length, mm; None where nothing is left for one of them, as
        in an opening too low: such a box has no size."""
        sizes = (self.width, self.height, self.length)
        return sizes if min(sizes) > SLACK else None


class DrawerBox(DrawerShape, frozen=True, kw_only=True):
    """A drawer box behind its front, named `<front>-BOX`."""

    front: str
    floor: float = 0.0
    """Its bottom panel's upper face above its underside; mm."""
    fittings: tuple[Fitting, ...] = ()
    """Its clearance holes: x from its left end, y from its underside, from the room."""
    assumed: tuple[StandIn, ...] = ()
    """What is assumed in it."""
    maker_bored: bool = False
    """Whether its maker bored the holes for its front's screws: where they stand is not known."""

    @property
    def holes(self) -> tuple[Hole, ...]:
        """All clearance holes."""
        return collect_holes(self.fittings)

    @property
    def bored(self) -> tuple[Fitting, ...]:
        """All that is drilled into it: its front, then its back."""
        return (*self.fittings, *self.rear)


class Rollout(DrawerShape, frozen=True, kw_only=True):
    """A rollout laid out."""

    wall: str
    column: int
    z: float
    """Its front back from the finished front edge; mm."""
    spacer_left: float
    """What stands under its left slide; mm."""
    spacer_right: float
    """What stands under its right slide; mm."""
    behind: tuple[str, ...] = ()
    """The fronts it stands behind."""
    held: tuple[Problem, ...] = ()
    """The errors that withhold it."""

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


AnyDrawer = DrawerBox | Rollout
"""A drawer box behind a front, or a rollout."""
