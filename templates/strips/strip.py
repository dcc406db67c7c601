"""A strip: one long template along the edge of a tall part, in pieces that are joined.

It lies along the hinge edge of a door's back, or the front edge of a box side, from the end that
heights are counted from, and carries each fitting that lies within its width; what lies further
in stays on cards. The pieces are parted at round figures, where no hole and no fitting is, so
that a piece can also be set by itself on a line struck at that height.

>>> hinges = [(90.0, 150.0), (460.0, 520.0)]
>>> part_strip(700.0, hinges, [120.0, 490.0], lambda *_: 240.0, 10.0, (15.0, 9.0)).joins
(0.0, 230.0, 460.0, 700.0)
"""

import math
from collections.abc import Callable, Sequence

from msgspec import Struct
from msgspec.structs import replace

from jigs.ground.geometry import SLACK, Fitting
from templates.cards.cardplan import ARM
from templates.cards.figures import figures_of
from templates.cards.flap import FLAP, WASTE
from templates.faces.faceview import FaceView
from templates.faces.reference import REACH, Reference
from templates.page.scales import OVERLAP
from templates.strips.wholecard import edges_of

INNERMOST = (176.0, REACH / 2)
"""How far in from its edge the holes of a strip may reach, mm: as far as a slide's second one, or
no further than hinges and plates do, which leaves room for longer pieces."""
SCALE = 13.5
"""Room of the running scale and its figures along the free edge, mm."""
BESIDE = 5.0
"""Between a hole's cross and its figures, mm."""
NARROWEST = 86.0
"""The least width of a strip without its flap, mm: room for its words and the scale."""
HEAD, FOOT, LOW_FOOT = 6.0, 14.0, 10.6
"""What a join leaves free for its marks below it, and for the words on the foot above it, in three
lines or in two; mm, the hole's own size besides."""
AROUND = 14.0
"""How far beyond its holes a fitting is not parted where that can be helped, mm."""
STUMP = 70.0
"""The shortest piece: room for its words, mm."""
BEYOND = 30.0
"""How far a strip reaches beyond its last hole where it does not reach to the end, mm."""


class Strip(Struct, frozen=True, kw_only=True):
    """A strip of one face. `across` and `up` are the edges it is set on; `fittings` what it
    carries, `view` the face with these alone; `width` without the flap, `length` from `up` on,
    mm. `to_end`: it ends where the part does."""

    view: FaceView
    across: Reference
    up: Reference
    width: float
    length: float
    to_end: bool

    @property
    def fittings(self) -> tuple[Fitting, ...]:
        """The fittings on the strip."""
        return self.view.fittings

    @property
    def flap(self) -> float:
        """Paper beyond the edge, mm."""
        return WASTE if self.view.rounded else FLAP


def find_strip(
    view: FaceView, room: float, innermost: float
) -> tuple[Strip, FaceView | None] | None:
    """Give the strip of a face, and the face with what is not on it (None: nothing).

    `room` is the width that a page has for it, `innermost` how far in its holes may reach, mm.
    None where fewer than two fittings, or no long row of holes, lie along the edge: a card
    serves as well.
    """
    edge = view.front_edge or (view.hinge_edge if view.face == "back" else None)
    if edge not in ("left", "right") or view.bevel == edge:
        return None
    edges = edges_of(view)
    across = edges[edge]
    up = edges["top" if view.bevel == "bottom" else "bottom"]
    flap = WASTE if view.rounded else FLAP
    widest = min(innermost, room - flap)
    on = [f for f in view.fittings if _reach(f, across) <= widest]
    holes = [hole for fitting in on for hole in fitting.holes]
    if not holes:
        return None
    heights = [up.distance(hole.y) for hole in holes]
    if len(on) < 2 and max(heights) - min(heights) <= REACH:
        return None
    figures = max(figures_of(view, f, hole, across, up).width for f in on for hole in f.holes)
    reached = max(_reach(fitting, across) for fitting in on)
    width = max(reached + BESIDE + figures + 2.0 + SCALE, NARROWEST)
    if width > room - flap or reached > REACH / 2:
        width = min(max(reached + SCALE, NARROWEST), room - flap)
    to_end = not view.state.stand and view.bevel is None
    length = view.height - edges["bottom"].at
    if not to_end:
        length = min(length, max(heights) + BEYOND)
    strip = Strip(
        view=replace(view, fittings=tuple(on)), across=across, up=up, width=width,
        length=length, to_end=to_end,
    )  # fmt: skip
    rest = tuple(fitting for fitting in view.fittings if fitting not in on)
    return strip, replace(view, fittings=rest) if rest else None


