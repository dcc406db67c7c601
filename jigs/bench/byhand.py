"""Holes stated by hand: kits, lifts, folding fittings.

Each front's are a station of their own. All holes of one fitting are set from one end, the one
that the leaflet counts from where that was stated, so that the figures are the leaflet's; across
from the nearer side, on a board from its front edge.
"""

from collections.abc import Iterator, Sequence

from jigs.bench.benchpart import BenchPart, as_seen, board_face, front_face
from jigs.bench.placing import (
    CARD_REACH,
    Placing,
    closing_both_ways,
    nearer_side,
    on_line,
    rest_near,
    set_out_from,
)
from jigs.bench.sides import front_rest
from jigs.box.parts import Layout
from jigs.fittings.kinds import kind_of
from jigs.ground.geometry import SLACK, FaceEdge, Fitting, Hole


def place_by_hand(layout: Layout, *, reach: float = CARD_REACH) -> list[Placing]:
    """Place all holes by hand: a front's own, then those for it in the boards."""
    faces: list[tuple[BenchPart, Sequence[Fitting], str]] = []
    for front in layout.fronts:
        for face in ("back", "front"):
            part = front_face(front, face)
            faces.append((part, as_seen(part, front.fittings), front.id))
    for side in layout.sides:
        part = board_face(side)
        faces.append((part, as_seen(part, side.fittings), side.board))
    placed: list[Placing] = []
    for part, fittings, own in faces:
        by_hand = [fitting for fitting in fittings if kind_of(fitting).stated]
        for fitting in by_hand:
            mine = [hole for each in by_hand if each.part == fitting.part for hole in each.holes]
            placed += _place(part, fitting, fitting.part or own, mine, reach)
    return placed


def _place(
    part: BenchPart, fitting: Fitting, serves: str, mine: Sequence[Hole], reach: float
) -> Iterator[Placing]:
    board = part.board
    side: FaceEdge = board.side if board else nearer_side(part, fitting.holes)
    end: FaceEdge = set_out_from(part, fitting.stated_from or "bottom")
    if board is not None and board.assembled:
        end = "bottom"
    for holes in _within(fitting.holes, reach):
        across, up = (rest_near(part, edge, holes, reach=reach) for edge in (side, end))
        if board is not None:
            across = front_rest(part) if across.by else across
            up = on_line(end, min(holes, key=lambda hole: _from(part, end, hole.y)).y)
        yield Placing(
            work="by-hand",
            part=part,
            purpose=fitting.holes[0].purpose,
            serves=serves,
            kind=serves,
            x=across,
            y=up,
            holes=holes,
            turned=board is not None and board.side == "right" and across.by is not None,
            outline=fitting.outline if len(holes) == len(fitting.holes) else (),
            closing=closing_both_ways(part, mine, up=end, across=side),
        )


def _from(part: BenchPart, end: FaceEdge, y: float) -> float:
    return y if end == "bottom" else part.height - y


def _within(holes: Sequence[Hole], reach: float) -> list[tuple[Hole, ...]]:
    """Part holes that are too far from each other for one card."""
    groups: list[list[Hole]] = []
    for hole in holes:
        group = next(
            (
                each
                for each in groups
                if all(
                    max(abs(hole.x - other.x), abs(hole.y - other.y)) <= reach + SLACK
                    for other in each
                )
            ),
            None,
        )
        if group is None:
            groups.append([hole])
        else:
            group.append(hole)
    return [tuple(group) for group in groups]
