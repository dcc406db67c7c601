"""A box to tick, as cards, tables and lists have it."""

from templates.page.dimensions import frame
from templates.page.marks import Outline

BOX = 3.0
"""Its side, mm."""
INDENT = BOX + 1.6
"""Where words begin behind it, mm."""


def tick_box(x: float, y: float) -> Outline:
    """Draw a box to tick with its lower left corner at (x, y)."""
    return frame(x, y, x + BOX, y + BOX)
