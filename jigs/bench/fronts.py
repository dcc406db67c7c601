"""What is drilled into fronts: the cups of doors, pulls, and holes that are stated by hand.

**Cups** stand from the hinge edge, each on a line at its own height. Both hands are stations of
their own. All cups of a door are set out from one end, its bottom.

**Pulls** stand near a corner of a door, at the height of a hand on a tall one, on the middle of a
drawer. The card for a door's top right corner is turned half round for a bottom left one; top left
and bottom right share the other. A pull set on a line through its own middle is its own half-turn,
and one card serves both hands. On a drawer front the card lies on the front's middle, and on its
top edge or on a line below it.

**By hand** are kits, lifts, folding fittings. Each front's are a station of their own, with those
for it in the boards. All holes of one fitting are set from one end, the one that the leaflet counts
from where that was stated, so that the figures are the leaflet's, else the nearer one, on a board
the bottom end; across from the nearer side, on a
board from its front edge.
"""

from collections.abc import Iterator, Sequence

from msgspec.structs import replace

from jigs.bench.benchpart import BenchPart, as_seen, board_face, front_face
from jigs.bench.placing import (
    ALIKE,
    CARD_REACH,
    Option,
    Placing,
    Rest,
    closing_both_ways,
    closing_of,
    counted_from,
    nearer_side,
    on_edge,
    on_line,
    rest_near,
    set_out_from,
    settle,
)
from jigs.bench.sides import front_rest
from jigs.box.parts import Front, Layout
from jigs.given.kinds import kind_of
from jigs.ground.geometry import OPPOSITE, SLACK, FaceEdge, Fitting, Hand, Hole, other_hand


def place_cups(layout: Layout) -> list[Placing]:
    """Place the cups of all doors, in the layout's order."""
    return [placing for front in layout.fronts for placing in _of_door(front)]


def hinge_edge(front: Front) -> Hand | None:
    """Give the side of a door's hinge edge as seen on its back."""
    return None if front.hinged is None else other_hand(front.hinged)


def _of_door(front: Front) -> Iterator[Placing]:
    part = front_face(front, "back")
    hand = hinge_edge(front)
    cups = [fitting for fitting in as_seen(part, front.fittings) if fitting.kind == "hinge"]
    if not cups or hand is None:
        return
    start: FaceEdge = set_out_from(part, "bottom")
    closing = closing_of(part, start, (_height(cup) for cup in cups))
    for cup in cups:
        yield Placing(
            work="cups",
            part=part,
            purpose="cup",
            serves=front.id,
            x=on_edge(part, hand),
            y=on_line(start, _height(cup)),
            holes=cup.holes,
            hand=hand,
            outline=cup.outline,
            record=cup.record,
            closing=(closing,),
        )


def _height(cup: Fitting) -> float:
    return next(hole.y for hole in cup.holes if hole.purpose == "cup")


ENOUGH_CORNERS = 2
"""So many fronts with a pull at one distance have a card for the corner, which says besides which
corner it is; fewer share one that is set on a line (our choice)."""


def place_pull_cards(layout: Layout, *, reach: float = CARD_REACH) -> list[Placing]:
    """Place the pulls of all fronts: those of doors, then the others, in the layout's order."""
    doors = [front for front in layout.fronts if front.swings]
    others = [front for front in layout.fronts if not front.swings]
    return [
        *settle(
            (option for front in doors for option in _of_front(front, reach)), enough=ENOUGH_CORNERS
        ),
        *settle(option for front in others for option in _of_front(front, reach)),
    ]


def _of_front(front: Front, reach: float) -> Iterator[Option]:
    part = front_face(front, "front")
    pulls = [fitting for fitting in as_seen(part, front.fittings) if fitting.kind == "pull"]
    holes = [hole for pull in pulls for hole in pull.holes]
    for pull in pulls:
        for group in _groups(pull, reach):
            bare = Placing(
                work="pulls-through" if front.screws.through_box else "pulls",
                part=part,
                purpose="pull",
                serves=front.id,
                x=on_edge(part, "left"),
                y=on_edge(part, "top"),
                holes=group,
                outline=pull.outline if len(group) == len(pull.holes) else (),
                record=pull.record,
                closing=closing_both_ways(part, holes),
            )
            if front.swings and front.hinged:
                yield _on_door(bare, pull.holes, OPPOSITE[front.hinged], reach)
            else:
                end: FaceEdge = "bottom" if front.kind == "lift" else "top"
                yield _on_middle(bare, pull.holes, set_out_from(part, end), reach)


