"""The box behind the fronts: what its sides, bottom and top leave for hinges and drawers.

Heights are counted from the side's bottom end. Bottom, top and the stretchers that lie flat at
the top of a base box are of the sides' board. A sink box has no stretchers but a rail on edge at
the front's top, 100 high (common practice, no source).

>>> from jigs.given.job import BoxSpec
>>> golden = BoxSpec(id="B1", kind="base", width=457.2, height=774.7, depth=584.2, above_floor=100)
>>> carcass = Carcass(box=golden, side=18.3, back=6.0)
>>> round(carcass.opening, 4), round(carcass.ceiling, 4), round(carcass.inside_depth, 4)
(420.6, 756.4, 559.2)
"""

from dataclasses import dataclass

from jigs.fittings.slide import inside_depth, opening_width
from jigs.given.job import BoxSpec
from jigs.ground.geometry import SLACK, Hand

SINK_RAIL = 100.0
"""Height of the rail on edge at the front's top of a sink box; mm (common practice)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Bay:
    """What a front stands before: a column of the box, or several side by side.

    `left`, `right`: the inner faces of the boards at both sides, from the box's left edge, mm;
    `boards` their IDs. `shared`: the sides on which the board is a partition.
    """

    first: int
    last: int
    left: float
    right: float
    boards: tuple[str, str]
    shared: tuple[Hand, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Carcass:
    """A box with the true thickness of its sides, its back and its partitions, mm, as one of
    its columns sees it; `bay` None: the box has one column. `shelves`: lower and upper face of
    each fixed shelf in it."""

    box: BoxSpec
    side: float
    back: float
    partition: float = 0.0
    bay: Bay | None = None
    shelves: tuple[tuple[float, float], ...] = ()

    def inner(self, hand: Hand) -> float:
        """Give the inner face of the board on one side, from the box's left edge; mm."""
        if self.bay is not None:
            return self.bay.left if hand == "left" else self.bay.right
        return self.side if hand == "left" else self.box.width - self.side

    @property
    def shared(self) -> tuple[Hand, ...]:
        """The sides on which the board is a partition."""
        return self.bay.shared if self.bay else ()

    @property
    def opening(self) -> float:
        """Width between the boards, mm."""
        if self.bay is not None:
            return self.bay.right - self.bay.left
        return opening_width(self.box.width, self.side)

    @property
    def middle(self) -> float:
        """Middle of the opening, from the box's left edge; mm."""
        return (self.inner("left") + self.inner("right")) / 2

    @property
    def inside_depth(self) -> float:
        """Depth from the finished front edge to the back's face, mm."""
        return inside_depth(self.box.depth, self.back)

    @property
    def floor(self) -> float:
        """Upper face of the bottom panel, above the sides' bottom end; mm."""
        return self.box.legs + self.side

    @property
    def flat_ceiling(self) -> float:
        """Underside of a top or of stretchers lying flat, mm."""
        return self.box.height - self.side

    @property
    def ceiling(self) -> float:
        """Underside of what closes the box at the front's top: top, stretcher or rail; mm."""
        rail = self.box.rail
        if rail is None:
            rail = SINK_RAIL if self.box.kind == "sink" else self.side
        return self.box.height - rail

    @property
    def rail(self) -> tuple[float, float] | None:
        """Lower and upper edge of the rail on edge at the front's top, None without one; mm."""
        upright = self.box.height - self.ceiling > self.side + SLACK
        return (self.ceiling, self.box.height) if upright else None

    @property
    def panels(self) -> tuple[tuple[float, float], ...]:
        """Lower and upper face of each panel and rail that meets the sides at the front; mm."""
        bottom, top = (self.box.legs, self.floor), (self.ceiling, self.box.height)
        return (bottom, *self.shelves, top)

    def board(self, hand: Hand) -> str:
        """Give the ID of the board on one side."""
        if self.bay is not None:
            return self.bay.boards[0 if hand == "left" else 1]
        return name_side(self.box.id, hand)

    @property
    def boards(self) -> tuple[str, str]:
        """The IDs of both sides."""
        return self.board("left"), self.board("right")


def name_partition(box: str, number: int) -> str:
    """Give the ID of a box's partition, counted from the left, 1-based."""
    return f"{box}-PARTITION-{number}"


def name_side(box: str, hand: Hand) -> str:
    """Give the ID of a box's side."""
    return f"{box}-SIDE-{'L' if hand == 'left' else 'R'}"
