"""Placing a card on a part: along each axis by an edge or on a line, unturned or half round.

A placing is made for each group of holes that share a card; `jigs.bench.stations` puts those with
the same pattern on one card. Where an edge is near, the card reaches it and no line is struck; but
patterns that differ only by their distance from it share one card on lines, unless enough of them
have the same distance.
"""

from collections import Counter
from collections.abc import Iterable, Sequence
from typing import cast

from msgspec import Struct, field
from msgspec.structs import replace

from jigs.bench.benchpart import BenchPart, Marks
from jigs.bench.station import CardEdge, Closing, Corner, How, Offset, Start, Work
from jigs.bench.storystick import Spacer
from jigs.ground.geometry import OPPOSITE, SLACK, Axis, FaceEdge, Hand, Hole, Polygon, Purpose

FOLD_REACH = 160.0
"""How far the nearest hole may lie from an edge that its card is folded over; mm (our choice)."""
CARD_REACH = 229.0
"""How far the farthest hole may lie from what its card is set by: what a page of 198 x 267 holds,
the flap taken off; mm (derived)."""
ALIKE = 0.005
"""Patterns no further off each other than this share a card; mm."""
NEAR_TOP = 150.0
"""How far from the top end holes may lie that are set out from it; mm (common practice, no source:
paper grows, and what is higher up is counted from the bottom, as all else is)."""
ENOUGH = 3
"""So many settings at one distance are worth a card folded over the edge; fewer share one that is
set on lines (our choice: a card and its fold cost what three lines cost)."""


class Rest(Struct, frozen=True, kw_only=True):
    """What a card is set by along one axis: on an edge, `by` a fold, a butted end or the bottom
    panel; or, `by` None, on a line. `at`: the coordinate on the face as seen where it lies, mm;
    `inside`: how far inside the face's own end an edge lies."""

    start: Start
    at: float
    by: How | None = None
    inside: float = 0.0

    @property
    def edge(self) -> FaceEdge | None:
        """The edge of the face as seen, None for a line."""
        return None if self.by is None else cast(FaceEdge, self.start)


class Placing(Struct, frozen=True, kw_only=True):
    """A card's pattern as it is set on one part, in the face as seen, mm."""

    work: Work
    part: BenchPart
    purpose: Purpose
    serves: str | None
    x: Rest
    y: Rest
    holes: tuple[Hole, ...]
    """All that the card has, as they fall on this face."""
    used: tuple[int, ...] | None = None
    """Which of them are drilled, 0-based; None: all."""
    turned: bool = False
    hand: Hand | None = None
    kind: str = ""
    """What parts the stations of one work from each other besides bits and hand."""
    critical: bool = True
    """Whether a worn card is replaced."""
    outline: tuple[Polygon, ...] = ()
    carry: tuple[float, ...] = ()
    pilots: tuple[tuple[float, float | None], ...] = ()
    """Diameter and depth of what is marked through a drawer box, and bored after; mm."""
    stands: Corner | None = None
    """Where the drawer box's lower corner stands, in the face as seen."""
    record: str | None = None
    closing: tuple[Closing, ...] = ()
    marks: Marks | None = None
    spacer: Spacer | None = None

    @property
    def bored(self) -> bool:
        """Whether its holes came through a partition when its other face, towards the column
        before, was bored."""
        board = self.part.board
        if board is None or self.work != "sides":
            return False
        through = all(hole.depth is None for hole in self.holes)
        return through and board.partition > 0 and board.side == "left"

    @property
    def sign(self) -> int:
        """-1 where the card is turned half round."""
        return -1 if self.turned else 1

    def on_card(self, x: float, y: float) -> tuple[float, float]:
        """Give a place of the face as seen in the card's own frame, mm."""
        return self.sign * (x - self.x.at), self.sign * (y - self.y.at)

    @property
    def pattern(self) -> tuple[Hole, ...]:
        """The holes in the card's own frame, as they were given."""
        moved: list[Hole] = []
        for hole in self.holes:
            x, y = self.on_card(hole.x, hole.y)
            moved.append(replace(hole, x=x, y=y))
        return tuple(moved)

    @property
    def edges(self) -> tuple[CardEdge, ...]:
        """The edges that the card is set by, named as on the unturned card."""
        return tuple(
            CardEdge(
                edge=OPPOSITE[rest.edge] if self.turned else rest.edge,
                by=rest.by,
                inside=rest.inside,
            )
            for rest in (self.x, self.y)
            if rest.by is not None and rest.edge is not None
        )

    @property
    def lines(self) -> tuple[Axis, ...]:
        """The axes along which the card is set on a line."""
        axes: tuple[tuple[Axis, Rest], ...] = (("x", self.x), ("y", self.y))
        return tuple(axis for axis, rest in axes if rest.by is None)

    def place(self, axis: Axis) -> Offset | None:
        """Give the figure of the line along an axis, None where an edge is there."""
        rest = self.x if axis == "x" else self.y
        if rest.by is not None:
            return None
        low = Offset(start=rest.start).of(self.part.width, self.part.height)
        backwards = rest.start in ("right", "top")
        return Offset(start=rest.start, value=low - rest.at if backwards else rest.at - low)


