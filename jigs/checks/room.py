"""Does the room hold them? Boxes and appliances against their wall, its length, its ceiling, its
counter and its floor; and two in the same place.

A box that finds no room is drilled no differently. Where the wall is too short for its boxes,
whatever its fillers, that is an error all the same: it cannot be built so. A counter lies on the
boxes, and wants 3 above the fronts below it. Where the floor is not level, everything is set from
its high point, and the toe is shimmed up elsewhere, never the fronts. Common practice, no source.

Two that overlap along their wall and in height cannot both be built so. The box that was put there,
by an `x` of its own or of one before it in its row, is held back until it is moved, of two such
boxes the later one; the other one is drilled. No box is held for a place that nobody stated: a row
of wall boxes without any `x` hangs from the wall's left filler on by default, and is only told what
it hangs before.
"""

from collections.abc import Iterator, Mapping, Sequence

from jigs.box.parts import Front
from jigs.checks.closing import UNDER_COUNTER, stands_under_counter
from jigs.given.job import COUNTER_BOXES, BoxSpec, Job
from jigs.given.walls import HIGHEST, TOUCHING, row_of
from jigs.given.wallspec import EndKind, WallSpec
from jigs.ground.geometry import SLACK
from jigs.ground.grouped import grouped
from jigs.ground.lengths import Unit, format_length
from jigs.ground.problems import Problem, error, warning
from jigs.room.seen import SAME, Taken, run_of, taken_by

CLOSED: tuple[EndKind, ...] = ("wall", "casing", "corner")
"""Ends between which a run fills its wall."""


def check_room(job: Job, by_box: Mapping[str, Sequence[Front]]) -> Iterator[Problem]:
    """List what a wall, its ceiling, its counter or its floor has no room for."""
    taken = taken_by(job)
    for wall in job.walls:
        own = [each for each in taken if each.wall == wall.name]
        boxes = [box for box in job.boxes if box.wall == wall.name and not box.inferred]
        yield from _check_length(wall, own, job.shown)
        yield from _check_ends(wall, own, job.shown)
        yield from _check_fillers(wall, own, job.shown)
        yield from _check_ceiling(wall, own, job.shown)
        for box in boxes:
            yield from _check_counter(wall, box, by_box[box.id], job.shown)
            yield from _check_floor(wall, box, job.shown)


def _check_length(wall: WallSpec, own: Sequence[Taken], unit: Unit) -> Iterator[Problem]:
    if wall.length is None or not own:
        return
    run = run_of(wall, own)
    spare = wall.length - run
    figures = (
        f"the run of wall {wall.name} takes {format_length(run, unit)} with its fillers, panels "
        f"and appliances; the wall is {format_length(wall.length, unit)} long"
    )
    fillers = wall.left.filler + wall.right.filler
    if spare + fillers < -SAME - SLACK:
        without = f", {format_length(-spare - fillers, unit)} without any filler" if fillers else ""
        yield error(
            "wall-short",
            None,
            f"{figures}: {format_length(-spare, unit)} too short{without}; the boxes find no room",
            "measure the wall at the height of the boxes, then leave a box out or make boxes "
            "narrower, before anything is cut",
        )
    elif spare < -SAME - SLACK:
        yield warning(
            "wall-short",
            None,
            f"{figures}: {format_length(-spare, unit)} too short",
            "make the fillers narrower by as much, or a box, and measure the wall at the height of "
            "the boxes before anything is cut",
        )
    elif spare > SAME + SLACK and wall.left.stands in CLOSED and wall.right.stands in CLOSED:
        yield warning(
            "wall-gap",
            None,
            f"{figures}: a gap of {format_length(spare, unit)} is left",
            f"close it by fillers: left_filler and right_filler together "
            f"{format_length(wall.left.filler + wall.right.filler + spare, unit)}",
        )


def _check_ends(wall: WallSpec, own: Sequence[Taken], unit: Unit) -> Iterator[Problem]:
    """Find what an `x` has put into a wall's left filler, or beyond its right end."""
    if not own:
        return
    first, last = min(own, key=lambda each: each.begins), max(own, key=lambda each: each.ends)
    if first.begins < wall.left.filler - SAME - SLACK:
        yield warning(
            "before-filler",
            None if first.appliance else first.id,
            f"{first.id} begins {format_length(first.begins, unit)} from the left end of wall "
            f"{wall.name}, and the filler there takes {format_length(wall.left.filler, unit)}",
            "count x from the wall's left end, filler and end panel included; or leave it out",
        )
    end = last.ends + wall.right.filler
    if wall.length is None or run_of(wall, own) > wall.length + SAME + SLACK:
        return  # too short wherever they stand: told already
    if end > wall.length + SAME + SLACK:
        filler = " with the filler beside it" if wall.right.filler else ""
        yield warning(
            "beyond-wall",
            None if last.appliance else last.id,
            f"{last.id} ends {format_length(end, unit)} from the left end of wall {wall.name}"
            f"{filler}; the wall is {format_length(wall.length, unit)} long",
            "correct the x of what stands there: it counts from the wall's left end",
        )


def _check_fillers(wall: WallSpec, own: Sequence[Taken], unit: Unit) -> Iterator[Problem]:
    """Find fillers beside which no box stands to hold them."""
    for hand, filler, far in (
        ("left", wall.left.filler, [-each.begins for each in own]),
        ("right", wall.right.filler, [each.ends for each in own]),
    ):
        last = [e for e, at in zip(own, far, strict=True) if max(far) - at <= TOUCHING]
        if filler and last and all(each.appliance for each in last):
            names = ", ".join(each.id for each in last)
            yield warning(
                "filler-at-appliance",
                None,
                f"the filler of {format_length(filler, unit)} at the {hand} end of wall "
                f"{wall.name} stands beside {names}, and no box is there to hold it: it is not in "
                "the cut list",
                "set a box or an end panel there, or leave the filler out",
            )


