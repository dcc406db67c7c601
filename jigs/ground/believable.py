"""What is believable: the range in which a number of one kind lies in any kitchen.

Each key is read with its range beside it. A bare number outside the range that would lie inside
it in another unit was typed in that unit: a fault of reading. Any other number outside is only
unusual, and told as a warning. Ranges are wide: what is in one need not be right. Those that
several keys share stand at the end; all are common practice without a source, and generous.

>>> band = Range(0.2, 4, zero=True)
>>> measure("0.6", "in", band).meant, measure("0.6 mm", "in", band).meant
(('mm',), ())
>>> measure("6 mm", "in", band).usual, measure("0", "in", band).usual
(False, True)
"""

from collections.abc import Iterator

from msgspec import Struct

from jigs.ground.geometry import SLACK
from jigs.ground.lengths import MM_PER_INCH, BareUnit, is_bare, parse_value

MM_PER: dict[BareUnit, float] = {"mm": 1.0, "cm": 10.0, "in": MM_PER_INCH}


KeyPath = tuple[str | int, ...]
"""Keys and places in lists (counted from 1) from the document down."""


class Range(Struct, frozen=True):
    """From `low` to `high` (common practice, no source, and generous)."""

    low: float
    """The least that is usual, in `unit`; below 0 where the sign says which way."""
    high: float
    """The most that is usual, in `unit`."""
    zero: bool = False
    """Whether 0 may stand there, for none."""
    least: float = 0.0
    """Nothing but 0 is nearer to 0 than this: of a range on both sides of it, in `unit`."""
    unit: str = "mm"
    """What the numbers are in: mm of every length, kg, ...; "" of a plain number."""

    @property
    def signed(self) -> bool:
        """Whether a number below 0 has a meaning there."""
        return self.low < 0

    @property
    def takes_zero(self) -> bool:
        """Whether 0 has a meaning there."""
        return self.zero or self.low <= 0

    def holds(self, value: float) -> bool:
        """Tell whether a value in `unit` is usual."""
        if value == 0:
            return self.takes_zero
        return self.low - SLACK <= value <= self.high + SLACK and abs(value) >= self.least - SLACK

    def __str__(self) -> str:
        """Write it as a sentence has it.

        >>> str(Range(0.2, 4)), str(Range(-12, 25, least=1))
        ('0.2 to 4 mm', '-12 to -1, 0, or 1 to 25 mm')
        """
        middle = f"-{self.least:g}, 0, or {self.least:g} to " if self.least else ""
        return f"{self.low:g} to {middle}{self.high:g} {self.unit}".rstrip()


class ReadLength(Struct, frozen=True):
    """A length as it was read: `mm`; whether that is `usual`; else the units in which the bare
    number would be, none where it has a unit or lies in the range of no other."""

    mm: float
    usual: bool = True
    meant: tuple[BareUnit, ...] = ()


class Doubt(Struct, frozen=True, kw_only=True):
    """A number that was read and is not usual."""

    path: KeyPath
    """Where it stands in its file, key by key; a list's column alone."""
    value: float
    """What was read, in the unit of its range."""
    within: Range
    """What is usual there."""
    nominal: str = ""
    """The trade's fraction as given, where it is asked whether that was measured."""


def write_path(path: KeyPath) -> str:
    """Write a path as it is read aloud: `box[2].front[1].height`."""
    words = [f"[{step}]" if isinstance(step, int) else f".{step}" for step in path]
    return "".join(words).removeprefix(".")


def measure(value: object, unit: BareUnit, within: Range) -> ReadLength:
    """Read a length whose bare number is in `unit`. Raises LengthError."""
    signed, zero = within.signed, within.takes_zero
    if is_bare(value):
        number = parse_value(value, "mm", signed=signed, zero=zero)
        if not within.holds(number * MM_PER[unit]) and (meant := (*_fits(number, unit, within),)):
            return ReadLength(number * MM_PER[meant[0]], usual=False, meant=meant)
    mm = parse_value(value, unit, signed=signed, zero=zero)
    return ReadLength(mm, usual=within.holds(mm))


def _fits(number: float, unit: BareUnit, within: Range) -> Iterator[BareUnit]:
    return (other for other, mm in MM_PER.items() if other != unit and within.holds(number * mm))


def word_unit(given: str, unit: BareUnit, within: Range, meant: tuple[BareUnit, ...]) -> str:
    """Say that a bare number is in another unit than its file's; `given` as it stands.

    >>> word_unit("0.6", "in", Range(0.2, 4), ("mm",))
    '0.6 in is 15.2 mm, and 0.2 to 4 mm is usual; 0.6 mm? write the unit'
    """
    number = parse_value(given, "mm", signed=True)
    in_mm = "" if unit == "mm" else f" is {number * MM_PER[unit]:.1f} mm"
    others = " or ".join(f"{given} {other}" for other in meant)
    return f"{given} {unit}{in_mm or ' given'}, and {within} is usual; {others}? write the unit"


BOARD = Range(9, 45)
"""A board of which boxes are made."""
FRONT_BOARD = Range(10, 45)
"""A board of which fronts are made."""
THIN_BOARD = Range(2, 30)
"""A back, a panel in a frame, a drawer's bottom."""
REVEAL = Range(0.5, 19, zero=True)
"""A gap beside a front."""
OWN_REVEAL = Range(0.5, 60, zero=True)
"""A front's own gap: beside a filler, above it, at a handle."""
SIDE_REVEAL = Range(-45, 60, least=0.5)
"""The same beside a front: below 0 where it reaches over the edge of a covered end panel."""
PANEL_GAP = Range(0.5, 250, zero=True)
"""A gap beside an appliance's panel, or an opening."""
PANEL_REVEAL = Range(-30, 250, least=0.5)
"""The gap below it: the whole plinth."""
END_REVEAL = Range(-30, 40, least=0.5)
"""A gap above or below a front: a crown takes some, a wall front hangs below its box."""
TAB = Range(2, 12)
"""From the hinge edge of a door to the rim of its cup."""
PLATE = Range(0.5, 20, zero=True)
"""The height of a hinge's plate."""
SCREW_HOLE = Range(1, 12)
"""The diameter of a fitting's hole: a pilot, a system screw, a dowel."""
SCREW_DEPTH = Range(4, 30)
"""How deep such a hole is."""
RAIL = Range(30, 260)
"""A board on edge or flat across a box: a rail, a stretcher, a nailer."""
PANEL_WIDTH = Range(10, 1600)
PANEL_HEIGHT = Range(30, 2800)
"""Of an appliance's panel, or an end panel."""
SHARE = Range(0.05, 20, unit="")
"""A weight by which the rest is shared: no lengths."""
DRAWER_HEIGHT = Range(40, 600)
"""The height of a drawer box's sides."""
DIAGONAL = Range(60, 3500)
"""From corner to corner of a box or a front."""
STILE = Range(20, 260)
"""The width of a frame's stile or rail."""
GROOVE = Range(3, 20, zero=True)
"""The depth of the groove in a frame."""
EDGE_RADIUS = Range(0.5, 20)
"""The radius of a front's rounded edge."""
ALONG_BOARD = Range(9, 800)
"""From a side's front edge to a slide's hole."""
IN_BOX = Range(25, 2700)
"""A height inside a box, or on a front."""
SPARE = Range(2, 80, zero=True)
"""What is left over, set back or cut longer."""
