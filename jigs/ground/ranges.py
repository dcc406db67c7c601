"""Ranges that several keys share: where their numbers lie in any kitchen; mm.

All are common practice without a source, and generous.
"""

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
PANEL_WIDTH = Range(10, 1600)
PANEL_HEIGHT = Range(30, 2800)
"""Of an appliance's panel, or an end panel."""
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
