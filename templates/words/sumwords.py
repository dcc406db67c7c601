"""Distances along a part that add up, as printed, to its size."""

from collections.abc import Iterable, Sequence
from itertools import groupby, pairwise

from jigs.ground.lengths import count_tenths

ROW = 4
"""From so many equal steps on, as in a row of shelf pins, they are written once."""


def closing_words(places: Iterable[float], length: float, said: Sequence[str] = ()) -> str:
    """Write distances that add up as printed: the last takes the rounding. `said`: what stands
    behind each.

    >>> closing_words([97.75, 513.75], 613.0)
    '97.8 + 416.0 + 99.2 = 613.0'
    >>> closing_words([51.0, 83.0, 115.0, 147.0, 179.0], 320.0)
    '51.0 + 4 x 32.0 + 141.0 = 320.0'
    """
    ends = [0, *(count_tenths(place) for place in places), count_tenths(length)]
    said = said or [""] * (len(ends) - 1)
    terms = [
        f"{(b - a) / 10:.1f}{words}" for (a, b), words in zip(pairwise(ends), said, strict=True)
    ]
    sizes = [(term, len([*run])) for term, run in groupby(terms)]
    written = [f"{n} x {term}" if n >= ROW else " + ".join([term] * n) for term, n in sizes]
    return f"{' + '.join(written)} = {ends[-1] / 10:.1f}"
