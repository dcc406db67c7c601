"""Two in the same place: boxes and appliances that overlap along their wall and in height.

Both cannot be built so. The box that was put there, by an `x` of its own or of one before it in
its row, is held back until it is moved, of two such boxes the later one; the other one is
drilled. No box is held for a place that nobody stated: a row of wall boxes without any `x` hangs
from the wall's left filler on by default, and is only told what it hangs before.
"""

from collections.abc import Iterator, Mapping, Sequence

from jigs.given.job import BoxSpec, Job
from jigs.given.walls import row_of
from jigs.ground.finding import error, warning
from jigs.ground.lengths import Unit, format_length
from jigs.ground.problems import Problem
from jigs.room.run import Taken, taken_by


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
    walls: dict[str, list[tuple[int, Taken]]] = {}
    for place in enumerate(taken_by(job)):
        walls.setdefault(place[1].wall, []).append(place)
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
