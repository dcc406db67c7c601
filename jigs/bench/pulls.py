"""Pulls: near a corner of a door, at the height of a hand on a tall one, on the middle of a drawer.

The card for a door's top right corner is turned half round for a bottom left one; top left and
bottom right share the other. A pull set on a line through its own middle is its own half-turn, and
one card serves both hands. On a drawer front the card lies on the front's middle, and on its top
edge or on a line below it.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from jigs.bench.benchpart import BenchPart, as_seen, front_face
from jigs.bench.placing import (
    ALIKE,
    CARD_REACH,
    Option,
    Placing,
    Rest,
    closing_both_ways,
    nearer_end,
    nearer_side,
    on_edge,
    on_line,
    rest_near,
    set_out_from,
    settle,
)
from jigs.box.parts import Front, Layout
from jigs.ground.geometry import OPPOSITE, SLACK, FaceEdge, Fitting, Hole

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
                yield _on_door(bare, OPPOSITE[front.hinged], reach)
            else:
                end: FaceEdge = "bottom" if front.kind == "lift" else "top"
                yield _on_middle(bare, set_out_from(part, end), reach)


def _groups(pull: Fitting, reach: float) -> list[tuple[Hole, ...]]:
    """Keep the screws of a pull together, unless they are too far apart for a card."""
    xs, ys = [hole.x for hole in pull.holes], [hole.y for hole in pull.holes]
    if max(max(xs) - min(xs), max(ys) - min(ys)) <= reach + SLACK:
        return [pull.holes]
    return [(hole,) for hole in pull.holes]


def _on_door(bare: Placing, free: FaceEdge, reach: float) -> Option:
    """Set a door's pull from its free edge, and from the end it is near or on a line."""
    part, holes = bare.part, bare.holes
    across = rest_near(part, free, holes, reach=reach)
    end = nearer_end(part, holes, tie="top")
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


def _on_middle(bare: Placing, end: FaceEdge, reach: float) -> Option:
    """Set a pull on the front's middle, or on a line where it stands beside it, and from its end
    or on a line."""
    part, holes = bare.part, bare.holes
    across = middle_or_line(part, holes)
    level = replace(
        bare, kind="middle", x=across, y=on_line(end, _middle(hole.y for hole in holes))
    )
    up = rest_near(part, end, holes, reach=reach)
    return None if up.by is None else replace(level, y=up), level


def middle_or_line(part: BenchPart, holes: Sequence[Hole]) -> Rest:
    """Rest a card on the middle between left and right where its holes stand about it, else on a
    line through their own middle."""
    own = _middle(hole.x for hole in holes)
    if abs(own - part.width / 2) <= ALIKE:
        return on_line("middle-x", part.width / 2)
    return on_line(nearer_side(part, holes), own)


def _middle(places: Iterator[float]) -> float:
    all_places = list(places)
    return (min(all_places) + max(all_places)) / 2
