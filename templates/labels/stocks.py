"""The label stocks that ship with the tool, and how they are told.

>>> stock = STOCKS["letter-3x10"]
>>> stock.places
30
>>> [round(corner, 2) for corner in stock.corner(1)]
[4.76, 241.3]
"""

from collections.abc import Iterable
from pathlib import Path

from msgspec.structs import replace

from jigs.given.labelstock import Stock
from jigs.reading.jobprinters import read_stocks
from jigs.reading.tomltables import FaultBook, TomlTable
from jigs.reading.tomltext import parse_toml, read_text
from templates.words.textlines import columned


def _read_own() -> dict[str, Stock]:
    path = Path(__file__).with_name("stocks.toml")
    text = read_text(path)
    book = FaultBook(file=str(path), text=text)
    stocks = read_stocks(TomlTable(parse_toml(text, str(path)), (), book, "mm").table("stock"))
    book.raise_noted()
    return {name: replace(stock, own=False) for name, stock in stocks.items()}


STOCKS: dict[str, Stock] = _read_own()
"""The stocks that ship with the tool, by name."""


def list_text(stocks: Iterable[Stock]) -> str:
    """List stocks with their geometry, those of one sort together."""
    stocks = list(stocks)
    lines = columned([(stock.name, describe(stock)) for stock in stocks])
    groups = {
        "Sheets of labels, mm": [s for s in stocks if not s.roll and s.bore is None],
        "Rolls, one label a page, across the roll x along it, mm": [s for s in stocks if s.roll],
        "Tags to cut out of plain paper, mm": [s for s in stocks if s.bore is not None],
    }
    blocks = []
    for head, members in groups.items():
        if members:
            own = [line for stock, line in zip(stocks, lines, strict=True) if stock in members]
            blocks.append("\n".join([head, *own]))
    if any(not stock.own for stock in stocks):
        blocks.append(
            "Dimensions from memory: print a stock's test page, 'jigsheet stocks NAME', and lay it "
            "over\nyour own against the light. Another stock: [stock.NAME] in the job file."
        )
    return "\n\n".join(blocks) + "\n"


def describe(stock: Stock) -> str:
    """Say a stock's geometry in a line."""
    size = f"{stock.width:g} x {stock.height:g}"
    if stock.round:
        size = f"{stock.width:g} across, round"
    words = [f"label {size}" if stock.bore is None else f"tag {size}, for a bore of {stock.bore:g}"]
    if not stock.roll:
        words.append(f"{stock.columns} x {stock.rows} on {_page(stock)}")
        if stock.bore is None:
            words.append(f"pitch {stock.pitch_x:g} x {stock.pitch_y:g}")
            words.append(f"left {stock.left:g}, top {stock.top:g}")
    if stock.dots:
        words.append(f"{stock.dots} dots per inch")
    if stock.own:
        words.append("yours")
    return "; ".join(words)


def _page(stock: Stock) -> str:
    if stock.sheet.name == "common":
        return "A4 or letter"
    if stock.sheet.name != "own":
        return stock.sheet.name
    return f"{stock.sheet.width:g} x {stock.sheet.height:g}"
