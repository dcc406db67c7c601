"""Was something exchanged, though it is within its limits? Asked where all would fit better so.

Two fronts 1/16 apart, each with the other's label, are both within the 1.6 that is accepted, and
both wrong; so is a front nearly as wide as high that was made the other way round.
"""

from collections.abc import Iterable, Iterator, Sequence
from itertools import product
from math import floor

from jigs.box.parts import Front
from jigs.given.job import BoxSpec, FrontKind
from jigs.ground.finding import warning
from jigs.ground.lengths import Unit, format_length
from jigs.ground.problems import Problem

FITS = 0.8
"""Two fronts fit each other's orders if all their sizes together are no further off; mm (derived:
two fronts of two sizes, each within a tape's 0.2)."""
BETTER = 1.2
"""By so much less they are off in all, crosswise; mm (derived: of two fronts 1/16 apart that are
exchanged it is 3.2, of one nearly square 1.6 apart as well)."""
HIGHEST: dict[FrontKind, float] = {"drawer": 1.5, "false-front": 1.5}
"""A front of these kinds is at most so many times as high as wide (common practice, no source)."""
WIDEST: dict[FrontKind, float] = {"door": 2.0, "pair": 2.0, "pullout": 1.5}
"""A front, or leaf, of these kinds is at most so many times as wide as high (the same)."""


def check_crosswise(
    boxes: Iterable[BoxSpec], fronts: Sequence[Front], unit: Unit
) -> tuple[Problem, ...]:
    """List the fronts whose labels, or whose width and height, were perhaps exchanged."""
    measured = [front for front in fronts if front.ordered and not front.withheld]
    return (
        *_exchanged_labels(measured, unit),
        *_turned(measured, unit),
        *(problem for box in boxes if box.inferred for problem in _odd_shapes(box, unit)),
    )


def _off(front: Front, ordered: tuple[float, float]) -> float:
    """How far a front's sizes as measured are off an order, both together; mm."""
    return abs(front.width - ordered[0]) + abs(front.height - ordered[1])


def _exchanged_labels(measured: Sequence[Front], unit: Unit) -> Iterator[Problem]:
    orders = _Orders(measured)
    told: set[str] = set()
    for front in measured:
        if front.ordered is None or front.id in told or _off(front, front.ordered) < BETTER / 2:
            continue
        for other in orders.fitted_by(front):
            if other.ordered is None or other.id in told:
                continue
            crosswise = _off(front, other.ordered) + _off(other, front.ordered)
            straight = _off(front, front.ordered) + _off(other, other.ordered)
            if crosswise <= FITS and straight - crosswise >= BETTER:
                told |= {front.id, other.id}
                yield warning(
                    "exchanged-perhaps",
                    front.id,
                    f"labels exchanged with {other.id}? As measured it is "
                    f"{_size(front.width, front.height, unit)}, as {other.id} was ordered, and "
                    f"{other.id} is {_size(other.width, other.height, unit)}, as {front.id} was",
                    "measure both again; if so, exchange their labels before drilling",
                    (other.id,),
                )
                break


class _Orders:
    """The sizes that were ordered, each once, in squares of FITS by which those near are found."""

    def __init__(self, measured: Iterable[Front]) -> None:
        self._fronts: dict[tuple[float, float], list[Front]] = {}
        for front in measured:
            if front.ordered is not None:
                self._fronts.setdefault(front.ordered, []).append(front)
        self._near: dict[tuple[int, int], list[tuple[float, float]]] = {}
        for order in sorted(self._fronts):
            self._near.setdefault(_square(*order), []).append(order)

    def fitted_by(self, front: Front) -> Iterator[Front]:
        """Give the fronts of other sizes whose order one fits as it was measured."""
        across, up = _square(front.width, front.height)
        for square in product(range(across - 1, across + 2), range(up - 1, up + 2)):
            for order in self._near.get(square, ()):
                if order != front.ordered and _off(front, order) <= FITS:
                    yield from self._fronts[order]


def _square(width: float, height: float) -> tuple[int, int]:
    return floor(width / FITS), floor(height / FITS)


def _turned(measured: Sequence[Front], unit: Unit) -> Iterator[Problem]:
    for front in measured:
        assert front.ordered is not None, "only such are measured"
        turned = _off(front, front.ordered[::-1])
        if turned <= FITS / 2 and _off(front, front.ordered) - turned >= BETTER:
            yield warning(
                "exchanged-perhaps",
                front.id,
                f"width and height exchanged? Measured {_size(front.width, front.height, unit)}, "
                f"ordered {_size(*front.ordered, unit)}",
                "measure again, up being the way it hangs",
            )


def _odd_shapes(box: BoxSpec, unit: Unit) -> Iterator[Problem]:
    """Find fronts of an odd shape where nothing but their own sizes says how wide the box is."""
    for spec in box.fronts:
        if spec.width is None or spec.height is None:
            continue
        high = spec.kind in HIGHEST and spec.height > HIGHEST[spec.kind] * spec.width
        wide = spec.kind in WIDEST and spec.width > WIDEST[spec.kind] * spec.height
        if high or wide:
            yield warning(
                "exchanged-perhaps",
                spec.id if spec.kind != "pair" else box.id,
                f"width and height exchanged? A {spec.kind.replace('-', ' ')} "
                f"{format_length(spec.width, unit)} wide and "
                f"{format_length(spec.height, unit)} high",
                "exchange them in the list, if so, and ask the supplier what was made",
            )


def _size(width: float, height: float, unit: Unit) -> str:
    return f"{format_length(width, unit)} x {format_length(height, unit)}"
