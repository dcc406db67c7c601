"""The pieces of a strip: one for each page, as few as the paper lets there be; each drawn with its
edge, its holes, its running scale, and what joins it.

The next piece is cut at its foot and glued on the tab of the one before: its foot on the join
line, and the middle marks of two verniers in line (`page/scales.py`): one along the strip, in
a notch at its free edge, one across it, beside the edge. Its foot stands at a round figure, so
that it can be set by itself on a line struck there.
"""

from collections.abc import Sequence
from itertools import pairwise
from typing import Literal

from msgspec import Struct
from msgspec.structs import replace

from jigs.ground.geometry import SLACK, Fitting, Hole
from jigs.ground.lengths import Unit, format_mm
from templates.cards.card import Card
from templates.cards.cardborder import edge_flap, ladder, panel_line
from templates.cards.cardplan import LADDER, SMALL
from templates.cards.flap import BAND, cross_out, draw_edge
from templates.faces.faceview import FaceView
from templates.faces.reference import Reference
from templates.page.marks import MEDIUM, Line, Outline, Text
from templates.page.packing import Size
from templates.page.scales import COARSE, FINE, OVERLAP, VERNIER_AT, numbers, ticks, vernier
from templates.page.space import Box, Space
from templates.page.typeface import wrap
from templates.strips.longcard import fill_card
from templates.strips.longwords import strip_words
from templates.strips.strip import SCALE, SPARE, Strip, find_strip, joins_of
from templates.words.cardwords import SECOND_CHECK
from templates.words.facewords import edge_words, index_words

NOTCH = 6.0
"""Width of the notch in which the tab's marks are seen, mm."""
ACROSS_AT = 8.0
"""How far from the edge the middle mark of the vernier across stands, mm."""
FAINT = 0.13
"""Ticks of the running scale, mm."""
BEYOND_END = LADDER
"""Paper beyond the end of the part, mm."""


class StripPlan(Struct, frozen=True, kw_only=True):
    """The pieces of a strip, and what is said of them; `rest` is the face with what is not on
    it, None where nothing is;
    `parted`: how many fittings stand on two pieces."""

    cards: tuple[Card, ...]
    words: tuple[str, ...]
    rest: FaceView | None
    parted: int


def plan_strip(
    view: FaceView, limits: Sequence[Size], number: int, innermost: float
) -> StripPlan | None:
    """Plan the strip of a face for what reaches no further in than so far, mm, its first piece
    card `number`; `limits` are the largest cards that a page holds.

    None where the face has none, or where it finds no room on the paper.
    """
    found = find_strip(view, max(width for width, _ in limits), innermost)
    if found is None:
        return None
    strip, rest = found
    wide = strip.width + strip.flap - SLACK
    tallest = max((height for width, height in limits if width >= wide), default=0.0)
    for spare in SPARE:
        parting = joins_of(strip, tallest, tallest, above(strip), spare)
        cards = parting and strip_pieces(strip, parting.joins, number)
        if parting and cards:
            words = tuple(strip_words(strip, joined=len(cards) > 1))
            return StripPlan(cards=cards, words=words, rest=rest, parted=parting.parted)
    return None


class _Piece(Struct, frozen=True, kw_only=True):
    """A piece from `low` to `high`, mm from the strip's origin; `number` of `count`."""

    strip: Strip
    number: int
    count: int
    low: float
    high: float

    @property
    def first(self) -> bool:
        return self.number == 1

    @property
    def last(self) -> bool:
        return self.number == self.count

    @property
    def foot(self) -> Reference:
        """What the piece is set on: the end of the part, or a line at its foot."""
        up = self.strip.up
        if self.first:
            return up
        return replace(up, kind="index", value=self.low, at=self.y(self.low))

    @property
    def above(self) -> float:
        """Paper beyond the piece's end: the tab, or what lies beyond the part's."""
        return above(self.strip) if self.last else OVERLAP

    def x(self, u: float) -> float:
        """Coordinate on the face of a distance from the edge."""
        return self.strip.across.at + self.strip.across.inward * u

    def y(self, v: float) -> float:
        """Coordinate on the face of a distance from the strip's origin."""
        return self.strip.up.at + self.strip.up.inward * v

    def box(self, u1: float, v1: float, u2: float, v2: float) -> Box:
        """Give a rectangle in the coordinates of the face."""
        xs, ys = sorted((self.x(u1), self.x(u2))), sorted((self.y(v1), self.y(v2)))
        return xs[0], ys[0], xs[1], ys[1]

    def holds(self, hole: Hole) -> bool:
        """Say whether a hole lies on the piece."""
        return self.low <= self.strip.up.distance(hole.y) < self.high


