"""What the cut list comes to: edge band in metres, board by thickness.

Banding: the sum of the banded edges and 50 for each of them, times 1.10 (common practice, no
source). Two sides and three edges across the golden box:

>>> round(band_to_buy(2 * 774.7 + 3 * 420.6, edges=5) / 1000, 2)
3.37
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass

from jigs.cutlist.piece import Piece, Stuff
from jigs.cutlist.sheet import SHEETS
from jigs.ground.geometry import SLACK
from jigs.ground.lengths import Unit

PER_EDGE = 50.0
"""Band that is trimmed off at each edge; mm (common practice, no source)."""
WASTE = 1.10
"""Band bought over band used (common practice, no source)."""

STUFF_ORDER: tuple[Stuff, ...] = (
    "side", "partition", "back", "front", "drawer-side", "drawer-bottom", "spacer",
)  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class Banding:
    """Edge band for one board: its thickness, the band's own, the edges, their sum, and what to
    buy; mm."""

    board: float
    band: float
    edges: int
    length: float
    to_buy: float


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardTotal:
    """The pieces cut from one board: its stuff and thickness (mm), their number and their area
    in m2; `sheets`: standard sheets that the area alone fills."""

    stuff: Stuff
    thickness: float
    pieces: int
    area: float
    sheets: int


def band_to_buy(length: float, *, edges: int) -> float:
    """Give the band to buy for edges of this length in all; mm."""
    return (length + PER_EDGE * edges) * WASTE


def add_banding(pieces: Iterable[Piece]) -> tuple[Banding, ...]:
    """Add up the edge band, board by board."""
    found: dict[tuple[float, float], tuple[int, float]] = {}
    for piece in pieces:
        if piece.band:
            key = piece.thickness, piece.band.thickness
            edges, length = found.get(key, (0, 0.0))
            found[key] = (
                edges + piece.count * len(piece.band.edges),
                length + piece.count * piece.band.length,
            )
    return tuple(
        Banding(
            board=board, band=band, edges=edges, length=length,
            to_buy=band_to_buy(length, edges=edges),
        )
        for (board, band), (edges, length) in sorted(found.items(), reverse=True)
    )  # fmt: skip


def add_boards(pieces: Iterable[Piece], units: Unit) -> tuple[BoardTotal, ...]:
    """Add up the cut sizes, board by board."""
    long, wide = SHEETS[units]
    found: dict[tuple[int, float], list[Piece]] = {}
    for piece in pieces:
        found.setdefault((STUFF_ORDER.index(piece.stuff), piece.thickness), []).append(piece)
    boards = []
    for (order, thickness), group in sorted(found.items()):
        area = sum(piece.count * piece.length * piece.width for piece in group)
        boards.append(
            BoardTotal(
                stuff=STUFF_ORDER[order],
                thickness=thickness,
                pieces=sum(piece.count for piece in group),
                area=area / 1e6,
                sheets=math.ceil(area / (long * wide) - SLACK),
            )
        )
    return tuple(boards)


def count_pockets(pieces: Iterable[Piece]) -> dict[float, int]:
    """Count the pocket screws by the thickness of the board that the pockets are bored in; mm.

    A piece has its screws at both ends; those of a side are driven into it, and counted at the
    pieces that they come from.
    """
    found: dict[float, int] = {}
    for piece in pieces:
        if piece.kind == "side" or not (piece.pockets or piece.pockets_top):
            continue
        other = piece.pockets if piece.pockets_top is None else piece.pockets_top
        screws = piece.count * (len(piece.pockets) + len(other))
        found[piece.thickness] = found.get(piece.thickness, 0) + screws
    return found


def over_sheet(pieces: Iterable[Piece], units: Unit) -> tuple[Piece, ...]:
    """Give the pieces that no standard sheet holds, with the grain along the sheet."""
    long, wide = SHEETS[units]
    return tuple(
        piece for piece in pieces if piece.length > long + SLACK or piece.width > wide + SLACK
    )
