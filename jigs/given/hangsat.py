"""Where in its box a front hangs by what is noted of it, and from which end the rows of a box stand
by all its notes.

>>> notes_say(["below", "above"]), notes_say(["above", None]), notes_say([None, None])
(('from-bottom', True), ('from-top', False), (None, False))
"""

from collections.abc import Sequence
from typing import Literal

RowsFrom = Literal["from-top", "from-bottom"]
NotedPlace = Literal["above", "below", "from-top", "from-bottom"]
"""Where in its box a front hangs, or from which end the rows of its box stand."""
PLACES: tuple[NotedPlace, ...] = ("above", "below", "from-top", "from-bottom")


def notes_say(places: Sequence[NotedPlace | None]) -> tuple[RowsFrom | None, bool]:
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
