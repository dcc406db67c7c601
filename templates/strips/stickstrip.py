"""One strip of a story stick: its scales, its lines, and where its foot stands.

A strip carries a running scale from the bottom end and a line for each height. Only strips with
lines are printed. Where two of them meet, the upper one is glued on the tab of the one below: its
foot on the join line, and the middle marks of the two little scales, a vernier
(`page/scales.py`), in one line.
"""

import math
from collections.abc import Sequence

from msgspec import Struct

from jigs.bench.storystick import Stick
from jigs.ground.geometry import rectangle
from jigs.ground.lengths import Unit, format_inches, format_mm
from templates.page.marks import MEDIUM, Line, Mark, Outline, Text
from templates.page.scales import COARSE, FINE, OVERLAP, VERNIER_AT, numbers, ticks, vernier
from templates.page.space import spread
from templates.page.typeface import text_width, wrap
from templates.words.stickwords import line_ways

LENGTH = 180.0
"""The most that one strip carries, mm: short enough for every paper, with the words above it."""
WIDTH = 52.0
TAB = 6.0
"""How far the tab of a strip stands out beyond the strip that is glued on it."""
STRIPS_AT = 62.0
"""From one strip to the next on the page."""
FIGURES = 19.0
"""Where the figures begin, from a strip's left edge."""
BESIDE = 1.2
"""Between millimetres and inches in one row."""
INCHES = 10.0
"""Room of the inch scale along a strip's right edge."""
FAINT = 0.13
"""Ticks of the running scales: they stand 1 mm apart; mm."""
MM: Unit = "mm"
INCH: Unit = "in"
_SMALL = 2.5
_LINE = 3.7
_HEAD = 4 * _LINE + 0.6
"""Room at a strip's foot for its number and its place, mm."""
STRIKE = 0.5
"""Width of a line to strike, mm; it is longer than any tick of the scales too."""
_STRUCK = 15.2
"""Where it ends, from a strip's left edge, mm."""


class _Row(Struct, frozen=True, kw_only=True):
    """A line's height, mm; what it is, the fullest wording first; the boards that alone have it;
    whether it is struck, or only shows where something is."""

    y: float
    ways: tuple[str, ...]
    only: tuple[str, ...] = ()
    struck: bool = False


class StickStrip(Struct, frozen=True, kw_only=True):
    """A strip that is printed: its stick's and its own number, how many there are; from which
    height to which it goes; whether one that is printed meets it below and above."""

    stick: int
    number: int
    count: int
    low: float
    high: float
    below: bool
    above: bool


_Words = tuple[tuple[str, bool], ...]
"""Texts that stand in one row, and which of them are bold."""


class _Way(Struct, frozen=True):
    """How fully a strip tells of its lines: the most rows that say what a line is, and the boards
    that alone have it; `close`: its inches stand behind its millimetres."""

    whats: int
    boards: int
    close: bool = False


_WAYS = (
    _Way(9, 9),
    _Way(3, 4),
    _Way(2, 2),
    _Way(1, 1),
    _Way(1, 1, True),
    _Way(0, 1, True),
    _Way(0, 0, True),
)
"""From the fullest on; the last takes 4.3 mm a line, and leaves to the list what a line is."""


def divide(height: float) -> tuple[int, float]:
    """Give the number of strips that a stick is divided into, and what each of them carries but
    the last, which has the rest: about alike, so that none is a stump; mm.

    >>> divide(774.7), divide(183.0)
    ((5, 155.0), (2, 92.0))
    """
    strips = max(1, math.ceil(height / LENGTH))
    return strips, min(LENGTH, float(math.ceil(height / strips)))


def printed_strips(stick: Stick, place: int) -> list[StickStrip]:
    """Give the strips of a stick that have lines, from below; `place`: the stick's own number."""
    count, length = divide(stick.height)
    spans = [
        (at * length, stick.height if at == count - 1 else (at + 1) * length) for at in range(count)
    ]
    used = [
        at
        for at, (low, high) in enumerate(spans)
        if any(_on(line.y, low, high) for line in stick.lines)
    ]
    return [
        StickStrip(
            stick=place, number=number, count=len(used), low=spans[at][0], high=spans[at][1],
            below=at - 1 in used, above=at + 1 in used,
        )
        for number, at in enumerate(used, start=1)
    ]  # fmt: skip


def _on(height: float, low: float, high: float) -> bool:
    """Tell whether a height stands on a strip; one on a join stands on the lower strip."""
    return low < height <= high


def draw_strip(stick: Stick, strip: StickStrip, x: float, foot: float) -> list[Mark]:
    """Draw one strip, its lower left corner at (x, foot)."""
    right, top = x + WIDTH, foot + strip.high - strip.low
    corners: tuple[tuple[float, float], ...] = rectangle(x, foot, right, top)
    if strip.above:
        tab = right + TAB
        corners = (
            (x, foot), (right, foot), (right, top - 3.0), (tab, top - 3.0), (tab, top + OVERLAP),
            (x, top + OVERLAP),
        )  # fmt: skip
    marks: list[Mark] = [Outline(points=corners, width=MEDIUM)]
    if strip.above:
        marks.append(Line(x1=x, y1=top, x2=right + TAB, y2=top, width=MEDIUM))
        words = f"JOIN: foot of strip {strip.number + 1} on this line"
        marks.append(Text(x=x + 2.0, y=top + 4.0, text=words))
        marks += vernier(right, top + VERNIER_AT, TAB, FINE)
    if strip.below:
        marks += vernier(right, foot + VERNIER_AT, -TAB, COARSE)
    rows = _rows_on(stick, strip)
    marks += _scales(strip, [row.y for row in rows], x, foot)
    place = [(f"STICK {strip.stick}", True), (f"STRIP {strip.number} of {strip.count}", True)]
    if strip.low:
        place += [(f"FOOT AT {format_mm(strip.low)}", True)]
        place += [(f'{format_inches(strip.low)}"', False)]
    else:
        place.append(("BOTTOM END", True))
    for row, (text, bold) in enumerate(reversed(place)):
        marks.append(Text(x=x + FIGURES, y=foot + 0.9 + row * _LINE, text=text, bold=bold))
    return [*marks, *_heights(rows, strip, x, foot)]


