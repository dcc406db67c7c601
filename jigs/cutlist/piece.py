"""A piece of board to be cut: its size on the saw, its finished size, and its place in the box.

The cut size is the finished size less the edge band that comes onto it. Length runs along the
grain, or the longer way where the grain does not matter.

>>> side = Piece(
...     id="B1-SIDE-L", kind="side", box="B1", length=774.7, width=583.6, thickness=18.3,
...     band=EdgeBand(edges=("front",), thickness=0.6, length=774.7), grain="length",
... )
>>> side.finished_length, side.finished_width
(774.7, 584.2)
"""

from typing import Literal

from msgspec import Struct

from jigs.ground.codes import figures_code
from jigs.ground.geometry import SLACK

PieceKind = Literal[
    "side", "bottom", "top", "stretcher", "rail", "back", "nailer", "shelf", "fixed-shelf",
    "partition", "blind-panel", "drawer-side", "drawer-front", "drawer-back", "drawer-bottom",
    "spacer",
    "toe-front", "toe-back", "sleeper", "filler", "end-panel", "island-back",
]  # fmt: skip
"""What a piece is; `shelf` is adjustable, `drawer-front` the drawer box's own, `rail` on edge,
`spacer` what a rollout's slide stands on,
`blind-panel` what closes the covered end of a corner box."""

DRAWER_KINDS: tuple[PieceKind, ...] = (
    "drawer-side", "drawer-front", "drawer-back", "drawer-bottom",
)  # fmt: skip
"""The pieces of a drawer box."""

ASSEMBLED_KINDS: tuple[PieceKind, ...] = (
    "side", "bottom", "partition", "fixed-shelf", "rail", "stretcher", "top", "blind-panel", "back",
    "nailer", "shelf",
)  # fmt: skip
"""The pieces of a box as it is put together (common practice, no source)."""

Stuff = Literal["side", "partition", "back", "front", "drawer-side", "drawer-bottom", "spacer"]
"""The board that a piece is cut from, as the job states its thickness."""

Edge = Literal["front", "rear", "left", "right", "top", "bottom"]
GrainAlong = Literal["length", "width"]
FRONT: tuple[Edge, ...] = ("front",)
"""The band of most pieces."""


class Block(Struct, frozen=True, kw_only=True):
    """The room a piece fills, finished: lower corner and size. In a box x from its left edge,
    y from its sides' bottom end, z back from the finished front edge. On a wall x along it, y up
    from the line that the boxes' heights count from, z as in a box; mm."""

    x: float
    y: float
    z: float
    dx: float
    dy: float
    dz: float

    def shared(self, other: "Block") -> "Block | None":
        """Give the room that both fill, None where they only touch or stand apart."""
        x, y, z = max(self.x, other.x), max(self.y, other.y), max(self.z, other.z)
        dx = min(self.x + self.dx, other.x + other.dx) - x
        dy = min(self.y + self.dy, other.y + other.dy) - y
        dz = min(self.z + self.dz, other.z + other.dz) - z
        if min(dx, dy, dz) <= SLACK:
            return None
        return Block(x=x, y=y, z=z, dx=dx, dy=dy, dz=dz)


class EdgeBand(Struct, frozen=True, kw_only=True):
    """The edge band of a piece: the edges it comes on, as the piece stands in the kitchen, its
    thickness, and the length of those edges together; mm."""

    edges: tuple[Edge, ...]
    thickness: float
    length: float


def band_for(thickness: float, length: float, edges: tuple[Edge, ...] = FRONT) -> EdgeBand | None:
    """Give a piece's edge band; None for a thickness of 0. mm."""
    return EdgeBand(edges=edges, thickness=thickness, length=length) if thickness else None


class Groove(Struct, frozen=True, kw_only=True):
    """A groove in a piece: its far edge's distance from the finished front edge (or, in a
    drawer's side, its lower edge's from the underside), its width and depth; mm."""

    at: float
    width: float
    depth: float


