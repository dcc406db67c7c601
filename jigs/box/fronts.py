"""Front sizes: what covers a box when its reveals and gaps are taken off.

Reveals run from a front's edge to its own box's outside edge, gaps between two fronts of one
box: "a sixteenth all round" is two different kitchens unless both are stated. Heights that are
not given share what is left by weight; a front of m modules is 32 m less the gap. Rounded fronts
stack from the bottom and leave the remainder to the top reveal; on wall boxes from the top, so
that tops line up.

>>> share_heights((None, None, None, None), (1, 1, 1, 1), space=774.7 - 2 * 1.6 - 3 * 3.2)
(190.475, 190.475, 190.475, 190.475)
"""

from collections.abc import Mapping, Sequence
from typing import Literal

from msgspec import Struct
from msgspec.structs import replace

from jigs.box.carcass import Frame
from jigs.box.parts import FrontPlace, Gaps
from jigs.given.ids import name_leaves
from jigs.given.job import FrontKind, FrontSpec, Measures, Overlay
from jigs.ground.geometry import SLACK, Hand, round_down
from jigs.ground.grid import PITCH
from jigs.ground.lengths import MM_PER_INCH

TroubleKind = Literal[
    "no-room", "too-high", "uncovered", "too-wide", "too-narrow", "exchanged",
    "exchanged-perhaps",
    "end-reveal", "side-reveal", "rounded-away",
]  # fmt: skip

CROWN = MM_PER_INCH
"""The most that may stay uncovered at a box's end: a crown or scribe takes 19 to 25 there; mm.
Common practice, no source."""
HANG = MM_PER_INCH
"""How far a wall front may hang below its box: a finger pull takes 12 to 20; mm. Common
practice, no source."""
SAME_SIZE = 3.0
"""A size this near to the one wanted is that size, badly cut or measured; mm (derived: twice the
1.6 that is accepted in the trade)."""
WORTH_SAYING = 0.5
"""A reveal further than this from the one wanted is reported; mm."""


class Trouble(Struct, frozen=True, kw_only=True):
    """Sizes that do not close. `front` None means the box as a whole; `size` is what there is
    and `allowed` what there may be, in mm."""

    kind: TroubleKind
    front: str | None
    size: float
    allowed: float


class PlacedFront(Struct, frozen=True, kw_only=True):
    """One front in its box, as seen from the room; a leaf of a pair is one front of kind `door`.

    `lap_left`, `lap_right`: how far it covers the boards beside it, below 0 where it stands
    inside them. `shared`: the sides on which that board is a partition. mm.
    """

    spec: FrontSpec
    id: str
    kind: FrontKind
    hinged: Hand | None
    width: float
    height: float
    place: FrontPlace
    gaps: Gaps
    lap_left: float = 0.0
    lap_right: float = 0.0
    shared: tuple[Hand, ...] = ()

    @property
    def top(self) -> float:
        """Its top edge above the box's bottom end, mm."""
        return self.place.y + self.height

    def set_back(self, thickness: float) -> float:
        """Give how far all that holds it stands further back in its box; mm.

        The hardware of an inset front of this thickness starts behind it.
        """
        return thickness if self.place.overlay == "inset" else 0.0

    @property
    def lap(self) -> float:
        """How far it covers the board it hangs on; mm."""
        return self.lap_left if self.hinged == "left" else self.lap_right

    @property
    def hinge_gap(self) -> float:
        """The reveal at a door's hinge edge, to its box's outside edge; mm."""
        return self.gaps.left if self.hinged == "left" else self.gaps.right

    @property
    def hung(self) -> Overlay:
        """The kind of hinge it hangs on: half where two fronts share a board."""
        return (
            "half"
            if self.place.overlay == "full" and self.hinged in self.shared
            else self.place.overlay
        )


class FrontStack(Struct, frozen=True, kw_only=True):
    """The fronts of one box from the top, openings among them. `remainder` is what the sizes
    leave over: the top reveal (of a wall box the bottom one) is that much larger; mm."""

    fronts: tuple[PlacedFront, ...]
    remainder: float = 0.0
    troubles: tuple[Trouble, ...] = ()


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


