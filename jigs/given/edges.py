"""The edges of a front that are not square: rounded over, or bevelled to be pulled by.

A paper folded over a rounded edge takes the short way along its quarter circle, pi R / 2 instead
of 2 R round the corner, and so lies too far in. A bevel for the fingers runs along the edge that
the hand finds: the top of fronts below a counter, the bottom of wall fronts. No rule and no
paper stands on it.

>>> round(fold_error(3.0), 2)
1.29
"""

import math
from typing import Literal

from jigs.given.job import BoxKind
from jigs.given.stated import Profile

BevelledEdge = Literal["top", "bottom"]


def fold_error(radius: float) -> float:
    """Give how far paper folded over an edge of this radius lies out, mm: 0.43 R (derived)."""
    return (2.0 - math.pi / 2) * radius


def bevelled_edge(profile: Profile | None, box_kind: BoxKind) -> BevelledEdge | None:
    """Give the edge of a front that carries a bevel for the fingers; None where it has none."""
    if profile is None:
        return None
    return "bottom" if box_kind == "wall" else "top"
