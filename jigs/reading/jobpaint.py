"""How the fronts are painted, in the job file: `[paint]`, with `coats` and `spread`."""

from jigs.paint import Paint
from jigs.reading.tomltables import Table

MOST_COATS = 20
MOST_SPREAD = 100.0


def read_paint(table: Table | None) -> Paint:
    """Read the number of coats and what a litre covers, in m2 a coat."""
    usual = Paint()
    if table is None:
        return usual
    paint = Paint(
        coats=table.whole("coats", most=MOST_COATS) or usual.coats,
        spread=table.number("spread", most=MOST_SPREAD) or usual.spread,
    )
    table.close()
    return paint
