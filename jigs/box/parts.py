"""The parts of a job, laid out: sizes, places and holes, ready to be printed.

`jigs.layout.layout.lay_out` makes these from a job; the templates draw them and compute nothing
of the trade from them.
"""

from collections.abc import Mapping
from functools import cached_property

from msgspec import Struct

from jigs.box.drawerbox import AnyDrawer, DrawerBox, Rollout
from jigs.fittings.fivepiece import FivePiece
from jigs.fittings.hinge import HingeChoice
from jigs.given.confirming import OpenNumber, StandIn
from jigs.given.edges import BevelledEdge
from jigs.given.job import BandState, BoxKind, BoxSpec, FrontKind, Job, Overlay
from jigs.ground.geometry import Fitting, Hand, Hole, collect_holes
from jigs.ground.grouped import grouped
from jigs.ground.problems import Problem

ALIKE = 0.1
"""Two places this near are the same to a drill; mm."""


class Gaps(Struct, frozen=True, kw_only=True):
    """The gaps about a front, mm: to the neighbour, to the box's outside edge or, inset, to the
    board's inner face."""

    left: float
    right: float
    top: float
    bottom: float


class FrontPlace(Struct, frozen=True, kw_only=True):
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

    def shares_column(self, other: "FrontPlace") -> bool:
        """Tell whether both stand in one column of their box."""
        return self.column <= other.last_column and other.column <= self.last_column


class BoardEnds(Struct, frozen=True, kw_only=True):
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


class FrontMake(Struct, frozen=True, kw_only=True):
    """How a front is made."""

    thickness: float
    """Of its board, of a frame its stiles and rails; mm."""
    frame: FivePiece | None
    """Its stiles, rails and panel; None for a slab."""
    edge_radius: float
    """How its edges are rounded, 0 where they are square; mm."""
    bevel: BevelledEdge | None
    """The edge that is bevelled for the fingers."""
    finish: str
    """As the job words it, "" where it is silent."""
    note: str
    """What the job notes beside it."""


class Screws(Struct, frozen=True, kw_only=True):
    """What holds a front's pull, and the front itself where it is screwed to what stands behind
    it; mm."""

    pull: float | None = None
    """The length that suits its pull; None without one, or where none suits."""
    through_box: bool = False
    """Whether its pull's screws go through the drawer box too."""
    counterbore: float = 0.0
    """How deep the heads of its pull's screws are sunk into the back, 0 where they are not."""
    fixing: float | None = None
    """The length that holds the front itself; None where none does, or none suits."""
    head: float | None = None
    """The widest head of those that passes a drawer's sides; None where a washer head does."""


class LeastReveal(Struct, frozen=True, kw_only=True):
    """The smallest hinge-edge reveal at which a door opens."""

    width: float
    """For its thickness; mm."""
    open: bool
    """Whether nobody has looked it up: it decides a finding, and is not told as a fact."""


class Front(Struct, frozen=True, kw_only=True):
    """A front laid out: a leaf of a pair is a front of kind `door`."""

    id: str
    box: str
    wall: str
    """The wall its box stands at."""
    box_kind: BoxKind
    kind: FrontKind
    hinged: Hand | None
    """The edge it hangs by; None where it does not, or nobody said."""
    width: float
    """As it is in hand; mm."""
    height: float
    """As it is in hand; mm."""
    place: FrontPlace
    gaps: Gaps
    make: FrontMake
    screws: Screws
    code: str
    """Tells its holes from others'."""
    bored: bool = False
    """Whether it came with its hinges' holes."""
    ordered: tuple[float, float] | None = None
    """Width and height as ordered, where those of the front are measured; mm."""
    refused: tuple[float, float] | None = None
    """Width and height as measured of one that is not taken: its own are those of the order; mm."""
    hinge: HingeChoice | None = None
    least_reveal: LeastReveal | None = None
    """None where only the leaflet knows it."""
    drawer: DrawerBox | None = None
    """The drawer box behind it."""
    pull: str | None = None
    """The record of its pull; None without one."""
    restrictor: bool = False
    """Whether it opens to less than 90 degrees."""
    fittings: tuple[Fitting, ...] = ()
    """What is drilled into it; nothing while it is held."""
    held: tuple[Problem, ...] = ()
    """The errors that withhold it."""
    assumed: tuple[StandIn, ...] = ()
    """What is assumed of it."""
    open: tuple[OpenNumber, ...] = ()
    """The open numbers that its holes rest on."""

    @property
    def withheld(self) -> bool:
        """Whether an error keeps this front's sheets from being made."""
        return bool(self.held)

    @property
    def swings(self) -> bool:
        """Whether it hangs by an upright edge."""
        return self.kind == "door" and self.hinged is not None

    @property
    def reversible(self) -> bool:
        """Whether, turned half round, it has its holes on the same places, within 0.1.

        A door turned half round hangs by its other edge: its cups need only mirror top to bottom,
        and the pull, drilled when the hand is known, does not count.
        """
        door = self.kind == "door"
        holes = [hole for hole in self.holes if not door or hole.face == "back"]

        def matched(hole: Hole) -> bool:
            x, y = hole.x if door else self.width - hole.x, self.height - hole.y
            return any(
                abs(other.y - y) <= ALIKE
                and abs(other.x - x) <= ALIKE
                and other.diameter == hole.diameter
                for other in holes
            )

        return bool(holes) and all(map(matched, holes))

    @property
    def wide_below(self) -> bool:
        """Whether the back shows wider below its drawer box than above, by what an eye can tell:
        3 mm (common practice, no source)."""
        if self.drawer is None:
            return False
        above = self.height - self.drawer.y - self.drawer.height
        return self.drawer.y >= above + 3.0

    @property
    def holes(self) -> tuple[Hole, ...]:
        """All holes of the front, both faces."""
        return collect_holes(self.fittings)


