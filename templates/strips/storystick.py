"""The story stick on paper: strips that are joined to one stick as long as the board.

A strip carries a running scale from the bottom end and a line for each height. The next strip is
cut along its foot and its right edge and glued on the tab of the one below: its foot on the join
line, and the middle marks of the two little scales, a vernier (`page/scales.py`), in one line.
Joins add up, so the whole length is measured with a steel tape before it is used.
"""

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from jigs.bench.storystick import Stick, StickLine
from jigs.ground.geometry import rectangle
from jigs.ground.lengths import Unit, format_inches, format_mm
from templates.page.border import BOTTOM_STRIP, EDGE, LEFT_STRIP, border_marks
from templates.page.marks import MEDIUM, WIDE, Line, Mark, Outline, Page, Text
from templates.page.paper import Paper
from templates.page.pieces import moved, paragraph
from templates.page.scales import COARSE, FINE, OVERLAP, SLIP, VERNIER_AT, numbers, ticks, vernier
from templates.page.space import spread
from templates.page.typeface import shorten, text_width, wrap
from templates.words.fittingwords import words_of
from templates.words.openwords import open_line

LENGTH = 180.0
"""The most that one strip carries, mm: short enough for every paper, with the words above it."""
WIDTH = 52.0
TAB = 6.0
"""How far the tab of a strip stands out beyond the strip that is glued on it."""
PITCH = 62.0
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
_Row = tuple[float, str, tuple[str, ...]]
"""A line's height, mm, what it is, and the boards that alone have it."""
_Words = tuple[tuple[str, bool], ...]
"""Texts that stand in one row, and which of them are bold."""


@dataclass(frozen=True, slots=True)
class _Way:
    """How fully a strip tells of its lines: the most rows that say what a line is, and the boards
    that alone have it; `close`: its inches stand behind its millimetres."""

    whats: int
    boards: int
    close: bool = False


_WAYS = (_Way(3, 4), _Way(2, 2), _Way(1, 1), _Way(1, 1, True), _Way(0, 1, True), _Way(0, 0, True))
"""From the fullest on; the last takes 4.3 mm a line, and leaves to the list what a line is."""


def stick_pages(sticks: Sequence[Stick], job: str, paper: Paper) -> Iterator[Page]:
    """Draw the pages of each family's stick: its strips, then its heights as a list."""
    number = 1
    for place, stick in enumerate(sticks, start=1):
        name = f"Story stick {place}: {format_mm(stick.height)} mm"
        strips, _ = divide(stick.height)
        across = max(1, int((paper.width - LEFT_STRIP - EDGE + PITCH - WIDTH - TAB) / PITCH))
        for first in range(0, strips, across):
            marks = border_marks(paper.width, paper.height, paper, number)
            chosen = range(first, min(strips, first + across))
            marks += _head(stick, name, job, chosen, strips, paper)
            for column, strip in enumerate(chosen):
                x = LEFT_STRIP + column * PITCH
                marks += _strip(stick, strip, strips, x, BOTTOM_STRIP + 3.0)
            yield Page(width=paper.width, height=paper.height, marks=tuple(marks), entry=name)
            number += 1
        for page in _list_pages(stick, name, paper, number):
            yield page
            number += 1


def divide(height: float) -> tuple[int, float]:
    """Give the number of strips of a stick, and what each of them carries but the last, which has
    the rest: about alike, so that none is a stump; mm.

    >>> divide(774.7), divide(183.0)
    ((5, 155.0), (2, 92.0))
    """
    strips = max(1, math.ceil(height / LENGTH))
    return strips, min(LENGTH, float(math.ceil(height / strips)))


def _head(stick: Stick, name: str, job: str, strips: range, count: int, paper: Paper) -> list[Mark]:
    """Say what the stick is for and how it is made."""
    width = paper.width - LEFT_STRIP - EDGE
    boards = shorten(f"For {', '.join(stick.boards)}.", _SMALL, False, 3 * width)
    numbers = (
        f"strip {strips[0] + 1}"
        if len(strips) == 1
        else (f"strips {strips[0] + 1} to {strips[-1] + 1}")
    )
    words = [
        paragraph(f"{name.upper()}, {numbers} of {count}", width, size=3.5, bold=True),
        paragraph(f"{shorten(job, _SMALL, False, width * 0.4)}. {boards}", width),
        paragraph(
            "1 Measure both bars. 2 Cut the strips out. 3 Glue each on the tab of the one before: "
            "its foot on the JOIN line, the long marks of both little scales in one line; the next "
            f"pair in line shows a slip of {SLIP:g} mm. 4 Glue the whole on a straight batten, its "
            f"foot flush with the batten's end. 5 With a steel tape: the TOP END must stand at "
            f"{format_mm(stick.height)}. Each join may add {SLIP:g} mm: where it matters, trust "
            "the tape and the figures.",
            width,
        ),
        paragraph(_striking(stick), width, bold=True),
    ]  # fmt: skip
    words += [
        paragraph(shorten(text, _SMALL, True, width), width, bold=True) for text in _cautions(stick)
    ]
    marks: list[Mark] = []
    top = paper.height - EDGE
    for piece in words:
        marks += moved(piece.marks, LEFT_STRIP, top)
        top -= piece.height + 0.6
    return marks


