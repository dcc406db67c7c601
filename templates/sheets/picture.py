"""The small picture of a sheet: the whole face, where its cards lie, and which way is up."""

from collections.abc import Sequence
from typing import Protocol

from jigs.ground.geometry import rectangle
from templates.faces.faceview import FaceView
from templates.page.bars import up_arrow
from templates.page.marks import MEDIUM, Area, Line, Outline, Text
from templates.page.pieces import MarkBlock
from templates.page.space import Box, Space, segment_meets
from templates.page.typeface import text_box, text_width

SIZE, STEP, MARGIN = 2.5, 0.5, 0.35
"""Of a card's number: its height, from one place tried to the next, and what it keeps clear; mm."""


class Numbered(Protocol):
    """A card as the picture shows it: its number, and its border on the face; mm."""

    @property
    def number(self) -> int: ...
    @property
    def box(self) -> Box: ...


def picture_room(view: FaceView, width: float) -> MarkBlock:
    """Give the room that a face's picture takes, undrawn: for words that are only measured."""
    return MarkBlock(height=_height(view.height * _scale(view, width)) + 0.3, marks=())


def _scale(view: FaceView, width: float) -> float:
    return min((width - 30.0) / view.width, 21.5 / view.height)


def _height(drawn: float) -> float:
    """How high the picture of a face drawn so high is: the arrow beside it has its own, mm."""
    return max(drawn + 6.0, 27.4)


def picture(view: FaceView, cards: Sequence[Numbered], width: float) -> MarkBlock:
    """Draw the whole face in small with its cards and holes, and a large UP arrow."""
    scale = _scale(view, width)
    w, h = view.width * scale, view.height * scale
    height = _height(h)
    left = 18.0 + (width - 30.0 - w) / 2
    bottom = -(height + h) / 2
    space = Space()
    space.add(*up_arrow(6.0, -height / 2 - 12.6, 25.0))
    face = (left, bottom, left + w, bottom + h)
    space.add(Outline(points=rectangle(*face), width=MEDIUM))
    if view.opening:
        points = tuple((left + x * scale, bottom + y * scale) for x, y in view.opening)
        space.add(Outline(points=points))
    if view.marks is not None and view.drawer_outline:
        points = tuple((left + x * scale, bottom + y * scale) for x, y in view.drawer_outline)
        space.add(Outline(points=points))
    edge = view.hinge_edge or view.front_edge
    if edge in ("left", "right"):
        x = left - 1.2 if edge == "left" else left + w + 0.2
        space.add(Area(points=rectangle(x, bottom, x + 1.0, bottom + h)))
        words = "HINGES" if view.hinge_edge else "FRONT"
        if h > text_width(words, 2.5) + 1.0:
            at = left - 2.3 if edge == "left" else left + w + 4.6
            space.add(Text(x=at, y=bottom + h / 2, text=words, anchor="middle", angle=90))
    for fitting in view.fittings:
        for hole in fitting.holes:
            x, y = left + hole.x * scale, bottom + hole.y * scale
            space.add(Area(points=rectangle(x - 0.35, y - 0.35, x + 0.35, y + 0.35)))
    frames: list[Box] = []
    for card in cards:
        x0, y0 = left + max(card.box[0], 0.0) * scale, bottom + max(card.box[1], 0.0) * scale
        x1 = left + min(card.box[2], view.width) * scale
        y1 = bottom + min(card.box[3], view.height) * scale
        frames.append((x0, y0, x1, y1))
        space.add(Outline(points=rectangle(x0, y0, x1, y1), dash="dashed"))
    for card, frame in zip(cards, frames, strict=True):
        _number(space, str(card.number), frame, face, (13.0, -height, width, 0.0))
    return MarkBlock(height=height + 0.3, marks=tuple(space.marks))


def _number(space: Space, number: str, frame: Box, face: Box, within: Box) -> None:
    """Write a card's number in its own frame, clear of the dots; where the frame is too small,
    outside the face, on a line that leads to it."""
    x0, y0, x1, y1 = frame
    _, low, wide, high = text_box(Text(x=0.0, y=0.0, text=number, bold=True))
    for row in range(int((y1 - y0) / STEP)):
        y = y0 + MARGIN + row * STEP
        if y + high > y1 - MARGIN:
            break
        for column in range(int((x1 - x0 - wide) / STEP) + 1):
            x = x0 + MARGIN + column * STEP
            if x + wide > x1 - MARGIN:
                break
            if space.is_free((x, y + low, x + wide, y + high), MARGIN):
                space.add(Text(x=x, y=y, text=number, bold=True))
                return
    cx, cy = (x0 + x1) / 2, (y0 + y1) / 2
    left, bottom, right, top = face
    ends: list[tuple[float, float]] = []
    for away in (2.4, 7.0, 11.0):
        for shift in (0.0, 3.6, -3.6, 7.2, -7.2):
            ends += [(left - away, cy + shift), (right + away, cy + shift)]
            ends += [(cx + shift, top + away), (cx + shift, bottom - away)]
    for x, y in sorted(ends, key=lambda end: abs(end[0] - cx) + abs(end[1] - cy)):
        text = Text(x=x, y=y - SIZE / 2, text=number, bold=True, anchor="middle")
        line = _leader(frame, (x, y), wide, beside=x < left or x > right)
        words = (text_box(mark) for mark in space.marks if isinstance(mark, Text))
        if any(segment_meets(line.x1, line.y1, line.x2, line.y2, box, 0.3) for box in words):
            continue
        if space.add_where_free((text,), within):
            space.add(line)
            return


def _leader(frame: Box, to: tuple[float, float], wide: float, *, beside: bool) -> Line:
    """Draw the line from a card's frame to its number, `wide` mm wide, beside the face or beyond
    an end of it."""
    (x0, y0, x1, y1), (x, y) = frame, to
    cx, cy = (x0 + x1) / 2, (y0 + y1) / 2
    if beside:
        on = 1.0 if x > cx else -1.0
        return Line(x1=x1 if x > cx else x0, y1=cy, x2=x - on * (wide / 2 + 0.6), y2=y)
    on = 1.0 if y > cy else -1.0
    return Line(x1=cx, y1=y1 if y > cy else y0, x2=x, y2=y - on * (SIZE / 2 + 0.9))