class Side(Struct, frozen=True, kw_only=True):
    """A drilled face of a box side or of a partition, which has two.

    x back from the finished front edge, y up from the board's bottom end.
    """

    box: str
    wall: str
    """The wall its box stands at."""
    box_kind: BoxKind
    column: int
    """The column it is towards; from 1 at the left."""
    side: Hand
    """On which side of that column it stands."""
    board: str
    """The ID of its board (`B1-SIDE-L`)."""
    height: float
    """Of its board; mm."""
    depth: float
    """Of its board, with the band on its front edge; mm."""
    thickness: float
    """Of its board, true; mm."""
    band: float
    """The thickness of the band on its front edge; mm."""
    bottom: float
    """The bottom panel's upper face above the bottom end, where a box already assembled is
    measured from; mm."""
    code: str
    """Tells the holes of its board from others'."""
    x: float = 0.0
    """The board's left face from the box's left edge; mm."""
    ends: BoardEnds = LEVEL
    partition: int = 0
    """The partition's number from the left, 0 for a side of the box."""
    fittings: tuple[Fitting, ...] = ()
    """What is drilled into it."""
    assembled: bool = False
    """Whether its box is together already."""
    band_state: BandState | None = None
    """Whether the band is on, or comes later; None where nobody said."""
    legs: float = 0.0
    """How far the bottom panel's underside stands above a side's end, where the sides run to the
    floor; mm."""
    shelves: tuple[float, ...] = ()
    """The upper faces of the fixed shelves that meet it, above its bottom end, from below; mm."""
    missing: tuple[str, ...] = ()
    """The held fronts and rollouts whose holes are left out of it."""
    trial_of: tuple[str, ...] = ()
    """The fronts that are tried on scrap, where it carries their holes alone."""
    assumed: tuple[StandIn, ...] = ()
    """What is assumed of it."""
    open: tuple[OpenNumber, ...] = ()
    """The open numbers that its holes, or what is mounted in them, rest on."""

    @property
    def holes(self) -> tuple[Hole, ...]:
        """All holes in this face."""
        return collect_holes(self.fittings)


class Layout(Struct, frozen=True, kw_only=True, dict=True):
    """A job laid out: its boxes in the job's order, their fronts and sides, and the findings.

    Openings have no front here. `echo` says in one line what was understood.
    """

    job: Job
    boxes: tuple[BoxSpec, ...]
    fronts: tuple[Front, ...]
    sides: tuple[Side, ...]
    problems: tuple[Problem, ...]
    echo: str = ""
    rollouts: tuple[Rollout, ...] = ()
    hinges: frozenset[str] = frozenset()
    """The hinges that its doors hang on, those too of doors left out where a part of it is asked
    for."""

    @cached_property
    def front_of(self) -> Mapping[str, Front]:
        """Its fronts by their IDs."""
        return {front.id: front for front in self.fronts}

    @cached_property
    def box_of(self) -> Mapping[str, BoxSpec]:
        """The boxes of its job by their IDs, those too that are left out where a part of it is
        asked for."""
        return {box.id: box for box in self.job.boxes}

    @cached_property
    def in_columns(self) -> frozenset[str]:
        """The boxes that have several columns."""
        return frozenset(side.box for side in self.sides if side.column > 1)

    @cached_property
    def sides_of(self) -> Mapping[tuple[str, int], list[Side]]:
        """The drilled faces towards each column, by box and column."""
        return grouped(((side.box, side.column), side) for side in self.sides)

    @property
    def drawers(self) -> tuple[AnyDrawer, ...]:
        """All drawer boxes: those behind fronts, then the rollouts."""
        behind = (front.drawer for front in self.fronts if front.drawer is not None)
        return (*behind, *self.rollouts)

    @property
    def units(self) -> tuple[Front | Rollout, ...]:
        """All that may be held back by itself: the fronts, then the rollouts."""
        return (*self.fronts, *self.rollouts)

    @property
    def has_held(self) -> bool:
        """Whether any of them is held back."""
        return any(part.withheld for part in self.units)
