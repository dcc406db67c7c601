"""The front in hand: it was ordered in one size and has arrived in another.

Holes keep their distance from the bottom edge and, on a door, from the hinge edge, so that cups
go on meeting their plates; what stands about the middle follows the middle of the front as it
is. The front is measured across at top and bottom, and up at left and right; what is printed is
the mean of both.

>>> from jigs.given.job import FrontSpec
>>> from jigs.given.taped import Taped
>>> spec = FrontSpec(id="F", kind="door", measured=Taped(width=(454.0, 455.0)))
>>> Measured.of(spec, width=454.0, height=613.0).width
454.5
"""

from collections.abc import Collection, Sequence
from dataclasses import dataclass, replace
from math import hypot

from jigs.box.byhand import front_by_hand
from jigs.box.fittings import FrontFittings
from jigs.box.fronts import PlacedFront
from jigs.box.place import Gaps
from jigs.fittings.kinds import kind_of
from jigs.given.job import FrontSpec
from jigs.ground.geometry import Fitting

SAME_PLACE = 0.01
"""Two edges this near face each other across one gap; mm."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Measured:
    """A front's sizes as measured, mm; where one was not measured, as ordered."""

    width: float
    height: float

    @staticmethod
    def of(spec: FrontSpec, *, width: float, height: float) -> "Measured":
        """Give the sizes in hand of a front ordered in this size; mm."""
        across, up = spec.measured.width, spec.measured.height
        return Measured(
            width=width if across is None else sum(across) / 2,
            height=height if up is None else sum(up) / 2,
        )

    @property
    def diagonal(self) -> float:
        """From corner to corner, if it is square; mm."""
        return hypot(self.width, self.height)


def is_measured(spec: FrontSpec) -> bool:
    """Tell whether anything of a front was measured across, up or from corner to corner."""
    return has_size(spec) or spec.measured.diagonals is not None


def has_size(spec: FrontSpec) -> bool:
    """Tell whether a front's width or height was measured."""
    return spec.measured.width is not None or spec.measured.height is not None


def lean_of(diagonals: tuple[float, float], size: Measured) -> float:
    """Give how far a front with these diagonals leans over its longer edge, mm.

    Of a front skewed but else true: the difference of its diagonals times the diagonal over
    twice the shorter side (derived: by the law of cosines).

    >>> round(lean_of((763.8, 761.8), Measured(width=454.0, height=613.0)), 2)
    1.68
    """
    return abs(diagonals[0] - diagonals[1]) * size.diagonal / (2 * min(size.width, size.height))


def take_in_hand(
    fronts: Sequence[PlacedFront], refused: Collection[str] = ()
) -> tuple[PlacedFront, ...]:
    """Give the fronts of a box as they are in hand, with the gaps that they then leave.

    Bottom edges stay, and the hinge edges of doors; other fronts stay about their middle. Those
    `refused` are not taken: another is made in the size that was ordered.
    """
    moves = {
        front.id: _moves(front)
        for front in fronts
        if is_measured(front.spec) and front.id not in refused
    }
    if not moves:
        return tuple(fronts)
    still = (0.0, 0.0, 0.0)
    made: list[PlacedFront] = []
    for front in fronts:
        left, right, top = moves.get(front.id, still)
        gap_left, gap_right = front.gaps.left - left, front.gaps.right - right
        gap_top, gap_bottom = front.gaps.top - top, front.gaps.bottom
        for other in fronts:
            theirs = moves.get(other.id, still)
            beside = _overlap(front.place.y, front.top, other.place.y, other.top)
            if beside and _meet(other.place.x + other.width + front.gaps.left, front.place.x):
                gap_left -= theirs[1]
            if beside and _meet(front.place.x + front.width + front.gaps.right, other.place.x):
                gap_right -= theirs[0]
            stacked = _overlap(
                front.place.x,
                front.place.x + front.width,
                other.place.x,
                other.place.x + other.width,
            )
            if stacked and _meet(other.top + front.gaps.bottom, front.place.y):
                gap_bottom -= theirs[2]
        made.append(
            replace(
                front,
                place=replace(front.place, x=front.place.x - left),
                width=front.width + left + right,
                height=front.height + top,
                gaps=Gaps(left=gap_left, right=gap_right, top=gap_top, bottom=gap_bottom),
            )
        )
    return tuple(made)


def move_fittings(
    fitted: FrontFittings, ordered: PlacedFront, in_hand: PlacedFront
) -> FrontFittings:
    """Give what is drilled into a front in hand, from what was meant for it as ordered.

    Holes by hand stay where the person has stated them; a mirrored one is counted from the right
    edge of the front in hand, one stated from the top from its top edge.
    """
    shift = ordered.place.x - in_hand.place.x
    if shift == 0.0 and (ordered.width, ordered.height) == (in_hand.width, in_hand.height):
        return fitted
    drawer = fitted.drawer
    return replace(
        fitted,
        front=(
            *(_moved(fitting, shift) for fitting in fitted.front if not kind_of(fitting).stated),
            *front_by_hand(in_hand),
        ),
        drawer=drawer and replace(drawer, x=drawer.x + shift),
    )


def _moved(fitting: Fitting, shift: float) -> Fitting:
    return replace(
        fitting,
        holes=tuple(replace(hole, x=hole.x + shift) for hole in fitting.holes),
        outline=tuple(tuple((x + shift, y) for x, y in polygon) for polygon in fitting.outline),
        carry=tuple(x + shift for x in fitting.carry),
    )


def _moves(front: PlacedFront) -> tuple[float, float, float]:
    """Give how far the left, right and top edges lie further out than ordered; mm."""
    measured = Measured.of(front.spec, width=front.width, height=front.height)
    wider, higher = measured.width - front.width, measured.height - front.height
    if front.kind == "door" and front.hinged == "left":
        return 0.0, wider, higher
    if front.kind == "door" and front.hinged == "right":
        return wider, 0.0, higher
    return wider / 2, wider / 2, higher


def _overlap(low: float, high: float, other_low: float, other_high: float) -> bool:
    return min(high, other_high) - max(low, other_low) > SAME_PLACE


def _meet(one: float, other: float) -> bool:
    return abs(one - other) < SAME_PLACE
