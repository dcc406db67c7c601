"""The rows of words on a label: the ID, then line under line, each as large as the room takes.

What does not fit is worded shorter, then left out by its worth, and cut short with an ellipsis
only at last. The ID, HOLD and the code always stay.
"""

from collections.abc import Sequence

from msgspec import Struct

from jigs.ground.geometry import SLACK
from templates.labels.labelmarks import BASE_LINE, SMALL
from templates.labels.labelwords import LabelWords
from templates.page.marks import Mark, Text
from templates.page.typeface import ASCENT, EM_PER_CAP, shorten, text_box, text_width
from templates.words.labellines import Wording

LEAST_LETTERING = 1.8
"""The least lettering on a narrow label, mm (ISO 3098)."""
LARGE = 3.5
"""ID and what a part is stand on two lines rather than in smaller letters than these, mm ..."""
TWO_LINES = 28.0
"""... where the words have so much height, mm."""
LETTERS = 8
"""Letters that must remain of a text that is cut short."""

_HOLD, _CODE = 99, 98
"""The worth of rows that are never left out."""
NAME_LEAST = 3.0
"""Before an ID is smaller than this, the lines under it go, mm."""
NAME_SCARCE = 2.0
"""Where room is scarce, an ID is made as small as this, mm, ..."""
NEEDED = 6
"""... for lines worth so much, and more."""

_SIZES = (12.0, 11.0, 10.0, 9.0, 8.0, 7.0, 6.0, 5.5, 5.0, 4.5, 4.0, 3.5, 3.0, 2.5)


class _Row(Struct, kw_only=True):
    """A row of lettering while a label is set; a text of two lines stays one row. `rises`: how far
    each line's accents stand above the room of its letters, of a lettering of 1."""

    lines: Sequence[str]
    size: float
    bold: bool
    worth: int
    rises: Sequence[float]


def set_rows(
    words: LabelWords,
    more: Sequence[Wording],
    code: str,
    x: float,
    width: float,
    bottom: float,
    top: float,
    least: float,
    name_least: float,
    named: float | None,
) -> tuple[list[Mark], tuple[Wording, ...]]:
    """Set the ID, the lines under it, then `more` and the code where it is given, as large as the
    room takes, and at least `least` mm high, the ID `name_least`; give with them the stamps that
    found no room.
    `named`: the ID stands elsewhere, in letters of this height, and nothing here is larger."""
    height = top - bottom
    plain = name_least if name_least < NAME_LEAST else LARGE
    whole = text_width(words.part, plain, True) <= width
    names = [] if named else [words.part] if whole else break_name(words.part)
    rows = [_row(name, SMALL, True, 100) for name in names]
    if words.hold:
        size = min(5.0, width / text_width("HOLD", 1.0, True))
        rows.append(_row("HOLD", size, True, _HOLD))
    growing: list[tuple[_Row, Wording]] = []
    for line in (*words.lines, *more):
        text = _fit(line, least, width, large=height > TWO_LINES)
        if not text:
            continue
        row = _row(text, least, line.bold, line.worth)
        rows.append(row)
        growing.append((row, line))
    if code:
        size = min(least, width / text_width(code, 1.0))
        rows.append(_row(code, size, False, _CODE))
    # The ID wants 5 mm at least, or 3.5 on two lines, if it is not too long for that; what is
    # worth least makes room.
    name_rows = rows[: len(names)]
    for row in name_rows:
        row.size = min(5.0 if len(names) == 1 else 3.5, _widest(names, width))
    while (over := (_height(rows) - height) / EM_PER_CAP) > 0:
        spare = [row for row in rows if row.worth < _CODE]
        large = names and name_rows[0].size - over / len(names) >= name_least
        first = min(spare, key=lambda row: row.worth, default=None)
        if first is None or (large and (len(rows) <= len(names) + 2 or first.worth >= NEEDED)):
            break
        rows.remove(first)
    over = max(0.0, _height(rows) - height) / EM_PER_CAP
    for row in name_rows:
        row.size -= over / len(names)
    _grow(rows, name_rows, growing, width, height, named or _SIZES[0])
    marks: list[Mark] = []
    white = max(0.0, height - _height(rows))
    rising = min(white, _rising(rows))
    share = rising / _rising(rows) if rising else 0.0
    at = top - (white - rising) / 2
    for row in rows:
        for part, rise in zip(row.lines, row.rises, strict=True):
            at -= row.size * (EM_PER_CAP + share * rise)
            marks.append(
                Text(x=x, y=at + row.size * BASE_LINE, text=part, size=row.size, bold=row.bold)
            )
    missing = [
        line for row, line in growing if line.stamp and not any(row is other for other in rows)
    ]
    return marks, tuple(missing)


