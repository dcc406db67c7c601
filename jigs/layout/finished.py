"""The finished values: a front and a box side with everything that is known of them.

Both get their code last, from the holes they are left with; a part that is held back has none.
"""

from dataclasses import replace

from jigs.box.doors import DoorPlan
from jigs.box.inhand import has_size
from jigs.box.parts import Front, FrontMake, LeastReveal, Screws
from jigs.box.plan import FrontPlan
from jigs.fittings.fivepiece import assumed_of_frame, five_piece_of
from jigs.given.confirming import how_confirmed
from jigs.given.edges import bevelled_edge
from jigs.given.job import BoxSpec, Job
from jigs.ground.codes import part_code
from jigs.ground.geometry import collect_holes
from jigs.ground.problems import Problem
from jigs.reading.assumed import keys_of_drawer, keys_of_front, list_assumed

ALIKE = 0.1
"""Two places this near are the same to a drill; mm."""


def finish_front(job: Job, box: BoxSpec, plan: FrontPlan, held: tuple[Problem, ...]) -> Front:
    """Give a front as it is printed; what withholds it takes its holes away."""
    ordered, front, fitted, door = plan.front, plan.hand.front, plan.fitted, plan.door
    spec = front.spec
    thickness = job.thickness_of(spec)
    fittings = () if held else fitted.front
    drawer = fitted.drawer
    if drawer is not None:
        drawer = replace(
            drawer,
            fittings=() if held else drawer.fittings,
            rear=() if held else drawer.rear,
        )
        holes = (*drawer.holes, *collect_holes(drawer.rear))
        drawer = replace(
            drawer,
            code=part_code(drawer.width, drawer.height, drawer.side, holes, length=drawer.length),
            assumed=list_assumed(job, keys_of_drawer(spec, box), slide=spec.slide, box=box),
        )
    result = Front(
        id=front.id,
        box=box.id,
        wall=box.wall,
        box_kind=box.kind,
        kind=front.kind,
        hinged=None if spec.by_kit and spec.kind == "pair" else front.hinged,
        width=front.width,
        height=front.height,
        place=front.place,
        gaps=front.gaps,
        make=FrontMake(
            thickness=thickness,
            frame=five_piece_of(spec, front.width, front.height),
            edge_radius=spec.edge_radius or 0.0,
            bevel=bevelled_edge(spec.profile, box.kind),
            finish=spec.finish,
            note=spec.note,
        ),
        code="",
        bored=spec.boring.bored,
        ordered=(ordered.width, ordered.height) if has_size(spec) else None,
        hinge=door.choice if door else None,
        least_reveal=_least_reveal(job, door),
        drawer=drawer,
        pull=fitted.pulls.name,
        restrictor=spec.hung.restrictor,
        screws=Screws() if held else fitted.screws,
        fittings=fittings,
        held=held,
        assumed=(
            *list_assumed(
                job,
                keys_of_front(spec, front.kind, box, fitted.pulls.name),
                slide=spec.slide,
                hinge=door.choice.record if door else None,
                box=box,
            ),
            *assumed_of_frame(spec, job.shown),
        ),
    )
    return replace(
        result,
        code=part_code(result.width, result.height, thickness, result.holes),
        reversible=is_reversible(result),
    )


def _least_reveal(job: Job, door: DoorPlan | None) -> LeastReveal | None:
    """Give the least reveal of a door's hinge, and whether it is open."""
    if door is None or door.least_reveal is None:
        return None
    record = job.hinges.get(door.choice.record)
    unseen = record is None or how_confirmed(record, "least_reveal") is None
    return LeastReveal(width=door.least_reveal, open=unseen)


def is_reversible(front: Front) -> bool:
    """Tell whether a front turned half round has its holes on the same places, within 0.1.

    A door turned half round hangs by its other edge: its cups need only mirror top to bottom,
    and the pull, drilled when the hand is known, does not count.
    """
    holes = [hole for hole in front.holes if front.kind != "door" or hole.face == "back"]

    def matched(y: float, x: float, diameter: float) -> bool:
        return any(
            abs(other.y - (front.height - y)) <= ALIKE
            and abs(other.x - x) <= ALIKE
            and other.diameter == diameter
            for other in holes
        )

    if front.kind == "door":
        turned = [(hole.y, hole.x, hole.diameter) for hole in holes]
    else:
        turned = [(hole.y, front.width - hole.x, hole.diameter) for hole in holes]
    return bool(holes) and all(matched(*place) for place in turned)
