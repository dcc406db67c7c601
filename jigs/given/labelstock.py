"""Label stocks: sheets and rolls of labels, and tags for a bore, each known by its geometry alone.

On a sheet places count row by row from the top left. A roll has one label a page, and the page is
the label. A tag is cut out of plain paper and laid into the bore of a hinge's cup, where it
outlasts the paint.

>>> roll = Stock(name="mine", sheet=SheetSize(name="roll", width=62, height=29), roll=True,
...              width=62, height=29, pitch_x=62, pitch_y=29)
>>> roll.places, roll.corner(1), faults_of_stock(roll)
(1, (0.0, 0.0), ())
"""

import math
from collections.abc import Iterator
from typing import Annotated

from msgspec import Struct

from jigs.ground.believable import Range
from jigs.ground.geometry import SLACK
from jigs.ground.keys import Key
from jigs.ground.lengths import format_mm
from jigs.ground.sheetsizes import SheetSize

LEAST_LABEL = ((37.0, 27.0), (47.0, 17.0))
"""Within its margins a label must be as wide and high as one of these, mm: then it takes ID, code
and symbol, the ID over the symbol or beside it."""
LEAST_TAG = {False: 23.0, True: 33.0}
"""The smallest tag that takes them: side of a square one, diameter of a round one; mm."""
PLAY = 0.5
"""What a tag is smaller than its bore at least, so that it goes in; mm (common practice)."""
MARGIN = 1.0
"""White that is kept along a label's edges, mm: so far a sheet may lie off its place."""
ROLL_MARGIN = 1.5
"""The same on a roll, where the printer's head does not reach the edge; mm (from memory)."""
MOST_MARGIN = 5.0
MOST_PLACES = 100
"""Columns, and rows, of a sheet."""
PAPER = Range(5, 620)
"""A size of a label, from one to the next, or of their sheet; mm."""
MOST_PAGE = 1200.0
"""Longest side of a page of labels, mm."""


class Stock(Struct, frozen=True, kw_only=True):
    """A label stock; mm."""

    name: str
    sheet: SheetSize
    """The page: of a roll its label."""
    columns: Annotated[int, Key(Range(1, 20, unit=""), most=MOST_PLACES)] = 1
    """Labels side by side."""
    rows: Annotated[int, Key(Range(1, 60, unit=""), most=MOST_PLACES)] = 1
    """Labels one above the other."""
    width: float
    """Of one label."""
    height: float
    """Of one label."""
    pitch_x: Annotated[float, Key(PAPER)]
    """From one label to the next at its side; else its width: they touch."""
    pitch_y: Annotated[float, Key(PAPER)]
    """From one label to the next below it; else its height."""
    left: Annotated[float, Key(Range(1, 150, zero=True))] = 0.0
    """From the sheet's left edge to the first label."""
    top: Annotated[float, Key(Range(1, 150, zero=True))] = 0.0
    """From its top edge to the first label."""
    roll: Annotated[bool, Key()] = False
    """Whether it comes on a roll: one label a page."""
    margin: Annotated[float, Key(Range(0.3, 15, zero=True))] = MARGIN
    """What stays white along a label's edges; 1 on sheets, 1.5 on rolls where nothing is said."""
    dots: int | None = None
    """Dots per inch of the printer that it is for."""
    bore: Annotated[float | None, Key(Range(10, 60))] = None
    """The diameter of the bore that it is a tag for."""
    round: Annotated[bool, Key()] = False
    """Whether such a tag is round, not square."""
    own: bool = False
    """Whether it is the job's."""

    @property
    def places(self) -> int:
        """Labels on one sheet."""
        return self.columns * self.rows

    def corner(self, place: int) -> tuple[float, float]:
        """Give the lower left corner of a label on its sheet, from the sheet's lower left.

        Places count from 1, row by row from the top left. Raises ValueError outside the sheet.
        """
        if not 1 <= place <= self.places:
            raise ValueError(
                f"place {place} on a sheet of {self.name}; it has places 1 to {self.places}"
            )
        row, column = divmod(place - 1, self.columns)
        return (
            self.left + column * self.pitch_x,
            self.sheet.height - self.top - row * self.pitch_y - self.height,
        )


