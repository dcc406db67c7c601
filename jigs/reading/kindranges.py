"""The sizes that boxes and fronts of each kind have in kitchens, and other ranges that several
keys share. All are common practice without a source, and generous; mm.

An open box may be as wide as a wall.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from jigs.given.job import BoxKind, FrontKind
from jigs.ground.believable import Range

BOARD = Range(9, 45)
"""A board of which boxes are made."""
FRONT_BOARD = Range(10, 45)
"""A board of which fronts are made."""
THIN_BOARD = Range(2, 30)
"""A back, a panel in a frame, a drawer's bottom."""
REVEAL = Range(0.5, 19, zero=True)
"""A gap beside a front."""
OWN_REVEAL = Range(0.5, 60, zero=True)
"""A front's own gap: beside a filler, above it, at a handle."""
PANEL_GAP = Range(0.5, 250, zero=True)
"""A gap beside an appliance's panel, or an opening."""
PANEL_REVEAL = Range(-30, 250, least=0.5)
"""The gap below it: the whole plinth."""
END_REVEAL = Range(-30, 40, least=0.5)
"""A gap above or below a front: a crown takes some, a wall front hangs below its box."""
TAB = Range(2, 12)
"""From the hinge edge of a door to the rim of its cup."""
PLATE = Range(0.5, 20, zero=True)
"""The height of a hinge's plate."""
SCREW_HOLE = Range(1, 12)
"""The diameter of a fitting's hole: a pilot, a system screw, a dowel."""
SCREW_DEPTH = Range(4, 30)
"""How deep such a hole is."""
RAIL = Range(30, 260)
"""A board on edge or flat across a box: a rail, a stretcher, a nailer."""
SHARE = Range(0.05, 20, unit="")
"""A weight by which the rest is shared: no lengths."""
DRAWER_HEIGHT = Range(40, 600)
"""The height of a drawer box's sides."""
DIAGONAL = Range(60, 3500)
"""From corner to corner of a box or a front."""
STILE = Range(20, 260)
"""The width of a frame's stile or rail."""
GROOVE = Range(3, 20, zero=True)
"""The depth of the groove in a frame."""
EDGE_RADIUS = Range(0.5, 20)
"""The radius of a front's rounded edge."""
ALONG_BOARD = Range(9, 800)
"""From a side's front edge to a slide's hole."""
IN_BOX = Range(25, 2700)
"""A height inside a box, or on a front."""
SPARE = Range(2, 80, zero=True)
"""What is left over, set back or cut longer."""


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
    "panel": Sizes(Range(10, 1600), Range(30, 2800)),
    "lift": Sizes(Range(150, 1700), Range(100, 1000)),
    "opening": Sizes(Range(80, 1700), Range(60, 2400)),
}

ANY_FRONT = Sizes(Range(10, 1700), Range(30, 2800))
"""A front of which nobody says what it is."""
