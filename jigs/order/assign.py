"""The best assignment: as many pieces to places as there can be, and those with least cost.

Pieces come in kinds with a count, places too; only allowed pairs have a cost. Each step sends one
more lot along the cheapest way, on which pieces already placed may move on to other places
(successive shortest paths; the method of any handbook of network flows).

>>> assign([1, 1], [1, 1], {(0, 0): 0.0, (0, 1): 1.0, (1, 0): 0.1})
{(0, 1): 1, (1, 0): 1}
"""

from collections import deque
from collections.abc import Iterable, Mapping, Sequence

MOST_PAIRS = 4000
"""Pairs of one group above which the nearest are simply taken first: no kitchen has as many."""

Pair = tuple[int, int]


def assign(
    pieces: Sequence[int], places: Sequence[int], costs: Mapping[Pair, float]
) -> dict[Pair, int]:
    """Give how many pieces of each kind go to each kind of place."""
    taken: dict[Pair, int] = {}
    for group in _groups(costs):
        part = {pair: costs[pair] for pair in group}
        way = _cheapest if len(part) <= MOST_PAIRS else _nearest_first
        taken |= way(pieces, places, part)
    return dict(sorted((pair, n) for pair, n in taken.items() if n))


def _groups(pairs: Iterable[Pair]) -> list[list[Pair]]:
    """Part the pairs into groups that have no kind in common."""
    at_piece: dict[int, list[int]] = {}
    at_place: dict[int, list[int]] = {}
    for piece, place in pairs:
        at_piece.setdefault(piece, []).append(place)
        at_place.setdefault(place, []).append(piece)
    groups: list[list[Pair]] = []
    seen: set[int] = set()
    for start in at_piece:
        if start in seen:
            continue
        seen.add(start)
        group, waiting = [], [start]
        while waiting:
            piece = waiting.pop()
            for place in at_piece[piece]:
                group.append((piece, place))
                for other in at_place.pop(place, ()):
                    if other not in seen:
                        seen.add(other)
                        waiting.append(other)
        groups.append(group)
    return groups


def _nearest_first(
    pieces: Sequence[int], places: Sequence[int], costs: Mapping[Pair, float]
) -> dict[Pair, int]:
    left, open_ = dict(enumerate(pieces)), dict(enumerate(places))
    taken: dict[Pair, int] = {}
    for piece, place in sorted(costs, key=lambda pair: (costs[pair], pair)):
        if n := min(left[piece], open_[place]):
            taken[piece, place] = n
            left[piece] -= n
            open_[place] -= n
    return taken


def _cheapest(
    pieces: Sequence[int], places: Sequence[int], costs: Mapping[Pair, float]
) -> dict[Pair, int]:
    taken = dict.fromkeys(costs, 0)
    left = {piece: pieces[piece] for piece, _ in costs}
    open_ = {place: places[place] for _, place in costs}
    while way := _find_way(costs, taken, left, open_):
        back = [pair for number, pair in enumerate(way) if number % 2]
        ends = (left[way[0][0]], open_[way[-1][1]])
        n = min(*ends, *(taken[pair] for pair in back))
        for number, pair in enumerate(way):
            taken[pair] += -n if number % 2 else n
        left[way[0][0]] -= n
        open_[way[-1][1]] -= n
    return taken


def _find_way(
    costs: Mapping[Pair, float],
    taken: Mapping[Pair, int],
    left: Mapping[int, int],
    open_: Mapping[int, int],
) -> list[Pair]:
    """Give the cheapest way for one more lot: pairs to add and, every second one, to take off."""
    out: dict[int, list[int]] = {}
    back: dict[int, list[int]] = {}
    for piece, place in costs:
        out.setdefault(piece, []).append(place)
        back.setdefault(place, []).append(piece)
    # A node is a kind of piece, or of place; `came` is the node before it on the cheapest way.
    cost: dict[tuple[str, int], float] = {("piece", p): 0.0 for p, n in left.items() if n}
    came: dict[tuple[str, int], tuple[str, int]] = {}
    waiting = deque(cost)
    while waiting:
        node = waiting.popleft()
        kind, number = node
        if kind == "piece":
            ways = [(("place", p), costs[number, p]) for p in out[number]]
        else:
            ways = [(("piece", p), -costs[p, number]) for p in back[number] if taken[p, number]]
        for there, step in ways:
            # A hair of slack, so that a rounding never makes a way round in a ring cheaper.
            if cost[node] + step < cost.get(there, float("inf")) - 1e-9:
                cost[there] = cost[node] + step
                came[there] = node
                if there not in waiting:
                    waiting.append(there)
    ends = [("place", p) for p, n in open_.items() if n and ("place", p) in cost]
    if not ends:
        return []
    node = min(ends, key=lambda end: (cost[end], end))
    way: list[Pair] = []
    while node in came:
        before = came[node]
        way.append((before[1], node[1]) if node[0] == "place" else (node[1], before[1]))
        node = before
    return way[::-1]
