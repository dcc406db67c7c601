"""Which pieces of a job are cut: all, or those of a part, a box or a wall; what is left out of
them, and what in them nobody gave.
"""

from collections.abc import Collection
from dataclasses import dataclass

from jigs.box.drawerbox import AnyDrawer
from jigs.box.parts import Layout
from jigs.cutlist.cutlist import Cut
from jigs.cutlist.piece import Piece, Stuff
from jigs.given.job import Job
from jigs.reading.assumed import list_assumed

STAMPED: dict[Stuff, str] = {
    "side": "material.side",
    "back": "material.back",
    "front": "material.front",
    "drawer-side": "material.drawer_side",
}
"""The key of the job that a board's thickness comes from."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PartsList:
    """The chosen pieces of a job; `left_out`: drawer boxes whose fronts are held back; `built`:
    boxes that stand already, whose own pieces are not cut again."""

    layout: Layout
    pieces: tuple[Piece, ...]
    left_out: tuple[str, ...] = ()
    built: tuple[str, ...] = ()

    def list_boxes(self) -> frozenset[str]:
        """List the boxes of which a piece is cut here, be it of a drawer box alone."""
        return frozenset(piece.box for piece in self.pieces if piece.box is not None)

    @property
    def cut_boxes(self) -> frozenset[str]:
        """The boxes that are cut here themselves."""
        return self.list_boxes() - set(self.built)

    def coded(self) -> list[tuple[Piece, str]]:
        """Give each piece with the code on its label: a side's is that of its holes."""
        drilled = {side.board: side.code for side in self.layout.sides}
        return [(piece, drilled.get(piece.id) or piece.code) for piece in self.pieces]


def choose_parts(layout: Layout, cut: Cut, only: Collection[str] | None = None) -> PartsList:
    """Choose the pieces that `only` names: by part, by its front, its box or its wall."""
    built = tuple(dict.fromkeys(p.box for p in cut.pieces if p.box and p.id in cut.standing))
    if only is None:
        return PartsList(layout=layout, pieces=cut.to_cut, left_out=cut.left_out, built=built)
    fronts = {part.id for part in layout.units}
    pieces = tuple(piece for piece in cut.to_cut if _names_of(layout, piece) & set(only))
    named = {
        piece.box
        for piece in cut.pieces
        if piece.id in cut.standing and _names_of(layout, piece) & set(only)
    }
    own = fronts | {front.drawer.id for front in layout.fronts if front.drawer is not None}
    left_out = tuple(name for name in cut.left_out if name in own)
    return PartsList(
        layout=layout,
        pieces=pieces,
        left_out=left_out,
        built=tuple(box for box in built if box in named),
    )


def _names_of(layout: Layout, piece: Piece) -> set[str | None]:
    """Give the names by which a piece is chosen."""
    return {
        _rollout_of(layout, piece),
        piece.id,
        piece.box,
        piece.front,
        f"{piece.front}-BOX",
        piece.wall.upper(),
    }


def _rollout_of(layout: Layout, piece: Piece) -> str | None:
    """Name the rollout whose drawer box a piece belongs to."""
    named = (rollout.id for rollout in layout.rollouts if rollout.box == piece.box)
    return next((name for name in named if piece.id.startswith(f"{name}-")), None)


def drawers_of(parts: PartsList) -> tuple[AnyDrawer, ...]:
    """Give the drawer boxes of which a piece is cut here, rollouts last."""
    layout = parts.layout
    fronts = {piece.front for piece in parts.pieces if piece.front}
    rolling = {_rollout_of(layout, piece) for piece in parts.pieces}
    return (
        *(f.drawer for f in layout.fronts if f.drawer is not None and f.id in fronts),
        *(rollout for rollout in layout.rollouts if rollout.id in rolling),
    )


def assumed_in(piece: Piece, job: Job) -> tuple[str, ...]:
    """Say what of a piece's own board and box nobody gave, in words."""
    keys = [STAMPED[piece.stuff]] if piece.stuff in STAMPED else []
    keys += [f"box.{piece.box}.{key}" for key in ("width", "height", "depth")] if piece.box else []
    return list_assumed(job, keys)