def _striking(stick: Stick) -> str:
    """Say on which boards the lines are struck."""
    some = any(line.only for line in stick.lines)
    if stick.struck == "faces":
        words = "Strike each line on both faces"
        if some:
            words += "; one marked ONLY on that face alone (L: the left face, seen from the room)"
        return f"{words}."
    if stick.struck == "each":
        if len(stick.boards) == 1:
            return f"Strike the lines on {stick.boards[0]}, on no other board."
        rest = "" if all(line.only for line in stick.lines) else "; one that names none, on all"
        return (
            "Strike each line only on the boards that it names (L: left side, R: right side), on "
            f"no other{rest}."
        )
    lay = "Lay LEFT and RIGHT side front edge to front edge against one stop"
    if not some:
        return f"{lay}, strike each line across BOTH at once."
    return (
        f"{lay}. Strike across BOTH at once only what is on both. A line marked ONLY goes on the "
        "boards that it names, on no other (L: left side, R: right side; L+R: both)."
    )


def _cautions(stick: Stick) -> list[str]:
    """Say what of the stick is not to be trusted yet, and what is not on it."""
    said = []
    if stick.open:
        said.append(open_line(stick.open, "the check lists them"))
    if stick.standing:
        boxes = ", ".join(stick.standing)
        said.append(
            f"ALREADY TOGETHER: {boxes}. Set these out from the bottom panel: see the list."
        )
    if stick.missing:
        said.append(f"INCOMPLETE: lines for {', '.join(stick.missing)} still to come.")
    return said


def _strip(stick: Stick, strip: int, count: int, x: float, foot: float) -> list[Mark]:
    """Draw one strip, its lower left corner at (x, foot)."""
    _, length = divide(stick.height)
    low = strip * length
    last = strip == count - 1
    high = stick.height if last else low + length
    top = foot + high - low

    def at(height: float) -> float:
        return foot + height - low

    right = x + WIDTH
    corners: tuple[tuple[float, float], ...] = rectangle(x, foot, right, top)
    if not last:
        tab = right + TAB
        corners = (
            (x, foot), (right, foot), (right, top - 3.0), (tab, top - 3.0), (tab, top + OVERLAP),
            (x, top + OVERLAP),
        )  # fmt: skip
    marks: list[Mark] = [Outline(points=corners, width=MEDIUM)]
    if not last:
        marks.append(Line(x1=x, y1=top, x2=right + TAB, y2=top, width=MEDIUM))
        words = f"JOIN: foot of strip {strip + 2} on this line"
        marks.append(Text(x=x + 2.0, y=top + 4.0, text=words))
        marks += vernier(right, top + VERNIER_AT, TAB, FINE)
    if strip:
        marks += vernier(right, foot + VERNIER_AT, -TAB, COARSE)
    marks += _scales(low, high, x, foot)
    marks += _heights(stick, low, high, strip, x, at)
    return marks


def _scales(low: float, high: float, x: float, foot: float) -> list[Mark]:
    """Draw the running scales: millimetres at the left, inches by sixteenths at the right."""
    right = x + WIDTH
    little = low + VERNIER_AT + 6.0 if low else low  # below it stands the little scale
    marks: list[Mark] = [
        *ticks(x, foot, low, high, along="up", side=1, width=FAINT),
        *ticks(
            right, foot, low, high, along="up", side=-1, unit="in", width=FAINT,
            skip=lambda value: value < little,
        ),
    ]  # fmt: skip
    for place, unit, first in ((x + 12.5, MM, low + 3.0), (right - 5.6, INCH, little)):
        figures = numbers(place, foot, low, high, along="up", anchor="end", unit=unit)
        marks += [text for value, text in figures if max(first, low + 3.0) < value < high - 3.0]
    return marks


