"""What was measured of fronts that are there: pieces as delivered, with what became of each when it
was matched, and gaps once they hang.

A front is measured across at top and bottom, up at left and right, and corner to corner; what is
measured in one place alone is taken to be the same in both.

>>> piece = DeliveredPiece(where="list.csv: row 2", row="row 2", width=(454.0,),
...                        height=(612.6, 613.0))
>>> piece.across, piece.up
((454.0, 454.0), (612.6, 613.0))
"""

from collections.abc import Mapping, Sequence
from pathlib import Path

from msgspec import Struct, field

from jigs.given.stated import Boring, Both
from jigs.ground.errors import Fault


class DeliveredPiece(Struct, frozen=True, kw_only=True):
    """One row of a delivered list; sizes in mm.

    `where` it stands, with its file for a fault, and its `row` alone. `id` is "" where the row
    names none, `count` None where it says nothing. `width` and `height`
    hold no size, one, or two: top and bottom, left and right. `boring` and
    `hinges_at`, cup centres above its bottom edge: how it came bored. `hidden`: what of it its
    workbook does not show, in words.
    """

    where: str
    row: str
    id: str = ""
    width: tuple[float, ...] = ()
    height: tuple[float, ...] = ()
    diagonals: Both | None = None
    thickness: float | None = None
    count: int | None = None
    note: str = ""
    boring: Boring = field(default_factory=Boring)
    hinges_at: tuple[float, ...] | None = None
    hidden: tuple[str, ...] = ()

    @property
    def across(self) -> Both | None:
        """Its width at top and bottom, mm; None where it was not measured."""
        return (self.width[0], self.width[-1]) if self.width else None

    @property
    def up(self) -> Both | None:
        """Its height at left and right, mm; None where it was not measured."""
        return (self.height[0], self.height[-1]) if self.height else None

    @property
    def is_measured(self) -> bool:
        """Whether any of its sizes was taken."""
        return bool(self.width or self.height or self.diagonals or self.thickness)


def find_twice(pieces: Sequence[DeliveredPiece]) -> list[Fault]:
    """Find the pieces that have the ID of one above them."""
    first: dict[str, DeliveredPiece] = {}
    return [
        Fault(
            piece.where,
            f"duplicate ID ('{piece.id}', first at {first[piece.id].where}); one row a front: keep "
            "the row of the piece that is used",
        )
        for piece in pieces
        if piece.id and first.setdefault(piece.id, piece) is not piece
    ]


class LeftColumn(Struct, frozen=True):
    """A column of a delivered list from which nothing is read: what it is called there, and its
    cell of each piece."""

    called: str
    cells: tuple[str, ...]


class DeliveredList(Struct, frozen=True, kw_only=True):
    """The rows of a delivered list, the file they stand in, and what is wrong with them.

    `unsized`: what is wrong with a piece, by its place, if it has no ID: a size is missing by which
    it would be matched; at place -1, with the list, if not all have one. `left`: its columns that
    are not read; `rows_left`: its rows that are no pieces, in words; `also`: what else was taken
    for what, in sentences.
    """

    file: Path
    pieces: tuple[DeliveredPiece, ...] = ()
    faults: tuple[Fault, ...] = ()
    unsized: tuple[tuple[int, Fault], ...] = ()
    left: tuple[LeftColumn, ...] = ()
    rows_left: tuple[str, ...] = ()
    also: tuple[str, ...] = ()

    @property
    def told(self) -> str:
        """What was left alone in it, and which column names its pieces; "" where there is nothing
        to say."""
        left = [*(column.called for column in self.left), *self.rows_left]
        alone = f"Left alone in {self.file}: {', '.join(left)}." if left else ""
        return "\n".join(filter(None, (alone, *self.also)))


class Arrival(Struct, frozen=True, kw_only=True):
    """What arrived for one front: its row, the thickness that was ordered (mm), whether it was
    found by its size alone, and the other fronts that a piece of its size would fit."""

    piece: DeliveredPiece
    thickness: float
    by_size: bool = False
    fits: tuple[str, ...] = ()


class Surplus(Struct, frozen=True):
    """Pieces of one row that no front takes, and how many."""

    piece: DeliveredPiece
    count: int


class Besides(Struct, frozen=True, kw_only=True):
    """A piece that came with the fronts and is none: its ID in the cut list or the order, its row,
    and of a board the width and height that it is cut to, how much of the width is scribed off, and
    whether it has them (None: nobody measured it); mm."""

    id: str
    piece: DeliveredPiece
    cut: Both | None = None
    scribed: float = 0.0
    fits: bool | None = None


class Delivery(Struct, frozen=True, kw_only=True):
    """A delivered list matched with the order: the arrivals by front, the fronts that are still
    missing, the pieces left over, and the fronts found by size that are alike. `besides`: what came
    and is no front."""

    file: Path
    ordered: int
    arrivals: Mapping[str, Arrival]
    missing: tuple[str, ...] = ()
    surplus: tuple[Surplus, ...] = ()
    alike: tuple[tuple[str, ...], ...] = ()
    besides: tuple[Besides, ...] = ()


DEPTH = "depth"
"""What stands as the axis of a row that is no gap: how far its front stands out."""


class MeasuredGap(Struct, frozen=True, kw_only=True):
    """One row: what of it names the gap ("" where it says nothing), and its width at one end or at
    both; or how far a front stands out there; mm."""

    where: str
    """Where the row stands, with its file for a fault."""
    front: str
    beside: str = ""
    other: str = ""
    axis: str = ""
    edge: str = ""
    """The edge of `front` at the gap."""
    first: float
    """Of an upright gap at its top, of a level one at its left."""
    second: float | None = None
    """Of an upright gap at its bottom, of a level one at its right; None where it was measured in
    one place alone."""

    def words(self) -> str:
        """Give how the row names its gap, for a fault."""
        said = (self.front, self.beside, self.other, self.axis, self.edge)
        return " ".join(filter(None, said))


class MeasuredGaps(Struct, frozen=True, kw_only=True):
    """A whole list, and what is wrong in it."""

    rows: tuple[MeasuredGap, ...] = ()
    faults: Sequence[Fault] = ()
