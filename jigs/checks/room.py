"""Does the room hold them? Boxes and appliances against their wall, its length, its ceiling, its
counter and its floor; and two in the same place.

A box that finds no room is drilled no differently. Where the wall is too short for its boxes,
whatever its fillers, that is an error all the same: it cannot be built so. What is left open before
a wall at a run's right end wants a wider filler, whatever stands at its left. A counter lies on the
boxes, and wants 3 above the fronts below it. Where the floor is not level, everything is set from
its high point, and the toe is shimmed up elsewhere, never the fronts. Common practice, no source.

Two that overlap along their wall and in height cannot both be built so. The box that was put there,
by an `x` of its own or of one before it in its row, is held back until it is moved, of two such
boxes the later one; the other one is drilled. No box is held for a place that nobody stated: a row
of wall boxes without any `x` hangs from the wall's left filler on by default, and is only told what
it hangs before.
"""

from collections.abc import Iterator, Mapping, Sequence

from jigs.box.frontgaps import UNDER_COUNTER, stands_under_counter
from jigs.box.parts import Front
from jigs.given.job import COUNTER_BOXES, BoxSpec, Job
from jigs.given.walls import HIGHEST, SAME, TOUCHING, Taken, row_of, run_of, taken_by
from jigs.given.wallspec import EndKind, WallSpec
from jigs.ground.geometry import HANDS, SLACK
from jigs.ground.grouped import grouped
from jigs.ground.problems import Problem, error, warning

CLOSED: tuple[EndKind, ...] = ("wall", "casing", "corner")
"""Ends that a run is to reach."""


def check_room(job: Job, by_box: Mapping[str, Sequence[Front]]) -> Iterator[Problem]:
    """List what a wall, its ceiling, its counter or its floor has no room for."""
    taken = taken_by(job)
    for wall in job.walls:
        own = [each for each in taken if each.wall == wall.name]
        boxes = [box for box in job.boxes if box.wall == wall.name and not box.inferred]
        yield from _check_length(wall, own, boxes)
        yield from _check_ends(wall, own)
        yield from _check_fillers(wall, own)
        yield from _check_ceiling(wall, own)
        for box in boxes:
            yield from _check_counter(wall, box, by_box[box.id])
            yield from _check_floor(wall, box)


def _check_length(
    wall: WallSpec, own: Sequence[Taken], boxes: Sequence[BoxSpec]
) -> Iterator[Problem]:
    if wall.length is None or not own:
        return
    run = run_of(wall, own)
    spare = wall.length - run
    fillers = wall.left.filler + wall.right.filler
    blind = [box for box in boxes if box.blind and wall.end(box.blind.hand).stands == "corner"]
    corners = sum(wall.end(hand).stands == "corner" for hand in HANDS)
    if spare + fillers < -SAME - SLACK:
        yield error(
            "wall-short",
            None,
            case="boxes",
            wall=wall.name,
            run=run,
            length=wall.length,
            short=-spare,
            blind=blind[0].id if blind else None,
            fillers=bool(fillers),
            without=-spare - fillers,
        )
    elif spare < -SAME - SLACK:
        yield warning(
            "wall-short",
            None,
            case="fillers",
            wall=wall.name,
            run=run,
            length=wall.length,
            short=-spare,
            blind=blind[0].id if blind else None,
        )
    elif wall.right.stands in CLOSED:
        # A run with a closed end at the right alone may begin anywhere, but it ends there.
        right_only = wall.left.stands not in CLOSED
        if right_only:
            fillers, run = wall.right.filler, max(each.ends for each in own) + wall.right.filler
        gap = wall.length - run
        if gap > SAME + SLACK:
            yield warning(
                "wall-gap",
                None,
                wall=wall.name,
                right=right_only,
                run=run,
                length=wall.length,
                gap=gap,
                corner=corners > len(blind),
                fillers=fillers + gap,
            )


def _check_ends(wall: WallSpec, own: Sequence[Taken]) -> Iterator[Problem]:
    """Find what an `x` has put into a wall's left filler, or beyond its right end."""
    if not own:
        return
    first, last = min(own, key=lambda each: each.begins), max(own, key=lambda each: each.ends)
    if first.begins < wall.left.filler - SAME - SLACK:
        yield warning(
            "before-filler",
            None if first.appliance else first.id,
            first=first.id,
            begins=first.begins,
            wall=wall.name,
            filler=wall.left.filler,
        )
    end = last.ends + wall.right.filler
    if wall.length is None or run_of(wall, own) > wall.length + SAME + SLACK:
        return  # too short wherever they stand: told already
    if end > wall.length + SAME + SLACK:
        yield warning(
            "beyond-wall",
            None if last.appliance else last.id,
            last=last.id,
            ends=end,
            wall=wall.name,
            filler=bool(wall.right.filler),
            length=wall.length,
        )


def _check_fillers(wall: WallSpec, own: Sequence[Taken]) -> Iterator[Problem]:
    """Find fillers beside which no box stands to hold them."""
    for hand, filler, far in (
        ("left", wall.left.filler, [-each.begins for each in own]),
        ("right", wall.right.filler, [each.ends for each in own]),
    ):
        last = [e for e, at in zip(own, far, strict=True) if max(far) - at <= TOUCHING]
        if filler and last and all(each.appliance for each in last):
            yield warning(
                "filler-at-appliance",
                None,
                filler=filler,
                hand=hand,
                wall=wall.name,
                last=tuple(each.id for each in last),
            )


