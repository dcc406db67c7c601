"""A part as it lies on the bench: one drilled face of it, its size and fittings as seen; and where
a drawer box stands on its front, which is marked through it.

The back of a front is turned over here, and a box side lies inside up with its top end away: x to
the right, y up, from the lower left corner of the face as seen, mm.

A drawer box is bored first and clamped on its front, or pressed on it in its opening; its own bit,
turned by hand in its holes, marks the front. The two patterns then meet by construction.
"""

from collections.abc import Iterable
from typing import Literal

from msgspec import Struct
from msgspec.structs import replace

from jigs.box.drawerbox import AnyDrawer, DrawerBox
from jigs.box.parts import Front, Side
from jigs.fittings.fixing import CLEAR_OF_PULL
from jigs.given.confirming import OpenNumber, resting
from jigs.given.edges import BevelledEdge
from jigs.ground.geometry import SLACK, Face, Fitting, Hand, Hole, mirror_x, turned_over


class Board(Struct, frozen=True, kw_only=True):
    """What is known of a face of a box side or of a partition besides its size."""

    side: Hand
    """The side of its column on which it stands; its front edge is on the same side as seen."""
    column: int
    partition: int
    """Its number, 0 for a side."""
    assembled: bool
    """Whether its box is together, so that heights count from the bottom panel."""
    panel: float
    """The bottom panel's upper face above the board's own end, mm; 0 for a partition."""
    base: float
    """How far a partition's end stands above the sides', mm: an offcut lies there."""
    legs: float
    """How far the bottom panel's underside stands above the side's end where it runs to the floor:
    no card folds over that end; mm."""
    band: float
    """Edge band that is still to come on its front edge, mm; 0: none."""
    raw: bool
    """Whether the front edge is bare now, and cards fold over it without its band."""
    missing: tuple[str, ...]
    """The fronts and rollouts held back whose holes are to come."""


class BenchPart(Struct, frozen=True, kw_only=True):
    """One drilled face of a part, as seen."""

    id: str
    """As on its label: a front's, a board's, a drawer box's."""
    code: str
    box: str
    face: Face
    width: float
    """Of the face as seen: of a board its depth; mm."""
    height: float
    thickness: float
    """mm, what a stop leaves something of."""
    ordered: tuple[float, float] | None = None
    """Width and height as ordered, mm, where those above are measured or delivered ones."""
    rounded: bool = False
    """Whether its edges are rounded, so that cards are butted and not folded."""
    bevel: BevelledEdge | None = None
    """The edge that is bevelled and no reference."""
    board: Board | None = None
    open: tuple[OpenNumber, ...] = ()
    """The open numbers that the holes in this face rest on."""

    @property
    def by(self) -> Literal["fold", "butt"]:
        """How cards lie on its edges."""
        return "butt" if self.rounded else "fold"


def front_face(front: Front, face: Literal["front", "back"]) -> BenchPart:
    """Give a face of a front, one that is not taken in the size in which it has come."""
    width, height = front.refused or (front.width, front.height)
    return BenchPart(
        id=front.id,
        code=front.code,
        box=front.box,
        face=face,
        width=width,
        height=height,
        thickness=front.make.thickness,
        ordered=front.ordered,
        rounded=front.make.edge_radius > 0.0,
        bevel=front.make.bevel,
        open=resting(front.open, face),
    )


def board_face(side: Side) -> BenchPart:
    """Give a drilled face of a box side or of a partition."""
    band = 0.0 if side.band_state == "on" else side.band
    return BenchPart(
        id=side.board,
        code=side.code,
        box=side.box,
        face="inside",
        width=side.depth,
        height=side.height,
        thickness=side.thickness,
        board=Board(
            side=side.side,
            column=side.column,
            partition=side.partition,
            assembled=side.assembled,
            panel=side.bottom,
            base=side.ends.base,
            legs=side.legs,
            band=band,
            raw=side.band_state == "later" and band > 0.0,
            missing=side.missing,
        ),
        open=resting(side.open, "inside"),
    )


