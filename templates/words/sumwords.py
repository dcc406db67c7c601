"""Distances along a part that add up, as printed, to its size."""

from collections.abc import Iterable, Sequence
from itertools import accumulate, groupby, pairwise

from jigs.ground.lengths import count_tenths, format_mm

ROW = 4
"""From so many equal steps on, as in a row of shelf pins, they are written once."""


def closing_words(
    places: Iterable[float], length: float, said: Sequence[str] = (), *, steps: bool = False
) -> str:
    """Write distances that add up as printed: the last takes the rounding. `said`: what stands
    behind each. Rounded are the places, as they are printed elsewhere; with `steps` the distances
    between them, where it is these that stand elsewhere or are measured there.

    >>> closing_words([97.75, 513.75], 613.0)
    '97.8 + 416.0 + 99.2 = 613.0'
    >>> closing_words([94.9625, 669.9375], 769.9375)
    '95.0 + 574.9 + 100.0 = 769.9'
    >>> closing_words([94.9625, 669.9375], 769.9375, steps=True)
    '95.0 + 575.0 + 99.9 = 769.9'
    >>> closing_words([51.0, 83.0, 115.0, 147.0, 179.0], 320.0)
    '51.0 + 4 x 32.0 + 141.0 = 320.0'
    """
    exact = [0.0, *places]
    if steps:
        inner = [*accumulate(count_tenths(b - a) for a, b in pairwise(exact))]
    else:
        inner = [count_tenths(place) for place in exact[1:]]
    ends = [0, *inner, count_tenths(length)]
    said = said or [""] * (len(ends) - 1)
    terms = [
        f"{(b - a) / 10:.1f}{words}" for (a, b), words in zip(pairwise(ends), said, strict=True)
    ]
    sizes = [(term, len([*run])) for term, run in groupby(terms)]
    written = [f"{n} x {term}" if n >= ROW else " + ".join([term] * n) for term, n in sizes]
    return f"{' + '.join(written)} = {ends[-1] / 10:.1f}"


def punches_words(places: Iterable[float]) -> str:
    """Write the distances from punch to punch, each rounded by itself: the same on both parts.

    >>> punches_words([94.9625, 669.9375])
    '575.0'
    """
    return ", ".join(format_mm(b - a) for a, b in pairwise(places))
