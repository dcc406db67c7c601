"""The dots of a printer: a label printer burns whole dots, and no part of one.

A module of a QR symbol that is no whole number of dots is now a dot wider, now a dot narrower
than its neighbours, and the smaller the module, the more that harms. So the module is a whole
number of dots, the least that makes 0.5 mm.

>>> dots_of_module(203), dots_of_module(300), dots_of_module(600)
(4, 6, 12)
>>> round(4 * dot(203), 4), round(6 * dot(300), 4)
(0.5005, 0.508)
"""

import math

from jigs.ground.lengths import MM_PER_INCH

DOTS = (203, 300, 600)
"""Dots per inch of the printers there are: two of label printers, one of office printers (common
practice, no source)."""

MODULE = 0.5
"""Least side of a QR module, mm: read by telephones from any office printer (measured)."""

NEAR = 0.05
"""So much of a dot may lack to the least module: a printer's correction moves it by as much."""


def dot(dots: int) -> float:
    """Give the pitch of a printer's dots, mm."""
    return MM_PER_INCH / dots


def dots_of_module(dots: int, scale: float = 1.0) -> int:
    """Give the dots of a module's side on a printer for which everything is drawn times `scale`."""
    return math.ceil(MODULE * scale / dot(dots) - NEAR)