def drawer_face(box: AnyDrawer, face: Literal["box-front", "box-back"]) -> BenchPart:
    """Give the outer face of a drawer box's front or back."""
    return BenchPart(
        id=box.id,
        code=box.code,
        box=box.box,
        face=face,
        width=box.width,
        height=box.height,
        thickness=box.side,
        open=resting(box.open, face),
    )


def as_seen(part: BenchPart, fittings: Iterable[Fitting]) -> tuple[Fitting, ...]:
    """Give the fittings of a part that are drilled from this face, or those of their holes that
    are, as the driller sees them."""
    return tuple(
        turned_over(kept, part.width) if _is_turned(part) else kept
        for fitting in fittings
        if (kept := _on_face(fitting, part.face)).holes
    )


def _is_turned(part: BenchPart) -> bool:
    """Tell whether a face is seen from the other side than its axes are stated from."""
    if part.board is not None:
        return part.board.side == "right"
    return part.face in ("back", "box-back")


def _on_face(fitting: Fitting, face: Face) -> Fitting:
    holes = tuple(hole for hole in fitting.holes if hole.face == face)
    return fitting if len(holes) == len(fitting.holes) else replace(fitting, holes=holes)


MARKED_WITHIN = 0.05
"""A hole in the front is marked through one in its box that lies this near; mm."""


class Marks(Struct, frozen=True, kw_only=True):
    """Where a drawer box stands on the back of its front, as seen from the back, mm: in from the
    left end, in from the right end, up from the bottom edge. Through its holes the front is
    marked: x = `in_left` + `width` - the hole's x in the box, y = `up` + its y there."""

    box: str
    in_left: float
    in_right: float
    up: float
    width: float
    """The drawer box's outside width."""
    clear_of_pull: float | None = None
    """What its holes keep from the pull's screws, where its maker bored them: to be measured."""
    maker_bored: bool = False
    """Whether its maker bored it: where its holes stand is not known."""

    @property
    def corners(self) -> tuple[tuple[float, float], tuple[float, float]]:
        """Its left and its right lower corner, as seen from the back; mm."""
        return (self.in_left, self.up), (self.in_left + self.width, self.up)


def marks_of(front: Front, *, pilots: bool = False) -> Marks | None:
    """Say where a drawer box stands on its front; None where nothing is marked through it, neither
    through the holes of this job nor through its maker's own. With `pilots` the former stand on
    the front themselves."""
    box = front.drawer
    if box is None or front.withheld or not _stands_on(front, box):
        return None
    if not box.maker_bored and (pilots or not marked_holes(front)):
        return None
    pulled = any(hole.purpose == "pull" for hole in front.holes)
    return Marks(
        box=box.id,
        in_left=mirror_x(box.x + box.width, front.width),
        in_right=box.x,
        up=box.y,
        width=box.width,
        clear_of_pull=CLEAR_OF_PULL if box.maker_bored and pulled else None,
        maker_bored=box.maker_bored,
    )


def marked_holes(front: Front) -> tuple[Hole, ...]:
    """Give the holes of a front that are marked through the clearance holes of its drawer box: all
    its fixing holes that have one behind them, where the box stands on the front."""
    box = front.drawer
    if box is None or not _stands_on(front, box):
        return ()
    behind = [(box.x + hole.x, box.y + hole.y) for hole in box.holes]
    return tuple(
        hole
        for hole in front.holes
        if hole.purpose == "front-fixing"
        and any(
            abs(hole.x - x) <= MARKED_WITHIN and abs(hole.y - y) <= MARKED_WITHIN for x, y in behind
        )
    )


def _stands_on(front: Front, box: DrawerBox) -> bool:
    """Tell whether the lower corners of a drawer box lie on its front, so that paper can place
    it there."""
    right = front.width - box.x - box.width
    return min(box.x, right, box.y) >= -SLACK
