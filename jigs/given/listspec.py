"""What a person says of a front list that the list does not say itself: which column holds what,
and how its cells are meant. `[list]` in a job file, `--columns` for a list that stands alone.
"""

from collections.abc import Mapping
from typing import Annotated, Literal

from msgspec import Struct, field

from jigs.given.hangsat import RowsFrom
from jigs.given.job import FrontKind, FrontSpec
from jigs.ground.geometry import SLACK, Hand
from jigs.ground.keys import Key
from jigs.ground.lengths import BareUnit

SizeOrder = Literal["width-first", "height-first"]
EmptyBox = Literal["above", "own"]
PairSizes = Literal["one-leaf", "both-leaves", "pieces"]
BothHands = Literal["pair", "stack"]
KindMeant = FrontKind | Literal["nothing"]
"""What a list's own word means: a kind of front, or nothing: a row that is no front."""
RowMeant = KindMeant | Literal["front"]
"""What a single row is: as it says itself, another kind of front, or nothing."""
HandMeant = Hand | Literal["nothing"]
"""What a list's own words say of a door's hand."""
Thousands = Literal["point", "comma"]
MergedCount = Literal["each"]
Apart = Literal["one-box"]
Titles = Literal["boxes", "nothing"]
DoorsAlike = Literal["stack", "pair"]


class ListSpec(Struct, frozen=True, kw_only=True):
    """How a front list is to be read, where it does not say so itself."""

    columns: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    """Where each column stands: a spreadsheet's letter, a number from 1, or its heading, each with
    a unit behind it or without; several for `nothing`, the columns that are left alone."""
    kinds: Mapping[str, KindMeant] = field(default_factory=dict)
    """What the list's own words mean."""
    hands: Mapping[str, HandMeant] = field(default_factory=dict)
    """Which hand the list's own words say."""
    box_rows: Mapping[str, RowsFrom] = field(default_factory=dict)
    """From which end the rows of single boxes stand, by their IDs."""
    row: Mapping[str, RowMeant] = field(default_factory=dict)
    """What single rows are, by their numbers as a spreadsheet shows them."""
    units: Annotated[BareUnit | None, Key()] = None
    """What its bare numbers are in, whatever its header says."""
    order: Annotated[SizeOrder | None, Key()] = None
    """Which size stands first where a cell holds several."""
    empty_box: Annotated[EmptyBox | None, Key()] = None
    """A row whose box is empty below a filled one: it hangs on the box above, or has one of its \
own."""
    unnamed: Annotated[FrontKind | None, Key()] = None
    """What a front is whose row does not say it."""
    pairs: Annotated[PairSizes | None, Key()] = None
    """A row of a double door: the width of one leaf, the width across both, or the width of one \
leaf and the count of single leaves."""
    both_hands: Annotated[BothHands | None, Key()] = None
    """A left and a right door of one size on one box: a pair, or one above the other."""
    doors_alike: Annotated[DoorsAlike | None, Key()] = None
    """A row of several doors on one box: one above the other, or two and two a pair."""
    rows: Annotated[RowsFrom | None, Key()] = None
    """From which end the rows of a box stand, where its notes do not say it."""
    thousands: Annotated[Thousands | None, Key()] = None
    """The sign that parts thousands in its numbers, 1.950 or 1,950; the other is a decimal's."""
    merged_count: Annotated[MergedCount | None, Key()] = None
    """A cell of counts merged over several rows: each of them has that count."""
    apart: Annotated[Apart | None, Key()] = None
    """Rows of one box between which rows of another stand: one box, from top to bottom as they \
stand."""
    titles: Annotated[Titles | None, Key()] = None
    """Rows of one word between the fronts: each names the box of the rows below it, or nothing."""
    sheet: Annotated[str, Key()] = ""
    """The sheet of the workbook that holds the list, where several might."""


NOTHING = "nothing"
"""The name under which columns are left alone."""
SETTINGS = (
    "units", "order", "empty_box", "unnamed", "pairs", "both_hands", "doors_alike", "rows",
    "thousands", "merged_count", "apart", "titles", "sheet",
)  # fmt: skip
"""The keys that are no columns."""
SAME_WIDTH = 1.0
"""Fronts of one box whose widths differ by more do not belong together, mm (common practice)."""
SAME_WIDTH_PAIR = 3.5
"""The same where a pair is one of them: each leaf may be rounded down by 1/16 in."""


def clear_width(front: FrontSpec, between: float) -> float | None:
    """Give what a row takes up across its box: of a pair both leaves with the gap `between` them;
    None where it says no width; mm."""
    if front.width is None:
        return None
    return front.width if front.kind != "pair" else 2 * front.width + between


def shares_width(front: FrontSpec, first: FrontSpec, between: float) -> bool:
    """Tell whether a row takes up what the first row of its box does, as far as both say it."""
    width, wanted = clear_width(front, between), clear_width(first, between)
    if width is None or wanted is None:
        return True
    allowed = SAME_WIDTH_PAIR if "pair" in (front.kind, first.kind) else SAME_WIDTH
    return abs(width - wanted) <= allowed + SLACK
