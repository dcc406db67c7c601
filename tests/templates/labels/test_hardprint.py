"""Labels printed badly: telephones must read them all the same."""

from collections.abc import Sequence

import pytest
from msgspec.structs import replace

from templates.labels.stocks import STOCKS
from templates.page.marks import Page, Qr
from tests.hardprint import read_hard
from tests.templates.kitchens import workshop, workshop_looks
from tests.templates.labelpages import label_pages

STOCKS_READ = [name for name, stock in STOCKS.items() if stock.bore is None]
WANTED = 0.95


def share_read(pages: Sequence[Page], dots: int) -> float:
    """Give the share of symbols that are read, and read rightly."""
    found = read_hard(pages, dots)
    return sum(said == read for said, read in found) / len(found)


@pytest.mark.parametrize("dots", [203, pytest.param(300, marks=pytest.mark.slow)])
def test_a_label_printed_hard_is_read(dots: int) -> None:
    """Two of its labels, off a printer whose dots nobody stated."""
    labels = workshop_looks()[3::20]
    pages = label_pages(workshop(), labels, STOCKS["a4-3x7"])
    assert share_read(pages, dots) == 1.0


@pytest.mark.slow
@pytest.mark.parametrize(
    ("name", "dots"),
    [*((name, STOCKS[name].dots or 300) for name in STOCKS_READ), ("roll-50x25", 300)],
)
def test_labels_of_every_stock_printed_hard_are_read(name: str, dots: int) -> None:
    """Of every sixth look, 95 of a hundred or more, by who states no dots: off a roll at the dots
    that it is set for, and at others."""
    pages = label_pages(workshop(), workshop_looks()[::6], STOCKS[name])
    assert share_read(pages, dots) >= WANTED


@pytest.mark.slow
@pytest.mark.parametrize("dots", [203, 300])
def test_so_hard_a_print_is_not_read_with_small_modules(dots: int) -> None:
    """The same symbols at 0.5 mm: hardly one in ten is read, so the print is hard."""
    pages = [
        replace(
            page,
            marks=tuple(
                replace(mark, module=0.5) if isinstance(mark, Qr) else mark for mark in page.marks
            ),
        )
        for page in label_pages(workshop(), workshop_looks()[::3], STOCKS["letter-2x5"])
    ]
    assert share_read(pages, dots) <= 0.2
