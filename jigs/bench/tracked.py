"""The parts that are kept track of: whatever has a label, under the ID that stands on it.

Of several alike all have one ID, and go their way together. Of a box that is built already only
what is still to be drilled is a part.
"""

from collections.abc import Sequence

from msgspec import Struct

from jigs.box.drawerbox import AnyDrawer, DrawerBox, Rollout
from jigs.box.parts import Front, Layout, Side
from jigs.cutlist.piece import ASSEMBLED_KINDS, Piece, PieceKind
from jigs.ground.grouped import grouped
from jigs.ground.problems import Problem

DRILLED: tuple[PieceKind, ...] = ("side", "partition")
"""The pieces that are drilled after they are cut."""


class Tracked(Struct, frozen=True, kw_only=True):
    """A part with a label."""

    id: str
    code: str
    """As on its label; "" while it is held back."""
    wall: str
    boxes: tuple[str, ...]
    """The box that it belongs to; of what belongs to a wall those it stands at."""
    front: Front | None = None
    """The front that it is, or that its drawer box stands behind."""
    faces: tuple[Side, ...] = ()
    """Of a box's side its inside, of a partition both faces, as they are drilled."""
    drawer: AnyDrawer | None = None
    """The drawer box that it is."""
    piece: Piece | None = None
    """As it is cut; None for fronts, for drawer boxes as they run, for boards that are not cut."""

    @property
    def count(self) -> int:
        """How many are alike under its ID."""
        return self.piece.count if self.piece is not None else 1

    @property
    def held(self) -> tuple[Problem, ...]:
        """The errors that hold it back."""
        if isinstance(self.drawer, Rollout):
            return self.drawer.held
        return self.front.held if self.front is not None else ()


def track(layout: Layout, pieces: Sequence[Piece]) -> tuple[Tracked, ...]:
    """Give the parts of a job: the fronts, the drawer boxes, the boards; `pieces` is its cut list.

    Drawer boxes stand after their front, rollouts and what a box is built of after its fronts,
    what belongs to a wall last.
    """
    cut = grouped((piece.box, piece) for piece in pieces)
    sides = grouped((side.box, side) for side in layout.sides)
    fronts = grouped((front.box, front) for front in layout.fronts)
    rollouts = grouped((rollout.box, rollout) for rollout in layout.rollouts)
    found: list[Tracked] = []
    for box in layout.boxes:
        for front in fronts.get(box.id, ()):
            found.append(
                Tracked(
                    id=front.id, code="" if front.withheld else front.code, wall=front.wall,
                    boxes=(box.id,), front=front,
                )
            )  # fmt: skip
            if front.drawer is not None:
                found.append(_drawer_box(front, front.drawer))
        for rollout in rollouts.get(box.id, ()):
            found.append(
                Tracked(
                    id=rollout.id, code="" if rollout.held else rollout.code, wall=rollout.wall,
                    boxes=(box.id,), drawer=rollout,
                )
            )  # fmt: skip
        boards = grouped((side.board, side) for side in sides.get(box.id, ()))
        for piece in cut.get(box.id, ()):
            faces = tuple(boards.pop(piece.id, ()))
            if not (box.built and piece.kind in ASSEMBLED_KINDS and piece.kind not in DRILLED):
                found.append(_piece(piece, faces))
        found += [
            Tracked(
                id=board, code=faces[0].code, wall=box.wall, boxes=(box.id,), faces=tuple(faces)
            )
            for board, faces in boards.items()
            if any(face.holes or face.missing for face in faces)
        ]
    return (*found, *(_piece(piece, ()) for piece in cut.get(None, ())))


def _drawer_box(front: Front, drawer: DrawerBox) -> Tracked:
    return Tracked(
        id=drawer.id, code="" if front.withheld else drawer.code, wall=front.wall,
        boxes=(front.box,), front=front, drawer=drawer,
    )  # fmt: skip


def _piece(piece: Piece, faces: tuple[Side, ...]) -> Tracked:
    return Tracked(
        id=piece.id, code=faces[0].code if faces else piece.code, wall=piece.wall,
        boxes=piece.beside if piece.box is None else (piece.box,), faces=faces, piece=piece,
    )  # fmt: skip