def place_stack(
    specs: tuple[FrontSpec, ...],
    frame: Frame,
    increment: float | None = None,
    across: Mapping[str, Frame] | None = None,
) -> FrontStack:
    """Size and place a stack of fronts, from the top.

    `across` gives, by ID, the frames of fronts that stand across other columns as well.

    Given sizes are used as they are. Sizes that do not close come back as troubles beside a
    column that shows them.
    """
    if not specs:
        return FrontStack(fronts=())
    frames = {spec.id: frame for spec in specs} | dict(across or {})
    rows, exchanged = _undo_exchanges(specs, frame, frames)
    gaps = frame.gaps(rows)
    space = _space(rows, frame)
    given = [_given_height(row, frame.between) for row in rows]
    weights = [1.0 if row.portion.share is None else row.portion.share for row in rows]
    # Rounding counts from the end that the fronts stack from.
    order = 1 if frame.from_top else -1
    heights = share_heights(given[::order], weights[::order], space, increment)[::order]
    remainder = space - sum(heights)
    if abs(remainder) < SLACK:
        remainder = 0.0
    stacked = _stack_troubles(rows, frame, given, remainder)
    lost = _lost_by_rounding(rows, given, heights, increment)
    troubles = [*exchanged, *(lost if lost and not _no_room(stacked) else stacked)]

    first, _ = frame.ends(rows)
    above = [first + (0.0 if frame.from_top else remainder), *gaps]
    y = frame.top
    placed: list[PlacedFront] = []
    for number, (spec, height) in enumerate(zip(rows, heights, strict=True)):
        y -= above[number] + height
        leaves = _place_row(
            spec, frames[spec.id], increment=increment, y=y, height=height, row=number + 1,
            rows=len(rows), above=above[number],
            below=gaps[number] if number < len(gaps) else y - frame.bottom,
        )  # fmt: skip
        placed.extend(leaves)
        if spec.kind != "opening":
            troubles.extend(_width_troubles(frames[spec.id], leaves))
    return FrontStack(fronts=tuple(placed), remainder=remainder, troubles=tuple(troubles))


def _space(rows: tuple[FrontSpec, ...], frame: Frame) -> float:
    """What all fronts of a stack have together; mm."""
    return frame.top - frame.bottom - sum(frame.ends(rows)) - sum(frame.gaps(rows))


def _given_height(spec: FrontSpec, between: float) -> float | None:
    if spec.height is None and spec.portion.modules is not None:
        return module_height(spec.portion.modules, between)
    return spec.height


def _wanted_width(spec: FrontSpec, frame: Frame) -> float:
    clear = frame.clear_width(spec)
    return (clear - frame.between) / 2 if spec.kind == "pair" else clear


def _undo_exchanges(
    specs: tuple[FrontSpec, ...], frame: Frame, frames: Mapping[str, Frame]
) -> tuple[tuple[FrontSpec, ...], tuple[Trouble, ...]]:
    """Find fronts that fit only with width and height exchanged, and exchange them.

    The others of the stack are then laid out as if the slip had not been made.
    """
    rows: list[FrontSpec] = []
    troubles: list[Trouble] = []
    space = _space(specs, frame)
    heights = [_given_height(spec, frame.between) for spec in specs]
    for index, spec in enumerate(specs):
        others = heights[:index] + heights[index + 1 :]
        rest = space - sum(height for height in others if height is not None)
        if spec.width is not None and spec.height is not None and spec.kind != "opening":
            wanted = _wanted_width(spec, frames[spec.id])
            fits = abs(spec.width - wanted) <= SAME_SIZE
            turned = abs(spec.height - wanted) <= SAME_SIZE
            closes = None in others or abs(rest - spec.width) <= CROWN
            names = name_leaves(spec.id) if spec.kind == "pair" else (spec.id,)
            if fits and _is_closer_turned(spec, wanted, None if None in others else rest):
                troubles.extend(
                    Trouble(kind="exchanged-perhaps", front=name, size=spec.width, allowed=wanted)
                    for name in names
                )
            if turned and not fits and closes and spec.width <= rest + CROWN:
                troubles.extend(
                    Trouble(kind="exchanged", front=name, size=spec.width, allowed=wanted)
                    for name in names
                )
                spec = replace(spec, width=spec.height, height=spec.width)
        rows.append(spec)
    return tuple(rows), tuple(troubles)


def _is_closer_turned(spec: FrontSpec, width: float, height: float | None) -> bool:
    """Tell whether a front of nearly the size wanted has it exactly with its sizes exchanged;
    `height` None where no one height is wanted. mm."""
    given = (spec.width or 0.0, spec.height or 0.0)
    straight, turned = [given[0] - width], [given[1] - width]
    if height is not None:
        straight.append(given[1] - height)
        turned.append(given[0] - height)
    off = max(map(abs, turned))
    return off <= WORTH_SAYING and max(map(abs, straight)) > off + WORTH_SAYING