def _heights(
    stick: Stick,
    low: float,
    high: float,
    strip: int,
    x: float,
    at: Callable[[float], float],
) -> list[Mark]:
    """Draw the lines of a strip, their figures beside them, none on another."""
    rows: list[_Row] = [(line.y, _what(line), line.only) for line in stick.lines]
    rows += [(0.0, "BOTTOM END", ()), (stick.height, "TOP END", ())]
    if stick.bottom:
        rows.append((stick.bottom, "panel, upper face", ()))
    mine = sorted(
        row for row in rows if (low <= row[0] if not strip else low < row[0]) and row[0] <= high
    )
    if not mine:
        return []
    room = WIDTH - INCHES - FIGURES
    for way in _WAYS:
        texts = [_texts(row, room, way) for row in mine]
        if sum(map(_extent, texts)) <= high - low - 1.0:
            break
    sizes = [_extent(lines) for lines in texts]
    places = spread([at(height) for height, _, _ in mine], sizes, at(low) + 0.5)
    limit = at(high) - 0.5
    for index in range(len(places) - 1, -1, -1):  # what is too high goes down again
        places[index] = min(places[index], limit - sizes[index] / 2)
        limit = places[index] - sizes[index] / 2
    marks: list[Mark] = []
    for (height, _, _), lines, size, place in zip(mine, texts, sizes, places, strict=True):
        y = at(height)
        marks.append(Line(x1=x, y1=y, x2=x + 5.0, y2=y, width=WIDE))
        marks.append(Line(x1=x + 13.2, y1=y, x2=x + 15.2, y2=y, width=WIDE))
        marks.append(Line(x1=x + 15.2, y1=y, x2=x + FIGURES - 0.8, y2=place + 0.4))
        for row, line in enumerate(lines):
            left = x + FIGURES
            for text, bold in line:
                base = place + size / 2 - (row + 1) * _LINE + 0.7
                marks.append(Text(x=left, y=base, text=text, size=_SMALL, bold=bold))
                left += text_width(text, _SMALL, bold) + BESIDE
    return marks


def _texts(row: _Row, room: float, way: _Way) -> list[_Words]:
    """Give the words of a line of the stick in rows of `room` mm, as full as the way allows."""
    height, what, only = row
    figure = (format_mm(height), True)
    inches = [(f'{format_inches(height)}"', False)] if height else []
    first: list[_Words] = [(figure,), *((each,) for each in inches)]
    if way.close:
        wide = text_width(figure[0], _SMALL, True) + BESIDE
        fits = all(wide + text_width(text, _SMALL) <= room for text, _ in inches)
        first = [(figure, *inches) if fits else (figure,)]
    if only and not way.whats and not way.boards:
        return [(figure, ("ONLY", True))]
    words = wrap(what, _SMALL, False, room)
    if len(words) > way.whats:
        words = [*words[: way.whats - 1], " ".join(words[way.whats - 1 :])][: way.whats]
    return [
        *first,
        *(((shorten(text, _SMALL, False, room), False),) for text in words),
        *(((text, True),) for text in _only_rows(only, room, way.boards)),
    ]


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


def _figure(height: float) -> str:
    return f"{format_mm(height)} mm ({format_inches(height)} in)"


def _what(line: StickLine) -> str:
    parts = ", ".join(line.serves)
    return f"{words_of(line.kind).stick} {parts}".strip()


def _list_pages(stick: Stick, name: str, paper: Paper, number: int) -> Iterator[Page]:
    """List the heights to strike, and the spacer boards."""
    width = paper.width - LEFT_STRIP - EDGE
    lines = [(text, True) for text in _cautions(stick)]
    lines.append(("HEIGHTS TO STRIKE, from the bottom end", True))
    lines.append((_striking(stick), False))
    for line in stick.lines:
        above = f"; {format_mm(line.y - stick.bottom)} mm above the bottom panel"
        only = f", ONLY {', '.join(line.only)}" if line.only else ""
        above = above if stick.bottom else ""
        lines.append((f"{_figure(line.y)}  {_what(line)}{only}{above}", False))
    if stick.spacers:
        lines.append(
            ("SPACER BOARDS for the slides, stood on the bottom panel, slide on top", True)
        )
        for spacer in stick.spacers:
            height = (
                "none: the slide stands on the panel" if abs(spacer.above_panel) < 0.05
                else f"{_figure(spacer.above_panel)} high"
            )  # fmt: skip
            own = spacer.slide_height
            slide = f"; for a slide {format_mm(own)} mm high: measure yours" if own else ""
            lines.append((f"{spacer.part}: {height}{slide}", False))
    marks: list[Mark] = []
    top = 0.0
    for text, bold in lines:
        piece = paragraph(text, width, bold=bold)
        if not marks or top - piece.height < BOTTOM_STRIP + 3.0:
            if marks:
                yield Page(width=paper.width, height=paper.height, marks=tuple(marks), entry=name)
                number += 1
            marks = border_marks(paper.width, paper.height, paper, number)
            head = paragraph(f"{name.upper()}, figures", width, size=3.5, bold=True)
            top = paper.height - EDGE
            marks += moved(head.marks, LEFT_STRIP, top)
            top -= head.height + 2.0
        marks += moved(piece.marks, LEFT_STRIP, top)
        top -= piece.height + 0.6
    yield Page(width=paper.width, height=paper.height, marks=tuple(marks), entry=name)
