"""Chains of dimensions: lengths one after the other along one line, as carpenters have them.

After ISO 129-1: each value stands above its line and parallel to it, the job's unit large and the
other one small behind it; oblique strokes end each length. A value that finds no room between its
strokes goes further out, turned, with a thin line to its length. Millimetres on the page.

A chain is thought of as lying: u runs along it, v up from its line. A standing chain is the same
one turned by a quarter, so that it is read from the right.
"""

import math
from collections.abc import Sequence
from typing import Literal

from msgspec import Struct
from msgspec.structs import replace

from jigs.ground.lengths import Unit, format_inches, format_mm
from templates.page.marks import Line, Mark, Text
from templates.page.space import spread
from templates.page.typeface import shorten, text_width

LARGE, SMALL = 2.5, 1.8
"""Lettering, mm (ISO 3098)."""
ABOVE = 3.9
"""What a value takes above its line, mm."""
OUT = 2.2
"""From the line to a value that stands further out, mm."""

_LIFT = 1.0
_BETWEEN = 1.1
_AIR = 1.4
"""Between a value and its strokes, both together, mm."""
_GAP = 3.0
"""Over a wider gap than this between two lengths the line does not run on, mm."""
_STROKE = 0.8
"""Half an oblique stroke along each axis, mm."""
_BEYOND, _FREE = 1.3, 0.8
_ROW = 1.5 * SMALL
"""Pitch of turned values, mm."""


class Length(Struct, frozen=True):
    """A length on a drawing: from `start` to `end` on the page, `value` in true mm."""

    start: float
    end: float
    value: float


