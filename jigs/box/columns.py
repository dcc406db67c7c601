"""The columns of a box: what partitions leave between them, and the fronts before each.

Widths are clear openings between the boards, given or shared by weight. A front that spans
columns stands above or below their own fronts; a drawer or an opening across columns ends the
partition at a fixed shelf (a divider of the sides' board), whose upper face is level with the
bottom edge of the front above it (common practice, no source), or lower by what keeps it out of
the way of that front's slides.

>>> share_widths((ColumnSpec(width=300.0), ColumnSpec(share=2), ColumnSpec()), 900.0)
(300.0, 400.0, 200.0)
"""

from collections.abc import Mapping, Sequence

from msgspec import Struct
from msgspec.structs import replace

from jigs.box.carcass import Bay, Carcass, frame_of, name_partition, name_side
from jigs.box.fronts import FrontStack, PlacedFront, place_stack
from jigs.box.parts import Gaps
from jigs.given.job import BoxSpec, ColumnSpec, Job, Reveal
from jigs.ground.geometry import SLACK, Hand

THROUGH = ("drawer", "pullout", "opening")
"""What stands across columns and leaves no room for the partition behind it."""
ROUNDED = 5.0
"""Fronts before one column begin no further apart than this, rounded as they are; mm."""
SPARE = 0.5
"""Widths that miss the box by no more than this are its width; mm."""


class Columns(Struct, frozen=True, kw_only=True):
    """The columns of a box with their fronts; mm.

    `stacks`: the fronts of each column, those across several in each of them. `seen`: by front
    ID, the box as its front sees it. `partitions`: lower and upper end of each partition.
    `spare`: what given widths leave of the box, below 0 where they overrun it. `uneven`: fronts
    across columns that would stand at different heights in them.
    """

    carcasses: tuple[Carcass, ...]
    stacks: tuple[FrontStack, ...]
    fronts: tuple[PlacedFront, ...]
    seen: Mapping[str, Carcass]
    partitions: tuple[tuple[float, float], ...]
    spare: float
    uneven: tuple[str, ...]


def share_widths(columns: Sequence[ColumnSpec], space: float) -> tuple[float, ...]:
    """Give the clear widths of the columns; what the given ones leave is shared by weight; mm."""
    rest = max(0.0, space - sum(column.width or 0.0 for column in columns))
    total = sum(column.share for column in columns if column.width is None)
    return tuple(
        rest * column.share / total if column.width is None else column.width for column in columns
    )


def find_bays(box: BoxSpec, side: float, partition: float) -> tuple[tuple[Bay, ...], float]:
    """Give the columns of a box and what their given widths leave over; mm."""
    specs = box.columns or (ColumnSpec(),)
    space = box.width - 2 * side - partition * (len(specs) - 1)
    widths = share_widths(specs, space)
    left = side
    bays = []
    for number, width in enumerate(widths, start=1):
        last = number == len(specs)
        # The last one ends at the side, so that no rounding adds up.
        right = box.width - side if last and abs(sum(widths) - space) <= SPARE else left + width
        before = name_side(box.id, "left") if number == 1 else name_partition(box.id, number - 1)
        after = name_side(box.id, "right") if last else name_partition(box.id, number)
        shared: tuple[Hand, ...] = ("left",) if number > 1 else ()
        bays.append(
            Bay(
                first=number,
                last=number,
                left=left,
                right=right,
                boards=(before, after),
                shared=shared if last else (*shared, "right"),
            )
        )
        left = right + partition
    return tuple(bays), space - sum(spec.width or 0.0 for spec in specs)


def join_bays(bays: Sequence[Bay], first: int, last: int) -> Bay:
    """Give several columns side by side as one; columns are counted from 1."""
    one, other = bays[first - 1], bays[last - 1]
    shared: tuple[Hand, ...] = tuple(hand for hand in one.shared if hand == "left")
    return Bay(
        first=first,
        last=last,
        left=one.left,
        right=other.right,
        boards=(one.boards[0], other.boards[1]),
        shared=(*shared, *(hand for hand in other.shared if hand == "right")),
    )


