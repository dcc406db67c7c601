"""What was measured with a tape, in the job file: sizes taken in two places, and boxes as built.

A front in hand and a finished box are measured alike: across at top and bottom, up at left and
right, and from corner to corner both ways. A box says `built = true` first: it is what its
fronts are ordered from.
"""

from dataclasses import replace
from math import hypot

from jigs.given.job import BoxSpec
from jigs.given.taped import Both, TapedBox
from jigs.ground.believable import Range
from jigs.ground.lengths import format_length
from jigs.ground.ranges import DIAGONAL
from jigs.reading.kindranges import BOXES
from jigs.reading.tomltables import Table

FAR = 25.0
"""A measure further than this from what it should be is a slip of the tape or of the pen; mm
(common practice, no source)."""
BOTH = {
    "measured_width": "top, bottom",
    "measured_height": "left, right",
    "diagonals": "from corner to corner",
}
"""Where each size that is measured twice is measured."""


def read_both(row: Table, key: str, within: Range) -> Both | None:
    """Read a size that was measured in two places, and where it is believed; mm."""
    sizes = row.lengths(key, within)
    if sizes is None:
        return None
    if len(sizes) != 2:
        row.note(
            key, f"not two lengths ({row.given(key)} given); measured in two places: {BOTH[key]}"
        )
        return None
    return sizes[0], sizes[1]


def read_built(table: Table, box: BoxSpec) -> BoxSpec:
    """Give a box with what was measured of it since it was built."""
    built = table.flag("built") or False
    believed = BOXES[box.kind]
    width = read_both(table, "measured_width", believed.width)
    height = read_both(table, "measured_height", believed.height)
    depth = table.length("measured_depth", believed.depth)
    corners = read_both(table, "diagonals", DIAGONAL)
    for key in (*BOTH, "measured_depth"):
        if key in table and not built:
            table.note(key, "stands without built; say built = true of a box that is put together")
    across = sum(width) / 2 if width else box.width
    up = sum(height) / 2 if height else box.height
    given = (
        ("measured_width", width or (), "width", box.width),
        ("measured_height", height or (), "height", box.height),
        ("measured_depth", () if depth is None else (depth,), "depth", box.depth),
        ("diagonals", corners or (), "square box's diagonal", hypot(across, up)),
    )
    stated = min(box.width, box.height) > FAR  # else a size is missing or at fault, and told
    for key, sizes, what, due in given:
        if stated and any(abs(size - due) > FAR for size in sizes):
            table.note(
                key,
                f"far from the {what} of {format_length(due, table.unit)} ({table.given(key)} "
                f"given); at most {format_length(FAR, table.unit)} off is allowed: measure again, "
                "or correct the box",
            )
    return replace(
        box,
        built=built,
        measured=TapedBox(width=width, height=height, depth=depth, diagonals=corners),
    )
