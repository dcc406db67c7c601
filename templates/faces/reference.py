"""Where a card is set: on an edge of the part, on an index line, or on the middle.

An edge that is near is the best reference there is: the paper is folded over it. Where none is
near, the card is set on a pencil line at a round figure that a tape shows (a whole inch, a
whole 10 mm), or at the middle of the part, found from both ends.
"""

import math
from typing import Literal

from msgspec import Struct

from jigs.ground.geometry import SLACK, Axis, FaceEdge

Wish = Literal["low", "high", "near", "middle"]

REACH = 150.0
"""How far a hole may lie from a line, mm: paper grows, joins slip (common practice, no source)."""
FOLD_REACH = 160.0
"""How far from an edge that the paper is folded over, which spares a line; mm."""


class Reference(Struct, frozen=True, kw_only=True):
    """The line a card is set on along one axis.

    `edge` is the part's edge that distances are measured from (of a middle: the low one);
    `value` how far the index line lies from it (0 for an edge itself), mm; `at` its coordinate
    on the face as seen. `inward` is +1 where coordinates grow away from the edge, else -1.
    """

    axis: Axis
    kind: Literal["edge", "index", "middle"]
    edge: FaceEdge
    value: float
    at: float
    inward: Literal[1, -1]

    def distance(self, coordinate: float) -> float:
        """Give how far inward of the line a coordinate lies, mm; negative before it."""
        return (coordinate - self.at) * self.inward


def choose_reference(
    axis: Axis,
    low: float,
    high: float,
    length: float,
    wish: Wish,
    *,
    step: float,
    clear: float,
    fallback: Literal["low", "near"] = "near",
    edge: bool = True,
    reach: float = FOLD_REACH,
) -> Reference:
    """Choose the reference for holes between `low` and `high` on a part `length` mm long.

    `wish` names the edge wanted. An edge serves if the far hole is within reach of it, or the
    near one is and an index line could do no better. `step` is the distance between round
    figures, `clear` what must lie between an index line and the nearest hole's centre.
    `reach` is how far away an edge is folded for the line that it spares. `fallback` says which
    edge an index line counts from; without `edge` an index line is wanted even where an edge
    would serve.
    """
    if wish == "middle":
        return Reference(
            axis=axis,
            kind="middle",
            edge="left" if axis == "x" else "bottom",
            value=length / 2,
            at=length / 2,
            inward=1,
        )
    nearer_low = low <= length - high + SLACK
    use_low = wish == "low" or (wish == "near" and nearer_low)
    near, far = (low, high) if use_low else (length - high, length - low)
    long = near <= REACH and far - near > REACH - step - clear
    if edge and (far <= reach + SLACK or long):
        return _reference(axis, use_low, 0.0, length)
    if fallback == "low":
        use_low, near = True, low
    value = math.floor((near - clear) / step + SLACK) * step
    return _reference(axis, use_low, max(value, 0.0), length)


def _reference(axis: Axis, low: bool, value: float, length: float) -> Reference:
    edges: tuple[FaceEdge, FaceEdge] = ("left", "right") if axis == "x" else ("bottom", "top")
    return Reference(
        axis=axis,
        kind="edge" if value == 0.0 else "index",
        edge=edges[0] if low else edges[1],
        value=value,
        at=value if low else length - value,
        inward=1 if low else -1,
    )
