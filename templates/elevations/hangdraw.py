"""A wall before its boxes are set: the boxes bare, each with the number of its turn, and the level
lines to strike, their heights large beside them.

A line runs over the whole wall and out to its figure; what a word stands on it leaves out. Heights
count up from the level line through the floor's high point, which is drawn too.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence

from msgspec import Struct
from msgspec.structs import replace

from jigs.ground.lengths import format_inches, format_mm
from jigs.room.elevation import Elevation
from jigs.room.seen import Seen
from jigs.room.wallmeasures import Strike, find_strikes
from templates.elevations.elevationbox import draw_boxes
from templates.elevations.elevationroom import GROUND, draw_ground, draw_room, end_width
from templates.elevations.scale import Scale, Style
from templates.page.marks import THIN, Line, Mark, Outline, Text
from templates.page.pieces import MarkBlock, moved
from templates.page.space import Space, spread
from templates.page.typeface import PITCH, shorten, text_box, text_width
from templates.words.hangwords import LEVEL, strike_words

BESIDE = 64.0
"""Room for the figures at the right of the wall, mm."""
STRUCK = 0.5
"""Width of a line to strike, mm (ISO 128)."""
_BEYOND, _LEAD = 4.0, 6.0
"""How far a line runs on beyond the wall at its left, and its leader at the right; mm."""
_FIGURE, _OTHER, _WORDS = 5.0, 3.5, 2.5
"""Lettering: a height, the same in inches, what it is for; mm (ISO 3098)."""
_APART = 2.0
"""Between two texts of a row, mm."""
_ROW = 7.4
"""What a figure takes above its words, mm."""
_UNDER = 9.0
"""How far labels may stand below the floor, mm."""
_TURN = (7.0, 5.0, 3.5, 2.5)
"""Lettering of a box's turn, the largest first; mm."""
CLEAR = 0.2
"""What a box's turn keeps from all else that is drawn, mm."""


class _Label(Struct, frozen=True, kw_only=True):
    """What stands beside a line, which is at `y` on the page: a row of texts, each with its
    lettering, and words below it."""

    y: float
    row: tuple[tuple[str, float], ...]
    words: Sequence[str]

    @property
    def height(self) -> float:
        """The room that it takes, mm."""
        return (_ROW if self.row else 0.0) + len(self.words) * PITCH + 1.2

    @property
    def middle(self) -> float:
        """Where its own middle is wanted: its figure, or its words, level with the line."""
        return self.y + self.down - self.height / 2

    @property
    def down(self) -> float:
        """From its upper edge down to the middle of its figure, or of its words; mm."""
        size = _FIGURE if self.row else _WORDS
        return 0.6 + size * 0.62


class DrawnWall(Struct, frozen=True):
    """A wall drawn, and how wide it is with its figures, mm."""

    block: MarkBlock
    width: float


def draw_wall(
    elevation: Elevation, turns: Mapping[str, int], reduction: int, width: float
) -> DrawnWall | None:
    """Draw a wall or a stretch of it at a scale, `width` mm wide at most; None where it is wider.
    `turns`: the boxes' numbers in the order of setting."""
    bare = _bare(elevation)
    left, low, right, high = bare.extent
    x0 = _BEYOND + end_width(bare.ends_at("left"))
    end = x0 + (right - left) / reduction + end_width(bare.ends_at("right"))
    if end + _LEAD + BESIDE > width:
        return None
    scale = Scale(reduction, x0 - left / reduction, 0.0)
    strikes = find_strikes(elevation)
    labels = [_level_label(bare, scale), *(_label(bare, each, scale) for each in strikes)]
    floor = scale.up(min(0.0, low)) - GROUND
    middles = spread([e.middle for e in labels], [e.height for e in labels], floor - _UNDER)
    top = max(scale.up(high), *(m + e.height / 2 for m, e in zip(middles, labels, strict=True)))
    space = Space()
    space.add(*draw_ground(bare, scale), *draw_room(bare, scale))
    whole = (0.0, floor, width, top)
    heights = [each.y for each in labels]
    for boxes in bare.clear_of_each_other():
        alone = len(boxes) == 1
        drawn = draw_boxes(boxes, Style(scale, "mm"))
        if alone:
            space.add(*drawn)
        for seen in boxes:
            _add_turn(space, seen, turns.get(seen.box.id), scale, heights)
        for mark in () if alone else drawn:
            if isinstance(mark, Outline):  # one box reaches into another's words
                space.add_between_texts(
                    (*mark.points, mark.points[0]), whole, mark.dash, mark.width
                )
            else:
                space.add(mark)
    for label in labels[1:]:
        points = [(0.0, label.y), (end, label.y)]
        space.add_between_texts(points, whole, "", STRUCK)
    for label, middle in zip(labels, middles, strict=True):
        space.add(*_beside(label, middle, end))
    bottom = min(floor, *(m - e.height / 2 for m, e in zip(middles, labels, strict=True)))
    marks = tuple(moved(tuple(space.marks), 0.0, -top))
    return DrawnWall(MarkBlock(height=top - bottom, marks=marks), end + _LEAD + BESIDE)


