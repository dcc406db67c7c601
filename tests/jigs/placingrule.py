"""The rule for placing hinges, tried place by place: it knows the rule's words and nothing else.

Every grid place and every whole millimetre is listed, those that may not be are struck out, and
one is chosen by its distance. Lengths are whole numbers of 1/1200 mm, so that a tie is a tie: a
twentieth of a millimetre divides without rest by all that the rule divides by.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

MM = 1200
"""A millimetre."""

Span = tuple[int, int]


def units(length: float) -> int:
    """Give a length in mm, a whole number of twentieths, in units."""
    twentieths = round(length * 20)
    assert abs(length * 20 - twentieths) < 1e-6
    return twentieths * MM // 20


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """The heights from the bottom up, and those of them that are not on the grid; in mm."""

    heights: tuple[float, ...]
    off_grid: tuple[float, ...]


def hinges_of(height: float) -> int:
    """<= 900: 2, <= 1500: 3, <= 2000: 4, <= 2400: 5 (common practice)."""
    return 2 + (height > 900) + (height > 1500) + (height > 2000)


def first_hole(side: float) -> float:
    """The smallest (S - 32 k) / 2, k whole, that is 16 or more."""
    able = [(side - 32 * k) / 2 for k in range(int(side)) if side - 32 * k > 32 - 1e-6]
    return min(able)


def answer(
    *,
    bottom: float,
    height: float,
    count: int,
    grid: float | None,
    panels: Iterable[tuple[float, float]],
    holes: Iterable[tuple[float, float]],
) -> Answer | None:
    """Give where the hinges of a door stand, or None where one has no room; mm."""
    low, high = units(bottom), units(bottom) + units(height)
    stopped = [(units(under), units(over)) for under, over in panels]
    bored = [(units(x), units(y)) for x, y in holes]
    end = min(max((units(height) - 160 * MM) // 2, 55 * MM), 100 * MM)
    every = () if grid is None else _grid(units(grid), high)
    got: list[int] = []
    off: list[int] = []

    def settle(target: int, window: int) -> bool:
        def able(places: Iterable[int]) -> list[int]:
            return [
                y
                for y in places
                if abs(y - target) <= window and _free(y, (low, high), stopped, bored, got)
            ]

        places = able(every)
        if not places:
            places = able(target + step * MM for step in range(-window // MM, window // MM + 1))
            if not places:
                return False
            if grid is not None:
                off.append(_nearest(places, target))
        got.append(_nearest(places, target))
        return True

    if not (settle(low + end, 30 * MM) and settle(high - end, 30 * MM)):
        return None
    lowest, highest = got
    for number in range(1, count - 1):
        rise = (highest - lowest) * number
        assert rise % (count - 1) == 0
        if not settle(lowest + rise // (count - 1), 48 * MM):
            return None
    return Answer(
        heights=tuple(y / MM for y in sorted(got)), off_grid=tuple(y / MM for y in sorted(off))
    )


def _grid(first: int, top: int) -> tuple[int, ...]:
    """All places y0 + 16 + 32 i up to past the door's top."""
    places = []
    y = first + 16 * MM - 40 * 32 * MM
    while y < top + 100 * MM:
        places.append(y)
        y += 32 * MM
    return tuple(places)


def _nearest(places: Iterable[int], target: int) -> int:
    """The nearest; of two as near, the upper one."""
    return min(places, key=lambda y: (abs(y - target), -y))


def _free(
    y: int, door: Span, panels: Sequence[Span], holes: Sequence[Span], got: Sequence[int]
) -> bool:
    if min(y - door[0], door[1] - y) < 35 * MM:
        return False
    if any(under - 35 * MM < y < over + 35 * MM for under, over in panels):
        return False
    if any(abs(y - other) < 64 * MM for other in got):
        return False
    for x, z in holes:
        for plate in (y - 16 * MM, y + 16 * MM):
            apart = (x - 37 * MM) ** 2 + (z - plate) ** 2
            if (MM // 5) ** 2 < apart < (25 * MM // 2) ** 2:
                return False
    return True
