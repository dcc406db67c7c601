"""How the boxes of each wall are set: lines, order, sums, the pieces that close a run; and what
comes into and onto each box once it stands.

The order begins where nothing can give way later: in an inside corner; else at a tall box, whose
side both rows run against; else at an end that is a wall, a casing or a panel; else at the left.
From there each box follows the one before it. Tall boxes at which it begins come first, then what
hangs, while nothing stands in the way below, then what stands on the floor, at last what stands
on another box.

Drawer boxes and rollouts come in from below, so that none is carried over another; fronts from
below too, each on shims of the gap to the one under it. What is held back has no place here yet.
All common practice, no source.
"""

from collections.abc import Mapping, Sequence
from math import inf
from typing import Literal

from msgspec import Struct

from jigs.box.parts import Front, Layout
from jigs.cutlist.cutlist import cut_list
from jigs.cutlist.piece import Piece
from jigs.given.walls import NO_CORNER, TOUCHING, CornerLine, neighbours
from jigs.given.wallspec import EndKind
from jigs.ground.geometry import HANDS, SLACK, Hand
from jigs.ground.grouped import grouped
from jigs.room.elevation import Elevation, see_walls
from jigs.room.seen import Seen
from jigs.room.wallmeasures import (
    Nailed,
    RowAlong,
    Stretch,
    Strike,
    boxes_of,
    carriers_of,
    find_nailed,
    find_strikes,
    rows_along,
    spaces_of,
)

BeginsAt = Literal["corner", "tall", "end", "left"]
"""What an order begins at, the first that there is."""
FAST: tuple[EndKind, ...] = ("wall", "casing", "panel")
"""What an end is that a run may begin at."""
Round = Literal["tall", "hung", "floor", "stacked"]
"""The rounds of the order."""
TURNS: tuple[Round, ...] = ("tall", "hung", "floor", "stacked")


class Begin(Struct, frozen=True, kw_only=True):
    """Where an order begins: at which end (None: on both sides of the boxes), and at which
    boxes, of a tall one."""

    at: BeginsAt
    hand: Hand | None = None
    boxes: tuple[str, ...] = ()


class BoxInTurn(Struct, frozen=True, kw_only=True):
    """A box in its turn."""

    number: int
    """From 1."""
    seen: Seen
    turn: Round
    beside: tuple[str, ...]
    """The boxes set before, that it is clamped to."""

    @property
    def heavy(self) -> bool:
        """Whether two people lift it."""
        return self.seen.hangs or self.seen.box.kind == "tall"


def find_begin(elevation: Elevation) -> Begin | None:
    """Give where a wall's order begins; None where nobody said where its boxes stand."""
    boxes = boxes_of(elevation)
    if not boxes or not elevation.placed:
        return None
    ends: Mapping[Hand, EndKind | None] = {"left": elevation.left, "right": elevation.right}
    for hand in HANDS:
        if ends[hand] == "corner":
            return Begin(at="corner", hand=hand)
    if tall := _tall_group(boxes, ends):
        return Begin(at="tall", boxes=tuple(seen.box.id for seen in tall))
    for hand in HANDS:
        if ends[hand] in FAST:
            return Begin(at="end", hand=hand)
    return Begin(at="left", hand="left")


def _tall_group(
    boxes: Sequence[Seen], ends: Mapping[Hand, EndKind | None]
) -> tuple[Seen, ...]:  # fmt: skip
    """Give the tall boxes that stand side by side, of several groups the one at a fast end."""
    groups: list[list[Seen]] = []
    for seen in boxes:
        if seen.box.kind != "tall" or seen.hangs:
            continue
        if groups and abs(seen.x - groups[-1][-1].right) <= TOUCHING:
            groups[-1].append(seen)
        else:
            groups.append([seen])
    if not groups:
        return ()
    last = groups[-1][-1].right >= max(seen.right for seen in boxes) - TOUCHING
    at_right = ends["left"] not in FAST and ends["right"] in FAST and last
    return tuple(groups[-1 if at_right else 0])