def faults_of_stock(stock: Stock) -> tuple[tuple[str, str], ...]:
    """Say what cannot be right about a stock's geometry: the key it stands at, and the fact."""
    return (*_sizes(stock), *_places(stock), *_page(stock))


def _page(stock: Stock) -> Iterator[tuple[str, str]]:
    keys = ("label_width", "label_height") if stock.roll else ("page_width", "page_height")
    for key, size in zip(keys, (stock.sheet.width, stock.sheet.height), strict=True):
        if size > MOST_PAGE + SLACK:
            yield (
                key,
                f"too long for a page of labels ({_mm(size)} given); {MOST_PAGE:g} mm at most",
            )


def _sizes(stock: Stock) -> Iterator[tuple[str, str]]:
    if stock.bore is not None:
        yield from _tag(stock, stock.bore)
        return
    both = 2 * min(stock.margin, MOST_MARGIN)
    wide, high = stock.width - both + SLACK, stock.height - both + SLACK
    if not any(wide >= least_wide and high >= least_high for least_wide, least_high in LEAST_LABEL):
        wanted = " or ".join(f"{w + both:g} x {h + both:g}" for w, h in LEAST_LABEL)
        yield (
            "label_width" if wide < LEAST_LABEL[0][0] else "label_height",
            f"too small ({stock.width:.4g} x {stock.height:.4g} mm given): ID, code and QR symbol "
            f"want {wanted} mm",
        )
    if stock.margin > MOST_MARGIN + SLACK:
        yield "margin", f"too wide ({_mm(stock.margin)} given); up to {MOST_MARGIN:g} mm is allowed"


def _tag(stock: Stock, bore: float) -> Iterator[tuple[str, str]]:
    size = _mm(stock.width)
    if abs(stock.width - stock.height) > SLACK:
        yield "label_height", f"a tag is as high as wide ({size} x {_mm(stock.height)} given)"
    across = stock.width if stock.round else math.hypot(stock.width, stock.height)
    if across > bore - PLAY + SLACK:
        how = "across" if stock.round else "from corner to corner"
        fact = f"{_mm(across)} {how}; a bore of {_mm(bore)} takes {_mm(bore - PLAY)}"
        yield "label_width", f"it does not go into its bore: {fact}"
    least = LEAST_TAG[stock.round]
    if stock.width < least - SLACK:
        shape = "round" if stock.round else "square"
        want = f"ID, code and QR symbol want {least:g} mm on a {shape} tag"
        yield "label_width", f"too small ({size} given): {want}"


def _places(stock: Stock) -> Iterator[tuple[str, str]]:
    """Find labels that overlap, or that leave the page."""
    for key, size_key, count, pitch, size in (
        ("pitch_x", "label_width", stock.columns, stock.pitch_x, stock.width),
        ("pitch_y", "label_height", stock.rows, stock.pitch_y, stock.height),
    ):
        if count > 1 and pitch < size - SLACK:
            yield (
                key,
                (
                    f"the labels overlap: {_mm(pitch)} from one to the next, and {size_key} is "
                    f"{_mm(size)}; measure from edge to same edge"
                ),
            )
    ends = (
        ("columns", "column", "right", "left", "pitch_x", "label_width", stock.columns,
         stock.left + (stock.columns - 1) * stock.pitch_x + stock.width, stock.sheet.width),
        ("rows", "row", "lower", "top", "pitch_y", "label_height", stock.rows,
         stock.top + (stock.rows - 1) * stock.pitch_y + stock.height, stock.sheet.height),
    )  # fmt: skip
    for key, what, edge, first, pitch_key, size_key, count, end, page in ends:
        if end > page + SLACK:
            sum_of = f"{first} + {count - 1} x {pitch_key} + {size_key}"
            yield (
                key,
                (
                    f"the last {what} leaves the page: it ends at {_mm(end)} ({sum_of}), and the "
                    f"page's {edge} edge is at {_mm(page)}"
                ),
            )


def _mm(size: float) -> str:
    return f"{format_mm(size)} mm"
