"""What the cut list comes to, edge band in metres, board by thickness, and two traps in it: boards
thinner than they are called, and shelves that sag.

Banding: the sum of the banded edges and 50 for each of them, times 1.10 (common practice, no
source). Two sides and three edges across the golden box:

>>> round(band_to_buy(2 * 774.7 + 3 * 420.6, edges=5) / 1000, 2)
3.37

Hardwood plywood sold as 3/4 is usually 18.0 to 18.6 (common practice, no source). Bottoms that
are cut for the name stand between sides of the true thickness, and the box comes out narrower,
often by a whole reveal. The golden box, 457.2 of 18.3 board:

>>> trap = Trap(box="B1", width=457.2, true=18.3, nominal=19.05, guessed=True)
>>> round(trap.bottom, 4), round(trap.comes_to, 4), round(trap.lost, 4)
(419.1, 455.7, 1.5)

The middle of a beam that rests freely on both ends goes down by 5 w L^4 / (384 E I) (a standard
formula of beam theory); a shelf's I is width x thickness^3 / 12, and its width cancels against
the load it carries. A shelf screwed at its ends sags less: the sum is on the safe side. It leaves
out the shelf's own weight, and what a lasting load adds in time, which can be as much again (Wood
Handbook, on creep; from memory).

>>> round(sag(span=1000.0, thickness=18.0, modulus=MODULI["particleboard"]), 1)
7.0
"""

import math
from collections.abc import Collection, Iterable, Mapping
from math import cbrt

from msgspec import Struct

from jigs.cutlist.piece import Piece, Stuff
from jigs.given.job import Job, SideMaterial
from jigs.ground.geometry import SLACK
from jigs.ground.grouped import grouped
from jigs.ground.lengths import MM_PER_INCH, Unit

BOARD_SHEETS: Mapping[Unit, tuple[float, float]] = {
    "in": (8 * 12 * MM_PER_INCH, 4 * 12 * MM_PER_INCH), "mm": (2440.0, 1220.0),
}  # fmt: skip
"""Length and width of a standard sheet; mm."""
SHEET_WORDS: Mapping[Unit, str] = {"in": "4 x 8 ft", "mm": "1220 x 2440 mm"}


PER_EDGE = 50.0
"""Band that is trimmed off at each edge; mm (common practice, no source)."""
BAND_WASTE = 1.10
"""Band bought over band used (common practice, no source)."""

STUFF_ORDER: tuple[Stuff, ...] = (
    "side", "partition", "back", "front", "drawer-side", "drawer-bottom", "spacer",
)  # fmt: skip


class Banding(Struct, frozen=True, kw_only=True):
    """Edge band for one board: its thickness, the band's own, the edges, their sum, and what to
    buy; mm."""

    board: float
    band: float
    edges: int
    length: float
    to_buy: float


class BoardTotal(Struct, frozen=True, kw_only=True):
    """The pieces cut from one board: its stuff and thickness (mm), their number and their area
    in m2; `sheets`: standard sheets that the area alone fills."""

    stuff: Stuff
    thickness: float
    pieces: int
    area: float
    sheets: int


def band_to_buy(length: float, *, edges: int) -> float:
    """Give the band to buy for edges of this length in all; mm."""
    return (length + PER_EDGE * edges) * BAND_WASTE


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
    long, wide = BOARD_SHEETS[units]
    found = grouped(((STUFF_ORDER.index(piece.stuff), piece.thickness), piece) for piece in pieces)
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
    long, wide = BOARD_SHEETS[units]
    return tuple(
        piece for piece in pieces if piece.length > long + SLACK or piece.width > wide + SLACK
    )