def _scales(strip: StickStrip, struck: Sequence[float], x: float, foot: float) -> list[Mark]:
    """Draw the running scales: millimetres at the left, inches by sixteenths at the right; no
    figure stands on a line that is struck."""
    right, low, high = x + WIDTH, strip.low, strip.high
    little = low + VERNIER_AT + 6.0 if strip.below else low  # below it stands the little scale
    marks: list[Mark] = [
        *ticks(x, foot, low, high, along="up", side=1, width=FAINT),
        *ticks(
            right, foot, low, high, along="up", side=-1, unit="in", width=FAINT,
            skip=lambda value: value < little,
        ),
    ]  # fmt: skip
    for value, text in numbers(x + 12.5, foot, low, high, along="up", anchor="end"):
        clear = all(abs(value - line) > _SMALL for line in struck)
        if low + 3.0 < value < high - 3.0 and clear:
            marks.append(text)
    for value, text in numbers(right - 5.6, foot, low, high, along="up", anchor="end", unit=INCH):
        if max(little, low + 3.0) < value < high - 3.0:
            marks.append(text)
    return marks


def _rows_on(stick: Stick, strip: StickStrip) -> list[_Row]:
    """Give what stands on a strip, from below."""
    rows = [
        _Row(y=line.y, ways=line_ways(line), only=line.only, struck=True) for line in stick.lines
    ]
    rows.append(_Row(y=stick.height, ways=("TOP END",)))
    if stick.bottom:
        rows.append(_Row(y=stick.bottom, ways=("panel, upper face", "panel")))
    rows = [row for row in rows if _on(row.y, strip.low, strip.high)]
    return sorted(rows, key=lambda row: (row.y, row.ways))


def _heights(rows: Sequence[_Row], strip: StickStrip, x: float, foot: float) -> list[Mark]:
    """Draw the lines of a strip, their figures beside them, none on another."""
    room = WIDTH - INCHES - FIGURES
    floor, limit = foot + _HEAD, foot + strip.high - strip.low - 0.5
    for way in _WAYS:
        texts = [_texts(row, room, way) for row in rows]
        if sum(map(_extent, texts)) <= limit - floor:
            break
    sizes = [_extent(lines) for lines in texts]
    places = spread([foot + row.y - strip.low for row in rows], sizes, floor)
    for index in range(len(places) - 1, -1, -1):  # what is too high goes down again
        places[index] = min(places[index], limit - sizes[index] / 2)
        limit = places[index] - sizes[index] / 2
    marks: list[Mark] = []
    for row, lines, size, place in zip(rows, texts, sizes, places, strict=True):
        y = foot + row.y - strip.low
        width = STRIKE if row.struck else MEDIUM
        marks.append(Line(x1=x, y1=y, x2=x + _STRUCK, y2=y, width=width))
        marks.append(Line(x1=x + _STRUCK, y1=y, x2=x + FIGURES - 0.8, y2=place + 0.4))
        for at, line in enumerate(lines):
            left = x + FIGURES
            for text, bold in line:
                base = place + size / 2 - (at + 1) * _LINE + 0.7
                marks.append(Text(x=left, y=base, text=text, size=_SMALL, bold=bold))
                left += text_width(text, _SMALL, bold) + BESIDE
    return marks


def _texts(row: _Row, room: float, way: _Way) -> list[_Words]:
    """Give the words of a line of the stick in rows of `room` mm, as full as the way allows."""
    figure = (format_mm(row.y), True)
    inches = [(f'{format_inches(row.y)}"', False)] if row.y else []
    first: list[_Words] = [(figure,), *((each,) for each in inches)]
    if way.close:
        wide = text_width(figure[0], _SMALL, True) + BESIDE
        fits = all(wide + text_width(text, _SMALL) <= room for text, _ in inches)
        first = [(figure, *inches) if fits else (figure,)]
    if row.only and not way.whats and not way.boards:
        return [(figure, ("ONLY", True))]
    return [
        *first,
        *(((text, False),) for text in _whole(row.ways, room, way.whats)),
        *(((text, True),) for text in _only_rows(row.only, room, way.boards)),
    ]


def _whole(ways: Sequence[str], room: float, most: int) -> list[str]:
    """Give the fullest wording that fits whole in so many rows; none where none does."""
    for way in ways:
        rows = wrap(way, _SMALL, False, room)
        if len(rows) <= most and all(text_width(word, _SMALL) <= room for word in way.split()):
            return rows
    return []


def _extent(lines: Sequence[_Words]) -> float:
    """Give the height of a line's words; mm."""
    return len(lines) * _LINE + 0.6


def _only_rows(only: Sequence[str], room: float, most: int) -> list[str]:
    """Name the boards that alone have a line, in rows of `room` mm, `most` at most: where they
    find no room, how many they are. A name is never cut short."""
    if not only:
        return []
    words = f"ONLY {', '.join(only)}"
    rows = wrap(words, _SMALL, True, room)
    if len(rows) <= most and all(text_width(row, _SMALL, True) <= room for row in rows):
        return rows
    count = sum(name.count("+") + 1 for name in only)
    return [f"ONLY {count}: list"]
