"""A part as it lies on the bench: one drilled face of it, its size and fittings as seen.

The back of a front is turned over here, and a box side lies inside up with its top end away: x to
the right, y up, from the lower left corner of the face as seen, mm.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Literal

from jigs.box.drawerbox import AnyDrawer
from jigs.box.parts import Front, Side
from jigs.given.confirming import OpenNumber, resting
from jigs.given.edges import BevelledEdge
from jigs.ground.geometry import Face, Fitting, Hand, turned_over


@dataclass(frozen=True, slots=True, kw_only=True)
class Board:
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


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchPart:
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
