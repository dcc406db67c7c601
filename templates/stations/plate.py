"""A station's card as a plate to cut from hardboard, by a laser or on a plotter: never printed.

It lies on the face as the card does. A straight strip is screwed under it along each edge that the
card is folded over or butted to; the plate reaches over it. Small holes guide the punch, or the bit
(`jigs.bench.station`); around them the hole's true size is engraved. A card that places a drawer
box becomes an angle whose inner corner is the box's.

A mark's layer says what is done with it: `cut outline`, `cut window`, `cut guide`, `cut screw`;
`engrave line`, `engrave edge`, `engrave bore`, `engrave hardware`, `engrave text`.
"""

from collections.abc import Iterator, Sequence

from msgspec import Struct
from msgspec.structs import replace

from jigs.bench.station import CardEdge, Station, StationCard, guide_diameter
from jigs.ground.geometry import SLACK, Axis, Polygon, rectangle
from templates.cards.figures import free_spot
from templates.page.marks import Circle, Line, Mark, Outline, Text
from templates.page.space import Box, Space
from templates.page.typeface import PITCH, text_width, wrap
from templates.stations.cardframe import (
    IN_THE_WAY,
    WINDOW,
    CardFrame,
    card_frames,
    edge_along,
    windows_of,
)
from templates.stations.cardwriting import write_numbers
from templates.stations.halfround import half_round
from templates.stations.stationview import CardFaces, Shop
from templates.words.platewords import plate_edge_words, plate_words
from templates.words.stationwords import corner_words, station_title, turned_words

WIDEST = 64.0
"""Width of a plate's words, less where it has no room; mm."""
STRIP = 20.0
"""How far a plate reaches over its strip, mm."""
FOOT = 60.0
"""How far an angle reaches beyond its part's bottom edge: its words stand there; mm."""
SCREW = 3.5
"""Of a strip's screw holes, mm; their own distance from the ends of the strip's stretch:"""
SCREW_IN = 7.0
WIDER = 1.35
"""By so much wider than the printed face letters may come out: whoever cuts has others."""
LEAST_WINDOW = 4.0
"""A window less long shows no pencil line, mm."""
BETWEEN = 2.0
"""What stays between a window and a hole or an edge, mm."""


class Plate(Struct, frozen=True, kw_only=True):
    """A plate: its name as a file, and its marks in the card's own frame, mm."""

    name: str
    title: str
    box: Box
    marks: tuple[Mark, ...]


def draw_plate(shop: Shop, station: Station, card: StationCard) -> Plate:
    """Draw the plate of a card, as small as its holes, windows and words allow."""
    faces = shop.under(station, card)
    for frame in card_frames(card):
        box = _reach(card, frame)
        space = Space()
        if _draw(space, faces, station, card, frame, box):
            return Plate(
                name=f"{station.name}-card-{card.letter}",
                title=f"{station_title(station)}: {card.letter}, code {card.code}",
                box=box,
                marks=tuple(space.marks),
            )
    raise ValueError(f"{station.name}: card {card.letter}: its words find no room on a plate")


def _reach(card: StationCard, frame: CardFrame) -> Box:
    """Give how far a plate reaches: over its strips beyond the face that it covers."""
    over = dict.fromkeys((edge.edge for edge in card.edges), STRIP)
    if card.stands is not None:
        over["bottom"] = FOOT
    x0, y0, x1, y1 = frame.face
    return (
        x0 - over.get("left", 0.0),
        y0 - over.get("bottom", 0.0),
        x1 + over.get("right", 0.0),
        y1 + over.get("top", 0.0),
    )


def _draw(
    space: Space,
    faces: CardFaces,
    station: Station,
    card: StationCard,
    frame: CardFrame,
    box: Box,
) -> bool:
    """Draw a plate; False where its words find no room."""
    space.add(Outline(points=_outline(card, box), layer="cut outline"))
    # The inner edge of an angle lies on the pencil line itself.
    lines = () if card.stands is not None else card.lines
    windows = [(axis, each) for axis in lines for each in _windows(card, axis, frame)]
    for _, (x0, y0, x1, y1) in windows:
        space.add(Outline(points=rectangle(x0, y0, x1, y1), layer="cut window"))
        space.keep((x0, y0, x1, y1))
    for axis in lines:
        ends = [each for along, each in windows if along == axis]
        space.add(*_line(axis, frame.face, ends))
    for hole in card.holes:
        guide = guide_diameter(hole)
        space.add(Circle(x=hole.x, y=hole.y, diameter=guide, width=0.18, layer="cut guide"))
        if guide < hole.diameter - SLACK:
            bore = hole.diameter
            space.add(Circle(x=hole.x, y=hole.y, diameter=bore, width=0.18, layer="engrave bore"))
    for edge in card.edges:
        if not _write_edge(space, edge, faces.edges[edge.edge], frame.face):
            return False
    room = _room(card, frame, box)
    if not _write_titles(space, faces, station, card, room):
        return False
    if card.numbered and not write_numbers(space, card, room):
        return False
    for polygon in card.outline:
        for a, b in zip(polygon, (*polygon[1:], polygon[0]), strict=True):
            space.add_between_texts((a, b), frame.face, "dashed", 0.18)
    space.marks = [_engraved(mark) for mark in space.marks]
    return True


def _engraved(mark: Mark) -> Mark:
    """Give what has no layer yet one of its own: words, and the hardware's outline."""
    if isinstance(mark, Text):
        return replace(mark, layer="engrave text")
    if isinstance(mark, Line) and not mark.layer:
        return replace(mark, layer="engrave hardware")
    return mark


