"""The rollouts of a box in the job file: `[[box.rollout]]`.

`at` is the underside of the drawer box above the side's bottom end, `height` the box's own.
"""

from jigs.given.hardware import SlideRecord
from jigs.given.rolloutspec import RolloutSpec
from jigs.ground.believable import Range
from jigs.ground.ranges import DRAWER_HEIGHT, IN_BOX
from jigs.reading.jobhardware import Shelf
from jigs.reading.tomltables import Table


def read_rollouts(
    table: Table, height: float, columns: int, slides: Shelf[SlideRecord]
) -> tuple[RolloutSpec, ...]:
    """Read the rollouts of a box `height` mm high, of so many columns."""
    return tuple(
        _read_rollout(row, height, max(1, columns), slides) for row in table.tables("rollout")
    )


def _read_rollout(
    row: Table, height: float, columns: int, slides: Shelf[SlideRecord]
) -> RolloutSpec:
    row.require("at", "height")
    at, high = row.length("at", IN_BOX), row.length("height", DRAWER_HEIGHT)
    if at is not None and at >= height:
        row.note("at", f"above its box ({row.given('at')} given)")
    spec = RolloutSpec(
        at=at or 1.0,
        height=high or 1.0,
        slide=slides.take_name(row, "slide"),
        column=row.whole("column", usual=columns, most=columns) or 1,
        spacer_left=row.length("spacer_left", Range(3, 60, zero=True)),
        spacer_right=row.length("spacer_right", Range(3, 60, zero=True)),
    )
    row.close()
    return spec
