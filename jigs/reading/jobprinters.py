"""Calibrated printers in a file: `[printer.NAME]`, in a job file or in the user's settings.

`across` and `along` are the measured bars, with their units; `bars` says which ones, `paper` and
`tray` what was in the printer. `dots` are its dots per inch; `labels_right` and `labels_up` how
far its labels are to be moved. A label printer may have these alone.
"""

import re
from collections.abc import Mapping
from pathlib import Path

from jigs.given.printer import Printer, find_faults
from jigs.ground.errors import Fault, ReadingError
from jigs.ground.lengths import format_mm
from jigs.reading.fieldkeys import read_keys
from jigs.reading.jobstocks import read_dots
from jigs.reading.tomlindex import index_lines
from jigs.reading.tomltables import FaultBook, Table
from jigs.reading.tomltext import parse_toml, read_text

NAME = re.compile(r"[A-Za-z0-9][A-Za-z0-9_-]{0,11}")
"""A printer's name: short, since it stands on every sheet; a bare key of a TOML file."""


def read_printers(table: Table | None) -> dict[str, Printer]:
    """Read the printers of a file; faults are noted in its book."""
    if table is None:
        return {}
    found = {name: _read(name, row) for name, row in table.named_tables().items()}
    return {name: printer for name, printer in found.items() if printer is not None}


def read_printer_file(path: Path) -> dict[str, Printer]:
    """Read the user's settings, none where there is no such file. Raises ReadingError."""
    try:
        if not path.exists() or (path.is_file() and not path.stat().st_size):
            return {}
    except OSError as error:
        raise ReadingError([Fault(str(path), f"cannot be read: {error.strerror}")]) from error
    return parse_printers(read_text(path), str(path), alone=True)


def parse_printers(text: str, file: str, *, alone: bool = False) -> dict[str, Printer]:
    """Read the printers in a file's text; `alone`: nothing else may stand in it. Raises
    ReadingError."""
    book = FaultBook(file=file, lines=index_lines(text))
    top = Table(parse_toml(text, file), (), book, "mm")
    printers = read_printers(top.table("printer"))
    if alone:
        top.close()
    book.raise_noted()
    return printers


def _read(name: str, table: Table) -> Printer | None:
    if not NAME.fullmatch(name):
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
