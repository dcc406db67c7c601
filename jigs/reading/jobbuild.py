"""How the boxes are built and the fronts painted, in the job file: `[build]`, `[paint]`. What they
leave open is as usual."""

from jigs.given.build import Build
from jigs.given.paint import Paint
from jigs.reading.faceframe import refuse_frame_keys
from jigs.reading.fieldkeys import read_over
from jigs.reading.tomltables import Table


def read_build(table: Table | None) -> Build:
    """Read how the boxes are built."""
    if table is None:
        return Build()
    refuse_frame_keys(table)
    build = read_over(table, Build())
    table.close()
    return build


def read_paint(table: Table | None) -> Paint:
    """Read the number of coats and what a litre covers, in m2 a coat."""
    if table is None:
        return Paint()
    paint = read_over(table, Paint())
    table.close()
    return paint
