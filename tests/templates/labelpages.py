"""All sheets of labels of a job at once; the tool draws one after the other."""

from collections.abc import Sequence

from jigs.box.parts import Layout
from jigs.given.labelstock import Stock
from templates.labels.labels import each_label_page
from templates.labels.labelwords import LabelWords
from templates.page.marks import Page
from templates.page.raster import Raster


def label_pages(
    layout: Layout,
    labels: Sequence[LabelWords],
    stock: Stock,
    *,
    start: int = 1,
    raster: Raster | None = None,
) -> tuple[Page, ...]:
    """Give all sheets of labels."""
    return tuple(each_label_page(layout, labels, stock, start=start, raster=raster))
