"""The test page of a stock, read back: outlines where the geometry says, and scales to read."""

import pytest

from jigs.given.labelstock import Stock
from jigs.given.printer import Printer
from jigs.ground.sheetsizes import SHEET_SIZES, SheetSize
from templates.labels.fitpage import FRAME, fit_page
from templates.labels.stocks import STOCKS
from templates.page.marks import Line, Outline, Page, Text
from templates.page.raster import Raster, raster_of
from templates.writers.pdf import write_pdf
from tests.clashes import clashes_of_marks
from tests.readback import Box, read_pages

ROLLS = {name: stock for name, stock in STOCKS.items() if stock.roll}
SHEETS_OF_LABELS = {
    name: stock for name, stock in STOCKS.items() if not stock.roll and stock.bore is None
}
SMALL = Stock(
    name="small", sheet=SHEET_SIZES["a4"], columns=5, rows=13, width=40, height=21.2,
    pitch_x=40, pitch_y=21.2, left=5, top=10.7,
)  # fmt: skip
SINGLE = Stock(
    name="single", sheet=SHEET_SIZES["letter"], width=150, height=200, pitch_x=150, pitch_y=200,
    left=30, top=40,
)  # fmt: skip
LEAST = Stock(
    name="least", sheet=SheetSize(name="roll", width=40, height=30), roll=True,
    width=40, height=30, pitch_x=40, pitch_y=30,
)  # fmt: skip
MOVED = Printer(name="garage", across=179.5, along=199.4, labels_right=0.6, labels_up=-0.4)


def frames(page: Page) -> list[Box]:
    """Read the rectangles of a page back, in mm from its lower left corner."""
    (read,) = read_pages(write_pdf([page]))
    return [box for box, _, _ in read.frames]


@pytest.mark.parametrize(
    "stock", [*SHEETS_OF_LABELS.values(), SMALL, SINGLE], ids=lambda stock: stock.name
)
def test_every_label_has_its_outline_and_its_number(stock: Stock) -> None:
    """Where the geometry says, to 0.01 mm; a cross at the centre of each."""
    page = fit_page(stock, Raster())
    read = frames(page)
    assert len(read) == stock.places
    numbers = [mark for mark in page.marks if isinstance(mark, Text) and mark.size == 3.5]
    assert [mark.text for mark in numbers] == [str(n) for n in range(1, stock.places + 1)]
    lines = [mark for mark in page.marks if isinstance(mark, Line)]
    for place, rect in enumerate(read, start=1):
        x, y = stock.corner(place)
        assert rect == pytest.approx((x, y, x + stock.width, y + stock.height), abs=0.01)
        middle = x + stock.width / 2, y + stock.height / 2
        for end in ("1", "2"):
            assert any(
                ((line.x1 + line.x2) / 2, (line.y1 + line.y2) / 2) == pytest.approx(middle)
                and getattr(line, f"x{end}") != middle[0]
                for line in lines
            )


@pytest.mark.parametrize(
    "stock",
    [*SHEETS_OF_LABELS.values(), *ROLLS.values(), SMALL, SINGLE, LEAST],
    ids=lambda stock: stock.name,
)
@pytest.mark.parametrize("printer", [None, MOVED], ids=["true", "moved"])
def test_nothing_on_it_runs_into_anything(stock: Stock, printer: Printer | None) -> None:
    """Its texts touch no line and no other text, and all lies on the page."""
    page = fit_page(stock, raster_of(printer, None), printer.name if printer else "")
    assert clashes_of_marks(page) == []


@pytest.mark.parametrize("stock", SHEETS_OF_LABELS.values(), ids=SHEETS_OF_LABELS)
def test_the_steps_stand_on_it_whole(stock: Stock) -> None:
    """On every sheet that ships there is room for all of them."""
    words = " ".join(
        mark.text for mark in fit_page(stock, Raster()).marks if isinstance(mark, Text)
    )
    for wanted in ("PLAIN", "against the light", "--labels-up", "[stock.NAME]", "not corrected"):
        assert all(word in words for word in wanted.split())


@pytest.mark.parametrize("stock", [*SHEETS_OF_LABELS.values(), SINGLE], ids=lambda s: s.name)
def test_the_scales_zero_stands_on_the_outline(stock: Stock) -> None:
    """0 is the longest tick; half millimetres from -4 to +4, across and up."""
    page = fit_page(stock, Raster())
    x, y = stock.corner(1)
    right = x + stock.width
    ticks = [
        mark
        for mark in page.marks
        if isinstance(mark, Line) and mark.x1 == mark.x2 and abs(mark.x1 - right) < 4.01
        and mark.y1 == pytest.approx(y + stock.height / 2)
    ]  # fmt: skip
    assert sorted(mark.x1 - right for mark in ticks) == pytest.approx(
        [half / 2 for half in range(-8, 9)]
    )
    zero = max(ticks, key=lambda mark: mark.y2 - mark.y1)
    assert zero.x1 == pytest.approx(right)


def test_a_moved_sheet_is_drawn_where_its_labels_will_be() -> None:
    """With the printer's offset and correction, and it says so."""
    stock = STOCKS["letter-3x10"]
    raster = raster_of(MOVED, None)
    page = fit_page(stock, raster, "garage")
    first = frames(page)[0]
    x, y = stock.corner(1)
    assert first[0] / raster.scale[0] == pytest.approx(x + 0.6, abs=0.01)
    down = (page.height * raster.scale[1] - first[1]) / raster.scale[1]
    assert down == pytest.approx(stock.sheet.height - y + 0.4, abs=0.01)
    words = " ".join(mark.text for mark in page.marks if isinstance(mark, Text))
    assert "'garage'" in words
    assert "0.6 mm to the right, -0.4 mm up" in words


@pytest.mark.parametrize("stock", ROLLS.values(), ids=ROLLS)
def test_a_rolls_frame_stands_at_one_distance_from_all_edges(stock: Stock) -> None:
    """White left and white below are what is measured; a printer's offset moves the frame."""
    page = fit_page(stock, Raster())
    wide, high = stock.width, stock.height
    assert frames(page) == [pytest.approx((FRAME, FRAME, wide - FRAME, high - FRAME), abs=0.01)]
    moved = fit_page(stock, Raster(shift=(0.5, -0.5)), "garage")
    [outline] = [mark for mark in moved.marks if isinstance(mark, Outline)]
    assert outline.points[0] == pytest.approx((FRAME + 0.5, FRAME - 0.5))
