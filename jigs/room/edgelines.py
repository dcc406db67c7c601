"""Edges of fronts side by side that an eye takes for one line, and that part by a little though
every gap is as planned: heights that were rounded box by box, or that came so.
"""

from collections.abc import Iterable, Iterator, Mapping
from typing import Literal

from msgspec import Struct

from jigs.box.parts import Front
from jigs.ground.geometry import SLACK
from jigs.room.beside import Meeting
from jigs.room.hung import HungFront

NEARLY = (0.3, 6.0)
"""What is in line with its neighbour but for so much looks like a mistake, a pull or an edge; less
is not seen, more is taken as meant so; mm (common practice, no source)."""


class Parted(Struct, frozen=True, kw_only=True):
    """An edge of two fronts side by side that is no line."""

    lower: Front
    higher: Front
    edge: Literal["top", "bottom"]
    step: float
    """By how much it parts, mm."""


def is_nearly(difference: float) -> bool:
    """Tell whether two heights, or places, are in line but for a little that is seen; mm."""
    return NEARLY[0] - SLACK <= difference <= NEARLY[1] + SLACK


def parted_edges(gaps: Iterable[Meeting], hung: Mapping[str, HungFront]) -> Iterator[Parted]:
    """Find the edges that part, of the fronts that `hung` has; `gaps` as planned, or as the fronts
    in hand make them."""
    for gap in gaps:
        if gap.axis != "x" or gap.other is None or not hung.keys() >= {*gap.names}:
            continue
        one, other = hung[gap.one.id], hung[gap.other.id]
        steps: dict[Literal["top", "bottom"], float] = {
            "top": other.top - one.top, "bottom": other.bottom - one.bottom,
        }  # fmt: skip
        for edge, step in steps.items():
            if is_nearly(abs(step)):
                lower, higher = (one, other) if step > 0 else (other, one)
                yield Parted(lower=lower.front, higher=higher.front, edge=edge, step=abs(step))
