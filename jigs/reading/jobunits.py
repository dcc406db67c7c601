"""Inches typed for millimetres, and millimetres for inches: sizes that no box or front has.

A bare number is read in the job's unit. Where that makes a box or a front that cannot be, the
number is told, with how to write it; a narrow filler pull-out of 76 mm (3 in) is none of these.

>>> from jigs.lengths import parse_length
>>> bare_number("31 1/2"), bare_number(31.5), bare_number("31.5 in")
(31.5, 31.5, None)
"""

from collections.abc import Iterator, Mapping

from jigs.errors import LengthError
from jigs.lengths import LONGEST, MM_PER_INCH, Unit, parse_value
from jigs.reading.tomltables import Table

LEAST_BOX = 100.0
"""A job without a box that measures as much in mm is in another unit."""

LEAST = {"width": 50.0, "height": 80.0, "depth": 80.0}
"""No box is smaller than this: two sides of 18 leave nothing, no slide and no shelf is so short;
mm. Common practice, no source."""

LEAST_FRONT = {"width": 50.0, "height": 50.0}
"""No front that opens is smaller than this: a cup of 35 wants 3 to 7 beside it, a drawer box is 50
high at least; mm. Common practice, no source."""

OPENING = ("door", "pair", "drawer", "pullout", "lift")
"""The fronts that LEAST_FRONT is about: strips and panels may be narrower."""

MOST_INCHES = 200.0
"""No box is as large as 200 in, 5 m."""

MOST_SHOWN = 3
SIZES = ("width", "height", "depth")


def bare_number(value: object) -> float | None:
    """Give a length written without a unit, as it stands; None for any other value."""
    if isinstance(value, str) and any(sign.isalpha() or sign in "'\"′″’”" for sign in value):
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


def doubt_box(table: Table, kind: str) -> dict[str, float]:
    """Note sizes of one box that can only be of the other unit; gives what they may be, mm."""
    return _doubt(table, {} if kind == "open" else LEAST, "box")


def doubt_front(row: Table, kind: str) -> dict[str, float]:
    """Note sizes of one front that can only be of the other unit; gives what they may be, mm."""
    return _doubt(row, LEAST_FRONT if kind in OPENING else {}, kind)


def _doubt(table: Table, least: Mapping[str, float], noun: str) -> dict[str, float]:
    """Note all such sizes of a table as one fault, at the first of them."""
    found = {key: size for key in SIZES if (size := bare_number(table.peek(key))) is not None}
    if table.unit == "in":
        wrong = {
            key: size for key, size in found.items() if MOST_INCHES < size <= LONGEST / MM_PER_INCH
        }
        meant, limit = "mm", "over 200 in"
        maybe = dict(wrong)
    else:
        wrong = {key: size for key, size in found.items() if 0 < size < least.get(key, 0.0)}
        meant = "in"
        limit = " or ".join(f"under {least[key]:g} mm in {key}" for key in wrong)
        maybe = {key: size * MM_PER_INCH for key, size in wrong.items()}
    if wrong:
        first, *rest = (f'"{size:g} {meant}"' for size in wrong.values())
        sizes = ", ".join(f"{key} {size:g} {table.unit}" for key, size in wrong.items())
        typed = "inches" if meant == "in" else "millimetres"
        table.note(
            next(iter(wrong)),
            f"{typed} typed? {sizes} given, and no {noun} is {limit}; "
            f"write {' and '.join([first, *rest])}",
        )
    return maybe


def _bare(box: Mapping[str, object]) -> Iterator[float]:
    """Give the bare width and height of a box as it stands in the file."""
    for key in ("width", "height"):
        size = bare_number(box.get(key))
        if size is not None:
            yield size


def _tables(value: object) -> list[Mapping[str, object]]:
    return [box for box in value if isinstance(box, dict)] if isinstance(value, list) else []