def order_boxes(elevation: Elevation, begin: Begin) -> tuple[BoxInTurn, ...]:
    """Give the boxes of a wall in the order in which they are set."""
    boxes = boxes_of(elevation)
    first = [seen for seen in boxes if seen.box.id in begin.boxes]
    start = -inf if begin.hand == "left" else inf
    if first:
        start = min(seen.x for seen in first)

    turns = {seen.box.id: _turn(seen, begin, elevation) for seen in boxes}

    def rank(seen: Seen) -> tuple[int, int, float, float]:
        """Give its round; in it, to the right of the start rightwards, then leftwards."""
        turn = TURNS.index(turns[seen.box.id])
        if seen.x >= start - SLACK:
            return turn, 0, seen.x, seen.bottom
        return turn, 1, -seen.right, seen.bottom

    touching = _touching(elevation)
    ranked = sorted(boxes, key=rank)
    number_of = {seen.box.id: number for number, seen in enumerate(ranked, start=1)}
    return tuple(
        BoxInTurn(
            number=number, seen=seen, turn=turns[seen.box.id],
            beside=tuple(
                sorted(
                    (name for name in touching[seen.box.id] if number_of[name] < number),
                    key=lambda name: number_of[name],
                )
            ),
        )
        for number, seen in enumerate(ranked, start=1)
    )  # fmt: skip


def _turn(seen: Seen, begin: Begin, elevation: Elevation) -> Round:
    if seen.box.id in begin.boxes:
        return "tall"
    if carriers_of(seen, elevation):
        return "stacked"
    return "hung" if seen.hangs else "floor"


def _touching(elevation: Elevation) -> dict[str, set[str]]:
    """Give, by ID, the boxes that touch another: side by side, or one upon the other."""
    boxes = boxes_of(elevation)
    found: dict[str, set[str]] = {seen.box.id: set() for seen in boxes}
    beside = neighbours([seen.box for seen in boxes], {seen.box.id: seen.x for seen in boxes})
    pairs = [(one.id, other.id) for one, other in beside]
    pairs += [(s.box.id, each.box.id) for s in boxes for each in carriers_of(s, elevation)]
    for one, other in pairs:
        found[one].add(other)
        found[other].add(one)
    return found


class Hanging(Struct, frozen=True, kw_only=True):
    """What is to be known of one wall before its boxes are set."""

    elevation: Elevation
    strikes: tuple[Strike, ...]
    begin: Begin | None
    """None where nobody said where the boxes stand."""
    order: tuple[BoxInTurn, ...]
    rows: tuple[RowAlong, ...]
    spaces: tuple[Stretch, ...]
    """What is left open for appliances."""
    nailed: tuple[Nailed, ...]
    platforms: tuple[Piece, ...]
    """The fronts of the toe platforms."""
    scribed: tuple[Piece, ...]
    """Fillers, and end panels with wood to spare at the wall."""

    @property
    def box_ids(self) -> frozenset[str]:
        """The IDs of all that stands or hangs there."""
        return frozenset(seen.box.id for seen in self.elevation.boxes)

    @property
    def measured_from(self) -> Hand:
        """The end of the wall that places are measured from: the one at which the order begins."""
        at_right = self.begin is not None and self.begin.hand == "right"
        return "right" if at_right and self.rows else "left"

    @property
    def corner(self) -> CornerLine | None:
        """The lines that places are measured from, at an inside corner; None at another end, and
        where the other wall has nothing that says where they lie."""
        return dict(self.elevation.corners).get(self.measured_from)

    def span_of(self, start: float, end: float, *, hung: bool = False) -> tuple[float, float]:
        """Give a stretch of the wall as it is measured from that end; mm. What is `hung` counts
        from its own line."""
        line = (self.corner or NO_CORNER).beyond
        if self.measured_from == "left":
            own = line if hung else 0.0
            return start + own, end + own
        row = self.rows[0]
        closed = max(each.end for each in row.stretches if each.stands != "open")
        base = closed - line if row.hangs else closed
        own = base + line if hung else base
        return own - end, own - start

    def place_of(self, seen: Seen) -> tuple[float, float]:
        """Give from where to where a box reaches; mm."""
        return self.span_of(seen.x, seen.right, hung=seen.box.kind == "wall")