def beside_blind(whole: Carcass) -> Carcass:
    """Give a box as the fronts beside its blind panel see it, if it has one."""
    box = whole.box
    if box.blind is None:
        return whole
    left, right = whole.side, box.width - whole.side
    if box.blind.hand == "left":
        left = box.blind.reach
    else:
        right = box.width - box.blind.reach
    return replace(whole, bay=Bay(first=1, last=1, left=left, right=right, boards=whole.boards))


def place_columns(job: Job, box: BoxSpec) -> Columns:
    """Size and place all fronts of a box, column by column."""
    material = job.material
    bays, spare = find_bays(box, material.side, material.partition_board)
    whole = Carcass(
        box=box, side=material.side, back=material.back, partition=material.partition_board
    )

    def seen_from(first: int, last: int) -> Carcass:
        if len(bays) == 1:
            return beside_blind(whole)
        return replace(whole, bay=join_bays(bays, first, last))

    stacks = []
    for bay in bays:
        specs = tuple(f for f in box.fronts if f.column <= bay.first < f.column + f.span)
        frames = {
            (f.column, f.span): frame_of(
                seen_from(f.column, f.column + f.span - 1), job.reveal, box.overlay
            )
            for f in specs
        }
        own = frames.get((bay.first, 1)) or frame_of(
            seen_from(bay.first, bay.first), job.reveal, box.overlay
        )
        stacks.append(
            place_stack(specs, own, job.increment, {f.id: frames[f.column, f.span] for f in specs})
        )
    fronts: dict[str, PlacedFront] = {}
    uneven: list[str] = []
    for stack in stacks:
        for front in stack.fronts:
            known = fronts.setdefault(front.id, front)
            if (
                abs(known.place.y - front.place.y) > SLACK
                or abs(known.height - front.height) > SLACK
            ):
                uneven.append(front.id)
    if len(bays) > 1:
        gaps = _meet_neighbours(fronts)
        fronts = {name: replace(front, gaps=gaps[name]) for name, front in fronts.items()}
        stacks = [
            replace(
                stack,
                fronts=tuple(
                    replace(
                        f,
                        gaps=replace(f.gaps, left=gaps[f.id].left, right=gaps[f.id].right),
                    )
                    for f in stack.fronts
                ),
            )
            for stack in stacks
        ]
    partitions, dividers = _part(stacks, whole, job.reveal)
    shelves = [
        (
            *found,
            *shelves_of_openings(stacks[number - 1], material.side),
            *_fixed_shelves(box, material.side, number),
        )
        for number, found in enumerate(dividers, start=1)
    ]
    carcasses = tuple(
        replace(whole if len(bays) == 1 else seen_from(number, number), shelves=shelves[number - 1])
        for number in range(1, len(bays) + 1)
    )
    return Columns(
        carcasses=carcasses,
        stacks=tuple(stacks),
        fronts=tuple(fronts.values()),
        seen={
            name: replace(
                seen_from(front.place.column, front.place.last_column),
                shelves=tuple(
                    dict.fromkeys(
                        shelf
                        for number in range(front.place.column, front.place.last_column + 1)
                        for shelf in shelves[number - 1]
                    )
                ),
            )
            for name, front in fronts.items()
        },
        partitions=partitions,
        spare=spare,
        uneven=tuple(dict.fromkeys(uneven)),
    )


def reveal_under(lowest: PlacedFront, side: float, reveal: Reveal) -> float:
    """Give the reveal below the lowest front of a column, from the box's bottom end; mm.

    The drawers of the column all stand as high above their own fronts as the lowest one does.
    """
    own = lowest.spec.reveals.bottom
    if lowest.place.overlay == "inset":
        return side + (reveal.inset if own is None else own)
    return reveal.bottom if own is None else own


