"""What opens at the end of a wall, or beside a deeper box: does it strike the wall, a casing, a
panel, the box, an appliance that stands proud?

A door hinged at a wall stands, opened, with its face to it: its pull wants a filler of its own
projection and 6, or the door a restrictor that stops it below 90 degrees. What reaches out of the
wall, as a casing does, wants as much filler more, and keeps drawers and free edges from opening
too. A panel flush with the faces of the fronts leaves the pull alone; one that stands out beyond
them is struck by the pull where it reaches as far, else by the door's face.

A deeper box, a tall one beside a wall box, stands out beyond the face of the door as an end panel
does: opened, the door's pull strikes it where the box or its own fronts reach as far, else the
door's face does. It wants the pull's projection, or nothing, and 6 between the boxes, or a
restrictor. A box that stands out by less than the thickness of a front is no deeper one.

Filler of projection + 6, restrictor: common practice, no source. 35 + 6 = 41.
"""

from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Mapping, Sequence

from jigs.box.frontgaps import LEAST_DRAWER, at_end, least_at_free_edge
from jigs.box.parts import Front
from jigs.given.confirming import how_confirmed
from jigs.given.hardware import PullRecord
from jigs.given.job import BoxSpec, Job
from jigs.given.walls import TOUCHING, end_boxes, faces_out, place_job
from jigs.given.wallspec import Appliance, EndKind, WallEnd
from jigs.ground.geometry import HANDS, SLACK, Hand
from jigs.ground.grouped import grouped
from jigs.ground.problems import Open, Problem, maybe_open, warning

STRIKING = 6.0
"""Left between what opens and what it would strike; mm (common practice, no source)."""
SEEN = 0.1
"""A filler short by no more than this is as wide as it should be: our figures show no less; mm."""
STOPS: tuple[EndKind, ...] = ("wall", "casing", "panel")
"""What an end of a wall may have that fronts strike."""


def check_wall_ends(
    job: Job, boxes: Sequence[BoxSpec], by_box: Mapping[str, Sequence[Front]]
) -> Iterator[Problem]:
    """List what the fronts at the ends of walls would strike, and the flush panels of boxes."""
    told: set[tuple[str | None, str]] = set()
    places, panel = place_job(job), job.material.front
    for wall in job.walls:
        for hand in HANDS:
            end = wall.end(hand)
            if end.stands in STOPS:
                near = end_boxes(boxes, wall.name, hand, places, wall.appliances, panel)
                for box, distance in near:
                    for front in at_end(by_box[box.id], hand):
                        found = tuple(check_front(job, front, hand, end, end.filler + distance))
                        told |= {(problem.part, problem.code) for problem in found}
                        yield from found
    for box in boxes:
        for hand in HANDS:
            if box.panels.at(hand) == "flush":
                for front in at_end(by_box[box.id], hand):
                    # Beside fronts that cover the sides an inset one lies behind the panel's edge.
                    reach = faces_out(job, box) if front.place.overlay == "inset" else 0.0
                    flush = WallEnd(stands="panel", reach=reach or None)
                    for problem in check_front(job, front, hand, flush, 0.0):
                        if (problem.part, problem.code) not in told:
                            yield problem


def projection_of(front: Front, pulls: Mapping[str, PullRecord]) -> float:
    """Give how far a front's pull stands out from its face, 0 without one; mm."""
    record = pulls.get(front.pull) if front.pull else None
    return record.projection if record else 0.0


def projection_open(front: Front, pulls: Mapping[str, PullRecord]) -> bool:
    """Tell whether nobody has measured how far a front's pull stands out."""
    record = pulls.get(front.pull) if front.pull else None
    return record is not None and how_confirmed(record, "projection") is None


def _stands_out(job: Job, front: Front, projection: float) -> float | Open | None:
    """Give by how much a front's pull is reckoned with, if at all; mm."""
    return maybe_open(projection, open=projection_open(front, job.pulls)) if projection else None


