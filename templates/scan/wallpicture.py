"""The picture of a wall with one part on it, as seen from the room: where does it go?

All boxes of the wall stand at their places, with fronts, appliances, panels and fillers; the part
is filled and hatched, its box outlined. Of a long wall the stretch round the part is shown. What
is the same for all parts of a wall is drawn once.
"""

from collections.abc import Iterable, Sequence

from msgspec import Struct

from jigs.ground.geometry import rectangle
from jigs.room.elevation import Elevation, part_wall
from jigs.room.seen import Seen, SeenAppliance
from templates.labels.keyplan import Black, Filled
from templates.page.marks import Area, Line, Mark, Outline, Text
from templates.page.typeface import text_width
from templates.scan.markup import Html, tag
from templates.writers.inlinesvg import draw_inline

WINDOW = 4000.0
"""So much of a wall is shown round a part, mm: on a telephone a box 450 wide takes 7 mm."""
LETTERS = 1 / 42
"""Height of a capital, of the width that is shown: 9 px of 380."""
THIN = 1 / 90
"""Least width and height of a part, of the width that is shown."""
POINTED = 1 / 12
"""A part narrower or lower than this has an arrow that points to it."""
HATCH = 1 / 55
"""From one line of the hatch to the next."""


class DrawnStretch(Struct, frozen=True, kw_only=True):
    """A part of a wall that is the same in every picture: from where to where, and its elements."""

    left: float
    right: float
    drawn: Html


class WallPicture:
    """One wall, ready to be shown with any of its parts on it."""

    def __init__(self, elevation: Elevation, name: str) -> None:
        self.elevation = elevation
        self.name = name
        """What it is called within a file."""
        left, bottom, right, self._top = elevation.extent
        letters = min(WINDOW, right - left) * LETTERS
        self._letters = letters
        self._ends = (left, right)
        self._low = bottom - 2.2 * letters
        self._high = max(
            *(seen.extent[3] + (1.8 * letters if seen.hangs else 0.0) for seen in elevation.boxes),
            *(stands.y + stands.height for stands in elevation.appliances),
            0.0,
        )
        """The upper end of what is drawn of the wall itself, mm; `_top` is what y is flipped at."""
        self._boxes = {seen.box.id: seen for seen in elevation.boxes}
        self._stretches = [self._draw(_box_marks(seen, letters), *_ends(seen))
                           for seen in elevation.boxes]  # fmt: skip
        for stands in elevation.appliances:
            marks = _appliance_marks(stands, letters)
            self._stretches.append(self._draw(marks, stands.x, stands.x + stands.width))

    def _draw(self, marks: Iterable[Mark], left: float, right: float) -> DrawnStretch:
        drawn = Html(draw_inline(marks, self._top))
        return DrawnStretch(left=left, right=right, drawn=drawn)

    def whole(self) -> Html:
        """Draw all that is on the wall, for pictures that refer to it."""
        return tag("g", *(each.drawn for each in self._stretches), id=self.name)

    def picture(self, black: Black, alt: str, *, shared: bool) -> Html:
        """Draw the wall with a part on it; `alt` says the same in words. `shared`: what is on the
        wall stands elsewhere in the file."""
        own = [self._boxes[box] for box in black.own if box in self._boxes]
        window = self._window(own)
        return self._drawn(
            window, self._part(black, own, window[1] - window[0]), alt, shared=shared
        )

    def pictures(self, alt: str, *, shared: bool) -> list[Html]:
        """Draw the wall by itself, one that is long in stretches of whole boxes."""
        stretches = part_wall(self.elevation, WINDOW)
        windows = [(each.extent[0], each.extent[2]) for each in stretches]
        return [self._drawn(window, [], alt, shared=shared) for window in windows]

    def _drawn(
        self, window: tuple[float, float], part: Sequence[Mark], alt: str, *, shared: bool
    ) -> Html:
        """Draw what stands in a window, and a part on it."""
        left, right = window
        if shared:
            wall = tag("use", href=f"#{self.name}")
        else:
            wall = Html("".join(each.drawn for each in self._stretches
                                if each.right > left and each.left < right))  # fmt: skip
        floor: list[Mark] = []
        if self.elevation.placed:
            floor = [Line(x1=left, y1=0.0, x2=right, y2=0.0, layer="floor")]
        marks = [*floor, *part]
        drawn = [y for mark in marks if isinstance(mark, Area) for _, y in mark.points]
        highest = max(self._high, *drawn, 0.0) + self._letters / 4
        lowest = min([self._low, *(y - self._letters / 4 for y in drawn)])
        view = (left, self._top - highest, right - left, highest - lowest)
        return tag(
            "svg", wall, Html(draw_inline(marks, self._top)),
            viewBox=" ".join(f"{v:.0f}" for v in view),
            class_="wall", role="img", aria_label=alt,
        )  # fmt: skip

    def _window(self, own: Sequence[Seen]) -> tuple[float, float]:
        """Give from where to where the wall is shown."""
        left, right = self._ends
        if not own:
            return left, right
        first, last = min(seen.extent[0] for seen in own), max(seen.extent[2] for seen in own)
        if not self.elevation.placed:
            room = max(last - first, WINDOW / 3)
            middle = (first + last) / 2
            return middle - room / 2, middle + room / 2
        if right - left <= WINDOW:
            return left, right
        start = max(min((first + last - WINDOW) / 2, right - WINDOW, first), left)
        return start, max(start + WINDOW, last)

    def _part(self, black: Black, own: Sequence[Seen], wide: float) -> list[Mark]:
        marks: list[Mark] = [
            _room((seen.x, seen.bottom, seen.right, seen.top), "own") for seen in own
        ]
        x, y = (own[0].x, own[0].bottom) if black.box is not None and own else (0.0, 0.0)
        for left, bottom, right, top in black.rooms:
            room = _grown((left + x, bottom + y, right + x, top + y), wide * THIN)
            marks.append(Area(points=_corners(room), layer="part"))
            marks += _hatch(room, wide * HATCH)
            marks.append(_room(room, "rim"))
            if min(room[2] - room[0], room[3] - room[1]) < wide * POINTED:
                marks.append(_pointer(room, self._letters, up=any(seen.hangs for seen in own)))
        return marks


