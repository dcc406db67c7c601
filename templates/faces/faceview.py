"""A drilled face of a part as a value, without a word: `templates.words.facewords` has those."""

from msgspec import Struct

from jigs.bench.benchpart import Marks
from jigs.box.parts import LEVEL, BoardEnds
from jigs.given.confirming import OpenNumber
from jigs.given.job import FrontKind
from jigs.ground.geometry import Face, FaceEdge, Fitting, Hand, Polygon


class BoardState(Struct, frozen=True, kw_only=True):
    """How far a box's side or partition is made when it is drilled, and what its heights and depths
    are counted from for that; mm."""

    panel: float | None = None
    """The bottom panel's upper face above the bottom end, of a side that is still loose."""
    stand: bool = False
    """The box is together, and the cut paper stands on the panel below the face."""
    low: float = 0.0
    """The upper face of that panel, where heights are counted from it."""
    band: float = 0.0
    """Edge band that is still to come on the front edge, or may be."""
    raw: bool = False
    """The band comes later: x is counted from the front edge unbanded."""


MADE = BoardState()
"""A board whose figures are counted from its own edges, and every face that is no box's board's."""


class FaceView(Struct, frozen=True, kw_only=True):
    """One face of one part as the driller sees it; mm, origin at its lower left corner.

    `kind`: what front it is a face of, None for boards and drawer boxes. `hinge_edge`: which of
    its edges carries the hinges, `front_edge` which is a box side's front. `ladder`: whether the
    part may have arrived a little taller or shorter.
    `rounded`: its edges are, so that no paper is folded over them; `bevel`: the edge that is
    bevelled and no reference.
    `opening`: the inner edges of a five-piece front's stiles and rails, () for a slab.
    `column`, `side`: the column that a board's face is towards, and on which side of it the board
    stands, as in the list of holes; None for all else. `partition`: its number, 0 for no
    partition. `on_legs`: the box's sides run to the floor.
    """

    part: str
    code: str
    face: Face
    width: float
    height: float
    thickness: float
    fittings: tuple[Fitting, ...]
    kind: FrontKind | None = None
    hinge_edge: FaceEdge | None = None
    front_edge: FaceEdge | None = None
    ladder: bool = False
    reversible: bool | None = None
    state: BoardState = MADE
    """How far a box's board is made when it is drilled."""
    column: int | None = None
    side: Hand | None = None
    partition: int = 0
    ends: BoardEnds = LEVEL
    on_legs: bool = False
    drawer_outline: tuple[tuple[float, float], ...] = ()
    marks: Marks | None = None
    """Of a drawer front's back, and of its drawer box's front: how the box stands on the front that
    is marked through it. None: nothing is."""
    opening: Polygon = ()
    rounded: bool = False
    bevel: FaceEdge | None = None
    step: float = 10.0
    open: tuple[OpenNumber, ...] = ()
    """The open numbers that decide its holes, or what is mounted there."""

    @property
    def key(self) -> tuple[Face, Hand | None]:
        """What tells a face from the others of its part."""
        return self.face, self.side

    @property
    def datums(self) -> dict[FaceEdge, float]:
        """The edges that distances are not counted from themselves, and how far in the line lies
        that they are counted from: a bottom panel's face, an edge without its band; mm."""
        found: dict[FaceEdge, float] = {}
        if self.state.low > 0.0:
            found["bottom"] = self.state.low
        if self.state.raw and self.front_edge is not None:
            found[self.front_edge] = self.state.band
        return found

    def from_top(self, fitting: Fitting) -> bool:
        """Whether the heights of a fitting count down from the top end: of holes by hand that were
        stated so, where that end is a reference and the box is not together yet."""
        return fitting.stated_from == "top" and self.bevel != "top" and not self.state.stand
