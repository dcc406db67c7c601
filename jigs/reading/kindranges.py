"""The sizes that boxes and fronts of each kind have in kitchens. All are common practice without a
source, and generous; mm.

An open box may be as wide as a wall.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from jigs.given.job import BoxKind, FrontKind
from jigs.ground.believable import Range
from jigs.ground.ranges import PANEL_HEIGHT, PANEL_WIDTH

_ANY_DEPTH = Range(60, 1500)
_ANYWHERE = Range(-100, 2400, least=10)
_STANDS = Range(-60, 1500, least=15)


@dataclass(frozen=True, slots=True)
class Sizes:
    """The sizes that are believed of one kind; `depth` and `above_floor` of boxes alone."""

    width: Range
    height: Range
    depth: Range = _ANY_DEPTH
    above_floor: Range = _ANYWHERE


BOXES: Mapping[BoxKind, Sizes] = {
    "base": Sizes(Range(70, 1600), Range(200, 1200), Range(200, 900), _STANDS),
    "drawer": Sizes(Range(120, 1600), Range(100, 1600), Range(200, 900), _STANDS),
    "sink": Sizes(Range(200, 1600), Range(300, 1200), Range(200, 900), _STANDS),
    "wall": Sizes(Range(70, 1600), Range(150, 1600), Range(150, 900), Range(300, 2600)),
    "tall": Sizes(Range(70, 1600), Range(600, 2700), Range(150, 900), _STANDS),
    "open": Sizes(Range(60, 3000), Range(60, 2700)),
}

FRONTS: Mapping[FrontKind, Sizes] = {
    "door": Sizes(Range(75, 1300), Range(120, 2700)),
    "pair": Sizes(Range(75, 900), Range(120, 2700)),
    "drawer": Sizes(Range(120, 1600), Range(50, 900)),
    "pullout": Sizes(Range(50, 1000), Range(120, 2700)),
    "false-front": Sizes(Range(50, 1600), Range(30, 900)),
    "panel": Sizes(PANEL_WIDTH, PANEL_HEIGHT),
    "lift": Sizes(Range(150, 1700), Range(100, 1000)),
    "opening": Sizes(Range(80, 1700), Range(60, 2400)),
}

ANY_FRONT = Sizes(Range(10, 1700), Range(30, 2800))
"""A front of which nobody says what it is."""
