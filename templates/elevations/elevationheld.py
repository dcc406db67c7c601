"""A front that is held back, as an elevation shows it: hatched, and where HOLD finds no room on it,
named on a leader line that ends in a dot on it (ISO 128).
"""

import math
from collections.abc import Iterator

from msgspec.structs import replace

from templates.page.dimensions import hatching
from templates.page.marks import THIN, Area, Line, Mark, Text
from templates.page.space import Box, Space
from templates.page.typeface import text_box

HOLD = "HOLD"
"""What is written on a front that is held back."""
HATCHED_EVERY = 2.0
"""From one hatch line to the next, mm."""
_DOT = 0.45
"""Half a leader's dot, mm."""
_CLEAR = 0.7
"""A named front's words keep this far from all else, mm."""
_FAR = 60.0
"""The furthest that they are sought, mm."""


def hatch(space: Space, place: Box) -> list[Mark]:
    """Hatch a front, given as a box on the page, but for its words."""
    before = len(space.marks)
    for line in hatching(*place, HATCHED_EVERY):
        ends = ((line.x1, line.y1), (line.x2, line.y2))
        space.add_between_texts(ends, place, "", THIN, least=0.5)
    return [replace(m, layer="held") for m in space.marks[before:] if isinstance(m, Line)]


def point_at(space: Space, words: str, place: Box, within: Box) -> bool:
    """Name a front where there is room near it, inside `within`, on a line that ends in a dot on
    the front; say whether there was room."""
    for to in _dots(space, place):
        for text in _near(words, to):
            box = text_box(text)
            start = min(max(to[0], box[0]), box[2]), min(max(to[1], box[1]), box[3])
            inside = (
                box[0] > within[0] and box[1] > within[1]
                and box[2] < within[2] and box[3] < within[3]
            )  # fmt: skip
            off = math.dist(start, to)
            if not inside or off < 2.0 or not space.is_free(box, _CLEAR):
                continue
            x = start[0] + (to[0] - start[0]) * 0.6 / off
            y = start[1] + (to[1] - start[1]) * 0.6 / off
            if space.line_is_free(x, y, *to, crossing=True):
                leader = Line(x1=x, y1=y, x2=to[0], y2=to[1], layer="held")
                space.add(text, leader, Area(points=_round(to), layer="held"))
                return True
    return False


def _dots(space: Space, place: Box) -> Iterator[tuple[float, float]]:
    """Give the places on a front where a dot stands free of words and pulls."""
    y = (place[1] + place[3]) / 2
    for along in (0.5, 0.3, 0.7, 0.15, 0.85):
        x = place[0] + along * (place[2] - place[0])
        if space.line_is_free(x - _DOT, y, x + _DOT, y, crossing=True):
            yield x, y


def _near(words: str, to: tuple[float, float]) -> Iterator[Text]:
    """Give the words further and further from a place, level and turned."""
    steps = [2.0 * step for step in range(2, int(_FAR / 2.0))]
    for off in steps:
        for degrees in range(0, 360, 30):
            x = to[0] + off * math.cos(math.radians(degrees))
            y = to[1] + off * math.sin(math.radians(degrees))
            level = Text(x=x, y=y, text=words, size=1.8, bold=True, anchor="middle", layer="held")
            yield level
            yield replace(level, angle=90)


def _round(middle: tuple[float, float]) -> tuple[tuple[float, float], ...]:
    return tuple(
        (middle[0] + _DOT * math.cos(k * math.pi / 4), middle[1] + _DOT * math.sin(k * math.pi / 4))
        for k in range(8)
    )
