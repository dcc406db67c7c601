"""In which order the boxes of a wall are set.

It begins where nothing can give way later: in an inside corner; else at a tall box, whose side
both rows run against; else at an end that is a wall, a casing or a panel; else at the left. From
there each box follows the one before it. Tall boxes at which it begins come first, then what
hangs, while nothing stands in the way below, then what stands on the floor, at last what stands
on another box. Common practice, no source.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import inf
from typing import Literal

from jigs.given.walls import TOUCHING, neighbours
from jigs.given.wallspec import EndKind
from jigs.ground.geometry import HANDS, SLACK, Hand
from jigs.room.elevation import Elevation
from jigs.room.seen import Seen
from jigs.room.striking import boxes_of, carriers_of

BeginsAt = Literal["corner", "tall", "end", "left"]
"""What an order begins at, the first that there is."""
FAST: tuple[EndKind, ...] = ("wall", "casing", "panel")
"""What an end is that a run may begin at."""
Turn = Literal["tall", "hung", "floor", "stacked"]
"""The rounds of the order."""
TURNS: tuple[Turn, ...] = ("tall", "hung", "floor", "stacked")


@dataclass(frozen=True, slots=True, kw_only=True)
class Begin:
    """Where an order begins: at which end (None: on both sides of the boxes), and at which
    boxes, of a tall one."""

    at: BeginsAt
    hand: Hand | None = None
    boxes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class BoxInTurn:
    """A box in its turn."""

    number: int
    """From 1."""
    seen: Seen
    turn: Turn
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


def _turn(seen: Seen, begin: Begin, elevation: Elevation) -> Turn:
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
