"""Does the room hold them? Boxes and appliances against their wall: its length, its ceiling, its
counter and its floor.

None of it withholds a part: a box that finds no room is drilled no differently. Where the wall is
too short for its boxes, whatever its fillers, that is an error all the same: it cannot be built
so. A counter lies on the boxes, and wants 3 above the fronts below it. Where the floor is not
level, everything is set from its high point, and the toe is shimmed up elsewhere, never the
fronts. Common practice, no source.
"""

from collections.abc import Iterator, Mapping, Sequence

from jigs.box.parts import Front
from jigs.checks.closing import UNDER_COUNTER, stands_under_counter
from jigs.given.job import COUNTER_BOXES, BoxSpec, Job
from jigs.given.walls import HIGHEST, TOUCHING
from jigs.given.wallspec import EndKind, WallSpec
from jigs.ground.finding import error, warning
from jigs.ground.geometry import SLACK
from jigs.ground.lengths import Unit, format_length
from jigs.ground.problems import Problem
from jigs.room.run import SAME, Taken, run_of, taken_by

CLOSED: tuple[EndKind, ...] = ("wall", "casing", "corner")
"""Ends between which a run fills its wall."""


def check_room(job: Job, by_box: Mapping[str, Sequence[Front]]) -> tuple[Problem, ...]:
    """List what a wall, its ceiling, its counter or its floor has no room for."""
    taken = taken_by(job)
    problems: list[Problem] = []
    for wall in job.walls:
        own = [each for each in taken if each.wall == wall.name]
        boxes = [box for box in job.boxes if box.wall == wall.name and not box.inferred]
        problems += _check_length(wall, own, job.shown)
        problems += _check_ends(wall, own, job.shown)
        problems += _check_fillers(wall, own, job.shown)
        problems += _check_ceiling(wall, own, job.shown)
        for box in boxes:
            problems += _check_counter(wall, box, by_box[box.id], job.shown)
            problems += _check_floor(wall, box, job.shown)
    return tuple(problems)


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