def _outline(card: StationCard, box: Box) -> Polygon:
    """Give the border of a plate: an angle round the corner of a drawer box, else a rectangle."""
    x0, y0, x1, y1 = box
    if card.stands is None:
        return rectangle(x0, y0, x1, y1)
    x, y = card.stands.x, card.stands.y
    if card.stands.side == "left":
        return ((x0, y0), (x1, y0), (x1, y), (x, y), (x, y1), (x0, y1))
    return ((x0, y0), (x1, y0), (x1, y1), (x, y1), (x, y), (x0, y))


def _room(card: StationCard, frame: CardFrame, box: Box) -> Box:
    """Give where words may stand: on an angle, along its foot."""
    x0, y0, x1, y1 = frame.face
    if card.stands is not None:
        x0, y0, x1, y1 = box[0], box[1], box[2], card.stands.y
    return x0 + BETWEEN, y0 + BETWEEN, x1 - BETWEEN, y1 - BETWEEN


def _windows(card: StationCard, axis: Axis, frame: CardFrame) -> Iterator[Box]:
    """Give the windows of a line: as on the card, but one at an edge lies on the face, where no
    strip is under it, as long as the holes allow."""
    along = 0 if axis == "y" else 1
    edge = edge_along(card, "x" if axis == "y" else "y")
    low, high = frame.face[along], frame.face[along + 2]
    for window in windows_of(card, axis, frame):
        start, end = window[along], window[along + 2]
        if edge is not None and (start < low or end > high):
            way = 1.0 if start < low else -1.0
            ends = [way * (BETWEEN + WINDOW[0])]
            for hole in card.holes:
                place, off = (hole.x, hole.y) if axis == "y" else (hole.y, hole.x)
                if abs(off) < IN_THE_WAY:
                    ends.append(place - way * (guide_diameter(hole) / 2 + BETWEEN))
            start, end = sorted((way * BETWEEN, min(ends, key=abs)))
            if end - start < LEAST_WINDOW:
                continue
        half = WINDOW[1] / 2
        yield (start, -half, end, half) if axis == "y" else (-half, start, half, end)


def _line(axis: Axis, face: Box, windows: Sequence[Box]) -> Iterator[Line]:
    """Draw the line that a plate is set on, from border to border but for its windows."""
    along = 0 if axis == "y" else 1
    at = face[along]
    for start, end in [*sorted((w[along], w[along + 2]) for w in windows), (face[along + 2], 0.0)]:
        if start > at + SLACK:
            a, b = ((at, 0.0), (start, 0.0)) if axis == "y" else ((0.0, at), (0.0, start))
            yield Line(x1=a[0], y1=a[1], x2=b[0], y2=b[1], layer="engrave line")
        at = end


def _write_edge(space: Space, edge: CardEdge, name: str, face: Box) -> bool:
    """Draw the edge, the screw holes of its strip, and say what is there; False without room."""
    upright = edge.edge in ("left", "right")
    low, high = (face[1], face[3]) if upright else (face[0], face[2])
    out = -1.0 if edge.edge in ("left", "bottom") else 1.0

    def at(along: float, across: float) -> tuple[float, float]:
        return (out * across, along) if upright else (along, out * across)

    (ax, ay), (bx, by) = at(low, 0.0), at(high, 0.0)
    space.add(Line(x1=ax, y1=ay, x2=bx, y2=by, layer="engrave edge"))
    for along in (low + SCREW_IN, high - SCREW_IN):
        x, y = at(along, STRIP / 2)
        space.add(Circle(x=x, y=y, diameter=SCREW, width=0.18, layer="cut screw"))
    room = high - low - 2 * (SCREW_IN + SCREW)
    words = next(
        (each for each in plate_edge_words(name) if text_width(each, 2.5) * WIDER <= room),
        None,
    )
    if words is None:
        return False
    x, y = at((low + high) / 2, STRIP / 2)
    if upright:
        text = Text(x=x + 1.25, y=y, text=words, anchor="middle", angle=90)
    else:
        text = Text(x=x, y=y - 1.25, text=words, anchor="middle")
    space.add(text)
    return True


def _write_titles(
    space: Space, faces: CardFaces, station: Station, card: StationCard, room: Box
) -> bool:
    """Engrave the title and how the plate is used; of one that is also set turned the title again,
    upside down; False without room."""
    for turned in faces.names:
        width = min(WIDEST, room[2] - room[0])
        corner = corner_words(card, turned=turned) if station.face in ("front", "back") else ""
        lines = [(f"{station_title(station)}: {card.letter}", 3.5)]
        lines += [(faces.names[turned], 2.5)]
        lines += [(", ".join(filter(None, (f"code {card.code}", corner))), 2.5)]
        own = turned_words(card) if turned else plate_words(station, card, faces.hand)
        lines += [(text, 2.5) for text in own]
        texts: list[Text] = []
        y = 0.0
        for row, (words, size) in enumerate(lines):
            for line in wrap(words, size, row < 2, width / WIDER):
                y -= PITCH * size / 2.5
                texts.append(Text(x=0.0, y=y + 1.0, text=line, size=size, bold=row < 2))
        near = (room[0], room[1] if turned else room[3])
        spot = free_spot(space, width, -y, near, room)
        if spot is None:
            return False
        left, top = spot
        marks: Sequence[Mark] = [replace(text, x=left, y=top + text.y) for text in texts]
        if turned:
            marks = half_round(marks, left + width / 2, top + y / 2)
        space.add(*marks)
    return True