def _stack_troubles(
    rows: tuple[FrontSpec, ...], frame: Frame, given: Sequence[float | None], remainder: float
) -> tuple[Trouble, ...]:
    first, last = frame.ends(rows)
    wanted = last if frame.from_top else first
    end = wanted + remainder
    hangs = frame.from_top and frame.overlay != "inset"
    kind: TroubleKind
    if None in given and sum(height or 0.0 for height in given) >= _space(rows, frame) - SLACK:
        kind = "no-room"
    elif end < (-HANG if hangs else 0.0) - SLACK:
        kind = "too-high"
    elif end > max(CROWN, wanted) + SLACK:
        kind = "uncovered"
    elif abs(remainder) > WORTH_SAYING:
        kind = "end-reveal"
    else:
        return ()
    return (Trouble(kind=kind, front=None, size=end, allowed=wanted),)


def _no_room(troubles: Sequence[Trouble]) -> bool:
    return any(trouble.kind == "no-room" for trouble in troubles)


def _lost_by_rounding(
    rows: tuple[FrontSpec, ...],
    given: Sequence[float | None],
    heights: Sequence[float],
    increment: float | None,
) -> tuple[Trouble, ...]:
    """Find fronts of whose height rounding down to the increment leaves nothing."""
    if increment is None:
        return ()
    return tuple(
        Trouble(kind="rounded-away", front=name, size=height, allowed=increment)
        for spec, wanted, height in zip(rows, given, heights, strict=True)
        if wanted is None and height <= SLACK and spec.kind != "opening"
        for name in (name_leaves(spec.id) if spec.kind == "pair" else (spec.id,))
    )


def _place_row(
    spec: FrontSpec,
    frame: Frame,
    *,
    increment: float | None,
    y: float,
    height: float,
    row: int,
    rows: int,
    above: float,
    below: float,
) -> tuple[PlacedFront, ...]:
    wanted = _wanted_width(spec, frame)
    width = round_down(wanted, increment) if spec.width is None else spec.width
    pair = spec.kind == "pair"
    # What a narrower front leaves is shared by both reveals.
    spare = (wanted - width) if pair else (wanted - width) / 2
    left = frame.left_reveal(spec) + spare
    right = frame.right_reveal(spec) + spare
    x = frame.left + left
    end = frame.right - right
    place = FrontPlace(
        x=x, y=y, row=row, rows=rows, column=spec.column, span=spec.span,
        overlay=spec.overlay or frame.overlay,
    )  # fmt: skip
    base = PlacedFront(
        spec=spec, id=spec.id, kind=spec.kind, hinged=spec.hinged,
        width=width, height=height, place=place,
        gaps=Gaps(left=left, right=right, top=above, bottom=below),
        lap_left=frame.inner_left - x, lap_right=end - frame.inner_right, shared=frame.shared,
    )  # fmt: skip
    if not pair:
        return (base,)
    (left_id, left_spec), (right_id, right_spec) = as_hung(spec)
    return (
        replace(base, id=left_id, spec=left_spec, kind="door", hinged="left",
                gaps=replace(base.gaps, right=frame.between)),
        replace(base, id=right_id, spec=right_spec, kind="door", hinged="right",
                place=replace(place, x=end - width), gaps=replace(base.gaps, left=frame.between)),
    )  # fmt: skip


def as_hung(spec: FrontSpec) -> tuple[tuple[str, FrontSpec], ...]:
    """Give what was stated of a front by its ID; of a pair, of its leaves, left and right."""
    if spec.kind != "pair":
        return ((spec.id, spec),)
    leaves = spec.leaves or (Measures(), Measures())
    return tuple(
        (name, leaf.apply(spec)) for name, leaf in zip(name_leaves(spec.id), leaves, strict=True)
    )


def _width_troubles(frame: Frame, leaves: tuple[PlacedFront, ...]) -> tuple[Trouble, ...]:
    spec = leaves[0].spec
    allowed = _wanted_width(spec, frame)
    left, right = leaves[0].gaps.left, leaves[-1].gaps.right
    wide = CROWN if frame.overlay == "inset" else 0.0
    cover_left = max(frame.inner_left - frame.left + wide, frame.left_reveal(spec))
    cover_right = max(frame.right - frame.inner_right + wide, frame.right_reveal(spec))
    kind: TroubleKind
    # Below 0 it reaches over the edge of a covered end panel.
    least_left, least_right = (
        min(reveal, 0.0) for reveal in (frame.left_reveal(spec), frame.right_reveal(spec))
    )
    if left < least_left - SLACK or right < least_right - SLACK:
        kind = "too-wide"
    elif left > cover_left + SLACK or right > cover_right + SLACK:
        kind = "too-narrow"
    elif abs(left - frame.left_reveal(spec)) > WORTH_SAYING:
        kind = "side-reveal"
    else:
        return ()
    return tuple(
        Trouble(kind=kind, front=leaf.id, size=leaf.width, allowed=allowed) for leaf in leaves
    )
