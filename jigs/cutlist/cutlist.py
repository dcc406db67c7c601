"""The whole cut list of a job: box by box with its drawer boxes, then what belongs to the walls;
and the pieces of it that are chosen: all, or those of a part, a box or a wall.

A front that is held back has no drawer box here: what holds it may change the drawer's size.
A box that is built already has its pieces listed, for their labels, but they are not cut again;
its drawer boxes are, for the width that the job says; what does not fit the box as measured is
held back.
"""

from collections.abc import Collection, Iterable

from msgspec import Struct

from jigs.box.columns import place_columns
from jigs.box.drawerbox import AnyDrawer, Rollout
from jigs.box.parts import Layout, Side
from jigs.cutlist.boxes import BoxPieces, cut_box
from jigs.cutlist.drawers import behind_front, cut_drawer, cut_spacers
from jigs.cutlist.joints import Unclear
from jigs.cutlist.piece import Piece, Stuff
from jigs.cutlist.toe import toe_pieces
from jigs.cutlist.trimmings import trim_boxes, wall_fillers, wall_tags
from jigs.ground.geometry import SLACK
from jigs.ground.grouped import grouped

LEAST_PIECE = 1.0
"""A piece that comes out no longer or wider than this is none; mm."""


class Cut(Struct, frozen=True, kw_only=True):
    """The cut list, and what is doubtful about it: screws without a clear place, and pieces for
    which there is no room, by box; boxes whose nailers stand inside; drawer boxes left out.
    `standing`: the pieces of boxes that are built already."""

    pieces: tuple[Piece, ...]
    unclear: tuple[tuple[str, Unclear], ...] = ()
    no_room: tuple[tuple[str, str], ...] = ()
    nailers_inside: tuple[str, ...] = ()
    left_out: tuple[str, ...] = ()
    standing: frozenset[str] = frozenset()

    @property
    def to_cut(self) -> tuple[Piece, ...]:
        """The pieces that are still to be cut."""
        return tuple(piece for piece in self.pieces if piece.id not in self.standing)


def _line_of(rollout: Rollout, sides: Iterable[Side]) -> float:
    """Give the height of a rollout's slide holes above the side's bottom end, mm."""
    return next(
        (
            fitting.holes[0].y
            for side in sides
            for fitting in side.fittings
            if fitting.part == rollout.id and fitting.kind == "slide"
        ),
        rollout.y,
    )


def cut_list(layout: Layout) -> tuple[Piece, ...]:
    """Give every piece of a job, in the job's order of boxes."""
    return cut_job(layout).pieces


def cut_job(layout: Layout) -> Cut:
    """Cut a whole job into its pieces."""
    job = layout.job
    sides = grouped((side.box, side) for side in layout.sides)
    fronts = grouped((front.box, front) for front in layout.fronts)
    rollouts = grouped((rollout.box, rollout) for rollout in layout.rollouts)
    made = job.build.drawer_boxes != "ordered"
    pieces: list[Piece] = []
    unclear: list[tuple[str, Unclear]] = []
    inside: list[str] = []
    left_out: list[str] = []
    standing: set[str] = set()
    for box in layout.boxes:
        cut: BoxPieces = cut_box(job, box, sides.get(box.id, ()))
        pieces += cut.pieces
        if box.built:
            standing |= {piece.id for piece in cut.pieces}
        else:
            unclear += [(box.id, screw) for screw in cut.unclear]
            inside += [box.id] if cut.nailers_inside else []
        for front in fronts.get(box.id, ()) if made else ():
            if front.drawer is None:
                continue
            if front.withheld:
                left_out.append(front.drawer.id)
                continue
            corner, rows = behind_front(front, front.drawer)
            drawer, more = cut_drawer(job.build, front.drawer, front.wall, corner, front.id, rows)
            pieces += drawer
            unclear += [(box.id, screw) for screw in more]
        for rollout in rollouts.get(box.id, ()):
            if rollout.withheld:
                left_out += [rollout.id] if made else []
                continue
            carcass = place_columns(job, box).carcasses[rollout.column - 1]
            pieces += cut_spacers(rollout, carcass, _line_of(rollout, sides.get(box.id, ())))
            if not made:
                continue
            corner = (rollout.x, rollout.y, rollout.z)
            drawer, more = cut_drawer(job.build, rollout, rollout.wall, corner)
            pieces += drawer
            unclear += [(box.id, screw) for screw in more]
    taken = {*(box.id for box in layout.boxes), *(front.id for front in layout.fronts)}
    given = {wall.name: wall.id for wall in job.walls if wall.id}
    tags = wall_tags((box.wall for box in layout.boxes), taken, given)
    pieces += toe_pieces(job, tags)
    pieces += trim_boxes(job, tags)
    pieces += wall_fillers(job, tags)
    good = tuple(piece for piece in pieces if min(piece.length, piece.width) > LEAST_PIECE + SLACK)
    kept = {piece.id for piece in good} | standing
    return Cut(
        pieces=good,
        unclear=tuple(unclear),
        no_room=tuple((p.box or p.wall, p.id) for p in pieces if p.id not in kept),
        nailers_inside=tuple(inside),
        left_out=tuple(left_out),
        standing=frozenset(standing),
    )


STAMPED: dict[Stuff, str] = {
    "side": "material.side",
    "back": "material.back",
    "front": "material.front",
    "drawer-side": "material.drawer_side",
}
"""The key of the job that a board's thickness comes from."""


class PartsList(Struct, frozen=True, kw_only=True):
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
