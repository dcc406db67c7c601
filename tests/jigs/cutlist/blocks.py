"""Pieces of board put together on paper: where they overlap, and where their faces meet."""

from collections.abc import Iterable, Sequence
from itertools import combinations

from jigs.cutlist.piece import Block, Piece

NEAR = 1e-6


def solids(pieces: Iterable[Piece]) -> list[tuple[Piece, Block]]:
    """Give each piece with each place where it stands."""
    return [(piece, block) for piece in pieces for block in piece.blocks]


def same(one: Block, other: Block) -> bool:
    return all(
        abs(getattr(one, key) - getattr(other, key)) < NEAR
        for key in ("x", "y", "z", "dx", "dy", "dz")
    )


def overlaps(pieces: Sequence[Piece]) -> list[tuple[Piece, Piece, Block]]:
    """Find where two pieces fill one room; what is notched out of either is not filled."""
    found = []
    for (one, a), (other, b) in combinations(solids(pieces), 2):
        room = a.shared(b)
        if room is None:
            continue
        cut = [each.shared(room) for each in (*one.cutouts, *other.cutouts)]
        if not any(each is not None and same(each, room) for each in cut):
            found.append((one, other, room))
    return found


def outside(pieces: Iterable[Piece]) -> tuple[float, float, float, float, float, float]:
    """Give the least and the greatest x, y, z that the pieces reach."""
    blocks = [block for _, block in solids(pieces)]
    return (
        min(b.x for b in blocks), min(b.y for b in blocks), min(b.z for b in blocks),
        max(b.x + b.dx for b in blocks), max(b.y + b.dy for b in blocks),
        max(b.z + b.dz for b in blocks),
    )  # fmt: skip


def ends_meet(piece: Piece, uprights: Iterable[Piece]) -> bool:
    """Tell whether both ends of a piece lie against a face of an upright board."""
    block = piece.blocks[0]
    faces = [face for u in uprights for b in u.blocks for face in (b.x, b.x + b.dx)]
    return all(
        any(abs(end - face) < NEAR for face in faces) for end in (block.x, block.x + block.dx)
    )


def sizes(block: Block) -> list[float]:
    return sorted((block.dx, block.dy, block.dz))