def on_edge(part: BenchPart, edge: FaceEdge, *, by: How | None = None, inside: float = 0.0) -> Rest:
    """Rest a card on an edge of a part."""
    at = {"left": inside, "bottom": inside,
          "right": part.width - inside, "top": part.height - inside}[edge]  # fmt: skip
    return Rest(start=edge, at=at, by=by or part.by, inside=inside)


def on_line(start: Start, at: float) -> Rest:
    """Rest a card on a line at this coordinate, told from `start`."""
    return Rest(start=start, at=at)


def beyond(rest_at: float, start: FaceEdge, coordinate: float) -> float:
    """Give how far inward of a rest on the side of `start` a coordinate lies, mm."""
    return rest_at - coordinate if start in ("right", "top") else coordinate - rest_at


def rest_near(
    part: BenchPart, edge: FaceEdge, holes: Sequence[Hole], *, reach: float = CARD_REACH
) -> Rest:
    """Rest a card on an edge where that is near, else on a line through the hole nearest to it."""
    inward = sorted(_inward(part, edge, hole) for hole in holes)
    if inward[0] <= FOLD_REACH + SLACK and inward[-1] <= reach + SLACK:
        return on_edge(part, edge)
    nearest = min(holes, key=lambda hole: _inward(part, edge, hole))
    return on_line(edge, nearest.x if edge in ("left", "right") else nearest.y)


def _inward(part: BenchPart, edge: FaceEdge, hole: Hole) -> float:
    own_end = {"left": 0.0, "bottom": 0.0, "right": part.width, "top": part.height}[edge]
    return beyond(own_end, edge, hole.x if edge in ("left", "right") else hole.y)


def nearer_side(part: BenchPart, holes: Iterable[Hole]) -> FaceEdge:
    """The left or the right edge, whichever is nearer to some holes; the left one of two."""
    xs = [hole.x for hole in holes]
    return "left" if min(xs) <= part.width - max(xs) + SLACK else "right"


def nearer_end(part: BenchPart, holes: Iterable[Hole], *, tie: FaceEdge = "bottom") -> FaceEdge:
    """The bottom or the top edge, whichever is nearer to some holes; never a bevelled one."""
    if part.bevel is not None:
        return OPPOSITE[part.bevel]
    ys = [hole.y for hole in holes]
    below, above = min(ys), part.height - max(ys)
    if abs(below - above) <= SLACK:
        return tie
    return "bottom" if below < above else "top"


def counted_from(below: float, above: float, *, tie: FaceEdge = "bottom") -> FaceEdge:
    """From which end the heights of some holes count, `below` of them to the bottom end and `above`
    to the top end; mm. At a station and on a sheet the same: a part that is not as high as it was
    ordered has them at one place.

    >>> counted_from(390.9, 63.5), counted_from(818.4, 221.6), counted_from(63.5, 390.9)
    ('top', 'bottom', 'bottom')
    """
    if above > NEAR_TOP + SLACK:
        return "bottom"
    return tie if abs(below - above) <= SLACK else "top" if above < below else "bottom"


def set_out_from(part: BenchPart, end: FaceEdge) -> FaceEdge:
    """Give an end to count heights from: the one wanted, but never a bevelled edge."""
    return OPPOSITE[end] if end == part.bevel else end