def _groups(pull: Fitting, reach: float) -> list[tuple[Hole, ...]]:
    """Keep the screws of a pull together, unless they are too far apart for a card."""
    xs, ys = [hole.x for hole in pull.holes], [hole.y for hole in pull.holes]
    if max(max(xs) - min(xs), max(ys) - min(ys)) <= reach + SLACK:
        return [pull.holes]
    return [(hole,) for hole in pull.holes]


def _on_door(bare: Placing, pull: Sequence[Hole], free: FaceEdge, reach: float) -> Option:
    """Set a door's pull from its free edge, and from the end it is near or on a line; both screws
    from one end, those of a pull too that is too long for one card."""
    part, holes = bare.part, bare.holes
    across = rest_near(part, free, holes, reach=reach)
    end = set_out_from(part, _end_near(part, pull, tie="top"))
    level = replace(
        bare, kind="line", x=across, y=on_line(end, _middle(hole.y for hole in holes)),
        turned=across.start == "left" and across.by is not None,
    )  # fmt: skip
    up = rest_near(part, end, holes, reach=reach)
    if up.by is None:
        return None, level
    turned = end == "bottom"
    corner = OPPOSITE[free] if turned else free
    return replace(bare, kind=f"top-{corner}", x=across, y=up, turned=turned), level


def _end_near(part: BenchPart, holes: Sequence[Hole], *, tie: FaceEdge = "bottom") -> FaceEdge:
    """Give the end that the heights of some holes count from."""
    ys = [hole.y for hole in holes]
    return counted_from(min(ys), part.height - max(ys), tie=tie)


def _on_middle(bare: Placing, pull: Sequence[Hole], end: FaceEdge, reach: float) -> Option:
    """Set a pull on the front's middle, or on a line where it stands beside it, and from its end
    or on a line; both screws of one that is too long for a card from the same side."""
    part, holes = bare.part, bare.holes
    across = middle_or_line(part, holes, nearer_side(part, pull))
    level = replace(
        bare, kind="middle", x=across, y=on_line(end, _middle(hole.y for hole in holes))
    )
    up = rest_near(part, end, holes, reach=reach)
    return None if up.by is None else replace(level, y=up), level


def middle_or_line(part: BenchPart, holes: Sequence[Hole], side: FaceEdge) -> Rest:
    """Rest a card on the middle between left and right where its holes stand about it, else on a
    line through their own middle, counted from this side."""
    own = _middle(hole.x for hole in holes)
    if abs(own - part.width / 2) <= ALIKE:
        return on_line("middle-x", part.width / 2)
    return on_line(side, own)


def _middle(places: Iterator[float]) -> float:
    all_places = list(places)
    return (min(all_places) + max(all_places)) / 2


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
            mine = [each for each in by_hand if each.part == fitting.part]
            placed += _place(part, fitting, fitting.part or own, mine, reach)
    return placed


def _place(
    part: BenchPart, fitting: Fitting, serves: str, mine: Sequence[Fitting], reach: float
) -> Iterator[Placing]:
    board = part.board
    side: FaceEdge = board.side if board else nearer_side(part, fitting.holes)
    alike = [each for each in mine if each.stated_from == fitting.stated_from]
    nearer: FaceEdge = "bottom" if board else _end_near(part, _holes(alike))
    end: FaceEdge = set_out_from(part, fitting.stated_from or nearer)
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
            closing=closing_both_ways(part, _holes(mine), up=end, across=side),
        )


def _holes(fittings: Sequence[Fitting]) -> list[Hole]:
    return [hole for fitting in fittings for hole in fitting.holes]


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
