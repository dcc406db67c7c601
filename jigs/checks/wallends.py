"""What opens at the end of a wall: does it strike the wall, a casing, a panel?

A door hinged at a wall stands, opened, with its face to it: its pull wants a filler of its own
projection and 6, or the door a restrictor that stops it below 90 degrees. What reaches out of the
wall, as a casing does, wants as much filler more, and keeps drawers and free edges from opening
too. A panel flush with the faces of the fronts leaves the pull alone; one that stands out beyond
them is struck by the pull where it reaches as far, else by the door's face.

Filler of projection + 6, restrictor: common practice, no source. 35 + 6 = 41.
"""

from collections.abc import Mapping, Sequence
from math import sqrt

from jigs.box.parts import Front
from jigs.checks.hardware import by_memory
from jigs.fittings.hinge import USUAL_TAB
from jigs.given.confirming import how_confirmed
from jigs.given.hardware import PullRecord
from jigs.given.job import BoxSpec, Job
from jigs.given.walls import end_boxes, place_job
from jigs.given.wallspec import WallEnd
from jigs.ground.finding import warning
from jigs.ground.geometry import HANDS, SLACK, Hand
from jigs.ground.lengths import Unit, format_length, telling_unit
from jigs.ground.problems import Problem
from jigs.room.gapsmade import at_end

SPARE = 6.0
"""Left between what opens and what it would strike; mm (common practice, no source)."""
SEEN = 0.1
"""A filler short by no more than this is as wide as it should be: our figures show no less; mm."""
LEAST_EDGE = 0.5
"""Left between a door's free edge, as it swings, and a wall; mm (common practice, no source)."""
LEAST_DRAWER = 1.0
"""Left between a drawer and a wall; mm (common practice, no source)."""
WORDS = {"wall": "wall", "casing": "casing", "panel": "end panel"}


def check_wall_ends(
    job: Job, boxes: Sequence[BoxSpec], by_box: Mapping[str, Sequence[Front]]
) -> tuple[Problem, ...]:
    """List what the fronts at the ends of walls would strike, and the flush panels of boxes."""
    problems: list[Problem] = []
    places, panel = place_job(job), job.material.front
    for wall in job.walls:
        for hand in HANDS:
            end = wall.end(hand)
            if end.stands in WORDS:
                near = end_boxes(boxes, wall.name, hand, places, wall.appliances, panel)
                for box, distance in near:
                    for front in at_end(by_box[box.id], hand):
                        problems += check_front(job, front, hand, end, end.filler + distance)
    told = {(problem.part, problem.code) for problem in problems}
    flush = WallEnd(stands="panel")
    for box in boxes:
        for hand in HANDS:
            if box.panels.at(hand) == "flush":
                for front in at_end(by_box[box.id], hand):
                    found = check_front(job, front, hand, flush, 0.0)
                    problems += [p for p in found if (p.part, p.code) not in told]
    return tuple(problems)


def projection_of(front: Front, pulls: Mapping[str, PullRecord]) -> float:
    """Give how far a front's pull stands out from its face, 0 without one; mm."""
    record = pulls.get(front.pull) if front.pull else None
    return record.projection if record else 0.0


def projection_open(front: Front, pulls: Mapping[str, PullRecord]) -> bool:
    """Tell whether nobody has measured how far a front's pull stands out."""
    record = pulls.get(front.pull) if front.pull else None
    return record is not None and how_confirmed(record, "projection") is None


def check_front(
    job: Job, front: Front, hand: Hand, end: WallEnd, room: float
) -> tuple[Problem, ...]:
    """Check one front against what stands at its end, `room` from its box."""
    what, unit = WORDS[end.stands or "wall"], job.shown
    gap = room + (front.gaps.left if hand == "left" else front.gaps.right)
    if front.kind == "door" and front.hinged == hand:
        return (
            *_check_strike(job, front, end, what, room),
            *_check_hinge(front, what, gap, unit),
        )
    reach = 0.0 if end.stands == "panel" else end.reach or 0.0
    if reach and gap < reach + SPARE - SEEN - SLACK:
        return (
            warning(
                "end-reach",
                front.id,
                f"what stands out of the wall on its {hand} reaches {format_length(reach, unit)}, "
                f"and it opens {format_length(gap, unit)} from that wall",
                f"make the filler {format_length(reach + SPARE - gap + room, unit)} wide",
            ),
        )
    return _check_edge(front, what, gap, unit)


