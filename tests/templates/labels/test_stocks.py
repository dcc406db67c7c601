"""Label stocks: every label lies on its sheet, and none on another."""

from itertools import combinations

import pytest

from jigs.given.labelstock import Stock, faults_of_stock
from templates.labels.stocks import STOCKS, list_text

EVERY = pytest.mark.parametrize("stock", STOCKS.values(), ids=STOCKS)
SHEETS = {name: stock for name, stock in STOCKS.items() if not stock.roll}


@EVERY
def test_labels_lie_on_the_sheet_apart(stock: Stock) -> None:
    """No two labels overlap, and no label leaves the sheet."""
    corners = [stock.corner(place) for place in range(1, stock.places + 1)]
    for x, y in corners:
        assert 0 <= x <= stock.sheet.width - stock.width
        assert 0 <= y <= stock.sheet.height - stock.height + 1e-9
    for (ax, ay), (bx, by) in combinations(corners, 2):
        assert abs(ax - bx) >= stock.width - 1e-9 or abs(ay - by) >= stock.height - 1e-9


@pytest.mark.parametrize("stock", SHEETS.values(), ids=SHEETS)
def test_places_count_row_by_row_from_the_top_left(stock: Stock) -> None:
    """Place 2 is right of place 1; the next row follows below."""
    x, y = stock.corner(1)
    assert (x, y) == pytest.approx((stock.left, stock.sheet.height - stock.top - stock.height))
    assert stock.corner(2) == pytest.approx((x + stock.pitch_x, y))
    assert stock.corner(1 + stock.columns) == pytest.approx((x, y - stock.pitch_y))


@EVERY
def test_margins_match_left_and_right(stock: Stock) -> None:
    """The columns stand in the middle of the sheet, within half a millimetre."""
    x, _ = stock.corner(stock.columns)
    assert stock.sheet.width - x - stock.width == pytest.approx(stock.left, abs=0.5)


def test_a_place_off_the_sheet_is_refused() -> None:
    """The message gives what there is."""
    with pytest.raises(ValueError, match="places 1 to 30"):
        STOCKS["letter-3x10"].corner(31)


@EVERY
def test_each_is_named_with_its_geometry(stock: Stock) -> None:
    """The list is what a person chooses from: label, columns and rows, pitch."""
    [line] = [
        line for line in list_text(STOCKS.values()).splitlines() if stock.name in line.split()
    ]
    wanted = [f"{stock.width:g}", f"{stock.height:g}"] if not stock.round else [f"{stock.width:g}"]
    if not stock.roll:
        wanted += [str(stock.columns), str(stock.rows)]
    for figure in wanted:
        assert figure in line.replace(";", "").replace(",", "").split()


def test_a_roll_is_called_by_its_label() -> None:
    """`roll-62x29` is 62 across and 29 along, to half a millimetre."""
    for stock in (stock for stock in STOCKS.values() if stock.roll):
        across, along = map(int, stock.name.removeprefix("roll-").split("x"))
        assert (stock.width, stock.height) == pytest.approx((across, along), abs=0.5)
        assert (stock.sheet.width, stock.sheet.height) == (stock.width, stock.height)


def test_every_stock_that_ships_is_without_fault() -> None:
    """By the rules that a job's own stock is held to."""
    for stock in STOCKS.values():
        assert faults_of_stock(stock) == ()