SHELF_LOAD = 15 * 4.4482216152605 / 304.8**2
"""What a shelf is to bear: 15 lb/ft2, in N/mm2 (KCMA A161.1, second hand; pound-force and foot
exact by definition)."""
LEAST_STRAIGHT = 300.0
"""A shelf that sags by one part of its length in so many looks straight (common practice: 1 mm
in 300)."""
MODULI: Mapping[SideMaterial, float] = {
    "plywood": 6960.0,
    "mdf": 3590.0,
    "particleboard": 2760.0,
    "solid": 8500.0,
}
"""Modulus of elasticity in bending, N/mm2: the lower end of each range of Wood Handbook
FPL-GTR-190, table 12-1 (plywood, MDF, particleboard) and, for solid wood, the softest of the usual
ones of its table 5-3, eastern white pine. Published, but put down here from memory."""


def beam_deflection(*, load: float, span: float, modulus: float, inertia: float) -> float:
    """Give how far the middle of a beam on two supports goes down under an even load.

    `load` along the beam, N/mm; `inertia` mm4; any other units that agree do as well.
    """
    squared = span * span
    return 5 * load * squared * squared / (384 * modulus * inertia)


def sag(*, span: float, thickness: float, modulus: float, load: float = SHELF_LOAD) -> float:
    """Give how far a shelf sags in its middle; mm, N/mm2."""
    return beam_deflection(load=load, span=span, modulus=modulus, inertia=thickness**3 / 12)


def longest_straight(*, thickness: float, modulus: float, load: float = SHELF_LOAD) -> float:
    """Give the longest shelf of a board that still looks straight; mm (derived)."""
    return thickness * cbrt(32 * modulus / (5 * load * LEAST_STRAIGHT))


def least_thickness(*, span: float, modulus: float, load: float = SHELF_LOAD) -> float:
    """Give the thinnest board of which a shelf so long still looks straight; mm (derived)."""
    return span / longest_straight(thickness=1.0, modulus=modulus, load=load)


TRADE_SIZES: Mapping[Unit, tuple[float, ...]] = {
    "in": (6.35, 9.525, 12.7, 15.875, 19.05, 25.4),
    "mm": (6.0, 9.0, 12.0, 15.0, 16.0, 18.0, 19.0, 22.0, 25.0),
}
"""What boards are sold as; mm (common practice, no source)."""
NEAR = 1.2
"""A board is taken for a trade size no further off than this; mm (common practice)."""

WHOLE = 0.9
"""From this part of a reveal on, a difference is as good as a whole one (common practice)."""


class Trap(Struct, frozen=True, kw_only=True):
    """What a box would come to with its bottom cut for the board's name; mm. `guessed`: the job
    does not say what the board was sold as. `reveal`: the job's side reveal."""

    box: str
    width: float
    true: float
    nominal: float
    guessed: bool
    reveal: float = 0.0

    @property
    def bottom(self) -> float:
        """The bottom cut for the name."""
        return self.width - 2 * self.nominal

    @property
    def comes_to(self) -> float:
        """The width of the box made with it."""
        return self.bottom + 2 * self.true

    @property
    def lost(self) -> float:
        """By how much the box is too narrow; below 0 too wide."""
        return self.width - self.comes_to

    @property
    def takes_a_reveal(self) -> bool:
        """Whether the difference is as good as a whole side reveal."""
        return self.reveal > 0 and abs(self.lost) >= WHOLE * self.reveal


def guess_trade_size(true: float, units: Unit) -> float | None:
    """Give the nearest size that boards are sold as, None where none is near; mm."""
    nearest = min(TRADE_SIZES[units], key=lambda size: abs(size - true))
    return nearest if abs(nearest - true) <= NEAR + SLACK else None


def find_trap(job: Job, boxes: Collection[str]) -> Trap | None:
    """Give the trap on the first of these boxes; None without a box or a trade size."""
    box = next((box for box in job.boxes if box.id in boxes), None)
    nominal = job.build.sold_as
    guessed = nominal is None
    if nominal is None:
        nominal = guess_trade_size(job.material.side, job.units)
    if box is None or nominal is None:
        return None
    return Trap(
        box=box.id,
        width=box.width,
        true=job.material.side,
        nominal=nominal,
        guessed=guessed,
        reveal=job.reveal.side,
    )