def _check_strike(
    job: Job, front: Front, end: WallEnd, what: str, room: float
) -> tuple[Problem, ...]:
    """Find a door that strikes what stands beside its hinge edge."""
    reach, unit = end.reach or 0.0, job.shown
    projection = projection_of(front, job.pulls)
    if end.stands == "panel":
        if not reach:
            return ()
        if pull_from_hinge(front) > reach + SLACK:
            projection = 0.0
        reach = 0.0
    needed = reach + projection + SPARE
    if front.restrictor or room >= needed - SEEN - SLACK:
        return ()
    sum_of = [format_length(reach, unit)] if reach else []
    if projection:
        open_ = projection_open(front, job.pulls)
        sum_of.append(f"{by_memory(format_length(projection, unit), open=open_)} for its pull")
    sum_of += [f"{format_length(SPARE, unit)} to spare"]
    between = "nothing" if room <= SLACK else format_length(room, unit)
    own = f"make the filler {format_length(end.filler + needed - room, unit)} wide"
    stop = "a restrictor that stops it below 90 degrees, and say restrictor = true"
    return (
        warning(
            "wall-filler",
            front.id,
            f"hinged {front.hinged} with {between} to the {what}: opened, it strikes it; "
            f"{format_length(needed, unit)} is needed ({' + '.join(sum_of)})",
            f"fit {stop}; or {own}" if room <= SLACK else f"{own}, or fit {stop}",
        ),
    )


def pull_from_hinge(front: Front) -> float:
    """Give how far a door's pull stands from its hinge edge; its width where it has none; mm."""
    xs = [hole.x for hole in front.holes if hole.purpose == "pull"]
    if not xs:
        return front.width
    return min(xs) if front.hinged == "left" else front.width - max(xs)


def _check_hinge(front: Front, what: str, gap: float, unit: Unit) -> tuple[Problem, ...]:
    """Find a hinge edge that rubs on what stands beside it."""
    least = front.least_reveal
    if least is None or front.place.overlay == "inset" or gap >= least.width - SLACK:
        return ()
    unit = telling_unit(unit, gap, least.width)
    return (
        warning(
            "hinge-at-end",
            front.id,
            f"hinged {front.hinged} beside the {what} with a gap of {format_length(gap, unit)}; a "
            f"front {format_length(front.make.thickness, unit)} thick needs "
            f"{by_memory(format_length(least.width, unit), open=least.open)} to open",
            f"enlarge its reveal, or put a filler before the {what}",
        ),
    )


def _check_edge(front: Front, what: str, gap: float, unit: Unit) -> tuple[Problem, ...]:
    """Find a free edge, or a drawer, that rubs on what stands beside it."""
    if front.place.overlay == "inset" or front.kind in ("false-front", "panel"):
        return ()
    least = LEAST_DRAWER
    if front.kind == "door":
        radius = front.width - (front.hinge.tab if front.hinge else USUAL_TAB)
        # Conservative: about a fixed pivot at the rim of the cup (derived).
        least = LEAST_EDGE + sqrt(radius**2 + front.make.thickness**2) - radius
    if gap >= least - SLACK:
        return ()
    unit = telling_unit(unit, gap, least)
    return (
        warning(
            "edge-at-end",
            front.id,
            f"its edge opens {format_length(gap, unit)} beside the {what}; it takes "
            f"{format_length(least, unit)}",
            f"enlarge its reveal, or put a filler before the {what}",
        ),
    )