def _ends(seen: Seen) -> tuple[float, float]:
    return seen.extent[0], seen.extent[2]


def _box_marks(seen: Seen, letters: float) -> list[Mark]:
    """Draw a box with its fronts, openings, panels and fillers, and its ID under or over it."""
    marks: list[Mark] = [
        _placed(each.x, each.y, each.front.width, each.front.height, "leaf") for each in seen.fronts
    ]
    marks += [_placed(each.x, each.y, each.width, each.height, "leaf") for each in seen.strips]
    marks += [_placed(each.x, each.y, each.width, each.height, "gap") for each in seen.openings]
    marks.append(_room((seen.x, seen.bottom, seen.right, seen.top), "box"))
    y = seen.top + 0.6 * letters if seen.hangs else -1.8 * letters
    marks.append(_word(seen.box.id, (seen.x + seen.right) / 2, y, letters))
    return marks


def _appliance_marks(stands: SeenAppliance, letters: float) -> list[Mark]:
    """Draw an appliance, with its name where that fits."""
    marks: list[Mark] = [_placed(stands.x, stands.y, stands.width, stands.height, "gap")]
    if text_width(stands.words, letters) < stands.width:
        x, y = stands.x + stands.width / 2, stands.y + stands.height / 2
        marks.append(_word(stands.words, x, y, letters))
    return marks


def _placed(x: float, y: float, width: float, height: float, layer: str) -> Outline:
    return _room((x, y, x + width, y + height), layer)


def _word(text: str, x: float, y: float, letters: float) -> Text:
    return Text(x=x, y=y, text=text, size=letters, anchor="middle")


def _corners(room: Filled) -> tuple[tuple[float, float], ...]:
    return rectangle(*room)


def _room(room: Filled, layer: str) -> Outline:
    return Outline(points=_corners(room), layer=layer)


def _grown(room: Filled, least: float) -> Filled:
    """Give a room at least as wide and high as is seen."""
    left, bottom, right, top = room
    wide, high = max(0.0, least - (right - left)) / 2, max(0.0, least - (top - bottom)) / 2
    return left - wide, bottom - high, right + wide, top + high


def _hatch(room: Filled, step: float) -> list[Mark]:
    """Draw lines at 45 degrees across a room (hatching, ISO 128)."""
    left, bottom, right, top = room
    wide, high = right - left, top - bottom
    found: list[Mark] = []
    at = step
    while at < wide + high:
        # The line from the left or top edge down to the bottom or right one, x + y = at.
        x1, y1 = (0.0, at) if at <= high else (at - high, high)
        x2, y2 = (at, 0.0) if at <= wide else (wide, at - wide)
        found.append(
            Line(x1=left + x1, y1=bottom + y1, x2=left + x2, y2=bottom + y2, layer="hatch")
        )
        at += step
    return found


def _pointer(room: Filled, letters: float, *, up: bool) -> Area:
    """Draw an arrow that points down to a small part from above; `up`: of a box that hangs, whose
    name stands over it, from below."""
    x, y, way = (room[0] + room[2]) / 2, room[1] if up else room[3], -1 if up else 1
    tip, half, end = y + way * 0.3 * letters, 0.9 * letters, y + way * 2.5 * letters
    return Area(points=((x, tip), (x - half, end), (x + half, end)), layer="solid")
