"""Front sizes: what covers a box when its reveals and gaps are taken off.

Reveals run from a front's edge to its own box's outside edge, gaps between two fronts of one
box: "a sixteenth all round" is two different kitchens unless both are stated. Heights that are
not given share what is left by weight; a front of m modules is 32 m less the gap. Rounded fronts
stack from the bottom and leave the remainder to the top reveal; on wall boxes from the top, so
that tops line up.

>>> share_heights((None, None, None, None), (1, 1, 1, 1), space=774.7 - 2 * 1.6 - 3 * 3.2)
(190.475, 190.475, 190.475, 190.475)
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Literal

from jigs.geometry import SLACK
from jigs.grid import PITCH
from jigs.ids import name_leaves
from jigs.job import BoxSpec, FrontKind, FrontSpec, Hand, Reveal

TroubleKind = Literal[
    "no-room", "too-high", "uncovered", "too-wide", "too-narrow", "exchanged",
    "end-reveal", "side-reveal",
]  # fmt: skip

CROWN = 25.4
"""The most that may stay uncovered at a box's end: a crown or scribe takes 19 to 25 there; mm.
Common practice, no source."""
HANG = 25.4
"""How far a wall front may hang below its box: a finger pull takes 12 to 20; mm. Common
practice, no source."""
SAME_SIZE = 3.0
"""A size this near to the one wanted is that size, badly cut or measured; mm (derived: twice the
1.6 that is accepted in the trade)."""
WORTH_SAYING = 0.5
"""A reveal further than this from the one wanted is reported; mm."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Trouble:
    """Sizes that do not close. `front` None means the box as a whole; `size` is what there is
    and `allowed` what there may be, in mm."""

    kind: TroubleKind
    front: str | None
    size: float
    allowed: float


@dataclass(frozen=True, slots=True, kw_only=True)
class PlacedFront:
    """One front in its box, as seen from the room; a leaf of a pair is one front of kind `door`.

    `x`, `y`: its lower left corner from the box's. Gaps run to the neighbour or to the box's
    outside edge. Rows count from the top. mm.
    """

    spec: FrontSpec
    id: str
    kind: FrontKind
    hinged: Hand | None
    x: float
    y: float
    width: float
    height: float
    row: int
    rows: int
    gap_left: float
    gap_right: float
    gap_top: float
    gap_bottom: float

    @property
    def top(self) -> float:
        """Its top edge above the box's bottom end, mm."""
        return self.y + self.height


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """The fronts of one box from the top, openings among them. `remainder` is what the sizes
    leave over: the top reveal (of a wall box the bottom one) is that much larger; mm."""

    fronts: tuple[PlacedFront, ...]
    remainder: float = 0.0
    troubles: tuple[Trouble, ...] = ()


def round_down(size: float, increment: float | None) -> float:
    """Round a size down to the supplier's increment, if there is one; mm."""
    if increment is None:
        return size
    return math.floor(size / increment + SLACK) * increment


def single_width(box_width: float, side: float) -> float:
    """Give the width of a front that covers a box between two side reveals; mm."""
    return box_width - 2 * side


def leaf_width(box_width: float, side: float, between: float) -> float:
    """Give the width of one leaf of a pair; mm."""
    return (box_width - 2 * side - between) / 2


def module_height(modules: float, between: float) -> float:
    """Give the height of a front of so many 32 mm modules: 32 m less the gap; mm."""
    return PITCH * modules - between


def share_heights(
    given: Sequence[float | None],
    weights: Sequence[float],
    space: float,
    increment: float | None = None,
) -> tuple[float, ...]:
    """Give all heights of a stack in the order of stacking; mm.

    `space` is what all fronts have together. What the given heights leave is shared by weight;
    cumulative heights are rounded down, so that the stack loses less than one increment in all.
    Where nothing is left, the others get 0.
    """
    rest = max(0.0, space - sum(height for height in given if height is not None))
    total = sum(w for height, w in zip(given, weights, strict=True) if height is None)
    heights: list[float] = []
    exact = 0.0
    used = 0.0
    for height, weight in zip(given, weights, strict=True):
        if height is not None:
            heights.append(height)
            continue
        exact += rest * weight / total
        upto = round_down(exact, increment)
        heights.append(upto - used if increment is not None else rest * weight / total)
        used = upto
    return tuple(heights)


def place_fronts(
    box: BoxSpec, reveal: Reveal, *, side: float, increment: float | None = None
) -> Column:
    """Size and place the fronts of a box; `side` is the true thickness of its sides, mm.

    Given sizes are used as they are. Sizes that do not close come back as troubles beside a
    column that shows them.
    """
    if not box.fronts:
        return Column(fronts=())
    rows, exchanged = _undo_exchanges(box, reveal)
    gaps = reveal.between * (len(rows) - 1)
    space = box.height - reveal.top - reveal.bottom - gaps
    given = [_given_height(row, reveal.between) for row in rows]
    weights = [1.0 if row.share is None else row.share for row in rows]
    # Rounding counts from the end that the fronts stack from.
    order = 1 if box.kind == "wall" else -1
    heights = share_heights(given[::order], weights[::order], space, increment)[::order]
    remainder = space - sum(heights)
    if abs(remainder) < SLACK:
        remainder = 0.0
    troubles = [*exchanged, *_stack_troubles(box, reveal, given, remainder)]

    top_reveal = reveal.top + (0.0 if box.kind == "wall" else remainder)
    y = box.height - top_reveal
    placed: list[PlacedFront] = []
    for number, (spec, height) in enumerate(zip(rows, heights, strict=True), start=1):
        y -= height
        above = top_reveal if number == 1 else reveal.between
        last = number == len(rows)
        leaves = _place_row(
            box, spec, reveal, increment=increment, y=y, height=height, row=number, rows=len(rows),
            above=above, below=y if last else reveal.between,
        )  # fmt: skip
        placed.extend(leaves)
        if spec.kind != "opening":
            troubles.extend(_width_troubles(box, reveal, leaves, side))
        y -= reveal.between
    return Column(fronts=tuple(placed), remainder=remainder, troubles=tuple(troubles))