def plan_hanging(layout: Layout) -> tuple[Hanging, ...]:
    """Give each wall of a job on which a box is set, in the job's order."""
    pieces = cut_list(layout)
    return tuple(_plan(elevation, pieces) for elevation in see_walls(layout) if boxes_of(elevation))


def _plan(elevation: Elevation, pieces: tuple[Piece, ...]) -> Hanging:
    begin = find_begin(elevation)
    own = [piece for piece in pieces if elevation.placed and piece.wall == elevation.wall]
    return Hanging(
        elevation=elevation,
        strikes=find_strikes(elevation),
        begin=begin,
        order=order_boxes(elevation, begin) if begin else (),
        rows=rows_along(elevation),
        spaces=spaces_of(elevation) if begin else (),
        nailed=find_nailed(elevation, (p for p in pieces if p.kind == "nailer")),
        platforms=tuple(piece for piece in own if piece.kind == "toe-front"),
        scribed=tuple(
            piece
            for piece in own
            if piece.kind == "filler" or (piece.kind == "end-panel" and piece.spare)
        ),
    )


class Shimmed(Struct, frozen=True, kw_only=True):
    """A front, and the gap under it to another one; None where none is below. mm."""

    id: str
    gap: float | None


class Furnished(Struct, frozen=True, kw_only=True):
    """What a box gets, in the order of the work; all by ID."""

    box: str
    drawers: tuple[str, ...]
    """Drawer boxes and rollouts, from below."""
    doors: tuple[str, ...]
    """Doors and lifts, from the left and from above."""
    fronts: tuple[tuple[Shimmed, ...], ...]
    """The other fronts of each column, from below."""
    held: tuple[str, ...]


def furnish_boxes(layout: Layout, hanging: Hanging) -> tuple[Furnished, ...]:
    """Give what each box of a wall gets, those alone that get something, in the order in which
    they are set; an appliance's panel last."""
    fronts = grouped((front.box, front) for front in layout.fronts)
    order = [setting.seen for setting in hanging.order]
    turned = {seen.box.id for seen in order}
    order += [seen for seen in hanging.elevation.boxes if seen.box.id not in turned]
    made = (_furnish(layout, seen, fronts.get(seen.box.id, ())) for seen in order)
    return tuple(each for each in made if each.drawers or each.doors or each.fronts or each.held)


def _furnish(layout: Layout, seen: Seen, fronts: Sequence[Front]) -> Furnished:
    name = seen.box.id
    ready = [front for front in fronts if not front.withheld]
    runners = [(front.place.y, front.drawer.id) for front in ready if front.drawer is not None]
    rollouts = [each for each in layout.rollouts if each.box == name]
    runners += [(each.y, each.id) for each in rollouts if not each.withheld]
    doors = [front for front in ready if front.kind in ("door", "lift")]
    others = [front for front in ready if front.kind not in ("door", "lift")]
    held = [front.id for front in fronts if front.withheld]
    held += [each.id for each in rollouts if each.withheld]
    return Furnished(
        box=name,
        drawers=tuple(id for _, id in sorted(runners)),
        doors=tuple(f.id for f in sorted(doors, key=lambda f: (f.place.x, -f.place.y))),
        fronts=tuple(
            tuple(_shimmed(front, fronts) for front in sorted(column, key=lambda f: f.place.y))
            for _, column in sorted(grouped((f.place.column, f) for f in others).items())
        ),
        held=tuple(held),
    )


def _shimmed(front: Front, fronts: Sequence[Front]) -> Shimmed:
    """Give a front with its gap to a front below it."""
    under = [
        front.place.y - other.place.y - other.height
        for other in fronts
        if other.place.y + other.height <= front.place.y
        and other.place.x < front.place.x + front.width
        and front.place.x < other.place.x + other.width
    ]
    return Shimmed(id=front.id, gap=min(under, default=None))
