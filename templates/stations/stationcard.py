"""A card of a station, drawn in its own frame: the origin lies where the lines or edges cross that
it is set by.

The card hides the pencil line that it is set on, so it is seen through two windows, one through
flap and band and one at the far end; between them a long thin line runs through the origin. A card
that is turned half round carries its title twice, each readable when it lies right.
"""

from collections.abc import Callable, Mapping, Sequence
from functools import partial
from itertools import groupby

from msgspec import Struct

from jigs.bench.station import Station, StationCard
from jigs.ground.geometry import Axis, FaceEdge, rectangle
from templates.cards.carddraw import draw_holes
from templates.cards.flap import BAND, FREE, Lines, cross_out, flap_texts, flap_words, fullest
from templates.page.marks import MEDIUM, THIN, Area, Line, Mark, Outline
from templates.page.packing import Size
from templates.page.space import Box, Space
from templates.page.typeface import text_width
from templates.stations.cardframe import (
    WINDOW,
    CardFrame,
    card_frames,
    edge_along,
    is_knob,
    outside,
    room_taken,
    windows_of,
)
from templates.stations.cardwriting import Title, titles_of, write_distances, write_titles
from templates.stations.stationview import Shop


class DrawnCard(Struct, frozen=True, kw_only=True):
    """A card in its own frame, mm: `box` is its border, flaps included; `copy` counts from 1."""

    card: StationCard
    copy: int
    box: Box
    marks: tuple[Mark, ...]

    @property
    def width(self) -> float:
        """Width over all, mm."""
        return self.box[2] - self.box[0]

    @property
    def height(self) -> float:
        """Height over all, mm."""
        return self.box[3] - self.box[1]


def draw_copies(
    shop: Shop, station: Station, card: StationCard, rooms: Sequence[Size]
) -> tuple[DrawnCard, ...]:
    """Draw all copies of a card, as small as its holes, windows and words allow; `rooms`: those
    that a page has for it."""
    frames = [
        frame
        for frame in card_frames(card)
        if any(
            frame.box[2] - frame.box[0] <= width and frame.box[3] - frame.box[1] <= height
            for width, height in rooms
        )
    ]
    faces = shop.under(station, card)
    flaps = {
        edge.edge: flap_words(faces.edges[edge.edge], edge.by == "butt") for edge in card.edges
    }
    knob = any(is_knob(card, polygon) for polygon in card.outline)
    drawn: list[DrawnCard] = []
    for copy in range(1, card.copies + 1):
        titles = titles_of(faces, station, card, copy)
        draw = partial(_draw, card, flaps, titles)
        round_knob = [partial(draw, whole=True)] if knob else []
        ways = (*round_knob, draw, partial(draw, apart=True))
        found = _smallest(ways[0], frames[:1]) if drawn else None
        for way in ways:
            found = found or _smallest(way, frames)
        if found is None:
            raise ValueError(f"{station.name}: card {card.letter}: its words find no room")
        frame, space = found
        frames = frames[frames.index(frame) :]
        drawn.append(DrawnCard(card=card, copy=copy, box=frame.box, marks=tuple(space.marks)))
    return tuple(drawn)


def _smallest(
    draw: Callable[[CardFrame], Space | None], frames: Sequence[CardFrame]
) -> tuple[CardFrame, Space] | None:
    """Give the first frame that holds all of a card, and the card in it. Frames that take as much
    of a page differ in their widths, or in how they lie: where the widest fails, so do the
    others."""
    for _, alike in groupby(frames, key=lambda frame: room_taken(frame)[0]):
        same = tuple(alike)
        widest = {(frame.face[1], frame.face[3]): frame for frame in same}
        drawn: dict[tuple[float, float], Space | None] = {}
        for frame in same:
            reach = (frame.face[1], frame.face[3])
            if reach not in drawn:
                drawn[reach] = draw(widest[reach])
            space = drawn[reach]
            if space is not None and frame is not widest[reach]:
                space = draw(frame)
            if space is not None:
                return frame, space
    return None


