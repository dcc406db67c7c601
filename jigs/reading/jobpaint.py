"""How the fronts are painted, in the job file: `[paint]`, with `coats` and `spread`."""

from jigs.given.paint import Paint
from jigs.ground.believable import Range
from jigs.reading.tomltables import Table

MOST_COATS = 20
MOST_SPREAD = 100.0


def read_paint(table: Table | None) -> Paint:
    """Read the number of coats and what a litre covers, in m2 a coat."""
    usual = Paint()
    if table is None:
        return usual
    spread = table.number("spread", Range(3, 20, unit="m2 a litre"), most=MOST_SPREAD)
    paint = Paint(
        coats=table.whole("coats", usual=8, most=MOST_COATS) or usual.coats,
        spread=spread or usual.spread,
    )
    table.close()
    return paint
