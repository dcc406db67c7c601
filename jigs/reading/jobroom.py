"""What a wall measures, in the job file: its length, ceiling, counter, floor and appliances.

An appliance (`[[wall.appliance]]`) stands or hangs between the boxes: it has an ID of its own, and
stands at `x` along the wall or `after` a box or an earlier appliance of that wall.
"""

from collections.abc import Sequence
from dataclasses import replace

from jigs.given.wallspec import Appliance, WallSpec
from jigs.ground.believable import Range
from jigs.ground.lengths import LONGEST
from jigs.ground.nearest import suggest
from jigs.reading.tomltables import Table


def read_room(table: Table, wall: WallSpec, boxes: Sequence[str], taken: Sequence[str]) -> WallSpec:
    """Read a wall's own sizes and its appliances. `boxes`: the IDs of its boxes; `taken`: all IDs
    of boxes and appliances so far."""
    counter = table.length("counter", Range(500, 1400))
    thickness = table.length("counter_thickness", Range(5, 120))
    if "counter_thickness" in table and "counter" not in table:
        table.note("counter_thickness", "stands without counter, its top above the floor")
    if counter is not None and thickness is not None and thickness >= counter:
        table.note(
            "counter_thickness",
            f"as thick as the counter is high ({table.given('counter')}), or thicker "
            f"({table.given('counter_thickness')} given); counter is the height of its top",
        )
    found: list[Appliance] = []
    for row in table.tables("appliance"):
        known = [*boxes, *(appliance.id for appliance in found)]
        read = _read_appliance(row, known, [*taken, *(appliance.id for appliance in found)])
        if read is not None:
            found.append(read)
    return replace(
        wall,
        length=table.length("length", Range(300, LONGEST)),
        ceiling=table.length("ceiling", Range(1500, 6000)),
        counter=counter,
        counter_thickness=thickness,
        floor_high=table.length("floor_high", Range(1, 100, zero=True)) or 0.0,
        appliances=tuple(found),
    )


def _read_appliance(table: Table, known: Sequence[str], taken: Sequence[str]) -> Appliance | None:
    """Read one appliance; None where a size of it is missing or wrong."""
    table.require("id", "width", "height")
    name, said = table.part_id("id"), table.text("name")
    width = table.length("width", Range(100, 1600))
    height = table.length("height", Range(40, 2600))
    depth = table.length("depth", Range(50, 1200))
    above = table.length("above_floor", Range(10, 2600, zero=True))
    x, after = table.length("x", Range(0, LONGEST)), table.part_id("after")
    if name is not None and name in taken:
        table.note(
            "id", f"taken already ('{name[:40]}' given); every box and appliance has its own"
        )
    if "x" in table and "after" in table:
        table.note("after", "stands beside x; one of the two says where it stands")
    elif "x" not in table and "after" not in table:
        table.note(
            "id", "neither x nor after; say where it stands: x along the wall, or after which box"
        )
    elif after is not None and after not in known:
        near = suggest(after, known) if known else "no box stands on this wall"
        table.note(
            "after", f"no box of this wall, and no appliance above ('{after[:40]}' given); {near}"
        )
    table.close()
    if not name or width is None or height is None:
        return None
    return Appliance(
        id=name, name=said or "", width=width, height=height, depth=depth, above_floor=above or 0.0,
        x=x, after=after,
    )  # fmt: skip