NoteKind = Literal[
    "upper-face", "nothing-on-it", "blind", "notch", "slide-notches", "hook-bores", "under-slide",
    "under", "runs-on", "shim", "beside", "behind", "covered", "edge-seen", "flush",
    "spare-width", "spare-depth", "scribe-foot",
]  # fmt: skip
"""`upper-face`: how high a fixed shelf's is above the sides' bottom end; `notch`: width and depth
for each piece that passes through it; `slide-notches`: width and height of both, `hook-bores`:
and that it is bored for hooks; `under-slide`: of which rollout, at which `hand`; `under`, `beside`,
`behind`: which boxes; `runs-on`: how far, under the filler at which `hand`; `shim`: the floor is
not level; `spare-width`, `spare-depth`: how much of it is to scribe; `scribe-foot`: how much comes
off its lower end."""


class PieceNote(Struct, frozen=True, kw_only=True):
    """What is to be said of a piece: the pieces, boxes or rollouts that it names, its figures in
    mm, the side that it is about."""

    kind: NoteKind
    names: tuple[str, ...] = ()
    figures: tuple[float, ...] = ()
    hand: Literal["left", "right"] | None = None


class Piece(Struct, frozen=True, kw_only=True):
    """One piece to be cut, or `count` alike; mm.

    `box` None for what belongs to a wall. `length`, `width`: as cut; `thickness` true. `band`
    comes on edges along its length, None on none of them. `grain` None: it does not matter.
    `pockets`: distances, from the finished front edge (of what stands on edge across a box, from
    the lower edge), of the pocket screws at each of its ends; of a side, of those that are driven
    into it, joint by joint from the bottom up. `pockets_top`: those at its upper end, where they
    differ. `blocks`: where it stands, one for each of `count`; none where it is not fixed in a
    box. `spread`: where a shelf that can be moved is shown, evenly over its column. `on_wall`:
    where what belongs to a wall stands along it. `cutouts`: what is notched out of it. `front`:
    the front it serves, where one. `beside`: of what belongs to a wall, the boxes that it stands
    under, beside or behind. `hand`: the end of a run, or side of a box, that it closes. `scribe`:
    the edge at which `spare` of its size is there to be scribed. `over`: what is scribed off its
    lower end where the floor is highest. `notes`: what is to be said of it.
    """

    id: str
    kind: PieceKind
    box: str | None
    length: float
    width: float
    thickness: float
    stuff: Stuff = "side"
    wall: str = ""
    count: int = 1
    band: EdgeBand | None = None
    grain: GrainAlong | None = None
    pockets: tuple[float, ...] = ()
    pockets_top: tuple[float, ...] | None = None
    groove: Groove | None = None
    blocks: tuple[Block, ...] = ()
    spread: tuple[Block, ...] = ()
    on_wall: tuple[Block, ...] = ()
    cutouts: tuple[Block, ...] = ()
    front: str | None = None
    beside: tuple[str, ...] = ()
    hand: Literal["left", "right"] | None = None
    scribe: Edge | None = None
    spare: float = 0.0
    over: float = 0.0
    notes: tuple[PieceNote, ...] = ()

    @property
    def scribed(self) -> bool:
        """Whether it is scribed to a wall or to the floor."""
        return self.scribe is not None or self.over > 0.0

    @property
    def banded(self) -> tuple[Edge, ...]:
        """Its banded edges, as it stands in the kitchen."""
        return self.band.edges if self.band else ()

    @property
    def code(self) -> str:
        """The code on its label: another one where it is cut, banded, screwed or grooved to other
        figures. A box side's label carries that of its holes."""
        groove, band = self.groove, self.band
        banding = (band.length, band.thickness) if band else (0.0, 0.0)
        return figures_code(
            (self.length, self.width, self.thickness, *banding),
            self.pockets,
            self.pockets_top or (),
            (groove.at, groove.width, groove.depth) if groove else (),
            *((cut.dx, cut.dy, cut.dz) for cut in self.cutouts),
        )

    @property
    def finished_length(self) -> float:
        """Length with its band, which lies on no end; mm."""
        return self.length

    @property
    def finished_width(self) -> float:
        """Width with its band, mm."""
        added = len(self.band.edges) * self.band.thickness if self.band else 0.0
        return self.width + added
