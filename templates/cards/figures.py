"""Figures on a drawing of many fittings: each hole's distances, and each fitting's name, written
where there is room.

A card of one fitting has its places by construction; where many fittings share one drawing, each
hole's figures stand together beside it, on a line that leads to it.
"""

from collections.abc import Sequence
from functools import lru_cache
from itertools import pairwise

from msgspec import Struct

from jigs.given.kinds import kind_of
from jigs.ground.geometry import Fitting, Hole
from templates.cards.cardplan import ARM
from templates.cards.lettering import Label, hole_note, label_on
from templates.faces.faceview import FaceView
from templates.faces.reference import Reference
from templates.page.marks import Line, Mark, Text
from templates.page.space import Box, Space
from templates.page.typeface import PITCH, text_width, wrap
from templates.words.fittingwords import card_lines, fitting_heading

OUT = (2.6, 6.0, 10.0, 15.0, 21.0, 28.0, 36.0, 46.0, 58.0, 72.0)
"""How far beside a hole its figures may begin, the nearest first; mm."""
STEP = 3.0
"""From one height tried for a text to the next, mm."""
TITLE_WIDTHS = (60.0, 50.0, 42.0)
FAR = 130.0
"""How far a fitting's name may stand from it, mm."""


class HoleFigures(Struct, frozen=True, kw_only=True):
    """What is written beside one hole: its distance up and across, diameter and depth."""

    up: Label
    across: Label
    note: str

    @property
    def width(self) -> float:
        """Width over all, mm."""
        return max(self.up.width, self.across.width, text_width(self.note, 2.5))

    @property
    def height(self) -> float:
        """Height over all, mm."""
        return self.up.height + self.across.height + PITCH + 0.4

    def marks(self, left: float, top: float) -> tuple[Mark, ...]:
        """Give the texts with the upper left corner at (left, top)."""
        middle = top - self.up.height
        base = middle - self.across.height - 2.9
        return (
            *self.up.marks(left, top),
            *self.across.marks(left, middle),
            Text(x=left, y=base, text=self.note),
        )


def figures_of(
    view: FaceView, fitting: Fitting, hole: Hole, across: Reference, up: Reference
) -> HoleFigures:
    """Give what is written beside a hole of a fitting that is set out from two references."""
    return HoleFigures(
        up=label_on(view, up, up.distance(hole.y), fitting.stated_from),
        across=label_on(view, across, across.distance(hole.x)),
        note=hole_note(hole),
    )


def write_figures(
    space: Space,
    hole: Hole,
    figures: HoleFigures,
    inward: int,
    room: Box,
    *,
    crossing: bool = False,
) -> bool:
    """Write a hole's figures beside it, inward of the edge first; say whether there was room.
    `crossing`: their line may cross others, as the outline round the hole."""
    width, height = figures.width, figures.height
    out = max(hole.diameter / 2, ARM) + 0.8
    for side, beyond, shift in _spots(inward, height):
        start = hole.x + side * out
        near = start + side * beyond
        middle = hole.y + shift
        left = near if side > 0 else near - width
        box = (left, middle - height / 2, left + width, middle + height / 2)
        end = near - side * 0.8
        inside = box[0] >= room[0] and box[2] <= room[2] and box[1] >= room[1] and box[3] <= room[3]
        if (
            inside
            and space.is_free(box, 0.8)
            and space.line_is_free(start, hole.y, end, middle, crossing=crossing)
        ):
            space.add(Line(x1=start, y1=hole.y, x2=end, y2=middle))
            space.add(*figures.marks(left, box[3]))
            return True
    return False


@lru_cache(maxsize=256)
def _spots(inward: int, height: float) -> tuple[tuple[int, float, float], ...]:
    """Give the places of figures: which side, how far beyond the hole, how much higher; mm."""
    shifts = [0.0]
    for step in range(1, int(2.5 * height / STEP)):
        shifts += [step * STEP, -step * STEP]
    spots = [
        (out + 0.8 * abs(shift) + (4.0 if side != inward else 0.0), side, out, shift)
        for side in (inward, -inward)
        for out in OUT
        for shift in shifts
        if abs(shift) <= 3.0 * (out + 4.0)
    ]
    return tuple(spot[1:] for spot in sorted(spots, key=lambda spot: spot[0]))


