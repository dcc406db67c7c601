"""The border of a station's card: how far it reaches for its holes, flaps and windows."""

from collections.abc import Sequence
from math import hypot

from msgspec import Struct

from jigs.bench.station import CardEdge, StationCard
from jigs.ground.geometry import Axis, Polygon
from templates.cards.cardplan import ARM
from templates.cards.flap import FLAP, WASTE
from templates.page.space import Box

WINDOW = (10.0, 8.0)
"""A window's size along its line and across it, mm."""
INSIDE = 3.0
"""How far a window over an edge reaches on to the face, mm: the rest is band and flap."""
FROM_BORDER = 2.0
"""From a window to the card's border, mm."""
CLEAR = 8.0
"""Least distance from a hole's centre to the border, mm."""
IN_THE_WAY = WINDOW[1] / 2 + ARM + 1.0
"""A hole nearer to a line than this is in the way of a window, mm."""
LONG_ENOUGH = 100.0
"""On a line so long a window may stand within its outermost hole, mm."""
ROOM = WINDOW[0] + 2 * (ARM + FROM_BORDER)
"""What a window takes between two holes on its line, mm."""
BESIDE = 45.0
"""So far above and below its holes a card may reach for the hardware's outline, mm."""
KNOB = 30.0
"""From a knob's screw to its rim at most: so far a card always reaches; mm."""
WORDS = 59.0
"""Width of a card's own words: its bar of 50 with its figure, mm."""
HEAD = WORDS + 3.2
"""Least width of a card's face: its words and what is free beside them, mm."""
COLUMNS = (93.3, 188.0, 250.0)
"""A half and the whole of the usual page's width, and the whole of it lying; mm."""
GROW_X = (0.0, 6.0, 12.0, 18.0, 28.0, 36.0, 50.0, 64.0)
GROW_Y = (0.0, 8.0, 18.0, 30.0, 44.0, 60.0)
"""By how much a card is made larger than its holes ask for, until all words find room; mm."""


class CardFrame(Struct, frozen=True, kw_only=True):
    """The face that a card covers, and its border with what lies beyond its edges."""

    face: Box
    box: Box


def room_taken(frame: CardFrame) -> tuple[float, float]:
    """Tell how much of a page a card takes: two lie side by side where both are narrow."""
    width, height = frame.box[2] - frame.box[0], frame.box[3] - frame.box[1]
    columns = next((each for each in COLUMNS if width <= each), width)
    return columns * height, width


def edge_along(card: StationCard, axis: Axis) -> CardEdge | None:
    ends = ("left", "right") if axis == "x" else ("bottom", "top")
    return next((edge for edge in card.edges if edge.edge in ends), None)


def outside(edge: CardEdge) -> float:
    """How far the paper reaches beyond an edge, mm."""
    return FLAP if edge.by == "fold" else WASTE


def is_knob(card: StationCard, polygon: Polygon) -> bool:
    """Tell whether an outline lies round one hole, no farther from it than a knob reaches."""
    x, y = (sum(places) / len(places) for places in zip(*polygon, strict=True))
    near = [hole for hole in card.holes if hypot(hole.x - x, hole.y - y) < 0.1]
    return len(near) == len(card.holes) == 1 and max(hypot(a - x, b - y) for a, b in polygon) < KNOB