class Chain(Struct, frozen=True, kw_only=True):
    """A chain on one line: `at` its place across, `lying` or standing.

    `outside` is the side of the line that is turned away from what is dimensioned: above or below
    a lying chain; of a standing one `above` is its left, `below` its right.
    """

    lengths: tuple[Length, ...]
    at: float
    unit: Unit
    lying: bool = True
    outside: Literal["above", "below"] = "below"

    @property
    def crowded(self) -> tuple[Length, ...]:
        """The lengths whose values find no room between their strokes."""
        return tuple(
            length
            for length in self.lengths
            if length.end - length.start
            < text_width(worded(length.value, self.unit)[0], SMALL) + _AIR
        )

    @property
    def reach(self) -> float:
        """How far the chain's values reach outwards from its line, mm."""
        out = ABOVE if self.outside == "above" else _BEYOND
        if not self.crowded:
            return out
        longest = max(
            text_width(worded(length.value, self.unit)[0], SMALL) for length in self.crowded
        )
        return (ABOVE if self.outside == "above" else 0.0) + OUT + longest + 0.4

    def marks(self, starts: Sequence[float] = ()) -> list[Mark]:
        """Draw it. `starts`: for each end of a length, from the first on, where across the page
        its extension line begins; none: no extension lines. Ends that follow each other at one
        place are one."""
        drawn: list[Mark] = []
        if not self.lengths:
            return drawn
        start = self.lengths[0].start
        for length, after in zip(self.lengths, (*self.lengths[1:], None), strict=True):
            if after is None or after.start - length.end > _GAP:
                drawn.append(self._line(start, 0.0, length.end, 0.0))
                start = after.start if after else start
        ends = self.ends
        for u in ends:
            drawn.append(self._line(u - _STROKE, -_STROKE, u + _STROKE, _STROKE, 0.35))
        for u, start in zip(ends, starts, strict=False):
            v = (start - self.at) if self.lying else (self.at - start)
            beyond = math.copysign(_BEYOND, -v)
            drawn.append(self._line(u, v - math.copysign(_FREE, v), u, beyond))
        crowded = self.crowded
        for length in self.lengths:
            if length not in crowded:
                drawn += self._value(length)
        return drawn + self._further_out(crowded)

    @property
    def ends(self) -> tuple[float, ...]:
        """Where lengths begin and end, each place once; mm."""
        found: list[float] = []
        for length in self.lengths:
            for u in (length.start, length.end):
                if not found or u - found[-1] > 1e-9:
                    found.append(u)
        return tuple(found)

    def _value(self, length: Length) -> list[Mark]:
        large, small = worded(length.value, self.unit)
        room = length.end - length.start - _AIR
        wide = text_width(large, LARGE)
        both = wide + _BETWEEN + text_width(small, SMALL)
        middle = (length.start + length.end) / 2
        if both > room:
            size = LARGE if wide <= room else SMALL
            return [self._text(middle, _LIFT, large, size, "middle")]
        left = middle - both / 2
        return [
            self._text(left, _LIFT, large, LARGE, "start"),
            self._text(left + wide + _BETWEEN, _LIFT, small, SMALL, "start"),
        ]

    def _further_out(self, crowded: Sequence[Length]) -> list[Mark]:
        """Give the values that stand further out, none on another; too many stay unwritten."""
        low, high = self.lengths[0].start, self.lengths[-1].end
        # Within the chain's ends, where the lines of its total run by; one by itself has none.
        free = 0.3 if len(self.lengths) > 1 else -_ROW
        most = int((high - low - 2 * free) / _ROW)
        if not crowded or len(crowded) > most:
            return []
        wanted = [(length.start + length.end) / 2 for length in crowded]
        pitch = [_ROW] * len(crowded)
        # From the right end first, so that none is pushed beyond it, then from the left.
        turned = spread([-u for u in reversed(wanted)], pitch, free - high)
        places = spread([-u for u in reversed(turned)], pitch, low + free)
        drawn: list[Mark] = []
        above = self.outside == "above"
        near, far = (ABOVE, ABOVE + OUT - 0.5) if above else (-0.6, 0.5 - OUT)
        end = ABOVE + OUT if above else -OUT
        for length, middle, u in zip(crowded, wanted, places, strict=True):
            drawn.append(self._line(middle, 0.0, middle, near))
            drawn.append(self._line(middle, near, u, far))
            text = worded(length.value, self.unit)[0]
            drawn.append(self._turned(u, end, text, above))
        return drawn

    def _line(self, u1: float, v1: float, u2: float, v2: float, width: float = 0.18) -> Line:
        (x1, y1), (x2, y2) = self._point(u1, v1), self._point(u2, v2)
        return Line(x1=x1, y1=y1, x2=x2, y2=y2, width=width, layer="dimension")

    def _point(self, u: float, v: float) -> tuple[float, float]:
        return (u, self.at + v) if self.lying else (self.at - v, u)

    def _text(
        self, u: float, v: float, text: str, size: float, anchor: Literal["start", "middle"]
    ) -> Text:
        x, y = self._point(u, v)
        return Text(
            x=x, y=y, text=text, size=size, anchor=anchor, angle=0 if self.lying else 90,
            layer="dimension",
        )  # fmt: skip

    def _turned(self, u: float, v: float, text: str, above: bool) -> Text:
        """A value across the chain: of a lying one read from the right, of a standing one level."""
        if self.lying:
            x, y = self._point(u + SMALL / 2, v)
            return Text(
                x=x, y=y, text=text, size=SMALL, angle=90, anchor="start" if above else "end",
                layer="dimension",
            )  # fmt: skip
        x, y = self._point(u - SMALL / 2, v)
        return Text(
            x=x, y=y, text=text, size=SMALL, anchor="end" if above else "start", layer="dimension"
        )


def worded(value: float, unit: Unit) -> tuple[str, str]:
    """Write a length in the job's unit, and in the other one.

    >>> worded(457.2, "in"), worded(457.2, "mm")
    (('18"', '457.2'), ('457.2', '18"'))
    """
    inches, metric = f'{format_inches(value)}"', format_mm(value)
    return (inches, metric) if unit == "in" else (metric, inches)


def named(
    text: str, middle: float, y: float, room: float, height: float, most: float
) -> list[Mark]:
    """Write a name on its middle as large as `room` mm allow, `most` at most; turned if its row
    is high enough, else shortened."""
    for size in (3.5, LARGE, SMALL):
        if size <= most and text_width(text, size, True) <= room:
            return [_bold(text, middle, y, size)]
    if text_width(text, SMALL, True) <= height and room > SMALL * 0.6:
        return [replace(_bold(text, middle + SMALL / 2, y, SMALL), anchor="start", angle=90)]
    text = shorten(text, SMALL, True, room)
    return [_bold(text, middle, y, SMALL)] if len(text) > 2 else []


def _bold(text: str, x: float, y: float, size: float) -> Text:
    return Text(x=x, y=y, text=text, size=size, bold=True, anchor="middle", layer="id")
