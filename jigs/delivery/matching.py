"""What arrived against what was ordered: by ID, and by size where a piece has none.

An ID is a front's own, a pair's (both its leaves, unless it says how many), or what fronts of
one count have in common (`S1-2` for S1-2-1 and S1-2-2). Pieces without one are matched by size in
three rounds: within the tolerance; with width and height exchanged; and near enough to be the
front that is missing, badly made.
"""

from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from itertools import groupby

from jigs.delivery.assign import assign
from jigs.delivery.ordering import Ordered
from jigs.delivery.piece import Arrival, Piece, Surplus
from jigs.errors import Fault, ReadingError
from jigs.geometry import SLACK
from jigs.ids import name_leaves
from jigs.nearest import suggest_id

BADLY_MADE = 10.0
"""A piece this near to a front that is missing is that front, out of limit; mm (common practice,
no source)."""


@dataclass(slots=True)
class Matching:
    """The arrivals by front, as they are found, and what is left over."""

    ordered: Sequence[Ordered]
    arrivals: dict[str, Arrival] = field(default_factory=dict)
    surplus: list[Surplus] = field(default_factory=list)
    alike: list[tuple[str, ...]] = field(default_factory=list)

    @property
    def open(self) -> list[Ordered]:
        """The fronts that nothing has arrived for yet, in the job's order."""
        return [front for front in self.ordered if front.id not in self.arrivals]


def match_pieces(
    pieces: Iterable[Piece],
    ordered: Sequence[Ordered],
    *,
    tolerance: float,
    boxes: frozenset[str] = frozenset(),
    openings: frozenset[str] = frozenset(),
) -> Matching:
    """Match the pieces of a list with the fronts of a job; `tolerance` in mm.

    `boxes` and `openings` are IDs of the job that no piece can have. Raises ReadingError with
    every ID that is unknown.
    """
    pieces = tuple(pieces)
    matching = Matching(ordered)
    named = [piece for piece in pieces if piece.id]
    _match_names(matching, named, tolerance, boxes, openings)
    nameless = [piece for piece in pieces if not piece.id]
    left = {place: piece.count or 1 for place, piece in enumerate(nameless)}

    _match_sizes(matching, nameless, left, tolerance)
    _match_sizes(matching, nameless, left, tolerance, turned=True)
    _match_sizes(matching, nameless, left, max(BADLY_MADE, tolerance))
    matching.surplus += [
        Surplus(piece, left[place]) for place, piece in enumerate(nameless) if left[place]
    ]
    return matching


class _BySize:
    """Fronts by their width, so that the few that a piece may be are found among many."""

    def __init__(self, fronts: Sequence[Ordered], *, turned: bool = False) -> None:
        self._fronts = fronts
        self._turned = turned
        widths = [front.height if turned else front.width for front in fronts]
        self._order = sorted(range(len(fronts)), key=widths.__getitem__)
        self._widths = [widths[place] for place in self._order]

    def costs(self, piece: Piece, limit: float) -> dict[int, float]:
        """Give how badly a piece fits, by the front's place, for those it fits within a limit."""
        low = bisect_left(self._widths, piece.width[0] - limit - SLACK)
        high = bisect_right(self._widths, piece.width[0] + limit + SLACK)
        found = {
            place: cost
            for place in self._order[low:high]
            if (cost := _cost(piece, self._fronts[place], limit, self._turned)) is not None
        }
        return dict(sorted(found.items()))


def _match_names(
    matching: Matching,
    named: Sequence[Piece],
    tolerance: float,
    boxes: frozenset[str],
    openings: frozenset[str],
) -> None:
    known = _names(matching.ordered, boxes)
    unknown = [piece for piece in named if piece.id not in known]
    if unknown:
        raise ReadingError(_word_unknown(unknown, len(named), known, openings))
    sizes = _BySize(matching.ordered)
    first: dict[str, Piece] = {}
    faults = []
    for piece in named:
        meant = known[piece.id]
        count = len(meant) if piece.count is None or _is_pair(piece, meant) else piece.count
        for front in meant[:count]:
            if front.id in first:
                faults.append(
                    Fault(
                        piece.where,
                        f"duplicate ID ('{piece.id}' stands for {front.id} too, which is at "
                        f"{first[front.id].where}); one row a front",
                    )
                )
                break
            first[front.id] = piece
            fits: tuple[str, ...] = ()
            if piece.width and piece.height and _cost(piece, front, tolerance) is None:
                fits = tuple(matching.ordered[n].id for n in sizes.costs(piece, tolerance))
            matching.arrivals[front.id] = Arrival(piece=piece, thickness=front.thickness, fits=fits)
        over = max(count, piece.count or 0) - len(meant)
        if over > 0:
            matching.surplus.append(Surplus(piece, over))
    if faults:
        raise ReadingError(faults)


