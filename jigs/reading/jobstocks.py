"""Label stocks in a file: `[stock.NAME]`, the tool's own or those of a job.

A sheet states its page (`sheet`, by name, or `page_width` and `page_height`), `label_width`,
`label_height`, `columns`, `rows`, `left`, `top` and the pitches; a pitch that is not stated is
the label's size: labels that touch. A roll says `roll = true`, and its label's size.
"""

import re

from jigs.given.labelstock import MARGIN, ROLL_MARGIN, Stock, find_faults
from jigs.ground.believable import Range
from jigs.ground.dotpitch import DOTS
from jigs.ground.sheetsizes import COMMON, SHEET_SIZES, SheetSize
from jigs.reading.tomltables import Table

NAME = re.compile(r"[a-z0-9][a-z0-9-]{0,23}")
PAPER = Range(5, 620)
"""A size of a label, from one to the next, or of their sheet; mm."""
MOST_PLACES = 100
"""Columns, and rows, of a sheet."""

_SHEET_KEYS = (
    "sheet", "page_width", "page_height", "columns", "rows", "pitch_x", "pitch_y", "left", "top",
)  # fmt: skip
"""Keys that a roll has no use for."""


def read_stocks(table: Table | None) -> dict[str, Stock]:
    """Read the stocks of a file; faults are noted in its book."""
    if table is None:
        return {}
    found = {name: _read(name, row) for name, row in table.named_tables().items()}
    return {name: stock for name, stock in found.items() if stock is not None}


def _read(name: str, table: Table) -> Stock | None:
    if not NAME.fullmatch(name):
        table.book.note(
            table.path,
            f"not a stock's name ('{name[:40]}' given); small letters, digits and - are allowed, "
            "24 at most",
        )
    noted = len(table.book.faults)
    roll = table.flag("roll") or False
    width, height = (table.length(f"label_{way}", PAPER) for way in ("width", "height"))
    margin = table.length("margin", Range(0.3, 15, zero=True))
    dots = read_dots(table)
    bore, rounded = table.length("bore", Range(10, 60)), table.flag("round") or False
    if rounded and bore is None:
        table.note("round", "only a tag is round; say for which bore: bore")
    table.require("label_width", "label_height")
    sheet = _read_sheet(table, roll)
    columns = table.whole("columns", usual=20, most=MOST_PLACES) or 1
    rows = table.whole("rows", usual=60, most=MOST_PLACES) or 1
    left, top = (table.length(way, Range(1, 150, zero=True)) for way in ("left", "top"))
    pitch_x, pitch_y = (table.length(f"pitch_{way}", PAPER) for way in ("x", "y"))
    if roll:
        for key in (key for key in _SHEET_KEYS if key in table):
            table.note(key, "a roll has one label a page, the page is the label; leave it out")
        if bore is not None:
            table.note("bore", "tags are cut out of sheets, not off a roll; leave one of them out")
    else:
        table.require("columns", "rows", "left", "top")
    table.close()
    if len(table.book.faults) > noted or width is None or height is None or sheet is None:
        return None
    stock = Stock(
        name=name,
        sheet=SheetSize(name="roll", width=width, height=height) if roll else sheet,
        columns=columns,
        rows=rows,
        width=width,
        height=height,
        pitch_x=width if pitch_x is None else pitch_x,
        pitch_y=height if pitch_y is None else pitch_y,
        left=left or 0.0,
        top=top or 0.0,
        roll=roll,
        margin=margin if margin is not None else ROLL_MARGIN if roll else MARGIN,
        dots=dots,
        bore=bore,
        round=rounded,
        own=True,
    )
    for key, fault in find_faults(stock):
        table.note(key, fault)
    return stock


def read_dots(table: Table) -> int | None:
    """Take the dots per inch of a printer; a fault where they are none of those there are."""
    value = table.pick("dots")
    if value is None:
        return None
    if not isinstance(value, bool):
        for dots in DOTS:
            if value == dots:
                return dots
    table.note(
        "dots", f"not the dots of a printer ({table.given('dots')} given); "
        f"{', '.join(map(str, DOTS))} per inch are allowed",
    )  # fmt: skip
    return None


def _read_sheet(table: Table, roll: bool) -> SheetSize | None:
    """Read the page of a sheet of labels: a named one, or its own width and height."""
    named = {**SHEET_SIZES, COMMON.name: COMMON}
    name = table.choice("sheet", tuple(named))
    wide, high = (table.length(f"page_{way}", PAPER) for way in ("width", "height"))
    if roll:
        return COMMON  # in its place stands the label
    if "sheet" in table:
        for key in (key for key in ("page_width", "page_height") if key in table):
            table.note(key, "sheet names the page already; leave one of them out")
        return named[name] if name else None
    if "page_width" not in table and "page_height" not in table:
        names = ", ".join(named)
        table.book.note(
            table.path, f"its page is missing; write sheet ({names}), or page_width and page_height"
        )
    else:
        table.require("page_width", "page_height")
    return None if wide is None or high is None else SheetSize(name="own", width=wide, height=high)
