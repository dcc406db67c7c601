"""What arrived against what was ordered, by ID, and by size where a piece has none; and the
delivery taken in hand: the sizes that were measured take the place of those ordered.

An ID is a front's own, a pair's (both its leaves, unless it says how many), or what fronts of
one count have in common (`S1-2` for S1-2-1 and S1-2-2). Pieces without one are matched by size in
rounds: within the tolerance; with width and height exchanged; as a board that is no front
(`besides`); and near enough to be the front that is missing, badly made.

A front's thickness as measured is its thickness from then on: overlay, depth of bores, screws
and gaps follow it. The leaves of a pair are measured apart.
"""

from bisect import bisect_left, bisect_right
from collections.abc import Collection, Iterable, Mapping, Sequence
from itertools import groupby

from msgspec import Struct, field
from msgspec.structs import replace

from jigs.box.columns import place_columns
from jigs.given.ids import name_leaves
from jigs.given.job import FrontSpec, Job
from jigs.given.measured import Arrival, Besides, DeliveredList, DeliveredPiece, Delivery, Surplus
from jigs.ground.errors import Fault, ReadingError
from jigs.ground.grouped import grouped
from jigs.ground.lengths import TENTH, is_beyond
from jigs.ground.nearest import suggest_id
from jigs.order.assign import assign
from jigs.order.besides import TrimBoard, find_named, find_sized, list_boards, list_bought_boxes
from jigs.order.naming import with_ids
from jigs.order.taking import find_other_bores, take_in_hand


class Ordered(Struct, frozen=True, kw_only=True):
    """A front as ordered; sizes in mm. `row` is the ID of the job's row it comes from: a pair's
    own for both its leaves."""

    id: str
    row: str
    spec: FrontSpec
    width: float
    height: float
    thickness: float

    @property
    def look(self) -> tuple[object, ...]:
        """What makes a piece this front: those alike in it serve for each other."""
        spec = self.spec
        return (
            round(self.width, 1), round(self.height, 1), round(self.thickness, 1),
            spec.words.finish, replace(spec.five_piece, groove=None), spec.edges,
            spec.boring.bored, spec.hung.hinges_at, spec.hinged if spec.boring.bored else None,
        )  # fmt: skip


def list_ordered(job: Job) -> tuple[Ordered, ...]:
    """List the fronts of a job as ordered, in the job's order."""
    return tuple(
        Ordered(
            id=front.id,
            row=front.spec.id,
            spec=front.spec,
            width=front.width,
            height=front.height,
            thickness=job.thickness_of(front.spec),
        )
        for box in job.boxes
        for front in place_columns(job, box).fronts
        if front.kind != "opening"
    )


def list_openings(job: Job) -> frozenset[str]:
    """Name the openings of a job: nobody delivers one."""
    return frozenset(spec.id for box in job.boxes for spec in box.fronts if spec.kind == "opening")


BADLY_MADE = 10.0
"""A piece this near to a front that is missing is that front, out of limit; mm (common practice,
no source)."""
ANOTHER_JOB = 3
"""From so many IDs, none of which is known, a list is another job's."""
MOST_GUESSES = 50
"""Unknown IDs for which the nearest is looked for; each costs a walk through the job."""


class Matching(Struct):
    """The arrivals by front, as they are found, and what is left over."""

    ordered: Sequence[Ordered]
    arrivals: dict[str, Arrival] = field(default_factory=dict)
    surplus: list[Surplus] = field(default_factory=list)
    alike: list[tuple[str, ...]] = field(default_factory=list)
    besides: list[Besides] = field(default_factory=list)

    @property
    def open(self) -> list[Ordered]:
        """The fronts that nothing has arrived for yet, in the job's order."""
        return [front for front in self.ordered if front.id not in self.arrivals]


def match_pieces(
    pieces: Sequence[DeliveredPiece],
    ordered: Sequence[Ordered],
    boards: Mapping[str, TrimBoard],
    *,
    tolerance: float,
) -> Matching:
    """Match the pieces of a list with the fronts of a job and the `boards` that come with them;
    `tolerance` in mm.

    Their names are known to be good (`find_strangers`).
    """
    matching = Matching(ordered)
    _match_names(matching, [piece for piece in pieces if piece.id], tolerance)
    nameless = [piece for piece in pieces if not piece.id]
    left = {place: piece.count or 1 for place, piece in enumerate(nameless)}

    _match_sizes(matching, nameless, left, tolerance)
    _match_sizes(matching, nameless, left, tolerance, turned=True)
    _match_boards(matching, nameless, left, boards, tolerance)
    _match_sizes(matching, nameless, left, max(BADLY_MADE, tolerance))
    matching.surplus += [
        Surplus(piece, left[place]) for place, piece in enumerate(nameless) if left[place]
    ]
    return matching