def shelves_of_openings(column: FrontStack, side: float) -> tuple[tuple[float, float], ...]:
    """Give the lower and upper face of the fixed shelf under each opening of a column; mm.

    An opening stands on a shelf of the sides' board, level with its bottom edge, unless it is
    the lowest and stands on the bottom panel. Common practice, no source.
    """
    return tuple(
        (front.place.y - side, front.place.y)
        for front in column.fronts
        if front.kind == "opening" and front.place.row < front.place.rows and front.place.span == 1
    )


def _fixed_shelves(box: BoxSpec, thickness: float, column: int) -> tuple[tuple[float, float], ...]:
    """Give the lower and upper faces of the fixed shelves that the job states in a column."""
    return tuple(
        (shelf.at - thickness, shelf.at)
        for shelf in box.shelves
        if shelf.at is not None and shelf.column in (None, column)
    )


def _meet_neighbours(fronts: Mapping[str, PlacedFront]) -> dict[str, Gaps]:
    """Give fronts' gaps, over partitions as they leave them to those beside: each front was
    rounded for itself. Of several beside a front the nearest counts."""
    made = {name: front.gaps for name, front in fronts.items()}
    hung = [front for front in fronts.values() if front.kind != "opening"]
    for one in hung:
        beside = [
            other
            for other in hung
            if other.place.column == one.place.last_column + 1
            and other.place.y < one.top - SLACK
            and one.place.y < other.top - SLACK
        ]
        # Of a pair the leaf that stands at the partition.
        near = min((other.place.x for other in beside), default=None)
        last = all(
            one.place.x >= f.place.x - SLACK
            for f in hung
            if (f.place.column, f.place.row) == (one.place.column, one.place.row)
        )
        if near is None or not last:
            continue
        made[one.id] = replace(made[one.id], right=near - one.place.x - one.width)
        for other in beside:
            if abs(other.place.x - near) <= ROUNDED:
                gap = other.place.x - one.place.x - one.width
                known = made[other.id].left
                fresh = known == other.gaps.left
                made[other.id] = replace(made[other.id], left=gap if fresh else min(gap, known))
    return made


def _part(
    stacks: Sequence[FrontStack], whole: Carcass, reveal: Reveal
) -> tuple[tuple[tuple[float, float], ...], list[tuple[tuple[float, float], ...]]]:
    """Give the ends of each partition, and each column's fixed shelves."""
    count = len(stacks)
    partitions = [(whole.floor, whole.flat_ceiling)] * (count - 1)
    shelves: list[list[tuple[float, float]]] = [[] for _ in range(count)]
    for number, stack in enumerate(stacks, start=1):
        for front in stack.fronts:
            if front.place.span == 1 or front.kind not in THROUGH:
                continue
            above, below = _own_rows(stack, front)
            face = front.place.y if below else front.top + front.gaps.top
            if below and front.kind != "opening":
                # Slides stand on it: their floor line is as far from each front of the column.
                under = reveal_under(stack.fronts[-1], whole.side, reveal)
                face = min(face, front.place.y + whole.side - under)
            if below or above:
                shelves[number - 1].append((face - whole.side, face))
            for place in range(front.place.column - 1, front.place.last_column - 1):
                low, high = partitions[place]
                if below or not above:
                    high = min(high, face - whole.side)
                else:
                    low = max(low, face)
                partitions[place] = (low, high)
    return tuple(partitions), [tuple(dict.fromkeys(found)) for found in shelves]


def _own_rows(stack: FrontStack, front: PlacedFront) -> tuple[bool, bool]:
    """Tell whether other fronts than those across columns stand above and below one."""
    others = [o for o in stack.fronts if o.place.span == 1 or o.kind not in THROUGH]
    return any(o.place.row < front.place.row for o in others), any(
        o.place.row > front.place.row for o in others
    )