def check_front(job: Job, front: Front, hand: Hand, end: WallEnd, room: float) -> Iterator[Problem]:
    """Check one front against what stands at its end, `room` from its box."""
    what = "end-panel" if end.stands == "panel" else end.stands or "wall"
    gap = room + (front.gaps.left if hand == "left" else front.gaps.right)
    if front.kind == "door" and front.hinged == hand:
        yield from _check_strike(job, front, end, what, room)
        yield from _check_hinge(front, what, gap)
        return
    reach = 0.0 if end.stands == "panel" else end.reach or 0.0
    if reach and gap < reach + STRIKING - SEEN - SLACK:
        yield warning(
            "end-reach",
            front.id,
            hand=hand,
            reach=reach,
            gap=gap,
            filler=reach + STRIKING - gap + room,
        )
        return
    yield from _check_edge(front, what, gap)


def _check_strike(
    job: Job, front: Front, end: WallEnd, what: str, room: float
) -> Iterator[Problem]:
    """Find a door that strikes what stands beside its hinge edge."""
    reach = end.reach or 0.0
    projection = projection_of(front, job.pulls)
    if end.stands == "panel":
        if not reach:
            return
        if pull_from_hinge(front) > reach + SLACK:
            projection = 0.0
        reach = 0.0
    needed = reach + projection + STRIKING
    if front.restrictor or room >= needed - SEEN - SLACK:
        return
    yield warning(
        "wall-filler",
        front.id,
        beside=what,
        hand=front.hinged,
        room=room if room > SLACK else 0.0,
        needed=needed,
        reach=reach,
        pull=_stands_out(job, front, projection),
        spare=STRIKING,
        filler=end.filler + needed - room,
    )


def pull_from_hinge(front: Front) -> float:
    """Give how far a door's pull stands from its hinge edge; its width where it has none; mm."""
    xs = [hole.x for hole in front.holes if hole.purpose == "pull"]
    if not xs:
        return front.width
    return min(xs) if front.hinged == "left" else front.width - max(xs)


def _check_hinge(front: Front, what: str, gap: float) -> Iterator[Problem]:
    """Find a hinge edge that rubs on what stands beside it."""
    least = front.least_reveal
    if least is None or front.place.overlay == "inset" or gap >= least.width - SLACK:
        return
    yield warning(
        "hinge-at-end",
        front.id,
        hand=front.hinged,
        beside=what,
        gap=gap,
        thick=front.make.thickness,
        least=maybe_open(least.width, open=least.open),
    )


def _check_edge(front: Front, what: str, gap: float) -> Iterator[Problem]:
    """Find a free edge, or a drawer, that rubs on what stands beside it."""
    if front.place.overlay == "inset" or front.kind in ("false-front", "panel"):
        return
    least = least_at_free_edge(front) if front.kind == "door" else LEAST_DRAWER
    if gap >= least - SLACK:
        return
    yield warning("edge-at-end", front.id, gap=gap, beside=what, least=least)


STANDS_OUT = 20.0
"""A box whose front edge stands out beyond the faces beside it by more than this is a deeper one;
mm (common practice, no source)."""


def check_deeper(
    job: Job, boxes: Sequence[BoxSpec], by_box: Mapping[str, Sequence[Front]]
) -> Iterator[Problem]:
    """List the doors that strike a deeper box on the side where they hang."""
    places, panel = place_job(job), job.material.front
    walls = grouped((box.wall, box) for box in boxes if not box.inferred)
    far = STRIKING + 2 * panel + max((pull.projection for pull in job.pulls.values()), default=0.0)
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
                        yield from _check(job, box, front, beside[place], room)


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
    return faces_out(job, other) if isinstance(other, BoxSpec) and other.fronts else 0.0


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
    needed = projection + STRIKING
    if room >= needed - SEEN - SLACK:
        return
    yield warning(
        "deeper-box",
        front.id,
        hand=front.hinged,
        box=isinstance(other, BoxSpec),
        other=other.id,
        reach=reach,
        room=room if room > TOUCHING else 0.0,
        needed=needed,
        pull=_stands_out(job, front, projection),
        spare=STRIKING,
    )
