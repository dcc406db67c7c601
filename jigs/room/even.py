"""Where each front sits within its adjusters' reach: so that the gaps along a row come out even, or
so that every gap comes as near to its plan as it can.

**Even**: the smallest spare of all gaps (a gap less what it needs) is made as large as can be; of
all ways to do so the one is taken that moves the fronts least in sum. Both are linear programmes of
differences. A spare is within reach if no round of gaps and reaches comes out short, which is
found by longest paths; the least sum is the greatest gain of a flow, of which each front passes on
at most one more or one less than it takes in (their dual). All in whole steps: nothing is rounded.

>>> settle({"A": 2.0, "B": 2.0}, [(None, "A", 0.0), ("A", "B", 3.0), ("B", None, 0.0)])
(1.0, {'A': 1.0, 'B': -1.0})

**Level**: the greatest departure from the plan is made as small as can be, with the least sum of
moves; then what bears on it stands, and the same is done with what is left. A departure both ways
is two spares of `settle`.

>>> level({"A": 2.0, "B": 2.0}, [(None, "A", -1.0), ("A", "B", 1.5), ("B", None, -0.5)])
{'A': 1.0, 'B': -0.5}
"""

from collections.abc import Iterator, Mapping, Sequence

from msgspec import Struct

from jigs.ground.geometry import SLACK
from jigs.room.budget import Budget
from jigs.room.reckoning import adjusts

STEP = 1e-6
"""Lengths are counted in such steps; mm."""
ROOT = 0
"""What stands still: walls, panels, fillers, and fronts that nothing moves."""

LONGEST = 150
"""A row of more fronts is left as it is: no wall is so long (our own choice)."""
WORTH = 0.05
"""What moves less is not worth a turn of the screw; mm."""

Spare = tuple[str | None, str | None, float]
"""A gap: the front at its left, at its right, None for what stands still; what it has to spare,
mm."""


class _Arc(Struct):
    """`end` stands at least `least` further right than `start`; how much more flow it takes."""

    start: int
    end: int
    least: int
    room: float


def settle(reach: Mapping[str, float], gaps: Sequence[Spare]) -> tuple[float, dict[str, float]]:
    """Give the greatest smallest spare, and how far to the right each front then moves; mm.

    `reach`: how far each front can be moved either way, mm.
    """
    place = {name: at for at, name in enumerate(reach, start=1)}
    ends = [
        (place[left] if left else ROOT, place[right] if right else ROOT, round(spare / STEP))
        for left, right, spare in gaps
    ]
    limits = [(place[name], round(far / STEP)) for name, far in reach.items()]

    def arcs(spare: int) -> list[_Arc]:
        held = [_Arc(left, right, spare - own, float("inf")) for left, right, own in ends]
        for at, far in limits:
            held += [_Arc(ROOT, at, -far, float("inf")), _Arc(at, ROOT, -far, float("inf"))]
        return held

    low = min(own for _, _, own in ends)
    high = low + 2 * max((far for _, far in limits), default=0) + 1
    while high - low > 1:
        middle = (low + high) // 2
        if _find_round(arcs(middle), len(place)) is None:
            low = middle
        else:
            high = middle
    moves = _least_moves(arcs(low), len(place))
    return low * STEP, {name: round(moves[at] * STEP, 6) + 0.0 for name, at in place.items()}


def _longest(arcs: Sequence[_Arc], count: int) -> tuple[list[int], list[_Arc | None], int | None]:
    """Give how far right each place has to be from the root, the arc that puts it there, and a
    place that never comes to rest, if any (Bellman and Ford)."""
    far: list[int | None] = [0, *([None] * count)]
    by: list[_Arc | None] = [None] * (count + 1)
    for _ in range(count + 2):
        moved = None
        for arc in arcs:
            start, end = far[arc.start], far[arc.end]
            if arc.room > 0 and start is not None and (end is None or start + arc.least > end):
                far[arc.end], by[arc.end], moved = start + arc.least, arc, arc.end
        if moved is None:
            break
    return [each or 0 for each in far], by, moved


def _find_round(arcs: Sequence[_Arc], count: int) -> list[_Arc] | None:
    """Give arcs that lead round with a gain, so that no places satisfy them all; None if none."""
    _, by, at = _longest(arcs, count)
    if at is None:
        return None
    for _ in range(count + 1):
        arc = by[at]
        assert arc is not None, "what never rests has an arc"
        at = arc.start
    found: list[_Arc] = []
    here = at
    while not found or here != at:
        arc = by[here]
        assert arc is not None, "it is on a round"
        found.append(arc)
        here = arc.start
    return found