def _given_height(spec: FrontSpec, between: float) -> float | None:
    if spec.height is None and spec.modules is not None:
        return module_height(spec.modules, between)
    return spec.height


def _wanted_width(box: BoxSpec, spec: FrontSpec, reveal: Reveal) -> float:
    if spec.kind == "pair":
        return leaf_width(box.width, reveal.side, reveal.between)
    return single_width(box.width, reveal.side)


def _undo_exchanges(
    box: BoxSpec, reveal: Reveal
) -> tuple[tuple[FrontSpec, ...], tuple[Trouble, ...]]:
    """Find fronts that fit only with width and height exchanged, and exchange them.

    The others of the box are then laid out as if the slip had not been made.
    """
    rows: list[FrontSpec] = []
    troubles: list[Trouble] = []
    gaps = reveal.between * (len(box.fronts) - 1)
    space = box.height - reveal.top - reveal.bottom - gaps
    heights = [_given_height(spec, reveal.between) for spec in box.fronts]
    for index, spec in enumerate(box.fronts):
        others = heights[:index] + heights[index + 1 :]
        rest = space - sum(height for height in others if height is not None)
        if spec.width is not None and spec.height is not None and spec.kind != "opening":
            wanted = _wanted_width(box, spec, reveal)
            fits = abs(spec.width - wanted) <= SAME_SIZE
            turned = abs(spec.height - wanted) <= SAME_SIZE
            closes = None in others or abs(rest - spec.width) <= CROWN
            if turned and not fits and closes and spec.width <= rest + CROWN:
                names = name_leaves(spec.id) if spec.kind == "pair" else (spec.id,)
                troubles.extend(
                    Trouble(kind="exchanged", front=name, size=spec.width, allowed=wanted)
                    for name in names
                )
                spec = replace(spec, width=spec.height, height=spec.width)
        rows.append(spec)
    return tuple(rows), tuple(troubles)


def _stack_troubles(
    box: BoxSpec, reveal: Reveal, given: Sequence[float | None], remainder: float
) -> tuple[Trouble, ...]:
    wall = box.kind == "wall"
    end = (reveal.bottom if wall else reveal.top) + remainder
    wanted = reveal.bottom if wall else reveal.top
    kind: TroubleKind
    if None in given and sum(height or 0.0 for height in given) >= (
        box.height - reveal.top - reveal.bottom - reveal.between * (len(given) - 1) - SLACK
    ):
        kind = "no-room"
    elif end < (-HANG if wall else 0.0) - SLACK:
        kind = "too-high"
    elif end > max(CROWN, wanted) + SLACK:
        kind = "uncovered"
    elif abs(remainder) > WORTH_SAYING:
        kind = "end-reveal"
    else:
        return ()
    return (Trouble(kind=kind, front=None, size=end, allowed=wanted),)


def _place_row(
    box: BoxSpec,
    spec: FrontSpec,
    reveal: Reveal,
    *,
    increment: float | None,
    y: float,
    height: float,
    row: int,
    rows: int,
    above: float,
    below: float,
) -> tuple[PlacedFront, ...]:
    width = spec.width
    if width is None:
        width = round_down(_wanted_width(box, spec, reveal), increment)
    base = PlacedFront(
        spec=spec, id=spec.id, kind=spec.kind, hinged=spec.hinged,
        x=(box.width - width) / 2, y=y, width=width, height=height, row=row, rows=rows,
        gap_left=(box.width - width) / 2, gap_right=(box.width - width) / 2,
        gap_top=above, gap_bottom=below,
    )  # fmt: skip
    if spec.kind != "pair":
        return (base,)
    left, right = name_leaves(spec.id)
    outer = (box.width - 2 * width - reveal.between) / 2
    return (
        replace(
            base, id=left, kind="door", hinged="left", x=outer,
            gap_left=outer, gap_right=reveal.between,
        ),
        replace(
            base, id=right, kind="door", hinged="right", x=outer + width + reveal.between,
            gap_left=reveal.between, gap_right=outer,
        ),
    )  # fmt: skip


def _width_troubles(
    box: BoxSpec, reveal: Reveal, leaves: tuple[PlacedFront, ...], side: float
) -> tuple[Trouble, ...]:
    outer = leaves[0].gap_left
    allowed = _wanted_width(box, leaves[0].spec, reveal)
    kind: TroubleKind
    if outer < -SLACK:
        kind = "too-wide"
    elif outer > max(side, reveal.side) + SLACK:
        kind = "too-narrow"
    elif abs(outer - reveal.side) > WORTH_SAYING:
        kind = "side-reveal"
    else:
        return ()
    return tuple(
        Trouble(kind=kind, front=leaf.id, size=leaf.width, allowed=allowed) for leaf in leaves
    )
