"""An appliance's leaflet in the job file: `leaflet = "noted"`, or a table of its numbers."""

from jigs.given.leaflet import Leaflet
from jigs.reading.fieldkeys import read_over
from jigs.reading.tomltables import Table


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
    read = read_over(table, Leaflet())
    for size, low, high in (
        ("width", read.width_min, read.width_max),
        ("height", read.height_min, read.height_max),
    ):
        if low is not None and high is not None and low > high:
            table.note(f"{size}_max", f"less than {size}_min ({table.given(f'{size}_max')} given)")
    table.close()
    return True, read
