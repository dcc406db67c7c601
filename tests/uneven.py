"""The second golden box, alike to neither hand: two columns of two widths, drawers beside the
partition with a left reveal of their own, a door hinged at the right. What the symmetric box hides
when it is mirrored, or when both ends are taken for one, this one shows.

All figures are derived, from the left edge and the bottom of the box; mm.
"""

from tests.jobtexts import box_text

WIDTH, HEIGHT, DEPTH = 900.0, 774.7, 584.2
SIDE, FRONT, DRAWER_SIDE, BACK, BAND = 18.3, 19.05, 15.9, 6.0, 0.6
REVEAL, TOP, GAP, OWN = 1.6, 3.2, 3.2, 6.0
"""Reveals at the sides and bottom, at the top, between fronts; the drawers' own at their left."""

FIRST = 400.0
SECOND = WIDTH - 3 * SIDE - FIRST
"""The clear widths of its columns: 445.1."""
PARTITION = SIDE + FIRST
"""Its left face: 418.3."""
MIDDLE = PARTITION + SIDE / 2

DRAWER_WIDTH = MIDDLE - GAP / 2 - OWN
UPPER = 200.0
LOWER = HEIGHT - TOP - UPPER - GAP - REVEAL
UPPER_Y = REVEAL + LOWER + GAP
DOOR_X = MIDDLE + GAP / 2
DOOR_WIDTH = WIDTH - REVEAL - DOOR_X
DOOR_HEIGHT = HEIGHT - TOP - REVEAL

BOX_WIDTH = (FIRST - 42 + 2 * DRAWER_SIDE) // 1
BOX_LEFT = SIDE + FIRST / 2 - BOX_WIDTH / 2
"""A drawer box stands in the middle of its opening: 23.8."""
IN_LEFT = BOX_LEFT - OWN
IN_RIGHT = OWN + DRAWER_WIDTH - BOX_LEFT - BOX_WIDTH
"""How far in from the ends of its front, as seen from the room: 17.8 and 13.05."""
RISE = SIDE + 14 - REVEAL
"""How far up from its front's bottom edge: 30.7."""

_DRAWER = f'kind = "drawer"\ncolumn = 1\nslide = "undermount-457"\nreveal_left = {OWN:g}'
UNEVEN = box_text(
    "B1", "base",
    f"{_DRAWER}\nheight = {UPPER:g}",
    _DRAWER,
    'kind = "door"\nhinged = "right"\ncolumn = 2',
    more=f"columns = [{{width = {FIRST:g}}}, {{share = 1}}]\n"
    "shelf = [{adjustable = true, column = 2, from = 200, to = 500}]",
).replace("width = 457.2", f"width = {WIDTH:g}")  # fmt: skip

PLAIN = box_text(
    "B1", "drawer", 'kind = "drawer"\nheight = 200', 'kind = "drawer"',
)  # fmt: skip
"""Both its sides have the same holes, mirrored."""
