"""The supplier's list of fronts: what is made, at what size, and what is accepted.

Its columns are those of a front list, so that it reads back as one; what arrives is checked
against the job with the same file. What is said for the supplier's eyes alone stands in columns
that a front list leaves alone. A size that a list without its unit would not believe has it
written: bare, a groove 2 deep is asked whether 2 cm were meant.
"""

from jigs.given.job import Job
from jigs.ground.believable import Range, measure
from jigs.ground.lengths import Unit, format_sizes
from jigs.order.buying import FrontOrder, Order, SupplierRow, supplier_rows
from jigs.reading.fieldkeys import FRONTS
from jigs.reading.headings import ListColumn
from jigs.reading.listcolumns import SIZES
from templates.lists.cells import Cell, csv_text, number
from templates.words.orderwords import STATE_WORDS, doubts_of, left_out_words, making
from templates.words.standinwords import stand_in_words

FIVE = ("stile (mm)", "rail (mm)", "groove (mm)", "panel (mm)", "glass")
FRONT_COLUMNS = (
    "id", "box", "pieces to make", "kind", "width (mm)", "height (mm)", "count",
    "thickness (mm)", "hinged", *FIVE, "edge radius (mm)", "profile", "bored", "hinges at (mm)",
    "bored tab (mm)", "finish", "note", "place", "grain", "increment (mm)", "tolerance (mm)",
    "state", "open", "description",
)  # fmt: skip
"""Width before height, as the front hangs. `pieces to make` are of the size that the row says: of
a pair two, which is the `count` of one pair to a front list. `open`: what nobody said and is
assumed in the front."""


def front_rows(order: Order, job: Job) -> list[tuple[Cell, ...]]:
    """Give the supplier's rows, in the order of FRONT_COLUMNS. Last, in a row without sizes that a
    front list takes for no front, what is held back: the list is mailed, and what is said of it
    elsewhere is not."""
    rows = [_row(row, job) for row in supplier_rows(order, job)]
    left_out = left_out_words(order)
    return [*rows, (left_out, *([""] * (len(FRONT_COLUMNS) - 1)))] if left_out else rows


def fronts_csv(order: Order, job: Job) -> str:
    """Give the supplier's list of fronts as CSV text; a delivered list has the same columns."""
    return csv_text(FRONT_COLUMNS, front_rows(order, job))


def _row(row: SupplierRow, job: Job) -> tuple[Cell, ...]:
    one = row.order
    front, frame, spec = one.front, one.front.make.frame, one.spec
    five = ("", "", "", "", "") if frame is None else (
        _mm("stile", frame.stile), _mm("rail", frame.rail),
        _mm("groove", frame.groove), _mm("panel", frame.panel),
        "yes" if frame.glass else "no",
    )  # fmt: skip
    kind = FRONTS["pair" if row.kind == "pair" else front.kind]
    said: dict[str, Cell] = {
        "id": row.id,
        "box": row.box,
        "pieces to make": row.leaves,
        "kind": row.kind,
        "width (mm)": _mm("width", one.width, kind.width),
        "height (mm)": _mm("height", one.height, kind.height),
        "count": 1,
        "thickness (mm)": _mm("thickness", one.thickness),
        "hinged": "" if row.kind == "pair" else front.hinged or "",
        **dict(zip(FIVE, five, strict=True)),
        "edge radius (mm)": _mm("edge radius", front.make.edge_radius)
        if front.make.edge_radius
        else "",
        "profile": spec.edges.profile or "",
        "bored": "yes" if one.bored else "no",
        "hinges at (mm)": "; ".join(
            y if isinstance(y, str) else f"{y:.10g}"
            for y in (_mm("hinges at", cup) for cup in one.cups_at)
        ),
        "bored tab (mm)": "" if one.tab is None else _mm("bored tab", one.tab),
        "finish": front.make.finish,
        "note": front.make.note,
        "place": _place(one),
        "grain": "height" if one.grained else "",
        "increment (mm)": "" if job.increment is None else number(job.increment),
        "tolerance (mm)": number(job.tolerance),
        "state": STATE_WORDS[one.box_state],
        "open": "; ".join(f"assumed: {words}" for words in stand_in_words(front.assumed, job)),
        "description": ", ".join([_size(row, job.units), *making(one), *doubts_of(one, job.shown)]),
    }
    return tuple(said[column] for column in FRONT_COLUMNS)


def _mm(column: ListColumn, value: float, within: Range | None = None) -> Cell:
    """Give a size for its cell, with its unit where a list asks about the bare figure."""
    bare = number(value)
    if measure(str(bare), "mm", within or SIZES[column]).meant:
        return f"{bare:.10g} mm"
    return bare


def _place(order: FrontOrder) -> str:
    return f"box {order.front.box}{f', {order.front.wall}' if order.front.wall else ''}"


def _size(row: SupplierRow, unit: Unit) -> str:
    """Give the size in both units, the job's first, for whoever reads no mm."""
    size = format_sizes((row.order.width, row.order.height, row.order.thickness), unit)
    return f"TWO leaves, each {size}" if row.leaves == 2 else size
