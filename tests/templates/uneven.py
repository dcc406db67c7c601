"""A box that is alike to neither hand: two columns of two widths, a reveal of its own, drawers
beside the partition, a door hinged at the right. What a symmetric box hides, it shows."""

from tests.jobtexts import box_text

UNEVEN = box_text(
    "B1", "base",
    'kind = "drawer"\nheight = 200\ncolumn = 1\nslide = "undermount-457"\nreveal_left = 10',
    'kind = "drawer"\ncolumn = 1\nslide = "undermount-457"\nreveal_left = 10',
    'kind = "door"\nhinged = "right"\ncolumn = 2',
    more="columns = [{width = 400}, {share = 1}]\n"
    "shelf = [{adjustable = true, column = 2, from = 200, to = 500}]",
).replace("width = 457.2", "width = 900")  # fmt: skip
"""900 wide, sides and partition 18.3: columns of 400 and 900 - 3 x 18.3 - 400 = 445.1 (derived)."""

PLAIN = box_text(
    "B1", "drawer", 'kind = "drawer"\nheight = 200', 'kind = "drawer"',
)  # fmt: skip
"""Both its sides have the same holes, mirrored."""
