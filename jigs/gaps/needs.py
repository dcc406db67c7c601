"""The least that a gap needs, by what stands at it: two hinge edges want both their least reveals,
a free edge its swing, a drawer room to pass, a counter its distance; what never moves needs none.

Common practice, but for the swing (`jigs.box.leastgap`). A gap out of square is told among what
takes from it.
"""

from dataclasses import dataclass

from jigs.box.leastgap import LEAST_DRAWER, UNDER_COUNTER, least_at_free_edge
from jigs.box.parts import Front
from jigs.gaps.beside import EDGES, Meeting
from jigs.ground.geometry import FaceEdge


@dataclass(frozen=True, slots=True, kw_only=True)
class Least:
    """The least gap that is needed, mm: None where only the leaflet knows it. `open`: it rests on
    a hinge's least reveal that nobody has looked up."""

    width: float | None
    open: bool = False


def least_of(gap: Meeting) -> Least:
    """Give the least that a gap needs."""
    needs = [_need(front, edge) for front, edge in gap.sides]
    if gap.beside == "counter":
        needs.append(Least(width=UNDER_COUNTER))
    widths = [need.width for need in needs]
    known = [width for width in widths if width is not None]
    if len(known) < len(widths):
        return Least(width=None)
    if is_hinge_to_hinge(gap):
        return Least(width=sum(known), open=any(need.open for need in needs))
    width = max(known)
    return Least(width=width, open=any(n.open for n in needs if n.width == width))


def is_hinge_to_hinge(gap: Meeting) -> bool:
    """Tell whether two doors are hinged at a gap."""
    return gap.other is not None and all(_is_hinge_edge(*side) for side in gap.sides)


def least_hinged_elsewhere(gap: Meeting) -> float | None:
    """Give the least that a gap between two hinge edges would need, were one of the doors hinged at
    its other edge; None where only the leaflet knows; mm."""
    needs = [_need(front, edge).width for front, edge in gap.sides]
    free = [least_at_free_edge(front) for front, _ in gap.sides]
    known = [need for need in needs if need is not None]
    return max(min(known), *free) if len(known) == len(needs) else None


def _is_hinge_edge(front: Front, edge: FaceEdge) -> bool:
    return front.kind == "door" and front.hinged == edge and front.place.overlay != "inset"


def _need(front: Front, edge: FaceEdge) -> Least:
    """Give what a front needs at one of its edges."""
    if front.kind == "false-front":
        return Least(width=0.0)
    if _is_hinge_edge(front, edge):
        least = front.least_reveal
        return Least(width=None) if least is None else Least(width=least.width, open=least.open)
    if front.kind == "door" and EDGES[edge] == "x":
        return Least(width=least_at_free_edge(front))
    return Least(width=LEAST_DRAWER)
