"""Drawer boxes, their fronts, and false fronts: what is screwed together from inside.

The drawer box is bored first, each clearance hole set from the corner nearest to it; any place
within 2 mm will do, for the front is marked through the holes as they are. The front itself gets
the place where the box stands: a card for each lower corner. What cannot be marked through, a
false front or a screw beside the box, has pilots from paper.
"""

from collections.abc import Iterator, Sequence

from msgspec.structs import replace

from jigs.bench.benchpart import BenchPart, as_seen, drawer_face, front_face, marked_holes, marks_of
from jigs.bench.fronts import middle_or_line
from jigs.bench.placing import (
    CARD_REACH,
    FOLD_REACH,
    Option,
    Placing,
    Rest,
    closing_both_ways,
    closing_of,
    nearer_end,
    nearer_side,
    on_edge,
    on_line,
    rest_near,
    set_out_from,
    settle,
)
from jigs.bench.station import Corner, Work
from jigs.box.drawerbox import DrawerBox, Rollout
from jigs.box.parts import Front, Layout
from jigs.fittings.fixing import pilot
from jigs.ground.geometry import SLACK, Hand, Hole, mirror_x

NEIGHBOURS = 100.0
"""Screws of a false front that are no further apart, up or across, share a card; mm."""


def place_clearances(layout: Layout, *, reach: float = CARD_REACH) -> list[Placing]:
    """Place the clearance holes in the fronts of all drawer boxes."""
    options: list[Option] = []
    for front in layout.fronts:
        if front.drawer is None:
            continue
        part = drawer_face(front.drawer, "box-front")
        holes = [hole for each in as_seen(part, front.drawer.fittings) for hole in each.holes]
        bare = Placing(
            work="drawer-boxes",
            part=part,
            purpose="clearance",
            serves=front.id,
            x=on_edge(part, "left"),
            y=on_edge(part, "bottom"),
            holes=(),
            critical=False,
            closing=closing_both_ways(part, holes),
        )
        options += (_from_corner(replace(bare, holes=(hole,)), reach) for hole in holes)
    return settle(options)


def _from_corner(bare: Placing, reach: float) -> Option:
    """Set holes from the side and the end nearest to them; of a card and its half-turn the lower
    one lies as drawn."""
    part, holes = bare.part, bare.holes
    across = _from_side(part, holes, reach)
    end = nearer_end(part, holes)
    nearest = min(holes, key=lambda hole: hole.y if end == "bottom" else -hole.y)
    level = replace(bare, x=across, y=on_line(end, nearest.y))
    if len(holes) == 1:
        level = replace(level, turned=across.start == "right" and across.by is not None)
    up = rest_near(part, end, holes, reach=reach)
    if up.by is None:
        return None, level
    return replace(bare, x=across, y=up, turned=end == "top"), level


def _from_side(part: BenchPart, holes: Sequence[Hole], reach: float) -> Rest:
    side = nearer_side(part, holes)
    middle = middle_or_line(part, holes, side)
    return middle if middle.start == "middle-x" else rest_near(part, side, holes, reach=reach)


def place_hooks(layout: Layout, *, reach: float = CARD_REACH) -> list[Placing]:
    """Place the holes for the slides' rear hooks in the backs of all drawer boxes."""
    placed: list[Placing] = []
    for box in layout.drawers:
        rear = () if isinstance(box, Rollout) and box.held else box.rear
        part = drawer_face(box, "box-back")
        fittings = as_seen(part, rear)
        holes = [hole for each in fittings for hole in each.holes]
        for fitting in fittings:
            side = nearer_side(part, fitting.holes)
            placed.append(
                Placing(
                    work="rear-hooks",
                    part=part,
                    purpose="hook",
                    serves=box.front if isinstance(box, DrawerBox) else box.id,
                    x=rest_near(part, side, fitting.holes, reach=reach),
                    y=rest_near(part, "bottom", fitting.holes, reach=reach),
                    holes=fitting.holes,
                    outline=fitting.outline,
                    record=fitting.record,
                    closing=closing_both_ways(part, holes),
                )
            )
    return placed


def place_box_corners(layout: Layout, *, pilots: bool = False) -> list[Placing]:
    """Place every drawer box on its front, whose holes are then marked through it; with `pilots`
    those alone that their maker bored."""
    return settle(
        option
        for front in layout.fronts
        if front.drawer is not None and (front.drawer.maker_bored or not pilots)
        for option in _stand(front, front.drawer)
    )


def _stand(front: Front, box: DrawerBox) -> Iterator[Option]:
    """Place both lower corners of a drawer box, each from its own end of the front or on a line
    there, and up from the bottom edge."""
    marks = marks_of(front)
    if marks is None:
        return
    part = front_face(front, "back")
    (left, up), (right, _) = marks.corners
    end = set_out_from(part, "bottom")
    near = end == "bottom" and up <= FOLD_REACH
    corners: tuple[tuple[Hand, float, float], ...] = (
        ("left", left, marks.in_left), ("right", right, marks.in_right),
    )  # fmt: skip
    for side, x, inward in corners:
        on_lines = Placing(
            work="fronts-on-boxes",
            part=part,
            purpose="front-fixing",
            serves=front.id,
            x=on_line(side, x),
            y=on_edge(part, end) if near else on_line(end, up),
            holes=(),
            pilots=(pilot(part.thickness),),
            stands=Corner(side=side, x=x, y=up),
            marks=marks,
            record=box.slide,
            closing=(
                closing_of(part, "bottom", (up,)),
                closing_of(part, "left", (left, right)),
            ),
        )
        on_end = replace(on_lines, x=on_edge(part, side)) if inward <= FOLD_REACH else None
        yield on_end, on_lines


def place_fixing_cards(
    layout: Layout, *, pilots: bool = False, reach: float = CARD_REACH
) -> list[Placing]:
    """Place the pilots of what is not marked through: all fixing holes of false fronts, and, with
    `pilots`, those of drawer fronts too."""
    options: list[Option] = []
    for front in layout.fronts:
        part = front_face(front, "back")
        marked = () if pilots else marked_holes(front)
        holes = [
            replace(hole, x=mirror_x(hole.x, part.width))
            for hole in front.holes
            if hole.purpose == "front-fixing" and hole.face == "back" and hole not in marked
        ]
        if not holes:
            continue
        work: Work = "false-fronts" if front.drawer is None else "fronts-on-boxes"
        bare = Placing(
            work=work,
            part=part,
            purpose="front-fixing",
            serves=front.id,
            x=on_edge(part, "left"),
            y=on_edge(part, "bottom"),
            holes=(),
            kind="pilots",
            closing=closing_both_ways(part, holes),
        )
        options += (_from_corner(replace(bare, holes=group), reach) for group in _columns(holes))
    return settle(options)


def _columns(holes: Sequence[Hole]) -> list[tuple[Hole, ...]]:
    """Put screws above each other together, as far as they are neighbours."""
    groups: list[list[Hole]] = []
    for hole in sorted(holes, key=lambda hole: (round(hole.x, 2), hole.y)):
        last = groups[-1] if groups else []
        if last and abs(hole.x - last[0].x) <= SLACK and hole.y - last[0].y <= NEIGHBOURS:
            last.append(hole)
        else:
            groups.append([hole])
    return [tuple(group) for group in groups]
