"""Where each label stands: on a sheet place after place, on a roll one a page.

The page keeps its upper left corner: from there a printer counts. A printer's offset moves the
labels on a sheet; on a roll, whose page ends where the label does, it narrows them instead, so
that nothing is cut off.
"""

from collections.abc import Callable, Iterator, Sequence

from msgspec import Struct

from jigs.given.labelstock import Stock
from templates.page.marks import Mark, Page
from templates.page.raster import Raster


class LabelField(Struct, frozen=True, kw_only=True):
    """The rectangle of one label on its page, and what stays white along its edges; mm."""

    left: float
    bottom: float
    width: float
    height: float
    margin: float

    @property
    def right(self) -> float:
        """The right edge."""
        return self.left + self.width

    @property
    def top(self) -> float:
        """The upper edge."""
        return self.bottom + self.height


class LabelEntry(Struct, frozen=True):
    """One label to be placed: whose it is, and what draws it into a field."""

    part: str
    draw: Callable[[LabelField], Sequence[Mark]]


def field_of(stock: Stock, place: int, raster: Raster) -> LabelField:
    """Give the rectangle of a place on the page that a printer draws. Raises ValueError where
    there is no such place."""
    width, height = raster.page(stock.sheet.width, stock.sheet.height)
    right, up = raster.shift
    left, bottom = stock.corner(place)
    if stock.roll:
        return LabelField(
            left=max(0.0, right),
            bottom=max(0.0, up),
            width=width - abs(right),
            height=height - abs(up),
            margin=stock.margin,
        )
    return LabelField(
        left=left + right,
        bottom=bottom + up + height - stock.sheet.height,
        width=stock.width,
        height=stock.height,
        margin=stock.margin,
    )


def place_labels(
    entries: Sequence[LabelEntry],
    stock: Stock,
    raster: Raster,
    *,
    start: int = 1,
    copies: int = 1,
    always: Sequence[Mark] = (),
) -> Iterator[Page]:
    """Place labels, each `copies` times, from place `start` of the first sheet on; `always`
    stands on each page. Raises ValueError where a sheet has no place `start`."""
    wide, high = raster.page(stock.sheet.width, stock.sheet.height)
    many = [entry for entry in entries for _ in range(copies)]
    taken = start - 1
    field_of(stock, start, raster)
    while many:
        page, many = many[: stock.places - taken], many[stock.places - taken :]
        marks = list(always)
        for place, entry in enumerate(page, start=taken + 1):
            marks += entry.draw(field_of(stock, place, raster))
        first, last = page[0].part, page[-1].part
        yield Page(
            width=wide,
            height=high,
            marks=tuple(marks),
            entry=first if first == last else f"{first} to {last}",
            scale=raster.scale,
        )
        taken = 0