def find_strangers(
    pieces: Iterable[DeliveredPiece],
    ordered: Sequence[Ordered],
    openings: Collection[str] = (),
    others: Collection[str] = (),
) -> list[Fault]:
    """Find the pieces whose ID no front of the job has, and those that stand for one front.

    `openings` are IDs of the job for which nothing is made, `others` those of what comes with the
    fronts, which may be meant.
    """
    known = _names(ordered)
    named = [piece for piece in pieces if piece.id]
    unknown = [piece for piece in named if piece.id not in known]
    faults = _word_unknown(unknown, len(named), [*known, *others], openings) if unknown else []
    first: dict[str, DeliveredPiece] = {}
    for piece in named:
        meant = known.get(piece.id, ())
        for front in meant[: _count(piece, meant)]:
            other = first.setdefault(front.id, piece)
            # The same ID twice is told by the list's reader.
            if other.id != piece.id:
                faults.append(
                    Fault(
                        piece.where,
                        f"'{piece.id}' and '{other.id}' ({other.where}) both stand for "
                        f"{front.id}; one row a front",
                    )
                )
                break
    return faults


def _match_boards(
    matching: Matching,
    pieces: Sequence[DeliveredPiece],
    left: dict[int, int],
    boards: Mapping[str, TrimBoard],
    limit: float,
) -> None:
    """Match what is no front's size with the boards that nothing has come for."""
    open_ = dict(boards)
    for place, piece in enumerate(pieces):
        while left[place] and (found := find_sized(piece, open_, limit)):
            matching.besides.append(found)
            del open_[found.id]
            left[place] -= 1


class _BySize:
    """Fronts by their width, so that the few that a piece may be are found among many."""

    def __init__(self, fronts: Sequence[Ordered], *, turned: bool = False) -> None:
        self._fronts = fronts
        self._turned = turned
        widths = [front.height if turned else front.width for front in fronts]
        self._order = sorted(range(len(fronts)), key=widths.__getitem__)
        self._widths = [widths[place] for place in self._order]

    def costs(self, piece: DeliveredPiece, limit: float) -> dict[int, float]:
        """Give how badly a piece fits, by the front's place, for those it fits within a limit."""
        low = bisect_left(self._widths, piece.width[0] - limit - TENTH)
        high = bisect_right(self._widths, piece.width[0] + limit + TENTH)
        found = {
            place: cost
            for place in self._order[low:high]
            if (cost := _cost(piece, self._fronts[place], limit, self._turned)) is not None
        }
        return dict(sorted(found.items()))


def _match_names(matching: Matching, named: Sequence[DeliveredPiece], tolerance: float) -> None:
    known = _names(matching.ordered)
    sizes = _BySize(matching.ordered)
    for piece in named:
        meant = known[piece.id]
        for front in meant[: _count(piece, meant)]:
            fits: tuple[str, ...] = ()
            if piece.width and piece.height and _cost(piece, front, tolerance) is None:
                fits = tuple(matching.ordered[n].id for n in sizes.costs(piece, tolerance))
            matching.arrivals[front.id] = Arrival(piece=piece, thickness=front.thickness, fits=fits)
        if (over := (piece.count or 0) - len(meant)) > 0:
            matching.surplus.append(Surplus(piece, over))


def _count(piece: DeliveredPiece, meant: Sequence[Ordered]) -> int:
    """Give how many of the fronts of its name a row brings: all, unless it says how many.

    A row of one pair is both its leaves: an order counts it as one, a packing list as two.
    """
    pair = len(meant) == 2 and meant[0].row == piece.id
    return len(meant) if piece.count is None or pair else piece.count