def _draw(
    card: StationCard,
    flaps: Mapping[FaceEdge, Sequence[Lines]],
    titles: Sequence[Title],
    frame: CardFrame,
    *,
    whole: bool = False,
    apart: bool = False,
) -> Space | None:
    """Draw a card in a frame; None where something finds no room. `whole`: no word stands on the
    outline of a knob; `apart`: figures may stand without a line to their hole."""
    space = Space()
    if not _draw_edges(space, card, flaps, frame):
        return None
    for axis in card.lines:
        _draw_line(space, card, axis, frame)
    draw_holes(space, card.holes)
    if card.stands is not None:
        _draw_corner(space, card, frame)
    x0, y0, x1, y1 = frame.face
    room = (x0 + 1.5, y0 + 1.5, x1 - 1.5, y1 - 1.5)
    knobs = [polygon for polygon in card.outline if whole and is_knob(card, polygon)]
    for polygon in knobs:
        if any(not (x0 <= x <= x1 and y0 <= y <= y1) for x, y in polygon):
            return None
        space.add_between_texts((*polygon, polygon[0]), frame.face, "dashed", THIN)
    drawn = write_titles(space, card, titles, room)
    drawn = drawn and write_distances(space, card, titles, room, apart=apart, crossing=bool(knobs))
    if not drawn:
        return None
    for polygon in (each for each in card.outline if each not in knobs):
        space.add_between_texts((*polygon, polygon[0]), frame.face, "dashed", THIN)
    space.add(Outline(points=rectangle(*frame.box)))
    return space


def _draw_line(space: Space, card: StationCard, axis: Axis, frame: CardFrame) -> None:
    """Draw a line that the card is set on, and its windows."""
    first, last = windows_of(card, axis, frame)
    for window in (first, last):
        cross_out(space, window)
    if axis == "y":
        space.add(Line(x1=first[2], y1=0.0, x2=last[0], y2=0.0))
        if last[2] < frame.face[2]:
            space.add(Line(x1=last[2], y1=0.0, x2=frame.face[2], y2=0.0))
        if first[0] > frame.face[0]:
            space.add(Line(x1=frame.face[0], y1=0.0, x2=first[0], y2=0.0))
        return
    space.add(Line(x1=0.0, y1=first[3], x2=0.0, y2=last[1]))
    if last[3] < frame.face[3]:
        space.add(Line(x1=0.0, y1=last[3], x2=0.0, y2=frame.face[3]))
    if first[1] > frame.face[1]:
        space.add(Line(x1=0.0, y1=frame.face[1], x2=0.0, y2=first[1]))


def _draw_edges(
    space: Space, card: StationCard, flaps: Mapping[FaceEdge, Sequence[Lines]], frame: CardFrame
) -> bool:
    """Draw bands, flaps with their words, and the corner to cut out; False where a flap is too
    short for its words."""
    x_edge, y_edge = edge_along(card, "x"), edge_along(card, "y")
    x0, y0, x1, y1 = frame.face
    bx0, by0, bx1, by1 = frame.box
    if x_edge is not None and y_edge is not None:
        cx = (bx0, x0) if x_edge.edge == "left" else (x1, bx1)
        cy = (by0, y0) if y_edge.edge == "bottom" else (y1, by1)
        cross_out(space, (cx[0], cy[0], cx[1], cy[1]))
    for edge, axis in ((x_edge, "x"), (y_edge, "y")):
        if edge is None:
            continue
        low, high = (y0, y1) if axis == "x" else (x0, x1)
        cross = "y" if axis == "x" else "x"
        half = WINDOW[1] / 2
        stretches = [(low, -half), (half, high)] if cross in card.lines else [(low, high)]
        side = -1.0 if edge.edge in ("left", "bottom") else 1.0
        for start, end in stretches:
            space.add(_band(axis, side, start, end))
        start, end = max(stretches, key=lambda stretch: stretch[1] - stretch[0])
        lines = fullest(flaps[edge.edge], end - start)
        if max(text_width(line, 2.5) for line in lines) > end - start - FREE:
            return False
        at = side * (BAND + outside(edge)) / 2
        axis_: Axis = "x" if axis == "x" else "y"
        space.add(*flap_texts(lines, axis_, at, (start + end) / 2))
    return True


def _band(axis: str, side: float, start: float, end: float) -> Area:
    """The black outside an edge, from where to where along it."""
    a, b = (side * BAND, start), (0.0, end)
    if axis == "y":
        a, b = (a[1], a[0]), (b[1], b[0])
    return Area(points=(a, (b[0], a[1]), b, (a[0], b[1])))


def _draw_corner(space: Space, card: StationCard, frame: CardFrame) -> None:
    """Draw where the lower corner of a drawer box stands on its front."""
    assert card.stands is not None
    x, y = card.stands.x, card.stands.y
    inward = 1.0 if card.stands.side == "left" else -1.0
    across = frame.face[2] - x if inward > 0 else x - frame.face[0]
    room = frame.face
    space.add_between_texts(((x, y), (x + inward * (across - 1.0), y)), room, "", MEDIUM)
    space.add_between_texts(((x, y), (x, frame.face[3] - 1.0)), room, "", MEDIUM)
