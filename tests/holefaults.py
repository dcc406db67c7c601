"""What is wrong with the holes of a layout, found by an independent library of plane geometry.

Boards and fronts are rectangles, holes discs. Limits are the trade's common practice, stated here
anew: 2 mm of wood at an edge and between holes; two 5 mm holes are one within 0.2 or keep 12.5
between their centres; within one fitting nothing is asked.
"""

from collections.abc import Iterator, Sequence
from itertools import combinations

from shapely import Point, Polygon
from shapely.geometry import box as rectangle

from jigs.box.parts import Front, Layout, Side
from jigs.given.job import BoxSpec, Material
from jigs.ground.geometry import Fitting, Hole

EPS = 1e-6
Placed = tuple[Fitting, Hole, Polygon]


def faults_in_holes(layout: Layout) -> list[str]:
    """List every fault of the holes of all parts that are not withheld, in words."""
    return [
        *(f"{front.id}: {fault}" for front in layout.fronts for fault in _in_front(front)),
        *(
            f"{side.board} {side.side}: {fault}"
            for side in layout.sides
            for fault in _in_side(side, layout)
        ),
        *_between_faces(layout),
        *(fault for front in layout.fronts for fault in _across(front, layout)),
    ]


def _discs(fittings: Sequence[Fitting]) -> list[Placed]:
    return [
        (fitting, hole, Point(hole.x, hole.y).buffer(hole.diameter / 2, quad_segs=32))
        for fitting in fittings
        for hole in fitting.holes
    ]


def _say(hole: Hole) -> str:
    return f"{hole.purpose} {hole.diameter:g} at {hole.x:.3f}, {hole.y:.3f} ({hole.face})"


def _inside(placed: Sequence[Placed], width: float, height: float) -> Iterator[str]:
    """Name the holes without 2 mm of wood at the edges."""
    wood = rectangle(2, 2, width - 2, height - 2).buffer(EPS)
    for _, hole, disc in placed:
        if not wood.covers(disc):
            yield f"{_say(hole)} not inside {width:.2f} x {height:.2f}"


def _apart(placed: Sequence[Placed], thickness: float) -> Iterator[str]:
    """Name the holes of different fittings that are too near each other."""
    for (fit, one, disc), (other_fit, other, other_disc) in combinations(placed, 2):
        if fit is other_fit:
            continue
        deep = (one.depth or thickness) + (other.depth or thickness)
        if one.face != other.face and deep <= thickness - 2 + EPS:
            continue
        if one.diameter == other.diameter == 5.0:
            apart = Point(one.x, one.y).distance(Point(other.x, other.y))
            good = apart <= 0.2 + EPS or apart >= 12.5 - EPS
        else:
            # The discs are polygons inside their circles: 0.005 at most for a cup.
            good = disc.distance(other_disc) >= 2 - EPS
        if not good:
            yield f"{_say(one)} too near {_say(other)}"


def _in_front(front: Front) -> Iterator[str]:
    placed = _discs(front.fittings)
    if front.withheld and placed:
        yield "withheld, and has holes"
    yield from _inside(placed, front.width, front.height)
    yield from _apart(placed, front.make.thickness)
    for _, hole, disc in placed:
        if hole.depth is not None and hole.depth >= front.make.thickness:
            yield f"{_say(hole)} comes out"
        frame = front.make.frame
        if frame is None or hole.purpose == "manual":
            continue
        opening = rectangle(
            frame.stile, frame.rail, front.width - frame.stile, front.height - frame.rail
        )
        if frame.glass and disc.buffer(-EPS).intersects(opening):
            yield f"{_say(hole)} in glass"
        if (
            hole.purpose == "front-fixing"
            and frame.panel <= 10
            and disc.buffer(-EPS).intersects(opening)
        ):
            yield f"{_say(hole)} in a thin panel"
    drawer = front.drawer
    if drawer is not None:
        placed = _discs(drawer.fittings)
        yield from _inside(placed, drawer.width, drawer.height)
        yield from _apart(placed, drawer.side)
        mine = sorted(
            (h.x + drawer.x, h.y + drawer.y) for h in drawer.holes if h.purpose == "clearance"
        )
        theirs = sorted((h.x, h.y) for h in front.holes if h.purpose == "front-fixing")
        if len(mine) != len(theirs) or any(
            abs(a - c) > EPS or abs(b - d) > EPS
            for (a, b), (c, d) in zip(mine, theirs, strict=False)
        ):
            yield f"its drawer box's holes {mine} do not answer its own {theirs}"


