"""Does the front in hand answer the order? Its sizes, its squareness, width for height."""

from jigs.checks.finding import error, warning
from jigs.fronts import SAME_SIZE, PlacedFront
from jigs.geometry import SLACK
from jigs.inhand import Measured, is_measured
from jigs.job import Unit
from jigs.lengths import format_length
from jigs.problems import Problem

OUT_OF_SQUARE = 1.0
"""Two measures of one size may differ by this much; mm (common practice, no source)."""
ACCEPTED = 1.6
"""A delivered size may differ from the order by this much; mm (common practice, no source)."""


def check_measured(front: PlacedFront, in_hand: PlacedFront, unit: Unit) -> tuple[Problem, ...]:
    """List how a front in hand differs from the order."""
    if not is_measured(front.spec):
        return ()
    made = Measured.of(front.spec, width=front.width, height=front.height)
    turned = max(abs(made.width - front.height), abs(made.height - front.width)) <= SAME_SIZE
    if turned and abs(made.width - front.width) > SAME_SIZE:
        return (
            error(
                "sizes-exchanged",
                front.id,
                f"width and height swapped? Measured {_size(made.width, made.height, unit)}, "
                f"ordered {_size(front.width, front.height, unit)}",
                "measure again, up being the way it hangs; if it was made so, have it made anew",
            ),
        )
    problems = [*_check_square(front, unit)]
    off = max(abs(made.width - front.width), abs(made.height - front.height))
    if off > ACCEPTED + SLACK:
        gaps = (in_hand.gap_left, in_hand.gap_right, in_hand.gap_top, in_hand.gap_bottom)
        problems.append(
            warning(
                "size-differs",
                front.id,
                f"measured {_size(made.width, made.height, unit)}, ordered "
                f"{_size(front.width, front.height, unit)}: more than "
                f"{format_length(ACCEPTED, unit)} beside; its smallest gap becomes "
                f"{format_length(min(gaps), unit)}",
                "try it on its box before drilling; trim it, or have it made anew",
            )
        )
    return tuple(problems)


def _check_square(front: PlacedFront, unit: Unit) -> tuple[Problem, ...]:
    problems = []
    for both, size, first, second in (
        (front.spec.measured_width, "wide", "top", "bottom"),
        (front.spec.measured_height, "high", "left", "right"),
    ):
        if both is not None and abs(both[0] - both[1]) > OUT_OF_SQUARE + SLACK:
            problems.append(
                warning(
                    "out-of-square",
                    front.id,
                    f"{format_length(both[0], unit)} {size} at the {first} and "
                    f"{format_length(both[1], unit)} at the {second}: it is out of square",
                    "set it out from the edges that the cards name, and try it before painting",
                )
            )
    return tuple(problems)


def _size(width: float, height: float, unit: Unit) -> str:
    return f"{format_length(width, unit)} x {format_length(height, unit)}"