def above(strip: Strip) -> float:
    """Give the paper beyond the end of a strip, mm."""
    return BEYOND_END if strip.to_end else 1.0


def strip_pieces(strip: Strip, joins: tuple[float, ...], number: int) -> tuple[Card, ...] | None:
    """Draw the pieces of a strip parted at `joins`, the first of them card `number`; None where
    the figures find no room."""
    pieces = [
        _Piece(strip=strip, number=number, count=len(joins) - 1, low=low, high=high)
        for number, (low, high) in enumerate(pairwise(joins), start=1)
    ]
    cards = [_draw(piece, number) for piece in pieces]
    return tuple(card for card in cards if card) if all(cards) else None


def _draw(piece: _Piece, number: int) -> Card | None:
    strip = piece.strip
    space = Space()
    _draw_edges(space, piece)
    border = piece.box(
        -strip.flap,
        -strip.flap if piece.first else piece.low,
        strip.width,
        piece.high + piece.above,
    )
    x0, y0, x1, y1 = border
    space.add(Outline(points=((x0, y0), (x1, y0), (x1, y1), (x0, y1))))
    floor = piece.low + _draw_foot(space, piece)
    ceiling = piece.high - _draw_head(space, piece)
    _draw_scale(space, piece)
    panel = strip.view.state.panel
    if piece.first and panel is not None and strip.up.edge == "bottom":
        panel_line(space, panel, (piece.x(0.3), piece.x(strip.width - SCALE)), piece.y(panel))
    fittings = _fittings(piece)
    name = "STRIP" if piece.count == 1 else f"STRIP, PIECE {piece.number} OF {piece.count}"
    drawn = fill_card(
        space,
        strip.view,
        [(fitting, strip.across, piece.foot) for fitting in fittings],
        (name, number + piece.number - 1),
        piece.box(1.5, floor, strip.width - SCALE, ceiling),
        piece.box(0.0, floor - 1.0, strip.width - SCALE + 1.0, ceiling + 1.0),
    )
    if not drawn:
        return None
    return Card(
        number=number + piece.number - 1,
        view=strip.view,
        fittings=fittings,
        box=border,
        edges=(strip.across, strip.up) if piece.first else (strip.across,),
        index=() if piece.first else (piece.foot,),
        ladder=strip.view.height if piece.last and _laddered(strip) else None,
        drawn=tuple(space.marks),
        piece=piece.number,
        pieces=piece.count,
    )


def _laddered(strip: Strip) -> bool:
    return strip.view.ladder and strip.to_end


def _fittings(piece: _Piece) -> tuple[Fitting, ...]:
    """Give the fittings on a piece, of a long row the holes that lie on it."""
    found: list[Fitting] = []
    for fitting in piece.strip.fittings:
        holes = tuple(hole for hole in fitting.holes if piece.holds(hole))
        if holes:
            found.append(fitting if holes == fitting.holes else replace(fitting, holes=holes))
    return tuple(found)


def _draw_edges(space: Space, piece: _Piece) -> None:
    """Draw the band along the edge, and on the first piece the one along the end."""
    strip, view = piece.strip, piece.strip.view
    stand = view.state.stand and strip.up.edge == "bottom"
    folds = piece.first and not view.rounded and not stand
    run = piece.y(piece.low), piece.y(piece.high)
    low = piece.low - (BAND if piece.first and not folds else 0.0)
    black = piece.y(low), run[1]
    draw_edge(space, strip.across, run, strip.flap, edge_flap(view, strip.across), black=black)
    if not piece.first:
        return
    run = piece.x(0.0), piece.x(strip.width)
    draw_edge(space, strip.up, run, strip.flap, edge_flap(view, strip.up))
    if folds:
        cross_out(space, piece.box(-strip.flap, -strip.flap, 0.0, 0.0))