def write_corner(
    space: Space, view: FaceView, fitting: Fitting, across: Reference, up: Reference, room: Box
) -> bool:
    """Write how far in and up the corner of a drawer box stands, near it; say whether there was
    room."""
    assert fitting.stands is not None
    x, y = fitting.stands
    figures = [label_on(view, up, up.distance(y)), label_on(view, across, across.distance(x))]
    width, height = max(each.width for each in figures), sum(each.height for each in figures)
    inward = 1 if fitting.index == 1 else -1
    spot = free_spot(space, width, height, (x + inward * (width / 2 + 6.0), y + 16.0), room)
    if spot is None:
        return False
    left, top = spot
    for label in figures:
        space.add(*label.marks(left, top))
        top -= label.height
    return True


def write_name(space: Space, view: FaceView, fitting: Fitting, room: Box) -> bool:
    """Write what a fitting is and how it is checked near it; say whether there was room."""
    xs, ys = [x for x, _ in fitting.places], [y for _, y in fitting.places]
    centre = ((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2)
    for width in TITLE_WIDTHS:
        lines = [(line, True) for line in wrap(fitting_heading(view, fitting), 2.5, True, width)]
        for words in card_lines(view, fitting):
            lines += [(line, False) for line in wrap(words, 2.5, False, width)]
        if write_block(space, lines, centre, room):
            return True
    return False


def write_block(
    space: Space, lines: Sequence[tuple[str, bool]], near: tuple[float, float], room: Box
) -> bool:
    """Write lines, some bold, as near to a place as there is room; say whether there was any."""
    width = max(text_width(text, 2.5, bold) for text, bold in lines)
    height = len(lines) * PITCH
    spot = free_spot(space, width, height, near, room)
    if spot is None:
        return False
    left, top = spot
    for row, (text, bold) in enumerate(lines):
        space.add(Text(x=left, y=top - 2.9 - row * PITCH, text=text, bold=bold))
    return True


def free_spot(
    space: Space, width: float, height: float, near: tuple[float, float], room: Box
) -> tuple[float, float] | None:
    """Give the upper left corner of a free place of a size, the nearest to a point; mm."""
    lefts = _steps(
        max(room[0], near[0] - width / 2 - FAR), width, min(room[2], near[0] + width / 2 + FAR)
    )
    tops = _steps(max(room[1], near[1] - FAR) + height, 0.0, min(room[3], near[1] + FAR + height))
    spots = [
        (
            (dx := left + width / 2 - near[0]) * dx + (dy := top - height / 2 - near[1]) * dy,
            left,
            top,
        )
        for left, top in space.open_places(lefts, tops, (width, height), 1.2)
    ]
    for _, left, top in sorted(spots):
        if space.is_free((left, top - height, left + width, top), 1.2):
            return left, top
    return None


def _steps(first: float, length: float, last: float) -> list[float]:
    """Give where something so long may begin between two places, step by step; mm."""
    found: list[float] = []
    while first + length <= last:
        found.append(first)
        first += STEP
    return found


def draw_slide_lines(
    space: Space, view: FaceView, fittings: Sequence[Fitting], inside: Box
) -> None:
    """Draw the line of each slide from hole to hole and on towards the back of the side."""
    for fitting in fittings:
        if not kind_of(fitting).lined:
            continue
        y = fitting.holes[0].y
        xs = sorted(hole.x for hole in fitting.holes)
        ends = [inside[0] - 1.0, *xs] if view.front_edge == "right" else [*xs, inside[2] + 1.0]
        for a, b in pairwise(ends):
            start, end = a + ARM + 0.8, b - ARM - 0.8
            if a < inside[0]:
                start = inside[0]
            if b > inside[2]:
                end = inside[2]
            if end > start:
                space.add_between_texts(((start, y), (end, y)), inside, "axis", 0.18)
