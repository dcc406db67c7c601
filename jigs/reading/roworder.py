"""What looks upside down in a box whose rows stand from the top, and is asked: a drawer or a false
front under doors, in a tall box a longer door above a shorter one.
"""

from collections.abc import Sequence
from itertools import pairwise

from jigs.given.job import FrontSpec
from jigs.ground.geometry import SLACK

TALL = 1500.0
"""Fronts that come to more are before a tall box, mm (common practice, no source)."""
SAME = 1.0
"""Doors whose heights differ by less are alike, mm (common practice)."""
_HUNG = ("door", "pair")
_ON_TOP = ("drawer", "false-front")


def looks_turned(fronts: Sequence[FrontSpec]) -> tuple[int, str] | None:
    """Find what is strange in a box whose fronts stand so from the top: the place of the upper one
    of two, and what it is in words; None where nothing is."""
    known = [front.height for front in fronts if front.height is not None]
    tall = sum(known) > TALL
    for at, (upper, lower) in enumerate(pairwise(fronts)):
        if upper.kind not in _HUNG:
            continue
        if lower.kind == "false-front" or (lower.kind in _ON_TOP and not tall):
            return at, f"a {lower.kind.replace('-', ' ')} below a door"
        if not (tall and lower.kind in _HUNG and upper.height and lower.height):
            continue
        if upper.height > lower.height + SAME + SLACK:
            return at, "the longer door above the shorter one"
    return None