def _least_moves(held: Sequence[_Arc], count: int) -> list[int]:
    """Give places that satisfy all arcs with the least sum of distances from the root."""
    arcs = list(held)
    for at in range(1, count + 1):
        arcs += [_Arc(ROOT, at, 0, 1.0), _Arc(at, ROOT, 0, 1.0)]
    back = {id(arc): _Arc(arc.end, arc.start, -arc.least, 0.0) for arc in arcs}
    back |= {id(reverse): arc for arc in arcs for reverse in [back[id(arc)]]}
    both = [*arcs, *(back[id(arc)] for arc in arcs)]
    while (found := _find_round(both, count)) is not None:
        flow = min(arc.room for arc in found)
        for arc in found:
            arc.room -= flow
            back[id(arc)].room += flow
    return _longest(both, count)[0]


class Settled(Struct, frozen=True, kw_only=True):
    """Fronts that are neighbours along a wall, one after the other: how far to the right each sits
    from its place, below 0 to the left; the smallest spare before and then; mm."""

    moves: Mapping[str, float]
    before: float
    then: float


def even_rows(budgets: Sequence[Budget]) -> tuple[Settled, ...]:
    """Settle the rows in which a front is in hand, measured: before that nothing is uneven. Rows
    that gain nothing by it are left out."""
    gaps = [b for b in budgets if b.gap.axis == "x" and b.least.width is not None]
    settled = (_settle_row(row) for row in _rows(gaps) if any(_in_hand(b) for b in row))
    return tuple(row for row in settled if row is not None and row.then > row.before + WORTH)


def _in_hand(budget: Budget) -> bool:
    return any(front.ordered is not None for front, _ in budget.gap.sides)


def _rows(gaps: Sequence[Budget]) -> Iterator[list[Budget]]:
    """Put gaps together that share a front."""
    rows: list[tuple[set[str], list[Budget]]] = []
    for budget in gaps:
        names = {front.id for front, _ in budget.gap.sides}
        met = [row for row in rows if row[0] & names]
        rows = [row for row in rows if not row[0] & names]
        rows.append(
            (names.union(*(row[0] for row in met)), [b for row in met for b in row[1]] + [budget])
        )
    return (row for _, row in rows)


def _settle_row(row: Sequence[Budget]) -> Settled | None:
    fronts = {front.id: front for budget in row for front, _ in budget.gap.sides}
    if len(fronts) > LONGEST:
        return None
    reach = {name: adjusts(front, "x") for name, front in fronts.items()}
    spares: list[Spare] = []
    for budget in row:
        gap, least = budget.gap, budget.least.width
        assert least is not None, "rows are of gaps whose need is known"
        ends = (gap.one.id, gap.other.id if gap.other else None)
        left, right = ends if gap.edge == "right" else (ends[1], ends[0])
        spares.append((left, right, budget.left.middle - least))
    then, moves = settle(reach, spares)
    return Settled(moves=moves, before=min(spare for _, _, spare in spares), then=then)


EQUAL = 1e-4
"""Departures that differ by less are the same; mm."""


def level(reach: Mapping[str, float], gaps: Sequence[Spare]) -> dict[str, float]:
    """Give how far each front moves, up or to the right; `gaps`: departures from the plan, in
    place of spares, each with what is before and behind it."""
    moves = {name: 0.0 for name, far in reach.items() if far <= SLACK}
    left = list(gaps)
    while left := [gap for gap in left if any(_loose(gap, moves))]:
        for group in _groups(left, moves):
            moves |= _level_group(group, reach, moves)
    return {name: moves.get(name, 0.0) for name in reach}


def _loose(gap: Spare, moves: Mapping[str, float]) -> Iterator[str]:
    """Give the fronts at a gap that have no place yet."""
    return (name for name in gap[:2] if name is not None and name not in moves)


def _groups(gaps: Sequence[Spare], moves: Mapping[str, float]) -> list[list[Spare]]:
    """Put gaps together that share a front which has no place yet."""
    groups: list[tuple[set[str], list[Spare]]] = []
    for gap in gaps:
        names = set(_loose(gap, moves))
        met = [group for group in groups if group[0] & names]
        groups = [group for group in groups if not group[0] & names]
        groups.append(
            (names.union(*(own for own, _ in met)), [g for _, some in met for g in some] + [gap])
        )
    return [group for _, group in groups]


def _level_group(
    group: Sequence[Spare], reach: Mapping[str, float], moves: Mapping[str, float]
) -> dict[str, float]:
    """Give places to the fronts at the gaps that depart most."""
    loose = {name: reach[name] for gap in group for name in _loose(gap, moves)}
    if len(loose) > LONGEST:
        return dict.fromkeys(loose, 0.0)
    spares: list[Spare] = []
    for one, other, off in group:
        now = off + moves.get(other or "", 0.0) - moves.get(one or "", 0.0)
        before, behind = (name if name in loose else None for name in (one, other))
        spares += [(before, behind, now), (behind, before, -now)]
    spare, found = settle(loose, spares)
    placed: dict[str, float] = {}
    for before, behind, now in spares:
        then = now + found.get(behind or "", 0.0) - found.get(before or "", 0.0)
        if then <= spare + EQUAL:
            placed |= {name: found[name] for name in (before, behind) if name is not None}
    return placed or found
