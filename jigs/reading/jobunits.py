"""A whole job written in another unit than its bare numbers are read in: said once.

Where single numbers are, each is told by the range of its key (`jigs.ground.believable`).

>>> bare_number("31 1/2"), bare_number(31.5), bare_number("31.5 in")
(31.5, 31.5, None)
"""

from collections.abc import Iterator, Mapping

from jigs.ground.errors import LengthError
from jigs.ground.lengths import Unit, is_bare, parse_value

LEAST_BOX = 100.0
"""A job without a box that measures as much in mm is in another unit."""

MOST_INCHES = 200.0
"""No box is as large as 200 in, 5 m."""

MOST_SHOWN = 3


def bare_number(value: object) -> float | None:
    """Give a length written without a unit, as it stands; None for any other value."""
    if not is_bare(value):
        return None
    try:
        return parse_value(value, "mm")
    except LengthError:
        return None


def doubt_units(values: Mapping[str, object], unit: Unit, *, stated: bool) -> str | None:
    """Say why a whole job is in another unit than its bare numbers are read in; None if it is not.

    `values` are the job's as they stand; `stated`: somebody has named the unit.
    """
    sizes = [[*_bare(box)] for box in _tables(values.get("box"))]
    if not sizes or not all(sizes):
        return None
    if unit == "in":
        if min(map(max, sizes)) <= MOST_INCHES:
            return None
        shown = ", ".join(f"{size:g}" for size in list(dict.fromkeys(map(max, sizes)))[:MOST_SHOWN])
        return (
            f"every box is over {MOST_INCHES:.0f} in ({shown} and the like): millimetres? "
            'write units = "mm"'
        )
    largest = max(map(max, sizes))
    if largest >= LEAST_BOX:
        return None
    fact = f"every box is under {LEAST_BOX:.0f} mm (largest size {largest:g}): inches?"
    missing = "" if stated else "units is missing and "
    return f'{missing}{fact} write units = "in"; centimetres? say so at each length, "60 cm"'


def _bare(box: Mapping[str, object]) -> Iterator[float]:
    """Give the bare width and height of a box as it stands in the file."""
    for key in ("width", "height"):
        size = bare_number(box.get(key))
        if size is not None:
            yield size


def _tables(value: object) -> list[Mapping[str, object]]:
    return [box for box in value if isinstance(box, dict)] if isinstance(value, list) else []
