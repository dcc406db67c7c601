"""The dots of a printer: a label printer burns whole dots, and no part of one.

A module of a QR symbol that is no whole number of dots is now a dot wider, now a dot narrower
than its neighbours, and the smaller the module, the more that harms. So the module is a whole
number of dots: those nearest to what is wanted, but never fewer than make 0.5 mm.

>>> [dots_of_module(203, module=each) for each in MODULES]
[6, 5, 4]
>>> [dots_of_module(300, module=each) for each in MODULES]
[8, 7, 6]
>>> round(4 * dot(203), 4), round(6 * dot(300), 4)
(0.5005, 0.508)
"""

import math

from jigs.ground.lengths import MM_PER_INCH

DOTS = (203, 300, 600)
"""Dots per inch of the printers there are: two of label printers, one of office printers (common
practice, no source)."""

MODULES = (0.7, 0.6, 0.5)
"""Sides of a QR module, mm. Printed heavily (dots 0.06 mm larger at each edge, 0.15 mm of blur) 0.7
is read as a rule, 0.6 mostly, 0.5 seldom; 0.5 is read off any good print (measured)."""
READ = MODULES[-2]
"""Least side of a QR module that is read off such a print, mm."""
MODULE = MODULES[-1]
"""Least side of a QR module, mm."""

NEAR = 0.05
"""So much of a dot may lack to the least module: a printer's correction moves it by as much."""


def dot(dots: int) -> float:
    """Give the pitch of a printer's dots, mm."""
    return MM_PER_INCH / dots


def dots_of_module(dots: int, scale: float = 1.0, *, module: float = MODULE) -> int:
    """Give the dots of a module's side, `module` mm wanted, on a printer for which everything is
    drawn times `scale`."""
    least = math.ceil(MODULE * scale / dot(dots) - NEAR)
    return max(least, round(module * scale / dot(dots)))
