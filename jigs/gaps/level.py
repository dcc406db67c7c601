"""Places of fronts at which every gap comes as near to its plan as the adjusters let it.

The greatest departure is made as small as can be, with the least sum of moves; then what bears on
it stands, and the same is done with what is left. A departure both ways is two spares of
`jigs.gaps.even.settle`.

>>> level({"A": 2.0, "B": 2.0}, [(None, "A", -1.0), ("A", "B", 1.5), ("B", None, -0.5)])
{'A': 1.0, 'B': -0.5}
"""

from collections.abc import Iterator, Mapping, Sequence

from jigs.gaps.even import LONGEST, Spare, settle
from jigs.ground.geometry import SLACK

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