def _names(ordered: Sequence[Ordered]) -> dict[str, tuple[Ordered, ...]]:
    """Give the fronts that each name stands for: its own, a pair's, that of several alike."""
    names: dict[str, tuple[Ordered, ...]] = {front.id: (front,) for front in ordered}
    for row, group in groupby(ordered, key=lambda front: front.row):
        leaves = tuple(group)
        if tuple(front.id for front in leaves) == name_leaves(row):
            names.setdefault(row, leaves)
    stems = grouped(
        (front.row.rpartition("-")[0], front) for front in ordered if front.spec.row.alike > 1
    )
    for stem, fronts in stems.items():
        names.setdefault(stem, tuple(fronts))
    return names


def _word_unknown(
    unknown: Sequence[DeliveredPiece],
    count: int,
    known: Collection[str],
    openings: Collection[str],
) -> list[Fault]:
    """Say which IDs are none of the job's, or that the whole list is another job's."""
    if len(unknown) == count >= ANOTHER_JOB:
        return [
            Fault(
                unknown[0].where,
                f"none of the {count} IDs in this list is a front of the job ('{unknown[0].id}' "
                "given first); is it the list of another job?",
            )
        ]
    faults = []
    for number, piece in enumerate(unknown):
        what = (
            f"unknown ID ('{piece.id}' given): no front of the job is called so; a piece without "
            "an ID is matched by its size"
        )
        if number < MOST_GUESSES:
            what += f"; {suggest_id(piece.id, known)}"
        if piece.id in openings:
            what = f"unknown ID ('{piece.id}' given): it is an opening, for which nothing is made"
        faults.append(Fault(piece.where, what))
    return faults


def _cost(
    piece: DeliveredPiece, front: Ordered, limit: float, turned: bool = False
) -> float | None:
    """Give how badly a piece fits a front, None where any of its sizes is beyond the limit."""
    width, height = (front.height, front.width) if turned else (front.width, front.height)
    off = [size - width for size in piece.width] + [size - height for size in piece.height]
    if any(is_beyond(each, limit) for each in off):
        return None
    if piece.thickness is not None:
        # It decides between fronts of one size; what it is off by is said later.
        off.append(piece.thickness - front.thickness)
    return sum(each * each for each in off)


def _match_sizes(
    matching: Matching,
    pieces: Sequence[DeliveredPiece],
    left: dict[int, int],
    limit: float,
    *,
    turned: bool = False,
) -> None:
    """Match what is left of the pieces with the fronts still open."""
    kinds = grouped((front.look, front) for front in matching.open)
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


def with_delivery(job: Job, delivered: DeliveredList) -> Job:
    """Give the job with the fronts of a delivered list as they are in hand.

    Raises ReadingError with the list's faults and the IDs that the job does not know.
    """
    ordered = list_ordered(job)
    boards = list_boards(job, (front.id for front in ordered))
    bought = list_bought_boxes(job)
    delivered = with_ids(delivered, {*_names(ordered), *boards, *bought})
    besides = [*find_named(delivered.pieces, boards, bought, job.tolerance)]
    named = {each.id for each in besides}
    pieces = [piece for piece in delivered.pieces if piece.id not in named]
    strangers = find_strangers(pieces, ordered, list_openings(job), boards)
    if delivered.faults or strangers:
        raise ReadingError([*delivered.faults, *strangers])
    sizes = {front.id: (front.width, front.height, front.thickness) for front in ordered}
    open_boards = {name: board for name, board in boards.items() if name not in named}
    matching = match_pieces(pieces, ordered, open_boards, tolerance=job.tolerance)
    delivery = Delivery(
        file=delivered.file,
        ordered=len(ordered),
        arrivals={f.id: matching.arrivals[f.id] for f in ordered if f.id in matching.arrivals},
        missing=tuple(front.id for front in matching.open),
        surplus=tuple(matching.surplus),
        alike=tuple(matching.alike),
        besides=(*besides, *matching.besides),
    )
    faults = [
        fault
        for box in job.boxes
        for spec in box.fronts
        for fault in find_other_bores(spec, delivery.arrivals)
    ]
    if faults:
        raise ReadingError(faults)
    boxes = tuple(
        replace(
            box, fronts=tuple(take_in_hand(spec, delivery.arrivals, sizes) for spec in box.fronts)
        )
        for box in job.boxes
    )
    return replace(job, boxes=boxes, delivery=delivery, delivered=delivered)