def closing_of(part: BenchPart, start: FaceEdge, places: Iterable[float]) -> Closing:
    """Give the sum along a part of figures as seen, counted from `start`, each once; mm. In a box
    already together heights count from the bottom panel."""
    board = part.board
    above = board.panel if board and board.assembled and start == "bottom" else 0.0
    length = part.width if start in ("left", "right") else part.height
    counted = sorted(beyond(length if start in ("right", "top") else 0.0, start, at)
                     for at in places)  # fmt: skip
    kept: list[float] = []
    for place in counted:
        if not kept or place - above - kept[-1] > 0.05:
            kept.append(place - above)
    return Closing(start=start, places=tuple(kept), length=length - above, above=above)


def closing_both_ways(
    part: BenchPart, holes: Sequence[Hole], *, up: FaceEdge = "bottom", across: FaceEdge = "left"
) -> tuple[Closing, ...]:
    """Give the sums of holes up and across a part, each counted from an edge."""
    return (
        closing_of(part, up, (hole.y for hole in holes)),
        closing_of(part, across, (hole.x for hole in holes)),
    )


class Alike(Struct):
    """Numbers things so that those with the same shape, and figures alike to 0.005, share one."""

    _found: dict[object, list[tuple[tuple[float, ...], int]]] = field(default_factory=dict)
    _count: int = 0

    def number(self, shape: object, figures: tuple[float, ...]) -> int:
        """Give the number of a thing, the next free one where it is like none before."""
        known = self._found.setdefault(shape, [])
        for others, number in known:
            if all(abs(a - b) <= ALIKE + 1e-9 for a, b in zip(figures, others, strict=True)):
                return number
        self._count += 1
        known.append((figures, self._count - 1))
        return self._count - 1


def shape_of(placing: Placing) -> tuple[object, tuple[float, ...]]:
    """Give what two placings have alike if they share a card: its shape, and its figures, mm."""
    holes = sorted(placing.pattern, key=by_place)
    shape = (
        tuple((edge.edge, edge.by) for edge in placing.edges),
        placing.lines,
        tuple((hole.purpose, hole.diameter, hole.depth) for hole in holes),
        placing.used is not None,
        len(placing.carry),
        placing.stands and placing.stands.side,
    )
    figures = (
        *(edge.inside for edge in placing.edges),
        *(figure for hole in holes for figure in (hole.x, hole.y)),
        *(placing.sign * (x - placing.x.at) for x in placing.carry),
        *(placing.on_card(placing.stands.x, placing.stands.y) if placing.stands else ()),
    )
    return shape, figures


def by_place(hole: Hole) -> tuple[float, float]:
    """Order holes from below, then from the left; those of one height to 0.01 mm are level."""
    return round(hole.y, 2), round(hole.x, 2)


Option = tuple[Placing | None, Placing]
"""A placing on an edge, where one is near, and the same on a line."""


def settle(options: Iterable[Option], *, enough: int = ENOUGH) -> list[Placing]:
    """Choose for each placing between an edge (the first of a pair, where one is near) and a line.

    Where all of a pattern have the same distance from the edge, or enough of them, or where one
    distance alone would be left on lines, the edge is taken.
    """
    pairs = list(options)
    patterns, distances = Alike(), Alike()
    found: list[tuple[int, int | None]] = []
    for near, line in pairs:
        shape, figures = shape_of(line)
        pattern = patterns.number((line.work, shape), figures)
        distance = None
        if near is not None:
            shape, figures = shape_of(near)
            distance = distances.number((pattern, shape), figures)
        found.append((pattern, distance))
    times: dict[int, Counter[int | None]] = {}
    for pattern, distance in found:
        times.setdefault(pattern, Counter())[distance] += 1
    folded: set[int] = set()
    for counts in times.values():
        few = {distance for distance, count in counts.items() if count < enough}
        left = few if len(few) > 1 else set()
        folded |= {distance for distance in counts if distance is not None and distance not in left}
    return [
        near if near is not None and distance in folded else line
        for (near, line), (_, distance) in zip(pairs, found, strict=True)
    ]
