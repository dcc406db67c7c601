"""Inside corners: what opens on one wall against the fronts and pulls of the other.

What opens beside a corner passes along the faces of the other run. From the line of that run's
boxes it keeps their fronts' thickness, what stands out from them (a pull, an oven's handle), and
6: 19 + 35 + 6 = 60 (common practice, no source). Opened before them, a door's own pull counts as
theirs do, whichever is longer (derived). A blind panel is the filler of its box.
"""

from collections.abc import Iterator, Mapping, Sequence

from jigs.box.frontgaps import at_end
from jigs.box.parts import Front
from jigs.checks.wallends import SEEN, STRIKING, check_front, projection_of, projection_open
from jigs.given.job import BoxSpec, Job
from jigs.given.walls import CORNERS, end_boxes, lines_of, place_job
from jigs.given.wallspec import WallEnd
from jigs.ground.geometry import SLACK, Hand
from jigs.ground.problems import Problem, maybe_open, warning

FrontInBox = tuple[BoxSpec, Front]


def check_corners(
    job: Job, boxes: Sequence[BoxSpec], by_box: Mapping[str, Sequence[Front]]
) -> Iterator[Problem]:
    """List the boxes at inside corners whose fronts would strike what stands opposite."""
    places, lines = place_job(job), lines_of(job)
    appliances = {wall.name: wall.appliances for wall in job.walls}
    for wall in job.walls:
        for hand, there in CORNERS:
            end = wall.end(hand)
            if end.stands != "corner":
                continue
            others = (
                end_boxes(boxes, end.meets, there, places, appliances.get(end.meets, ()))
                if end.meets is not None
                else ()
            )
            opposite = [
                (box, front) for box, _ in others for front in at_end(by_box[box.id], there)
            ]
            panel = job.material.front
            near = end_boxes(boxes, wall.name, hand, places, wall.appliances, panel, lines)
            for box, distance in near:
                fronts = at_end(by_box[box.id], hand)
                room = end.filler + distance
                yield from _check_box(job, box, fronts, hand, end, room, opposite)
                if others and _meets_the_room(box, [other for other, _ in others]):
                    bare = WallEnd(stands="wall", filler=end.filler)
                    for front in fronts:
                        yield from check_front(job, front, hand, bare, room)


def _meets_the_room(box: BoxSpec, others: Sequence[BoxSpec]) -> bool:
    """Tell whether a wall box has the room's wall at its end: nothing of the other run hangs."""
    top = box.above_floor + box.height
    return box.kind == "wall" and not any(
        other.kind == "wall"
        or min(top, other.above_floor + other.height) - max(box.above_floor, other.above_floor)
        > SLACK
        for other in others
    )


def _check_box(
    job: Job,
    box: BoxSpec,
    fronts: Sequence[Front],
    hand: Hand,
    end: WallEnd,
    room: float,
    opposite: Sequence[FrontInBox],
) -> Iterator[Problem]:
    """Find the fronts of one box that want a wider filler; the widest is told."""
    short: list[tuple[Front, float, float, float]] = []
    deep = 0.0
    for front in fronts:
        if front.kind in ("false-front", "panel") or (front.hinged == hand and front.restrictor):
            continue
        against = [(b, f) for b, f in opposite if _level(box, front, b, f)]
        if not against and end.reach is None:
            continue
        thick = max((f.make.thickness for _, f in against), default=job.material.front)
        out = max([end.reach or 0.0, *(projection_of(f, job.pulls) for _, f in against)])
        if front.kind == "door" and front.hinged == hand:
            out = max(out, projection_of(front, job.pulls))
        free = room
        if _blind(box, hand):
            # The box goes on round the corner: what covers it is as deep as the other run.
            deep = max((b.depth for b, _ in against), default=box.depth)
            free = room + _from_end(box, front, hand) - deep
        needed = thick + out + STRIKING
        if free < needed - SEEN - SLACK:
            short.append((front, needed, free, out))
    if not short:
        return
    front, needed, free, out = max(short, key=lambda item: item[1] - item[2])
    names = tuple(item[0].id for item in short)
    thick = needed - out - STRIKING
    # Unless it is something else that stands out furthest, it is a pull.
    pulls = (projection_open(f, job.pulls) for f in (front, *(f for _, f in opposite)))
    unsure = out > (end.reach or 0.0) and any(pulls)
    blind = box.blind if _blind(box, hand) else None
    yield warning(
        "corner-filler",
        front.id,
        hand=hand,
        several=len(names) > 1,
        names=names,
        free=max(0.0, free),
        behind=-free if free < -SLACK else None,
        needed=needed,
        thick=thick,
        out=maybe_open(out, open=unsure),
        spare=STRIKING,
        blind=blind is not None,
        reach=blind.reach + needed - free if blind else None,
        filler=end.filler + needed - free,
        doors=all(item[0].kind == "door" and item[0].hinged == hand for item in short),
        also=tuple(name for name in names if name != front.id),
    )


def _level(box: BoxSpec, front: Front, other_box: BoxSpec, other: Front) -> bool:
    """Whether two fronts of different walls stand at the same height, be it in part."""
    low = max(box.above_floor + front.place.y, other_box.above_floor + other.place.y)
    high = min(
        box.above_floor + front.place.y + front.height,
        other_box.above_floor + other.place.y + other.height,
    )
    return high - low > SLACK


def _blind(box: BoxSpec, hand: Hand) -> bool:
    return box.blind is not None and box.blind.hand == hand


def _from_end(box: BoxSpec, front: Front, hand: Hand) -> float:
    """Give how far a front stands from one end of its box, mm."""
    return front.place.x if hand == "left" else box.width - front.place.x - front.width