def card_frames(card: StationCard) -> list[CardFrame]:
    """Give all borders that a card may have, those first that take least of a page."""
    pads = [max(hole.diameter / 2 + 2.0, CLEAR) for hole in card.holes]
    points = [(hole.x, hole.y, pad) for hole, pad in zip(card.holes, pads, strict=True)]
    if card.stands is not None:
        points.append((card.stands.x, card.stands.y, 22.0))
    window = WINDOW[0] + 2 * FROM_BORDER
    xs = [(x, pad) for x, _, pad in points]
    ys = [(y, pad) for _, y, pad in points]
    if ys:  # of hardware that is far higher than paper, as much as lies beside the holes
        low_hole, high_hole = min(ys)[0] - BESIDE, max(ys)[0] + BESIDE
        ys += [
            (min(max(y, low_hole), high_hole), 1.5) for polygon in card.outline for _, y in polygon
        ]
    xs += [(x, 1.5) for polygon in card.outline if is_knob(card, polygon) for x, _ in polygon]
    x_edge, y_edge = edge_along(card, "x"), edge_along(card, "y")
    x_window = window if _beyond(card, "y") else 0.0
    y_window = window if _beyond(card, "x") else 0.0
    wide = [_extent(xs, x_edge, 0.0, dx, x_window, HEAD) for dx in GROW_X]
    lows = GROW_Y if "y" in card.lines else (0.0,)
    high = [_extent(ys, y_edge, low, more, y_window, 0.0) for low in lows for more in GROW_Y]
    out = {edge.edge: outside(edge) for edge in card.edges}
    left, bottom = out.get("left", 0.0), out.get("bottom", 0.0)
    right, top = out.get("right", 0.0), out.get("top", 0.0)
    frames = [
        CardFrame(face=(x0, y0, x1, y1), box=(x0 - left, y0 - bottom, x1 + right, y1 + top))
        for x0, x1 in wide
        for y0, y1 in high
    ]
    return sorted(frames, key=room_taken)


def _extent(
    places: Sequence[tuple[float, float]],
    edge: CardEdge | None,
    low: float,
    high: float,
    window: float,
    least: float,
) -> tuple[float, float]:
    """Give how far the face of a card reaches along one axis: `low` and `high` more than its
    places ask for, with a `window` at each end that is not an edge."""
    first = min([-5.0, *(place - pad for place, pad in places)]) - window
    last = max([5.0, *(place + pad for place, pad in places)]) + window
    if edge is not None and edge.edge in ("left", "bottom"):
        return 0.0, max(last, least) + high
    if edge is not None:
        return min(first, -least) - high, 0.0
    return first - low, max(last, first + least) + high


def _on_line(card: StationCard, axis: Axis) -> list[float]:
    """Give the places of the holes along a line, as far as they lie in the way of its windows."""
    if axis == "y":
        return sorted(hole.x for hole in card.holes if abs(hole.y) < IN_THE_WAY)
    return sorted(hole.y for hole in card.holes if abs(hole.x) < IN_THE_WAY)


def _between(card: StationCard, axis: Axis) -> bool:
    """Tell whether the windows of a line stand between its outermost holes and the next ones, so
    that the card is no longer than its pattern; they stay far apart all the same."""
    places = _on_line(card, axis)
    edge = edge_along(card, "x" if axis == "y" else "y")
    if edge is None:
        return len(places) == 2 and places[1] - places[0] > LONG_ENOUGH
    inward = sorted((abs(place) for place in places), reverse=True)
    return len(inward) > 1 and inward[0] > LONG_ENOUGH and inward[0] - inward[1] > ROOM


def _beyond(card: StationCard, axis: Axis) -> bool:
    """Tell whether a line is there whose windows stand beyond its holes."""
    return axis in card.lines and not _between(card, axis)


def windows_of(card: StationCard, axis: Axis, frame: CardFrame) -> tuple[Box, Box]:
    """Give the two windows on the line through the origin across (`y`) or up (`x`)."""
    edge = edge_along(card, "x" if axis == "y" else "y")
    low, high = (frame.face[0], frame.face[2]) if axis == "y" else (frame.face[1], frame.face[3])
    near, far = low + FROM_BORDER, high - FROM_BORDER - WINDOW[0]
    # No hole's cross is cut away with a window over the edge that it is near.
    inside = min([INSIDE, *(abs(place) - ARM for place in _on_line(card, axis))])
    if edge is not None and edge.edge in ("left", "bottom"):
        near = inside - WINDOW[0]
    elif edge is not None:
        far = -inside
    if _between(card, axis):
        places = _on_line(card, axis)
        if edge is None or edge.edge in ("right", "top"):
            near = places[0] + ARM + FROM_BORDER
        if edge is None or edge.edge in ("left", "bottom"):
            far = places[-1] - ARM - FROM_BORDER - WINDOW[0]
    half = WINDOW[1] / 2
    if axis == "y":
        return (near, -half, near + WINDOW[0], half), (far, -half, far + WINDOW[0], half)
    return (-half, near, half, near + WINDOW[0]), (-half, far, half, far + WINDOW[0])