def _reach(fitting: Fitting, across: Reference) -> float:
    """How far in from the edge a fitting's holes and their crosses reach, mm."""
    return max(
        across.distance(hole.x) + max(hole.diameter / 2, ARM) + 0.8 for hole in fitting.holes
    )


class Parting(Struct, frozen=True):
    """Where the pieces of a strip begin and end, mm from its origin; how many fittings are
    parted."""

    joins: tuple[float, ...]
    parted: int


SPARE = (0.0, 10.0, 20.0)
"""How much further from the next hole joins stand, where figures find no room without it, mm."""


def joins_of(
    strip: Strip, first: float, further: float, above: float, spare: float = 0.0
) -> Parting | None:
    """Part a strip at round figures that a tape shows, close to its holes where that parts fewer
    fittings; None: there is no way to part it.

    `first`, `further`: the height that the first page and any other has for a piece; `above`:
    paper beyond the end of the last one; `spare`: what joins keep clear of holes besides, mm.
    """
    spans: list[tuple[float, float]] = []
    holes: list[float] = []
    for fitting in strip.fittings:
        ats = [strip.up.distance(hole.y) for hole in fitting.holes]
        spans.append((min(ats), max(ats)))
        holes += ats
    most = max(hole.diameter for fitting in strip.fittings for hole in fitting.holes) / 2

    def carried(at_first: bool, at_last: bool) -> float:
        room = first - strip.flap if at_first else further
        return room - (above if at_last else OVERLAP)

    pad = max(most, ARM) + spare
    best: Parting | None = None
    for foot in (FOOT, LOW_FOOT):
        clear = (pad + foot, pad + HEAD)
        found = part_strip(strip.length, spans, holes, carried, strip.view.step, clear)
        if found is not None and (best is None or found.parted < best.parted):
            best = found
        if best is not None and not best.parted:
            break
    return best


Carried = Callable[[bool, bool], float]
"""The most that a piece carries which is the first, or the last; mm."""
Cost = tuple[int, int, int, float]
"""Of a way to part a strip: the fittings parted, its pieces, the joins that come near a fitting,
and how uneven the pieces are."""


def part_strip(
    length: float,
    spans: Sequence[tuple[float, float]],
    holes: Sequence[float],
    carried: Carried,
    step: float,
    clear: tuple[float, float],
) -> Parting | None:
    """Part a length so that the fewest spans are cut, into as few pieces as that allows, the
    joins away from the spans, the pieces even. Joins stand on whole steps, `clear` of the next
    hole above and below; mm."""
    inner = [count * step for count in range(1, math.ceil(length / step - SLACK))]
    places = [
        0.0,
        *(p for p in inner if not any(-clear[1] < hole - p < clear[0] for hole in holes)),
        length,
    ]
    best: dict[int, tuple[Cost, tuple[float, ...]]] = {0: ((0, 0, 0, 0.0), (0.0,))}
    for end in range(1, len(places)):
        place, at_last = places[end], end == len(places) - 1
        inside = sum(not at_last and low < place < high for low, high in spans)
        near = sum(not at_last and low - AROUND < place < high + AROUND for low, high in spans)
        for start in range(end - 1, -1, -1):
            piece = place - places[start]
            if piece > carried(start == 0, at_last) + SLACK:
                if start:  # the first piece may carry more than any other
                    continue
                break
            if start not in best or piece < min(STUMP, length) - SLACK:
                continue
            (parted, pieces, close, uneven), ways = best[start]
            cost = parted + inside, pieces + 1, close + near, uneven + piece * piece
            if end not in best or cost < best[end][0]:
                best[end] = cost, (*ways, place)
    whole = best.get(len(places) - 1)
    return None if whole is None else Parting(whole[1], whole[0][0])