def _grow(
    rows: list[_Row],
    names: list[_Row],
    growing: list[tuple[_Row, Wording]],
    width: float,
    height: float,
    most: float,
) -> None:
    """Enlarge row after row in order of need, as long as height and width take it."""

    def enlarge(row_or_rows: list[_Row], size: float) -> None:
        before = [row.size for row in row_or_rows]
        size = min(size, most)
        if not before or size <= before[0]:
            return
        for row in row_or_rows:
            row.size = size
        wide = max(text_width(line, size, row.bold) for row in row_or_rows for line in row.lines)
        if wide > width or _height(rows) + _rising(rows) > height:
            for row, old in zip(row_or_rows, before, strict=True):
                row.size = old

    def largest(line: Wording) -> float:
        """No word is larger than the ID, none but what the part is larger than its size."""
        bounds = names[:1] if line.bold or line.large else names[:1] + sizes[:1]
        return min([most, *(row.size for row in bounds)])

    holds = [row for row in rows if row.worth == _HOLD]
    codes = [row for row in rows if row.worth == _CODE]
    kept = [(row, line) for row, line in growing if any(row is other for other in rows)]
    sizes = [row for row, line in kept if line.large]
    for size in (2.0, 2.2, SMALL):
        enlarge(sizes, size)
        for row, line in kept:
            enlarge([row], min([size, *(each.size for each in sizes if line.small)]))
        for row in codes:
            enlarge([row], size)
    for size in (4.0, 4.5, 5.0, 5.5, 6.0, 7.0):
        enlarge(names, size)
    for hold in holds:
        enlarge([hold], 7.0)
    for row, line in kept[:1]:
        enlarge([row], min(3.5, line.most, largest(line)))
    for size in (8.0, 9.0):
        enlarge(names, size)
    kept = [(row, line) for row, line in kept if not line.small]
    for size in (3.0, 3.5):
        enlarge(sizes, min([size, *(row.size for row in names[:1])]))
    for row, line in kept:
        enlarge([row], min(3.5, line.most, largest(line)))
    for hold in holds:
        enlarge([hold], 10.0)
    for size in (4.0, 4.5, 5.0):
        for row, line in kept:
            enlarge([row], min(size, line.most, largest(line)))
    for size in (10.0, 11.0, 12.0):
        enlarge(names, size)


def _height(rows: list[_Row]) -> float:
    return sum(row.size * len(row.lines) for row in rows) * EM_PER_CAP


def _rising(rows: list[_Row]) -> float:
    """Give what the accents of capitals want between the lines, mm."""
    return sum(row.size * rise for row in rows for rise in row.rises)


def _row(text: str, size: float, bold: bool, worth: int) -> _Row:
    lines = text.split("\n")
    tops = [text_box(Text(x=0.0, y=0.0, text=line, size=1.0, bold=bold))[3] for line in lines]
    rises = [top - (EM_PER_CAP - BASE_LINE) if top > ASCENT + SLACK else 0.0 for top in tops]
    return _Row(lines=lines, size=size, bold=bold, worth=worth, rises=rises)


def _wide(text: str, size: float, bold: bool) -> float:
    """Give the width of a row, mm: that of its widest line."""
    return max(text_width(line, size, bold) for line in text.split("\n"))


def _fit(line: Wording, size: float, width: float, *, large: bool) -> str:
    """Give the fullest wording that fits, else the shortest cut short, if so much of it remains
    that it can be read; a figure never is cut. `large`: what a part is rather
    stands on two lines than small; else on one line as long as it fits."""
    ways = line.ways
    if line.large:
        for way in ways:
            if "\n" not in way and _wide(way, SMALL, line.bold) <= width:
                return way
    if line.bold:
        if large and any("\n" in way for way in ways):
            for way in ways:
                if way.count("\n") < 2 and _wide(way, LARGE, line.bold) <= width:
                    return way
        elif not large:
            ways = tuple(sorted(ways, key=lambda way: "\n" in way))
    for way in ways:
        if _wide(way, size, line.bold) <= width:
            return way
    cut = shorten(line.ways[-1], size, line.bold, width)
    return "" if line.figure or len(cut) <= LETTERS else cut


def _widest(names: list[str], width: float) -> float:
    """Give the largest lettering in which the lines of an ID fit a width."""
    unit = max(text_width(name, 1.0, True) for name in names)
    return next((size for size in _SIZES if unit * size <= width), width / unit)


def break_name(part: str) -> list[str]:
    """Give an ID on two lines, broken after a hyphen."""
    if len(part) < 2:
        return [part]
    breaks = [at + 1 for at, letter in enumerate(part[:-1]) if letter == "-"] or [len(part) // 2]
    at = min(breaks, key=lambda at: abs(at - len(part) / 2))
    return [part[:at], part[at:]]