def _is_pair(piece: Piece, meant: Sequence[Ordered]) -> bool:
    """Whether a row of one is a whole pair: an order counts it as one, a packing list as two."""
    return piece.count == 1 and len(meant) == 2 and meant[0].row == piece.id


def _names(ordered: Sequence[Ordered], boxes: frozenset[str]) -> dict[str, tuple[Ordered, ...]]:
    """Give the fronts that each name stands for: its own, a pair's, one with a number behind."""
    names: dict[str, tuple[Ordered, ...]] = {front.id: (front,) for front in ordered}
    for row, group in groupby(ordered, key=lambda front: front.row):
        leaves = tuple(group)
        if tuple(front.id for front in leaves) == name_leaves(row):
            names.setdefault(row, leaves)
    stems: dict[str, list[Ordered]] = {}
    for front in ordered:
        stem, _, number = front.row.rpartition("-")
        if stem and number.isdecimal() and stem not in boxes:
            stems.setdefault(stem, []).append(front)
    for stem, fronts in stems.items():
        if len({front.look for front in fronts}) == 1:
            names.setdefault(stem, tuple(fronts))
    return names


def _word_unknown(
    unknown: Sequence[Piece],
    count: int,
    known: dict[str, tuple[Ordered, ...]],
    openings: frozenset[str],
) -> list[Fault]:
    """Say which IDs are none of the job's, or that the whole list is another job's."""
    if len(unknown) == count > 1:
        return [
            Fault(
                unknown[0].where,
                f"none of the {count} IDs in this list is a front of the job ('{unknown[0].id}' "
                "given first); is it the list of another job?",
            )
        ]
    return [
        Fault(
            piece.where,
            f"unknown ID ('{piece.id}' given): it is an opening, for which nothing is made"
            if piece.id in openings
            else f"unknown ID ('{piece.id}' given): no front of the job is called so; "
            f"{suggest_id(piece.id, known)} Correct it, or leave the ID out: the piece is then "
            "matched by its size",
        )
        for piece in unknown
    ]


def _cost(piece: Piece, front: Ordered, limit: float, turned: bool = False) -> float | None:
    """Give how badly a piece fits a front, None where any of its sizes is beyond the limit."""
    width, height = (front.height, front.width) if turned else (front.width, front.height)
    off = [size - width for size in piece.width] + [size - height for size in piece.height]
    if any(abs(each) > limit + SLACK for each in off):
        return None
    if piece.thickness is not None:
        # It decides between fronts of one size; what it is off by is said later.
        off.append(piece.thickness - front.thickness)
    return sum(each * each for each in off)


def _match_sizes(
    matching: Matching,
    pieces: Sequence[Piece],
    left: dict[int, int],
    limit: float,
    *,
    turned: bool = False,
) -> None:
    """Match what is left of the pieces with the fronts still open."""
    kinds: dict[tuple[object, ...], list[Ordered]] = {}
    for front in matching.open:
        kinds.setdefault(front.look, []).append(front)
    groups = list(kinds.values())
    sizes = _BySize([group[0] for group in groups], turned=turned)
    costs = {
        (place, number): cost
        for place, piece in enumerate(pieces)
        if left[place]
        for number, cost in sizes.costs(piece, limit).items()
    }
    taken = assign([*left.values()], [len(group) for group in groups], costs)
    for (place, number), count in taken.items():
        left[place] -= count
        for front in [f for f in groups[number] if f.id not in matching.arrivals][:count]:
            matching.arrivals[front.id] = Arrival(
                piece=pieces[place], thickness=front.thickness, by_size=True
            )
    for group in groups:
        alike = tuple(front.id for front in group if front.id in matching.arrivals)
        if len(alike) > 1:
            matching.alike.append(alike)
