"""What is stated of a part in tables of its own in the job file: holes by hand, an appliance's
leaflet, what was measured with a tape.

`[[box.front.hole]]` is in a front, `[[box.hole]]` in a side. `leaflet = "noted"`, or a table of its
numbers. A front in hand and a finished box are measured alike: across at top and bottom, up at left
and right, and from corner to corner both ways. A box says `built = true` first: it is what its
fronts are ordered from.
"""

from collections.abc import Sequence
from math import hypot
from typing import Literal

from msgspec.structs import replace

from jigs.given.job import BoxSpec, FrontKind
from jigs.given.kinds import KINDS, stated_kind
from jigs.given.stated import NOTED, BoardHole, Both, HandHole, Leaflet, TapedBox
from jigs.ground.believable import DIAGONAL, Range
from jigs.ground.geometry import HANDS, End, Face, Hand
from jigs.ground.lengths import format_length
from jigs.reading.fieldkeys import BOXES, read_over
from jigs.reading.tomltables import TomlTable

FACES_BY_HAND: tuple[Literal["front", "back"], ...] = ("front", "back")
BOARD_SIDES: tuple[Literal["left", "right", "both"], ...] = ("left", "right", "both")
"""Where holes by hand are, in a front and in a box."""


def read_leaflet(row: TomlTable) -> Leaflet | None:
    """Read a panel's `leaflet`: its numbers, none where it is only known."""
    said = row.peek("leaflet")
    if not isinstance(said, dict):
        if said not in (None, "noted"):
            row.pick("leaflet")
            row.note(
                "leaflet",
                f'neither "noted" nor a table ({row.given("leaflet")} given); "noted" says that '
                "you have held the panel against it, a table what it allows: leaflet = {width_min "
                '= "592 mm", width_max = "598 mm", height_min = "715 mm", height_max = "720 mm"}',
            )
            return None
        return NOTED if row.pick("leaflet") else None
    table = row.table("leaflet")
    assert table is not None, "it was seen to be a table"
    for size in ("width", "height"):
        keys = (f"{size}_min", f"{size}_max")
        if not any(key in table for key in keys):
            row.note(
                "leaflet",
                f'says nothing of the {size}; give {" or ".join(keys)}, or leaflet = "noted"',
            )
    read = read_over(table, Leaflet())
    for size, low, high in (
        ("width", read.width_min, read.width_max),
        ("height", read.height_min, read.height_max),
    ):
        if low is not None and high is not None and low > high:
            table.note(f"{size}_max", f"less than {size}_min ({table.given(f'{size}_max')} given)")
    table.close()
    return read


ENDS: tuple[End, ...] = ("bottom", "top")


def read_front_holes(row: TomlTable, kind: FrontKind) -> tuple[HandHole, ...]:
    """Read the holes of a front: x from its left edge, y from its bottom edge, from the room; or
    down from its top edge, where one says `from = "top"`."""
    return tuple(hole for table in row.tables("hole") if (hole := _read_front_hole(table, kind)))


def _read_front_hole(table: TomlTable, kind: FrontKind) -> HandHole | None:
    table.require(face=FACES_BY_HAND)
    face: Face = table.choice("face", FACES_BY_HAND) or "back"
    mirrored = table.flag("mirror") or False
    leaf = table.choice("leaf", HANDS)
    if leaf and kind != "pair":
        table.note("leaf", "is for the holes of a pair alone")
    return _read_hole(table, face, mirrored=mirrored, leaf=leaf)


def read_board_holes(table: TomlTable, fronts: Sequence[str]) -> tuple[BoardHole, ...]:
    """Read the holes in a box's sides: x from the finished front edge, y from the bottom end, or
    down from the top end where one says `from = "top"`.

    `fronts`: the IDs of the box's fronts, none where they stand in a list. A hole serves one of
    them, and is held back with it.
    """
    found: list[BoardHole] = []
    for row in table.tables("hole"):
        row.require(side=BOARD_SIDES)
        side = row.choice("side", BOARD_SIDES)
        named = (row.text("front") or "").upper()
        if "front" not in row and len(fronts) == 1:
            named = fronts[0]
        elif "front" not in row:
            row.book.note(
                row.path,
                "front is missing; give the ID of the front that the hole serves"
                + (f": {', '.join(fronts)}" if fronts else ""),
            )
        elif fronts and named not in fronts:
            row.note(
                "front",
                f"not a front of this box ({row.given('front')} given); allowed: "
                f"{', '.join(fronts)}",
            )
        hole = _read_hole(row, "inside")
        if hole is not None and side is not None:
            found += [BoardHole(hand, named, hole) for hand in HANDS if side in (hand, "both")]
    return tuple(found)


def _read_hole(
    table: TomlTable, face: Face, *, mirrored: bool = False, leaf: Hand | None = None
) -> HandHole | None:
    """Read what every hole given by hand states."""
    kind = stated_kind(table.peek("purpose"))
    bore = KINDS[kind].bore
    table.require("x", "y", *(() if bore else ("diameter", "depth")))
    x, y = table.length("x", Range(0, 1600)), table.length("y", Range(0, 2700))
    diameter = table.length("diameter", Range(1, 60))
    value = table.pick("depth")
    blind = value is not None and value != "through"
    depth = table.measure("depth", value, Range(2, 60)) if blind else None
    if bore is not None:
        diameter = diameter if "diameter" in table else bore.diameter
        depth = depth if "depth" in table else bore.depth
    purpose = table.text("purpose") or "manual"
    stated_from = table.choice("from", ENDS)
    table.close()
    if x is None or y is None or diameter is None:
        return None
    return HandHole(
        x=x, y=y, diameter=diameter, depth=depth, face=face, purpose=purpose,
        mirrored=mirrored, leaf=leaf, stated_from=stated_from, kind=kind,
    )  # fmt: skip


FAR = 25.0
"""A measure further than this from what it should be is a slip of the tape or of the pen; mm
(common practice, no source)."""
BOTH = {
    "measured_width": "top, bottom",
    "measured_height": "left, right",
    "diagonals": "from corner to corner",
}
"""Where each size that is measured twice is measured."""


def read_both(row: TomlTable, key: str, within: Range) -> Both | None:
    """Read a size that was measured in two places, and where it is believed; mm."""
    sizes = row.lengths(key, within, places=2)
    if sizes is None:
        return None
    if len(sizes) != 2:
        row.note(
            key,
            f"not two lengths ({row.given(key)} given); measured in two places, {BOTH[key]}: "
            f"{key} = [A, B]",
        )
        return None
    return sizes[0], sizes[1]


def read_built(table: TomlTable, box: BoxSpec) -> BoxSpec:
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