def _check_ceiling(wall: WallSpec, own: Sequence[Taken]) -> Iterator[Problem]:
    if wall.ceiling is None:
        return
    for each in own:
        over = each.top - wall.ceiling
        if over > SLACK:
            yield warning(
                "above-ceiling",
                None if each.appliance else each.id,
                what=each.id,
                top=each.top,
                over=over,
                ceiling=wall.ceiling,
            )


def _check_counter(wall: WallSpec, box: BoxSpec, fronts: Sequence[Front]) -> Iterator[Problem]:
    """Find boxes that do not bring their counter to its height, fronts that would rub on it."""
    if wall.counter is None or not stands_under_counter(box) or box.above_floor > HIGHEST:
        return
    top, under = box.above_floor + box.height, wall.underside
    if under is None:
        if box.kind in COUNTER_BOXES and top > wall.counter - SLACK:
            yield warning("counter-height", box.id, case="no-room", top=top, counter=wall.counter)
        return
    if box.kind in COUNTER_BOXES and abs(top - under) > SAME + SLACK:
        yield warning(
            "counter-height",
            box.id,
            case="off",
            top=top,
            off=abs(top - under),
            higher=top > under,
            counter=wall.counter,
            thick=wall.counter_thickness or 0.0,
        )
    for front in fronts:
        edge = box.above_floor + front.place.y + front.height
        # A reveal too small for any counter is told by the box itself.
        told = front.gaps.top < UNDER_COUNTER - SLACK and front.place.row == 1
        if front.place.overlay == "inset" or told or under - edge >= UNDER_COUNTER - SLACK:
            continue
        yield warning("counter-front", front.id, edge=edge, under=under, least=UNDER_COUNTER)


def _check_floor(wall: WallSpec, box: BoxSpec) -> Iterator[Problem]:
    """Find boxes that stand where the floor's high point already is."""
    hangs = box.kind == "wall" or box.above_floor > HIGHEST
    if wall.floor_high <= SLACK or hangs or box.above_floor > wall.floor_high + SLACK:
        return
    yield warning(
        "floor-high",
        box.id,
        above=box.above_floor,
        high=wall.floor_high,
        legs=bool(box.legs),
        scribe=wall.floor_high - box.above_floor,
    )


def find_displaced(job: Job) -> Mapping[str, Problem]:
    """Give, by box, the error that holds back a box put where another, or an appliance, is."""
    found: dict[str, Problem] = {}
    for one, other in _overlapping(job):
        held = _held(job, one, other)
        if held is not None and held not in found:
            there = other if held == one.id else one
            here = one if held == one.id else other
            found[held] = error(
                "same-place",
                held,
                case="held",
                here=here.id,
                there=there.id,
                along=_along(here, there),
                high=_high(here, there),
                held=held,
                also=() if there.appliance else (there.id,),
            )
    return found


def check_same_place(job: Job) -> tuple[Problem, ...]:
    """List the overlaps that hold no box back."""
    return tuple(_told(*pair) for pair in _overlapping(job) if _held(job, *pair) is None)


def _overlapping(job: Job) -> Iterator[tuple[Taken, Taken]]:
    """Give the pairs that overlap, the later one first, in the job's order."""
    walls = grouped((place[1].wall, place) for place in enumerate(taken_by(job)))
    pairs: list[tuple[int, int, Taken, Taken]] = []
    for row in walls.values():
        row.sort(key=lambda place: place[1].left)
        open_still: list[tuple[int, Taken]] = []
        for here, one in row:
            open_still = [each for each in open_still if each[1].right > one.left]
            for there, other in open_still:
                if one.overlaps(other):
                    first, last = sorted(((here, one), (there, other)), key=lambda e: e[0])
                    pairs.append((last[0], first[0], last[1], first[1]))
            open_still.append((here, one))
    for _, _, later, earlier in sorted(pairs, key=lambda pair: pair[:2]):
        yield later, earlier


def _held(job: Job, one: Taken, other: Taken) -> str | None:
    """Name the box of two that was put into the other's place; None where none was."""
    boxes = {box.id: box for box in job.boxes}
    both = [boxes[each.id] for each in (one, other) if not each.appliance]
    if not all(_is_stated(box, job.boxes) for box in both):
        return None
    return next((box.id for box in both if _is_placed(box, job.boxes)), None)


def _is_stated(box: BoxSpec, boxes: Sequence[BoxSpec]) -> bool:
    """Tell whether somebody said where a box stands: on the floor the job's order says it."""
    return box.kind != "wall" or _is_placed(box, boxes)


def _is_placed(box: BoxSpec, boxes: Sequence[BoxSpec]) -> bool:
    """Tell whether a box, or one before it in its row, has an x."""
    row = [each for each in boxes if row_of(each) == row_of(box)]
    return any(each.x is not None for each in row[: row.index(box) + 1])


def _told(one: Taken, other: Taken) -> Problem:
    # A finding stands at a box: appliances have no part of their own.
    here, there = (other, one) if one.appliance else (one, other)
    if here.appliance or there.appliance:
        name = there.id if there.appliance else here.id
        return error(
            "same-place",
            None,
            case="appliance",
            here=here.id,
            there=there.id,
            along=_along(here, there),
            high=_high(here, there),
            appliance=name,
        )
    return warning(
        "same-place",
        here.id,
        case="not-stated",
        here=here.id,
        there=there.id,
        along=_along(here, there),
        high=_high(here, there),
        also=(there.id,),
    )


def _along(here: Taken, there: Taken) -> float:
    """Give how far two overlap along their wall, mm."""
    return min(here.right, there.right) - max(here.left, there.left)


def _high(here: Taken, there: Taken) -> float:
    """Give how far two overlap in height, mm."""
    return min(here.top, there.top) - max(here.bottom, there.bottom)
