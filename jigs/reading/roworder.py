"""From which end the rows of a box stand: as its notes say (`unten`, `lower`), else from the top.
What looks upside down is asked: a drawer or a false front under doors, in a tall box a longer door
above a shorter one.

>>> notes_say(["below", "above"]), notes_say(["above", None]), notes_say([None, None])
(('from-bottom', True), ('from-top', False), (None, False))
"""

from collections.abc import Sequence
from itertools import pairwise

from jigs.given.job import FrontSpec
from jigs.given.listspec import RowsFrom
from jigs.ground.geometry import SLACK
from jigs.reading.frontwords import Place

TALL = 1500.0
"""Fronts that come to more are before a tall box, mm (common practice, no source)."""
SAME = 1.0
"""Doors whose heights differ by less are alike, mm (common practice)."""
_HUNG = ("door", "pair")
_ON_TOP = ("drawer", "false-front")


def notes_say(places: Sequence[Place | None]) -> tuple[RowsFrom | None, bool]:
    """Give from which end the rows of a box stand by what their notes say, in the order of the
    list, and whether that is sure: two rows say it of each other, or one of all. Of notes that say
    both ways None is sure."""
    said = {place for place in places if place in ("from-top", "from-bottom")}
    pairs = [
        (one, other)
        for at, one in enumerate(places)
        for other in places[at + 1 :]
        if {one, other} == {"above", "below"}
    ]
    ways: set[RowsFrom] = {"from-bottom" if one == "below" else "from-top" for one, _ in pairs}
    ways |= {"from-top" if place == "from-top" else "from-bottom" for place in said}
    if ways:
        return (ways.pop() if len(ways) == 1 else None), True
    one = next((place for place in ("above", "below") if place in places), None)
    if one is None or places.count(one) == len(places):
        return None, False
    first = one == "above"
    if places[0] == one:
        return ("from-top" if first else "from-bottom"), False
    if places[-1] == one:
        return ("from-bottom" if first else "from-top"), False
    return None, False


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
