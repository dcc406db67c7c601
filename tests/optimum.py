"""The fewest pages, found anew by integer programming (HiGHS, through scipy).

Nothing of the project's own search is used: whether cards find room in one room is one small
program each, by the usual big-M form of "left of, right of, below or above"; pages are then
counted over all ways to part the cards.
"""

from functools import lru_cache
from itertools import combinations

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp

from templates.packing import Room, Size

SLIP = 1e-6


class _Program:
    """Linear constraints gathered row by row, over variables added one by one."""

    def __init__(self) -> None:
        self.upper: list[float] = []
        self.integer: list[int] = []
        self.rows: list[dict[int, float]] = []
        self.most: list[float] = []

    def variable(self, upper: float, *, binary: bool = False) -> int:
        self.upper.append(upper)
        self.integer.append(int(binary))
        return len(self.upper) - 1

    def add(self, terms: dict[int, float], most: float) -> None:
        """Ask that the terms come to no more than `most`."""
        self.rows.append(terms)
        self.most.append(most)

    def solvable(self) -> bool:
        matrix = np.zeros((len(self.rows), len(self.upper)))
        for row, terms in enumerate(self.rows):
            for column, factor in terms.items():
                matrix[row, column] = factor
        result = milp(
            np.zeros(len(self.upper)),
            constraints=LinearConstraint(matrix, -np.inf, np.array(self.most)),
            integrality=np.array(self.integer),
            bounds=Bounds(np.zeros(len(self.upper)), np.array(self.upper)),
        )
        assert result.status in (0, 2), result.message
        return bool(result.status == 0)


@lru_cache(maxsize=200_000)
def fit_by_program(sizes: tuple[Size, ...], rooms: tuple[Room, ...], gap: float) -> bool:
    """Say whether cards find room in one of some rooms of one size whose blocks hang at the same
    places."""
    first = rooms[0]
    program = _Program()
    chosen = [program.variable(1.0, binary=True) for _ in rooms]
    program.add(dict.fromkeys(chosen, 1.0), 1.0)
    program.add(dict.fromkeys(chosen, -1.0), -1.0)
    wide, high = first.width + gap, first.height + gap
    xs = [program.variable(first.width - width + SLIP) for width, _ in sizes]
    ys = [program.variable(first.height - height + SLIP) for _, height in sizes]
    for i, j in combinations(range(len(sizes)), 2):
        ways = [program.variable(1.0, binary=True) for _ in range(4)]
        program.add(dict.fromkeys(ways, -1.0), -1.0)
        for way, (low, high_one, places, axis, most) in zip(
            ways,
            ((i, j, xs, 0, wide), (j, i, xs, 0, wide), (i, j, ys, 1, high), (j, i, ys, 1, high)),
            strict=True,
        ):
            # low + its size + gap <= high_one, where this way is chosen
            program.add(
                {places[low]: 1.0, places[high_one]: -1.0, way: most},
                most - sizes[low][axis] - gap + SLIP,
            )
    for card, (width, height) in enumerate(sizes):
        for block, (x0, x1, _) in enumerate(first.blocks):
            left, right, below = (program.variable(1.0, binary=True) for _ in range(3))
            program.add({left: -1.0, right: -1.0, below: -1.0}, -1.0)
            program.add({xs[card]: 1.0, left: wide}, wide + x0 - gap - width + SLIP)
            program.add({xs[card]: -1.0, right: wide}, wide - x1 - gap + SLIP)
            depths = {z: room.blocks[block][2] for z, room in zip(chosen, rooms, strict=True)}
            program.add(
                {ys[card]: 1.0, below: 2 * high, **depths},
                2 * high + first.height - gap - height + SLIP,
            )
    return program.solvable()


class Optimum:
    """The least number of pages for cards, over the rooms of first and of further pages."""

    def __init__(
        self,
        sizes: tuple[Size, ...],
        first: tuple[Room, ...],
        further: tuple[Room, ...],
        gap: float,
    ) -> None:
        self.sizes, self.gap = sizes, gap
        self.groups = {True: _grouped(first), False: _grouped(further)}
        self.known: dict[tuple[bool, frozenset[int]], bool] = {}

    def fits(self, first: bool, cards: frozenset[int]) -> bool:
        """Say whether a set of cards finds room on one page."""
        key = first, cards
        if key not in self.known:
            # What a smaller set does not do a larger one does not either.
            self.known[key] = all(
                self.fits(first, cards - {card}) for card in cards if len(cards) > 1
            ) and self._fits_anew(first, cards)
        return self.known[key]

    def _fits_anew(self, first: bool, cards: frozenset[int]) -> bool:
        sizes = tuple(sorted(self.sizes[card] for card in cards))
        area = sum(width * height for width, height in sizes)
        return any(
            fit_by_program(sizes, rooms, self.gap)
            for group in self.groups[first]
            if (rooms := tuple(room for room in group if area <= room.area))
            and all(w <= group[0].width and h <= group[0].height for w, h in sizes)
        )

    def possible(self, pages: int) -> bool:
        """Say whether so many pages can do."""
        cards = frozenset(range(len(self.sizes)))
        begins = any(self.fits(True, frozenset({card})) for card in cards)
        return self._possible(cards, pages, begins)

    def _possible(self, cards: frozenset[int], pages: int, first: bool) -> bool:
        if not cards:
            return True
        if pages == 0:
            return False
        if pages == 1:
            return self.fits(first, cards)
        return any(
            self._possible(cards - page, pages - 1, False) for page in self._pages(cards, first)
        )

    def _pages(self, cards: frozenset[int], first: bool) -> list[frozenset[int]]:
        """Sets that a page can take; a further page takes the first card left, since all are
        alike. Largest first."""
        found: list[frozenset[int]] = []
        layer = [frozenset({card}) for card in (cards if first else {min(cards)})]
        layer = [page for page in layer if self.fits(first, page)]
        while layer:
            found += layer
            layer = list(
                {
                    page | {card}
                    for page in layer
                    for card in cards - page
                    if self.fits(first, page | {card})
                }
            )
        return found[::-1]


def _grouped(rooms: tuple[Room, ...]) -> list[tuple[Room, ...]]:
    """Put rooms together that one program can choose among."""
    groups: dict[object, list[Room]] = {}
    for room in dict.fromkeys(rooms):
        spans = tuple((x0, x1) for x0, x1, _ in room.blocks)
        groups.setdefault((room.width, room.height, spans), []).append(room)
    return [tuple(group) for group in groups.values()]