def _bare(elevation: Elevation) -> Elevation:
    """Give a wall without the fronts, which come last."""
    boxes = tuple(replace(seen, fronts=(), openings=(), shelves=()) for seen in elevation.boxes)
    return replace(elevation, boxes=boxes)


def _level_label(elevation: Elevation, scale: Scale) -> _Label:
    return _Label(y=scale.up(elevation.zero), row=(), words=(LEVEL,))


def _label(elevation: Elevation, strike: Strike, scale: Scale) -> _Label:
    figure, inches = format_mm(strike.up), f'{format_inches(strike.up)}"'
    said = [strike_words(*serves) for serves in strike.serves]
    taken = text_width(figure, _FIGURE, True) + text_width(inches, _OTHER) + 2 * _APART
    in_row = len(said) == 1 and taken + text_width(said[0], _WORDS) <= BESIDE
    return _Label(
        y=scale.up(strike.up + elevation.zero),
        row=((figure, _FIGURE), (inches, _OTHER), *(((said[0], _WORDS),) if in_row else ())),
        words=() if in_row else [shorten(words, _WORDS, False, BESIDE) for words in said],
    )


def _beside(label: _Label, middle: float, end: float) -> Iterator[Mark]:
    """Write what stands beside a line, and lead to it."""
    x = end + _LEAD
    top = middle + label.height / 2
    yield Line(x1=end, y1=label.y, x2=x - 1.0, y2=top - label.down, width=THIN)
    top -= 0.6
    at = x
    for text, size in label.row:
        bold = size == _FIGURE
        yield Text(x=at, y=top - _FIGURE * 1.1, text=text, size=size, bold=bold)
        at += text_width(text, size, bold) + _APART
    top -= _ROW if label.row else 0.0
    for row, words in enumerate(label.words):
        yield Text(x=x, y=top - _WORDS * 1.12 - row * PITCH, text=words, size=_WORDS)


def _add_turn(
    space: Space, seen: Seen, number: int | None, scale: Scale, lines: Sequence[float]
) -> None:
    """Write a box's turn about its middle, its ID below, as large as it holds, clear of all that
    is drawn there and, where that can be, of the `lines`; of an appliance's place, and where no
    order is said, the ID alone. Where boxes stand in one another and leave it no room it stands in
    the list of the order alone."""
    ways = [*_ways(seen, number, scale)]
    for at in (lines, ()):
        for way in ways:
            for texts in way(at):
                if all(space.is_free(text_box(text), CLEAR) for text in texts):
                    space.add(*texts)
                    return


_Way = Callable[[Sequence[float]], Iterator[tuple[Text, ...]]]
"""One way to write a turn: where it may stand clear of some lines, the best place first."""


def _ways(seen: Seen, number: int | None, scale: Scale) -> Iterator[_Way]:
    """Give the ways to write a box's turn that it has room for, the largest first."""
    wide, high = seen.box.width / scale.reduction - 1.4, seen.box.height / scale.reduction - 1.4
    x = scale.across(seen.x + seen.box.width / 2)
    low, high_end = scale.up(seen.bottom), scale.up(seen.top)
    name, digits = seen.box.id, "" if number is None else str(number)

    def over(size: float, small: float) -> _Way:
        down = 0.4 * size + 1.15 * small
        return lambda lines: (
            (
                Text(x=x, y=y, text=digits, size=size, bold=True, anchor="middle"),
                Text(x=x, y=y - down, text=name, size=small, anchor="middle"),
            )
            for y in _clear(low, high_end, down + 0.4 * small, 1.15 * size, lines)
        )

    def in_row(words: str, size: float) -> _Way:
        return lambda lines: (
            (Text(x=x, y=y, text=words, size=size, bold=True, anchor="middle"),)
            for y in _clear(low, high_end, 0.5 * size, 1.2 * size, lines)
        )

    def upright(words: str) -> _Way:
        half = text_width(words, _WORDS, True) / 2
        return lambda lines: (
            (
                Text(
                    x=x + _WORDS / 2, y=y, text=words, size=_WORDS, bold=True, anchor="middle",
                    angle=90,
                ),
            )
            for y in _clear(low, high_end, half, half, lines)
        )  # fmt: skip

    for size in _TURN if digits else ():
        small = min(size, _OTHER)
        fits = text_width(digits, size, True) <= wide and text_width(name, small) <= wide
        if fits and 1.55 * (size + small) <= high:
            yield over(size, small)
    words = f"{digits} {name}".strip()
    shown = name if seen.box.is_place else words
    for size in (_OTHER, _WORDS):
        if text_width(shown, size, True) <= wide and 1.5 * size <= high:
            yield in_row(shown, size)
    if wide >= 1.5 * _WORDS and text_width(shown, _WORDS, True) <= high:
        yield upright(shown)


def _clear(
    low: float, high: float, below: float, above: float, lines: Sequence[float]
) -> Iterator[float]:
    """Give the heights for words that reach so far `below` and `above` them at which no line
    strikes them, the nearest to the middle between `low` and `high` first."""
    middle = (low + high + below - above) / 2
    tries = sorted(
        (low + below + (high - low - below - above) * step / 16 for step in range(17)),
        key=lambda y: abs(y - middle),
    )
    for y in tries:
        if not any(y - below - 0.6 < line < y + above + 0.6 for line in lines):
            yield y
