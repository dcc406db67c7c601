"""What comes with the fronts and is none: end panels, island backs and fillers, of the fronts'
board and often made by whoever makes the fronts; and drawer boxes where these are bought.

They are found by the IDs that the cut list and the order give them; boards also by their size,
where a row has no ID. A board that is scribed may come as it is cut, or without what is scribed.
"""

from collections.abc import Container, Iterable, Iterator, Mapping

from msgspec import Struct

from jigs.cutlist.piece import Piece
from jigs.cutlist.trimmings import trim_boxes, wall_fillers, wall_tags
from jigs.given.ids import name_rollout
from jigs.given.job import Job
from jigs.given.measured import Besides, DeliveredPiece
from jigs.ground.lengths import is_beyond


class TrimBoard(Struct, frozen=True, kw_only=True):
    """A board of the fronts' thickness as it is cut, and how much of its width and of its height is
    scribed off; mm."""

    width: float
    height: float
    scribed: float = 0.0
    over: float = 0.0

    def fits(self, piece: DeliveredPiece, limit: float) -> bool:
        """Tell whether a piece has its sizes within a limit, either way up."""
        return any(
            not any(_is_off(size, self.width, self.scribed, limit) for size in across)
            and not any(_is_off(size, self.height, self.over, limit) for size in up)
            for across, up in ((piece.width, piece.height), (piece.height, piece.width))
        )


def _is_off(size: float, cut: float, less: float, limit: float) -> bool:
    return is_beyond(max(size - cut, cut - less - size, 0.0), limit)


def list_boards(job: Job, fronts: Iterable[str]) -> dict[str, TrimBoard]:
    """Give the end panels, island backs and fillers of a job by their IDs; `fronts`: the IDs of
    its fronts."""
    taken = {*(box.id for box in job.boxes), *fronts}
    given = {wall.name: wall.id for wall in job.walls if wall.id}
    tags = wall_tags((box.wall for box in job.boxes), taken, given)
    return {piece.id: _board(piece) for piece in (*trim_boxes(job, tags), *wall_fillers(job, tags))}


def _board(piece: Piece) -> TrimBoard:
    """Tell its height as it stands from its width: the longer side of a board without a grain may
    be either."""
    height = (*piece.blocks, *piece.on_wall)[0].dy
    return TrimBoard(
        width=piece.length + piece.width - height, height=height,
        scribed=piece.spare, over=piece.over,
    )  # fmt: skip


def list_bought_boxes(job: Job) -> frozenset[str]:
    """Name the drawer boxes that are bought."""
    if job.build.drawer_boxes != "ordered":
        return frozenset()
    fronts = [front for box in job.boxes for front in box.fronts]
    rollouts = [
        name_rollout(box.id, number)
        for box in job.boxes
        for number, _ in enumerate(box.rollouts, start=1)
    ]
    drawn = [f"{front.id}-BOX" for front in fronts if front.kind in ("drawer", "pullout")]
    return frozenset([*drawn, *rollouts])


def find_named(
    pieces: Iterable[DeliveredPiece],
    boards: Mapping[str, TrimBoard],
    boxes: Container[str],
    limit: float,
) -> Iterator[Besides]:
    """Find the pieces that are none of the fronts by their IDs; a board has its size within `limit`
    mm."""
    for piece in pieces:
        if piece.id in boards:
            yield _as_board(piece, piece.id, boards[piece.id], limit)
        elif piece.id in boxes:
            yield Besides(id=piece.id, piece=piece)


def find_sized(
    piece: DeliveredPiece, boards: Mapping[str, TrimBoard], limit: float
) -> Besides | None:
    """Find the first board that a piece is by its size."""
    for name, board in boards.items():
        if board.fits(piece, limit):
            return _as_board(piece, name, board, limit)
    return None


def _as_board(piece: DeliveredPiece, name: str, board: TrimBoard, limit: float) -> Besides:
    sized = bool(piece.width and piece.height)
    return Besides(
        id=name, piece=piece, cut=(board.width, board.height), scribed=board.scribed,
        fits=board.fits(piece, limit) if sized else None,
    )  # fmt: skip
