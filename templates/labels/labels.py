"""Labels on sheets or rolls of a stock, one for every part; `labellist.py` says which, in which
order.

On a label, from the left: an arrow, the words, the QR symbol with the code below it and, where
the label is 30 mm high, the key plan. A black stripe along an end, or along the top, shows which
edge goes to the front. Nothing is clipped: what does not fit is worded shorter, then left out by
its worth, and cut short with an ellipsis only at last. The ID is never cut.
"""

from collections.abc import Iterator, Sequence
from functools import partial

from jigs.box.parts import Layout
from jigs.given.labelstock import Stock
from templates.labels.keyplan import KeyPlan
from templates.labels.labeldraw import label_marks
from templates.labels.labelplacing import LabelEntry, LabelField, place_labels
from templates.labels.labelwords import LabelWords
from templates.page.marks import Mark, Page
from templates.page.raster import Raster


def each_label_page(
    layout: Layout,
    labels: Sequence[LabelWords],
    stock: Stock,
    *,
    start: int = 1,
    copies: int = 1,
    raster: Raster | None = None,
) -> Iterator[Page]:
    """Give the sheets of labels of a job one by one, one label after the other.

    `start` is the first free place of the first sheet; ValueError where it has no such place.
    Each label is printed `copies` times. `raster`: what the printer asks for; without it, the
    stock's own dots.
    """
    plan = KeyPlan(layout)
    raster = raster or Raster(dots=stock.dots)
    entries = [
        LabelEntry(words.part, partial(_draw, words=words, plan=plan, raster=raster))
        for words in labels
    ]
    return place_labels(entries, stock, raster, start=start, copies=copies)


def label_pages(
    layout: Layout,
    labels: Sequence[LabelWords],
    stock: Stock,
    *,
    start: int = 1,
    copies: int = 1,
    raster: Raster | None = None,
) -> tuple[Page, ...]:
    """Give all sheets of labels of a job at once."""
    return tuple(each_label_page(layout, labels, stock, start=start, copies=copies, raster=raster))


def _draw(field: LabelField, *, words: LabelWords, plan: KeyPlan, raster: Raster) -> list[Mark]:
    return label_marks(words, plan, field, raster)
