"""The whole cut list of a job, box by box."""

from jigs.cutlist.boxes import pieces_of_box
from jigs.cutlist.piece import Piece
from jigs.parts import Layout, Side


def cut_list(layout: Layout) -> tuple[Piece, ...]:
    """Give every piece of a job, in the job's order of boxes."""
    sides: dict[str, list[Side]] = {}
    for side in layout.sides:
        sides.setdefault(side.box, []).append(side)
    return tuple(
        piece
        for box in layout.boxes
        for piece in pieces_of_box(layout.job, box, sides.get(box.id, ()))
    )