def _in_side(side: Side, layout: Layout) -> Iterator[str]:
    placed = _discs(side.fittings)
    yield from _inside(placed, side.depth, side.height)
    yield from _apart(placed, side.thickness)
    spec = next(box for box in layout.boxes if box.id == side.box)
    for name, panel in _panels(spec, layout.job.material, side.column):
        for _, hole, _ in placed:
            disc = Point(hole.x, hole.y + side.ends.base).buffer(hole.diameter / 2)
            if disc.buffer(-EPS).intersects(panel):
                yield f"{_say(hole)} in the {name}"
    floor = spec.legs + layout.job.material.side
    for _, hole, _ in placed:
        if hole.purpose in ("shelf", "slide", "plate") and hole.y + side.ends.base < floor:
            yield f"{_say(hole)} is not above the bottom panel"
        if hole.depth is not None and hole.depth >= side.thickness:
            yield f"{_say(hole)} comes out"


def _panels(spec: BoxSpec, material: Material, column: int) -> Iterator[tuple[str, Polygon]]:
    """Where bottom, top, rail and fixed shelves meet a side: x back from the front edge, y up."""
    board, inside = material.side, spec.depth - 19 - material.back
    yield "bottom", rectangle(0, spec.legs, inside, spec.legs + board)
    if spec.kind in ("wall", "tall"):
        yield "top", rectangle(0, spec.height - board, inside, spec.height)
    elif spec.kind != "sink":
        yield "stretcher", rectangle(0, spec.height - board, 100, spec.height)
    if spec.kind == "sink" or spec.rail:
        yield "rail", rectangle(0, spec.height - (spec.rail or 100), board, spec.height)
    for shelf in spec.shelves:
        if shelf.at is not None and shelf.column in (None, column):
            yield "fixed shelf", rectangle(0, shelf.at - board, inside, shelf.at)


def _between_faces(layout: Layout) -> Iterator[str]:
    """Name the holes of a partition that meet from both faces and are not one."""
    for left in layout.sides:
        for right in layout.sides:
            if not left.partition or left.board != right.board or left.side != "right":
                continue
            if right.side == "right":
                continue
            for (_, one, disc), (_, other, other_disc) in (
                (a, b) for a in _discs(left.fittings) for b in _discs(right.fittings)
            ):
                if not disc.intersects(other_disc):
                    continue
                if one.depth is None and other.depth is None:
                    continue
                deep = (one.depth or left.thickness) + (other.depth or left.thickness)
                if deep + 1 > left.thickness + EPS:
                    yield f"{left.board}: {_say(one)} meets {_say(other)} of the other face"


def _across(front: Front, layout: Layout) -> Iterator[str]:
    """Name what does not agree between a front and the boards at both sides of it."""
    boards = [side for side in layout.sides if side.box == front.box]
    ends = [
        side
        for side in boards
        if (side.column, side.side)
        in ((front.place.column, "left"), (front.place.column + front.place.span - 1, "right"))
    ]
    serving = [(side, f) for side in boards for f in side.fittings if f.part == front.id]
    if front.withheld:
        if serving:
            yield f"{front.id}: withheld, and {serving[0][0].board} has holes for it"
        return
    if any(side not in ends for side, _ in serving):
        yield f"{front.id}: served by a board that it does not meet"
    slides = [
        sorted((h.x, h.y + s.ends.base) for own, f in serving if own is s and f.kind == "slide"
               for h in f.holes)
        for s in ends
    ]  # fmt: skip
    if any(slides) and (len(slides) != 2 or not _same(slides[0], slides[1])):
        yield f"{front.id}: slides differ left and right: {slides}"
    cups = sorted(h.y + front.place.y for h in front.holes if h.purpose == "cup")
    plates = sorted(
        sum(h.y for h in f.holes) / len(f.holes) + s.ends.base
        for s, f in serving
        if f.kind == "plate"
    )
    bored = not cups and front.bored
    if not bored and not _same([(0.0, y) for y in cups], [(0.0, y) for y in plates]):
        yield f"{front.id}: cups at {cups}, plates at {plates}"
    hung = next((s for s, f in serving if f.kind == "plate"), None)
    if hung is not None and hung.side != front.hinged:
        yield f"{front.id}: plates on its {hung.side}"
    if hung is not None and any(
        abs(hole.x - (37.0 + (front.make.thickness if front.place.overlay == "inset" else 0))) > EPS
        for s, f in serving if f.kind == "plate" for hole in f.holes
    ):  # fmt: skip
        yield f"{front.id}: plates off the front line"


def _same(one: list[tuple[float, float]], other: list[tuple[float, float]]) -> bool:
    return len(one) == len(other) and all(
        abs(a - c) <= EPS and abs(b - d) <= EPS for (a, b), (c, d) in zip(one, other, strict=True)
    )
