"""Holes by hand in the job file: `[[box.front.hole]]` in a front, `[[box.hole]]` in a side."""

from collections.abc import Sequence

from jigs.fittings.kinds import KINDS, stated_kind
from jigs.given.handholes import BoardHole, HandHole
from jigs.given.job import FrontKind
from jigs.ground.believable import Range
from jigs.ground.geometry import HANDS, End, Face, Hand
from jigs.reading.tomltables import Table

ENDS: tuple[End, ...] = ("bottom", "top")


def read_front_holes(row: Table, kind: FrontKind) -> tuple[HandHole, ...]:
    """Read the holes of a front: x from its left edge, y from its bottom edge, from the room; or
    down from its top edge, where one says `from = "top"`."""
    return tuple(hole for table in row.tables("hole") if (hole := _read_front_hole(table, kind)))


def _read_front_hole(table: Table, kind: FrontKind) -> HandHole | None:
    table.require("face")
    face: Face = table.choice("face", ("front", "back")) or "back"
    mirrored = table.flag("mirror") or False
    leaf = table.choice("leaf", HANDS)
    if leaf and kind != "pair":
        table.note("leaf", "is for the holes of a pair alone")
    return _read_hole(table, face, mirrored=mirrored, leaf=leaf)


def read_board_holes(table: Table, fronts: Sequence[str]) -> tuple[BoardHole, ...]:
    """Read the holes in a box's sides: x from the finished front edge, y from the bottom end, or
    down from the top end where one says `from = "top"`.

    `fronts`: the IDs of the box's fronts, none where they stand in a list. A hole serves one of
    them, and is held back with it.
    """
    found: list[BoardHole] = []
    for row in table.tables("hole"):
        row.require("side")
        side = row.choice("side", ("left", "right", "both"))
        named = (row.text("front") or "").upper()
        if "front" not in row and len(fronts) == 1:
            named = fronts[0]
        elif "front" not in row:
            row.note(
                "front",
                "is missing; give the ID of the front that the hole serves"
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
    table: Table, face: Face, *, mirrored: bool = False, leaf: Hand | None = None
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
