"""An appliance's leaflet in the job file: `leaflet = "noted"`, or a table of its numbers."""

from jigs.given.leaflet import PANEL_PULLS, Leaflet
from jigs.ground.believable import Range
from jigs.ground.ranges import PANEL_GAP
from jigs.reading.kindranges import FRONTS
from jigs.reading.tomltables import Table

PANEL = FRONTS["panel"]
HEAVIEST = 100.0
"""A panel's greatest weight that is believed; kg."""


def read_leaflet(row: Table) -> tuple[bool, Leaflet | None]:
    """Read a panel's `leaflet`: whether it is known at all, and its numbers where stated."""
    value = row.pick("leaflet")
    if not isinstance(value, dict):
        return row.choice("leaflet", ("noted",)) is not None, None
    table = row.table("leaflet")
    if table is None:
        return False, None
    for size in ("width", "height"):
        keys = (f"{size}_min", f"{size}_max")
        if not any(key in table for key in keys):
            row.note(
                "leaflet",
                f'says nothing of the {size}; give {" or ".join(keys)}, or leaflet = "noted"',
            )
    read = Leaflet(
        width_min=table.length("width_min", PANEL.width),
        width_max=table.length("width_max", PANEL.width),
        height_min=table.length("height_min", PANEL.height),
        height_max=table.length("height_max", PANEL.height),
        gap_left=table.length("gap_left", PANEL_GAP),
        gap_right=table.length("gap_right", PANEL_GAP),
        gap_top=table.length("gap_top", PANEL_GAP),
        gap_bottom=table.length("gap_bottom", PANEL_GAP),
        weight_max=table.number("weight_max", Range(1, 60, unit="kg"), most=HEAVIEST),
        pull=table.choice("pull", PANEL_PULLS),
    )
    for size, low, high in (
        ("width", read.width_min, read.width_max),
        ("height", read.height_min, read.height_max),
    ):
        if low is not None and high is not None and low > high:
            table.note(f"{size}_max", f"less than {size}_min ({table.given(f'{size}_max')} given)")
    table.close()
    return True, read
