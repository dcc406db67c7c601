"""What a door strikes that is hinged beside a deeper box, a wall box beside a tall one, or beside
an appliance that stands proud.

The deeper box stands out beyond the face of the door as an end panel does: opened, the door's pull
strikes it where the box or its own fronts reach as far, else the door's face does. It wants the
pull's projection, or nothing, and 6 between the boxes, or a restrictor (common practice, no
source). A box that stands out by less than the thickness of a front is no deeper one.
"""

from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Mapping, Sequence

from jigs.box.parts import Front
from jigs.checks.hardware import by_memory
from jigs.checks.wallends import (
    SEEN,
    SPARE,
    projection_of,
    projection_open,
    pull_from_hinge,
)
from jigs.given.job import BoxSpec, Job
from jigs.given.walls import TOUCHING, place_job
from jigs.given.wallspec import Appliance
from jigs.ground.finding import warning
from jigs.ground.geometry import HANDS, SLACK, Hand
from jigs.ground.lengths import format_length
from jigs.ground.problems import Problem
from jigs.room.gapsmade import at_end

STANDS_OUT = 20.0
"""A box whose front edge stands out beyond the faces beside it by more than this is a deeper one;
mm (common practice, no source)."""


def check_deeper(
    job: Job, boxes: Sequence[BoxSpec], by_box: Mapping[str, Sequence[Front]]
) -> tuple[Problem, ...]:
    """List the doors that strike a deeper box on the side where they hang."""
    places, panel = place_job(job), job.material.front
    walls: dict[str, list[BoxSpec]] = {}
    for box in boxes:
        if not box.inferred:
            walls.setdefault(box.wall, []).append(box)
    far = SPARE + 2 * panel + max((pull.projection for pull in job.pulls.values()), default=0.0)
    problems: list[Problem] = []
    for row in walls.values():
        proud = [
            appliance
            for wall in job.walls
            if row[0].wall == wall.name
            for appliance in wall.appliances
            if appliance.depth is not None
        ]
        beside: list[BoxSpec | Appliance] = [*row, *proud]
        for hand in HANDS if len({one.depth for one in beside}) > 1 else ():
            facing = sorted((_facing(one, hand, places), place) for place, one in enumerate(beside))
            ends = [end for end, _ in facing]
            for box in row:
                doors = [
                    front
                    for front in at_end(by_box[box.id], hand)
                    if front.kind == "door" and front.hinged == hand and not front.restrictor
                ]
                end = places[box.id] + (0.0 if hand == "left" else box.width)
                low, high = (end - far, end) if hand == "left" else (end, end + far)
                first = bisect_left(ends, low - TOUCHING) if doors else 0
                last = bisect_right(ends, high + TOUCHING) if doors else 0
                for _, place in facing[first:last]:
                    room = _room(box, beside[place], hand, places, panel)
                    for front in doors:
                        problems += _check(job, box, front, beside[place], room)
    return tuple(problems)


def _facing(box: BoxSpec | Appliance, hand: Hand, places: Mapping[str, float]) -> float:
    """Give the end along its wall that a box turns to one on whose `hand` it stands; mm."""
    return places[box.id] + (box.width if hand == "left" else 0.0)


def _room(
    box: BoxSpec, other: BoxSpec | Appliance, hand: Hand, places: Mapping[str, float], panel: float
) -> float:
    """Give what is between a box and another on one side of it, below 0 on the other side; mm."""
    one, two = (other, box) if hand == "left" else (box, other)
    between = places[two.id] - places[one.id] - one.width
    ends: tuple[tuple[BoxSpec | Appliance, Hand], ...] = ((one, "right"), (two, "left"))
    panels = [each.panels.at(end) for each, end in ends if isinstance(each, BoxSpec)]
    return between - panel * sum(kind is not None for kind in panels)


def _fronts_of(job: Job, other: BoxSpec | Appliance) -> float:
    """Give how far the fronts of a box stand out before its front edge; mm."""
    if not isinstance(other, BoxSpec) or other.overlay == "inset" or not other.fronts:
        return 0.0
    return job.build.bumper + job.material.front


def _check(
    job: Job, box: BoxSpec, front: Front, other: BoxSpec | Appliance, room: float
) -> Iterator[Problem]:
    low, high = box.above_floor + front.place.y, box.above_floor + front.place.y + front.height
    if min(high, other.above_floor + other.height) - max(low, other.above_floor) <= SLACK:
        return
    face = box.depth
    if front.place.overlay != "inset":
        face += job.build.bumper + front.make.thickness
    reach = (other.depth or 0.0) - face
    if reach <= STANDS_OUT + SLACK or room < -TOUCHING:
        return
    projection = projection_of(front, job.pulls)
    if pull_from_hinge(front) > reach + _fronts_of(job, other) + SLACK:
        projection = 0.0
    needed = projection + SPARE
    if room >= needed - SEEN - SLACK:
        return
    unit = job.shown
    what = f"box {other.id}" if isinstance(other, BoxSpec) else other.id
    sum_of = ""
    if projection:
        out = by_memory(format_length(projection, unit), open=projection_open(front, job.pulls))
        sum_of = f" ({out} for its pull + {format_length(SPARE, unit)} to spare)"
    between = "nothing" if room <= TOUCHING else format_length(room, unit)
    yield warning(
        "deeper-box",
        front.id,
        f"hinged {front.hinged} beside {what}, which stands out "
        f"{format_length(reach, unit)} beyond its face, with {between} between the boxes: "
        "opened, it strikes it; "
        f"{format_length(needed, unit)} is needed{sum_of}",
        f"set a filler of {format_length(needed, unit)} between them, hang it on its other side, "
        "or fit a restrictor that stops it at 90 degrees, and say restrictor = true",
    )