def _check_ceiling(wall: WallSpec, own: Sequence[Taken], unit: Unit) -> Iterator[Problem]:
    if wall.ceiling is None:
        return
    for each in own:
        over = each.top - wall.ceiling
        if over > SLACK:
            yield warning(
                "above-ceiling",
                None if each.appliance else each.id,
                f"the top of {each.id} is {format_length(each.top, unit)} above the floor, "
                f"{format_length(over, unit)} above the ceiling, which is "
                f"{format_length(wall.ceiling, unit)} high",
                "make it lower by as much at least, or set it lower; measure the ceiling where it "
                "is lowest",
            )


def _check_counter(
    wall: WallSpec, box: BoxSpec, fronts: Sequence[Front], unit: Unit
) -> Iterator[Problem]:
    """Find boxes that do not bring their counter to its height, fronts that would rub on it."""
    if wall.counter is None or not stands_under_counter(box) or box.above_floor > HIGHEST:
        return
    top, under = box.above_floor + box.height, wall.underside
    if under is None:
        if box.kind in COUNTER_BOXES and top > wall.counter - SLACK:
            yield warning(
                "counter-height",
                box.id,
                f"its top is {format_length(top, unit)} above the floor, and the top of the "
                f"counter {format_length(wall.counter, unit)}: no room for a counter",
                "correct the heights, and say counter_thickness",
            )
        return
    if box.kind in COUNTER_BOXES and abs(top - under) > SAME + SLACK:
        higher = top > under
        yield warning(
            "counter-height",
            box.id,
            f"its top, {format_length(top, unit)} above the floor, is "
            f"{format_length(abs(top - under), unit)} {'above' if higher else 'below'} the "
            f"counter's underside ({format_length(wall.counter, unit)} less "
            f"{format_length(wall.counter_thickness or 0.0, unit)})",
            f"make the box {format_length(abs(top - under), unit)} lower, or set it lower by as "
            "much; or raise the counter"
            if higher
            else f"pack the counter up by {format_length(under - top, unit)}, or make "
            "the box higher by as much",
        )
    for front in fronts:
        edge = box.above_floor + front.place.y + front.height
        # A reveal too small for any counter is told by the box itself.
        told = front.gaps.top < UNDER_COUNTER - SLACK and front.place.row == 1
        if front.place.overlay == "inset" or told or under - edge >= UNDER_COUNTER - SLACK:
            continue
        yield warning(
            "counter-front",
            front.id,
            f"its top edge is {format_length(edge, unit)} above the floor, and the counter's "
            f"underside {format_length(under, unit)}; it takes "
            f"{format_length(UNDER_COUNTER, unit)} between them",
            "enlarge the top reveal, or raise the counter",
        )


def _check_floor(wall: WallSpec, box: BoxSpec, unit: Unit) -> Iterator[Problem]:
    """Find boxes that stand where the floor's high point already is."""
    hangs = box.kind == "wall" or box.above_floor > HIGHEST
    if wall.floor_high <= SLACK or hangs or box.above_floor > wall.floor_high + SLACK:
        return
    yield warning(
        "floor-high",
        box.id,
        f"it stands {format_length(box.above_floor, unit)} above the line, and the floor's high "
        f"point {format_length(wall.floor_high, unit)}: nothing is left between them",
        f"scribe {format_length(wall.floor_high - box.above_floor, unit)} off the ends of its "
        "sides there, or set the whole run higher; never shift the fronts"
        if box.legs
        else "raise above_floor of the whole run: set it from the high point, and shim the toe up "
        "elsewhere, never the fronts",
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
                "same-place", held, _fact(here, there, job.shown), _remedy(held),
                () if there.appliance else (there.id,),
            )  # fmt: skip
    return found


def check_same_place(job: Job) -> tuple[Problem, ...]:
    """List the overlaps that hold no box back."""
    return tuple(_told(job, *pair) for pair in _overlapping(job) if _held(job, *pair) is None)


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


def _told(job: Job, one: Taken, other: Taken) -> Problem:
    # A finding stands at a box: appliances have no part of their own.
    here, there = (other, one) if one.appliance else (one, other)
    fact = _fact(here, there, job.shown)
    if here.appliance or there.appliance:
        name = there.id if there.appliance else here.id
        return error(
            "same-place", None, fact,
            f"move one: correct x or after of {name}, or the boxes beside it",
        )  # fmt: skip
    return warning(
        "same-place", here.id, fact,
        f"nobody said where they stand along the wall: give {here.id} its x", (there.id,),
    )  # fmt: skip


def _fact(here: Taken, there: Taken, unit: Unit) -> str:
    wide = min(here.right, there.right) - max(here.left, there.left)
    high = min(here.top, there.top) - max(here.bottom, there.bottom)
    return (
        f"{here.id} and {there.id} stand in the same place: they overlap "
        f"{format_length(wide, unit)} along the wall and {format_length(high, unit)} in height; "
        "both cannot be built so"
    )


def _remedy(held: str) -> str:
    return (
        f"move one: correct its x or above_floor, or leave x out of {held}, so that it follows "
        "the one before it"
    )
