"""What labels and sheets are printed on and with, in a file: `[stock.NAME]`, the tool's own or
those of a job, and `[printer.NAME]`, in a job file or in the user's settings.

A sheet of labels states its page (`sheet`, by name, or `page_width` and `page_height`),
`label_width`, `label_height`, `columns`, `rows`, `left`, `top` and the pitches; a pitch that is not
stated is the label's size: labels that touch. A roll says `roll = true`, and its label's size.

Of a printer `across` and `along` are the measured bars, with their units; `bars` says which ones,
`paper` and `tray` what was in the printer. `dots` are its dots per inch; `labels_right` and
`labels_up` how far its labels are to be moved. A label printer may have these alone.
"""

import re
from collections.abc import Mapping
from pathlib import Path

from jigs.given.labelstock import MARGIN, PAPER, ROLL_MARGIN, Stock, faults_of_stock
from jigs.given.printer import Printer, find_faults
from jigs.ground.dotpitch import DOTS
from jigs.ground.errors import refusal
from jigs.ground.lengths import format_mm
from jigs.ground.sheetsizes import COMMON, SHEET_SIZES, SheetSize
from jigs.reading.fieldkeys import read_keys
from jigs.reading.tomltables import FaultBook, TomlTable
from jigs.reading.tomltext import parse_toml, read_text

STOCK_NAME = r"[a-z0-9][a-z0-9-]{0,23}"
_SHEET_KEYS = (
    "sheet", "page_width", "page_height", "columns", "rows", "pitch_x", "pitch_y", "left", "top",
)  # fmt: skip
"""Keys that a roll has no use for."""


def read_stocks(table: TomlTable | None) -> dict[str, Stock]:
    """Read the stocks of a file; faults are noted in its book."""
    if table is None:
        return {}
    found = {name: _read_stock(name, row) for name, row in table.named_tables().items()}
    return {name: stock for name, stock in found.items() if stock is not None}


def _read_stock(name: str, table: TomlTable) -> Stock | None:
    if not re.fullmatch(STOCK_NAME, name):
        table.book.note(
            table.path,
            f"not a stock's name ('{name[:40]}' given); small letters, digits and - are allowed, "
            "24 at most",
        )
    noted = len(table.book.faults)
    width, height = (table.length(f"label_{way}", PAPER) for way in ("width", "height"))
    given, dots = read_keys(table, Stock), read_dots(table)
    roll = given.get("roll", False)
    if given.get("round") and "bore" not in table:
        table.note("round", "only a tag is round; say for which bore: bore")
    table.require("label_width", "label_height")
    sheet = _read_sheet(table, roll)
    if roll:
        for key in (key for key in _SHEET_KEYS if key in table):
            table.note(key, "a roll has one label a page, the page is the label; leave it out")
        if "bore" in given:
            table.note("bore", "tags are cut out of sheets, not off a roll; leave one of them out")
    else:
        table.require("columns", "rows", "left", "top")
    table.close()
    if len(table.book.faults) > noted or width is None or height is None or sheet is None:
        return None
    usual = {"pitch_x": width, "pitch_y": height, "margin": ROLL_MARGIN if roll else MARGIN}
    stock = Stock(
        name=name,
        sheet=SheetSize(name="roll", width=width, height=height) if roll else sheet,
        width=width,
        height=height,
        dots=dots,
        own=True,
        **{**usual, **given},
    )
    for key, fault in faults_of_stock(stock):
        table.note(key, fault)
    return stock


def read_dots(table: TomlTable) -> int | None:
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


def _read_sheet(table: TomlTable, roll: bool) -> SheetSize | None:
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


NAME = r"[A-Za-z0-9][A-Za-z0-9_-]{0,11}"
"""A printer's name: short, since it stands on every sheet; a bare key of a TOML file."""


def read_printers(table: TomlTable | None) -> dict[str, Printer]:
    """Read the printers of a file; faults are noted in its book."""
    if table is None:
        return {}
    found = {name: _read_printer(name, row) for name, row in table.named_tables().items()}
    return {name: printer for name, printer in found.items() if printer is not None}


def read_printer_file(path: Path) -> dict[str, Printer]:
    """Read the user's settings, none where there is no such file. Raises ReadingError."""
    try:
        if not path.exists() or (path.is_file() and not path.stat().st_size):
            return {}
    except OSError as error:
        raise refusal(path, f"cannot be read: {error.strerror}") from error
    return parse_printers(read_text(path), str(path), alone=True)


def parse_printers(text: str, file: str, *, alone: bool = False) -> dict[str, Printer]:
    """Read the printers in a file's text; `alone`: nothing else may stand in it. Raises
    ReadingError."""
    book = FaultBook(file=file, text=text)
    top = TomlTable(parse_toml(text, file), (), book, "mm")
    printers = read_printers(top.table("printer"))
    if alone:
        top.close()
    book.raise_noted()
    return printers


def _read_printer(name: str, table: TomlTable) -> Printer | None:
    if not re.fullmatch(NAME, name):
        table.book.note(table.path, f"not a printer's name ('{name[:40]}' given); {NAME_RULE}")
    noted = len(table.book.faults)
    given = read_keys(table, Printer)
    dots = read_dots(table)
    if dots is None and not {"labels_right", "labels_up"} & given.keys():
        table.require("across", "along")
    table.close()
    if noted < len(table.book.faults):
        return None
    printer = Printer(name=name, dots=dots, **given)
    for fault in find_faults(printer):
        table.book.note(table.path, fault)
    return printer


NAME_RULE = "A-Z, a-z, digits, - and _ are allowed, 12 at most"


def printer_toml(printer: Printer) -> str:
    """Write a printer as the lines of a file."""
    lines = [
        f"[printer.{printer.name}]",
        *(
            f'{key} = "{_exact(bar)} mm"'
            for key, bar in (("across", printer.across), ("along", printer.along))
            if bar is not None
        ),
    ]
    lines += [f'bars = "{printer.bars}"'] if printer.bars != "mm" and printer.corrected else []
    lines += [f"dots = {printer.dots}"] if printer.dots else []
    lines += [
        f'labels_{way} = "{_exact(off)} mm"'
        for way, off in (("right", printer.labels_right), ("up", printer.labels_up))
        if off
    ]
    lines += [f"{key} = {_quoted(text)}" for key, text in _words(printer).items() if text]
    return "\n".join(lines) + "\n"


def printers_toml(printers: Mapping[str, Printer]) -> str:
    """Write a whole file of printers, in the order of their names."""
    blocks = [printer_toml(printers[name]) for name in sorted(printers)]
    return "\n".join(["# Printers as measured on their test pages.\n", *blocks])


def _words(printer: Printer) -> dict[str, str]:
    return {"paper": printer.paper, "tray": printer.tray}


def _exact(length: float) -> str:
    """Write a length to 0.0001 mm: eighths and 64ths of an inch too, and 0.1 mm as it was read."""
    return f"{length:.4f}".rstrip("0").rstrip(".") if length % 0.1 else format_mm(length)


def _quoted(text: str) -> str:
    escaped = text.replace("\\", "\\\\").replace('"', '\\"')
    return f'"{escaped}"'
