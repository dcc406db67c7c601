"""The shelves of a box in the job file: `[[box.shelf]]`.

A fixed shelf says `at`, the height of its upper face above the side's bottom end. Adjustable
shelves say `adjustable = true`, and `from` and `to`, between which their pin holes stand; `count`
says how many shelves are cut for them.
"""

from jigs.given.job import ShelfSpec
from jigs.ground.ranges import IN_BOX
from jigs.reading.tomltables import Table

MOST = 20
"""Adjustable shelves of one row."""


def read_shelves(
    table: Table, height: float, columns: int, *, legs: float = 0.0
) -> tuple[ShelfSpec, ...]:
    """Read the shelves of a box `height` mm high, of so many columns, whose bottom panel stands
    `legs` mm above its sides' end."""
    return tuple(_read_shelf(row, height, max(1, columns), legs) for row in table.tables("shelf"))


def _read_shelf(row: Table, height: float, columns: int, legs: float) -> ShelfSpec:
    at, adjustable = row.length("at", IN_BOX), row.flag("adjustable")
    low, high = row.length("from", IN_BOX), row.length("to", IN_BOX)
    column = row.whole("column", usual=columns, most=columns)
    if adjustable and "at" in row:
        row.note("at", "stands beside adjustable; a shelf is fixed or adjustable")
    if not adjustable and "at" not in row:
        row.note("at", "is missing; give it, or adjustable = true")
    if not adjustable:
        for key in ("from", "to"):
            if key in row:
                row.note(key, "is for adjustable shelves alone; say adjustable = true")
    for key, place in (("at", at), ("from", low), ("to", high)):
        if place is not None and place >= height:
            row.note(key, f"above its box ({row.given(key)} given)")
    for key, place in (("at", at), ("to", high)):
        if legs and place is not None and place <= legs:
            row.note(
                key,
                f"below its box ({row.given(key)} given); heights count from the sides' end on "
                "the floor",
            )
    if low is not None and high is not None and low >= high:
        row.note("to", f"not above from ({row.given('to')} given)")
    count = row.whole("count", usual=12, most=MOST)
    if count is not None and not adjustable:
        row.note("count", "is for adjustable shelves alone; say adjustable = true")
    row.close()
    return ShelfSpec(
        at=None if adjustable else at, low=low, high=high, column=column, count=count or 1
    )