def _draw_foot(space: Space, piece: _Piece) -> float:
    """Draw what sets the foot of a further piece; give how high it reaches, mm."""
    if piece.first:
        return 1.0
    strip, low = piece.strip, piece.low
    space.add(*_across(piece, low, COARSE, 1.0))
    edge = strip.width - NOTCH
    x0, y0, x1, y1 = piece.box(edge, low, strip.width, low + OVERLAP)
    space.add(
        Outline(points=((x0, y0), (x1, y0), (x1, y1), (x0, y1))),
        Line(x1=x0, y1=y0, x2=x1, y2=y1),
        Line(x1=x0, y1=y1, x2=x1, y2=y0),
    )
    space.add(*_lengthwise(piece, edge, low, COARSE, -1.0))
    left, right = 15.0, strip.width - 2 * NOTCH - 2.0
    text = index_words(replace(strip.view, state=replace(strip.view.state, panel=None)), piece.foot)
    text = f"{text}: JOIN LINE OF PIECE {piece.number - 1}"
    lines = wrap(text, 2.5, True, right - left)
    upward = strip.up.inward > 0
    for row, line in enumerate(reversed(lines) if upward else lines):
        y = piece.y(low + 1.8 + row * SMALL if upward else low + 4.3 + row * SMALL)
        x = piece.x((left + right) / 2)
        space.add(Text(x=x, y=y, text=line, bold=True, anchor="middle"))
    return max(OVERLAP, 3.0 + len(lines) * SMALL)


def _draw_head(space: Space, piece: _Piece) -> float:
    """Draw the join line and its tab, or the end of the part; give how far down it reaches."""
    strip, high = piece.strip, piece.high
    start, end = piece.x(0.0), piece.x(strip.width)
    if not piece.last:
        y = piece.y(high)
        space.add(Line(x1=piece.x(-strip.flap), y1=y, x2=end, y2=y, width=MEDIUM))
        space.add(*_across(piece, high, FINE, -1.0))
        space.add(*_lengthwise(piece, strip.width - NOTCH, high, FINE, 1.0))
        words = f"JOIN: foot of piece {piece.number + 1} on this line"
        middle = piece.x((strip.width - NOTCH) / 2)
        y = piece.y(high + VERNIER_AT) - 1.25
        space.add(Text(x=middle, y=y, text=words, anchor="middle"))
        return 6.0
    if not strip.to_end:
        return 1.0
    if _laddered(strip):
        space.add(*ladder(strip.view, start, end, strip.view.height))
        return 8.0
    y = piece.y(high)
    space.add(Line(x1=start, y1=y, x2=end, y2=y, width=MEDIUM, dash="dashed"))
    edge = edge_words(strip.view, "top" if strip.up.inward > 0 else "bottom")
    words = f"{SECOND_CHECK[0].format(edge)}: {format_mm(strip.length)}"
    middle, y = piece.x(strip.width / 2), piece.y(high + BEYOND_END / 2) - 1.25
    space.add(Text(x=middle, y=y, text=words, anchor="middle", bold=True))
    return 1.0


def _lengthwise(piece: _Piece, u: float, v: float, step: float, out: float) -> list[Line]:
    """Draw the half of a vernier along the strip that begins at u, its middle above a join."""
    reach = NOTCH * out * piece.strip.across.inward
    return vernier(piece.x(u), piece.y(v + VERNIER_AT), reach, step)


def _across(piece: _Piece, v: float, step: float, out: float) -> list[Line]:
    """Draw the half of a vernier across the strip that begins on a join."""
    reach = 5.0 * out * piece.strip.up.inward
    return vernier(piece.x(ACROSS_AT), piece.y(v), reach, step, along="right")


def _draw_scale(space: Space, piece: _Piece) -> None:
    """Draw the running scale along the free edge, clear of the notch and of holes."""
    strip = piece.strip
    unit: Unit = "mm" if abs(strip.view.step - 10.0) < 1e-6 else "in"
    inward = strip.across.inward
    start = piece.low if piece.first else piece.low + OVERLAP + 0.5
    near = [
        strip.up.distance(hole.y)
        for fitting in _fittings(piece)
        for hole in fitting.holes
        if strip.across.distance(hole.x) > strip.width - SCALE - 6.0
    ]

    def skip(value: float) -> bool:
        return value < start or any(abs(value - hole) < 6.5 for hole in near)

    along: Literal["up", "down"] = "up" if strip.up.inward > 0 else "down"
    x, y = piece.x(strip.width), piece.y(piece.low)
    space.add(
        *ticks(
            x, y, piece.low, piece.high, along=along, side=-1 if inward > 0 else 1, unit=unit,
            width=FAINT, skip=skip,
        )
    )  # fmt: skip
    figures = numbers(
        piece.x(strip.width - 5.8), y, piece.low, piece.high,
        along=along, anchor="end" if inward > 0 else "start", unit=unit,
    )  # fmt: skip
    # A figure keeps clear of the end, and of the ladder's lines below a measured one.
    stop = piece.high - (4.0 if piece.last and _laddered(strip) else 2.0)
    for value, text in figures:
        if start + 2.0 < value < stop and not skip(value):
            space.add(text)
