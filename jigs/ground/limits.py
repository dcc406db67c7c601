"""When a measured size is beyond its limit: judged as it is printed, in tenths of a mm.

No tape reads finer, and nobody is to be told that 1.6 is more than the 1.6 that is accepted.

>>> is_beyond(1.64, 1.6), is_beyond(-1.66, 1.6)
(False, True)
"""

from jigs.ground.lengths import count_tenths

CAREFUL = 0.5
"""How well careful work keeps a box's sizes; mm (common practice, no source)."""

TENTH = 0.1
"""The last figure of a printed length; mm."""


def is_beyond(off: float, limit: float) -> bool:
    """Tell whether a size is off by more than the limit, either way; mm."""
    return count_tenths(abs(off)) > count_tenths(limit)
