"""The modules and the text of the symbols on every stock, and of links in their place."""

import pytest
from msgspec.structs import replace

from jigs.given.labelstock import Stock
from jigs.ground.dotpitch import READ
from templates.labels.labelrows import break_name
from templates.labels.labels import module_on
from templates.labels.labelsymbol import TALL
from templates.labels.stocks import STOCKS
from templates.page.marks import Outline, Qr
from templates.page.raster import Raster
from templates.words.payload import LENGTHS
from templates.writers.pdf import write_pdf
from tests.templates.kitchens import workshop, workshop_looks
from tests.templates.labelpages import label_pages
from tests.templates.labels.test_labels import EVERY as EVERY_PRINTED
from tests.templates.labels.test_labels import LABELS, check_pages

EVERY = pytest.mark.parametrize("stock", LABELS.values(), ids=LABELS)
SERVED = "http://192.168.1.20:8032/p/{}?k=abcdEFGHijkl_-12"


def symbols_of(stock: Stock) -> list[Qr]:
    """Give the symbol of each look on a stock."""
    pages = label_pages(workshop(), workshop_looks(), stock)
    return [mark for page in pages for mark in page.marks if isinstance(mark, Qr)]


@pytest.mark.parametrize("name", [name for name, s in LABELS.items() if s.height >= TALL])
def test_labels_of_38_mm_say_122_characters_at_07_mm(name: str) -> None:
    """On every such stock, whatever else stands on it; on the narrowest an ID that would be under
    3 mm high beside so large a symbol (S1-STRETCHER-1) has a smaller one."""
    for words, symbol in zip(workshop_looks(), symbols_of(LABELS[name]), strict=True):
        assert symbol.module >= 0.7
        long = name == "a4-3x7" and max(map(len, break_name(words.part))) > 10
        assert symbol.text == words.payload.fit(LENGTHS[0]) or long


@EVERY
def test_no_text_has_modules_that_are_read_off_a_good_print_alone(stock: Stock) -> None:
    """What no label leaves out stands on the smallest stock at 0.6 mm: 49 characters for this
    workshop's sides, 61 at most."""
    for words, symbol in zip(workshop_looks(), symbols_of(stock), strict=True):
        assert symbol.module >= READ - 0.02  # whole dots
        assert len(symbol.text) >= len(words.payload.core)


@EVERY
def test_a_link_takes_the_room_that_its_length_asks_for(stock: Stock) -> None:
    """Of a served address 0.7 mm on labels of 38 mm, but for a longest ID; 0.5 at least."""
    linked = [replace(words, link=SERVED.format(words.part)) for words in workshop_looks()]
    raster = Raster(dots=stock.dots)
    modules = [module_on(words, stock, raster) for words in linked]
    assert None not in modules
    large = [module for module in modules if module == 0.7]
    assert len(large) >= len(modules) - 1 if stock.height >= TALL else not large


@EVERY_PRINTED
def test_a_label_with_a_link_is_printed_whole(stock: Stock) -> None:
    """Nothing overlaps, and each symbol says its own part's link."""
    linked = [replace(words, link=SERVED.format(words.part)) for words in workshop_looks()]
    pages = label_pages(workshop(), linked[::3], stock)
    check_pages(pages, write_pdf(pages), stock)
    said = [mark.text for page in pages for mark in page.marks if isinstance(mark, Qr)]
    assert said == [words.link for words in linked[::3]]


def test_the_key_plan_stays_on_a_narrow_label_of_38_mm() -> None:
    """It stands below the words: beside so large a symbol there is no room for it."""
    stock = STOCKS["a4-3x7"]
    for words in workshop_looks():
        (page,) = label_pages(workshop(), [words], stock)
        (symbol,) = (mark for mark in page.marks if isinstance(mark, Qr))
        outlines = [mark for mark in page.marks if isinstance(mark, Outline)]
        assert outlines
        assert (
            max(x for mark in outlines for x, _ in mark.points) < symbol.x or len(symbol.text) <= 90
        )
